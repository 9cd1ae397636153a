package geom

import (
	"math"
	"testing"
)

// A square of 10 with one end rounded: outward by 1 it is a square of 12 whose
// end is rounded by 6, inward by 1 one of 8 rounded by 4; either way run.
func TestOffset(t *testing.T) {
	shape := Path{Closed: true, Edges: []Edge{
		Line(Pt(0, 0), Pt(10, 0)), Arc(Pt(10, 5), 5, -math.Pi/2, math.Pi), Line(Pt(10, 10), Pt(0, 10)), Line(Pt(0, 10), Pt(0, 0)),
	}}
	for _, p := range []Path{shape, shape.Reversed()} {
		for _, d := range []float64{1, -1} {
			got, ok := p.Offset(d)
			if !ok {
				t.Fatalf("offset by %g is refused", d)
			}
			side := 10 + 2*d
			want := side*(10+d) + math.Pi*(5+d)*(5+d)/2
			if math.Abs(math.Abs(got.Area())-want) > 1e-9 {
				t.Errorf("offset by %g encloses %.9f, want %.9f", d, math.Abs(got.Area()), want)
			}
			if b := got.Box(); math.Abs(b.Min.X+d) > 1e-12 || math.Abs(b.Max.X-15-d) > 1e-12 || math.Abs(b.Height()-side) > 1e-12 {
				t.Errorf("offset by %g lies in %v", d, b)
			}
		}
	}
	if _, ok := shape.Offset(-5); ok {
		t.Error("a shape of 10 is offset inward by 5, where nothing is left of it")
	}
}

// A line that meets an arc at a corner: a half disc of 5, outward by 1. The line
// moves down by 1 and meets the circle of 6 where Pythagoras says.
func TestOffsetCornerOnArc(t *testing.T) {
	half := Path{Closed: true, Edges: []Edge{Line(Pt(-5, 0), Pt(5, 0)), Arc(Pt(0, 0), 5, 0, math.Pi)}}
	got, ok := half.Offset(1)
	if !ok {
		t.Fatal("refused")
	}
	if want := math.Sqrt(35); math.Abs(got.Edges[0].To.X-want) > 1e-9 || math.Abs(got.Edges[0].To.Y+1) > 1e-9 {
		t.Errorf("the corner lies at %v, want %.6f, -1", got.Edges[0].To, want)
	}
}

func TestMovedMirrorsArcs(t *testing.T) {
	p := Path{Edges: []Edge{Arc(Pt(3, 4), 2, 0.3, 1.1)}}
	flip := func(q Point) Point { return Pt(q.X, -q.Y) }
	once := p.Moved(flip, true)
	for _, f := range []float64{0.25, 0.5, 0.75} {
		if a, b := flip(p.Edges[0].At(f)), once.Edges[0].At(f); math.Hypot(a.X-b.X, a.Y-b.Y) > 1e-12 {
			t.Errorf("at %g the mirrored arc runs through %v, want %v", f, b, a)
		}
	}
}
