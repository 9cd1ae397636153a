// Package report writes a stairway out: the JSON that scripts read, and the
// text a carpenter reads at the saw horses.
package report
