package strength_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"stepoff/layout/strength"
)

// anyMember draws a stringer of what is built, with or without a strongback, over
// one to four spans.
func anyMember(t *rapid.T) strength.Member {
	num := func(name string, from, to float64) float64 { return rapid.Float64Range(from, to).Draw(t, name) }
	ply := strength.Ply{Thickness: num("thickness", 25, 90), Depth: num("throat", 40, 250), E: num("E", 5000, 15000), Fb: num("Fb", 3, 20), Fv: num("Fv", 0.5, 2)}
	m := strength.Member{Section: strength.Section{ply}, Live: num("live", 0.2, 5), Dead: num("dead", 0.05, 1), Over: num("over", 120, 480)}
	if rapid.Bool().Draw(t, "strongback") {
		back := strength.Ply{Thickness: 38, Depth: num("strongback", 60, 290), E: num("its E", 5000, 15000), Fb: num("its Fb", 3, 20), Fv: num("its Fv", 0.5, 2)}
		m.Section = strength.Stiffened(ply, back)
	}
	if rapid.Bool().Draw(t, "spot") {
		m.Point = num("point", 100, 5000)
	}
	m.Beam.Slope = num("slope", 0.3, 0.9)
	m.Beam.At = []float64{0}
	for range rapid.IntRange(1, 4).Draw(t, "spans") {
		m.Beam.At = append(m.Beam.At, m.Beam.At[len(m.Beam.At)-1]+num("span", 300, 4000))
	}
	return m
}

// A stringer as long as it may be is stressed to all it may; running through over
// posts bends it no more than single spans do; the least throat just holds; and
// the supports carry the load.
func TestMemberProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := anyMember(t)
		single := m
		single.Beam.At = []float64{0, m.Longest().Least()}
		if r := single.Judge().Ratio(); math.Abs(r-1) > 1e-9 {
			t.Fatalf("as long as it may be, its ratio is %.12g", r)
		}
		total := m.Live + m.Dead
		if through, apart := m.Beam.Through(total), m.Beam.Apart(total); through.Moment > apart.Moment*(1+1e-12) {
			t.Fatalf("running through it is bent with %g, in single spans with %g", through.Moment, apart.Moment)
		}
		for _, f := range []strength.Forces{m.Beam.Through(total), m.Beam.Apart(total)} {
			sum := 0.0
			for _, r := range f.Reactions {
				sum += r
			}
			if want := total * m.Beam.At[len(m.Beam.At)-1]; math.Abs(sum-want) > 1e-9*want {
				t.Fatalf("the supports carry %g of %g", sum, want)
			}
		}
		depth, ok := m.LeastDepth(m.Section[0].Depth)
		if ok != m.Judge().Holds() {
			t.Fatalf("it holds: %v, and its least throat is found: %v", m.Judge().Holds(), ok)
		}
		if len(m.Section) == 1 && ok { // alone, less never holds
			thinner := m
			thinner.Section = strength.Section{m.Section[0]}
			thinner.Section[0].Depth = depth - 1e-3
			if thinner.Judge().Holds() {
				t.Fatalf("less than the least throat of %g holds", depth)
			}
		}
	})
}
