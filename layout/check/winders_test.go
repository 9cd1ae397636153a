package check_test

import (
	"fmt"
	"math"
	"regexp"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"stepoff/layout/check"
	"stepoff/layout/turn"
	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

// wound is a stair of four risers, a turn of winders and eight risers.
func wound(t *testing.T, code, units, width, run, winders string) []check.Finding {
	t.Helper()
	edits := map[string]string{"units": units, "width": width,
		"stairway": fmt.Sprintf("[{flight: {risers: 4, run: %s}}, {winders: {turn: left, %s}}, {flight: {risers: 8, run: %s}}]", run, winders, run)}
	if units == "metric" {
		edits["levels"] = "{total_rise: 2520}" // 14 of 180
		edits["tread"], edits["riser"] = "{thickness: 30, nosing: 25}", "{thickness: 19}"
		edits["stringer"] = "{stock: {width: 286, thickness: 38}}"
	}
	return checked(t, code, edits)
}

// onTurn are the findings of one rule about the winders.
func onTurn(found []check.Finding, rule string) (some []check.Finding) {
	for _, f := range by(found, rule) {
		if strings.HasPrefix(f.Text, "winders-1: ") {
			some = append(some, f)
		}
	}
	return some
}

// The lead codes on a quarter turn of three radial winders, by hand. All radial
// winders are alike on the walkline: between nosings 2 (a + d) sin 15, a the
// set-back and d the walkline's distance. The first is least deep where its
// nosing leaves the inside, o before the riser line, square to it:
// o + (a sin 30 - o) / cos 30; so far in, with a + that distance for a.
func TestWindersByHand(t *testing.T) {
	walkline := func(a, d float64) float64 { return 2 * (a + d) * math.Sin(15*math.Pi/180) }
	narrow := func(a, o float64) float64 { return o + (a/2-o)/math.Cos(30*math.Pi/180) }
	const in = 25.4
	for _, c := range []struct {
		code, units, width, run, given string
		setback                        float64 // of what is given or solved by hand, mm
		walkline, narrow               float64 // of what is judged; 0: no such rule
		statuses                       map[string][]check.Status
	}{
		// Solved for 6 in: a = 2 ((6 - 1 3/4) cos 30 + 1 3/4) = 10.861.
		{"irc-2021", "imperial", `36"`, `10"`, "treads: 3", 10.8612 * in, walkline(10.8612*in, 12*in), 6 * in,
			map[string][]check.Status{"winder-walkline": {check.Pass}, "winder-narrow": {check.Pass}, "winder-variation": {check.Pass}}},
		{"irc-2021", "imperial", `36"`, `10"`, `treads: 3, setback: 9"`, 9 * in, walkline(9*in, 12*in), narrow(9*in, 1.75*in),
			map[string][]check.Status{"winder-walkline": {check.Pass}, "winder-narrow": {check.Fail}, "winder-variation": {check.Pass}}},
		{"ibc-2021-dwelling", "imperial", `36"`, `10"`, "treads: 3", 10.8612 * in, walkline(10.8612*in, 12*in), 6 * in,
			map[string][]check.Status{"winder-walkline": {check.Pass}, "winder-narrow": {check.Pass}, "winder-use": nil}},
		// 10 in at the narrow end: a = 2 (8 1/4 cos 30 + 1 3/4) = 17.789.
		{"ibc-2021", "imperial", `44"`, `11"`, "treads: 3", 17.7894 * in, walkline(17.7894*in, 12*in), 10 * in,
			map[string][]check.Status{"winder-walkline": {check.Pass}, "winder-narrow": {check.Pass}, "winder-use": {check.Fail}}},
		// Canada: by angle alone; winders may meet in a point.
		{"nbc-2020", "metric", "900", "260", "treads: 3, setback: 0", 0, 0, 0,
			map[string][]check.Status{"winder-walkline": nil, "winder-narrow": nil, "winder-angle": {check.Pass, check.Pass, check.Pass}}},
		{"nbc-2020", "metric", "900", "260", "treads: 4, setback: 0", 0, 0, 0,
			map[string][]check.Status{"winder-angle": {check.Fail, check.Pass, check.Pass}}}, // 22 1/2 each
		// Under a metre: the middle. 50 at the narrow end wants 98.39 and gives 283.87
		// on the walkline; the going of 260 would want 52.28 alone.
		{"uk-adk", "metric", "900", "260", "treads: 3", 98.3923, walkline(98.3923, 450), 50,
			map[string][]check.Status{"winder-walkline": {check.Pass}, "winder-narrow": {check.Pass}, "winder-variation": {check.Pass}, "run-max": {check.Pass}, "pitch": {check.Pass}, "two-rise-plus-run": {check.Pass, check.Pass}}},
		// From a metre on 270 from each side: the inner line decides, 260 wants 232.28.
		{"uk-adk", "metric", "1100", "260", "treads: 3", 232.2827, 260, narrow(232.2827, 44),
			map[string][]check.Status{"winder-walkline": {check.Pass}, "winder-narrow": {check.Pass}}},
		{"uk-adk", "metric", "1100", "260", "treads: 3, setback: 200", 200, walkline(200, 270), narrow(200, 44),
			map[string][]check.Status{"winder-walkline": {check.Fail}, "winder-narrow": {check.Pass}}},
		// Australia: three in a quarter turn; how deep is not known.
		{"ncc-2022", "metric", "900", "260", "treads: 3", 0, 0, 0,
			map[string][]check.Status{"winder-count": {check.Pass}, "winder-walkline": {check.Info}, "winder-narrow": nil}},
		{"ncc-2022", "metric", "900", "260", "treads: 4", 0, 0, 0, map[string][]check.Status{"winder-count": {check.Fail}}},
		// Germany: the middle, 100 at 150 from the inside, as deep as the run beside.
		{"din-18065", "metric", "900", "260", "treads: 3", 52.2827, 260, narrow(52.2827+150, 44),
			map[string][]check.Status{"winder-walkline": {check.Pass}, "winder-narrow": {check.Pass}, "winder-variation": {check.Pass, check.Pass, check.Pass}, "two-rise-plus-run": {check.Pass, check.Pass}}},
		{"din-18065", "metric", "900", "260", "treads: 3, setback: 65", 65, walkline(65, 450), narrow(65+150, 44), // 266.58: 6.6 off the runs
			map[string][]check.Status{"winder-walkline": {check.Pass}, "winder-variation": {check.Pass, check.Fail, check.Fail}}},
	} {
		name := fmt.Sprintf("%s, %s wide, %s", c.code, c.width, c.given)
		findings := wound(t, c.code, c.units, c.width, c.run, c.given)
		for rule, want := range map[string]float64{"winder-walkline": c.walkline, "winder-narrow": c.narrow} {
			found := onTurn(findings, rule)
			if want != 0 && (len(found) != 1 || math.Abs(found[0].Actual.Value-want) > 1e-2) {
				t.Errorf("%s: %s %+v, by hand %.3f mm", name, rule, found, want)
			}
		}
		for rule, want := range c.statuses {
			var got []check.Status
			for _, f := range onTurn(findings, rule) {
				got = append(got, f.Status)
			}
			if fmt.Sprint(got) != fmt.Sprint(want) {
				t.Errorf("%s: %s is %v, want %v: %+v", name, rule, got, want, onTurn(findings, rule))
			}
		}
	}
}

// Winders that meet in a point are refused under the IRC, with the reason and with
// what would do.
func TestMeetingInAPoint(t *testing.T) {
	hold(t, "in a point", wound(t, "irc-2021", "imperial", `36"`, `10"`, "treads: 3, setback: 0, narrow: 0"),
		want{"winder-narrow", check.Fail, `winder 1 is 0" deep at the narrow end, less than 6"; 6" more: a set-back of 10 7/8" in place of 0"`},
		want{"winder-narrow", check.Fail, `2 winders at a set-back of 6 3/4"`},
		want{"winder-narrow", check.Fail, `even lines at a set-back of 10 3/4"`})
}

// What a set-back that is not enough is told would do, does: each remedy is built
// as it is printed, and a tape's mark less is not enough.
func TestRemediesDo(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		st := measure.Style{Units: measure.Imperial}
		plan := turn.Winders{
			Hand: turn.Left, Angle: rapid.SampledFrom([]float64{45, 60, 75, 90}).Draw(rt, "angle"), Treads: rapid.IntRange(2, 5).Draw(rt, "treads"),
			Even: rapid.Bool().Draw(rt, "even"), Width: 36 * 25.4, Overhang: float64(rapid.IntRange(0, 30).Draw(rt, "overhang, 1/16")) * 25.4 / 16,
			Depths: turn.Depths{Walklines: []float64{12 * 25.4}, LeastWalkline: 10 * 25.4, LeastNarrow: float64(rapid.IntRange(0, 10).Draw(rt, "narrow")) * 25.4},
		}
		given := measure.Length(rapid.IntRange(0, 20).Draw(rt, "set-back")) * measure.Inch
		if plan.Meets(given) {
			rt.Skip()
		}
		irc, _ := rules.Lookup("irc-2021")
		for _, does := range check.Deeper(plan, given, irc, st) {
			other, at := plan, given
			if m := regexp.MustCompile(`^(\d) winders`).FindStringSubmatch(does); m != nil {
				fmt.Sscan(m[1], &other.Treads)
			} else if strings.Contains(does, "lines") {
				other.Even = strings.HasPrefix(does, "even")
			}
			told := false
			if m := regexp.MustCompile(`a set-back of ([^,]*?)(?: in place of .*)?$`).FindStringSubmatch(does); m != nil {
				at, told = parse(t, m[1]), true
			}
			if !other.Meets(at) {
				rt.Errorf("%+v: %q does not", plan, does)
			}
			if least := at - st.Fineness(); told && least >= 0 && other.Meets(least) {
				rt.Errorf("%+v: %q is more than is needed", plan, does)
			}
		}
	})
}

// A remedy breaks no other limit: even lines are not alike on the walkline, which
// Approved Document K asks for; winders fewer than two are none.
func TestRemediesBreakNothingElse(t *testing.T) {
	found := onTurn(wound(t, "uk-adk", "metric", "1100", "260", "treads: 3, setback: 200"), "winder-walkline")
	if len(found) != 1 || strings.Contains(found[0].Text, "even lines") || !strings.Contains(found[0].Text, "a set-back of 233 mm in place of 200 mm, or 2 winders at this set-back") {
		t.Errorf("uk: %+v", found)
	}
	found = onTurn(wound(t, "irc-2021", "imperial", `36"`, `10"`, `treads: 2, setback: 0`), "winder-narrow")
	if len(found) != 1 || strings.Contains(found[0].Text, "winders at") {
		t.Errorf("two winders: %+v", found)
	}
}

// A job's own walkline lays the winders out; the code's own judges them. From a
// handrail it is the job that can say where it is.
func TestOwnWalkline(t *testing.T) {
	hold(t, "irc", wound(t, "irc-2021", "imperial", `36"`, `10"`, `treads: 3, walkline: 18", narrow: 0`),
		want{"winder-walkline", check.Fail, `deep on the walkline (12" from the inside), less than 10"`})
	const curve = `[{curve: {turn: left, risers: 14, inside_radius: 1500, angle: 125, walkline: 380}}]`
	edits := map[string]string{"units": "metric", "width": "900", "levels": "{total_rise: 2520}", "stairway": curve,
		"tread": "{thickness: 30, nosing: 25}", "riser": "{thickness: 19}", "stringer": "{stock: {width: 286, thickness: 38}}"}
	hold(t, "nbc", checked(t, "nbc-2020", edits), want{"winder-walkline", check.Pass, "(380 mm from the inside), at least 255 mm"})
	hold(t, "uk", checked(t, "uk-adk", edits), want{"winder-walkline", check.Pass, "(450 mm from the inside)"})
}

// Where no code asks, the job's own least depth is held against a set-back that
// is given.
func TestOwnNarrowEnd(t *testing.T) {
	hold(t, "none", wound(t, "none", "imperial", `36"`, `10"`, `treads: 3, setback: 9", narrow: 5"`),
		want{"winder-narrow", check.Warn, `winder 1 is 4 15/16"- (4.925") deep at the narrow end, and the job asks for 5"`})
}

// Winders are no landing: codes count the flight through them. Sources, from memory: IRC R202
// and IBC 202, flight; NCC, flight.
func TestFlightGoesThroughWinders(t *testing.T) {
	list := func(turn string) string {
		return `[{flight: {risers: 11, run: 10"}}, {` + turn + `}, {flight: {risers: 10, run: 10"}}]`
	}
	tall := map[string]string{"levels": `{total_rise: 172 1/2"}`} // 23 of 7 1/2
	wound := turned(t, "irc-2021", list("winders: {turn: left, treads: 3}"), tall)
	hold(t, "winders", wound, want{"flight-rise", check.Fail, `flight-1 to flight-2: the flight rises 172 1/2", more than 151"`})
	if n := len(by(wound, "flight-rise")); n != 1 {
		t.Errorf("the flight is told %d times", n)
	}
	hold(t, "landing", turned(t, "irc-2021", list("landing: {turn: left}"), map[string]string{"levels": `{total_rise: 157 1/2"}`}),
		want{"flight-rise", check.Pass, "flight-1: "}, want{"flight-rise", check.Pass, "flight-2: "})
	hold(t, "ncc", turned(t, "ncc-2022", list("winders: {turn: left, treads: 3}"), tall), want{"flight-risers", check.Fail, "flight-1 to flight-2: the flight has 23 risers, more than 18"})

	low := map[string]string{"levels": `{total_rise: 60"}`} // 8 of 7 1/2
	rail := turned(t, "irc-2021", `[{flight: {risers: 3, run: 10"}}, {winders: {turn: left, treads: 3}}, {flight: {risers: 3, run: 10"}}]`, low)
	for _, member := range []string{"flight-1", "winders-1", "flight-2"} {
		hold(t, "handrail", rail, want{"handrail-needed", check.Info, member + ": 8 risers: a handrail is needed from 4"})
	}
	high := map[string]string{"levels": `{total_rise: 285"}`} // 38 of 7 1/2
	hold(t, "in line", turned(t, "uk-adk", `[{flight: {risers: 18, run: 10"}}, {winders: {turn: left, treads: 3}}, {flight: {risers: 18, run: 10"}}]`, high),
		want{"risers-in-line", check.Fail, "flight-1 to flight-2: 38 risers without a landing that turns"})
}

// Two quarter turns with a flight of one riser between them make a half turn; one
// riser stands before winders at the foot, and behind them at the head.
func TestOneRiserBesideWinders(t *testing.T) {
	const w = `{winders: {turn: right, treads: 3}}`
	half := turned(t, "irc-2021", `[{flight: {risers: 5, run: 10"}}, `+w+`, {flight: {risers: 1}}, `+w+`, {flight: {risers: 4}}]`, nil)
	for _, name := range []string{"winders-1", "winders-2"} {
		hold(t, "half turn", half, want{"winder-narrow", check.Pass, name + ": "}, want{"riser-max", check.Pass, name + ": unit rise 7 1/2\""})
	}
	hold(t, "half turn", half, want{"flight-rise", check.Pass, `flight-1 to flight-3: the flight rises 105"`})
	hold(t, "two sets", turned(t, "nbc-2020", `[{flight: {risers: 5, run: 10"}}, `+w+`, {flight: {risers: 1}}, `+w+`, {flight: {risers: 4}}]`, nil),
		want{"winder-count", check.Fail, "2 turns of winders between the floors, more than 1"})
	ends := turned(t, "irc-2021", `[{flight: {risers: 1}}, `+w+`, {flight: {risers: 8, run: 10"}}, `+w+`, {flight: {risers: 1}}]`, nil)
	hold(t, "ends", ends, want{"winder-walkline", check.Pass, "winders-1: "}, want{"winder-walkline", check.Pass, "winders-2: "}, want{"riser-max", check.Pass, "flight-3: "})
}

// What is laid on winders are their own treads: no riser there waits for a floor.
func TestNoFlooringOnWinders(t *testing.T) {
	f := turned(t, "irc-2021", `[{flight: {risers: 6, run: 10"}}, {winders: {turn: left, treads: 3}}, {flight: {risers: 6, run: 10"}}]`, nil)
	hold(t, "risers", f, want{"last-riser", check.Pass, `flight-1: last riser: 7 1/2" finished`}, want{"first-riser", check.Pass, `flight-2: first riser: 7 1/2" finished`})
}

// A winder that turns neither 30 nor 45 degrees is within what was read, and what
// the national code may have is told.
func TestBetweenThirtyAndFortyFive(t *testing.T) {
	hold(t, "40 degrees", wound(t, "nbc-2020", "metric", "900", "260", "treads: 2, angle: 80, setback: 0"),
		want{"winder-angle", check.Pass, "every winder turns 40 degrees, at least 30 degrees; the national code may allow 30 and 45"})
	for _, f := range onTurn(wound(t, "nbc-2020", "metric", "900", "260", "treads: 2, setback: 0"), "winder-angle") {
		if strings.Contains(f.Text, "national") {
			t.Errorf("45 degrees: %s", f.Text)
		}
	}
}
