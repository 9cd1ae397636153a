package stringer

import (
	"math"

	"stepoff/layout/geom"
)

// Router is how the housings are routed: with a bush round the cutter that runs
// along the edge of a template. Lengths in millimetres.
type Router struct {
	// FaceRadius is the cutter's radius at the face of the string: smaller than
	// half its diameter by what the walls are undercut.
	FaceRadius float64
	// Offset is how far the template's edge lies outside the housing's, everywhere:
	// half the bush less FaceRadius.
	Offset float64
	// Housing is what one pass of the template takes out, and Template its opening:
	// the tread and the riser under it, down into the housing below. In the blank
	// frame, placed at the first step: for any other, one Step farther along.
	Housing, Template geom.Path
	// Fence is how far the template's fence, which rides on the top edge, stands
	// from the nosing: the margin.
	Fence float64
}

// router works the template out.
func (s *Housed) router(bad *Refusals) Router {
	r := Router{FaceRadius: s.Cutter/2 - s.Depth*s.Undercut, Fence: s.Margin}
	r.Offset = s.Bush/2 - r.FaceRadius
	r.Housing = s.blankPath(s.pass())
	if len(*bad) > 0 {
		return r
	}
	say := s.Style.FormatMM
	var ok bool
	if r.Template, ok = r.Housing.Offset(r.Offset); !ok {
		bad.add("housing.bush", "a bush of %s sets the template's edge %s outside the housing, and the corner between nosing and riser is lost: it overhangs %s and is rounded to %s; take a smaller bush, or a larger cutter",
			say(s.Bush), say(r.Offset), say(s.Nosing), say(s.Round))
	}
	return r
}

// pass is what the template takes out at the first step, in elevation: where the
// treads lie it is the same at every one.
func (s *Housed) pass() geom.Path {
	const k = 1
	nose := s.nose(k)
	first := nose[0].From
	o := &outline{at: first}
	o.run(nose)
	top := s.Rise
	if s.open() {
		o.to(geom.Pt(s.riserLine(2), top))
		o.to(geom.Pt(s.riserLine(2), s.under(k)))
	} else {
		o.to(geom.Pt(s.riserFace(2), top))
		o.to(geom.Pt(s.wedgeBehind(2, top), top))
		o.to(s.heel(k))
		o.to(geom.Pt(s.riserLine(k), s.under(k)))
		o.to(s.heel(k - 1))
		o.to(geom.Pt(s.riserFace(k), s.wedgeUnder(k-1, s.riserFace(k))))
		o.to(geom.Pt(s.riserFace(k), s.under(k)))
	}
	if math.Hypot(o.at.X-first.X, o.at.Y-first.Y) > touching/1000 {
		o.to(first)
	} else {
		o.edges[len(o.edges)-1].To = first
	}
	// One straight edge where the tread's top runs on over the riser above.
	return geom.Path{Edges: straightened(o.edges), Closed: true}
}

// straightened joins straight edges that run on in one line.
func straightened(edges []geom.Edge) []geom.Edge {
	var out []geom.Edge
	for _, e := range edges {
		if n := len(out); n > 0 && !e.IsArc() && !out[n-1].IsArc() {
			a := math.Atan2(out[n-1].To.Y-out[n-1].From.Y, out[n-1].To.X-out[n-1].From.X)
			b := math.Atan2(e.To.Y-e.From.Y, e.To.X-e.From.X)
			if math.Abs(a-b) < 1e-9 {
				out[n-1].To = e.To
				continue
			}
		}
		out = append(out, e)
	}
	return out
}
