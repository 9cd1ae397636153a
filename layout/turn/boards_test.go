package turn_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"stepoff/layout/geom"
	"stepoff/layout/turn"
)

// The lowest board of three radial winders by hand, riser board and nosing 1 3/4 and
// the tread ending 3/4 before the next riser line, at the riser board behind it. It
// reaches from 1 3/4 before the first line to x tan 30 - 0.75/cos 30 at a distance x
// from the pivot, 10.86 to 46.86: mean 28.86, so (16.662 - 0.866 + 1.75) x 36. Where
// the riser board stands on the tread, this reaches 0.866 farther; past an open
// outside, 1 in wider.
func TestBoardByHand(t *testing.T) {
	mean := func(x float64) float64 { return x * math.Tan(math.Pi/6) }
	rip := 0.75 / math.Cos(math.Pi/6)
	for _, c := range []struct {
		over turn.Over // in
		want float64   // square inches
	}{
		{turn.Over{}, mean(28.86) * 36},
		{turn.Over{Front: 1.75, Back: 0.75}, (mean(28.86) - rip + 1.75) * 36},
		{turn.Over{Front: 1.75}, (mean(28.86) + 1.75) * 36},
		{turn.Over{Front: 1.75, Back: 0.75, Outside: 1}, (mean(29.36) - rip + 1.75) * 37},
		{turn.Over{Front: 1.75, Back: 0.75, Inside: 1}, (mean(28.36) - rip + 1.75) * 37},
	} {
		for _, hand := range []turn.Hand{turn.Left, turn.Right} {
			w := winders(36, 3, 1.75, false)
			w.Hand = hand
			o := turn.Over{Front: c.over.Front * inch, Back: c.over.Back * inch, Inside: c.over.Inside * inch, Outside: c.over.Outside * inch}
			if got := w.At(turn.Start, 10.86*inch).Board(0, o).Area() / inch / inch; math.Abs(got-c.want) > 1e-9*c.want {
				t.Errorf("%+v: %v sq in, want %v", c.over, got, c.want)
			}
		}
	}
}

// Boards that begin as far before their riser line as the next one ends before its
// own lie edge to edge: as much is added before the turn's first riser line as goes
// before its last, so they add up to the turn. Whatever reaches over, a board is
// one whole piece.
func TestBoardsFillTheTurn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, setback := drawWinders(t)
		l := w.At(turn.Start, setback)
		front := rapid.Float64Range(0, 50).Draw(t, "front")
		back := front * rapid.SampledFrom([]float64{0, 0.4, 1}).Draw(t, "back")
		sum := 0.0
		for k := range l.Treads {
			b := l.Board(k, turn.Over{Front: front, Back: back})
			sum += b.Area()
			if !(b.Area() > 0) || !geom.Simple(corners(b)) {
				t.Errorf("board %d is no piece: %v", k+1, corners(b))
			}
		}
		if whole := l.Outline().Area(); back == front && setback > 2*front && math.Abs(sum-whole) > 1e-9*whole {
			t.Errorf("the boards add up to %g of %g", sum, whole)
		}
	})
}
