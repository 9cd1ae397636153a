package views

import (
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
	var boxes []geom.Box
	for _, o := range p.s.OpeningInPlan(limit.Length.MM()) {
		box := geom.EmptyBox()
		for _, q := range o.Outline {
			box = box.Include(q)
		}
		if !box.Empty() {
			boxes = append(boxes, box)
		}
	}
	if len(boxes) == 0 {
		return
	}
	for i, b := range boxes {
		for _, side := range geom.Rect(b).Edges {
			for _, part := range outside(side, slices.Delete(slices.Clone(boxes), i, i+1)) {
				p.d.Line(drawing.Lumber, part.From, part.To)
			}
		}
	}
	p.d.Title += "; two-dot chain: the floor opening needed for " + p.st.Format(limit.Length) + " of headroom"
}

// outside returns what of a line lies in none of the boxes.
func outside(line geom.Edge, boxes []geom.Box) []geom.Edge {
	rest := []geom.Edge{line}
	for _, b := range boxes {
		var next []geom.Edge
		for _, e := range rest {
			at := 0.0
			for _, in := range e.Within(b) {
				if in[0] > at {
					next = append(next, e.Part(at, in[0]))
				}
				at = in[1]
			}
			if at < 1 {
				next = append(next, e.Part(at, 1))
			}
		}
		rest = next
	}
	return slices.DeleteFunc(rest, func(e geom.Edge) bool { return e.Length() < leastPiece })
}
