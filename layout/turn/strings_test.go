package turn_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"pgregory.net/rapid"

	"stepoff/layout/geom"
	"stepoff/layout/stringer"
	"stepoff/layout/turn"
)

func strung(t interface {
	Helper()
	Fatal(...any)
}, s turn.CurveSteps, throat float64) []*turn.CurveString {
	t.Helper()
	all, bad := s.Strings(throat)
	if len(bad) > 0 {
		t.Fatal(bad)
	}
	return all
}

// R14, a curved stair 11 ft high ("Curved Stairs Riser and Tread Dimensions",
// woodweb): 132/19 = 6.947, 132/18 = 7.33, 132/17 = 7.76.
func TestCurvePublishedRises(t *testing.T) {
	for risers, want := range map[int]float64{19: 6.947, 18: 7.33, 17: 7.76} {
		for _, c := range strung(t, curveSteps(120, risers, 60, 36, 132, 1), 5*inch) {
			within(t, "unit rise", c.UnitRise/inch, want, 0.01)
			within(t, "height", c.Height/inch, 132, 1e-9)
		}
	}
}

// C2, the limits of the IRC as Guertin quotes them (Professional Deck Builder,
// 2012): 6 in at the narrow end, 10 in on a walkline 12 in from it. Along the arcs
// that is a radius of 6 * 12 / (10 - 6) = 18 in and goings of a third of a radian.
// C3, Approved Document K 1.18: under 1 m of width the going is measured in the
// middle, where it is the mean of both strings' runs.
func TestCurvePublishedRuns(t *testing.T) {
	s := curveSteps(5*180/math.Pi/3, 6, 18, 36, 42, 1)
	at := func(radius float64) float64 {
		c, bad := s.Unrolled("walkline", radius, 5*inch)
		if len(bad) > 0 {
			t.Fatal(bad)
		}
		return c.UnitRun / inch
	}
	within(t, "narrow end", at(18*inch), 6, 1e-9)
	within(t, "walkline", at(30*inch), 10, 1e-9)
	both := strung(t, s, 5*inch)
	within(t, "middle", at(36*inch), (both[0].UnitRun+both[1].UnitRun)/2/inch, 1e-9)
}

// Strings unrolled: the runs add up to radius x angle, the rises to the height; run
// and rise make the pitch; the inside string is the steeper.
func TestCurveStrings(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anyCurve(t)
		both := strung(t, s, rapid.Float64Range(3, 8).Draw(t, "throat")*inch)
		for k, c := range both {
			radius := []float64{s.Inside, s.Inside + s.Width}[k]
			arc := radius * s.Angle * math.Pi / 180
			within(t, "radius", c.Radius, radius, 1e-9)
			within(t, "runs", c.UnitRun*float64(c.Risers-1), arc, 1e-9*arc)
			within(t, "run", c.Run, arc, 1e-9*arc)
			within(t, "rises", c.UnitRise*float64(c.Risers), s.Levels[len(s.Levels)-1], 1e-6)
			within(t, "tangent", math.Tan(c.Pitch*math.Pi/180), c.UnitRise/c.UnitRun, 1e-9)
			within(t, "length", c.Length, math.Hypot(arc, c.UnitRise*float64(c.Risers-1)), 1e-6)
			checkString(t, s, c)
		}
		if both[0].Pitch <= both[1].Pitch {
			t.Errorf("inside %v, outside %v degrees", both[0].Pitch, both[1].Pitch)
		}
	})
}

// checkString holds the outline against the stringer of a straight flight with the
// same rise, run and throat.
func checkString(t *rapid.T, s turn.CurveSteps, c *turn.CurveString) {
	straight, bad := stringer.Request{
		Rise: c.UnitRise, Run: c.UnitRun, LastTread: c.UnitRun, Risers: c.Risers, Tread: s.Tread, Below: -s.Floor,
		Width: c.BoardWidth, Thickness: 1.5 * inch, Saw: stringer.Saw{Blade: 7.25 * inch, Depth: 1.625 * inch, StopShort: inch / 8}, SquareStep: inch / 16,
	}.Sawn()
	if len(bad) > 0 {
		t.Fatal(bad)
	}
	within(t, "throat", straight.Throat, c.Throat, 1e-9)
	within(t, "first riser cut", straight.FirstRiserCut, c.FirstRiserCut, 1e-6)
	within(t, "seat cut", straight.SeatCut, c.SeatCut, 1e-6)
	within(t, "head cut", straight.HeadCut, c.HeadCut, 1e-6)
	within(t, "least blank", straight.LeastBlank, c.LeastBlank, 1e-6)
	same := func(what string, blank []geom.Point, unrolled []geom.Point) {
		if len(blank) != len(unrolled) {
			t.Fatalf("%s: %d corners, the straight one has %d", what, len(unrolled), len(blank))
		}
		for k, p := range blank {
			if d := r2.Norm(r2.Sub(straight.Elevation(p), unrolled[k])); d > 1e-6 {
				t.Errorf("%s: corner %d is %g off", what, k, d)
			}
		}
	}
	var corners []geom.Point
	for _, e := range c.Outline.Edges {
		corners = append(corners, e.From)
	}
	same("outline", straight.Outline, corners)
	same("tips", straight.Tips, c.Tips)
	same("roots", straight.Roots, c.Roots)
}

// What cannot be cut is refused.
func TestCurveStringRefused(t *testing.T) {
	for _, c := range []struct {
		key    string
		change func(*turn.CurveSteps)
		throat float64
	}{
		{"throat", func(*turn.CurveSteps) {}, 0},
		{"tread", func(s *turn.CurveSteps) { s.Tread = 7.5 * inch }, 5},
		{"tread", func(s *turn.CurveSteps) { s.Floor = 6.5 * inch }, 5},
		{"inside_radius", func(s *turn.CurveSteps) { s.Inside = 0 }, 5},
		{"throat", func(s *turn.CurveSteps) { s.Floor = -8 * inch }, 1}, // the bottom edge at the heel is 1 + 1/cos(pitch) in below
	} {
		s := curveSteps(125, 16, 60, 36, 120, 1)
		c.change(&s)
		all, bad := s.Strings(c.throat * inch)
		if all != nil || len(bad) == 0 || bad[0].Key != c.key {
			t.Errorf("%s: %v", c.key, bad)
		}
	}
}
