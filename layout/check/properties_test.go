package check_test

import (
	"bytes"
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"stepoff/layout"
	"stepoff/layout/check"
	"stepoff/spec"
	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

// A limit is compared exactly: a total rise on limit x risers passes, a
// nanometre more fails.
func TestRiserLimitIsExact(t *testing.T) {
	irc, _ := rules.Lookup("irc-2021")
	limit, _ := irc.Limit(rules.RiserMax)
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 999).Draw(t, "risers")
		total := limit.Length * measure.Length(n)
		status := func(total measure.Length) check.Status {
			return by(check.Judge(check.Facts{Risers: check.Even(total, n, n)}, irc), "riser-max")[0].Status
		}
		if status(total) != check.Pass || status(total+measure.Nanometre) != check.Fail {
			t.Fatalf("%d risers in %d nm: the limit is not exact", n, total)
		}
	})
}

// However the head is finished, the top run comes out as the others: the last
// tread cut is made for it.
func TestTopRunIsAsTheOthers(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		eighths := func(most int, what string) string {
			return fmt.Sprintf(`%d/8"`, rapid.IntRange(1, most).Draw(rt, what))
		}
		whole := func(text string) string { // 12/8 is no fraction on a tape
			var n int
			fmt.Sscanf(text, "%d", &n)
			if n >= 8 {
				return fmt.Sprintf("%gin", float64(n)/8)
			}
			return text
		}
		stringer := fmt.Sprintf("{stock: 2x12, top_riser: %s, top_nosing: %s, behind_head: %s}",
			rapid.SampledFrom([]string{"board", "none"}).Draw(rt, "top riser"), whole(eighths(12, "top nosing")), whole(eighths(16, "behind the head")))
		found := by(checked(t, "irc-2021", map[string]string{"stringer": stringer}), "top-run")
		if len(found) != 1 || found[0].Status != check.Pass || math.Abs(found[0].Actual.Value-254) > 1e-6 {
			rt.Fatalf("%s: %+v", stringer, found)
		}
	})
}

// Whatever the job: findings that can be written, with a section and a text,
// and nothing in them that is no number.
func TestFindingsCanBeWritten(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		draw := func(least, most int, what string) int { return rapid.IntRange(least, most).Draw(rt, what) }
		risers := draw(1, 20, "risers")
		text := job(map[string]string{
			"units":         "metric",
			"levels":        fmt.Sprintf("{total_rise: %d, lower_finish: %d, upper_finish: %d, floor_depth: %d, header_depth: %d}", risers*draw(100, 260, "rise"), draw(0, 60, "below"), draw(0, 60, "above"), draw(1, 600, "floor"), draw(1, 600, "header")),
			"stairway":      fmt.Sprintf("[{flight: {risers: %d, run: %d, head: %s}}]", risers, draw(150, 400, "run"), rapid.SampledFrom([]string{"hung", "flush"}).Draw(rt, "head")),
			"tread":         fmt.Sprintf("{thickness: 30, nosing: %d, boards: {width: %d, thickness: 30}}", draw(0, 40, "nosing"), draw(100, 500, "board")),
			"riser":         rapid.SampledFrom([]string{"open", "{thickness: 19}"}).Draw(rt, "riser"),
			"stringer":      fmt.Sprintf("{stock: {width: %d, thickness: 38}, foot: finished, foot_levels: [%d, 0, %d]}", draw(280, 400, "stock"), draw(-20, 20, "left"), draw(-20, 20, "right")),
			"width":         fmt.Sprint(draw(500, 2000, "width")),
			"sides":         rapid.SampledFrom([]string{"[wall, wall]", "[wall, open]", "[open, open]"}).Draw(rt, "sides"),
			"opening":       fmt.Sprint(draw(1, 6000, "opening")),
			"available_run": fmt.Sprint(draw(1, 6000, "room")),
		})
		parsed, err := spec.Load("job.yaml", []byte(text))
		if err != nil {
			rt.Fatal(err)
		}
		s, err := layout.Compute(parsed)
		if err != nil {
			rt.Skip() // cannot be built
		}
		code, _ := rules.Lookup(rapid.SampledFrom(rules.Names()).Draw(rt, "code"))
		findings := check.Stairway(s, code, measure.Style{Units: measure.Metric})
		if len(findings) == 0 && code.Name != rules.None {
			rt.Fatal("nothing is found")
		}
		for _, f := range findings {
			if f.Section == "" || f.Text == "" || strings.ContainsAny(f.Text, "?%") || strings.Contains(f.Text, "NaN") {
				rt.Fatalf("%+v", f)
			}
		}
		var b bytes.Buffer
		if err := check.JSON(&b, findings, nil); err != nil {
			rt.Fatal(err)
		}
	})
}
