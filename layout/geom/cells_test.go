package geom_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"stepoff/layout/geom"
)

// star is a polygon round the origin, every corner as far out as it likes:
// simple, and seldom convex.
func star(t *rapid.T) []geom.Point {
	n := rapid.IntRange(3, 12).Draw(t, "corners")
	ps := make([]geom.Point, n)
	for i := range ps {
		sin, cos := math.Sincos(2 * math.Pi * (float64(i) + rapid.Float64Range(0, 0.9).Draw(t, "at")) / float64(n))
		r := rapid.Float64Range(1, 100).Draw(t, "out")
		ps[i] = geom.Pt(r*cos, r*sin)
	}
	return ps
}

// Triangles tile the polygon: they add up to its area, none turns backwards.
func TestTriangles(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		ps := star(t)
		if geom.Area(ps) < 1 || !geom.Simple(ps) { // all on one side of the origin
			t.Skip()
		}
		sum := 0.0
		for _, tri := range geom.Triangles(ps) {
			a := geom.Area(tri)
			if a < 0 {
				t.Fatalf("%v turns backwards", tri)
			}
			sum += a
		}
		if want := geom.Area(ps); math.Abs(sum-want) > 1e-9*want {
			t.Fatalf("the triangles add up to %g of %g: %v", sum, want, ps)
		}
	})
}

// What two triangles share is the same either way round and, by sampling, every
// place that lies in both.
func TestCommon(t *testing.T) {
	tri := func(t *rapid.T) []geom.Point {
		for {
			num := rapid.Float64Range(-10, 10)
			ps := []geom.Point{{X: num.Draw(t, "x"), Y: num.Draw(t, "y")}, {X: num.Draw(t, "x"), Y: num.Draw(t, "y")}, {X: num.Draw(t, "x"), Y: num.Draw(t, "y")}}
			if a := geom.Area(ps); a > 1 {
				return ps
			} else if a < -1 {
				return []geom.Point{ps[0], ps[2], ps[1]}
			}
		}
	}
	within := func(p geom.Point, ps []geom.Point) bool {
		for i, a := range ps {
			b := ps[(i+1)%len(ps)]
			// Two corners cut out at one place are rounding apart, and so is their side.
			if (b.X-a.X)*(p.Y-a.Y)-(b.Y-a.Y)*(p.X-a.X) < -1e-12 {
				return false
			}
		}
		return geom.Area(ps) > 1e-9 // of an edge nothing lies inside
	}
	rapid.Check(t, func(t *rapid.T) {
		a, b := tri(t), tri(t)
		one, other := geom.Common(a, b), geom.Common(b, a)
		if math.Abs(geom.Area(one)-geom.Area(other)) > 1e-9 {
			t.Fatalf("%v and %v share %g, the other way round %g", a, b, geom.Area(one), geom.Area(other))
		}
		num := rapid.Float64Range(-10, 10)
		for range 20 {
			p := geom.Pt(num.Draw(t, "px"), num.Draw(t, "py"))
			in := within(p, a) && within(p, b)
			if got := within(p, one); got != in && !onEdge(p, a) && !onEdge(p, b) {
				t.Fatalf("%v: in both %v, in what they share %v", p, in, got)
			}
		}
	})
}

func onEdge(p geom.Point, ps []geom.Point) bool {
	for i, a := range ps {
		if geom.Distance(p, a, ps[(i+1)%len(ps)]) < 1e-9 {
			return true
		}
	}
	return false
}

// A piece of a ring lies within the polygon round it, which is no more than so
// much larger all along its outside; the inside is cut by chords.
func TestAround(t *testing.T) {
	const within = 0.25
	for _, sweep := range []float64{0.1, 1, 3, 6} {
		out, in := geom.Arc(geom.Pt(3, 4), 2000, 0.3, sweep), geom.Arc(geom.Pt(3, 4), 900, 0.3, sweep).Reversed()
		ring := geom.Path{Edges: []geom.Edge{out, geom.Line(out.To, in.From), in, geom.Line(in.To, out.From)}, Closed: true}
		ps := ring.Around(within)
		if got, least := geom.Area(ps), ring.Area(); got < least || got > least+within*ring.Length() {
			t.Errorf("sweep %g: the polygon encloses %g, the ring %g", sweep, got, least)
		}
		for i, p := range ps {
			q := ps[(i+1)%len(ps)]
			r := geom.Distance(geom.Pt(3, 4), p, q)
			if far := math.Hypot(p.X-3, p.Y-4); far > 2000+within || r < 900-within {
				t.Errorf("sweep %g: %v lies %g from the centre, the side after it %g", sweep, p, far, r)
			}
		}
	}
}
