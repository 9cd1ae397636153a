package geom

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// Around returns a polygon that holds all a closed, counter-clockwise path
// encloses and reaches no farther than so much beyond it: an arc that bulges out
// is broken into tangents, one that bulges in into chords. The ends of the edges
// stay where they are.
func (p Path) Around(within float64) []Point {
	var ps []Point
	for _, e := range p.Edges {
		ps = append(ps, e.From)
		if !e.IsArc() {
			continue
		}
		if e.Sweep < 0 {
			ps = append(ps, Path{Edges: []Edge{e}, Closed: true}.Points(within)[1:]...)
			continue
		}
		n := int(math.Ceil(e.Sweep / (2 * math.Acos(e.Radius/(e.Radius+within)))))
		half := e.Sweep / float64(2*n)
		for k := range n {
			sin, cos := math.Sincos(e.Start() + float64(2*k+1)*half)
			ps = append(ps, r2.Add(e.Centre, r2.Scale(e.Radius/math.Cos(half), Pt(cos, sin))))
		}
	}
	return ps
}

// Triangles parts a simple polygon, counter-clockwise, into triangles.
func Triangles(ps []Point) [][]Point {
	rest := append([]Point(nil), ps...)
	var out [][]Point
	for len(rest) > 2 {
		i := ear(rest)
		a, b, c := around(rest, i)
		if r2.Cross(r2.Sub(b, a), r2.Sub(c, b)) > 0 {
			out = append(out, []Point{a, b, c})
		}
		rest = append(rest[:i], rest[i+1:]...)
	}
	return out
}

func around(ps []Point, i int) (before, at, after Point) {
	n := len(ps)
	return ps[(i+n-1)%n], ps[i], ps[(i+1)%n]
}

// ear is a corner that can be cut off: it turns left, and no other corner lies in
// the triangle. Of a corner that does not turn at all nothing is lost.
func ear(ps []Point) int {
	for i := range ps {
		a, b, c := around(ps, i)
		if turn := r2.Cross(r2.Sub(b, a), r2.Sub(c, b)); turn < 0 {
			continue
		} else if turn == 0 {
			return i
		}
		free := true
		for _, q := range ps {
			if q != a && q != b && q != c && leftOf(a, b, q) >= 0 && leftOf(b, c, q) >= 0 && leftOf(c, a, q) >= 0 {
				free = false
				break
			}
		}
		if free {
			return i
		}
	}
	return 0 // not simple: whatever comes out, it ends
}

// leftOf is more than 0 where q lies to the left of the way from a to b.
func leftOf(a, b, q Point) float64 { return r2.Cross(r2.Sub(b, a), r2.Sub(q, a)) }

// LeftOf returns what of a convex polygon lies to the left of the line through a
// and b.
func LeftOf(ps []Point, a, b Point) []Point {
	var out []Point
	for i, p := range ps {
		q := ps[(i+1)%len(ps)]
		dp, dq := leftOf(a, b, p), leftOf(a, b, q)
		if dp >= 0 {
			out = append(out, p)
		}
		if dp*dq < 0 {
			out = append(out, r2.Add(p, r2.Scale(dp/(dp-dq), r2.Sub(q, p))))
		}
	}
	return out
}

// Common returns what two convex polygons, counter-clockwise, share; less than
// three points where they share nothing.
func Common(ps, qs []Point) []Point {
	for i, a := range qs {
		ps = LeftOf(ps, a, qs[(i+1)%len(qs)])
	}
	return ps
}
