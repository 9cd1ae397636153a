package lesson_test

import (
	"fmt"
	"strings"
	"testing"

	"stepoff/layout"
	"stepoff/layout/choose"
	"stepoff/layout/lesson"
	"stepoff/spec"
	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

// stairway lays out a 7 1/2 by 10 stair, a 3-4-5 triangle, with the given
// levels, stringer and flight.
func stairway(t *testing.T, units, levels, stringer, flight, extra string) *layout.Stairway {
	t.Helper()
	job, err := spec.Load("job.yaml", []byte(fmt.Sprintf(`
units: %s
code: none
levels: %s
stairway: [{flight: %s}]
tread: {thickness: 1 1/2", nosing: 1"}
riser: {thickness: 3/4"}
stringer: %s
%s
`, units, levels, flight, stringer, extra)))
	if err != nil {
		t.Fatal(err)
	}
	s, err := layout.Compute(job)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func told(s *layout.Stairway) string {
	var b strings.Builder
	for _, step := range lesson.CutSequence(s, s.Flights()[0], measure.Style{Units: s.Job.Units}) {
		fmt.Fprintf(&b, "%s. %s\n", step.Title, step.Text)
	}
	return b.String()
}

const plainFlight = `{risers: 14, run: 10"}`

// The sequence tells this stair's own figures, worked by hand, and nothing that
// does not fit it.
func TestCutSequence(t *testing.T) {
	for _, c := range []struct {
		name                                   string
		units, levels, stringer, flight, extra string
		want, never                            []string
	}{
		{"plain", "imperial", `{total_rise: 105"}`, `{stock: 2x12}`, plainFlight, "",
			[]string{"the crown goes up", `at least 161 5/8"-`, `the first at 3 5/8"-, the last at 153 5/8"-`, `7 1/2" on the tongue`,
				`The first riser cut is not 7 1/2" but 6". That is the bottom drop: 1 1/2", one tread, 1 1/2".`, `The last tread cut is 10".`, `plumb down, 6 9/16"`,
				`2 3/16"+ of the line is still whole`, `Trace the other 2`, "Turn the template over", "Outdoors"},
			[]string{"drift", "Stepped", "kicker", "ledger", "flooring", "packing"}},
		{"flooring to come at both ends", "imperial", `{total_rise: 105", lower_finish: 3/4", upper_finish: 1/2"}`, `{stock: 2x12}`, plainFlight, "",
			[]string{`3/4", one tread, 1 1/2", less the 3/4" of flooring to come round the foot`, `9" below the finished upper floor, which is 8 1/2" down from the floor as it is today`},
			nil},
		{"flooring as thick as the tread", "imperial", `{total_rise: 105", lower_finish: 1 1/2"}`, `{stock: 2x12}`, plainFlight, "",
			[]string{"Nothing comes off", `The first riser cut is 7 1/2".`}, []string{"not 7 1/2"}},
		{"a foot lower than the drop", "imperial", `{total_rise: 105"}`, `{stock: 2x12, foot_levels: [-2", -2", -2"]}`, plainFlight, "",
			[]string{"Lengthen the foot", `what the foot is longer by: 1/2", one tread, 1 1/2", less the 2" it bears below`}, []string{"flooring"}},
		{"packing", "imperial", `{total_rise: 105"}`, `{stock: 2x12, behind_head: 1/2"}`, plainFlight, "",
			[]string{`9 1/2", not 10": 1/2" goes to what stands between head and header`, `against its 1/2" of packing`}, []string{"like the others"}},
		{"header bare", "imperial", `{total_rise: 105"}`, `{stock: 2x12, top_riser: none}`, plainFlight, "",
			[]string{`9 1/4", not 10": the top run has to come out like the others`}, []string{"goes to what stands"}},
		{"pad that slopes", "imperial", `{total_rise: 105"}`, `{stock: 2x12, foot_levels: [1/2", 0, -1/2"]}`, plainFlight, "service: wet",
			[]string{`left 5 1/2"; middle 6"; right 6 1/2"`, "Keep the outlines apart", "trace only its own", "roots and seat above all"}, []string{"Trace the other"}},
		{"one notch", "imperial", `{total_rise: 15"}`, `{stock: 2x12, count: 2}`, `{risers: 2, run: 10"}`, "",
			[]string{"Tape the tip.", "there is no inside corner", "Trace the second"}, []string{"do not step", "tick", "handsaw", "Trace the other"}},
		{"a square that drifts", "imperial", `{total_rise: 105 1/2"}`, `{stock: 2x12, kicker: 2x4, ledger: 2x4}`, plainFlight, "",
			[]string{"Stepped 13 times they would end", "Notch for the kicker", "Notch for the ledger"}, nil},
		{"metric", "metric", `{total_rise: 2700}`, `{stock: {width: 285, thickness: 38}}`, `{risers: 15, run: 280}`, "",
			[]string{"each 5 mm over the root"}, []string{`"`}},
		{"a rise beyond the tongue", "imperial", `{total_rise: 34"}`, `{stock: {width: 20", thickness: 1 1/2"}, head: flush}`, `{risers: 2, run: 10"}`, "",
			[]string{"mark with the pitch board"}, []string{"on the tongue"}},
	} {
		text := told(stairway(t, c.units, c.levels, c.stringer, c.flight, c.extra))
		for _, want := range c.want {
			if !strings.Contains(text, want) {
				t.Errorf("%s: nothing says %q in:\n%s", c.name, want, text)
			}
		}
		for _, never := range c.never {
			if strings.Contains(text, never) {
				t.Errorf("%s: %q is said in:\n%s", c.name, never, text)
			}
		}
	}
}

// A flight of one riser has nothing to cut, and its cautions say nothing of
// cutting.
func TestNothingToCut(t *testing.T) {
	s := stairway(t, "imperial", `{total_rise: 7"}`, `{stock: 2x12}`, `{risers: 1, run: 10"}`, "")
	if text := told(s); text != "" {
		t.Errorf("a flight without stringers is told how to saw: %s", text)
	}
	for _, c := range lesson.Cautions(s) {
		if strings.Contains(c, "Cut one") {
			t.Errorf("a stair without stringers is cautioned: %s", c)
		}
	}
}

// Flights that meet winders tell of their treads, which are laid on the boxes after
// the stringers; one of a single riser and a curve have no stringer and no steps.
func TestCutSequenceAtWinders(t *testing.T) {
	job, err := spec.Load("job.yaml", []byte(`
units: imperial
code: none
levels: {total_rise: 105"}
width: 36"
stairway:
  - flight: {risers: 4, run: 10"}
  - winders: {turn: left, treads: 3, setback: 11"}
  - flight: {risers: 1}
  - winders: {turn: left, treads: 3, setback: 11"}
  - flight: {risers: 5, run: 10"}
tread: {thickness: 1 1/2", nosing: 1"}
riser: {thickness: 3/4"}
stringer: {stock: 2x12}
`))
	if err != nil {
		t.Fatal(err)
	}
	code, _ := rules.Lookup(job.Code.Name)
	if job, err = choose.Fill(job, code); err != nil {
		t.Fatal(err)
	}
	s, err := layout.Compute(job)
	if err != nil {
		t.Fatal(err)
	}
	var told []string
	for _, f := range s.Flights() {
		var b strings.Builder
		for _, step := range lesson.CutSequence(s, f, measure.Style{}) {
			fmt.Fprintf(&b, "%s. %s\n", step.Title, step.Text)
		}
		told = append(told, b.String())
	}
	for _, want := range []string{
		`the top tread comes one rise, 7 1/2", below the first tread of winders-1.`,
		`top of the last tread cut 9" below the first tread of winders-1, which is 7 1/2" down from its sheathing, 1 1/2" of tread being still to come`,
	} {
		if !strings.Contains(told[0], want) {
			t.Errorf("nothing says %q:\n%s", want, told[0])
		}
	}
	if told[1] != "" {
		t.Errorf("a flight of one riser is cut:\n%s", told[1])
	}
	if want := `Nothing comes off: one tread, 1 1/2", less the 1 1/2" of tread to come round the foot. The first riser cut is 7 1/2".`; !strings.Contains(told[2], want) {
		t.Errorf("nothing says %q:\n%s", want, told[2])
	}
	if all := strings.Join(lesson.Cautions(s), "\n"); !strings.Contains(all, "Cut one tapered tread, try it in its place") {
		t.Errorf("no caution for tapered treads:\n%s", all)
	}
}
