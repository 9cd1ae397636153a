package rules

import (
	"io/fs"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// Every file is a code that is listed, and every code that is listed has one.
func TestFilesAreTheCodes(t *testing.T) {
	found, err := fs.Glob(files, "codes/*.yaml")
	if err != nil {
		t.Fatal(err)
	}
	var have []string
	for _, f := range found {
		have = append(have, strings.TrimSuffix(strings.TrimPrefix(f, "codes/"), ".yaml"))
	}
	want := Names()
	slices.Sort(want)
	slices.Sort(have)
	if diff := cmp.Diff(want, have); diff != "" {
		t.Errorf("codes listed -, files +:\n%s", diff)
	}
}

// No number without the section it stands in, how it is measured and how it
// came to be known; what was read somewhere says where.
func TestEveryLimitIsTraced(t *testing.T) {
	for _, name := range Names() {
		c := code(t, name)
		if c.Title == "" || c.Name != name {
			t.Errorf("%s: name %q, title %q", name, c.Name, c.Title)
		}
		if (len(c.Limits) == 0) != (name == None) {
			t.Errorf("%s sets %d limits", name, len(c.Limits))
		}
		for _, l := range c.Limits {
			if l.Section == "" || l.Measured == "" || l.Text == "" || l.Basis == OwnFile {
				t.Errorf("%s %s: section %q, measured %q, text %q, basis %s", name, l.Key, l.Section, l.Measured, l.Text, l.Basis)
			}
			if l.Basis == TextRead && len(l.Sources) == 0 {
				t.Errorf("%s %s: its text was read, but not said where", name, l.Key)
			}
			if l.Basis == FromMemory && len(l.Sources) > 0 {
				t.Errorf("%s %s: from memory, and yet from %v", name, l.Key, l.Sources)
			}
		}
	}
}

// Codes print most limits twice, in inches and rounded in millimetres or
// centimetres. The second figure, as the code prints it, holds the first.
// Source: the second column of each code's table; 9.5 in is 24 cm in OSHA's.
func TestValuesAgreeWithTheCodesOtherUnit(t *testing.T) {
	const (
		whole = 1.0 // a code's soft conversion cuts or rounds to the millimetre
		cm    = 5.0 // or to the centimetre
	)
	for _, c := range []struct {
		code   string
		within float64
		mm     map[Key]float64
	}{
		{"irc-2021", whole, map[Key]float64{
			RiserMax: 196, RiserVariation: 9.5, RunMin: 254, NosingMin: 19, NosingMax: 32, NosingExemptRun: 279,
			HeadroomMin: 2032, FlightRiseMax: 3835, WidthMin: 914, LandingLengthMin: 914, WalklineDatum: 305,
			WinderWalklineMin: 254, WinderNarrowMin: 152, OpenRiserSphere: 102, OpenRiserAbove: 762,
			HandrailHeightMin: 864, HandrailHeightMax: 965, GuardDrop: 762, GuardHeightMin: 914, GuardStairHeightMin: 864}},
		{"ibc-2021", whole, map[Key]float64{
			RiserMin: 102, RiserMax: 178, RunMin: 279, NosingMax: 32, HeadroomMin: 2032, WidthMin: 1118,
			LandingLengthMin: 1219, FlightRiseMax: 3658, WinderWalklineMin: 279, WinderNarrowMin: 254}},
		{"ibc-2021-dwelling", whole, map[Key]float64{RiserMax: 197, RunMin: 254, WinderWalklineMin: 254, WinderNarrowMin: 152, NosingMin: 19, WidthMin: 914}},
		{"osha-1910", cm, map[Key]float64{RiserMax: 240, RunMin: 240, WidthMin: 560, HeadroomMin: 2030, LandingLengthMin: 760}},
		{"dca-6", whole, map[Key]float64{
			StringerThroatMin: 127, StringerDepthMin: 286, StringerThicknessMin: 38, StringerCutSpanMax: 1829,
			StringerSolidSpanMax: 4039, StringerSpacingMax: 457, FlightRiseMax: 3658, GuardTotalRise: 762}},
		// The other way round: metric codes, and inches to a hundredth.
		{"nbc-2020", 0.2, map[Key]float64{
			RiserMin: 4.92 * 25.4, RiserMax: 7.87 * 25.4, RunMin: 10.04 * 25.4, RunMax: 13.98 * 25.4, NosingMax: 0.98 * 25.4,
			StringerThroatMin: 3.54 * 25.4, StringerDepthMin: 9.25 * 25.4, TreadThicknessMin: 0.98 * 25.4}},
		{"uk-adk", whole, map[Key]float64{
			RiserMin: 150, RiserMax: 220, RunMin: 220, RunMax: 300, TwoRisePlusRunMin: 550, TwoRisePlusRunMax: 700,
			HeadroomMin: 2000, WinderNarrowMin: 50, WalklineDatum: 270, HandrailHeightMin: 900, HandrailHeightMax: 1000, GuardDrop: 600}},
		{"ncc-2022", whole, map[Key]float64{
			RiserMin: 115, RiserMax: 190, RunMin: 240, RunMax: 355, RiserVariation: 10, RiserVariationAdjacent: 5, OpenRiserSphere: 125, LandingLengthMin: 750}},
		{"din-18065", whole, map[Key]float64{
			RiserMin: 140, RiserMax: 200, RunMin: 230, RunMax: 370, TwoRisePlusRunMin: 590, TwoRisePlusRunMax: 650, WidthMin: 800}},
	} {
		for key, want := range c.mm {
			l, ok := code(t, c.code).Limit(key)
			if got := l.Length.MM(); !ok || math.Abs(got-want) > c.within {
				t.Errorf("%s %s: %s is %.2f mm, want %.2f within %g", c.code, key, l.Text, got, want, c.within)
			}
		}
	}
}

// 2024 gave every section another number and left the dimensions alone.
func TestIRC2024IsRenumbered(t *testing.T) {
	before, after := code(t, "irc-2021"), code(t, "irc-2024")
	if len(before.Limits) != len(after.Limits) {
		t.Fatalf("%d limits in 2021, %d in 2024", len(before.Limits), len(after.Limits))
	}
	for i, l := range after.Limits {
		was := before.Limits[i]
		if l.Key != was.Key || l.Text != was.Text || l.Length != was.Length {
			t.Errorf("%s %s became %s %s", was.Key, was.Text, l.Key, l.Text)
		}
		if strings.HasPrefix(l.Section, "R311.7") || strings.HasPrefix(l.Section, "R312") {
			t.Errorf("%s: section %s is the old number", l.Key, l.Section)
		}
	}
}

// The codes that build on another have its limits under the same sections, but
// for what they take away.
func TestBases(t *testing.T) {
	exempt := map[string][]Key{"ibc-2021-dwelling": {WinderUse, CurveRadiusWidths}} // 1011.5.3, 1011.9, from memory
	for _, c := range []struct{ name, base string }{
		{"irc-2018", "irc-2021"}, {"irc-2024", "irc-2021"}, {"dca-6", "irc-2021"}, {"ibc-2021-dwelling", "ibc-2021"},
	} {
		this, base := code(t, c.name), code(t, c.base)
		if this.Base != c.base {
			t.Errorf("%s builds on %q, want %q", c.name, this.Base, c.base)
		}
		for _, l := range base.Limits {
			if _, ok := this.Limit(l.Key); ok == slices.Contains(exempt[c.name], l.Key) {
				t.Errorf("%s: %s is there: %v", c.name, l.Key, ok)
			}
		}
	}
	if irc, _ := code(t, "irc-2021").Limit(FlightRiseMax); irc.Text != `151"` {
		t.Errorf("building on irc-2021 changed it: %s", irc.Text)
	}
}

// Every rule is told in one line and stands somewhere; every limit belongs to a
// rule and is set by some code.
func TestRegistry(t *testing.T) {
	set := map[Key]bool{}
	for _, name := range Names() {
		for _, l := range code(t, name).Limits {
			set[l.Key] = true
		}
	}
	seen := map[string]bool{}
	for _, r := range Rules() {
		if seen[r.ID] || r.ID == "" {
			t.Errorf("rule %q stands twice", r.ID)
		}
		seen[r.ID] = true
		if len(r.Meaning) < 10 || strings.ContainsAny(r.Meaning, "\n") {
			t.Errorf("%s: its meaning is %q", r.ID, r.Meaning)
		}
		if limits := LimitsOf(r.ID); (len(limits) == 0) == (r.Reference == "") {
			t.Errorf("%s: %d limits and the reference %q; a rule has one or the other", r.ID, len(limits), r.Reference)
		}
	}
	keys := map[Key]bool{}
	for _, i := range infos {
		if keys[i.Key] || !seen[i.Rule] || i.Meaning == "" {
			t.Errorf("limit %s (rule %q) is wrong or stands twice", i.Key, i.Rule)
		}
		keys[i.Key] = true
		if !set[i.Key] {
			t.Errorf("no code sets %s", i.Key)
		}
	}
	for _, c := range ComfortRules() {
		if !seen[c.Rule] {
			t.Errorf("rule of thumb %q is no rule", c.Rule)
		}
	}
}

// A code that nobody has: the nearest name, or all of them.
func TestUnknown(t *testing.T) {
	for name, want := range map[string]string{
		"irc2021":  "did you mean irc-2021?",
		"IRC-2024": "did you mean irc-2024?",
		"uk_adk":   "did you mean uk-adk?",
		"bylaws":   "the codes are irc-2018, irc-2021",
		"dca6":     "did you mean dca-6?",
	} {
		if got := Unknown(name); !strings.Contains(got, want) || !strings.Contains(got, name) {
			t.Errorf("Unknown(%q) = %q, want it to say %q", name, got, want)
		}
		if _, ok := Lookup(name); ok {
			t.Errorf("%s was found", name)
		}
	}
	for name, want := range map[string]bool{"./county.yaml": true, "county.yml": true, "codes/county": true, "irc-2021": false, "irc-2099": false, "none": false} {
		if IsFile(name) != want {
			t.Errorf("IsFile(%q) is not %v", name, want)
		}
	}
}

func code(t *testing.T, name string) *Code {
	t.Helper()
	c, ok := Lookup(name)
	if !ok {
		t.Fatalf("there is no %s", name)
	}
	return c
}
