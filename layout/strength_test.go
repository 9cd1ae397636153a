package layout_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"stepoff/layout"
	"stepoff/spec"
	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

// strengthOf works out the strength of the first flight of a job: the 3-4-5
// stair of 14 risers in DF-L No.2, 36 in wide, with the given top-level keys.
func strengthOf(t *testing.T, code string, edits map[string]string) *layout.Strength {
	t.Helper()
	c, ok := rules.Lookup(code)
	if !ok {
		t.Fatalf("there is no %s", code)
	}
	var b strings.Builder
	for _, l := range []struct{ key, value string }{
		{"units", "imperial"}, {"levels", `{total_rise: 105"}`}, {"width", `36"`},
		{"stairway", `[{flight: {risers: 14, run: 10"}}]`},
		{"tread", `{thickness: 1 1/2", nosing: 1", boards: 2x12}`}, {"riser", `{thickness: 3/4"}`},
		{"stringer", `{stock: 2x12, species: DF-L, grade: No.2, count: 3}`},
		{"sides", ""}, {"loads", ""}, {"service", ""}, {"incised", ""}, {"saw", ""},
	} {
		v := l.value
		if e, ok := edits[l.key]; ok {
			v = e
		}
		if v != "" {
			fmt.Fprintf(&b, "%s: %s\n", l.key, v)
		}
	}
	s := compute(t, b.String())
	return s.Strength(s.Flights()[0], c)
}

func about(t *testing.T, what string, got, want float64) {
	t.Helper()
	if !(math.Abs(got-want) <= 1e-3*math.Abs(want)) {
		t.Errorf("%s: %.5g, want %.5g", what, got, want)
	}
}

// The 3-4-5 stair by hand: throat 5 1/4, S 1.5 x 5.25^2 / 6 = 6.890625 in3, span
// 130 in. Of three stringers over 36 in the outer carry 9 in, the middle one 18 x
// 1.25 = 22.5 in of it: at 50 psf 93.75 plf, M = 7.8125 x 130^2 / 8 = 16503.9 in
// lb, 2395.1 psi of 900. Shear 7.8125 x 65 x 0.8 = 406.25 lb, x 1.5 / 7.875 =
// 77.38 psi of 180. Under 40 psf it sags 5 x 6.25 x 130^4 / (384 x 1.6e6 x
// 18.0879 x 0.8) = 1.00387 in, of 130 / 360.
func TestStrengthByHand(t *testing.T) {
	w := strengthOf(t, "irc-2021", nil)
	if w.Unknown != "" || len(w.Stringers) != 3 {
		t.Fatalf("%q, %d stringers", w.Unknown, len(w.Stringers))
	}
	left, middle := w.Stringers[0], w.Stringers[1]
	about(t, "left carries", left.Tributary/25.4, 9)
	about(t, "middle carries", middle.Tributary/25.4, 22.5)
	about(t, "span", middle.LongestSpan()/25.4, 130)
	about(t, "bending", middle.Bending*1e6/measure.PSI, 2395.1)
	about(t, "of", middle.AllowedBending*1e6/measure.PSI, 900)
	about(t, "ratio", middle.BendingRatio, 2395.1/900)
	about(t, "left's ratio", left.BendingRatio, 2395.1/900*9/22.5)
	about(t, "shear", middle.Shear*1e6/measure.PSI, 77.38)
	about(t, "deflection", middle.Deflection/25.4, 1.00387)
	about(t, "deflection ratio", middle.DeflectionRatio, 1.00387*360/130)
	about(t, "foot", middle.Foot()/measure.PoundForce, 7.8125*65)
	about(t, "foot's stress", middle.FootBearing*1e6/measure.PSI, 7.8125*65/(1.5*10.75))
	about(t, "hanger's seat", middle.HeadBearing/25.4, 7.8125*65/(1.5*625))
	about(t, "as a simple span, bending", middle.Limit.Bending/25.4, math.Sqrt(8*6.890625*900/7.8125))
	about(t, "300 lb and 10 psf", middle.PointRatio, (300.0*130/4+1.5625*130*130/8)/6.890625/900)
	if w.Holds() {
		t.Error("it holds at 2.66 times what it may bear")
	}
}

// A post half way brings it to hold, and its least throat then just does.
func TestPostsAndLeastThroat(t *testing.T) {
	w := strengthOf(t, "irc-2021", map[string]string{"stringer": `{stock: 2x12, species: DF-L, grade: No.2, count: 3, props: [65"]}`})
	c := w.Stringers[1]
	about(t, "bending with a post", c.BendingRatio, 2395.1/900/4)
	about(t, "the post carries", c.Reactions[1]/measure.PoundForce, 1.25*7.8125*65)
	if !w.Holds() || !c.LeastThroatOK {
		t.Fatal("it does not hold")
	}
	about(t, "least throat", c.LeastThroat/25.4, 5.25*math.Sqrt(2395.1/900/4))
	code, _ := rules.Lookup("irc-2021")
	if least, from, ok := w.LeastThroat(c.Group, code); !ok || from != "strength" || math.Abs(least-c.LeastThroat) > 1e-9 {
		t.Errorf("the throat may be cut to %g by %s", least, from)
	}
	low := strengthOf(t, "irc-2021", map[string]string{"levels": `{total_rise: 30"}`, "stairway": `[{flight: {risers: 4, run: 10"}}]`})
	if least, from, ok := low.LeastThroat(low.Stringers[1].Group, code); least != 90 || from != "nbc-2020" || !ok {
		t.Errorf("of a low stair the throat may be cut to %g by %s", least, from)
	}
	dca, _ := rules.Lookup("dca-6") // 5 in is more than the stringer needs
	if least, from, _ := w.LeastThroat(c.Group, dca); least != 127 || from != "dca-6" {
		t.Errorf("under dca-6 the throat may be cut to %g by %s", least, from)
	}
}

// A post too near the head makes a lever of the stringer. By hand, the three
// moments over 122 and 8 in under 7.8125 lb/in: M = -7.8125 x (122^3 + 8^3) /
// 1040 = -13644.5 in lb, the head stands with 7.8125 x 4 - 13644.5 / 8 = -1674.3
// lb, what a head that is not held down lifts off with.
func TestAPostNearTheHeadLiftsIt(t *testing.T) {
	w := strengthOf(t, "irc-2021", map[string]string{"stringer": `{stock: 2x12, species: DF-L, grade: No.2, count: 3, props: [122"]}`})
	c := w.Stringers[1]
	if len(c.Uplift) != 3 || c.Uplift[0] != 0 || c.Uplift[1] != 0 {
		t.Fatalf("it lifts by %v", c.Uplift)
	}
	about(t, "head lifts", c.Uplift[2]/measure.PoundForce, 1674.3)
	half := strengthOf(t, "irc-2021", map[string]string{"stringer": `{stock: 2x12, species: DF-L, grade: No.2, count: 3, props: [65"]}`})
	if u := half.Stringers[1].Uplift; u[0] != 0 || u[1] != 0 || u[2] != 0 {
		t.Errorf("with a post half way it lifts by %v", u)
	}
}

// Treads that hang 4 in past an open side load the stringer there with what a
// simple span with an overhang does, (18 + 4)^2 / 36 = 13.444 in of width, not 9;
// the wall's side is as it was.
func TestOverhangLoadsTheEdge(t *testing.T) {
	w := strengthOf(t, "irc-2021", map[string]string{"sides": "[wall, open]", "tread": `{thickness: 1 1/2", nosing: 1", overhang: 4"}`})
	about(t, "left", w.Stringers[0].Tributary/25.4, 9)
	about(t, "middle", w.Stringers[1].Tributary/25.4, 22.5)
	about(t, "right", w.Stringers[2].Tributary/25.4, 22.0*22/36)
}

// Each stringer in its own place: along a wall it does not span, and a wall on
// one side leaves the middle as it was.
func TestSupportsEachInItsPlace(t *testing.T) {
	w := strengthOf(t, "irc-2021", map[string]string{"stringer": `{stock: 2x12, species: DF-L, grade: No.2, support: [wall, span, span]}`})
	if w.Stringers[0].Spans() || !w.Stringers[1].Spans() || !w.Stringers[2].Spans() {
		t.Error("only the left one is fastened along a wall")
	}
	about(t, "middle", w.Stringers[1].BendingRatio, 2395.1/900)
	if got := w.Alike(); len(got) != 3 {
		t.Errorf("alike are %v", got)
	}
	all := strengthOf(t, "irc-2021", map[string]string{"stringer": `{stock: 2x12, species: DF-L, grade: No.2, count: 3, support: wall}`})
	if all.Worst() != nil || !all.Holds() {
		t.Error("stringers along walls span")
	}
}

// Loads: the code's, the job's, that of dwellings where neither says, and OSHA's
// five times what is expected with 1000 lb on any spot.
func TestLoads(t *testing.T) {
	for _, c := range []struct {
		code, loads string
		live, dead  float64 // psf
		from        string
		spot        float64 // lb that a stringer has to bear
	}{
		{"irc-2021", "", 40, 10, "irc-2021 Table R301.5", 0},
		{"ibc-2021", "", 100, 10, "ibc-2021 Table 1607.1", 0},
		{"dca-6", "{live: 60 psf}", 60, 10, "the job", 0},
		{"dca-6", "{dead: 15 psf}", 40, 15, "dca-6 Table R301.5", 0},
		{"nbc-2020", "", 1900 / measure.PSF, 10, "nbc-2020 9.8.9", 0},
		{"uk-adk", "", 40, 10, "no live load is known of uk-adk: that of dwellings is taken", 0},
		{"none", "", 40, 10, "no code is named: that of dwellings is taken", 0},
		{"osha-1910", "", 200, 10, "no live load is known of osha-1910", 1000},
		{"osha-1910", "{live: 50 psf}", 250, 10, "the job", 1000},
	} {
		w := strengthOf(t, c.code, map[string]string{"loads": c.loads})
		about(t, c.code+" live", w.Loads.Live/measure.PSF, c.live)
		about(t, c.code+" dead", w.Loads.Dead/measure.PSF, c.dead)
		if !strings.Contains(w.Loads.LiveFrom, c.from) {
			t.Errorf("%s: from %q, want %q", c.code, w.Loads.LiveFrom, c.from)
		}
		if got := w.Stringers[1].Point / measure.PoundForce; math.Abs(got-c.spot) > 1e-9 {
			t.Errorf("%s: a stringer has to bear %g lb", c.code, got)
		}
	}
}

// OSHA's five times the live load and 1000 lb are what a stair must not break
// under (1910.25(b)(6)); it bends as any other under what is expected, so that its
// deflection is that of a stair with the load of dwellings.
func TestTimesTheLoadIsForStrengthAlone(t *testing.T) {
	tread := `{thickness: 1 1/2", nosing: 1", boards: 2x12, species: DF-L, grade: No.2}`
	osha, none := strengthOf(t, "osha-1910", map[string]string{"tread": tread}), strengthOf(t, "none", map[string]string{"tread": tread})
	a, b := osha.Stringers[1], none.Stringers[1]
	about(t, "bending", a.BendingRatio, b.BendingRatio*210/50)
	about(t, "deflection", a.DeflectionRatio, b.DeflectionRatio)
	about(t, "with the dead load", a.TotalDeflection, b.TotalDeflection)
	about(t, "reach by deflection", a.Limit.Deflection, b.Limit.Deflection)
	about(t, "treads' deflection", osha.Treads.DeflectionRatio, none.Treads.DeflectionRatio)
	if osha.Treads.BendingRatio < 3*none.Treads.BendingRatio {
		t.Error("1000 lb bend a tread less than three times as much as 300")
	}
}

// Wet, incised, weaker wood, a hole at the roots: each makes the stringer worse;
// a strongback, better wood and own values make it better.
func TestWhatMakesItWorseAndBetter(t *testing.T) {
	ratio := func(edits map[string]string) (bending, shear, deflection float64) {
		w := strengthOf(t, "irc-2021", edits)
		if w.Unknown != "" {
			t.Fatalf("%v: %s", edits, w.Unknown)
		}
		c := w.Stringers[1]
		return c.BendingRatio, c.ShearRatio, c.DeflectionRatio
	}
	b0, s0, d0 := ratio(nil)
	for name, edits := range map[string]map[string]string{
		"incised": {"incised": "true"},
		"HF":      {"stringer": "{stock: 2x12, species: HF, grade: No.2, count: 3}"},
		"a hole":  {"saw": `{root_hole: 1/2"}`},
		"2x10":    {"stringer": "{stock: 2x10, species: DF-L, grade: No.2, count: 3}"},
	} {
		if b, s, d := ratio(edits); !(b > b0 && s > s0 && d > d0) {
			t.Errorf("%s: %.3f %.3f %.3f is not worse than %.3f %.3f %.3f", name, b, s, d, b0, s0, d0)
		}
	}
	if b, s, d := ratio(map[string]string{"service": "wet"}); !(b == b0 && s > s0 && d > d0) { // Fb is under 1150 psi
		t.Errorf("wet: %.3f %.3f %.3f against %.3f %.3f %.3f", b, s, d, b0, s0, d0)
	}
	for name, edits := range map[string]map[string]string{
		"a strongback": {"stringer": "{stock: 2x12, species: DF-L, grade: No.2, count: 3, strongback: 2x6}"},
		"own values":   {"stringer": "{stock: 2x12, count: 3, values: {bending: 2250 psi, shear: 285 psi, bearing: 750 psi, modulus: 1.9e6 psi}}"},
	} {
		if b, s, d := ratio(edits); !(b < b0 && s < s0 && d < d0) {
			t.Errorf("%s: %.3f %.3f %.3f is not better than %.3f %.3f %.3f", name, b, s, d, b0, s0, d0)
		}
	}
}

// No verdict where there is none to give, and why.
func TestNoVerdict(t *testing.T) {
	for _, c := range []struct{ key, value, says string }{
		{"stringer", "{stock: 2x12}", "species and grade of the stringers are not stated"},
		{"stringer", "{stock: 2x12, species: DF-L}", "the grade of the stringers is not stated"},
		{"stringer", "{stock: 2x12, grade: No.2}", "the species of the stringers is not stated"},
		{"stringer", "{stock: 2x12, species: Poplar, grade: No.1}", `species "Poplar"`},
		{"stringer", `{stock: {width: 11 1/4", thickness: 1"}, species: DF-L, grade: No.2}`, "thinner than a nominal 2 in"},
		{"stringer", "{stock: 2x12, species: DF-L, grade: No.2, strongback: 1x6}", "of the strongback: lumber thinner"},
		{"width", "", "the width of the stair is not stated"},
	} {
		w := strengthOf(t, "irc-2021", map[string]string{c.key: c.value})
		if !strings.Contains(w.Unknown, c.says) || len(w.Stringers) != 0 {
			t.Errorf("%s: %s: %q, %d stringers; want %q", c.key, c.value, w.Unknown, len(w.Stringers), c.says)
		}
	}
	for tread, says := range map[string]string{
		`{thickness: 1", species: DF-L, grade: No.2}`:                   "thinner than a nominal 2 in", // 5/4, sheet goods
		`{thickness: 1 1/2", species: DF-L}`:                            "species and grade are needed both",
		`{thickness: 1 1/2"}`:                                           "species and grade of the treads are not stated",
		`{thickness: 1 1/8", nosing: 1", species: Maple, grade: clear}`: `species "Maple"`,
	} {
		if w := strengthOf(t, "irc-2021", map[string]string{"tread": tread}); !strings.Contains(w.TreadsUnknown, says) || w.Treads != nil {
			t.Errorf("%s: %q, want %q", tread, w.TreadsUnknown, says)
		}
	}
}

// Treads of one 2x12, of two 2x6 of which one bears the point load, and of sheet
// goods with their own values.
func TestTreadBoards(t *testing.T) {
	longest := map[string]float64{}
	for name, tread := range map[string]string{
		"2x12":  `{nosing: 1", boards: 2x12, species: DF-L, grade: No.2}`,
		"2 2x6": `{nosing: 1", boards: 2 2x6, species: DF-L, grade: No.2}`,
		"5/4":   `{nosing: 1", boards: 2 5/4x6, values: {bending: 1000 psi, shear: 150 psi, modulus: 1.4e6 psi}}`,
		"sheet": `{thickness: 1 1/8", nosing: 1", values: {bending: 1500 psi, shear: 100 psi, modulus: 1.5e6 psi}}`,
	} {
		w := strengthOf(t, "irc-2021", map[string]string{"tread": tread})
		if w.Treads == nil {
			t.Fatalf("%s: %s", name, w.TreadsUnknown)
		}
		if !w.Treads.ByPoint {
			t.Errorf("%s: not the point load decides over 18 in", name)
		}
		longest[name] = w.Treads.Longest / 25.4
	}
	if !(longest["2x12"] > longest["2 2x6"] && longest["2 2x6"] > longest["5/4"]) {
		t.Errorf("longest spans %v", longest)
	}
	// One 2x6 under 300 lb on 2 in: I = 5.5 x 1.5^3 / 12 = 1.546875 in4, and L / 288 = 300 (8 L3 - 16 L + 8) / (384 x 1.6e6
	// x I) where L = 37.11 in, just before bending, Fb' = 900 x 1.3 x 1.15, decides at 37.12.
	about(t, "2 2x6", longest["2 2x6"], 37.11)
	if w := strengthOf(t, "irc-2021", map[string]string{"tread": `{nosing: 1", boards: 2 2x6, species: DF-L, grade: No.2}`}); w.Treads.Boards != 2 || math.Abs(w.Treads.Tread.Depth-5.5*25.4) > 1e-9 {
		t.Errorf("of two 2x6 %d boards are told, one of %g mm is judged", w.Treads.Boards, w.Treads.Tread.Depth)
	}
}

// A place where no post can stand is told with its key.
func TestPropsStandUnderTheFlight(t *testing.T) {
	for prop, says := range map[string]string{`131"`: "beyond the head", `10"`: "in the seat"} {
		job, err := spec.Load("job.yaml", []byte(fmt.Sprintf("units: imperial\nlevels: {total_rise: 105}\nstairway: [{flight: {risers: 14, run: 10}}]\ntread: {thickness: 1 1/2}\nriser: {thickness: 3/4}\nstringer: {stock: 2x12, props: [%s]}\n", prop)))
		if err != nil {
			t.Fatal(err)
		}
		_, err = layout.Compute(job)
		if err == nil || !strings.Contains(err.Error(), "job.yaml:6:33: props: ") || !strings.Contains(err.Error(), says) {
			t.Errorf("%s: %v, want %q", prop, err, says)
		}
	}
}

// The chart's span at the stair's own rise and run is the stair's own reach, and
// a seat that crushes does not hold: 60 in under 7.8125 lb/in stand with 234.4 lb on
// 1 1/2 by 10 3/4 in, 14.5 psi.
func TestReachAndSeat(t *testing.T) {
	for _, edits := range []map[string]string{
		nil,
		{"saw": `{root_hole: 1/2"}`},
		{"stringer": "{stock: 2x12, species: DF-L, grade: No.2, count: 3, strongback: 2x6}"},
	} {
		c := strengthOf(t, "irc-2021", edits).Stringers[1]
		span, ok := c.Reach(7.5*25.4, 10*25.4)
		if !ok || math.Abs(span-c.Limit.Least()) > 1e-6 {
			t.Errorf("%v: the chart has %g, the stair reaches %g", edits, span, c.Limit.Least())
		}
	}
	for bearing, holds := range map[string]bool{"14 psi": false, "15 psi": true} {
		w := strengthOf(t, "irc-2021", map[string]string{"levels": `{total_rise: 52 1/2"}`, "stairway": `[{flight: {risers: 7, run: 10"}}]`,
			"stringer": "{stock: 2x12, count: 3, values: {bending: 2250 psi, shear: 285 psi, bearing: " + bearing + ", modulus: 1.9e6 psi}}"})
		if w.Holds() != holds {
			t.Errorf("at %s across the grain it holds: %v", bearing, !holds)
		}
	}
}
