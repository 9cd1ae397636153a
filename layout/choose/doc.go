// Package choose weighs how many risers a stair gets and what run: every count
// from just outside what a code allows on one side to just outside on the
// other, each with its best run, best first.
package choose
