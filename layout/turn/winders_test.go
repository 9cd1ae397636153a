package turn_test

import (
	"fmt"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"pgregory.net/rapid"

	"stepoff/layout/turn"
	"stepoff/spec/measure"
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

// Of two radial winders in a square corner the middle riser line stands at 45
// degrees, and each narrow end is as deep as the set-back: the set-back is the depth
// asked for, to the nanometre, whatever the width.
func TestLeastSetbackIsExactWhereItCanBe(t *testing.T) {
	for width := 24.0; width <= 60; width += 0.25 {
		got, ok := winders(width, 2, 0, false).LeastSetback()
		if !ok || got != 6*measure.Inch {
			t.Errorf("%v in wide: set-back %d nm, want %d", width, got, 6*measure.Inch)
		}
	}
}

// The least set-back is the least, and more does no harm, whatever the turn.
func TestLeastSetbackIsTheLeast(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := winders(rapid.Float64Range(24, 60).Draw(t, "width"), rapid.IntRange(2, 5).Draw(t, "treads"),
			rapid.Float64Range(0, 2).Draw(t, "overhang"), rapid.Bool().Draw(t, "even"))
		w.Angle = rapid.Float64Range(45, 90).Draw(t, "angle")
		least, ok := w.LeastSetback()
		if !ok || !w.Meets(least) || least > 0 && w.Meets(least-1) {
			t.Fatalf("%v, %v: meets there %v, a nanometre below %v", least, ok, w.Meets(least), w.Meets(least-1))
		}
		more := least + measure.Length(rapid.Int64Range(0, int64(500*measure.Millimetre)).Draw(t, "more"))
		if !w.Meets(more) {
			t.Errorf("it does at %v, but not at %v", least, more)
		}
	})
}

// The treads of a turn fill it, whatever its angle, hand and lines, and none
// reaches over another: their areas, each counted without its sign, add up to
// that of the wedge, w^2 tan(angle/2), and of two strips, set-back by width.
func TestTreadsFillTheTurn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := winders(rapid.Float64Range(24, 60).Draw(t, "width"), rapid.IntRange(2, 5).Draw(t, "treads"), 1.75, rapid.Bool().Draw(t, "even"))
		w.Angle = rapid.Float64Range(45, 90).Draw(t, "angle")
		w.Hand = rapid.SampledFrom([]turn.Hand{turn.Left, turn.Right}).Draw(t, "hand")
		setback := rapid.Float64Range(0, 600).Draw(t, "setback")
		sum := 0.0
		for k, tread := range w.At(turn.Start, setback).Treads {
			area := tread.Outline.Area()
			if !(area > 0) {
				t.Errorf("tread %d runs clockwise: %g", k+1, area)
			}
			sum += area
		}
		whole := w.Width*w.Width*math.Tan(w.Angle*math.Pi/360) + 2*setback*w.Width
		if math.Abs(sum-whole) > 1e-9*whole {
			t.Errorf("the treads add up to %g of %g", sum, whole)
		}
	})
}

// A curve is a piece of a ring: its treads are alike, add up to the ring's share,
// and are 2 R sin(angle/2) deep on the walkline.
func TestCurve(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := turn.Curve{
			Hand: rapid.SampledFrom([]turn.Hand{turn.Left, turn.Right}).Draw(t, "hand"), Angle: rapid.Float64Range(20, 350).Draw(t, "angle"),
			Treads: rapid.IntRange(2, 20).Draw(t, "treads"), Inside: rapid.Float64Range(600, 6000).Draw(t, "inside"), Width: 900, Overhang: 44,
			Depths: turn.Depths{Walklines: []float64{304.8}},
		}
		l := v.At(turn.Start)
		each := v.Angle * math.Pi / 180 / float64(v.Treads)
		outside := v.Inside + v.Width
		for k, tread := range l.Treads {
			if area := tread.Outline.Area(); math.Abs(area-each/2*(outside*outside-v.Inside*v.Inside)) > 1e-9*area {
				t.Errorf("tread %d encloses %g", k+1, area)
			}
			if want := 2 * (v.Inside + 304.8) * math.Sin(each/2); math.Abs(tread.Walkline-want) > 1e-9*want {
				t.Errorf("tread %d is %g deep on the walkline, want %g", k+1, tread.Walkline, want)
			}
		}
		for k, r := range l.Risers {
			if in, out := r2.Norm(r2.Sub(r.In, l.Centre)), r2.Norm(r2.Sub(r.Out, l.Centre)); math.Abs(in-v.Inside) > 1e-6 || math.Abs(out-outside) > 1e-6 {
				t.Errorf("riser line %d reaches from %g to %g", k+1, in, out)
			}
		}
	})
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
