package check_test

import (
	"fmt"
	"math"
	"testing"

	"stepoff/layout/check"
)

// curved is a stair of one curve, in millimetres: risers of 180.
func curved(t *testing.T, code string, risers int, width, curve string, edits map[string]string) []check.Finding {
	t.Helper()
	all := map[string]string{"units": "metric", "width": width, "levels": fmt.Sprintf("{total_rise: %d}", risers*180),
		"stairway": fmt.Sprintf("[{curve: {turn: right, risers: %d, %s}}]", risers, curve),
		"tread":    "{thickness: 30, nosing: 25}", "riser": "{thickness: 19}", "stringer": "{stock: {width: 286, thickness: 38}}"}
	for k, v := range edits {
		all[k] = v
	}
	return checked(t, code, all)
}

// The lead codes on curves, by hand. A tread of an angle a is 2 (r + d) sin(a/2)
// deep between nosings on a walkline d from the inside; at the inside, where its
// nosing stands o before the riser line, square to it and to the next one,
// o + (s sin a - o) / cos a with s^2 = r^2 - o^2.
func TestCurvesByHand(t *testing.T) {
	const o = 44.0
	for _, c := range []struct {
		code     string
		risers   int
		width    string
		angle, r float64
		d        float64 // of the walkline that decides
		statuses map[string][]check.Status
	}{
		{"irc-2021", 16, "1000", 125, 1524, 304.8, map[string][]check.Status{
			"winder-walkline": {check.Pass}, "winder-narrow": {check.Pass}, "winder-variation": {check.Pass}, "run-min": nil, "run-variation": nil,
			"riser-max": {check.Pass}, "flight-rise": {check.Pass}, "width": {check.Pass}, "nosing": {check.Pass, check.Pass}, "handrail-needed": {check.Info}}},
		{"irc-2021", 18, "1000", 125, 1524, 304.8, map[string][]check.Status{"winder-walkline": {check.Fail}, "winder-narrow": {check.Pass}}}, // 234.3
		{"ibc-2021-dwelling", 16, "1000", 125, 1524, 304.8, map[string][]check.Status{"winder-walkline": {check.Pass}, "winder-narrow": {check.Pass}, "curve-radius": nil}},
		// 300 from the inside handrail, taken from the inside: 255 there, 150 at the narrow end.
		{"nbc-2020", 14, "900", 110, 1500, 300, map[string][]check.Status{"winder-walkline": {check.Pass}, "winder-narrow": {check.Pass}, "winder-angle": nil, "winder-count": nil, "run-max": {check.Pass}}},
		{"nbc-2020", 14, "900", 100, 1500, 300, map[string][]check.Status{"winder-walkline": {check.Fail}, "winder-narrow": {check.Pass}}}, // 241.3
		// The middle of 900; 42 degrees and 550 to 700 there.
		{"uk-adk", 14, "900", 110, 1500, 450, map[string][]check.Status{"winder-walkline": {check.Pass}, "run-max": {check.Pass}, "two-rise-plus-run": {check.Pass, check.Pass}, "pitch": {check.Pass}}},
		{"uk-adk", 14, "900", 75, 1500, 450, map[string][]check.Status{"winder-walkline": {check.Fail}, "two-rise-plus-run": {check.Pass, check.Pass}, "pitch": {check.Fail}}}, // 196.27: 42.52 degrees
		{"ncc-2022", 14, "900", 110, 1500, 270, map[string][]check.Status{"winder-walkline": {check.Pass}, "two-rise-plus-run": {check.Pass, check.Pass}, "flight-risers": {check.Pass, check.Pass}, "run-variation": {check.Pass, check.Pass}}},
		{"ncc-2022", 19, "900", 150, 1500, 270, map[string][]check.Status{"flight-risers": {check.Pass, check.Fail}}},
		{"din-18065", 14, "900", 110, 1500, 450, map[string][]check.Status{"winder-walkline": {check.Pass}, "winder-narrow": {check.Pass}, "two-rise-plus-run": {check.Pass, check.Pass}}}, // 360 + 287.72
		{"din-18065", 14, "900", 112, 1500, 450, map[string][]check.Status{"two-rise-plus-run": {check.Pass, check.Fail}}},                                                                 // 360 + 292.94
		{"osha-1910", 14, "900", 110, 1500, 304.8, map[string][]check.Status{"run-min": {check.Pass}, "pitch": {check.Pass, check.Pass}}},
	} {
		name := fmt.Sprintf("%s, %d risers in %g degrees", c.code, c.risers, c.angle)
		findings := curved(t, c.code, c.risers, c.width, fmt.Sprintf("angle: %g, inside_radius: %g", c.angle, c.r), nil)
		a := c.angle / float64(c.risers-1) * math.Pi / 180
		s := math.Sqrt(c.r*c.r - o*o)
		for rule, want := range map[string]float64{"winder-walkline": 2 * (c.r + c.d) * math.Sin(a/2), "winder-narrow": o + (s*math.Sin(a)-o)/math.Cos(a)} {
			if rule == "winder-narrow" && c.code == "din-18065" {
				s := math.Sqrt((c.r+150)*(c.r+150) - o*o) // it measures there
				want = o + (s*math.Sin(a)-o)/math.Cos(a)
			}
			for _, f := range by(findings, rule) {
				if math.Abs(f.Actual.Value-want) > 1e-6 {
					t.Errorf("%s: %s, by hand %.4f", name, f.Text, want)
				}
			}
		}
		for rule, want := range c.statuses {
			var got []check.Status
			for _, f := range by(findings, rule) {
				got = append(got, f.Status)
			}
			if fmt.Sprint(got) != fmt.Sprint(want) {
				t.Errorf("%s: %s is %v, want %v: %+v", name, rule, got, want, by(findings, rule))
			}
		}
	}
}

// Source: IBC 1011.9, from memory: at least twice the least width, or the width
// that the required capacity asks for; dwellings are exempt.
func TestCurveRadius(t *testing.T) {
	at := func(code, radius, width string) []check.Finding {
		return checked(t, code, map[string]string{"width": width, "levels": `{total_rise: 105"}`, "stairway": `[{curve: {turn: left, risers: 15, angle: 180, inside_radius: ` + radius + `}}]`})
	}
	hold(t, "short", at("ibc-2021", `87 3/4"`, `44"`), want{"curve-radius", check.Fail, `inside radius 87 3/4", less than 2 times the least width of 44", 88"; 1/4" more; verify 2: from memory`})
	hold(t, "enough", at("ibc-2021", `88"`, `44"`), want{"curve-radius", check.Pass, `inside radius 88", at least 2 times`}, want{"winder-use", check.Pass, "the tapered treads of a curve may be"})
	hold(t, "wide", at("ibc-2021", `88"`, `50"`), want{"curve-radius", check.Pass, `asks for all the width of 50", 100"`})
	if found := by(at("ibc-2021-dwelling", `60"`, `36"`), "curve-radius"); len(found) > 0 {
		t.Errorf("a dwelling: %+v", found)
	}
}

// What a curve's runs lack or have too much is told with what would do.
func TestCurveRemedies(t *testing.T) {
	hold(t, "shallow", curved(t, "irc-2021", 18, "1000", "angle: 125, inside_radius: 1524", nil),
		want{"winder-walkline", check.Fail, "more: an inside radius of at least 1676 mm"}) // 254 / (2 sin(125/17/2)) - 304.8 = 1675.7
	hold(t, "deep", curved(t, "uk-adk", 14, "900", "angle: 125, inside_radius: 1500", nil),
		want{"run-max", check.Fail, "less: a smaller inside radius or angle, or more risers"})
}

// A curve stands on floors that come after its treads, as a flight does; a guard
// on its open side and a gap between its treads are its own.
func TestCurveStages(t *testing.T) {
	f := curved(t, "irc-2021", 14, "1000", "angle: 125, inside_radius: 1524", map[string]string{
		"levels": "{total_rise: 2520, lower_finish: 20, upper_finish: 15}", "sides": "[wall, open]", "riser": "open"})
	hold(t, "stages", f,
		want{"first-riser", check.Warn, "170 mm rough, before the treads; 200 mm treads on, floors to come; 180 mm finished"},
		want{"last-riser", check.Warn, "195 mm rough, before the treads; 165 mm treads on, floors to come; 180 mm finished"},
		want{"guard-needed", check.Info, "right side is open: a drop of 2340 mm"},
		want{"open-riser", check.Fail, "the gap between treads is 150 mm"})
}

// A curve behind a landing and another stand side by side with flights: each is
// judged by its name, and their risers are counted from landing to landing.
func TestCurveBetweenLandings(t *testing.T) {
	f := turned(t, "irc-2021", `[{curve: {turn: right, risers: 5, angle: 45, inside_radius: 60"}}, {landing: {turn: none}}, {flight: {risers: 4, run: 10"}}, {winders: {turn: left, treads: 3, angle: 75}}, {curve: {turn: left, risers: 3, angle: 30, inside_radius: 48"}}]`, nil)
	hold(t, "members", f,
		want{"flight-rise", check.Pass, `curve-1: the flight rises 37 1/2"`},
		want{"flight-rise", check.Pass, `flight-1 to curve-2: the flight rises 67 1/2"`},
		want{"winder-narrow", check.Pass, "winders-1: "}, want{"winder-narrow", check.Pass, "curve-1: "}, want{"winder-walkline", check.Pass, "curve-2: "},
		want{"landing-size", check.Pass, "landing-1 is 36\" long"})
}
