package turn

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"stepoff/layout/geom"
)

// walkline is a line that depths are measured on: an arc about a point, which
// goes on beyond the turn, or a line at a distance from the inside edge.
type walkline struct {
	c      corner
	about  geom.Point
	radius float64 // of the arc; 0: none
	d      float64
}

// meets is where a nosing crosses the walkline.
func (w walkline) meets(n ray) geom.Point {
	if w.radius == 0 {
		return n.at(w.c.leaves(n, w.d, false))
	}
	foot := r2.Dot(r2.Sub(w.about, n.from), n.along)
	off := r2.Norm2(r2.Sub(n.at(foot), w.about))
	return n.at(foot + math.Sqrt(max(0, w.radius*w.radius-off)))
}

// between is the walkline between two of its points.
func (w walkline) between(a, b geom.Point) geom.Path {
	if w.radius == 0 {
		return part(w.c.round(w.d, false, carriedOn), a, b)
	}
	from := r2.Sub(a, w.about)
	start := math.Atan2(from.Y, from.X)
	e := geom.Arc(w.about, w.radius, start, w.sweep(a, b))
	e.From, e.To = a, b
	return geom.Path{Edges: []geom.Edge{e}}
}

// sweep is the angle from one point of the arc on to another, 0 or more and less
// than a full turn.
func (w walkline) sweep(a, b geom.Point) float64 {
	u, v := r2.Sub(a, w.about), r2.Sub(b, w.about)
	s := math.Atan2(r2.Cross(u, v), r2.Dot(u, v))
	if s < 0 {
		s += 2 * math.Pi
	}
	return s
}

// depth is the depth of a tread between two meetings: straight across, or along
// the walkline.
func (w walkline) depth(a, b geom.Point, arc bool) float64 {
	switch {
	case !arc:
		return r2.Norm(r2.Sub(b, a))
	case w.radius > 0:
		return w.radius * w.sweep(a, b)
	}
	return w.between(a, b).Length()
}
