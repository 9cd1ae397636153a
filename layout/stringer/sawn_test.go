package stringer

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"pgregory.net/rapid"

	"stepoff/layout/geom"
)

// in is an inch in millimetres.
const in = 25.4

// near is how close computed figures must come: a ten-thousandth of a
// millimetre, well below anything a saw or a printer tells apart.
const near = 1e-4

func check(t *testing.T, what string, got, wantInches float64) {
	t.Helper()
	if math.Abs(got-wantInches*in) > near {
		t.Errorf("%s = %.6f in, want %.6f", what, got/in, wantInches)
	}
}

// stair345 is the 3-4-5 stair: rise 7 1/2 and run 10, so every figure can be
// checked by hand.
func stair345() Request {
	return Request{
		Rise: 7.5 * in, Run: 10 * in, Risers: 14, Tread: 1.5 * in, LastTread: 10 * in,
		Width: 11.25 * in, Thickness: 1.5 * in,
		Saw:        Saw{Blade: 7.25 * in, Depth: 1.625 * in, StopShort: in / 8},
		SquareStep: in / 16,
	}
}

func mustSawn(t *testing.T, r Request) *Sawn {
	t.Helper()
	s, bad := r.Sawn()
	if len(bad) > 0 {
		t.Fatalf("refused: %v", bad)
	}
	return s
}

// Worked by hand from the similar triangles of a 3-4-5 stair.
func TestThreeFourFive(t *testing.T) {
	s := mustSawn(t, stair345())
	check(t, "step", s.Step, 12.5)
	check(t, "notch depth", s.NotchDepth, 6)
	check(t, "throat", s.Throat, 5.25)
	check(t, "bottom drop", s.BottomDrop, 1.5)
	check(t, "first riser cut", s.FirstRiserCut, 6)
	check(t, "seat cut", s.SeatCut, 10.75)
	check(t, "head cut", s.HeadCut, 6.5625)
	check(t, "least blank", s.LeastBlank, 161.6)
	if deg := s.Pitch * 180 / math.Pi; math.Abs(deg-36.8699) > 5e-5 {
		t.Errorf("pitch = %.4f degrees, want 36.8699", deg)
	}
	for k, tip := range s.Tips {
		check(t, "tip", tip.X, 3.6+12.5*float64(k))
		check(t, "tip's distance from the edge", tip.Y, 0)
	}
	if s.Notches != 13 || len(s.Tips) != 13 || len(s.Roots) != 12 {
		t.Errorf("%d notches, %d tips, %d roots; want 13, 13, 12", s.Notches, len(s.Tips), len(s.Roots))
	}
	if s.Square.Drift != 0 || s.Square.DriftRise != 0 {
		t.Errorf("a square set to 7 1/2 and 10 drifts by %g and %g; want no drift", s.Square.Drift, s.Square.DriftRise)
	}
}

// Flooring of 3/4 laid later: the foot bears 3/4 lower, and all that hangs on
// it moves.
func TestFlooringToCome(t *testing.T) {
	r := stair345()
	r.Below = 0.75 * in
	s := mustSawn(t, r)
	check(t, "bottom drop", s.BottomDrop, 0.75)
	check(t, "first riser cut", s.FirstRiserCut, 6.75)
	check(t, "seat cut", s.SeatCut, 9.75)
	check(t, "least blank", s.LeastBlank, 162.05)
}

// A hung stringer of two risers has one tread: the board is deeper than the
// stair is high, so the seat runs through to the head plumb line.
func TestTwoRisersHung(t *testing.T) {
	r := stair345()
	r.Risers = 2
	s := mustSawn(t, r)
	check(t, "seat cut", s.SeatCut, 10)
	check(t, "head cut", s.HeadCut, 6)
	if !s.Clipped || len(s.Outline) != 4 || len(s.Roots) != 0 {
		t.Errorf("clipped %v, %d corners, %d roots; want true, 4, 0", s.Clipped, len(s.Outline), len(s.Roots))
	}
}

// The last tread cut, derived from where the floor's own nosing has to stand
// for the top run to equal the others.
func TestLastTread(t *testing.T) {
	hung := Head{Run: 10, RiserBoard: 0.75, Nosing: 1, FloorNosing: 1, Covered: true}
	for _, c := range []struct {
		name string
		edit func(*Head)
		want float64
	}{
		{"riser board above", func(*Head) {}, 10},
		{"no riser board above", func(h *Head) { h.Covered = false }, 9.25},
		{"floor overhangs 1/4 more", func(h *Head) { h.FloorNosing = 1.25 }, 10.25},
		{"hanger board", func(h *Head) { h.Behind = 0.75 }, 9.25},
		{"flush", func(h *Head) { h.Flush, h.Covered = true, false }, 10},
		{"flush with packing", func(h *Head) { h.Flush, h.Behind = true, 0.5 }, 9.5},
	} {
		h := hung
		c.edit(&h)
		if got := LastTread(h); got != c.want {
			t.Errorf("%s: last tread cut %g, want %g", c.name, got, c.want)
		}
	}
}

// The chords of a 7 1/4 in blade, worked from sqrt(R^2 - (R-c+z)^2).
func TestKerf(t *testing.T) {
	for _, c := range []struct{ depth, want float64 }{{1.625, 2.080}, {1.75, 1.780}, {2.4375, 0.992}} {
		got := Saw{Blade: 7.25, Depth: c.depth}.kerf(1.5).FarUncut
		if math.Abs(got-c.want) > 0.0006 { // the figures are given to a thousandth
			t.Errorf("blade %.4f deep in 1 1/2 stock leaves %.4f on the far face, want %.3f", c.depth, got, c.want)
		}
	}
}

// An overcut e along a line shortens the square distance to the far edge by
// e times the cosine or sine of the pitch: 4/5 and 3/5 here.
func TestOvercutCost(t *testing.T) {
	riser, tread := mustSawn(t, stair345()).OvercutCost(1)
	if math.Abs(riser-0.8) > 1e-12 || math.Abs(tread-0.6) > 1e-12 {
		t.Errorf("an overcut of 1 costs %g and %g, want 0.8 and 0.6", riser, tread)
	}
}

// The 3-4-5 stair's throat of 5 1/4 has 1/4 to spare over 5: 1/4 / (4/5) along a
// riser line, 1/4 / (3/5) along a tread line.
func TestOvercutLimit(t *testing.T) {
	s := mustSawn(t, stair345())
	riser, tread := s.OvercutLimit(5 * in)
	check(t, "riser line", riser, 0.3125)
	check(t, "tread line", tread, 0.25/0.6)
	if riser, tread := s.OvercutLimit(5.5 * in); riser != 0 || tread != 0 {
		t.Errorf("no throat to spare, yet an overcut of %g and %g is allowed", riser, tread)
	}
}

// Kicker and ledger change the outline and no other figure.
func TestNotchesForPlateAndLedger(t *testing.T) {
	plain := mustSawn(t, stair345())
	r := stair345()
	r.Kicker = &Block{Height: 1.5 * in, Depth: 3.5 * in}
	r.Ledger = &Block{Height: 3.5 * in, Depth: 1.5 * in}
	s := mustSawn(t, r)
	check(t, "seat cut", s.SeatCut, plain.SeatCut/in)
	check(t, "least blank", s.LeastBlank, plain.LeastBlank/in)
	if got, want := len(s.Outline), len(plain.Outline)+4; got != want {
		t.Errorf("%d corners, want %d", got, want)
	}
	// What the two notches take out of the area: the kicker's rectangle, and the
	// ledger's with the triangle the sloping edge adds under it.
	lost := area(plain.Outline) - area(s.Outline)
	want := 1.5*3.5 + 3.5*1.5 + 1.5*1.5*0.75/2
	if math.Abs(lost-want*in*in) > 1e-3 {
		t.Errorf("the notches take %.5f sq in, want %.5f", lost/in/in, want)
	}
}

func TestRefusals(t *testing.T) {
	for _, c := range []struct {
		name, key string
		edit      func(*Request)
	}{
		{"board cut through", "stringer.stock", func(r *Request) { r.Width = 5.5 * in }},
		{"tread as thick as the rise", "tread.thickness", func(r *Request) { r.Tread = 7.5 * in }},
		{"foot too high", "stringer.foot_levels", func(r *Request) { r.Below = -6 * in }},
		{"foot too low", "stringer.foot", func(r *Request) { r.Below = 9 * in }},
		{"blade too shallow", "saw.depth", func(r *Request) { r.Saw.Depth = 1.25 * in }},
		{"blade too deep", "saw.depth", func(r *Request) { r.Saw.Depth = 3.625 * in }},
		{"tilted beyond its depth", "saw.bevel", func(r *Request) { r.Saw.Bevel = 30 * math.Pi / 180 }},
		{"hole as wide as the throat", "saw.root_hole", func(r *Request) { r.Saw.RootHole = 10.5 * in }},
		{"hole as wide as the rise", "saw.root_hole", func(r *Request) { r.Saw.RootHole = 7.6 * in }},
		{"stopped before it begins", "saw.stop_short", func(r *Request) { r.Saw.StopShort = 7.5 * in }},
		{"a kilometre of stair", "levels.total_rise", func(r *Request) { r.Run, r.LastTread = 1e9, 1e9 }},
		{"kicker too high", "stringer.kicker", func(r *Request) { r.Kicker = &Block{6 * in, 1 * in} }},
		{"kicker too deep", "stringer.kicker", func(r *Request) { r.Kicker = &Block{1 * in, 11 * in} }},
		{"ledger too high", "stringer.ledger", func(r *Request) { r.Ledger = &Block{7.25 * in, 1.5 * in} }},
		{"ledger too thick", "stringer.ledger", func(r *Request) { r.Ledger = &Block{3.5 * in, 10 * in} }},
		{"packing as deep as the run", "stringer.behind_head", func(r *Request) { r.LastTread = 0 }},
		{"floor nosing beyond the board", "stringer.top_nosing", func(r *Request) { r.LastTread = 20 * in }},
	} {
		r := stair345()
		c.edit(&r)
		s, bad := r.Sawn()
		if s != nil || len(bad) != 1 || bad[0].Key != c.key {
			t.Errorf("%s: refusals %v, want one of %s", c.name, bad, c.key)
		}
	}
}

// anyRequest draws a stair from what is built: rises 4 to 9, runs 8 to 14, 2 to
// 20 risers, boards 2x10 and 2x12.
func anyRequest(t *rapid.T) Request {
	sixteenths := func(name string, lo, hi int) float64 {
		return float64(rapid.IntRange(lo*16, hi*16).Draw(t, name)) * in / 16
	}
	r := stair345()
	r.Rise, r.Run = sixteenths("rise", 4, 9), sixteenths("run", 8, 14)
	r.Risers = rapid.IntRange(2, 20).Draw(t, "risers")
	r.Flush = rapid.Bool().Draw(t, "flush")
	r.Tread = sixteenths("tread", 0, 2)
	r.Below = sixteenths("below", -1, 1)
	r.LastTread = r.Run - sixteenths("shorter", 0, 1)
	r.Width = rapid.SampledFrom([]float64{9.25, 11.25}).Draw(t, "width") * in
	if rapid.Bool().Draw(t, "kicker") {
		r.Kicker = &Block{1.5 * in, 3.5 * in}
	}
	if rapid.Bool().Draw(t, "ledger") {
		r.Ledger = &Block{3.5 * in, 1.5 * in}
	}
	return r
}

// Properties of every stringer that is not refused.
func TestProperties(t *testing.T) {
	built := 0
	rapid.Check(t, func(t *rapid.T) {
		r := anyRequest(t)
		s, bad := r.Sawn()
		if len(bad) > 0 {
			return
		}
		built++
		notches := r.Risers
		if !r.Flush {
			notches-- // the top tread is one rise below the floor
		}
		if got := s.Throat + s.NotchDepth; math.Abs(got-s.Width) > 1e-9 {
			t.Fatalf("throat + notch depth = %g, the board is %g wide", got, s.Width)
		}
		if s.Notches != notches || len(s.Tips) != notches || len(s.Roots) != len(s.Tips)-1 {
			t.Fatalf("%d tips, %d roots for %d notches", len(s.Tips), len(s.Roots), notches)
		}
		for k := 1; k < len(s.Tips); k++ {
			if got := s.Tips[k].X - s.Tips[k-1].X; math.Abs(got-s.Step) > 1e-9 {
				t.Fatalf("tips %d and %d stand %g apart, a step is %g", k, k+1, got, s.Step)
			}
		}
		for k, root := range s.Roots {
			if math.Abs(root.Y-s.NotchDepth) > 1e-9 {
				t.Fatalf("root %d lies %g deep, the notch depth is %g", k+1, root.Y, s.NotchDepth)
			}
		}
		if !geom.Simple(s.Outline) {
			t.Fatalf("the outline crosses itself: %v", s.Outline)
		}
		for _, p := range s.Outline {
			if p.X < -1e-9 || p.X > s.LeastBlank+1e-9 || p.Y < -1e-9 || p.Y > s.Width+1e-9 {
				t.Fatalf("corner %v lies off the board of %g by %g", p, s.LeastBlank, s.Width)
			}
			back := s.blank(s.Elevation(p))
			if r2.Norm(r2.Sub(back, p)) > 1e-9 {
				t.Fatalf("%v in elevation and back is %v", p, back)
			}
		}
		// The outline runs along cuts and the board's own edges, nothing else.
		for i, p := range s.Outline {
			q := s.Outline[(i+1)%len(s.Outline)]
			if !onCut(s, p, q) && !onEdge(s, p, q) {
				t.Fatalf("the outline's side from %v to %v is neither a cut nor the board's edge", p, q)
			}
		}
	})
	if built < 30 {
		t.Errorf("only %d of the random stairs could be built: too few to say anything", built)
	}
}

func onCut(s *Sawn, p, q geom.Point) bool {
	for _, c := range s.Cuts {
		if geom.Distance(p, c.From, c.To) < near && geom.Distance(q, c.From, c.To) < near {
			return true
		}
	}
	return false
}

func onEdge(s *Sawn, p, q geom.Point) bool {
	return math.Abs(p.Y-s.Width) < near && math.Abs(q.Y-s.Width) < near
}

func area(ps []geom.Point) float64 { return math.Abs(geom.Area(ps)) }

// What 1/2 in past a root leaves of the 3-4-5 stair's throat of 5 1/4: less 4/5
// of it along a riser line, 3/5 along a tread line; the worse of both together.
// Source: e cos theta and e sin theta.
func TestThroatAfterAnOvercut(t *testing.T) {
	s := mustSawn(t, stair345())
	check(t, "along the riser line", s.AfterOvercut(in/2, 0), 4.85)
	check(t, "along the tread line", s.AfterOvercut(0, in/2), 4.95)
	check(t, "both", s.AfterOvercut(in/2, in/2), 4.85)
}

// A 1/2 in hole about the corner takes 1/4 off the throat, the saw stops so much
// sooner, and has as much left to do by hand; an overcut costs only what runs
// past the hole.
func TestHoleAtTheRoot(t *testing.T) {
	r := stair345()
	r.Saw.RootHole = in / 2
	s, plain := mustSawn(t, r), mustSawn(t, stair345())
	check(t, "throat", s.Throat, 5)
	check(t, "after 1/4 along the riser line", s.AfterOvercut(in/4, 0), 5)
	check(t, "after 1/2", s.AfterOvercut(in/2, 0), 4.85)
	riser, tread := s.OvercutLimit(4.85 * in)
	check(t, "limit on the riser line", riser, 0.5)
	check(t, "limit on the tread line", tread, 0.4/0.6)
	for i, c := range s.Cuts {
		p := plain.Cuts[i]
		if c.From != p.From || c.To != p.To {
			t.Errorf("cut %d moved", i)
		}
		if c.Stops {
			check(t, "stop", r2.Norm(r2.Sub(c.To, c.Stop)), 0.375)
			check(t, "left by hand", c.Uncut, p.Uncut/in)
		}
	}
}

// A tilted blade has T / cos of wood to come through: with 15 degrees and 1 5/8
// deep, 1.553 in of 1 1/2 stock, and sqrt(R^2 - (R - c + 1.553)^2) of chord on
// the far face.
func TestBevel(t *testing.T) {
	w := Saw{Blade: 7.25, Depth: 1.625, Bevel: 15 * math.Pi / 180}
	through := 1.5 / math.Cos(w.Bevel)
	want := math.Sqrt(3.625*3.625-2*2) - math.Sqrt(3.625*3.625-(3.625-1.625+through)*(3.625-1.625+through))
	if got := w.kerf(1.5).FarUncut; math.Abs(got-want) > 1e-4 {
		t.Errorf("left on the far face: %.4f, want %.4f", got, want)
	}
	if got := w.BevelOffset(1.5); math.Abs(got-0.4019) > 1e-4 {
		t.Errorf("the far face's line lies %.4f beside, want 0.4019", got)
	}
}

// Beside a kicker's notch 3 1/2 deep and 1 1/2 high, 4 1/2 of the first riser
// cut's 6 is left plumb over its corner, which is less than anything else. Beside
// a ledger's, the corner lies 1 1/2 before the head and 3 1/2 up from the plumb
// cut's end: 6 9/16 - 3 1/2 = 3 1/16 under the last tread cut.
func TestNotchSection(t *testing.T) {
	r := stair345()
	r.Kicker = &Block{Height: 1.5 * in, Depth: 3.5 * in}
	r.Ledger = &Block{Height: 3.5 * in, Depth: 1.5 * in}
	s := mustSawn(t, r)
	kicker, _ := s.NotchSection(KickerCut)
	ledger, _ := s.NotchSection(LedgerCut)
	check(t, "kicker", kicker, 4.5)
	check(t, "ledger", ledger, 3.0625)
	if _, ok := mustSawn(t, stair345()).NotchSection(KickerCut); ok {
		t.Error("a notch is found where there is none")
	}
}
