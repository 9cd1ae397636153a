package asbuilt_test

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"stepoff/layout/asbuilt"
	"stepoff/layout/check"
	"stepoff/layout/stringer"
	"stepoff/spec"
	"stepoff/spec/measure"
	"stepoff/spec/rules"
	"stepoff/spec/source"
)

// inspect judges risers with treads of 10 1/4 in, or 275 mm under a metric code.
func inspect(t fataler, code string, risers []measure.Length) *asbuilt.Inspection {
	a := &spec.AsBuilt{Risers: risers, Treads: slices.Repeat([]measure.Length{41 * measure.Inch / 4}, len(risers)-1)}
	return judged(t, a, code)
}

type fataler interface {
	Helper()
	Fatal(args ...any)
}

func judged(t fataler, a *spec.AsBuilt, code string) *asbuilt.Inspection {
	t.Helper()
	c, ok := rules.Lookup(code)
	if !ok {
		t.Fatal("no code " + code)
	}
	in, err := asbuilt.Inspect(a, c, measure.Style{Units: a.Units})
	if err != nil {
		t.Fatal(err)
	}
	return in
}

// load reads a measured stair and judges it by its code.
func load(t *testing.T, text string) *asbuilt.Inspection {
	t.Helper()
	a, err := spec.LoadAsBuilt("stair.yaml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return judged(t, a, a.Code.Name)
}

// The pads are searched for under the same limits that the stair is judged by:
// for every code, risers that fail are those that need pads or have none, and a
// padded stair passes.
func TestPadsAndRulesAgree(t *testing.T) {
	for _, code := range rules.Names() {
		t.Run(code, rapid.MakeCheck(func(t *rapid.T) {
			n := rapid.IntRange(1, 9).Draw(t, "risers")
			var risers, treads []measure.Length
			middle := rapid.IntRange(170, 192).Draw(t, "middle")
			for range n {
				risers = append(risers, measure.Length(4*middle+rapid.IntRange(-40, 40).Draw(t, "riser"))*measure.Millimetre/4)
			}
			run := rapid.IntRange(225, 300).Draw(t, "run")
			for range n - 1 {
				treads = append(treads, measure.Length(run+rapid.IntRange(-2, 2).Draw(t, "tread"))*measure.Millimetre)
			}
			a := &spec.AsBuilt{Risers: risers, Treads: treads, Units: measure.Units(rapid.IntRange(0, 1).Draw(t, "units"))}
			in := judged(t, a, code)
			fails := failing(in)
			switch in.Remedy.Verdict {
			case asbuilt.Nothing:
				if len(fails) > 0 {
					t.Fatalf("%v: nothing to do, and yet %v", risers, fails)
				}
			case asbuilt.Rebuild:
				if len(fails) == 0 || len(in.Remedy.Why) == 0 {
					t.Fatalf("%v: rebuild because of %v, and what fails is %v", risers, in.Remedy.Why, fails)
				}
			case asbuilt.Pad:
				if len(fails) == 0 {
					t.Fatalf("%v: pads %v, and nothing fails", risers, in.Remedy.Pads)
				}
				padded := *a
				padded.Risers = in.Remedy.Padded
				if left := failing(judged(t, &padded, code)); len(left) > 0 {
					t.Fatalf("%v: with pads %v still %v", risers, in.Remedy.Pads, left)
				}
			}
			for _, s := range in.Steps {
				if len(s.Faults) > 0 && len(fails) == 0 {
					t.Fatalf("%v: step %d has %v, and nothing fails", risers, s.Number, s.Faults)
				}
			}
			if len(fails) > 0 && !slices.ContainsFunc(in.Steps, func(s asbuilt.Step) bool { return len(s.Faults) > 0 }) && !slices.ContainsFunc(fails, ofTheFlight) {
				t.Fatalf("%v, %v: %v, and no step is at fault", risers, treads, fails)
			}
		}))
	}
}

// ofTheFlight tells a finding that no one step is at fault for.
func ofTheFlight(found string) bool {
	return strings.HasPrefix(found, "flight-") || strings.HasPrefix(found, "pitch") || strings.HasPrefix(found, "risers-in-line")
}

func failing(in *asbuilt.Inspection) (said []string) {
	for _, f := range check.Of(in.Findings, check.Fail) {
		said = append(said, f.ID+": "+f.Text)
	}
	return said
}

// What is wrong with each step, in a few words.
func TestFaults(t *testing.T) {
	for _, c := range []struct {
		name, text string
		want       []string // step: what
	}{
		{"one riser low", `{kind: as-built, units: imperial, risers: [6 3/4, 7 1/2, 7 1/2, 7 1/2], treads: [10, 10, 10]}`,
			[]string{"1: riser low"}},
		{"one riser over the limit stands out too", `{kind: as-built, units: imperial, risers: [7 1/4, 7 1/4, 7 7/8, 7 1/4], treads: [10, 10, 10]}`,
			[]string{`3: riser over 7 3/4"`, "3: riser high"}},
		{"a tread too short, and all of them 3/8 apart", `{kind: as-built, units: imperial, risers: [7, 7, 7, 7], treads: [9 15/16, 10 5/16, 10 5/16]}`,
			[]string{`1: run under 10"`}},
		{"nosings", `{kind: as-built, units: imperial, risers: [7, 7, 7], treads: [10, 10], nosings: [1, 1/2, 1]}`,
			[]string{`2: nosing under 3/4"`, "2: nosing small"}},
		{"no nosing, and treads deep enough to need none", `{kind: as-built, units: imperial, risers: [7, 7, 7], treads: [11, 11], nosings: [0, 0, 0]}`, nil},
		{"neighbours", `{kind: as-built, units: metric, code: nbc-2020, risers: [180, 180, 187, 180], treads: [280, 280, 280]}`,
			[]string{"3: riser 7 mm more than 2", "4: riser 7 mm less than 3"}},
		{"off the mean", `{kind: as-built, units: metric, code: din-18065, risers: [170, 175, 180, 185, 180, 175, 170], treads: [275, 275, 275, 275, 275, 275]}`,
			[]string{"1: riser 6 mm+ off the mean", "4: riser 9 mm- off the mean", "7: riser 6 mm+ off the mean"}},
		{"two rises and a run", `{kind: as-built, units: metric, code: uk-adk, risers: [220, 220], treads: [265]}`,
			[]string{"1: 2R+T over 700 mm"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			var got []string
			for _, s := range load(t, c.text).Steps {
				for _, f := range s.Faults {
					got = append(got, fmt.Sprintf("%d: %s", s.Number, f.Text))
				}
			}
			if diff := cmp.Diff(c.want, got); diff != "" {
				t.Errorf("want -, got +:\n%s", diff)
			}
		})
	}
}

// What an overcut leaves of the net section: (4.85 / 5.25)2, the modulus going
// with the square of the throat.
func TestSectionLeft(t *testing.T) {
	in := load(t, `{kind: as-built, units: imperial, code: none, risers: [7 1/2, 7 1/2], treads: [10], stringer: {width: 11 1/4, overcuts: {riser: 1/2}}}`)
	if got := in.Throat.SectionLeft(); math.Abs(got-4.85*4.85/5.25/5.25) > 1e-9 {
		t.Errorf("%g of the section is left", got)
	}
}

// The throat left after overcuts: 7 1/2 x 10 on a 2x12 leaves 5 1/4 (a 3-4-5
// triangle). Half an inch past the root costs 0.4 along the riser line (cosine
// 0.8) and 0.3 along the tread line; both end under one root, so that the
// greater counts.
func TestThroatAfterOvercuts(t *testing.T) {
	const stair = `{kind: as-built, units: imperial, risers: [7 1/2, 7 1/2, 7 1/2], treads: [10, 10], stringer: {width: 11 1/4%s}}`
	for _, c := range []struct {
		more     string
		want     float64 // inches
		searched bool
	}{
		{"", 5.25, false},
		{", overcuts: {riser: 0}", 5.25, true},
		{", overcuts: {riser: 1/2}", 4.85, true},
		{", overcuts: {tread: 1/2}", 4.95, true},
		{", overcuts: {riser: 1/2, tread: 1/2}", 4.85, true},
		{", overcuts: {riser: 1/4, tread: 1}", 4.65, true},
		{", throat: 4 7/8", 4.875, false},
		{", unit_rise: 7 3/4, unit_run: 10", 11.25 - 7.75*10/math.Hypot(7.75, 10), false},
	} {
		th := load(t, fmt.Sprintf(stair, c.more)).Throat
		if th == nil || math.Abs(th.Left-c.want*25.4) > 1e-9 || th.Searched != c.searched {
			t.Errorf("%s: %+v, want %g in", c.more, th, c.want)
		}
	}
}

// The cost of an overcut is the one that a stringer laid out tells.
func TestOvercutsCostWhatAStringerLaidOutSays(t *testing.T) {
	sawn, refused := stringer.Request{Rise: 182, Run: 265, Risers: 4, Tread: 38, LastTread: 265, Width: 286, Thickness: 38,
		Saw: stringer.Saw{Blade: 184, Depth: 41}, SquareStep: 1}.Sawn()
	if refused != nil {
		t.Fatal(refused)
	}
	in := load(t, `{kind: as-built, units: metric, code: none, risers: [182, 182], treads: [265], stringer: {width: 286, overcuts: {riser: 12, tread: 17}}}`)
	riser, _ := sawn.OvercutCost(12)
	_, tread := sawn.OvercutCost(17)
	if th := in.Throat; math.Abs(th.Riser-riser) > 1e-9 || math.Abs(th.Tread-tread) > 1e-9 || math.Abs(th.NotchDepth-sawn.NotchDepth) > 1e-9 {
		t.Errorf("%+v, want %g and %g", th, riser, tread)
	}
}

// Measurements of a stringer that cannot all be true are mistakes with a place.
func TestAStringerThatCannotBe(t *testing.T) {
	for _, c := range []struct{ stringer, says, at string }{
		{`{width: 5 1/2}`, "leave nothing of a board", "1:91"},
		{`{width: 11 1/4, overcuts: {riser: 7}}`, "a stringer sawn through does not stand", "1:109"},
	} {
		a, err := spec.LoadAsBuilt("stair.yaml", []byte(`{kind: as-built, units: imperial, risers: [7 1/2, 7 1/2], treads: [10], stringer: `+c.stringer+`}`))
		if err != nil {
			t.Fatal(err)
		}
		code, _ := rules.Lookup("irc-2021")
		in, err := asbuilt.Inspect(a, code, measure.Style{})
		var bad source.Mistakes
		if in != nil || !errors.As(err, &bad) || !strings.Contains(bad[0].Message, c.says) || bad[0].At.String() != c.at {
			t.Errorf("%s: %v", c.stringer, err)
		}
	}
}

// Why a flight is to be rebuilt, in plain words.
func TestRebuild(t *testing.T) {
	for _, c := range []struct{ name, text, why string }{
		{"too few risers", `{kind: as-built, units: imperial, risers: [8, 8, 8], treads: [10, 10]}`, `3 risers share 24", which is 8" each even if all are alike, more than 7 3/4": there are too few`},
		{"too many", `{kind: as-built, units: imperial, code: ibc-2021, risers: [3, 3, 3], treads: [11, 11]}`, `less than 4": there are too many`},
		{"a least that is from memory", `{kind: as-built, units: metric, code: nbc-2020, risers: [120, 120], treads: [280]}`, "less than 125 mm: there are too many; verify 125 mm: from memory"},
		{"a bottom riser that is too high", `{kind: as-built, units: imperial, risers: [8, 7, 7, 7], treads: [10, 10, 10]}`, `tread 1 stands 8" over the lower floor, and pads lower no tread: with the risers within 3/8" of each other it may stand no higher than 7 9/16"-`},
		{"treads too short", `{kind: as-built, units: imperial, risers: [7, 7, 7], treads: [9, 9]}`, `pads change no run`},
		{"two rises and a run", `{kind: as-built, units: metric, code: din-18065, risers: [180, 180], treads: [300]}`, "but not two rises and a run within their limits"},
		{"neighbours", `{kind: as-built, units: metric, code: ncc-2022, risers: [190, 181, 181, 181], treads: [250, 250, 250]}`, "but not every two neighbours within 5 mm of each other"},
	} {
		r := load(t, c.text).Remedy
		if r.Verdict != asbuilt.Rebuild || !strings.Contains(strings.Join(r.Why, "\n"), c.why) {
			t.Errorf("%s: %s, %q\nwant %q", c.name, r.Verdict, r.Why, c.why)
		}
		if r.Pads != nil {
			t.Errorf("%s: pads %v under a flight to be rebuilt", c.name, r.Pads)
		}
	}
}

// A code of one's own may ask for more than pads in whole steps can give.
func TestRebuildWherePadsAreTooCoarse(t *testing.T) {
	code, err := rules.Read("strict.yaml", []byte("base: irc-2021\nlimits: {riser-variation: 1/64\"}\n"))
	if err != nil {
		t.Fatal(err)
	}
	a := &spec.AsBuilt{Risers: parse(t, []string{"7", "7 1/32"}), Treads: parse(t, []string{"10"})}
	in, err := asbuilt.Inspect(a, code, measure.Style{})
	if err != nil {
		t.Fatal(err)
	}
	if want := []string{`no pads in whole steps of 1/16" bring every riser within its limits`}; !slices.Equal(in.Remedy.Why, want) {
		t.Errorf("%q, want %q", in.Remedy.Why, want)
	}
}

// Pads take from the headroom and from the handrail's height; what stands apart
// from the steps is told beside them.
func TestWhatPadsChange(t *testing.T) {
	in := load(t, `{kind: as-built, units: imperial, risers: [6 3/4, 7 1/2, 7 1/2], treads: [10, 10], headroom: 80 1/4, handrail_height: 34 1/8, width: 35}`)
	if in.Remedy.Verdict != asbuilt.Pad {
		t.Fatal(in.Remedy.Verdict)
	}
	all := strings.Join(in.Remedy.Also, "\n")
	for _, want := range []string{`clear width 35", less than 36"`, `headroom is up to 3/8" less over a padded tread: 79 7/8", less than 80" there`, `handrail's height is up to 3/8" less over a padded tread: 33 3/4", less than 34" there`} {
		if !strings.Contains(all, want) {
			t.Errorf("not said: %s\n%s", want, all)
		}
	}
}

// A limit from memory that decides about the pads is to be verified.
func TestWhatPadsChangeIsVerified(t *testing.T) {
	r := load(t, `{kind: as-built, units: metric, code: nbc-2020, risers: [180, 190, 186], treads: [260, 260], headroom: 1951}`).Remedy
	if all := strings.Join(r.Also, "\n"); r.Verdict != asbuilt.Pad || !strings.Contains(all, "verify 1950 mm: from memory") {
		t.Errorf("%s: %q", r.Verdict, r.Also)
	}
}

// Where a code asks for risers alike and gives no number, that is said.
func TestNoNumberForTheSpread(t *testing.T) {
	const stair = `{kind: as-built, units: imperial, code: %s, risers: [9, 9 3/8, 9], treads: [9 1/2, 9 1/2]}`
	for code, want := range map[string]bool{"osha-1910": true, "none": false, "irc-2021": false, "din-18065": false} {
		r := load(t, fmt.Sprintf(stair, code)).Remedy
		if got := strings.Contains(strings.Join(r.Also, "\n"), `gives no number for how far risers may differ, and these are 3/8" apart`); got != want {
			t.Errorf("%s: said %t, want %t: %q", code, got, want, r.Also)
		}
	}
}

// Spreads are told with the lowest step of equals.
func TestSpread(t *testing.T) {
	in := load(t, `{kind: as-built, units: imperial, code: none, risers: [7, 7 1/2, 7, 7 1/2, 7 1/8], treads: [10, 10, 10, 10], nosings: [1, 1, 1, 1]}`)
	want := asbuilt.Spread{Least: asbuilt.Numbered{Number: 1, Length: 7 * measure.Inch}, Most: asbuilt.Numbered{Number: 2, Length: 15 * measure.Inch / 2},
		Apart: measure.Inch / 2, Neighbours: &asbuilt.Neighbours{Lower: 1, Apart: measure.Inch / 2}}
	if diff := cmp.Diff(want, in.Risers); diff != "" {
		t.Errorf("want -, got +:\n%s", diff)
	}
	if in.Remedy.Verdict != asbuilt.Nothing || in.Fails() {
		t.Errorf("without a code: %+v", in.Remedy)
	}
}
