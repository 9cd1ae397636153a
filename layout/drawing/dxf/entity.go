package dxf

import (
	"math"
	"strconv"

	"gonum.org/v1/gonum/spatial/r2"

	"stepoff/layout/drawing"
	"stepoff/layout/geom"
	"stepoff/spec/measure"
)

// joined is how far apart, in millimetres, an edge's end and the next one's
// beginning may be and still be one corner: a tenth of a micrometre, below what
// any machine tells apart. An edge no longer than nothing is none: its ends would
// be written as one place, or next to it, twice.
const (
	joined  = 1e-4
	nothing = 1e-5
)

// path writes a path: each run of edges that hang together is one entity.
func (f *file) path(l Layer, p geom.Path) {
	var runs [][]geom.Edge
	for _, e := range p.Edges {
		if e.Length() <= nothing {
			continue
		}
		if n := len(runs); n > 0 && meet(runs[n-1][len(runs[n-1])-1].To, e.From) {
			runs[n-1] = append(runs[n-1], e)
			continue
		}
		runs = append(runs, []geom.Edge{e})
	}
	for _, run := range runs {
		f.run(l, run, p.Closed && len(runs) == 1 && meet(run[len(run)-1].To, run[0].From))
	}
}

func meet(a, b geom.Point) bool { return r2.Norm(r2.Sub(a, b)) <= joined }

func (f *file) run(l Layer, run []geom.Edge, closed bool) {
	one := run[0]
	switch {
	case len(run) > 1 || closed && !one.IsArc():
		f.polyline(l, run, closed)
	case !one.IsArc():
		f.entity("LINE", l)
		f.point(10, one.From)
		f.point(11, one.To)
	case math.Abs(one.Sweep) >= 2*math.Pi-1e-9: // a whole turn, but for rounding
		f.entity("CIRCLE", l)
		f.point(10, one.Centre)
		f.length(40, one.Radius)
	default:
		from, to := one.Start(), one.Start()+one.Sweep
		if one.Sweep < 0 { // an ARC runs counter-clockwise
			from, to = to, from
		}
		f.entity("ARC", l)
		f.point(10, one.Centre)
		f.length(40, one.Radius)
		f.degrees(50, once(from))
		f.degrees(51, once(to))
	}
}

// once is an angle within one turn, from 0.
func once(a float64) float64 {
	if a = math.Mod(a, 2*math.Pi); a < 0 {
		a += 2 * math.Pi
	}
	return a
}

func (f *file) entity(kind string, l Layer) {
	f.word(0, kind)
	f.word(8, string(l))
}

// polyline writes edges as one entity.
func (f *file) polyline(l Layer, run []geom.Edge, closed bool) {
	f.entity("POLYLINE", l)
	f.whole(66, 1) // vertices follow
	f.point(10, geom.Point{})
	flag := 0
	if closed {
		flag = 1
	}
	f.whole(70, flag)
	vertex := func(p geom.Point, bulge float64) {
		f.entity("VERTEX", l)
		f.point(10, p)
		if bulge != 0 {
			f.word(42, strconv.FormatFloat(bulge, 'f', bulgeDecimals, 64))
		}
	}
	for _, e := range run {
		pieces := 1.0
		if e.IsArc() {
			pieces = math.Ceil(math.Abs(e.Sweep)/mostSweep - 1e-9)
		}
		for i := range int(pieces) {
			vertex(e.At(float64(i)/pieces), bulge(e.Sweep/pieces))
		}
	}
	if !closed {
		vertex(run[len(run)-1].To, 0)
	}
	f.entity("SEQEND", l)
}

// mostSweep is the largest arc between two vertices: half a circle, whose bulge
// is 1. Beyond it some programs take the shorter way round.
const mostSweep = math.Pi

// bulgeDecimals hold an arc on a chord of 10 m to 1e-8 mm.
const bulgeDecimals = 12

// bulge is how DXF says an arc between two vertices: the tangent of a quarter of
// its angle, counter-clockwise positive; 0 is a straight line.
func bulge(sweep float64) float64 {
	const per = 1e12
	v := math.Round(math.Tan(sweep/4)*per) / per
	if v == 0 {
		return 0 // not -0
	}
	return v
}

// text writes a line of writing. Its height is that of a capital, as DXF has it
// too.
func (f *file) text(l Layer, t drawing.Text, text string) {
	f.entity("TEXT", l)
	f.point(10, t.At)
	f.length(40, t.Height)
	f.word(1, text)
	if angle := measure.SnapDegrees(once(t.Angle) * 180 / math.Pi); angle != 0 {
		f.degrees(50, once(t.Angle))
	}
	if t.Align != drawing.Left {
		f.whole(72, [...]int{drawing.Middle: 1, drawing.Right: 2}[t.Align])
		f.point(11, t.At)
	}
}
