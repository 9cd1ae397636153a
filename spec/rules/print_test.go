package rules

import (
	"bytes"
	"encoding/json"
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
