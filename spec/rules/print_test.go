package rules

import (
	"bytes"
	"encoding/json"
	"math"
	"strings"
	"testing"
)

// Everything that is printed fits a plain terminal, and holds every limit with
// section and basis.
func TestTextFits(t *testing.T) {
	check := func(name, text string) {
		for _, line := range strings.Split(text, "\n") {
			if n := len([]rune(line)); n > lineWidth || strings.HasSuffix(line, " ") {
				t.Errorf("%s: %d characters, or a space at the end: %q", name, n, line)
			}
		}
	}
	var list bytes.Buffer
	if err := ListText(&list); err != nil {
		t.Fatal(err)
	}
	check("list", list.String())
	for _, name := range Names() {
		c := code(t, name)
		if !strings.Contains(list.String(), name) {
			t.Errorf("%s is not listed", name)
		}
		var b bytes.Buffer
		if err := c.Text(&b); err != nil {
			t.Fatal(err)
		}
		check(name, b.String())
		text := strings.Join(strings.Fields(b.String()), " ")
		for _, l := range c.Limits {
			if !strings.Contains(text, string(l.Key)+" "+l.Text+" "+l.Section) || !strings.Contains(text, l.Basis.String()) {
				t.Errorf("%s: %s is not shown with its value and section", name, l.Key)
			}
		}
	}
}

// The JSON as scripts read it.
func TestJSON(t *testing.T) {
	var out struct {
		Format string
		Codes  []struct {
			Name   string
			Limits []struct {
				ID, Value, Section, Basis string
				MM                        float64 `json:"value_mm"`
			}
		}
	}
	var b bytes.Buffer
	if err := code(t, "nbc-2020").JSON(&b); err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(b.Bytes(), &out); err != nil {
		t.Fatal(err)
	}
	if out.Format != "stepoff-codes/1" || len(out.Codes) != 1 || out.Codes[0].Name != "nbc-2020" {
		t.Fatalf("got %+v", out)
	}
	for _, l := range out.Codes[0].Limits {
		if l.ID == string(StringerThroatMin) {
			if l.MM != 90 || l.Value != "90 mm" || l.Section != "9.8.9.4" || l.Basis != "text read" {
				t.Errorf("the throat is %+v", l)
			}
			return
		}
	}
	t.Error("the throat is missing")
}

// A5 of the published cases: pairs of a rise and a run that a source gives for
// its own rule, in inches or, for the last two, millimetres. The rule keeps its
// own pairs.
func TestComfortRulesKeepTheirOwnPairs(t *testing.T) {
	const in = 25.4
	type pair struct{ rise, run float64 }
	for _, c := range []struct {
		source, formula string
		pairs           []pair
	}{
		{"EN5156, rule 1", "2R+T", []pair{{7.5, 10}}},
		{"EN5156, rule 2", "R+T", []pair{{7.5, 10}, {7, 11}}},
		{"EN5156, rule 3", "RxT", []pair{{7.5, 10}, {6.5, 12}}},
		{"Cyclopedia of Architecture, Carpentry and Building", "2R+T", []pair{{8, 8}, {7.5, 9}, {7, 10}}},
		{"Building Trades Pocketbook", "2R+T", []pair{{8.5, 7}, {7.5, 9}, {6.5, 11}, {5.5, 13}}},
		{"Building Trades Pocketbook", "RxT", []pair{{6, 11}, {9 + 3.0/7, 7}}},
		{"Wood, 1894", "R+T", []pair{{7.25, 10.75}}},
		{"Cyclopedia of Architecture, Carpentry and Building, volume 1", "RxT", []pair{{7.5, 10}}},
		{"A Pattern Language", "R+T", []pair{{7.5, 10}}},
		{"Approved Document K", "2R+T", []pair{{175 / in, 290 / in}, {170 / in, 275 / in}}}, // TAFE slides, 640 and 615 mm
	} {
		found := false
		for _, rule := range ComfortRules() {
			if !strings.Contains(rule.Source, c.source) || rule.Formula != c.formula {
				continue
			}
			found = true
			for _, p := range c.pairs {
				if v := rule.Figure(p.rise*in, p.run*in); v < rule.Least || v > rule.Most || math.IsNaN(v) {
					t.Errorf("%s: %s of %g and %g is %g, outside %s", rule.Source, rule.Formula, p.rise, p.run, v, rule.Text)
				}
			}
		}
		if !found {
			t.Errorf("no rule %s from %s", c.formula, c.source)
		}
	}
}
