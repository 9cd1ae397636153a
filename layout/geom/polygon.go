package geom

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// Area returns the area of the closed polygon through the points, positive
// when they run counter-clockwise.
func Area(ps []Point) float64 {
	sum := 0.0
	for i, p := range ps {
		sum += r2.Cross(p, ps[(i+1)%len(ps)])
	}
	return sum / 2
}

// Distance returns how far p lies from the straight piece from a to b.
func Distance(p, a, b Point) float64 {
	along := r2.Sub(b, a)
	length2 := r2.Norm2(along)
	if length2 == 0 {
		return r2.Norm(r2.Sub(p, a))
	}
	f := math.Max(0, math.Min(1, r2.Dot(r2.Sub(p, a), along)/length2))
	return r2.Norm(r2.Sub(p, r2.Add(a, r2.Scale(f, along))))
}

// Simple tells whether the closed polygon through the points neither crosses
// nor touches itself and has no side of no length.
func Simple(ps []Point) bool {
	n := len(ps)
	if n < 3 {
		return false
	}
	for i := range n {
		a, b := ps[i], ps[(i+1)%n]
		if a == b {
			return false
		}
		for j := i + 1; j < n; j++ {
			c, d := ps[j], ps[(j+1)%n]
			switch {
			case j == i+1:
				if doublesBack(a, b, d) {
					return false
				}
			case (j+1)%n == i:
				if doublesBack(c, a, b) {
					return false
				}
			case meet(a, b, c, d):
				return false
			}
		}
	}
	return true
}

// doublesBack tells whether the way a, b, c turns straight back on itself.
func doublesBack(a, b, c Point) bool {
	u, v := r2.Sub(b, a), r2.Sub(c, b)
	return r2.Cross(u, v) == 0 && r2.Dot(u, v) < 0
}

// meet tells whether two straight pieces share a point.
func meet(a, b, c, d Point) bool {
	side := func(p, q, r Point) float64 { return r2.Cross(r2.Sub(q, p), r2.Sub(r, p)) }
	s1, s2, s3, s4 := side(a, b, c), side(a, b, d), side(c, d, a), side(c, d, b)
	if s1*s2 < 0 && s3*s4 < 0 {
		return true
	}
	within := func(p, q, r Point) bool { return EmptyBox().Include(p).Include(q).Contains(r, 0) }
	return s1 == 0 && within(a, b, c) || s2 == 0 && within(a, b, d) ||
		s3 == 0 && within(c, d, a) || s4 == 0 && within(c, d, b)
}
