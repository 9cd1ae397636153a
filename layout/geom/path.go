package geom

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// Path is a chain of edges, each beginning where the one before ends. A
// closed path ends where it began.
type Path struct {
	Edges  []Edge
	Closed bool
}

// Polyline returns the open path through the points.
func Polyline(pts ...Point) Path {
	var p Path
	for i := 1; i < len(pts); i++ {
		p.Edges = append(p.Edges, Line(pts[i-1], pts[i]))
	}
	return p
}

// Closed returns the closed path through the points, the last joined to the
// first.
func Closed(pts ...Point) Path {
	if len(pts) == 0 {
		return Path{}
	}
	p := Polyline(append(append([]Point(nil), pts...), pts[0])...)
	p.Closed = true
	return p
}

// Circle returns the circle about a centre as a closed path of two halves.
func Circle(centre Point, radius float64) Path {
	return Path{Edges: []Edge{Arc(centre, radius, 0, math.Pi), Arc(centre, radius, math.Pi, math.Pi)}, Closed: true}
}

// Rect returns the box's outline as a closed path.
func Rect(b Box) Path {
	return Closed(b.Min, Pt(b.Max.X, b.Min.Y), b.Max, Pt(b.Min.X, b.Max.Y))
}

// Box returns the smallest upright rectangle round the path.
func (p Path) Box() Box {
	b := EmptyBox()
	for _, e := range p.Edges {
		b = b.Union(e.Box())
	}
	return b
}

// Length is the distance along the whole path.
func (p Path) Length() float64 {
	sum := 0.0
	for _, e := range p.Edges {
		sum += e.Length()
	}
	return sum
}

// Reversed is the path run the other way.
func (p Path) Reversed() Path {
	out := Path{Closed: p.Closed}
	for k := len(p.Edges) - 1; k >= 0; k-- {
		out.Edges = append(out.Edges, p.Edges[k].Reversed())
	}
	return out
}

// Area returns what a closed path encloses, positive when it runs
// counter-clockwise: the polygon through the ends of its edges, and between each
// arc and its chord a segment of the circle.
func (p Path) Area() float64 {
	sum := 0.0
	for _, e := range p.Edges {
		sum += r2.Cross(e.From, e.To) / 2
		if e.IsArc() {
			sum += e.Radius * e.Radius / 2 * (e.Sweep - math.Sin(e.Sweep))
		}
	}
	return sum
}

// Points are the places where the path's edges begin, and the end of an open
// one; an arc is broken into pieces that stay within so much of it.
func (p Path) Points(within float64) []Point {
	var ps []Point
	for _, e := range p.Edges {
		n := 1
		if e.IsArc() && within < e.Radius {
			n = int(math.Ceil(math.Abs(e.Sweep) / (2 * math.Acos(1-within/e.Radius))))
		}
		for k := range n {
			ps = append(ps, e.At(float64(k)/float64(n)))
		}
	}
	if n := len(p.Edges); n > 0 && !p.Closed {
		ps = append(ps, p.Edges[n-1].To)
	}
	return ps
}

// Turned is the path turned about the origin by so many radians,
// counter-clockwise.
func (p Path) Turned(angle float64) Path {
	sin, cos := math.Sincos(angle)
	turn := func(q Point) Point { return Pt(q.X*cos-q.Y*sin, q.X*sin+q.Y*cos) }
	out := Path{Closed: p.Closed, Edges: append([]Edge(nil), p.Edges...)}
	for k := range out.Edges {
		e := &out.Edges[k]
		e.From, e.To, e.Centre = turn(e.From), turn(e.To), turn(e.Centre)
	}
	return out
}
