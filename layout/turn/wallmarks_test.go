package turn_test

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"stepoff/layout/turn"
)

// Three radial winders in 36 in, set back 10.86 in, worked by hand: the lines at 30
// and 60 degrees through the pivot meet the walls 46.86 tan 30 = 27.055 from the
// first and the last line, 19.805 from the outside corner, and the newel
// 10.86 - 10.86 tan 30 = 4.590 from the inside corner. A nosing 1 3/4 before a line
// at 30 degrees meets a wall square to the first line 1.75/cos 30 = 2.021 lower.
func TestWallMarksByHand(t *testing.T) {
	for _, hand := range []turn.Hand{turn.Left, turn.Right} {
		w := winders(36, 3, 1.75, false)
		w.Hand = hand
		l, h := w.At(turn.Start, 10.86*inch), boxFraming(52.5).WinderHeights
		same(t, l.WallMarks(h), `
1 lower wall 46.860 52.5
2 lower wall 19.805 60
3 upper wall 19.805 67.5
4 upper wall 46.860 75
1 lower newel face 10.860 52.5
2 lower newel face 4.590 60
3 upper newel face 4.590 67.5
4 upper newel face 10.860 75
`)
		// At 60 degrees: 1.75/cos 30 along the upper wall too, back toward the corner.
		same(t, l.NosingMarks(h), `
1 lower wall 48.610 52.5
2 lower wall 21.826 60
3 upper wall 17.785 67.5
4 upper wall 45.110 75
1 lower newel face 12.610 52.5
2 lower newel face 6.611 60
3 upper newel face 2.569 67.5
4 upper newel face 9.110 75
`)
	}
}

func same(t *testing.T, marks []turn.WallMark, want string) {
	t.Helper()
	got := "\n"
	for _, m := range marks {
		got += fmt.Sprintf("%d %s %.3f %.4g\n", m.Riser, m.Wall, m.FromCorner/inch, m.Height/inch)
	}
	if got != want {
		t.Errorf("got %swant %s", got, want)
	}
}

// Winders that meet in a point are all struck in the inside corner; the middle line
// of an even number, in the outside corner, once.
func TestWallMarksAtAPoint(t *testing.T) {
	l, h := winders(36, 4, 1.75, false).At(turn.Start, 0), boxFraming(7.5).WinderHeights
	same(t, l.WallMarks(h), `
1 lower wall 36.000 7.5
2 lower wall 21.088 15
3 lower wall 0.000 22.5
4 upper wall 21.088 30
5 upper wall 36.000 37.5
1 lower newel face 0.000 7.5
2 lower newel face 0.000 15
3 lower newel face 0.000 22.5
4 lower newel face 0.000 30
5 lower newel face 0.000 37.5
`) // 36 - 36 tan 22.5 = 21.088
	newel := 0
	for _, m := range l.NosingMarks(h) {
		if m.Wall == turn.LowerNewel || m.Wall == turn.UpperNewel {
			newel++
		}
	}
	if newel != 4 {
		t.Errorf("%d nosings reach the newel; the last runs before it", newel)
	}
}

// Whatever the turn, every riser line is struck once on the outside and once on the
// inside, and the marks go up along both: the first and the last as far from the
// corners as the turn is long, set-back and, outside, width x tan(angle/2).
func TestWallMarksGoUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, setback := drawWinders(t)
		h := boxFraming(7.5).WinderHeights
		marks := w.At(turn.Start, setback).WallMarks(h)
		n := w.Treads + 1
		if len(marks) != 2*n {
			t.Fatalf("%d marks of %d lines", len(marks), n)
		}
		for side, reach := range []float64{setback + w.Width*math.Tan(w.Angle*math.Pi/360), setback} {
			last := math.Inf(-1)
			for k, m := range marks[side*n : (side+1)*n] {
				at := m.FromCorner
				if m.Wall == turn.LowerWall || m.Wall == turn.LowerNewel {
					at = -at
				}
				if m.Riser != k+1 || at < last-1e-6 || m.Height != h.Finished(k) {
					t.Errorf("line %d: %v after %v", k+1, m, last)
				}
				if k == 0 && math.Abs(at+reach) > 1e-6 || k == n-1 && math.Abs(at-reach) > 1e-6 {
					t.Errorf("line %d stands %g from the corner, want %g", k+1, at, reach)
				}
				last = at
			}
		}
	})
}
