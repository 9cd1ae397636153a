// Package check holds a stair against a building code, against rules of thumb
// and against itself: does it fit, does its head bear, is the first riser right.
//
// Everything is judged from Facts: plain values of one flight, of which what is
// nil or empty is not judged. A stairway that was laid out, a choice of rise and
// run, and an existing stair as measured all come down to them, so that one set
// of rules judges all three.
package check
