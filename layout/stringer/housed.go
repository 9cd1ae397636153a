package stringer

import (
	"math"

	"stepoff/layout/geom"
	"stepoff/spec/measure"
)

// HousedRequest is what is known before a housed string is laid out: closed, with
// treads and risers let into its face and wedged from below. Lengths in
// millimetres.
type HousedRequest struct {
	SolidRequest
	HousingSizes
}

// HousingSizes are the sizes of the housings and what they are routed with.
// Lengths in millimetres.
type HousingSizes struct {
	Depth      float64 // of the housings, square into the face
	WedgeTaper float64 // of the wedges under treads and behind risers alike: thickness / length
	Undercut   float64 // of the housings' walls: how far each leans out at the bottom / depth; 0: square walls
	Round      float64 // radius to which the tread's nosing is rounded, above and below; half its thickness: a half round

	Cutter float64 // diameter of the router cutter, where it is widest
	Bush   float64 // outside diameter of the guide bush that runs in the template
}

// Housed is a housed string laid out. Points lie in the blank frame; Hand.Face
// turns them for either string.
type Housed struct {
	Solid
	HousingSizes

	Housings []Housing
	Deepest  float64 // how far below the top edge, square in, the housings reach
	Left     float64 // wood left square across, from there to the bottom edge
	Behind   float64 // wood left behind the housings

	Wedges []Wedge
	Router Router
}

// Housing is what one tread and the riser under it are let into, as seen on the
// face: the next one up begins where it ends, so that together they are one
// recess. The one above the last tread holds a riser board alone.
type Housing struct {
	Step    int       // number of the tread, 1 up; of the riser alone, that of the riser
	Outline geom.Path // closed; nosings are true arcs
	Open    []int     // edges of the outline that are no wall: it opens there into the next one, or out of the string
	Nosing  geom.Point
	Wedges  [][]geom.Point // under the tread and behind the riser, driven home
}

// Walls are the runs of the outline that are walls of the recess.
func (h *Housing) Walls() []geom.Path {
	open := map[int]bool{}
	for _, k := range h.Open {
		open[k] = true
	}
	n := len(h.Outline.Edges)
	start := 0 // behind an open edge, so that no run is broken where the outline begins
	if len(h.Open) == 0 {
		return []geom.Path{h.Outline}
	}
	start = h.Open[0] + 1
	var runs []geom.Path
	var run geom.Path
	for i := range n {
		k := (start + i) % n
		if open[k] {
			if len(run.Edges) > 0 {
				runs = append(runs, run)
			}
			run = geom.Path{}
			continue
		}
		run.Edges = append(run.Edges, h.Outline.Edges[k])
	}
	return runs
}

// WedgeTip is how thick a wedge is left at its thin end: a feather edge breaks
// when it is driven (common practice).
const WedgeTip = measure.Inch / 8

// Housed lays the string out. What cannot be built is refused with every reason
// there is.
func (r HousedRequest) Housed() (*Housed, Refusals) {
	var bad Refusals
	s := &Housed{Solid: Solid{SolidRequest: r.SolidRequest}, HousingSizes: r.HousingSizes, Behind: r.Thickness - r.Depth}
	s.refuseSizes(&bad)
	s.lay("housing", &bad)
	if len(bad) > 0 {
		return nil, bad
	}
	for k := 1; k <= s.Notches(); k++ {
		s.Housings = append(s.Housings, s.housing(k))
	}
	if h, ok := s.topRiserHousing(); ok {
		s.Housings = append(s.Housings, h)
	}
	for _, h := range s.Housings {
		s.Deepest = math.Max(s.Deepest, h.Outline.Box().Max.Y)
	}
	s.Left = s.Width - s.Deepest
	if s.Left < touching {
		say := s.Style.FormatMM
		bad.add("stringer.stock", "a string %s wide is too narrow: with %s above the nosing line its housings reach %s in from the top edge; take a string wider than %s, or a smaller housing.margin",
			say(s.Width), say(s.Margin), say(s.Deepest), say(s.Deepest))
		return nil, bad
	}
	s.refuseFoot(&bad)
	s.Router = s.router(&bad)
	if len(bad) == 0 {
		s.wedges(&bad)
	}
	if len(bad) > 0 {
		return nil, bad
	}
	return s, nil
}

// open tells whether the stair has no riser boards: treads are then housed to
// their own size, with no wedges.
func (s *Housed) open() bool { return s.RiserBoard == 0 }

// riserFace is the x of the face of riser board k, in elevation.
func (s *Housed) riserFace(k int) float64 {
	return s.riserLine(k) - s.RiserBoard
}

// under is the level of the underside of tread k.
func (s *Housed) under(k int) float64 { return float64(k)*s.Rise - s.Tread }

// wedgeUnder is the level of the wall under tread k's wedge, and wedgeBehind the x
// of the wall behind riser k's, in elevation: both begin where the riser board's
// back meets the tread's underside, and leave the boards at the one taper.
func (s *Housed) wedgeUnder(k int, x float64) float64 {
	return s.under(k) - (x-s.riserLine(k))*s.WedgeTaper
}

func (s *Housed) wedgeBehind(k int, y float64) float64 {
	return s.riserLine(k) + (s.under(k)-y)*s.WedgeTaper
}

// heel is where the wall under tread k meets the wall behind riser k+1.
func (s *Housed) heel(k int) geom.Point {
	t := s.WedgeTaper
	// x = run + (rise - y) t and y = -x t, from the corner the walls of step k begin in.
	x := (s.Run + s.Rise*t) / (1 - t*t)
	return geom.Pt(s.riserLine(k)+x, s.under(k)-x*t)
}

// nose are the edges round the nosing of a tread, from its underside to its top.
func (s *Housed) nose(k int) []geom.Edge {
	tip := s.nosing(k)
	under := tip.Y - s.Tread
	rho := s.Round
	at := geom.Pt(tip.X+rho, tip.Y-rho)
	switch {
	case rho == 0:
		return []geom.Edge{geom.Line(geom.Pt(tip.X, under), tip)}
	case 2*rho > s.Tread-touching/1000: // a half round, whatever rounding made of the half
		rho = s.Tread / 2
		return []geom.Edge{{From: geom.Pt(tip.X+rho, under), To: geom.Pt(tip.X+rho, tip.Y), Centre: geom.Pt(tip.X+rho, tip.Y-rho), Radius: rho, Sweep: -math.Pi}}
	}
	low := geom.Pt(tip.X+rho, under+rho)
	return []geom.Edge{
		{From: geom.Pt(tip.X+rho, under), To: geom.Pt(tip.X, low.Y), Centre: low, Radius: rho, Sweep: -math.Pi / 2},
		geom.Line(geom.Pt(tip.X, low.Y), geom.Pt(tip.X, at.Y)),
		{From: geom.Pt(tip.X, at.Y), To: geom.Pt(tip.X+rho, tip.Y), Centre: at, Radius: rho, Sweep: -math.Pi / 2},
	}
}

// outline gathers an outline corner by corner, and which of its edges are open.
type outline struct {
	edges []geom.Edge
	at    geom.Point
	open  []int
}

func (o *outline) to(p geom.Point) {
	if p != o.at {
		o.edges = append(o.edges, geom.Line(o.at, p))
	}
	o.at = p
}

func (o *outline) opensTo(p geom.Point) {
	if p != o.at {
		o.open = append(o.open, len(o.edges))
	}
	o.to(p)
}

func (o *outline) run(edges []geom.Edge) {
	o.edges = append(o.edges, edges...)
	o.at = edges[len(edges)-1].To
}

// housing is that of tread k and the riser under it.
func (s *Housed) housing(k int) Housing {
	nose := s.nose(k)
	first := nose[0].From
	o := &outline{at: first}
	o.run(nose)
	top := float64(k) * s.Rise
	last := k == s.Notches()
	switch {
	case s.open() && last:
		o.to(geom.Pt(s.HeadX(), top))
		o.opensTo(geom.Pt(s.HeadX(), s.under(k)))
	case s.open():
		o.to(geom.Pt(s.riserLine(k+1), top))
		o.to(geom.Pt(s.riserLine(k+1), s.under(k)))
	default:
		s.behind(o, k)
		s.riser(o, k)
	}
	if o.at != first {
		o.to(first)
	}
	h := Housing{Step: k, Outline: s.blankPath(geom.Path{Edges: o.edges, Closed: true}), Open: o.open, Nosing: s.blank(s.nosing(k))}
	for _, w := range s.driven(k) {
		var ps []geom.Point
		for _, p := range w {
			ps = append(ps, s.blank(p))
		}
		h.Wedges = append(h.Wedges, ps)
	}
	return h
}

// behind runs along the top of tread k, round its back and along the wall under
// its wedge to where that begins.
func (s *Housed) behind(o *outline, k int) {
	top := float64(k) * s.Rise
	if k < s.Notches() {
		o.to(geom.Pt(s.riserFace(k+1), top))
		o.opensTo(geom.Pt(s.wedgeBehind(k+1, top), top)) // into the riser's housing above
		o.to(s.heel(k))
	} else {
		head := s.HeadX()
		if face, ok := s.topRiserFace(); ok {
			o.to(geom.Pt(face, top))
			o.opensTo(geom.Pt(head, top))
		} else {
			o.to(geom.Pt(head, top))
		}
		o.opensTo(geom.Pt(head, s.wedgeUnder(k, head))) // out at the head plumb cut
	}
	o.to(geom.Pt(s.riserLine(k), s.under(k)))
}

// riser runs down the wall behind riser k and up its face to the underside of
// tread k; it ends at the top of the tread below, or at the floor.
func (s *Housed) riser(o *outline, k int) {
	low := float64(k-1) * s.Rise
	if k == 1 {
		low = -s.Below
	}
	o.to(geom.Pt(s.wedgeBehind(k, low), low))
	o.opensTo(geom.Pt(s.riserFace(k), low))
	o.to(geom.Pt(s.riserFace(k), s.under(k)))
}

// topRiserFace is the x of the face of the riser board above the last tread, in
// elevation; ok is false where there is none, or where it stands past the string.
func (s *Housed) topRiserFace() (x float64, ok bool) {
	if s.Flush || s.TopRiser == 0 || s.open() {
		return 0, false
	}
	x = s.TopRiser - s.RiserBoard
	return x, x < s.HeadX()-touching
}

// topRiserHousing holds the riser board above the last tread: nailed to the
// header, so without a wedge.
func (s *Housed) topRiserHousing() (Housing, bool) {
	face, ok := s.topRiserFace()
	if !ok {
		return Housing{}, false
	}
	n := s.Notches()
	head, low, high := s.HeadX(), float64(n)*s.Rise, s.topEdgeY(s.HeadX()-s.HeadTop)
	o := &outline{at: geom.Pt(face, low)}
	if level := head - s.HeadTop; face < level {
		o.to(geom.Pt(face, s.topEdgeY(face)))
		o.opensTo(geom.Pt(level, high))
	} else {
		o.to(geom.Pt(face, high))
	}
	o.opensTo(geom.Pt(head, high))
	o.opensTo(geom.Pt(head, low))
	o.opensTo(geom.Pt(face, low))
	return Housing{Step: n + 1, Outline: s.blankPath(geom.Path{Edges: o.edges, Closed: true}), Open: o.open}, true
}
