package views

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"stepoff/layout"
	"stepoff/layout/drawing"
	"stepoff/layout/geom"
	"stepoff/layout/turn"
	"stepoff/spec/measure"
)

// What the plan of a turn shows besides it, as shares of the stair's width.
const (
	neighbour  = 0.3   // of the flights it joins
	opposite   = 0.12  // of the line that shows what lies opposite the inside corner, at either edge
	figureDown = 0.075 // of a tread's narrow depth below its number
	ringSize   = 0.006 // radius of the points between which it is measured
	crossSize  = 0.025 // half of the cross on a centre
	angleAt    = 0.35  // radius of the arc that dimensions a curve's angle, of its inside radius
)

// Rows of dimensions beside a turn, in rows; and how far a depth's dimension
// stands off the walkline, in millimetres on the sheet: clear of its bend.
const (
	setbackRow  = 1
	acrossRow   = 2
	walklineOff = 6.5
)

// TurnPlan draws a turn of winders or a curve from above, large enough for its
// dimensions: every tread's depth on the walkline and at its narrow end, nosing
// to nosing, set-backs, clear width, a curve's inside radius and angle. Of a
// curve's treads, all alike, one is dimensioned. It is nil of any other member.
func TurnPlan(s *layout.Stairway, e layout.Element, st measure.Style) *drawing.Drawing {
	l := laid(e)
	if l == nil || s.Job.Width == nil {
		return nil
	}
	p := &turnPlan{
		plan: &plan{d: &drawing.Drawing{Name: e.Label() + "-plan"}, s: s, st: st, width: s.Job.Width.MM(), front: front(s)},
		l:    l, hand: float64(l.Hand()),
	}
	p.sides()
	for k, r := range l.Risers {
		p.d.Line(drawing.Outline, r.In, r.Out)
		if p.front > 0 {
			p.d.Line(drawing.Thin, l.Nosings[k].In, l.Nosings[k].Out)
		}
	}
	for _, w := range l.Walklines {
		p.d.Add(drawing.Path{Layer: drawing.Centre, Path: w})
	}
	if len(l.Walklines) > 0 {
		edges := l.Walklines[0].Edges
		end := edges[len(edges)-1]
		along := heading(end, true)
		p.d.Add(arrow(end.To, frame{along: along, left: geom.Pt(-along.Y, along.X)}, p.width))
	}
	first, n := 0, len(l.Treads)
	switch e := e.(type) {
	case *layout.Winders:
		first, p.arc, p.corner = e.Risers, e.Spec.Depths.Arc, true
		p.winders(e)
		p.depths(0, n)
	case *layout.Curve:
		first, p.arc = e.Below+1, e.Spec.Depths.Arc
		p.curve(e)
		p.depths(n/2, n/2+1)
	}
	for k := range l.Treads {
		at := onTread(l, k, taperedNumberOut)
		p.d.Text(at, drawing.Large, drawing.Middle, fmt.Sprint(first+k))
	}
	fr, half := placeFrame(l.Entry), p.width/2
	off := -neighbour * p.width
	p.d.Dim(drawing.Aligned, fr.at(off, half), fr.at(off, -half), -dimRow, st.Inches(*s.Job.Width)+" clear")
	return p.d
}

type turnPlan struct {
	*plan
	l      *turn.Laid
	hand   float64 // +1 where it turns to the left
	corner bool    // the inside is a corner, not an arc
	arc    bool    // depths are measured along the walkline
}

// sides draws the edges of the clear width, walls along them, and where the
// members it joins go on.
func (p *turnPlan) sides() {
	before, after := placeFrame(p.l.Entry), placeFrame(p.l.Exit)
	far := neighbour * p.width
	for _, side := range [...]float64{1, -1} {
		from, to := before.at(-far, side*p.width/2), after.at(far, side*p.width/2)
		edge := geom.Path{Edges: []geom.Edge{geom.Line(from, before.at(0, side*p.width/2))}}
		edge.Edges = append(edge.Edges, sideOf(p.l, side).Edges...)
		edge.Edges = append(edge.Edges, geom.Line(after.at(0, side*p.width/2), to))
		edge = straighten(edge)
		if p.wall(side) {
			wallAlong(p.d, edge, side)
		}
		p.d.Add(drawing.Path{Layer: drawing.Outline, Path: edge})
	}
}

// outside is how far beyond the outside edge dimensions begin: past a wall there.
func (p *turnPlan) outside() float64 {
	if p.wall(-p.hand) {
		return wallThickness
	}
	return 0
}

// depths dimensions every winder; of a curve's treads, which are all alike, the
// middle one.
func (p *turnPlan) depths(from, to int) {
	for k := from; k < to; k++ {
		t := p.l.Treads[k]
		for i, on := range p.l.Crossings {
			a, b := on[k], on[k+1]
			depth := r2.Norm(r2.Sub(b, a))
			if p.arc {
				depth = p.l.Along(i, k).Length()
			}
			p.d.Dim(drawing.Aligned, a, b, -p.hand*walklineOff, p.st.InchesMM(depth))
		}
		p.narrow(t, k)
	}
}

// narrow dimensions a tread's narrow end: where the turn is free inside, from
// there; in a corner, where there is no room, by a line with the figure under the
// tread's number.
func (p *turnPlan) narrow(t turn.Tapered, k int) {
	figure := p.st.InchesMM(t.Narrow)
	if t.Narrow < leastPiece {
		figure = "0"
	}
	if !p.corner {
		p.d.Dim(drawing.Aligned, t.NarrowEnds.In, t.NarrowEnds.Out, p.hand*dimRow, figure)
		return
	}
	p.d.Line(drawing.Dimension, t.NarrowEnds.In, t.NarrowEnds.Out)
	for _, at := range [...]geom.Point{t.NarrowEnds.In, t.NarrowEnds.Out} {
		ring := geom.Path{Edges: []geom.Edge{geom.Arc(at, ringSize*p.width, 0, 2*math.Pi)}, Closed: true}
		p.d.Add(drawing.Path{Layer: drawing.Dimension, Path: ring, Fill: 1})
	}
	at := onTread(p.l, k, taperedNumberOut)
	at.Y -= figureDown * p.width
	p.d.Text(at, drawing.Small, drawing.Middle, "narrow "+figure)
}

// winders dimensions the set-backs and marks the pivot.
func (p *turnPlan) winders(w *layout.Winders) {
	l, setback := p.l, w.Spec.Setback.MM()
	lines := "even riser lines"
	if l.Pivot != nil {
		lines = "riser lines through the pivot"
		p.cross(*l.Pivot, "pivot")
		for _, r := range l.Risers {
			if r2.Norm(r2.Sub(r.In, *l.Pivot)) > leastPiece {
				p.d.Line(drawing.Centre, *l.Pivot, r.In)
			}
		}
	}
	p.d.Title = fmt.Sprintf("Plan of %s, %s; depths from nosing to nosing", w.Name, lines)
	words := p.st.Inches(*w.Spec.Setback) + " set-back"
	off := p.outside()
	for _, end := range [...]struct {
		fr frame
		up float64 // the way into the turn
	}{{placeFrame(l.Entry), 1}, {placeFrame(l.Exit), -1}} {
		at := func(along float64) geom.Point { return end.fr.at(end.up*along, -p.hand*(p.width/2+off)) }
		if setback > 0 {
			// Opposite the corner: a line at either edge, the middle is free for numbers.
			for _, left := range [...]float64{p.hand / 2, -p.hand / 2} {
				edge := end.fr.at(end.up*setback, left*p.width)
				p.d.Line(drawing.Centre, edge, r2.Add(edge, r2.Scale(-math.Copysign(opposite*p.width, left), end.fr.left)))
			}
			a, b := at(0), at(setback)
			if end.up < 0 {
				a, b = b, a
			}
			p.d.Dim(drawing.Aligned, a, b, -p.hand*setbackRow*dimRow, words)
		}
		whole := setback + p.width*math.Tan(w.Spec.Angle/2*math.Pi/180)
		a, b := at(0), at(whole)
		if end.up < 0 {
			a, b = b, a
		}
		p.d.Dim(drawing.Aligned, a, b, -p.hand*acrossRow*dimRow, p.st.InchesMM(whole))
	}
}

// curve dimensions the inside radius and the angle.
func (p *turnPlan) curve(c *layout.Curve) {
	l := p.l
	p.d.Title = fmt.Sprintf("Plan of %s, %d treads alike; depths from nosing to nosing", c.Name, len(c.Treads))
	p.cross(l.Centre, "")
	first, end := l.Risers[0], l.Risers[len(l.Risers)-1]
	p.d.Dim(drawing.Aligned, l.Centre, first.In, 0, "inside radius "+p.st.Format(c.Spec.InsideRadius))
	p.d.Line(drawing.Centre, l.Centre, end.In)
	radius := angleAt * c.Inside
	start := r2.Sub(first.In, l.Centre)
	sweep := p.hand * c.Spec.Angle * math.Pi / 180
	arc := geom.Arc(l.Centre, radius, math.Atan2(start.Y, start.X), sweep)
	p.d.Add(drawing.Path{Layer: drawing.Dimension, Path: geom.Path{Edges: []geom.Edge{arc}}})
	at := arc.At(0.5)
	out := r2.Unit(r2.Sub(at, l.Centre))
	if math.Abs(sweep) < math.Pi/2 { // too narrow for the words
		at, out = l.Centre, r2.Scale(-1, out)
	}
	beyond(p.d, r2.Add(at, r2.Scale(2*crossSize*p.width, out)), out, drawing.Normal, degrees(c.Spec.Angle))
}

// cross marks a place, with what it is beside it.
func (p *turnPlan) cross(at geom.Point, words string) {
	r := crossSize * p.width
	p.d.Line(drawing.Thin, r2.Add(at, geom.Pt(-r, 0)), r2.Add(at, geom.Pt(r, 0)))
	p.d.Line(drawing.Thin, r2.Add(at, geom.Pt(0, -r)), r2.Add(at, geom.Pt(0, r)))
	if words == "" {
		return
	}
	out := r2.Sub(at, p.l.Centre) // away from the treads
	if n := r2.Norm(out); n > leastPiece {
		out = r2.Scale(1/n, out)
	} else {
		out = r2.Scale(-1, placeFrame(p.l.Entry).along)
	}
	beyond(p.d, r2.Add(at, r2.Scale(2*r, out)), out, drawing.Small, words)
}

// degrees writes an angle.
func degrees(angle float64) string {
	return fmt.Sprintf("%g degrees", math.Round(angle*100)/100)
}
