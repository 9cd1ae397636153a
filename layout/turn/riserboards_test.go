package turn_test

import (
	"math"
	"testing"

	"stepoff/layout/turn"
)

// Riser boards 3/4 thick of winders 36 in wide by hand. At 30 degrees the line is
// 36/cos 30 and its front 3/4 tan 30 farther out at either end: 42.002, long at the
// newel on the front, at the wall on the back. The line from corner to corner of an
// even number is 36/cos 45 with 3/4 more of front at the newel. With a set-back of
// 1/2 in the third line of three ends on the upper newel face, its board's front on
// the lower: cut square, clear of the corner, 0.683 from the pivot; its front meets
// the wall 36.875/sin 60 from there.
func TestRiserBoardByHand(t *testing.T) {
	cos30, sin60, tan30 := math.Cos(math.Pi/6), math.Sin(math.Pi/3), math.Tan(math.Pi/6)
	for _, c := range []struct {
		what          string
		treads, k     int
		setback, want float64 // in
		inner, outer  float64
	}{
		{"square to its flight", 3, 0, 10.86, 36, 0, 0},
		{"30 degrees", 3, 1, 10.86, 36/cos30 + 0.75*tan30, 30, -30},
		{"60 degrees", 3, 2, 10.86, 36/cos30 + 0.75*tan30, -30, 30},
		{"corner to corner", 2, 1, 6.71, 36*math.Sqrt2 + 0.75, 45, -45},
		{"round the newel", 3, 2, 0.5, 36.875/sin60 - 0.5*(0.5+sin60), 0, 30},
	} {
		for _, hand := range []turn.Hand{turn.Left, turn.Right} {
			w := winders(36, c.treads, 1.75, false)
			w.Hand = hand
			l := w.At(turn.Start, c.setback*inch)
			long, ends := l.RiserBoard(c.k, 0.75*inch)
			if math.Abs(long/inch-c.want) > 1e-9 || math.Abs(ends[0].Bevel-c.inner) > 1e-6 || math.Abs(ends[1].Bevel-c.outer) > 1e-6 {
				t.Errorf("%s: %.4f long, %v; want %.4f, %g and %g", c.what, long/inch, ends, c.want, c.inner, c.outer)
			}
		}
	}
}
