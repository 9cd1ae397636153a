package check_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"stepoff/layout"
	"stepoff/layout/check"
	"stepoff/layout/choose"
	"stepoff/spec"
	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

// job is a whole stair with the given changes, by top-level key.
func job(edits map[string]string) string {
	var b strings.Builder
	for _, l := range []struct{ key, value string }{
		{"units", "imperial"}, {"code", ""},
		{"levels", `{total_rise: 105"}`},
		{"stairway", `[{flight: {risers: 14, run: 10"}}]`},
		{"tread", `{thickness: 1 1/2", nosing: 1"}`},
		{"riser", `{thickness: 3/4"}`},
		{"stringer", `{stock: 2x12}`},
		{"width", ""}, {"sides", ""}, {"opening", ""}, {"available_run", ""}, {"loads", ""},
	} {
		v := l.value
		if e, ok := edits[l.key]; ok {
			v = e
		}
		if v != "" {
			fmt.Fprintf(&b, "%s: %s\n", l.key, v)
		}
	}
	return b.String()
}

func compute(t testing.TB, text string) *layout.Stairway {
	t.Helper()
	s, err := laid(text)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// laid lays a job out, what it leaves open filled in by its code.
func laid(text string) (*layout.Stairway, error) {
	j, err := spec.Load("job.yaml", []byte(text))
	if err != nil {
		return nil, err
	}
	code, _ := rules.Lookup(j.Code.Name)
	if j, err = choose.Fill(j, code); err != nil {
		return nil, err
	}
	return layout.Compute(j)
}

func checked(t testing.TB, code string, edits map[string]string) []check.Finding {
	t.Helper()
	c, ok := rules.Lookup(code)
	if !ok {
		t.Fatalf("there is no %s", code)
	}
	all := map[string]string{"code": code}
	for k, v := range edits {
		all[k] = v
	}
	s := compute(t, job(all))
	return check.Stairway(s, c, measure.Style{Units: s.Job.Units})
}

// by returns the findings of a rule.
func by(findings []check.Finding, rule string) (some []check.Finding) {
	for _, f := range findings {
		if f.ID == rule {
			some = append(some, f)
		}
	}
	return some
}

// 7 3/4 by 10 is as steep as the IRC allows: it passes, exactly, and the old
// rules of thumb warn.
func TestSteepestOfTheIRC(t *testing.T) {
	findings := checked(t, "irc-2021", map[string]string{"levels": `{total_rise: 108 1/2"}`})
	if check.Fails(findings) {
		t.Errorf("7 3/4 by 10 fails: %+v", check.Of(findings, check.Fail))
	}
	warned := false
	for _, f := range by(findings, rules.TwoRisePlusRun) {
		if f.Status == check.Warn && strings.Contains(f.Text, `2R+T = 25 1/2"`) && math.Abs(f.Actual.Value-25.5*25.4) < 1e-9 {
			warned = true
		}
	}
	if !warned {
		t.Errorf("nothing warns of 2R+T = 25 1/2: %+v", by(findings, rules.TwoRisePlusRun))
	}
}

// A throat under the published least: 7 3/4 by 11 on a 2x12 leaves 4.915 in,
// 180 by 280 mm on 38 x 235 leaves 83.6.
func TestThroats(t *testing.T) {
	for _, c := range []struct {
		code   string
		edits  map[string]string
		throat float64
		says   string
	}{
		{"dca-6", map[string]string{"levels": `{total_rise: 46 1/2"}`, "stairway": `[{flight: {risers: 6, run: 11"}}]`}, 4.915 * 25.4, `(4.915"), less than 5"; a board at least`},
		{"nbc-2020", map[string]string{"units": "metric", "levels": "{total_rise: 2520}", "stairway": "[{flight: {risers: 14, run: 280}}]",
			"tread": "{thickness: 38, nosing: 25}", "riser": "{thickness: 19}", "stringer": "{stock: {width: 235, thickness: 38}}"}, 83.6, "less than 90 mm"},
	} {
		found := by(checked(t, c.code, c.edits), "stringer-throat")
		if len(found) != 1 || found[0].Status != check.Fail || !strings.Contains(found[0].Text, c.says) || math.Abs(found[0].Actual.Value-c.throat) > 0.05 {
			t.Errorf("%s: %+v; want a failure that says %q", c.code, found, c.says)
		}
	}
}

// Where the code sets no throat, both published figures advise; a stringer
// fastened along a wall is left alone.
func TestThroatAdvice(t *testing.T) {
	found := by(checked(t, "irc-2021", map[string]string{"stringer": "{stock: 2x10}"}), "stringer-throat")
	if len(found) != 2 || found[0].Status != check.Warn || found[1].Status != check.Warn {
		t.Errorf("3 1/4 of throat: %+v, want two warnings", found)
	}
	if found := by(checked(t, "irc-2021", map[string]string{"stringer": "{stock: 2x10, support: wall}"}), "stringer-throat"); len(found) > 0 {
		t.Errorf("fastened along the wall: %+v", found)
	}
}

// h = 80, F = 11, 10/7.5, b = 3/4, p = 1: 91*10/7.5 + 1 3/4 = 123.083 in.
func TestOpeningNeeded(t *testing.T) {
	levels := `{total_rise: 105", floor_depth: 11"}`
	want := (91*10/7.5 + 1.75) * 25.4
	unstated := by(checked(t, "irc-2021", map[string]string{"levels": levels}), "opening")
	if len(unstated) != 1 || unstated[0].Status != check.Info || math.Abs(unstated[0].Limit.Value-want) > 1e-6 || !strings.Contains(unstated[0].Text, `(123.083")`) {
		t.Errorf("got %+v, want info that 123.083 in is needed", unstated)
	}
	short := checked(t, "irc-2021", map[string]string{"levels": levels, "opening": `120"`})
	// 3.083 short, along a line that climbs 7.5 in 10. What is framed to the
	// printed figure has to do: 123.083 goes up to the next sixteenth.
	head := by(short, "headroom")
	if len(head) != 1 || head[0].Status != check.Fail || math.Abs(head[0].Actual.Value-(80-3.0833333*0.75)*25.4) > 1e-3 ||
		!strings.Contains(head[0].Text, `an opening of 123 1/8"`) || !strings.Contains(head[0].Text, "past the first riser cut") {
		t.Errorf("headroom: %+v", head)
	}
	for code, edits := range map[string]map[string]string{
		"irc-2021": {}, "none": {"levels": levels, "opening": `120"`},
	} {
		if found := append(by(checked(t, code, edits), "headroom"), by(checked(t, code, edits), "opening")...); len(found) > 0 {
			t.Errorf("%s: what is not stated, or asked by no code, is judged: %+v", code, found)
		}
	}
}

// What would put a number of risers right, and how high they are then.
func TestOtherNumberOfRisers(t *testing.T) {
	for _, c := range []struct {
		code, rise string
		risers     int
		rule, says string
	}{
		{"irc-2021", `99 3/4"`, 12, "riser-max", `one more riser: 7 11/16"-`},
		{"irc-2021", `106 7/8"`, 12, "riser-max", `2 more risers: 7 5/8"+`},
		{"irc-2021", `14 1/4"`, 1, "riser-max", `one more riser: 7 1/8"`},
		{"ibc-2021", `30"`, 8, "riser-min", `one riser fewer: 4 5/16"-`},
		{"ibc-2021", `7 1/2"`, 1, "riser-max", "no number of risers is right"},
	} {
		found := by(checked(t, c.code, map[string]string{
			"levels": "{total_rise: " + c.rise + "}", "stairway": fmt.Sprintf(`[{flight: {risers: %d, run: 11"}}]`, c.risers),
		}), c.rule)
		if len(found) != 1 || found[0].Status != check.Fail || !strings.Contains(found[0].Text, "; "+c.says) {
			t.Errorf("%s in %d: %+v, want a failure that says %q", c.rise, c.risers, found, c.says)
		}
	}
}

// A pad that falls 1:48 across 36 in falls 3/4: 3/8 each way from the middle,
// which is all that the variation allows. A 64th more fails twice.
func TestSlopingPad(t *testing.T) {
	edits := func(rise, levels string) map[string]string {
		return map[string]string{"levels": "{total_rise: " + rise + "}", "width": `36"`,
			"stringer": "{stock: 2x12, foot: finished, foot_levels: " + levels + "}"}
	}
	for _, f := range checked(t, "irc-2021", edits(`98"`, `[3/8", 0, -3/8"]`)) {
		if f.Status == check.Fail {
			t.Errorf("1:48 fails %s: %s", f.ID, f.Text)
		}
	}
	steeper := checked(t, "irc-2021", edits(`98"`, `[3/8", 0, -25/64"]`))
	for rule, says := range map[string]string{"pad-slope": "1:46.08", "riser-variation": "at the right edge"} {
		if found := by(steeper, rule); len(found) != 1 || found[0].Status != check.Fail || !strings.Contains(found[0].Text, says) {
			t.Errorf("%s: %+v, want a failure that says %q", rule, found, says)
		}
	}
	// 7 1/2 and 3/8 at the low edge is 7 7/8: too high, where 7 1/2 is not.
	low := by(checked(t, "irc-2021", edits(`105"`, `[3/8", 0, -3/8"]`)), "riser-max")
	if len(low) != 1 || low[0].Status != check.Fail || !strings.Contains(low[0].Text, "right edge: first riser") {
		t.Errorf("the low edge: %+v", low)
	}
	// Without a width nobody knows the slope.
	if found := by(checked(t, "irc-2021", map[string]string{"stringer": `{stock: 2x12, foot_levels: [3/8", 0, -3/8"]}`}), "pad-slope"); len(found) > 0 {
		t.Errorf("no width is stated: %+v", found)
	}
}

// The first and the last riser while the work goes on. Rough floors 105 apart,
// 3/4 to come below and 1/4 above: 104 1/2 finished, 14 risers of 7.464; treads
// 1 1/2.
func TestStages(t *testing.T) {
	findings := checked(t, "irc-2021", map[string]string{"levels": `{total_rise: 105", measured: rough, lower_finish: 3/4", upper_finish: 1/4"}`})
	for rule, want := range map[string][]string{
		// r - t + 3/4; r + 3/4; r: the first riser is too high till the floor is laid.
		"first-riser": {`(6.714") rough`, `(8.214") treads on, floors to come`, `(7.464") finished`, `differs from the others by 3/4"`},
		// r + t - 1/4; r - 1/4; r.
		"last-riser": {`(8.714") rough`, `(7.214") treads on`, `(7.464") finished`},
	} {
		found := by(findings, rule)
		if len(found) != 1 {
			t.Fatalf("%s: %+v", rule, found)
		}
		for _, says := range want {
			if !strings.Contains(found[0].Text, says) {
				t.Errorf("%s: %q does not say %q", rule, found[0].Text, says)
			}
		}
		if wantStatus := map[bool]check.Status{true: check.Warn, false: check.Pass}[rule == "first-riser"]; found[0].Status != wantStatus {
			t.Errorf("%s: %s, want %s", rule, found[0].Status, wantStatus)
		}
	}
	// A foot on the finished surface: the floor is there when the stair goes in.
	finished := by(checked(t, "irc-2021", map[string]string{
		"levels": `{total_rise: 105", measured: rough, lower_finish: 3/4", upper_finish: 1/4"}`, "stringer": "{stock: 2x12, foot: finished}",
	}), "first-riser")
	if len(finished) != 1 || finished[0].Status != check.Pass || !strings.Contains(finished[0].Text, `(5.964") rough`) {
		t.Errorf("on the finished floor: %+v", finished)
	}
}

// Guards and handrails: needed where a side is open and the drop is deep, told
// with their heights; nothing of guards where the sides are not stated.
func TestGuardsAndHandrails(t *testing.T) {
	for _, c := range []struct {
		sides  string
		status check.Status
		says   string
	}{
		{"[wall, open]", check.Info, "right side is open"},
		{"[open, open]", check.Info, "left and right sides are open"},
		{"[wall, wall]", check.Pass, "no guard is needed"},
	} {
		findings := checked(t, "irc-2021", map[string]string{"sides": c.sides})
		found := by(findings, "guard-needed")
		if len(found) != 1 || found[0].Status != c.status || !strings.Contains(found[0].Text, c.says) {
			t.Errorf("%s: %+v", c.sides, found)
		}
		if rail := by(findings, "handrail-needed"); len(rail) != 1 || rail[0].Status != check.Info || !strings.Contains(rail[0].Text, `34" to 38"`) {
			t.Errorf("handrail: %+v", rail)
		}
	}
	if found := by(checked(t, "irc-2021", nil), "guard-needed"); len(found) > 0 {
		t.Errorf("the sides are not stated: %+v", found)
	}
	low := map[string]string{"levels": `{total_rise: 28"}`, "stairway": `[{flight: {risers: 4, run: 10"}}]`, "sides": "[open, open]"}
	for code, want := range map[string]check.Status{"irc-2021": check.Pass, "dca-6": check.Pass} {
		if found := by(checked(t, code, low), "guard-needed"); len(found) != 1 || found[0].Status != want {
			t.Errorf("%s, 28 in: %+v", code, found)
		}
	}
	// DCA 6 counts the total rise, from 30 in on, and not the drop from the
	// highest tread, 22 1/2 in here.
	low["levels"] = `{total_rise: 30"}`
	for code, want := range map[string]check.Status{"irc-2021": check.Pass, "dca-6": check.Info} {
		if found := by(checked(t, code, low), "guard-needed"); len(found) != 1 || found[0].Status != want {
			t.Errorf("%s, 30 in: %+v", code, found)
		}
	}
}

// A nosing is exempt on deep treads, and where the code asks for one only with
// riser boards.
func TestNosingExceptions(t *testing.T) {
	for _, c := range []struct {
		code, run, tread, riser string
		fails                   bool
	}{
		{"irc-2021", `10"`, `{thickness: 1 1/2", nosing: 0}`, `{thickness: 3/4"}`, true},
		{"irc-2021", `11"`, `{thickness: 1 1/2", nosing: 0}`, `{thickness: 3/4"}`, false},
		{"irc-2021", `11"`, `{thickness: 1 1/2", nosing: 1.5in}`, `{thickness: 3/4"}`, true}, // too much is too much
		{"irc-2024", `10"`, `{thickness: 1 1/2", nosing: 1.5in}`, "open", false},
		{"irc-2024", `10"`, `{thickness: 1 1/2", nosing: 1.5in}`, `{thickness: 3/4"}`, true},
		{"ibc-2021-dwelling", `10"`, `{thickness: 1 1/2", nosing: 0}`, "open", false},
		{"ibc-2021", `11"`, `{thickness: 1 1/2", nosing: 0}`, `{thickness: 3/4"}`, false}, // no least at all
		{"uk-adk", `10"`, `{thickness: 1 1/2", nosing: 15mm}`, "open", true},
		{"uk-adk", `10"`, `{thickness: 1 1/2", nosing: 0}`, `{thickness: 3/4"}`, false},
	} {
		fails := false
		for _, f := range by(checked(t, c.code, map[string]string{
			"stairway": "[{flight: {risers: 15, run: " + c.run + "}}]", "tread": c.tread, "riser": c.riser,
		}), "nosing") {
			fails = fails || f.Status == check.Fail
		}
		if fails != c.fails {
			t.Errorf("%s, run %s, %s, riser %s: fails is %v", c.code, c.run, c.tread, c.riser, fails)
		}
	}
}

// Open risers under the IRC are limited only where they are more than 30 in up.
func TestOpenRisersNearTheFloor(t *testing.T) {
	open := map[string]string{"riser": "open", "levels": `{total_rise: 28"}`, "stairway": `[{flight: {risers: 4, run: 10"}}]`}
	low := by(checked(t, "irc-2021", open), "open-riser")
	if len(low) != 1 || low[0].Status != check.Pass || !strings.Contains(low[0].Text, "verify") {
		t.Errorf("5 1/2 in gaps near the ground: %+v", low)
	}
	open["levels"], open["stairway"] = `{total_rise: 56"}`, `[{flight: {risers: 8, run: 10"}}]`
	high := by(checked(t, "irc-2021", open), "open-riser")
	if len(high) != 1 || high[0].Status != check.Fail {
		t.Errorf("5 1/2 in gaps 49 in up: %+v", high)
	}
}

// Props divide the span; a wall takes it away.
func TestSpans(t *testing.T) {
	edits := map[string]string{"levels": `{total_rise: 63"}`, "stairway": `[{flight: {risers: 9, run: 10"}}]`} // 80 in of span
	for stringer, want := range map[string]string{
		"{stock: 2x12}":                        "fail",
		`{stock: 2x12, props: [40"]}`:          "pass",
		`{stock: 2x12, props: [75"]}`:          "fail",
		"{stock: 2x12, support: wall}":         "",
		"{stock: 2x12, support: [wall, span]}": "fail",
	} {
		edits["stringer"] = stringer
		got := ""
		for _, f := range by(checked(t, "dca-6", edits), "stringer-span") {
			got = f.Status.String()
		}
		if got != want {
			t.Errorf("%s: %q, want %q", stringer, got, want)
		}
	}
}

// With no code only geometry is spoken of: nothing fails, and no section is a
// code's.
func TestNoCode(t *testing.T) {
	for _, f := range checked(t, "none", map[string]string{"levels": `{total_rise: 160"}`, "width": `20"`}) {
		if f.Status == check.Fail {
			t.Errorf("%s fails under no code: %s", f.ID, f.Text)
		}
	}
}
