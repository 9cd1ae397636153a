package check_test

import (
	"bytes"
	"errors"
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"stepoff/layout"
	"stepoff/layout/check"
	"stepoff/spec/measure"
	"stepoff/spec/rules"
	"stepoff/spec/source"
)

// drawList draws a stairway: what climbs and what turns, alternating, from one
// member up to seven, with much left open.
func drawList(rt *rapid.T) string {
	maybe := func(key, value string) string {
		if rapid.Bool().Draw(rt, key+" given") {
			return fmt.Sprintf(", %s: %s", key, value)
		}
		return ""
	}
	num := func(least, most int, what string) string {
		return fmt.Sprint(rapid.IntRange(least, most).Draw(rt, what))
	}
	one := func(what string, words ...string) string { return rapid.SampledFrom(words).Draw(rt, what) }
	climb := func() string {
		if rapid.IntRange(0, 3).Draw(rt, "curve") == 0 {
			return fmt.Sprintf("{curve: {turn: %s, inside_radius: %s, angle: %s%s%s%s}}", one("hand", "left", "right"), num(1, 4000, "radius"), num(1, 350, "angle"),
				maybe("risers", num(3, 16, "risers")), maybe("walkline", num(1, 500, "walkline")), maybe("measure", one("measure", "chord", "arc")))
		}
		return fmt.Sprintf("{flight: {%s}}", strings.TrimPrefix(maybe("risers", num(1, 8, "risers"))+maybe("run", num(200, 320, "run")), ", "))
	}
	turn := func() string {
		if rapid.IntRange(0, 3).Draw(rt, "landing") == 0 {
			return fmt.Sprintf("{landing: {turn: %s%s}}", one("hand", "none", "left", "right"), maybe("built_level", num(100, 2700, "built")))
		}
		return fmt.Sprintf("{winders: {turn: %s, treads: %s, lines: %s, framing: %s%s%s%s%s}}", one("hand", "left", "right"), num(2, 5, "treads"), one("lines", "radial", "even"),
			one("framing", "boxes", "none"), maybe("angle", one("angle", "45", "60", "75.5", "90")), maybe("setback", num(0, 600, "setback")),
			maybe("walkline", num(1, 500, "walkline")), maybe("narrow", num(0, 200, "narrow")))
	}
	list := climb()
	for range rapid.IntRange(0, 3).Draw(rt, "turns") {
		list += ", " + turn() + ", " + climb()
	}
	return "[" + list + "]"
}

// Whatever the list: it is laid out, or every mistake has its place; and every
// member is judged, in findings that can be written and hold numbers.
func TestAnyListIsJudged(t *testing.T) {
	built := 0
	rapid.Check(t, func(rt *rapid.T) {
		edits := map[string]string{
			"units":    "metric",
			"code":     rapid.SampledFrom(rules.Names()).Draw(rt, "code"),
			"levels":   fmt.Sprintf("{total_rise: %d, lower_finish: 20, upper_finish: 15, floor_depth: 300}", rapid.IntRange(300, 3900).Draw(rt, "rise")),
			"width":    fmt.Sprint(rapid.IntRange(300, 1400).Draw(rt, "width")),
			"sides":    rapid.SampledFrom([]string{"[wall, wall]", "[wall, open]", "[open, open]"}).Draw(rt, "sides"),
			"stairway": drawList(rt),
			"tread":    fmt.Sprintf("{thickness: 30, nosing: %d, boards: {width: 285, thickness: 30}}", rapid.IntRange(0, 40).Draw(rt, "nosing")),
			"riser":    rapid.SampledFrom([]string{"open", "{thickness: 19}", "{thickness: 12, joint: on}"}).Draw(rt, "riser"),
			"stringer": "{stock: {width: 360, thickness: 38}}",
		}
		text := job(edits)
		s, err := laid(text)
		if err != nil {
			var mistakes source.Mistakes
			if !errors.As(err, &mistakes) || strings.Contains(err.Error(), "NaN") {
				rt.Fatalf("%v\n%s", err, text)
			}
			for _, m := range mistakes {
				if m.At.Line < 2 {
					rt.Fatalf("no place: %v\n%s", m.Error(), text)
				}
			}
			return
		}
		built++
		for _, name := range []string{s.Job.Code.Name, rapid.SampledFrom(rules.Names()).Draw(rt, "another code")} {
			code, _ := rules.Lookup(name)
			judged(rt, s, code, text)
		}
	})
	if built == 0 {
		t.Error("no list could be built: nothing was judged")
	}
}

func judged(rt *rapid.T, s *layout.Stairway, code *rules.Code, text string) {
	of := map[layout.Element][]check.Finding{}
	var all []check.Finding
	for _, facts := range check.FactsOf(s, code, measure.Style{Units: measure.Metric}) {
		found := check.Judge(facts, code)
		all = append(all, found...)
		if facts.Of != nil {
			of[facts.Of] = append(of[facts.Of], found...)
		}
	}
	for _, e := range s.Elements {
		if len(of[e]) == 0 && code.Name != rules.None {
			rt.Fatalf("%s: nothing is found under %s\n%s", e.Label(), code.Name, text)
		}
	}
	for _, f := range all {
		if f.Section == "" || f.Text == "" || strings.ContainsAny(f.Text, "?%") || strings.Contains(f.Text, "NaN") || strings.Contains(f.Text, "Inf") || strings.Contains(f.Text, measure.Unknown) {
			rt.Fatalf("%+v\n%s", f, text)
		}
	}
	var b bytes.Buffer
	if err := check.JSON(&b, all, nil); err != nil {
		rt.Fatalf("%v\n%s", err, text)
	}
}
