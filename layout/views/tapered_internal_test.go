package views

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"stepoff/layout"
	"stepoff/layout/geom"
	"stepoff/layout/layouttest"
	"stepoff/spec"
)

func gallery(t *testing.T) *layout.Stairway {
	t.Helper()
	s, _ := layouttest.Example(t, "../../examples/curved.yaml")
	return s
}

// volume is what a closed body holds: by the divergence theorem, a sixth of the
// sum of its faces' triangles' triple products. A face turned inside out, or
// missing, spoils it.
func volume(s solid) float64 {
	v := 0.0
	for _, f := range s {
		for i := 1; i+1 < len(f); i++ {
			v += r3.Dot(f[0], r3.Cross(f[i], f[i+1])) / 6
		}
	}
	return v
}

// A curved string is a closed body, whichever hand it turns to: it holds what lies
// between its notches and its underside, worked out by adding thin slices up.
func TestCurvedStringIsClosed(t *testing.T) {
	s := gallery(t)
	for _, hand := range []spec.Turn{spec.Left, spec.Right} {
		s.Job.Stairway[0].Curve.Turn = hand
		s, err := layout.Compute(s.Job)
		if err != nil {
			t.Fatal(err)
		}
		c := s.Curves()[0]
		m := &model{s: s, width: s.Job.Width.MM(), front: front(s), box: geom.EmptyBox()}
		inner, outer, width := c.Inside, c.Inside+38.1, s.Job.Stringer.Stock.Width.MM()
		body := m.curvedString(c, inner, outer, width)

		n, thick := len(c.Treads), s.Job.Tread.Thickness.MM()
		turned := c.Spec.Angle * math.Pi / 180
		run := turned / float64(n) * (inner + outer) / 2
		plumb := width * math.Hypot(1, c.UnitRise/run)
		want, slices := 0.0, 100000
		for k := range slices {
			at := (float64(k) + 0.5) / float64(slices) * float64(n)
			top := c.UnitRise*(math.Floor(at)+1) - thick
			want += (top - max(0, c.UnitRise*(1+at)-thick-plumb)) * turned / float64(slices) * (outer*outer - inner*inner) / 2
		}
		// Flat pieces cut some of the ring off on its outside and add it on its inside.
		if got := volume(body); math.Abs(got-want) > 0.005*want {
			t.Errorf("turn %v: the body holds %g, want %g", hand, got, want)
		}
		// The whole outline closes: the faces' areas as vectors add up to nothing.
		var sum r3.Vec
		for _, f := range body {
			sum = r3.Add(sum, normal(f))
		}
		if r3.Norm(sum) > 1e-3 {
			t.Errorf("turn %v: the faces leave a gap of %v", hand, sum)
		}
	}
}

// A round post of many flat sides is seen as two rims, the lower one half hidden,
// and the two lines where it turns away: no line between its sides.
func TestCurvedFacesHaveNoEdges(t *testing.T) {
	const r, high, sides = 100.0, 300.0, 72
	base := make([]r3.Vec, sides)
	for k := range base {
		sin, cos := math.Sincos(2 * math.Pi * (float64(k) + 0.3) / sides)
		base[k] = r3.Vec{X: r * cos, Y: r * sin}
	}
	look := eye{right: r3.Vec{X: 1}, up: r3.Unit(r3.Vec{Y: 1, Z: 1}), toward: r3.Unit(r3.Vec{Y: -1, Z: 1})}
	upright := 0
	for _, l := range look.lines([]solid{prism(base, r3.Vec{Z: high})}) {
		if math.Abs(l.From.X-l.To.X) < 1e-9 {
			upright++
		}
	}
	if upright != 2 {
		t.Errorf("%d upright lines are seen, want 2", upright)
	}
}

// A wall stands its thickness outside of an edge: straight, round a corner of 45
// degrees either way, along an arc, and where an arc meets a straight edge aslant.
func TestWallAlongArcsAndCorners(t *testing.T) {
	const long, radius = 2000.0, 1500.0
	start := geom.Line(geom.Pt(0, 0), geom.Pt(long, 0))
	turned := func(angle float64) geom.Edge {
		sin, cos := math.Sincos(angle)
		return geom.Line(start.To, geom.Pt(long+long*cos, long*sin))
	}
	tan := math.Tan(math.Pi / 8)
	for _, c := range []struct {
		name  string
		edges []geom.Edge
		want  float64 // area
	}{
		{"straight", []geom.Edge{start}, long * wallThickness},
		{"a corner away from it", []geom.Edge{start, turned(-math.Pi / 4)}, 2*long*wallThickness + wallThickness*wallThickness*tan},
		{"a corner toward it", []geom.Edge{start, turned(math.Pi / 4)}, 2*long*wallThickness - wallThickness*wallThickness*tan},
		{"an arc away from it", []geom.Edge{start, geom.Arc(geom.Pt(long, -radius), radius, math.Pi/2, -1)},
			long*wallThickness + ((radius+wallThickness)*(radius+wallThickness)-radius*radius)/2},
		{"an arc toward it", []geom.Edge{start, geom.Arc(geom.Pt(long, radius), radius, -math.Pi/2, 1)},
			long*wallThickness + (radius*radius-(radius-wallThickness)*(radius-wallThickness))/2},
	} {
		wall, ok := band(geom.Path{Edges: c.edges}, 1)
		if got := math.Abs(wall.Area()); !ok || math.Abs(got-c.want) > 1e-6*c.want {
			t.Errorf("%s: %v, its area is %g, want %g", c.name, ok, got, c.want)
		}
	}
	if _, ok := band(geom.Path{Edges: []geom.Edge{start, geom.Line(start.To, geom.Pt(0, 1))}}, 1); ok {
		t.Error("a wall stands in an edge that doubles back")
	}
	if _, ok := band(geom.Path{Edges: []geom.Edge{geom.Arc(geom.Pt(0, 0), wallThickness/2, 0, 1)}}, 1); ok {
		t.Error("a wall stands inside a radius smaller than its thickness")
	}
}
