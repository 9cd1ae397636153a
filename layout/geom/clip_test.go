package geom_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"stepoff/layout/geom"
)

func drawEdge(t *rapid.T) geom.Edge {
	num := rapid.Float64Range(-100, 100)
	if rapid.Bool().Draw(t, "arc") {
		return geom.Arc(geom.Pt(num.Draw(t, "cx"), num.Draw(t, "cy")), rapid.Float64Range(1, 200).Draw(t, "r"),
			rapid.Float64Range(-4, 4).Draw(t, "start"), rapid.Float64Range(0.01, 2*math.Pi).Draw(t, "sweep")*rapid.SampledFrom([]float64{-1, 1}).Draw(t, "way"))
	}
	p := geom.Pt(num.Draw(t, "x0"), num.Draw(t, "y0"))
	q := geom.Pt(num.Draw(t, "x1"), num.Draw(t, "y1"))
	switch rapid.IntRange(0, 3).Draw(t, "lie") {
	case 0:
		q.X = p.X
	case 1:
		q.Y = p.Y
	}
	return geom.Line(p, q)
}

// TestClip: what is kept lies in the box, and every place of the edge that
// lies in the box is kept.
func TestClip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		e := drawEdge(t)
		b := geom.EmptyBox()
		for range 2 {
			b = b.Include(geom.Pt(rapid.Float64Range(-120, 120).Draw(t, "bx"), rapid.Float64Range(-120, 120).Draw(t, "by")))
		}
		const slack = 1e-9
		for _, part := range e.Clip(b) {
			for k := range 41 {
				if at := part.At(float64(k) / 40); !b.Contains(at, slack) {
					t.Fatalf("%v of %v is kept, outside %v", at, e, b)
				}
			}
		}
		within := e.Within(b)
		for k := range 1001 {
			f := float64(k) / 1000
			kept := false
			for _, w := range within {
				kept = kept || f >= w[0]-slack && f <= w[1]+slack
			}
			if at := e.At(f); !kept && b.Contains(at, -1e-6) {
				t.Fatalf("%v at %g of %v is inside %v and not kept: %v", at, f, e, b, within)
			}
		}
	})
}

// TestClipKeepsWhole: an edge inside comes back bit for bit; sides at infinity
// clip nothing; an edge along a side is inside.
func TestClipKeepsWhole(t *testing.T) {
	everywhere := geom.Box{Min: geom.Pt(math.Inf(-1), math.Inf(-1)), Max: geom.Pt(math.Inf(1), math.Inf(1))}
	for _, e := range []geom.Edge{geom.Line(geom.Pt(0.1, 0.2), geom.Pt(3, 4)), geom.Arc(geom.Pt(0, 0), 5, 0.3, 4)} {
		if got := e.Clip(everywhere); len(got) != 1 || got[0] != e {
			t.Errorf("%v became %v", e, got)
		}
	}
	side := geom.Line(geom.Pt(0, 10), geom.Pt(10, 10))
	if got := side.Clip(geom.Box{Max: geom.Pt(10, 10)}); len(got) != 1 || got[0] != side {
		t.Errorf("along a side: %v", got)
	}
	half := geom.Box{Min: geom.Pt(math.Inf(-1), 0), Max: geom.Pt(math.Inf(1), 2)}
	if got := geom.Line(geom.Pt(0, -2), geom.Pt(0, 4)).Clip(half); len(got) != 1 || got[0].From.Y != 0 || got[0].To.Y != 2 {
		t.Errorf("between two levels: %v", got)
	}
}

// TestCircleThroughBox: a circle about a square, reaching past its sides,
// keeps its four corners' arcs. By hand: at radius 5 about a square of half
// side 4 each arc spans from atan(3/4) to atan(4/3), 0.2838 radians.
func TestCircleThroughBox(t *testing.T) {
	got := geom.Arc(geom.Pt(0, 0), 5, 0.1, 2*math.Pi).Clip(geom.Box{Min: geom.Pt(-4, -4), Max: geom.Pt(4, 4)})
	if len(got) != 4 {
		t.Fatalf("%d arcs: %v", len(got), got)
	}
	for _, a := range got {
		if want := math.Atan2(4, 3) - math.Atan2(3, 4); math.Abs(a.Sweep-want) > 1e-12 {
			t.Errorf("an arc sweeps %.6f, want %.6f", a.Sweep, want)
		}
	}
}

// TestCubics: the curves chain from end to end of the arc and stay on its
// circle to 4e-7 of the radius.
func TestCubics(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := rapid.Float64Range(1, 6000).Draw(t, "r")
		e := geom.Arc(geom.Pt(rapid.Float64Range(-50, 50).Draw(t, "x"), 7), r, rapid.Float64Range(-4, 4).Draw(t, "start"),
			rapid.Float64Range(-2*math.Pi, 2*math.Pi).Draw(t, "sweep"))
		cubics := e.Cubics()
		if cubics[0].From != e.From || cubics[len(cubics)-1].To != e.To {
			t.Fatalf("the curves run from %v to %v, the arc from %v to %v", cubics[0].From, cubics[len(cubics)-1].To, e.From, e.To)
		}
		for i, c := range cubics {
			if i > 0 && c.From != cubics[i-1].To {
				t.Fatalf("curve %d begins at %v, the one before ends at %v", i, c.From, cubics[i-1].To)
			}
			for k := range 51 {
				f := float64(k) / 50
				g := 1 - f
				x := g*g*g*c.From.X + 3*g*g*f*c.C1.X + 3*g*f*f*c.C2.X + f*f*f*c.To.X
				y := g*g*g*c.From.Y + 3*g*g*f*c.C1.Y + 3*g*f*f*c.C2.Y + f*f*f*c.To.Y
				if off := math.Abs(math.Hypot(x-e.Centre.X, y-e.Centre.Y) - r); off > 4e-7*r+1e-9 {
					t.Fatalf("curve %d leaves a circle of radius %g by %g", i, r, off)
				}
			}
		}
	})
	if geom.Line(geom.Pt(0, 0), geom.Pt(1, 1)).Cubics() != nil {
		t.Error("a straight edge has curves")
	}
}

// TestBoxOfManyTurns: an arc that goes round more than once fills its circle's
// box; one without an end is no reason never to come back.
func TestBoxOfManyTurns(t *testing.T) {
	for _, sweep := range []float64{7, -1000, math.Inf(1)} {
		e := geom.Edge{From: geom.Pt(5, 0), To: geom.Pt(5, 0), Radius: 5, Sweep: sweep}
		b := e.Box()
		if math.Abs(b.Width()-10) > 1e-9 || math.Abs(b.Height()-10) > 1e-9 {
			t.Errorf("sweep %g: %v", sweep, b)
		}
	}
}
