package lesson

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"stepoff/layout"
	"stepoff/layout/layouttest"
	"stepoff/spec/measure"
)

// lessons tells every example on both levels.
func lessons(t *testing.T, each func(name string, level Level, stages []Stage)) {
	t.Helper()
	jobs, err := filepath.Glob("../../examples/*.yaml")
	if err != nil || len(jobs) == 0 {
		t.Fatalf("no examples: %v", err)
	}
	for _, job := range jobs {
		text, err := os.ReadFile(job)
		if err != nil {
			t.Fatal(err)
		}
		s, code := layouttest.Stairway(t, job, string(text))
		for _, level := range []Level{First, Full} {
			each(filepath.Base(job), level, Teach(s, code, measure.Style{Units: s.Job.Units}, level))
		}
	}
}

var sentence = regexp.MustCompile(`[.!?]( |$)`)

// Every stage says what is done in one or two sentences, what goes wrong and how
// to see it, with every figure and term filled in and every term explained once.
func TestStages(t *testing.T) {
	seen := map[Figure]bool{}
	lessons(t, func(name string, level Level, stages []Stage) {
		explained := map[string]bool{}
		for k, s := range stages {
			where := fmt.Sprintf("%s, level %d, step %d, %s", name, level, k+1, s.Title)
			seen[s.Figure] = true
			if n := len(sentence.FindAllString(s.Text, -1)); n < 1 || n > 2 {
				t.Errorf("%s: %d sentences: %s", where, n, s.Text)
			}
			for _, text := range append([]string{s.Title, s.Text, s.Mistake, s.Tell}, s.Sums...) {
				if text == "" || strings.ContainsAny(text, "{}[]?") || strings.Contains(text, "%!") || strings.Contains(text, "  ") {
					t.Errorf("%s: %q", where, text)
				}
			}
			for _, term := range s.Terms {
				if explained[term.Word] {
					t.Errorf("%s explains %s again", where, term.Word)
				}
				explained[term.Word] = true
			}
		}
		if len(stages) < 3 {
			t.Errorf("%s: a lesson of %d steps", name, len(stages))
		}
	})
	for f := range FigureAgain + 1 {
		if !seen[f] && f != FigureLedger && f != FigurePitchBoard { // no example has a ledger, or a rise beyond a square: see below
			t.Errorf("no example shows figure %d", f)
		}
	}
}

// The first level tells no more than the full one.
func TestFirstLevelIsShorter(t *testing.T) {
	said := map[string]int{}
	lessons(t, func(name string, level Level, stages []Stage) {
		n := 0
		for _, s := range stages {
			n += 1 + len(s.Sums)
		}
		if level == First {
			said[name] = n
		} else if n <= said[name] {
			t.Errorf("%s: the full level says %d things, the first %d", name, n, said[name])
		}
	})
}

// The texts of the stages hold no number of their own, so that each comes from
// the table of figures, and that from the layout. No text holds a digit.
func TestTextsHoldNoNumbers(t *testing.T) {
	files, err := filepath.Glob("stages*.go")
	if err != nil || len(files) < 3 {
		t.Fatalf("%v: %v", files, err)
	}
	for _, name := range files {
		set := token.NewFileSet()
		file, err := parser.ParseFile(set, name, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(file, func(n ast.Node) bool {
			if lit, ok := n.(*ast.BasicLit); ok && lit.Kind == token.STRING && strings.ContainsAny(lit.Value, "0123456789") {
				t.Errorf("%s: %s has a number of its own", set.Position(lit.Pos()), lit.Value)
			}
			return true
		})
	}
}

const base = `
units: imperial
code: irc-2021
levels: {total_rise: %TOTAL%, lower_finish: %LOWER%, upper_finish: %UPPER%, header_top: 1 1/2", header_depth: 11 1/4", floor_depth: %FLOOR%}
width: 36"
opening: 132"
stairway: [{flight: {risers: %RISERS%, run: %RUN%}}]
tread: {thickness: %TREAD%, nosing: %NOSING%}
riser: {thickness: %RISER%}
stringer: {stock: {width: %WIDTH%, thickness: 1 1/2"}, count: %COUNT%, kicker: 2x4, behind_head: %PACKING%}
saw: {blade: %BLADE%, depth: 1 5/8", stop_short: %STOP%}
`

var measured = map[string]string{
	"TOTAL": `105"`, "LOWER": `1/4"`, "UPPER": `0`, "FLOOR": `11 3/4"`, "RISERS": "14", "RUN": `10"`, "TREAD": `1 1/4"`, "NOSING": `1"`,
	"RISER": `3/4"`, "WIDTH": `11 1/4"`, "COUNT": "3", "PACKING": `1/2"`, "BLADE": `7 1/4"`, "STOP": `1/8"`,
}

// micron prints inches to the micrometre, so that nothing that changes hides in the
// rounding.
const micron = 25400

// said is what every figure of the table says of a job; those that do not apply
// are left out.
func said(t *testing.T, values map[string]string) map[string]string {
	t.Helper()
	text := base
	for key, value := range values {
		text = strings.ReplaceAll(text, "%"+key+"%", value)
	}
	s, code := layouttest.Stairway(t, "job.yaml", text)
	f := s.Flights()[0]
	tell := &teacher{s: s, code: code, st: measure.Style{Units: measure.Imperial, Denominator: micron}, level: Full, part: s.Parts[0], element: f, f: f, g: &f.Stringers[0]}
	out := map[string]string{}
	for name, figure := range figures {
		func() {
			defer func() { recover() }() // a landing's, a turn's: this job has none
			out[name] = figure(tell)
		}()
	}
	return out
}

// One measurement is changed, and every figure that hangs on it changes, and none
// other. What hangs on what is written from the geometry in the design: levels
// and the rise on the total rise and the count; everything along the slope on
// rise and run; the foot on tread and flooring; and so on. The header ends higher
// than the plumb cut, so what bears on it hangs on rise and tread alone.
func TestOneMeasurementChanges(t *testing.T) {
	along := []string{ // what depends on rise and run both
		"step", "step exactly", "first tip", "first tip exactly", "last tip", "last tip exactly", "head end exactly", "least blank",
		"notch depth", "notch exactly", "throat", "seat", "plumb cut", "pitch", "two rises and a run", "opening needed",
		"riser overcut", "tread overcut",
	}
	rise := []string{
		"unit rise", "unit rise exactly", "flight rise", "flight rise exactly", "first level", "middle level",
		"first riser cut", "last tread level", "first board", "second board", "drift", "height drift",
		"rounded rise", "rounded total", "tongue", "contact",
	}
	for _, c := range []struct {
		key, value string
		want       []string
	}{
		{"TOTAL", `105 1/2"`, join(along, rise, []string{"total rise", "measured rise", "part rise", "part to", "flight to", "rounded error"})},
		{"RUN", `10 1/8"`, join(along, []string{"unit run", "total run", "last tread cut", "blade arm", "tread depth"})},
		{"TREAD", `1 1/2"`, []string{"tread thickness", "drop", "first riser cut", "first tip", "first tip exactly", "last tip", "last tip exactly",
			"least blank", "seat", "last tread level", "first board", "contact"}},
		{"LOWER", `1/2"`, []string{"lower finish", "flooring", "drop", "first riser cut", "first tip", "first tip exactly", "last tip", "last tip exactly", "least blank", "seat"}},
		{"UPPER", `1/2"`, []string{"upper finish"}},
		{"FLOOR", `12"`, []string{"floor depth", "opening needed"}},
		{"NOSING", `1 1/8"`, []string{"nosing", "overhang", "tread depth", "opening needed"}},
		{"RISER", `5/8"`, []string{"riser thickness", "overhang", "opening needed"}},
		{"WIDTH", `11 1/8"`, []string{"width", "throat", "seat", "plumb cut"}},
		{"COUNT", "4", []string{"count", "others"}},
		{"PACKING", `3/4"`, []string{"behind head", "last tread cut", "head end exactly", "least blank", "plumb cut", "opening needed"}},
		{"BLADE", `8 1/4"`, []string{"blade", "far face", "by hand"}},
		{"STOP", `1/4"`, []string{"stop short", "by hand"}},
	} {
		before, changed := said(t, measured), maps.Clone(measured)
		changed[c.key] = c.value
		after := said(t, changed)
		var got []string
		for name := range before {
			if before[name] != after[name] {
				got = append(got, name)
			}
		}
		slices.Sort(got)
		want := slices.Clone(c.want)
		slices.Sort(want)
		want = slices.Compact(want)
		if diff := cmp.Diff(want, got); diff != "" {
			t.Errorf("%s from %s to %s: should change -, does +:\n%s", c.key, measured[c.key], c.value, diff)
		}
	}
}

func join(lists ...[]string) []string { return slices.Concat(lists...) }

// A stringer over a ledger is told of its notch; one whose feet differ, of each.
func TestLedger(t *testing.T) {
	s, code := layouttest.Stairway(t, "job.yaml", `
units: imperial
code: irc-2021
levels: {total_rise: 105", header_depth: 20"}
stairway: [{flight: {risers: 14, run: 10"}}]
tread: {thickness: 1 1/4", nosing: 1"}
riser: {thickness: 3/4"}
stringer: {stock: 2x12, ledger: 2x4, count: 3, foot_levels: [1/2", 0, -1/2"]}
`)
	var all []string
	for _, stage := range Teach(s, code, measure.Style{Units: measure.Imperial}, Full) {
		all = append(all, stage.Title, stage.Text, strings.Join(stage.Sums, " "))
	}
	text := strings.Join(all, "\n")
	for _, want := range []string{"Notch for the ledger", `3 1/2" up and 1 1/2" in`, "Keep the outlines apart", `left 5 3/4"`, `right 6 3/4"`} {
		if !strings.Contains(text, want) {
			t.Errorf("nothing says %q in:\n%s", want, text)
		}
	}
}

// The rounding trap is told as it is, worked by hand.
func TestRoundingTrap(t *testing.T) {
	for total, want := range map[string]string{
		`106"`:     `the trap: 14 x 7 9/16" = 105 7/8", 1/8" short`,
		`105 1/2"`: `the trap: 14 x 7 9/16" = 105 7/8", 3/8" too much`,
		`105"`:     "",
	} {
		s, code := layouttest.Stairway(t, "job.yaml", strings.ReplaceAll(strings.NewReplacer("%TOTAL%", total, "%LOWER%", "0", "%UPPER%", "0", "%FLOOR%", `12"`, "%RISERS%", "14", "%RUN%", `10"`,
			"%TREAD%", `1"`, "%NOSING%", `1"`, "%RISER%", `3/4"`, "%WIDTH%", `11 1/4"`, "%COUNT%", "3", "%PACKING%", "0", "%BLADE%", `7 1/4"`, "%STOP%", `1/8"`).Replace(base), "\t", ""))
		stage := Teach(s, code, measure.Style{Units: measure.Imperial}, First)[1]
		got := ""
		for _, sum := range stage.Sums {
			if strings.HasPrefix(sum, "the trap") {
				got = sum
			}
		}
		if got != want {
			t.Errorf("of %s: %q, want %q", total, got, want)
		}
	}
}

// A rise beyond the square's tongue is marked with a pitch board.
func TestPitchBoard(t *testing.T) {
	s, code := layouttest.Stairway(t, "job.yaml", `
units: imperial
code: none
levels: {total_rise: 102"}
stairway: [{flight: {risers: 6, run: 7"}}]
tread: {thickness: 1 1/2"}
riser: open
stringer: {stock: 2x12}
`)
	told := ""
	for _, stage := range Teach(s, code, measure.Style{Units: measure.Imperial}, Full) {
		if stage.Figure == FigureSquare || strings.Contains(stage.Text, "gauges") {
			t.Errorf("a square is set: %s", stage.Text)
		}
		if stage.Figure == FigurePitchBoard {
			told = stage.Text
		}
	}
	if !strings.Contains(told, `17" by 7"`) {
		t.Errorf("the pitch board is told as %q", told)
	}
}

// common are words of the glossary that are words of every day too: a lesson may
// use them as such.
var common = []string{"step", "tip", "root", "head", "blank", "flight", "pitch", "crown", "seat", "guard"}

// A term of the trade is explained in the step that first uses it, or before.
func TestTermsAreExplained(t *testing.T) {
	words := map[string]*regexp.Regexp{}
	for _, term := range Glossary {
		if !slices.Contains(common, term.Word) {
			words[term.Word] = regexp.MustCompile(`(?i)\b` + term.Word + `(s|es)?\b`)
		}
	}
	lessons(t, func(name string, level Level, stages []Stage) {
		explained := map[string]bool{}
		for k, s := range stages {
			for _, term := range s.Terms {
				explained[term.Word] = true
			}
			text := strings.Join(append([]string{s.Text, s.Mistake, s.Tell}, s.Sums...), " ")
			for word, pattern := range words {
				if !explained[word] && pattern.MatchString(text) {
					t.Errorf("%s, level %d, step %d (%s): %s is used and not explained", name, level, k+1, s.Title, word)
					explained[word] = true
				}
			}
		}
	})
}

// turning is a stair with a landing, winders and a curve, to change a measurement
// of.
const turning = `
units: imperial
code: irc-2021
levels: {total_rise: 200"}
width: %WIDTH%
stairway:
  - flight: {risers: 8, run: 10"}
  - landing: {turn: left, finish: %FINISH%, sheathing: 3/4", length: %LENGTH%}
  - flight: {risers: 6, run: 10"}
  - winders: {turn: left, treads: 3, setback: %SETBACK%}
  - curve: {turn: left, risers: 11, inside_radius: %RADIUS%, angle: %ANGLE%}
tread: {thickness: 1 1/4", nosing: 1"}
riser: {thickness: 3/4"}
stringer: {stock: 2x12, count: 3}
`

// What is told of landings, winders and curves hangs on their own measurements
// alone.
func TestOneMeasurementOfATurnChanges(t *testing.T) {
	values := map[string]string{"WIDTH": `36"`, "FINISH": `3/4"`, "LENGTH": `40"`, "SETBACK": `12"`, "RADIUS": "60", "ANGLE": "100"}
	said := func(values map[string]string) map[string]string {
		text := turning
		for key, value := range values {
			text = strings.ReplaceAll(text, "%"+key+"%", value)
		}
		s, code := layouttest.Stairway(t, "job.yaml", text)
		out := map[string]string{}
		for _, e := range s.Elements {
			if _, flight := e.(*layout.Flight); flight {
				continue
			}
			tell := &teacher{s: s, code: code, st: measure.Style{Units: measure.Imperial, Denominator: micron}, level: Full, part: s.Parts[0], element: e}
			for name, figure := range figures {
				func() {
					defer func() { recover() }() // those of flights and of other members
					if name != "landing" {
						out[e.Kind()+" "+name] = figure(tell)
					}
				}()
			}
		}
		return out
	}
	before := said(values)
	for _, c := range []struct {
		key, value string
		want       []string
	}{
		{"FINISH", `1"`, []string{"landing framing level", "landing landing finish"}},
		{"LENGTH", `42"`, []string{"landing landing length"}},
		{"SETBACK", `12 1/2"`, []string{"winders setback", "winders walkline radius", "winders walkline depth", "winders narrow depth", "winders tapered deep"}},
		{"RADIUS", "62", []string{"curve inside radius", "curve outside radius", "curve inside run", "curve outside run", "curve inside pitch", "curve outside pitch",
			"curve curve walkline depth", "curve curve narrow", "curve tapered along", "curve tapered deep"}},
		{"ANGLE", "104", []string{"curve curve angle", "curve curve each", "curve inside run", "curve outside run", "curve inside pitch", "curve outside pitch",
			"curve curve walkline depth", "curve curve narrow", "curve tapered along", "curve tapered deep"}},
	} {
		changed := maps.Clone(values)
		changed[c.key] = c.value
		after := said(changed)
		var got []string
		for name := range before {
			if before[name] != after[name] {
				got = append(got, name)
			}
		}
		slices.Sort(got)
		want := slices.Clone(c.want)
		slices.Sort(want)
		if diff := cmp.Diff(want, got); diff != "" {
			t.Errorf("%s from %s to %s: should change -, does +:\n%s", c.key, values[c.key], c.value, diff)
		}
	}
}
