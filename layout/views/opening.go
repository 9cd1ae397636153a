package views

import (
	"math"
	"slices"

	"stepoff/layout/drawing"
	"stepoff/layout/geom"
	"stepoff/spec/rules"
)

// opening draws what of the upper floor has to be open for the code's headroom,
// as one outline: long dashes and two dots, since it lies above the cut (ISO 128,
// line 05.1). Nothing is drawn where floor depth or code are not known.
func (p *plan) opening() {
	code, ok := rules.Lookup(p.s.Job.Code.Name)
	if !ok {
		return
	}
	limit, ok := code.Limit(rules.HeadroomMin)
	if !ok {
		return
	}
	open := p.s.OpeningInPlan(limit.Length.MM())
	for i, o := range open {
		var others [][]geom.Point
		for j, other := range open {
			if j != i {
				others = append(others, other.Outline.Around(behindBy))
			}
		}
		for _, side := range o.Outline.Edges {
			for _, part := range outside(side, others) {
				p.d.Add(drawing.Path{Layer: drawing.Lumber, Path: geom.Path{Edges: []geom.Edge{part}}})
			}
		}
	}
	if len(open) > 0 {
		p.d.Title += "; two-dot chain: the floor opening needed for " + p.st.Format(limit.Length) + " of headroom"
	}
}

// outside returns what of an edge lies in none of the polygons, nor along their
// sides. It is looked at every openApart, and where that changes the place is
// found between.
func outside(edge geom.Edge, others [][]geom.Point) []geom.Edge {
	free := func(f float64) bool {
		at := edge.At(f)
		for _, ps := range others {
			if onOrIn(at, ps) {
				return false
			}
		}
		return true
	}
	n := int(math.Ceil(edge.Length()/openApart)) + 1
	var out []geom.Edge
	from, was := 0.0, free(0)
	for k := 1; k <= n; k++ {
		at := float64(k) / float64(n)
		is := free(at)
		if is != was {
			cut := between(float64(k-1)/float64(n), at, was, free)
			if was {
				out = append(out, edge.Part(from, cut))
			}
			from, was = cut, is
		}
	}
	if was {
		out = append(out, edge.Part(from, 1))
	}
	return slices.DeleteFunc(out, func(e geom.Edge) bool { return e.Length() < leastPiece })
}

// openApart is how far apart, in millimetres, an edge is looked at: what is
// shorter between two openings no line is drawn for.
const openApart = 50

// between finds where, from lo on, something stops being what it was there.
func between(lo, hi float64, was bool, is func(float64) bool) float64 {
	for range 50 {
		if half := (lo + hi) / 2; is(half) == was {
			lo = half
		} else {
			hi = half
		}
	}
	return hi
}

// alongWithin is how near to a side, in millimetres, a line runs along it: what
// rounding leaves between edges that are the same.
const alongWithin = 1e-6

// onOrIn tells whether a place lies within a polygon or on one of its sides.
func onOrIn(p geom.Point, ps []geom.Point) bool {
	for i, a := range ps {
		if geom.Distance(p, a, ps[(i+1)%len(ps)]) < alongWithin {
			return true
		}
	}
	return inside(p, ps)
}
