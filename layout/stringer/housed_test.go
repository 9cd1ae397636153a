package stringer

import (
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"pgregory.net/rapid"

	"stepoff/layout/geom"
)

// housed345 is the 3-4-5 stair with closed strings: treads 1 in with half-round
// nosings over 3/4 riser boards, wedges 1 in 16.
func housed345() HousedRequest {
	r := stair345()
	r.Tread = 1 * in
	return HousedRequest{
		SolidRequest: SolidRequest{
			Request: r, RiserBoard: 0.75 * in, Nosing: 1 * in, TopRiser: 130 * in,
			Margin: 1.5 * in, FootPlumb: 1.5 * in, HeadLevel: 4 * in,
		},
		HousingSizes: HousingSizes{Depth: 0.5 * in, WedgeTaper: 1. / 16, Round: 0.5 * in, Cutter: 0.5 * in, Bush: 0.625 * in},
	}
}

func mustHoused(t interface {
	Helper()
	Fatalf(string, ...any)
}, r HousedRequest) *Housed {
	t.Helper()
	s, bad := r.Housed()
	if len(bad) > 0 {
		t.Fatalf("refused: %v", bad)
	}
	return s
}

// Worked by hand: the top edge lies 1 1/2 square above the nosing line, which is
// 15/8 plumb; the first nosing is 1 3/4 before the first riser line, 7 1/2 high.
func TestHousedThreeFourFive(t *testing.T) {
	s := mustHoused(t, housed345())
	check(t, "step", s.Step, 12.5)
	// Top edge over the plumb cut at the foot: 7.5 - 1.5*3/4 + 15/8.
	check(t, "plumb cut at the foot", s.FootCut, 8.25)
	// Bottom edge: 11 1/4 square is 14 1/16 plumb below the top edge, which at the
	// first riser line is 7.5 + 1.75*3/4 + 15/8 high; it meets the floor at x = 4.5,
	// 7.75 from the plumb cut at x = -3.25.
	check(t, "seat", s.SeatCut, 7.75)
	// At the head, x = 130: the top edge 4 in before it is 7.5 + 127.75*3/4 + 15/8,
	// the bottom edge 7.5 + 131.75*3/4 + 15/8 - 14 1/16.
	check(t, "level cut at the head", s.HeadTop, 4)
	check(t, "plumb cut at the head", s.HeadCut, 14.0625-3)
	if got := len(s.Outline); got != 6 {
		t.Errorf("%d corners, want 6: two plumb cuts, two level cuts, two edges", got)
	}
	for k, at := range s.Marks {
		check(t, "a nosing's distance from the one before", at-s.Marks[0], 12.5*float64(k))
		check(t, "a nosing's distance from the top edge", s.Housings[k].Nosing.Y, 1.5)
	}
	// The wall under the tread's wedge falls 1/16 an inch from the riser line on, the
	// wall behind the riser leans as much: they meet where x = (10 + 7.5/16) / (1 - 1/256).
	heel := (10 + 7.5/16) / (1 - 1./256)
	below := (heel+1.75)*0.75 + 7.5 - (7.5 - 1 - heel/16) // plumb below the nosing line
	check(t, "housings' depth from the top edge", s.Deepest, 1.5+0.8*below)
	check(t, "wood left", s.Left, 11.25-1.5-0.8*below)
}

// Treads stand at k x rise, to the last digit that is printed or cut to.
func TestHousingsStandAtSharesOfTheRise(t *testing.T) {
	r := housed345()
	r.Rise = 107.0 / 15 * in // 8 ft 11 in in 15 risers: no rise a tape shows
	r.Risers, r.TopRiser = 15, 140*in
	s := mustHoused(t, r)
	for k, h := range s.Housings[:s.Notches()] {
		top := math.Inf(-1)
		e := s.ElevationPath(h.Outline)
		for _, edge := range e.Edges {
			if edge.IsArc() {
				top = math.Max(top, math.Max(edge.From.Y, edge.To.Y))
			}
		}
		if want := float64(k+1) * 107 / 15 * in; math.Abs(top-want) > 1e-9 {
			t.Errorf("the housing of tread %d has its top at %.9f mm, want %.9f", k+1, top, want)
		}
	}
}

// anyHoused draws a housed stair from what is built, wide enough to be laid out.
func anyHoused(t *rapid.T) HousedRequest {
	sixteenths := func(name string, lo, hi int) float64 { return float64(rapid.IntRange(lo, hi).Draw(t, name)) * in / 16 }
	r := housed345()
	r.Rise, r.Run = sixteenths("rise", 4*16, 9*16), sixteenths("run", 8*16, 14*16)
	r.LastTread, r.Risers = r.Run, rapid.IntRange(2, 20).Draw(t, "risers")
	r.Flush = rapid.Bool().Draw(t, "flush")
	r.Tread = sixteenths("tread", 14, 28)
	r.Nosing = sixteenths("nosing", 16, 24)
	r.Round = math.Min(r.Tread/2, r.Nosing) * float64(rapid.IntRange(3, 4).Draw(t, "round")) / 4
	r.RiserBoard = sixteenths("riser board", 8, 16)
	r.OnTread = rapid.Bool().Draw(t, "riser on the tread")
	if rapid.Bool().Draw(t, "open risers") {
		r.RiserBoard, r.TopRiser = 0, 0
	}
	r.TopRiser = float64(r.Notches()) * r.Run
	r.Margin = sixteenths("margin", 8, 40)
	r.Undercut = float64(rapid.IntRange(0, 1).Draw(t, "undercut")) / 12
	r.Width = 24 * in
	r.Below = sixteenths("flooring", 0, 16)
	r.Cutter = 7 * in / 16
	r.Bush = 9 * in / 16
	return r
}

// Housings lie one beside the other, within the string and the margin below its
// top edge, and each wedge fills what its housing leaves it.
func TestHousingsLieInTheString(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := mustHoused(t, anyHoused(t))
		if !geom.Simple(s.Outline) {
			t.Fatalf("the outline crosses itself: %v", s.Outline)
		}
		whole := 0.0
		for i, h := range s.Housings {
			ps := h.Outline.Points(0.01)
			whole += math.Abs(geom.Area(ps))
			if !geom.Simple(ps) {
				t.Fatalf("housing %d crosses itself: %v", i+1, ps)
			}
			for _, p := range ps {
				if !within(s.Outline, p) {
					t.Fatalf("housing %d leaves the string at %v", i+1, p)
				}
				if i < s.Notches() && p.Y < s.Margin-near {
					t.Fatalf("housing %d comes within %.4f of the top edge, the margin is %.4f", i+1, p.Y, s.Margin)
				}
			}
			for _, w := range h.Wedges {
				for _, p := range w {
					if !inAny(s.Housings, p) {
						t.Fatalf("a wedge of step %d leaves the housings at %v", i+1, p)
					}
				}
			}
			for j := range i {
				if a := overlap(s.Housings[j], h); a > 1e-6 {
					t.Fatalf("housings %d and %d share %.9f square mm", j+1, i+1, a)
				}
			}
		}
	})
}

// The two hands are mirror images, and a mirror image's mirror image is the string.
func TestHandsAreMirrorImages(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := mustHoused(t, anyHoused(t))
		for _, h := range s.Housings {
			l, r := LeftString.Face(h.Outline), RightString.Face(h.Outline)
			if math.Abs(l.Area()+r.Area()) > 1e-6 {
				t.Fatalf("left encloses %g, right %g: not each the other's mirror image", l.Area(), r.Area())
			}
			twice := LeftString.Face(l)
			for k, e := range h.Outline.Edges {
				if twice.Edges[k] != e {
					t.Fatalf("mirrored twice, %v has become %v", e, twice.Edges[k])
				}
			}
		}
	})
}

// A cutter whose bush runs along the template's edge cuts to the housing's wall:
// the bush's middle, half the bush inside the template, is the cutter's radius
// inside the housing.
func TestTemplateCutsTheHousing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := anyHoused(t)
		r.Round = math.Min(r.Round, r.Nosing-0.25*in)
		s := mustHoused(t, r)
		path, ok := s.Router.Template.Offset(-s.Bush / 2)
		if !ok {
			t.Fatalf("the bush cannot run in the template")
		}
		for i, e := range path.Edges {
			for f := 0.0; f < 1; f += 0.125 {
				wall := s.Router.Housing.Edges[i]
				d, _ := wall.Nearest(e.At(f))
				if !wall.IsArc() { // round a corner of the wood the middle runs on past the wall's end
					along := r2.Unit(r2.Sub(wall.To, wall.From))
					d = math.Abs(r2.Cross(along, r2.Sub(e.At(f), wall.From)))
				}
				if math.Abs(d-s.Router.FaceRadius) > near {
					t.Fatalf("on edge %d the cutter's middle is %.6f from the wall, want its radius %.6f", i, d, s.Router.FaceRadius)
				}
			}
		}
	})
}

// One profile serves: a wedge's thick end less its thin end is its length times
// the taper, and driven home it touches board and wall.
func TestWedges(t *testing.T) {
	s := mustHoused(t, housed345())
	var count int
	for _, w := range s.Wedges {
		count += w.Count
		if math.Abs((w.Thick-w.Tip)-w.Length/16) > near {
			t.Errorf("a wedge %.3f long goes from %.3f to %.3f: not 1 in 16", w.Length, w.Tip, w.Thick)
		}
	}
	if want := 2 * s.Notches(); count != want {
		t.Errorf("%d wedges a string, want %d: one under each tread, one behind each riser", count, want)
	}
	// Under a tread: from the riser line to its back, 10 - 3/4; thick 9 1/4 / 16.
	check(t, "thick end under a tread", s.Wedges[0].Thick, 9.25/16)
	check(t, "length under a tread", s.Wedges[0].Length, 9.25-2)
}

func TestHousedRefusals(t *testing.T) {
	for _, c := range []struct {
		name, key, words string
		edit             func(*HousedRequest)
	}{
		{"string too narrow", "stringer.stock", `wider than 10 3/16"-`, func(r *HousedRequest) { r.Width = 9.25 * in }},
		{"housing too deep", "housing.depth", `at most 3/4"`, func(r *HousedRequest) { r.Depth = 1 * in }},
		{"cutter larger than the riser board", "housing.cutter", `riser board is thick: 3/4"`, func(r *HousedRequest) { r.Cutter, r.Bush = 0.875*in, in }},
		{"cutter larger than the tread", "housing.cutter", `tread is thick`, func(r *HousedRequest) { r.Tread, r.Round, r.Cutter, r.Bush = 0.625*in, 0, 0.7*in, in }},
		{"cutter too large for the nosing", "housing.cutter", "cannot follow", func(r *HousedRequest) { r.Round = 0.125 * in }},
		{"bush smaller than cutter", "housing.bush", "does not pass", func(r *HousedRequest) { r.Bush = 0.5 * in }},
		{"bush too large for the nosing", "housing.bush", "corner between nosing and riser", func(r *HousedRequest) { r.Bush, r.Nosing, r.Round = 2*in, 0.55*in, 0.5*in }},
		{"nosing rounder than half", "housing.round", "at most 1/2", func(r *HousedRequest) { r.Round = 0.75 * in }},
		{"round back into the riser", "housing.round", "riser board", func(r *HousedRequest) { r.Nosing, r.Bush = 0.25*in, 0.52*in }},
		{"no wedge", "housing.wedge_taper", "nothing to drive", func(r *HousedRequest) { r.WedgeTaper = 1. / 100 }},
		{"undercut takes the cutter", "housing.undercut", "leave nothing", func(r *HousedRequest) { r.Undercut = 1 }},
		{"plumb cut too far out", "housing.foot_plumb", "run into the floor", func(r *HousedRequest) { r.FootPlumb = 14 * in }},
		{"foot too high", "stringer.foot_levels", "runs out of it", func(r *HousedRequest) { r.Below = -6 * in }},
	} {
		r := housed345()
		c.edit(&r)
		s, bad := r.Housed()
		if s != nil || len(bad) != 1 || bad[0].Key != c.key || !strings.Contains(bad[0].Message, c.words) {
			t.Errorf("%s: refusals %v, want one of %s with %q", c.name, bad, c.key, c.words)
		}
	}
}

// within tells whether a point lies in a polygon or on its edge.
func within(ps []geom.Point, p geom.Point) bool {
	in := false
	for i := range ps {
		a, b := ps[i], ps[(i+1)%len(ps)]
		if d, _ := geom.Line(a, b).Nearest(p); d < near {
			return true
		}
		if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(p.Y-a.Y)/(b.Y-a.Y)*(b.X-a.X) {
			in = !in
		}
	}
	return in
}

func inAny(all []Housing, p geom.Point) bool {
	for _, h := range all {
		if within(h.Outline.Points(0.01), p) {
			return true
		}
	}
	return false
}

// overlap is the area two housings share.
func overlap(a, b Housing) float64 {
	if !a.Outline.Box().Meets(b.Outline.Box()) {
		return 0
	}
	sum := 0.0
	for _, x := range geom.Triangles(a.Outline.Around(0.01)) {
		for _, y := range geom.Triangles(b.Outline.Around(0.01)) {
			sum += math.Abs(geom.Area(geom.Common(x, y)))
		}
	}
	return sum
}
