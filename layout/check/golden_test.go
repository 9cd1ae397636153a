package check_test

import (
	"bytes"
	"encoding/json"
	"flag"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"stepoff/layout/check"
	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

var update = flag.Bool("update", false, "rewrite the golden findings; look at the difference before keeping it")

const goldenDir = "../../testdata/golden/check"

// Every example as it is checked, under its own code and under one that it
// fails: as text and, once, as JSON. Golden files that nothing writes fail.
func TestGoldenFindings(t *testing.T) {
	written := []string{}
	golden := func(name string, got []byte) {
		written = append(written, name)
		path := filepath.Join(goldenDir, name)
		if *update {
			if err := os.MkdirAll(goldenDir, 0o777); err != nil {
				t.Fatal(err)
			}
			if err := os.WriteFile(path, got, 0o666); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(path)
		if err != nil {
			t.Errorf("%v (-update writes it)", err)
			return
		}
		if diff := cmp.Diff(strings.Split(string(want), "\n"), strings.Split(string(got), "\n")); diff != "" {
			t.Errorf("%s: want -, got +:\n%s", name, diff)
		}
	}
	for _, c := range []struct{ example, code string }{
		{"loft", "irc-2021"}, {"deck", "dca-6"}, {"cellar", "uk-adk"},
		{"loft", "ibc-2021"}, {"cellar", "nbc-2020"}, {"loft", "none"},
		{"attic", "irc-2021"}, {"terrace", "ibc-2021"}, {"library", "uk-adk"},
		{"winder-l", "irc-2021"}, {"winder-l", "nbc-2020"}, {"winder-l", "uk-adk"}, {"winder-l", "din-18065"},
		{"curved", "irc-2021"}, {"curved", "ibc-2021"}, {"curved", "ncc-2022"},
	} {
		text, err := os.ReadFile("../../examples/" + c.example + ".yaml")
		if err != nil {
			t.Fatal(err)
		}
		s := compute(t, string(text))
		code, _ := rules.Lookup(c.code)
		findings := check.Stairway(s, code, measure.Style{Units: s.Job.Units})
		var b bytes.Buffer
		if err := check.Text(&b, findings, code); err != nil {
			t.Fatal(err)
		}
		for _, line := range strings.Split(b.String(), "\n") {
			if n := len([]rune(line)); n > 80 || strings.HasSuffix(line, " ") {
				t.Errorf("%d characters, or a space at the end: %q", n, line)
			}
		}
		golden(c.example+"-"+c.code+".txt", b.Bytes())
		if c.code == "dca-6" {
			b.Reset()
			if err := check.JSON(&b, findings, nil); err != nil {
				t.Fatal(err)
			}
			golden(c.example+"-"+c.code+".json", b.Bytes())
		}
	}
	have, err := filepath.Glob(goldenDir + "/*")
	if err != nil {
		t.Fatal(err)
	}
	for _, h := range have {
		if !slices.Contains(written, filepath.Base(h)) {
			t.Errorf("%s is written by nothing; remove it", h)
		}
	}
}

// The JSON as scripts read it: lengths end in _mm, angles in _deg, and what
// does not apply is left out.
func TestJSONShape(t *testing.T) {
	code, _ := rules.Lookup("uk-adk")
	var b bytes.Buffer
	if err := check.JSON(&b, check.Judge(check.Facts{Risers: check.Even(2100*measure.Millimetre, 12, 12), Runs: []measure.Length{250 * measure.Millimetre}}, code), nil); err != nil {
		t.Fatal(err)
	}
	var out struct {
		Format   string
		Findings []map[string]any
	}
	if err := json.Unmarshal(b.Bytes(), &out); err != nil {
		t.Fatal(err)
	}
	find := func(id string) map[string]any {
		for _, f := range out.Findings {
			if f["id"] == id {
				return f
			}
		}
		t.Fatalf("no finding %s in %s", id, b.String())
		return nil
	}
	if out.Format != "stepoff-check/1" {
		t.Errorf("format %q", out.Format)
	}
	riser := find("riser-max")
	delete(riser, "text")
	if diff := cmp.Diff(map[string]any{"id": "riser-max", "section": "1.3, Table 1.1", "limit_mm": 220.0, "actual_mm": 175.0, "status": "pass", "basis": "text read"}, riser); diff != "" {
		t.Errorf("want -, got +:\n%s", diff)
	}
	pitch := find("pitch")
	if pitch["limit_deg"] != 42.0 || pitch["actual_mm"] != nil {
		t.Errorf("the pitch is %v", pitch)
	}
	b.Reset()
	if err := check.JSON(&b, nil, nil); err != nil || !strings.Contains(b.String(), `"findings": []`) {
		t.Errorf("no findings: %s %v", b.String(), err)
	}
}
