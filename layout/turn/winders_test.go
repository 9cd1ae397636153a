package turn_test

import (
	"fmt"
	"math"
	"testing"

	"stepoff/layout/turn"
)

// winders takes inches; the depths are those most codes ask.
func winders(width float64, treads int, overhang float64, even bool) turn.Winders {
	const in = 25.4
	return turn.Winders{Hand: turn.Left, Angle: 90, Treads: treads, Even: even, Width: width * in, Overhang: overhang * in,
		Depths: turn.Depths{Walklines: []float64{12 * in}, LeastWalkline: 10 * in, LeastNarrow: 6 * in}}
}

// Set-backs worked by hand: with the riser lines alone, 6 / tan 30 and
// 6 / tan 22.5; between nosings the first tread gains and loses an overhang.
func TestLeastSetback(t *testing.T) {
	for _, c := range []struct {
		width, overhang float64
		treads          int
		want            float64
	}{{36, 1.75, 3, 10.86}, {36, 0, 3, 10.39}, {38, 1.75, 4, 14.83}, {38, 0, 4, 14.49}} {
		w := winders(c.width, c.treads, c.overhang, false)
		got, ok := w.LeastSetback()
		if !ok || math.Abs(got.MM()/25.4-c.want) > 0.005 {
			t.Errorf("%v: set-back %.4f in, want %.2f", c, got.MM()/25.4, c.want)
		}
		if w.Meets(got - 1) {
			t.Errorf("%v: a nanometre less would do as well", c)
		}
	}
}

// The treads of a turn fill it.
func TestTreadsFillTheTurn(t *testing.T) {
	for _, even := range []bool{false, true} {
		for n := 2; n <= 5; n++ {
			w := winders(36, n, 1.75, even)
			a, _ := w.LeastSetback()
			l := w.At(turn.Start, a.MM())
			sum := 0.0
			for _, tread := range l.Treads {
				sum += tread.Outline.Area()
			}
			if whole := l.Outline().Area(); math.Abs(sum-whole) > 1e-9*whole {
				t.Errorf("%d treads, even %v: they add up to %g of %g", n, even, sum, whole)
			}
		}
	}
}

func BenchmarkLeastSetback(b *testing.B) {
	for _, even := range []bool{false, true} {
		b.Run(fmt.Sprintf("even=%v", even), func(b *testing.B) {
			w := winders(36, 5, 1.75, even)
			for b.Loop() {
				w.LeastSetback()
			}
		})
	}
}

// Even lines without a set-back all begin in the inside corner.
func TestEvenLinesWithoutSetback(t *testing.T) {
	for n := 2; n <= 5; n++ {
		l := winders(36, n, 1.75, true).At(turn.Start, 0)
		for k, r := range l.Risers {
			if d := math.Hypot(r.In.X-l.Centre.X, r.In.Y-l.Centre.Y); !(d < 1e-6) || math.IsNaN(r.Out.X+r.Out.Y) {
				t.Errorf("%d treads: riser line %d begins %g from the corner: %v", n, k+1, d, r)
			}
		}
	}
}
