// Package exercise makes practice problems of stair layout, and their answers.
//
// A set is told by its seed, its level and its units, and is the same for ever:
// the numbers are drawn from a generator whose stream is specified (PCG-DXSM, as
// in math/rand/v2) by a rule of this package, and nothing is thrown away by a
// rule that could change, such as a building code's. A golden file holds one set.
package exercise
