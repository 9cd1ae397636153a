package views

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"stepoff/layout"
	"stepoff/layout/drawing"
	"stepoff/layout/geom"
	"stepoff/layout/turn"
)

// walls draws the walls along the sides that have one, from the first riser to
// the last and round the landings.
func (p *plan) walls() {
	for _, side := range [...]float64{1, -1} {
		if p.wall(side) {
			wallAlong(p.d, p.boundary(side), side)
		}
	}
}

// wallAlong draws a wall along an edge of the stairway, where there is room for
// one.
func wallAlong(d *drawing.Drawing, edge geom.Path, side float64) {
	if band, ok := band(edge, side); ok {
		d.Add(drawing.Path{Layer: drawing.Thin, Path: band, Fill: wallGrey})
	}
}

// boundary is the edge of the stairway at one side, going up.
func (p *plan) boundary(side float64) geom.Path {
	var out geom.Path
	to := func(q geom.Point) {
		if n := len(out.Edges); n > 0 {
			if from := out.Edges[n-1].To; r2.Norm(r2.Sub(q, from)) > 1e-6 {
				out.Edges = append(out.Edges, geom.Line(from, q))
			}
		}
	}
	start := entry(p.s.Elements[0])
	out.Edges = append(out.Edges, geom.Line(start.at(-p.front, side*p.width/2), start.at(0, side*p.width/2)))
	for _, e := range p.s.Elements {
		switch e := e.(type) {
		case *layout.Flight:
			fr := flightFrame(e)
			to(fr.at(0, side*p.width/2))
			to(fr.at(e.TotalRun, side*p.width/2))
		case *layout.Landing:
			from := out.Edges[len(out.Edges)-1].To
			for _, q := range around(e.Outline, from, exit(e).at(0, side*p.width/2), side < 0) {
				to(q)
			}
		default:
			if edges := sideOf(laid(e), side).Edges; len(edges) > 0 { // none inside where winders meet in a point
				to(edges[0].From)
				out.Edges = append(out.Edges, edges...)
			}
		}
	}
	return straighten(out)
}

// sideOf is the edge of tapered treads at one side, +1 left.
func sideOf(l *turn.Laid, side float64) geom.Path {
	if (l.Hand() == turn.Left) == (side > 0) {
		return l.Inside
	}
	return l.Outside
}

// around are the corners of an outline passed on the way from one place on it
// to another, counter-clockwise or the other way.
func around(outline []geom.Point, from, to geom.Point, counter bool) []geom.Point {
	n := len(outline)
	ps := append([]geom.Point(nil), outline...)
	if (geom.Area(ps) > 0) != counter {
		for i := range n / 2 {
			ps[i], ps[n-1-i] = ps[n-1-i], ps[i]
		}
	}
	station := func(q geom.Point) float64 { // how far round the outline a place is
		sum, best, at := 0.0, math.Inf(1), 0.0
		for i, a := range ps {
			b := ps[(i+1)%n]
			if d := geom.Distance(q, a, b); d < best-1e-6 {
				best, at = d, sum+r2.Norm(r2.Sub(q, a))
			}
			sum += r2.Norm(r2.Sub(b, a))
		}
		return at
	}
	total := 0.0
	for i, a := range ps {
		total += r2.Norm(r2.Sub(ps[(i+1)%n], a))
	}
	start := station(from)
	ahead := func(q geom.Point) float64 { return math.Mod(station(q)-start+total, total) }
	goal := ahead(to)
	var out []geom.Point
	first := 0
	for i, q := range ps {
		if ahead(q) < ahead(ps[first]) {
			first = i
		}
	}
	for k := range n {
		if q := ps[(first+k)%n]; ahead(q) < goal {
			out = append(out, q)
		}
	}
	return out
}

// straighten joins straight edges that go on in one line, and leaves out those of
// no length.
func straighten(p geom.Path) geom.Path {
	out := geom.Path{Closed: p.Closed}
	for _, e := range p.Edges {
		if e.Length() < 1e-6 {
			continue
		}
		if n := len(out.Edges); n > 0 && !e.IsArc() && !out.Edges[n-1].IsArc() && math.Abs(bend(out.Edges[n-1], e)) < inLine {
			out.Edges[n-1].To = e.To
			continue
		}
		out.Edges = append(out.Edges, e)
	}
	return out
}

// heading is the way along an edge at its beginning, or at its end.
func heading(e geom.Edge, atEnd bool) geom.Point {
	if !e.IsArc() {
		return r2.Unit(r2.Sub(e.To, e.From))
	}
	at := e.From
	if atEnd {
		at = e.To
	}
	out := r2.Unit(r2.Sub(at, e.Centre))
	return r2.Scale(math.Copysign(1, e.Sweep), geom.Pt(-out.Y, out.X))
}

// bend is the angle turned from one edge to the next, to the left.
func bend(a, b geom.Edge) float64 {
	from, to := heading(a, true), heading(b, false)
	return math.Atan2(r2.Cross(from, to), r2.Dot(from, to))
}

// moved is an edge moved to a side, square to itself; ok is false where an arc
// has no room to.
func moved(e geom.Edge, side, by float64) (geom.Edge, bool) {
	if !e.IsArc() {
		along := heading(e, false)
		return e.Shift(r2.Scale(side*by, geom.Pt(-along.Y, along.X))), true
	}
	radius := e.Radius - side*math.Copysign(by, e.Sweep)
	return geom.Arc(e.Centre, radius, e.Start(), e.Sweep), radius > 0
}

// sharpest is the bend, in radians, past which an edge doubles back: no wall
// stands in there.
const sharpest = 170 * math.Pi / 180

// band is the wall along an edge, on its outside; ok is false where there is no
// room for one, between flights that stand close.
func band(edge geom.Path, side float64) (wall geom.Path, ok bool) {
	n := len(edge.Edges)
	face := make([]geom.Edge, n)    // its far face, edge by edge
	mitre := make([]*geom.Point, n) // where two faces meet beyond an edge's end
	short := make([][2]float64, n)  // what is cut off a face's ends, where another stands in the way
	for i, e := range edge.Edges {
		if face[i], ok = moved(e, side, wallThickness); !ok {
			return wall, false
		}
		if i+1 == n {
			break
		}
		turned := side * bend(e, edge.Edges[i+1])
		reach := wallThickness * math.Tan(math.Abs(turned)/2)
		switch {
		case math.Abs(turned) > sharpest:
			return wall, false
		case turned > inLine: // toward the wall
			short[i][1], short[i+1][0] = reach, reach
		case turned < -inLine:
			at := r2.Add(face[i].To, r2.Scale(reach, heading(e, true)))
			mitre[i] = &at
		}
	}
	// A face shorter than what is cut off it goes, and the rest is cut off the next
	// one in line with it.
	for i := range n - 1 {
		if over := short[i][0] - face[i].Length(); over > 0 && mitre[i] == nil && short[i][1] == 0 {
			short[i+1][0] = over
		}
	}
	for i := n - 1; i > 0; i-- {
		if over := short[i][1] - face[i].Length(); over > 0 && mitre[i-1] == nil && short[i][0] == 0 {
			short[i-1][1] = over
		}
	}
	wall = geom.Path{Closed: true, Edges: append([]geom.Edge(nil), edge.Edges...)}
	join := func(to geom.Point) {
		if from := wall.Edges[len(wall.Edges)-1].To; r2.Norm(r2.Sub(to, from)) > 1e-6 {
			wall.Edges = append(wall.Edges, geom.Line(from, to))
		}
	}
	for i := n - 1; i >= 0; i-- {
		long := face[i].Length()
		from, to := short[i][0]/long, 1-short[i][1]/long
		if mitre[i] != nil {
			join(*mitre[i])
		}
		if from < to {
			e := face[i].Part(from, to).Reversed()
			join(e.From)
			wall.Edges = append(wall.Edges, e)
		}
	}
	join(wall.Edges[0].From)
	wall = straighten(wall)
	return wall, geom.Simple(wall.Points(1))
}

// inLine is the bend, in radians, up to which two edges count as one line: less
// than a wall's thickness shows.
const inLine = 1e-6
