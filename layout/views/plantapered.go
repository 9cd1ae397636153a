package views

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"stepoff/layout"
	"stepoff/layout/drawing"
	"stepoff/layout/geom"
	"stepoff/layout/turn"
)

// taperedNumberOut is where a tapered tread's number stands, as a share of the way
// from the inside edge to the outside one: there is most room.
const taperedNumberOut = 0.76

// winders draws a turn of winders; its first and last riser lines are those of
// the members it joins.
func (p *plan) winders(i int, w *layout.Winders) {
	n := len(w.Treads)
	p.treads(i, w.Laid, 1, n-1, n)
	for k := range n {
		p.risers++
		p.taperedNumber(w.Laid, k)
	}
	p.edges(i, w.Laid)
}

// curve draws a curved flight, with the break line where the plan cuts it.
func (p *plan) curve(i int, c *layout.Curve) {
	n, from := len(c.Treads), len(c.Laid.Risers)
	if i == p.cut.element {
		from = p.cut.tread
	}
	p.treads(i, c.Laid, 0, n, from)
	for k := range n {
		p.risers++
		p.taperedNumber(c.Laid, k)
	}
	if _, ok := c.Head.(*layout.Winders); !ok {
		p.risers++
		end, run := placeFrame(c.Exit), c.Treads[n-1].Walkline
		p.number(end, 0, run)
	}
	if i != p.cut.element {
		p.edges(i, c.Laid)
		return
	}
	// Up from the middle of the tread that is cut, along the middle of the width.
	middle, hand := (c.Inside+c.Outside)/2, float64(c.Hand())
	start := r2.Sub(c.Entry.At, c.Centre)
	each := c.Spec.Angle * math.Pi / 180 / float64(n)
	cutAt := (float64(p.cut.tread)-0.5)*each*middle - p.front/2
	place := func(along, left float64) geom.Point {
		turned := hand * (cutAt + along) / middle
		return r2.Add(c.Centre, r2.Scale((middle-hand*left)/middle, r2.Rotate(start, turned, geom.Point{})))
	}
	run := each * middle
	p.breakLine(place, run)
	for _, side := range [...]float64{1, -1} {
		whole := sideOf(c.Laid, side).Edges[0]
		below := (cutAt + breakAt(side, run)) / middle / math.Abs(whole.Sweep)
		above := (cutAt + breakAt(side, run) + breakGap*run) / middle / math.Abs(whole.Sweep)
		p.d.Add(drawing.Path{Layer: drawing.Outline, Path: geom.Path{Edges: []geom.Edge{whole.Part(0, below)}}},
			drawing.Path{Layer: drawing.Hidden, Path: geom.Path{Edges: []geom.Edge{whole.Part(above, 1)}}})
	}
	p.before(i, c.Laid)
}

// treads draws riser lines, from one to another, and the nosings before them; from
// one on they lie above the plan's cut.
func (p *plan) treads(i int, l *turn.Laid, first, last, above int) {
	for k := first; k <= last; k++ {
		layer := p.edge(i)
		if k >= above {
			layer = drawing.Hidden
		}
		p.d.Line(layer, l.Risers[k].In, l.Risers[k].Out)
		if layer == drawing.Outline && p.front > 0 {
			p.d.Line(drawing.Thin, l.Nosings[k].In, l.Nosings[k].Out)
		}
	}
	for _, w := range l.Walklines[min(1, len(l.Walklines)):] { // the first is the way up
		p.d.Add(drawing.Path{Layer: drawing.Centre, Path: w})
	}
}

// edges draws the edges of the clear width, with their true arcs.
func (p *plan) edges(i int, l *turn.Laid) {
	for _, side := range [...]float64{1, -1} {
		p.d.Add(drawing.Path{Layer: p.edge(i), Path: sideOf(l, side)})
	}
	p.before(i, l)
}

// before draws the edges' ends under the first nosing, of a stair that begins with
// tapered treads.
func (p *plan) before(i int, l *turn.Laid) {
	if i > 0 || p.front == 0 {
		return
	}
	fr := placeFrame(l.Entry)
	for _, side := range [...]float64{p.width / 2, -p.width / 2} {
		p.d.Line(drawing.Outline, fr.at(-p.front, side), fr.at(0, side))
	}
}

// taperedNumber writes a tread's number on it: that of the riser it lies on.
func (p *plan) taperedNumber(l *turn.Laid, k int) {
	at := onTread(l, k, taperedNumberOut)
	at.Y -= numberDown * p.width
	p.d.Text(at, drawing.Small, drawing.Middle, fmt.Sprint(p.risers))
}

// onTread is a place half way up a tapered tread, a share of the way out along its
// nosings.
func onTread(l *turn.Laid, k int, out float64) geom.Point {
	on := func(s turn.Segment) geom.Point { return r2.Add(s.In, r2.Scale(out, r2.Sub(s.Out, s.In))) }
	return r2.Scale(0.5, r2.Add(on(l.Risers[k]), on(l.Nosings[k+1])))
}
