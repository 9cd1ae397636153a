package views

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"stepoff/layout"
	"stepoff/layout/geom"
	"stepoff/layout/turn"
	"stepoff/spec"
)

// facetWithin is how far the flat pieces that stand for a curved body may leave
// it, in millimetres of the house: at 1:20 a quarter of a line's width. An arc is
// no arc of a circle in this picture, nor is what hides it.
const facetWithin = 1.5

// winders adds a turn of winders: treads, riser boards but the first, which is the
// lower flight's, and the boxes where they are framed so, on their legs.
func (m *model) winders(w *layout.Winders) {
	m.boards(w.Laid, w.Boards, w.Levels, w.Levels[0], 1, len(w.Treads)-1)
	for _, b := range w.Boxes {
		m.slab(b.Outline.Points(facetWithin), b.Bottom, b.Top)
	}
	if w.Legs > 0 {
		lowest := w.Boxes[0]
		for _, leg := range legs(lowest.Outline.Points(facetWithin)) {
			m.slab(leg, 0, lowest.Bottom)
		}
	}
}

// curve adds a curved flight: treads, riser boards, and a string along either
// edge.
func (m *model) curve(c *layout.Curve) {
	m.boards(c.Laid, c.Boards, c.Levels, c.StartLevel, 0, len(c.Treads))
	stock := m.s.Job.Stringer.Stock
	thick := stock.Thickness.MM()
	for _, edges := range [...][2]float64{{c.Inside, c.Inside + thick}, {c.Outside - thick, c.Outside}} {
		m.add(m.curvedString(c, edges[0], edges[1], stock.Width.MM()))
	}
}

// boards adds the treads of a turn, and the riser boards of the riser lines from
// first to last, 0 the lowest: each from the tread below it, or from start.
func (m *model) boards(l *turn.Laid, boards []layout.TaperedBoard, levels []float64, start float64, first, last int) {
	thick, riser := m.s.Job.Tread.Thickness.MM(), m.s.Job.Riser.Thickness.MM()
	for k, b := range boards {
		m.slab(b.Outline.Points(facetWithin), levels[k]-thick, levels[k])
	}
	if m.s.Job.Riser.Open || riser == 0 {
		return
	}
	for k := first; k <= last; k++ {
		low := start
		if k > 0 {
			low = levels[k-1]
			if m.s.Job.Riser.Joint == spec.Behind {
				low -= thick
			}
		}
		high := levels[len(levels)-1] + levels[0] - start
		if k < len(levels) {
			high = levels[k]
		}
		r, face := l.Risers[k], l.RiserFace(k, riser)
		m.slab([]geom.Point{r.In, r.Out, face.Out, face.In}, low, high-thick)
	}
}

// curvedString is a string notched for treads and risers between two radii, as
// deep as a straight stringer of the same stock at its middle.
func (m *model) curvedString(c *layout.Curve, inner, outer, width float64) solid {
	n := len(c.Treads)
	each := c.Spec.Angle * math.Pi / 180 / float64(n)
	run := each * (inner + outer) / 2
	plumb := width * math.Hypot(1, c.UnitRise/run)
	thick := m.s.Job.Tread.Thickness.MM()
	pieces := int(math.Ceil(each / (2 * math.Acos(1-facetWithin/outer))))
	start := r2.Unit(r2.Sub(c.Entry.At, c.Centre))
	at := func(radius, tread, height float64) r3.Vec {
		out := r2.Rotate(start, float64(c.Hand())*each*tread, geom.Point{})
		return raise(r2.Add(c.Centre, r2.Scale(radius, out)), c.StartLevel+height)
	}
	low := func(tread float64) float64 { return math.Max(0, c.UnitRise*(1+tread)-thick-plumb) }
	var s solid
	// face takes the corners as seen from outside of a turn to the right.
	face := func(ps ...r3.Vec) {
		if c.Hand() == turn.Left {
			for i, j := 0, len(ps)-1; i < j; i, j = i+1, j-1 {
				ps[i], ps[j] = ps[j], ps[i]
			}
		}
		s = append(s, ps)
	}
	for k := range n {
		top := c.UnitRise*float64(k+1) - thick
		before := low(0) // where the notch's riser cut begins
		if k > 0 {
			before = c.UnitRise*float64(k) - thick
		}
		from := float64(k)
		face(at(inner, from, before), at(inner, from, top), at(outer, from, top), at(outer, from, before))
		for i := range pieces {
			a, b := from+float64(i)/float64(pieces), from+float64(i+1)/float64(pieces)
			la, lb := low(a), low(b)
			face(at(inner, a, top), at(inner, b, top), at(outer, b, top), at(outer, a, top))
			// Sides meet the next tread's along part of their height only: a corner more
			// there lets them share that part.
			in := []r3.Vec{at(inner, a, la), at(inner, b, lb), at(inner, b, top), at(inner, a, top)}
			out := []r3.Vec{at(outer, a, top), at(outer, b, top), at(outer, b, lb), at(outer, a, la)}
			if i == 0 && k > 0 {
				in = append(in, at(inner, a, before))
				out = append(out, at(outer, a, before))
			}
			face(in...)
			face(out...)
			face(at(inner, a, la), at(outer, a, la), at(outer, b, lb))
			face(at(inner, a, la), at(outer, b, lb), at(inner, b, lb))
		}
	}
	end, top := float64(n), c.UnitRise*float64(n)-thick
	face(at(inner, end, top), at(inner, end, low(end)), at(outer, end, low(end)), at(outer, end, top))
	return s
}
