package report_test

import (
	"bytes"
	"encoding/json"
	"flag"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"stepoff/layout/asbuilt"
	"stepoff/layout/report"
	"stepoff/spec"
	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

var update = flag.Bool("update", false, "rewrite the golden inspections; look at the difference before keeping it")

const punchGolden = "../../testdata/golden/punch"

// measured judges every measured stair of the examples.
func measured(t *testing.T, st measure.Style) map[string]*asbuilt.Inspection {
	t.Helper()
	names, err := filepath.Glob("../../examples/as-built/*.yaml")
	if err != nil || len(names) == 0 {
		t.Fatalf("no measured stairs among the examples: %v", err)
	}
	all := map[string]*asbuilt.Inspection{}
	for _, name := range names {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		all[strings.TrimSuffix(filepath.Base(name), ".yaml")] = inspected(t, name, string(text), st)
	}
	return all
}

func inspected(t *testing.T, name, text string, st measure.Style) *asbuilt.Inspection {
	t.Helper()
	a, err := spec.LoadAsBuilt(name, []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	code, ok := rules.Lookup(a.Code.Name)
	if !ok {
		t.Fatalf("no code %s", a.Code.Name)
	}
	if st == (measure.Style{}) {
		st.Units = a.Units
	}
	in, err := asbuilt.Inspect(a, code, st)
	if err != nil {
		t.Fatal(err)
	}
	return in
}

// What punch prints of every measured stair of the examples, as text and as
// JSON. A golden file that none of them writes any more fails.
func TestPunchGolden(t *testing.T) {
	written := map[string]bool{}
	for name, in := range measured(t, measure.Style{}) {
		var text, asJSON bytes.Buffer
		if err := report.PunchText(&text, in, measure.Style{Units: in.Stair.Units}); err != nil {
			t.Fatal(err)
		}
		if err := report.PunchJSON(&asJSON, in); err != nil {
			t.Fatal(err)
		}
		for file, got := range map[string][]byte{name + ".txt": text.Bytes(), name + ".json": asJSON.Bytes()} {
			written[file] = true
			holdGolden(t, filepath.Join(punchGolden, file), got)
		}
	}
	kept, err := os.ReadDir(punchGolden)
	if err != nil {
		t.Fatal(err)
	}
	for _, file := range kept {
		if !written[file.Name()] {
			t.Errorf("%s: no measured stair writes this any more; remove it", file.Name())
		}
	}
}

func holdGolden(t *testing.T, path string, got []byte) {
	t.Helper()
	if *update {
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, got, 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatalf("%v (go test ./layout/report -update makes it)", err)
	}
	if diff := cmp.Diff(strings.Split(string(want), "\n"), strings.Split(string(got), "\n")); diff != "" {
		t.Errorf("%s: want -, got +:\n%s", path, diff)
	}
}

// On a plain terminal nothing runs over, however finely lengths are printed, and
// nothing is printed that is no figure.
func TestPunchFitsTheScreen(t *testing.T) {
	for _, st := range []measure.Style{{Denominator: 16}, {Denominator: 64}, {Units: measure.Metric}} {
		for name, in := range measured(t, st) {
			var b bytes.Buffer
			if err := report.PunchText(&b, in, st); err != nil {
				t.Fatal(err)
			}
			for i, line := range strings.Split(b.String(), "\n") {
				if len([]rune(line)) > 80 {
					t.Errorf("%s:%d is %d characters wide: %s", name, i+1, len([]rune(line)), line)
				}
				for _, bad := range []string{"NaN", "Inf", measure.Unknown, "%!"} {
					if strings.Contains(line, bad) {
						t.Errorf("%s:%d says %s: %s", name, i+1, bad, line)
					}
				}
			}
		}
	}
}

// The JSON's figures of a stair worked by hand, by the names scripts use: a
// bottom riser 3/4 low, put right by one pad of 3/8.
func TestPunchJSON(t *testing.T) {
	in := inspected(t, "stair.yaml", `{kind: as-built, units: imperial, risers: [6 3/4, 7 1/2, 7 1/2, 7 1/2], treads: [10, 10 1/8, 10],
		stringer: {width: 11 1/4, unit_rise: 7 1/2, unit_run: 10, overcuts: {riser: 1/2}}}`, measure.Style{})
	var b bytes.Buffer
	if err := report.PunchJSON(&b, in); err != nil {
		t.Fatal(err)
	}
	var got struct {
		Format, Code, Verdict string
		TotalRise             float64 `json:"total_rise_mm"`
		Risers                []struct {
			Riser  int
			Rise   float64 `json:"rise_mm"`
			Off    float64 `json:"off_mean_mm"`
			Faults []struct{ Rule, Text string }
		}
		Treads []struct {
			Tread  int
			Run    float64  `json:"run_mm"`
			Nosing *float64 `json:"nosing_mm"`
		}
		Spread struct {
			Risers  float64  `json:"risers_mm"`
			Treads  float64  `json:"treads_mm"`
			Nosings *float64 `json:"nosings_mm"`
		}
		Neighbours struct {
			Risers struct {
				Lower, Upper int
				Apart        float64 `json:"apart_mm"`
			}
		} `json:"worst_neighbours"`
		Throat struct {
			Left  float64 `json:"left_mm"`
			Riser float64 `json:"overcut_riser_takes_mm"`
		}
		Pads []struct {
			Tread     int
			Thickness float64 `json:"thickness_mm"`
		}
		Padded struct {
			Total  float64   `json:"total_mm"`
			Risers []float64 `json:"risers_mm"`
			Spread float64   `json:"spread_mm"`
		}
		Why, Also []string
		Findings  []struct{ ID, Status, Section, Text string }
	}
	if err := json.Unmarshal(b.Bytes(), &got); err != nil {
		t.Fatal(err)
	}
	inch := func(what string, got, want float64) {
		t.Helper()
		if math.Abs(got-want*25.4) > 1e-6 {
			t.Errorf("%s: %g mm, want %g in", what, got, want)
		}
	}
	inch("total rise", got.TotalRise, 29.25)
	inch("riser 1", got.Risers[0].Rise, 6.75)
	inch("off the mean", got.Risers[0].Off, 6.75-29.25/4)
	inch("tread 2", got.Treads[1].Run, 10.125)
	inch("spread", got.Spread.Risers, 0.75)
	inch("spread of treads", got.Spread.Treads, 0.125)
	inch("neighbours", got.Neighbours.Risers.Apart, 0.75)
	inch("throat", got.Throat.Left, 4.85) // 5 1/4 less 1/2 x 0.8
	inch("overcut", got.Throat.Riser, 0.4)
	inch("padded riser", got.Padded.Risers[1], 7.125)
	inch("padded spread", got.Padded.Spread, 0.375)
	inch("total of pads", got.Padded.Total, 0.375)
	if got.Format != "stepoff-punch/1" || got.Code != "irc-2021" || got.Verdict != "pads" {
		t.Errorf("%s by %s: %s", got.Format, got.Code, got.Verdict)
	}
	if len(got.Pads) != 1 || got.Pads[0].Tread != 1 {
		t.Errorf("pads %+v", got.Pads)
	}
	if n := got.Neighbours.Risers; n.Lower != 1 || n.Upper != 2 {
		t.Errorf("neighbours %+v", n)
	}
	if f := got.Risers[0].Faults; len(f) != 1 || f[0].Rule != "riser-variation" || f[0].Text != "riser low" {
		t.Errorf("riser 1: %+v", f)
	}
	if len(got.Risers) != 4 || len(got.Treads) != 3 || got.Treads[0].Nosing != nil || got.Spread.Nosings != nil {
		t.Errorf("%d risers, %d treads, and nosings that nobody measured", len(got.Risers), len(got.Treads))
	}
	if len(got.Findings) != len(in.Findings) || got.Findings[0].ID == "" || got.Why == nil || got.Also == nil {
		t.Errorf("findings %+v", got.Findings)
	}
	if strings.Contains(b.String(), "null") {
		t.Errorf("what does not apply is null, not left out:\n%s", b.String())
	}
}

// A flight of one riser has no tread, no neighbours and no pads.
func TestPunchOfOneRiser(t *testing.T) {
	in := inspected(t, "step.yaml", `{kind: as-built, risers: [7 1/2"]}`, measure.Style{})
	var text, asJSON bytes.Buffer
	if err := report.PunchText(&text, in, measure.Style{}); err != nil {
		t.Fatal(err)
	}
	if err := report.PunchJSON(&asJSON, in); err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(text.String(), "nothing to do") || strings.Contains(asJSON.String(), "null") || strings.Contains(asJSON.String(), "apart_mm") {
		t.Errorf("%s\n%s", text.String(), asJSON.String())
	}
}
