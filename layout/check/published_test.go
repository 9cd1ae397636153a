package check_test

import (
	"bytes"
	"math"
	"os"
	"strings"
	"testing"

	"go.yaml.in/yaml/v4"

	"stepoff/layout"
	"stepoff/layout/check"
	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

// published is one row of testdata/published/checks.yaml.
type published struct {
	ID, Tag, Source, Code string
	Risers, Pads          []string
	Expect                struct{ Rule, Status, Of string }
	Overhead              *struct {
		Rise, Run, Floor, Headroom string
		TotalRise                  string `yaml:"total_rise"`
		Riser                      int
	}
	Thumb *struct {
		Formula, Is   string
		Keeps, Breaks [][2]string
	}
}

// Every row is a stair, or a rule with its own examples, from a published
// source, which stands in the row.
func TestPublished(t *testing.T) {
	text, err := os.ReadFile("../../testdata/published/checks.yaml")
	if err != nil {
		t.Fatal(err)
	}
	var rows []published
	if err := yaml.Load(text, &rows, yaml.WithKnownFields()); err != nil || len(rows) == 0 {
		t.Fatalf("%d rows, %v", len(rows), err)
	}
	for _, row := range rows {
		t.Run(row.ID, func(t *testing.T) {
			if row.Source == "" || row.Tag == "" || !strings.Contains("FMD", row.Tag) {
				t.Fatal("a row needs a source and a tag of F, M or D")
			}
			switch {
			case row.Expect.Rule != "":
				row.judge(t)
			case row.Overhead != nil:
				row.headroom(t)
			case row.Thumb != nil:
				row.thumb(t)
			default:
				t.Fatal("the row expects nothing")
			}
		})
	}
}

func parse(t *testing.T, text string) measure.Length {
	t.Helper()
	l, err := measure.Parse(text, measure.Undeclared)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// judge lays the pads and holds the risers against the code.
func (row published) judge(t *testing.T) {
	risers := make([]measure.Length, len(row.Risers))
	for i, r := range row.Risers {
		risers[i] = parse(t, r)
	}
	for i, p := range row.Pads { // the riser below grows by the pad, the one above loses it
		risers[i] += parse(t, p)
		risers[i+1] -= parse(t, p)
	}
	code, ok := rules.Lookup(row.Code)
	if !ok {
		t.Fatalf("there is no %s", row.Code)
	}
	found := by(check.Judge(check.Facts{Risers: check.Wholes(risers)}, code), row.Expect.Rule)
	if len(found) != 1 || found[0].Status.String() != row.Expect.Status || found[0].Actual.Value != parse(t, row.Expect.Of).MM() {
		t.Errorf("got %+v, want %s of %s", found, row.Expect.Status, row.Expect.Of)
	}
}

// headroom stands the far edge of the opening plumb over a riser's nosing.
func (row published) headroom(t *testing.T) {
	at := row.Overhead
	mm := func(text string) float64 { return parse(t, text).MM() }
	o := layout.Overhead{Rise: mm(at.Rise), Run: mm(at.Run), TotalRise: mm(at.TotalRise), FloorDepth: mm(at.Floor), FirstNosing: -40, Head: 5000}
	edge := o.FirstNosing + float64(at.Riser-1)*o.Run
	least, _ := o.Least(o.Head - edge)
	if math.Abs(least-mm(at.Headroom)) > 1e-6 {
		t.Errorf("headroom %.6f mm, want %s", least, at.Headroom)
	}
	if opening, ok := o.OpeningFor(mm(at.Headroom)); !ok || math.Abs(opening-(o.Head-edge)) > 1e-6 {
		t.Errorf("the opening for %s is %.6f, want %.6f", at.Headroom, opening, o.Head-edge)
	}
}

// thumb holds the pairs of rise and run against the one rule of thumb.
func (row published) thumb(t *testing.T) {
	none, _ := rules.Lookup(rules.None)
	status := func(pair [2]string) check.Status {
		facts := check.Facts{Risers: []check.Share{check.Whole(parse(t, pair[0]))}, Runs: []measure.Length{parse(t, pair[1])}}
		for _, f := range check.Judge(facts, none) {
			if f.Section == row.Thumb.Is && strings.HasPrefix(f.Text, row.Thumb.Formula+" = ") {
				return f.Status
			}
		}
		t.Fatalf("no rule %s of %s", row.Thumb.Formula, row.Thumb.Is)
		return check.Fail
	}
	for _, p := range row.Thumb.Keeps {
		if s := status(p); s != check.Pass {
			t.Errorf("%v: %s, want it kept", p, s)
		}
	}
	for _, p := range row.Thumb.Breaks {
		if s := status(p); s != check.Warn {
			t.Errorf("%v: %s, want a warning", p, s)
		}
	}
}

// Every rule of thumb that was read in its source has a row.
func TestRulesOfThumbHaveRows(t *testing.T) {
	text, err := os.ReadFile("../../testdata/published/checks.yaml")
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range rules.ComfortRules() {
		if c.Basis == rules.TextRead && !bytes.Contains(text, []byte(c.Source)) {
			t.Errorf("%s of %s has no row", c.Formula, c.Source)
		}
	}
}
