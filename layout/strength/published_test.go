package strength_test

import (
	"math"
	"testing"

	"stepoff/layout/strength"
)

// Inches, feet, pounds: what the published cases are in.
const (
	in  = 25.4
	ft  = 12 * in
	lb  = 4.4482216152605
	psi = lb / (in * in)
	plf = lb / ft
	psf = lb / (ft * ft)
)

// net is a member of one rectangle under a load in plf, deflection not looked at.
func net(width, depth, fb, load, span float64) strength.Member {
	return strength.Member{
		Section: strength.Section{{Thickness: width * in, Depth: depth * in, E: 1.6e6 * psi, Fb: fb * psi, Fv: 180 * psi}},
		Beam:    strength.Beam{At: []float64{0, span * ft}},
		Live:    load * plf * 0.8, Dead: load * plf * 0.2, Over: 1,
	}
}

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s: %.6g, want %.6g within %g", what, got, want, within)
	}
}

// Source: hansenpolebuildings.com, stair stringers: 1.5 x 6.75, Fb 750, 50 psf
// over 18 in, S = 11.39 in3, L = sqrt(8 S Fb / w) = 8.71 ft. Its notch is not
// that of its steps: with the true throat of 7 3/4 by 10 on a 2x12, 5.124, S is
// 6.565 and L 6.62 ft. Fb 850, 875 and 900 derived by the same formula.
func TestSpanOfAPublishedSection(t *testing.T) {
	const load = 75
	for _, c := range []struct{ depth, fb, s, span float64 }{
		{6.75, 750, 11.39, 8.71}, {6.75, 850, 11.39, 9.28}, {6.75, 875, 11.39, 9.41}, {6.75, 900, 11.39, 9.55},
		{11.25 - 7.75*10/math.Hypot(7.75, 10), 750, 6.565, 6.62},
	} {
		m := net(1.5, c.depth, c.fb, load, 10)
		stress, _, _ := m.Section.Bending(1) // M / S
		near(t, "S", 1/stress/(in*in*in), c.s, 0.005)
		near(t, "span", m.Longest().Bending/ft, c.span, 0.005)
	}
}

// Source: AWC DCA 6: a cut stringer, analysed at 5.1 in, may span 6 ft 0 in, a
// solid 2x12 13 ft 3 in, both 18 in apart (secondary); 40 and 10 psf. Both spans
// follow from one stress, 623 and 624 psi (derived), and with 300 lb in the
// middle, which DCA 6 cannot mean, the first would be 955.
func TestTheSpansOfDCA6FollowFromOneStress(t *testing.T) {
	load := 50 * 1.5
	cut, solid := net(1.5, 5.1, 775*0.8, load, 6), net(1.5, 11.25, 775*0.8, load, 13.25)
	near(t, "cut", cut.Judge().Bending/psi, 623, 0.5)
	near(t, "solid", solid.Judge().Bending/psi, 624, 0.5)
	stress, _ := cut.WithPoint(300 * lb)
	near(t, "cut, with 300 lb", stress/psi, 955, 0.5)
	// 775 psi x 0.8 for incising gives the two spans back: 71.8 and 158.5 in.
	near(t, "cut span", cut.Longest().Bending/in, 71.8, 0.05)
	near(t, "solid span", solid.Longest().Bending/in, 158.5, 0.05)
}

// Section properties of a whole and a cut 2x12. Source: S 31.64 in3, I 177.98
// in4; at 5.1 in 6.50 and 16.58 (derived).
func TestSectionOfA2x12(t *testing.T) {
	for _, c := range []struct{ depth, s, i float64 }{{11.25, 31.64, 177.98}, {5.1, 6.50, 16.58}} {
		m := net(1.5, c.depth, 900, 75, 6)
		stress, _, _ := m.Section.Bending(1)
		near(t, "S", 1/stress/(in*in*in), c.s, 0.005)
		near(t, "I", m.Section.EI()/(1.6e6*psi)/(in*in*in*in), c.i, 0.005)
		shear, _, _ := m.Section.Shear(1) // 3 V / (2 b d)
		near(t, "shear of 1 N", shear, 1.5/(1.5*c.depth*in*in), 1e-15)
	}
}

// What an overcut leaves of the section: 7 3/4 by 10 on a 2x12, along the riser
// line, 0.92 at 1/4, 0.85 at 1/2, 0.72 at 1 in (derived, net section alone).
func TestSectionAfterAnOvercut(t *testing.T) {
	throat := 11.25 - 7.75*10/math.Hypot(7.75, 10)
	cos := 10 / math.Hypot(7.75, 10)
	for past, want := range map[float64]float64{0.25: 0.92, 0.5: 0.85, 1: 0.72} {
		whole, _, _ := net(1.5, throat, 900, 75, 6).Section.Bending(1)
		left, _, _ := net(1.5, throat-past*cos, 900, 75, 6).Section.Bending(1)
		near(t, "left", whole/left, want, 0.006)
	}
}

// Two rectangles worked by hand as one transformed section: a throat of 1 1/2 by
// 5 1/4 in of E 1.6 million psi and a 2x6 of E 1.4 million at its side, its upper
// edge at the roots. n = 1.4 / 1.6 = 0.875.
//
//	A1 = 7.875 in2 at 2.625 in; n A2 = 0.875 x 8.25 = 7.21875 in2 at 2.75 in
//	axis = (7.875 x 2.625 + 7.21875 x 2.75) / 15.09375 = 2.684783 in
//	I1 = 1.5 x 5.25^3 / 12 = 18.087891; n I2 = 0.875 x 1.5 x 5.5^3 / 12 = 18.197266
//	I = 18.087891 + 7.875 x 0.059783^2 + 18.197266 + 7.21875 x 0.065217^2 = 36.344004 in4
//	M = 1000 lb ft: f1 = 12000 x 2.684783 / I = 886.46 psi (upper edge),
//	    f2 = 0.875 x 12000 x 2.815217 / I = 813.33 psi (lower edge)
//	V = 100 lb: shear flow between them V n A2 0.065217 / I = 1.29537 lb/in
func TestCompositeSectionByHand(t *testing.T) {
	s := strength.Stiffened(
		strength.Ply{Thickness: 1.5 * in, Depth: 5.25 * in, E: 1.6e6 * psi, Fb: 900 * psi, Fv: 180 * psi},
		strength.Ply{Thickness: 1.5 * in, Depth: 5.5 * in, E: 1.4e6 * psi, Fb: 800 * psi, Fv: 150 * psi})
	near(t, "axis", s.Neutral()/in, 2.684783, 1e-6)
	near(t, "I", s.EI()/(1.6e6*psi)/(in*in*in*in), 36.344004, 2e-6)
	stress, allowed, ratio := s.Bending(1000 * lb * ft)
	near(t, "f2", stress/psi, 813.33, 0.01) // of 800, worse than 886.46 of 900
	near(t, "allowed", allowed/psi, 800, 1e-9)
	near(t, "ratio", ratio, 813.33/800, 1e-4)
	along, across, both := s.Connection(1, 100*lb, 10*lb/in)
	near(t, "along", along/(lb/in), 1.29537, 1e-5)
	share := (18.197266 + 7.21875*0.065217*0.065217) / 36.344004
	near(t, "across", across/(lb/in), 10*share, 1e-5)
	near(t, "both", both, math.Hypot(along, across), 1e-12)
	// A narrower strongback stands at the stringer's lower edge.
	if low := strength.Stiffened(s[0], strength.Ply{Depth: 3.5 * in}); math.Abs(low[1].Top-1.75*in) > 1e-9 {
		t.Errorf("a 2x4 stands %g in below the roots, want 1 3/4", low[1].Top/in)
	}
	// Alike rectangles side by side are one twice as wide.
	twin := strength.Section{s[0], s[0]}
	one, _, _ := strength.Section{s[0]}.Shear(100)
	two, _, _ := twin.Shear(200)
	near(t, "twin", two, one, 1e-12)
}

// Notched end: half of the depth left carries a quarter per depth left, an
// eighth in all. Source: NDS 3.4.3.2.
func TestNotchedEnd(t *testing.T) {
	whole, half := strength.NotchedEnd(1, 38, 200, 200), strength.NotchedEnd(1, 38, 200, 100)
	near(t, "whole", whole, 2.0/3*38*200, 1e-9)
	near(t, "half", half, whole/8, 1e-9)
}

// Under treads that run through over three, the middle one takes 1.25 times its
// simple share; over four 1.1, over five 8/7 and its middle one 0.929, not taken
// for less than 1. Source: reactions of continuous beams of equal spans, as every
// book of statics has them (common knowledge).
func TestShares(t *testing.T) {
	for n, want := range map[int][]float64{2: {1, 1}, 3: {1, 1.25, 1}, 4: {1, 1.1, 1.1, 1}, 5: {1, 8.0 / 7, 1, 8.0 / 7, 1}} {
		for i, got := range strength.Shares(n) {
			near(t, "share", got, want[i], 1e-12)
		}
	}
}

// A 2x12 tread over 18 in under 300 lb on 2 by 2 in and 10 psf: M = 300 x (18/4
// - 2/8) + 9.375/12 x 18^2/8 = 1306.64 in lb, S = 4.21875 in3, so 309.72 psi.
// Deflection of the point load: 300 (8 x 18^3 - 4 x 18 x 2^2 + 2^3) / (384 x
// 1.6e6 x 3.164063) = 0.007157 in.
func TestTreadByHand(t *testing.T) {
	tread := strength.Tread{Depth: 11.25 * in, Thickness: 1.5 * in, E: 1.6e6 * psi, Fb: 1080 * psi, Fv: 180 * psi,
		Live: 40 * psf, Dead: 10 * psf, Point: 300 * lb, Patch: 2 * in, Over: 288}
	v := tread.Judge(18 * in)
	near(t, "bending", v.Bending/psi, 309.72, 0.01)
	near(t, "deflection", v.DeflectionRatio, 0.007157*288/18, 1e-5)
	near(t, "shear", v.ShearRatio, 1.5*(300*(1-2.0/36)+9.375/12*9)/16.875/180, 1e-6)
	if !v.ByPoint {
		t.Error("the uniform load decides over 18 in")
	}
	if longest := tread.Longest(4000); math.Abs(tread.Judge(longest).Ratio()-1) > 1e-6 {
		t.Errorf("over the longest span of %g the ratio is %g", longest, tread.Judge(longest).Ratio())
	}
	if far := tread.Judge(20 * ft); far.ByPoint {
		t.Error("the point load decides over 20 ft")
	}
}
