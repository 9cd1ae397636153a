package turn_test

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"stepoff/layout/turn"
)

// A schedule worked by hand: 16 risers of 7 1/2 in in 125 degrees, 15 goings of
// 8 1/3; 1 in treads; 2x6 bearers, 2x4 ledgers, plates 1 1/2 in high on the
// finished floor. Under tread k there is 7 1/2 k - 1 - 1 1/2 over the plates: 5 in
// under the first, where a 2x6 leaves no stud, so its bearer is 5 in high and
// stands on the plates; 12 1/2 under the second, so its stud is 7 in. The last
// ledger: 112 1/2 - 2 1/2 - 3 1/2 = 106 1/2. A going at 96 in is 13.96 in long:
// within 16, so no stud stands between.
func TestStudsByHand(t *testing.T) {
	s := curveSteps(125, 16, 60, 36, 120, 1)
	f := framed(t, s, walls())
	if len(f.Studs) != 2*15 {
		t.Fatalf("%d studs, want 15 a wall", len(f.Studs))
	}
	for k, st := range f.Studs {
		riser := k%15 + 2
		want := turn.Stud{Riser: riser, Tread: riser, Plate: turn.CurveInside, Angle: 125 * float64(riser-1) / 15, Height: 7.5*float64(riser) - 8}
		if k >= 15 {
			want.Plate = turn.CurveOutside
		}
		if riser == 16 {
			want.Tread, want.Before, want.Angle, want.Height = 15, true, 125, 106.5
		}
		if st.Plate != want.Plate || st.Riser != want.Riser || st.Tread != want.Tread || st.Before != want.Before || st.Angle != want.Angle || st.Bevel != 0 {
			t.Errorf("stud %d is %+v, want %+v", k, st, want)
		}
		within(t, "height", st.Height/inch, want.Height, 1e-9)
	}
	first := f.Bearers[0]
	if !first.OnPlates || first.Ledger {
		t.Errorf("the first bearer stands on the plates: %+v", first)
	}
	within(t, "its depth", first.Depth/inch, 5, 1e-9)

	// Spacing 12: 13.96 in at the outside edge is two spaces there; at the outer
	// edge of the inside plate, 63 1/2 in, a going is 9.24 in: one.
	w := walls()
	w.Spacing = 12 * inch
	f = framed(t, s, w)
	if len(f.Studs) != 15+15+15 {
		t.Fatalf("%d studs at 12 in", len(f.Studs))
	}
	between := f.Studs[15]
	if between.Riser != 0 || between.Tread != 1 {
		t.Errorf("%+v", between)
	}
	within(t, "half way on the first going", between.Angle, 125.0/30, 1e-9)
	within(t, "up to the tread itself", between.Height/inch, 5, 1e-9)
}

// Studs under bearers rise by the unit rise from tread to tread; with what they
// carry, the plates and the tread each adds up to its tread's level; no two on a
// wall are farther apart than asked, and none under a bearer or a ledger is shorter
// than a stud may be.
func TestStuds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, w := anyCurve(t), walls()
		w.Spacing = rapid.Float64Range(9, 24).Draw(t, "spacing") * inch
		f := framed(t, s, w)
		carries := map[[2]int]float64{}
		for _, b := range f.Bearers {
			carries[[2]int{b.Riser, b.Tread}] = b.Depth
		}
		for _, p := range f.Plates {
			var last, lastAtRiser *turn.Stud
			for _, st := range f.Studs {
				if st.Plate != p.Name {
					continue
				}
				top := s.Floor + w.Plates.Height() + st.Height + s.Tread
				if st.Riser > 0 {
					top += carries[[2]int{st.Riser, st.Tread}]
					if st.Height < turn.ShortestStud-1e-9 {
						t.Errorf("a stud %g long", st.Height)
					}
				}
				within(t, "floor to tread", top, s.Levels[st.Tread], 1e-9*top)
				if last != nil {
					if gap := p.Outer * (st.Angle - last.Angle) * math.Pi / 180; gap > w.Spacing*(1+1e-9) || gap <= w.Stud {
						t.Errorf("studs %g apart", gap)
					}
				}
				if lastAtRiser != nil && st.Riser > 0 && !st.Before {
					within(t, "from stud to stud", st.Height-lastAtRiser.Height, s.UnitRise(), 1e-9*st.Height)
				}
				last = &st
				if st.Riser > 0 {
					lastAtRiser = &st
				}
			}
		}
	})
}

// Bearers: two a tread, their tops at its underside; the corners of each lie within
// the clear width and as far out as they can.
func TestBearers(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, w := anyCurve(t), walls()
		f := framed(t, s, w)
		if len(f.Bearers) != 2*s.Goings() {
			t.Fatalf("%d bearers for %d treads", len(f.Bearers), s.Goings())
		}
		for k, b := range f.Bearers {
			if b.Tread != k/2+1 || b.Ledger != (k%2 == 1) || b.Riser != b.Tread+k%2 {
				t.Errorf("bearer %d: %+v", k, b)
			}
			within(t, "top", b.Level, s.Levels[b.Tread]-s.Tread, 1e-9)
			within(t, "angle", b.Angle, s.Angle*float64(b.Riser-1)/float64(s.Goings()), 1e-9)
			within(t, "outer corner", math.Hypot(b.To(), b.Thickness), s.Outside(), 1e-6)
			within(t, "between the walls", b.Span, s.Width-7*inch, 1e-9)
			if !b.Ledger && b.From != s.Inside || b.From < s.Inside || b.OffWall != (b.From > s.Inside+3.5*inch) {
				t.Errorf("inner end: %+v", b)
			}
			if b.Level-b.Depth < s.Floor+w.Plates.Height()-1e-9 {
				t.Errorf("it reaches below the plates: %+v", b)
			}
		}
	})
}

// What cannot be framed is refused with its reason and what would do.
func TestFramingRefused(t *testing.T) {
	for _, c := range []struct {
		name, key, say string
		change         func(*turn.CurveSteps, *turn.CurveWalls)
	}{
		{"walls as wide as the stair", "width", "nothing between", func(s *turn.CurveSteps, _ *turn.CurveWalls) { s.Width = 7 * inch }},
		{"sheet narrower than the plate", "sheet", "3 1/2\" wide", func(_ *turn.CurveSteps, w *turn.CurveWalls) { w.Plates.SheetWidth = 3 * inch }},
		{"thick plates under a low tread", "tread", "left over plates", func(_ *turn.CurveSteps, w *turn.CurveWalls) { w.Plates.Layers = 8 }},
		{"studs one beside the other", "spacing", "6\" is the least", func(_ *turn.CurveSteps, w *turn.CurveWalls) { w.Spacing = 3 * inch }},
		// Two spaces in a going of 8 1/3: 3 / sin(4 1/6) = 41.29.
		{"a stud between, beside a ledger", "inside_radius", "3' 5 5/16\" or more", func(s *turn.CurveSteps, w *turn.CurveWalls) { s.Inside, w.Spacing = 41*inch, 6*inch }},
		// 1 1/2 / sin(8 1/3) = 10.35
		{"riser lines nearer than a stud", "inside_radius", "10 3/8\" or more", func(s *turn.CurveSteps, _ *turn.CurveWalls) { s.Inside = 10 * inch }},
	} {
		s, w := curveSteps(125, 16, 60, 36, 120, 1), walls()
		c.change(&s, &w)
		f, bad := s.Framing(w)
		found := false
		for _, b := range bad {
			found = found || b.Key == c.key && strings.Contains(b.Message, c.say)
		}
		if f != nil || !found {
			t.Errorf("%s: %v", c.name, bad)
		}
	}
}

// Where goings are narrow a ledger begins where it clears its tread's bearer: with
// goings of 10 degrees and both 1 1/2 in thick, (1.5 + 1.5 cos 10) / sin 10 = 17.145
// in from the centre. At an inside radius of 15 in that is over the inside wall, at
// 12 in beyond it. Under a first tread 2 3/4 in over the plates bearer and ledger
// are that high and stand on them.
func TestNarrowAndLowBearersByHand(t *testing.T) {
	for inside, offWall := range map[float64]bool{15: false, 12: true, 18: false} {
		b := framed(t, curveSteps(90, 10, inside, 36, 75, 1), walls()).Bearers[3]
		within(t, "inner end of the ledger", b.From/inch, max(inside, 17.145), 1e-3)
		if !b.Ledger || b.OffWall != offWall {
			t.Errorf("inside radius %v: %+v", inside, b)
		}
	}
	w := walls()
	w.Plates.Layers = 5
	for _, b := range framed(t, curveSteps(125, 16, 60, 36, 120, 1), w).Bearers[:2] {
		within(t, "depth", b.Depth/inch, 2.75, 1e-9)
		if !b.OnPlates {
			t.Errorf("%+v", b)
		}
	}
}
