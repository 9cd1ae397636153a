package turn_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"stepoff/layout/turn"
)

// Worked by hand: rise 8 in and goings of 0.2 radian climb 40 in a radian; on a
// form of 30 in that is a bend of 30 + 40^2 / 30 = 83.33 in (pitch atan(40/30), its
// cosine 0.6: 30 / 0.36). At 100 thicknesses a layer may be 0.8333 in: 2 in are
// three layers of 2/3. Of stock 3/8 in, six layers, 2 1/4 in in all.
func TestBendByHand(t *testing.T) {
	s := curveSteps(5*0.2*180/math.Pi, 6, 30, 36, 48, 1)
	both := strung(t, s, 5*inch)
	b, bad := both[0].Bend(s, 2*inch, 0, turn.BendHardwood)
	if len(bad) > 0 {
		t.Fatal(bad)
	}
	within(t, "form", b.FormRadius/inch, 30, 1e-9)
	within(t, "bend", b.Tightest/inch, 30/0.36, 1e-9)
	within(t, "most layer", b.MostLayer/inch, 30/0.36/100, 1e-9)
	within(t, "layer", b.Layer/inch, 2.0/3, 1e-9)
	if b.Layers != 3 {
		t.Errorf("%d layers", b.Layers)
	}
	b, _ = both[1].Bend(s, 2*inch, 0.375*inch, turn.BendSoftwood)
	if b.Layers != 6 {
		t.Errorf("%d layers of 3/8", b.Layers)
	}
	within(t, "thickness", b.Thickness/inch, 2.25, 1e-9)
	within(t, "outside form", b.FormRadius/inch, 66-2.25, 1e-9)
	within(t, "outer face", b.OuterRun, both[1].Run, 1e-9)
	if _, bad := both[0].Bend(s, 2*inch, 0.875*inch, turn.BendHardwood); len(bad) != 1 || bad[0].Key != "layer" {
		t.Errorf("7/8 in layers: %v", bad)
	}
	if _, bad := both[1].Bend(s, 70*inch, 0, turn.BendHardwood); len(bad) != 1 || bad[0].Key != "thickness" {
		t.Errorf("thicker than the radius: %v", bad)
	}
}

// The bend of the climb, found from three near points on it: the circle through
// them has the radius that is asked for.
func TestBendIsThatOfTheClimb(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anyCurve(t)
		c := strung(t, s, 5*inch)[rapid.IntRange(0, 1).Draw(t, "string")]
		b, bad := c.Bend(s, 1.5*inch, 0, turn.BendSoftwood)
		if len(bad) > 0 {
			t.Fatal(bad)
		}
		type point [3]float64
		at := func(a float64) point {
			return point{b.FormRadius * math.Cos(a), b.FormRadius * math.Sin(a), c.UnitRise / (s.Step() * math.Pi / 180) * a}
		}
		apart := func(p, q point) float64 {
			return math.Sqrt((p[0]-q[0])*(p[0]-q[0]) + (p[1]-q[1])*(p[1]-q[1]) + (p[2]-q[2])*(p[2]-q[2]))
		}
		// By the lengths of the triangle's sides and of the middle one's height:
		// R = side^2 / (2 height), two sides alike.
		p, q, r := at(-1e-3), at(0), at(1e-3)
		middle := point{(p[0] + r[0]) / 2, (p[1] + r[1]) / 2, (p[2] + r[2]) / 2}
		side, height := apart(p, q), apart(middle, q)
		within(t, "bend by three points", side*side/(2*height)/b.Tightest, 1, 1e-5)
		if float64(b.Layers-1)*b.MostLayer >= b.Thickness || b.Layer > b.MostLayer*(1+1e-9) {
			t.Errorf("%d layers of %g, most %g", b.Layers, b.Layer, b.MostLayer)
		}
	})
}
