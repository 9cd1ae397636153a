package turn_test

import (
	"fmt"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"pgregory.net/rapid"

	"stepoff/layout/geom"
	"stepoff/layout/turn"
)

// Three radial winders in 36 in, set back 10.86, unrolled by hand: along the walls
// 46.86 tan 30 = 27.055, twice 19.805 round the corner, 27.055; along the newel
// 6.270, twice 4.590, 6.270. Pitches atan(7.5/27.055) = 15.49, atan(7.5/39.611) =
// 10.72, atan(7.5/6.270) = 50.10, atan(7.5/9.180) = 39.25 degrees. Lengths are
// the runs over the cosines.
func TestWallStringsByHand(t *testing.T) {
	l := winders(36, 3, 1.75, false).At(turn.Start, 10.86*inch)
	got := "\n"
	for _, s := range l.WallStrings(boxFraming(52.5).WinderHeights) {
		got += fmt.Sprintf("%s %.3f to %.3f\n", s.Wall, s.From/inch, s.To/inch)
		for _, p := range s.Steps {
			got += fmt.Sprintf("  %d: %.3f of %.3f, %.2f, %.3f\n", p.Tread, p.Run/inch, p.Whole/inch, p.Pitch, p.Length/inch)
		}
		for _, p := range s.Notched {
			got += fmt.Sprintf("  (%.3f, %.4g)", p.X/inch, p.Y/inch)
		}
		got += "\n"
	}
	const want = `
lower wall 0.000 to 46.860
  1: 27.055 of 27.055, 15.49, 28.075
  2: 19.805 of 39.611, 10.72, 20.157
  (0.000, 43.5)  (0.000, 51)  (27.055, 51)  (27.055, 58.5)  (46.860, 58.5)
upper wall 46.860 to 93.720
  2: 19.805 of 39.611, 10.72, 20.157
  3: 27.055 of 27.055, 15.49, 28.075
  (46.860, 58.5)  (66.665, 58.5)  (66.665, 66)  (93.720, 66)
lower newel face 0.000 to 10.860
  1: 6.270 of 6.270, 50.10, 9.776
  2: 4.590 of 9.180, 39.25, 5.927
  (0.000, 43.5)  (0.000, 51)  (6.270, 51)  (6.270, 58.5)  (10.860, 58.5)
upper newel face 10.860 to 21.720
  2: 4.590 of 9.180, 39.25, 5.927
  3: 6.270 of 6.270, 50.10, 9.776
  (10.860, 58.5)  (15.450, 58.5)  (15.450, 66)  (21.720, 66)
`
	if got != want {
		t.Errorf("got %swant %s", got, want)
	}
}

// On the floor the first cut is the riser less the tread, and more by flooring to
// come; winders in a point have no strings inside.
func TestWallStringOnTheFloor(t *testing.T) {
	h := boxFraming(7.5).WinderHeights
	h.Flooring = 0.75 * inch
	strings := winders(36, 4, 1.75, false).At(turn.Start, 0).WallStrings(h)
	if len(strings) != 2 {
		t.Fatalf("%d strings", len(strings))
	}
	if ps := strings[0].Notched; math.Abs(ps[0].Y+0.75*inch) > 1e-9 || math.Abs(ps[1].Y-6*inch) > 1e-9 {
		t.Errorf("first cut from %v to %v", ps[0], ps[1])
	}
	// The middle riser line runs into the corner: the upper string begins a rise higher.
	end, begin := strings[0].Notched[len(strings[0].Notched)-1], strings[1].Notched[0]
	if math.Abs(end.X-begin.X) > 1e-6 || math.Abs(begin.Y-end.Y-7.5*inch) > 1e-9 {
		t.Errorf("from %v to %v at the corner", end, begin)
	}
}

// Whatever the turn: the runs add up to the edge's length, set-back and, outside,
// width x tan(angle/2), twice; the cuts climb a rise a tread; a step shared by two
// strings is a whole one.
func TestWallStringsAddUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, setback := drawWinders(t)
		h := boxFraming(52.5).WinderHeights
		strings := w.At(turn.Start, setback).WallStrings(h)
		sides := [][]turn.WallString{strings[:2], strings[2:]}
		for i, reach := range []float64{setback + w.Width*math.Tan(w.Angle*math.Pi/360), setback} {
			if len(sides[i]) == 0 {
				if setback > 1 {
					t.Errorf("no strings inside at a set-back of %g", setback)
				}
				continue
			}
			sum, of := 0.0, map[int]float64{}
			for _, s := range sides[i] {
				own := 0.0
				for _, p := range s.Steps {
					own += p.Run
					of[p.Tread] += p.Run
					if want := math.Hypot(p.Whole, h.Rise) * p.Run / p.Whole; math.Abs(p.Length-want) > 1e-6 {
						t.Errorf("%v: step %d is %g long, want %g", s.Wall, p.Tread, p.Length, want)
					}
				}
				if math.Abs(own-reach) > 1e-6 {
					t.Errorf("%v: runs add up to %g of %g", s.Wall, own, reach)
				}
				sum += own
				for k, p := range s.Notched[1:] {
					if d := r2.Sub(p, s.Notched[k]); d.X < -1e-9 || d.Y < -1e-9 || math.Abs(d.X) > 1e-9 && math.Abs(d.Y) > 1e-9 {
						t.Errorf("%v: cut %v is neither plumb nor level", s.Wall, d)
					}
				}
			}
			for _, s := range sides[i] {
				for _, p := range s.Steps {
					if math.Abs(of[p.Tread]-p.Whole) > 1e-6 {
						t.Errorf("step %d: pieces add up to %g of %g", p.Tread, of[p.Tread], p.Whole)
					}
				}
			}
			first, end := sides[i][0].Notched[0], sides[i][1].Notched[len(sides[i][1].Notched)-1]
			if climb := float64(w.Treads) * h.Rise; math.Abs(end.Y-first.Y-climb) > 1e-6 || math.Abs(end.X-first.X-2*reach) > 1e-6 {
				t.Errorf("from %v to %v: %g up, want %g", first, end, end.Y-first.Y, climb)
			}
		}
	})
}

// housing in inches: flights of 10 in, 1 in over the nosings, an 11 1/4 string.
var housing = turn.WallHousing{RunBelow: 10 * inch, RunAbove: 10 * inch, Over: 1 * inch, Width: 11.25 * inch}

// The wall strings of three radial winders by hand. Nosings stand at -1.75,
// 27.055-2.021, 66.665-2.021 and 93.720-1.75, from 52.5 up by 7.5: the line from
// the first to the last climbs 22.5 in 93.72, 13.50 degrees. The second nosing
// stands 7.5 - 26.784 x 22.5/93.72 = 1.070 over it, the most. The flight's nosing
// line, 36.87 degrees, meets that line, raised, 1.070/(0.75 - 0.2401) = 2.098 on.
func TestHousedStringsByHand(t *testing.T) {
	l := winders(36, 3, 1.75, false).At(turn.Start, 10.86*inch)
	a := housing
	a.Over = 0
	a.Radius = 1e-3 // so good as a corner
	strings := l.HousedStrings(boxFraming(52.5).WinderHeights, a)
	if len(strings) != 4 {
		t.Fatalf("%d strings", len(strings))
	}
	s := strings[0]
	if math.Abs(s.Pitch-13.50) > 0.005 || math.Abs(s.FlightPitch-36.87) > 0.005 {
		t.Errorf("pitches %.3f and %.3f", s.Pitch, s.FlightPitch)
	}
	if lower, upper := s.Needs/inch, strings[1].Needs/inch; math.Abs(lower-9.22) > 0.006 || math.Abs(upper-11.18) > 0.006 {
		t.Errorf("the treads take %.3f and %.3f", lower, upper)
	}
	arc := s.Upper.Edges[1]
	if x, y := arc.From.X/inch, arc.From.Y/inch; !arc.IsArc() || math.Abs(x-(2.098-1.75)) > 0.002 || math.Abs(y-(52.5+2.098*0.75)) > 0.002 {
		t.Errorf("the pitch changes at %.3f, %.3f", x, y)
	}
	if begin := s.Upper.Edges[0].From; math.Abs(begin.X+11.75*inch) > 1e-6 || math.Abs(begin.Y-45*inch) > 1e-6 {
		t.Errorf("it begins at %v, want the flight's nosing below", begin)
	}
}

// Whatever the turn, the edges are straight lines that run into each other without
// a kink, with one arc of the radius; both strings of a side meet at the corner, as
// wide as the string is; and the nosings stand clear by what was asked, less at
// most what the arc cuts off its corner, radius x (1/cos(change/2) - 1), as long as no
// step is less deep along the wall than the flight's.
func TestHousedStrings(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, setback := drawWinders(t)
		l, h := w.At(turn.Start, setback), boxFraming(52.5).WinderHeights
		strings := l.HousedStrings(h, housing)
		deep := leastDeep(l, h)
		for i, s := range strings {
			change := math.Abs(s.Pitch-s.FlightPitch) * math.Pi / 180
			bends := 0
			for _, p := range []geom.Path{s.Upper, s.Lower} {
				for k, e := range p.Edges {
					if e.IsArc() {
						bends++
						if math.Abs(e.Radius-s.Radius) > 1e-9 || math.Abs(math.Abs(e.Sweep)-change) > 1e-9 || r2.Norm(r2.Sub(e.At(1-1e-12), e.To)) > 1e-6 {
							t.Errorf("%v: arc %+v of radius %g", s.Wall, e, s.Radius)
						}
					}
					if k > 0 {
						before := p.Edges[k-1]
						if before.To != e.From || r2.Norm(r2.Sub(heading(before, 1), heading(e, 0))) > 1e-6 {
							t.Errorf("%v: a kink from %v to %v", s.Wall, before, e)
						}
					}
				}
			}
			if s.Radius > 0 && bends != 2 || s.Radius == 0 && bends != 0 {
				t.Errorf("%v: %d arcs of radius %g", s.Wall, bends, s.Radius)
			}
			if deep[s.Wall] >= housing.RunBelow {
				if least := housing.Over - s.Radius*(1/math.Cos(change/2)-1); s.Clear < least-1e-6 {
					t.Errorf("%v: a nosing stands %g clear, want %g", s.Wall, s.Clear, least)
				}
			}
			if i%2 == 0 {
				continue
			}
			lower, upper := strings[i-1], s
			a, b := lower.Upper.Edges[len(lower.Upper.Edges)-1].To, upper.Upper.Edges[0].From
			c, d := lower.Lower.Edges[len(lower.Lower.Edges)-1].To, upper.Lower.Edges[0].From
			if r2.Norm(r2.Sub(a, b)) > 1e-6 || r2.Norm(r2.Sub(c, d)) > 1e-6 {
				t.Errorf("%v: edges end at %v and %v, the upper string's begin at %v and %v", s.Wall, a, c, b, d)
			}
			if plumb := housing.Width / math.Cos(s.Pitch*math.Pi/180); math.Abs(a.Y-c.Y-plumb) > 1e-6 {
				t.Errorf("%v: %g plumb at the corner, want %g", s.Wall, a.Y-c.Y, plumb)
			}
		}
	})
}

// leastDeep is the least from nosing to nosing along each side.
func leastDeep(l *turn.Laid, h turn.WinderHeights) map[turn.WinderWall]float64 {
	at := map[bool][]float64{}
	for _, m := range l.NosingMarks(h) {
		from := m.FromCorner
		if m.Wall == turn.LowerWall || m.Wall == turn.LowerNewel {
			from = -from
		}
		inside := m.Wall == turn.LowerNewel || m.Wall == turn.UpperNewel
		at[inside] = append(at[inside], from)
	}
	least := func(xs []float64) float64 {
		d := math.Inf(1)
		for k := 1; k < len(xs); k++ {
			d = min(d, xs[k]-xs[k-1])
		}
		return d
	}
	out, in := least(at[false]), least(at[true])
	return map[turn.WinderWall]float64{turn.LowerWall: out, turn.UpperWall: out, turn.LowerNewel: in, turn.UpperNewel: in}
}

// heading is the way an edge runs at its beginning (0) or end (1).
func heading(e geom.Edge, at float64) geom.Point {
	if !e.IsArc() {
		return r2.Unit(r2.Sub(e.To, e.From))
	}
	radius := r2.Unit(r2.Sub(e.At(at), e.Centre))
	return r2.Scale(math.Copysign(1, e.Sweep), geom.Pt(-radius.Y, radius.X))
}
