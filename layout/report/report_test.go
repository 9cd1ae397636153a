package report_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"stepoff/layout"
	"stepoff/layout/check"
	"stepoff/layout/layouttest"
	"stepoff/layout/report"
	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

// compute lays a job out as a command does, what it leaves open filled in under
// its code.
func compute(t *testing.T, name, text string) *layout.Stairway {
	t.Helper()
	s, _ := layouttest.Stairway(t, name, text)
	return s
}

// writeJSON writes the layout as a command does, under the job's code.
func writeJSON(b *bytes.Buffer, s *layout.Stairway) error {
	code, ok := rules.Lookup(s.Job.Code.Name)
	if !ok {
		return fmt.Errorf("no code is called %s", s.Job.Code.Name)
	}
	st := measure.Style{Units: s.Job.Units}
	return report.JSON(b, s, code, check.Stairway(s, code, st))
}

// stair345 is the stair whose every figure comes from a 3-4-5 triangle.
func stair345(lowerFinish string) string {
	return fmt.Sprintf(`
units: imperial
levels: {total_rise: 105", lower_finish: %s}
width: 36"
stairway:
  - flight: {risers: 14, run: 10"}
tread: {thickness: 1 1/2", nosing: 1"}
riser: {thickness: 3/4"}
stringer: {stock: 2x12}
`, lowerFinish)
}

// The JSON's figures for the 3-4-5 stair, worked by hand, by the names scripts
// use.
func TestThreeFourFiveJSON(t *testing.T) {
	const in = 25.4
	for _, c := range []struct {
		lowerFinish string
		want        map[string]float64 // inches
	}{
		{"0", map[string]float64{
			"step_mm": 12.5, "notch_depth_mm": 6, "throat_mm": 5.25, "bottom_drop_mm": 1.5, "first_riser_cut_mm": 6,
			"seat_cut_mm": 10.75, "head_cut_mm": 6.5625, "least_blank_mm": 161.6, "stock_length_mm": 168,
			"width_mm": 11.25, "thickness_mm": 1.5, "last_tread_cut_mm": 10,
		}},
		{`3/4"`, map[string]float64{
			"bottom_drop_mm": 0.75, "first_riser_cut_mm": 6.75, "seat_cut_mm": 9.75, "least_blank_mm": 162.05,
		}},
	} {
		var b bytes.Buffer
		if err := writeJSON(&b, compute(t, "job.yaml", stair345(c.lowerFinish))); err != nil {
			t.Fatal(err)
		}
		var out struct {
			Format   string
			Risers   int
			UnitRise float64 `json:"unit_rise_mm"`
			Elements []struct {
				Pitch     float64 `json:"pitch_deg"`
				Stringers []map[string]any
			}
		}
		if err := json.Unmarshal(b.Bytes(), &out); err != nil {
			t.Fatal(err)
		}
		if out.Format != "stepoff-layout/1" || out.Risers != 14 || math.Abs(out.UnitRise-7.5*in) > 1e-4 {
			t.Errorf("format %q, %d risers of %g", out.Format, out.Risers, out.UnitRise)
		}
		flight := out.Elements[0]
		if math.Abs(flight.Pitch-36.869897646) > 1e-9 {
			t.Errorf("pitch %.9f degrees, want 36.869897646, the angle whose tangent is 3/4", flight.Pitch)
		}
		for key, want := range c.want {
			got, ok := flight.Stringers[0][key].(float64)
			if !ok || math.Abs(got-want*in) > 1e-4 {
				t.Errorf("%s = %v, want %.4f (%g in)", key, flight.Stringers[0][key], want*in, want)
			}
		}
		if c.lowerFinish != "0" {
			continue
		}
		testKeys(t, b.Bytes())
		for k, mark := range flight.Stringers[0]["marks_mm"].([]any) {
			if want := (3.6 + 12.5*float64(k)) * in; math.Abs(mark.(float64)-want) > 1e-4 {
				t.Errorf("tip %d at %v, want %.4f", k+1, mark, want)
			}
		}
	}
}

// testKeys holds the names scripts rest on, in their order.
func testKeys(t *testing.T, text []byte) {
	t.Helper()
	top, values := object(t, text)
	elements := array(t, values["elements"])
	flight, inFlight := object(t, elements[0])
	stringer, inStringer := object(t, array(t, inFlight["stringers"])[0])
	saw, _ := object(t, inStringer["saw"])
	square, _ := object(t, inStringer["square"])
	for _, c := range []struct {
		of   string
		have []string
		want string
	}{
		{"the layout", top, "format job code total_rise_mm risers unit_rise_mm elements findings"},
		{"a flight", flight, "kind name risers treads unit_run_mm total_run_mm pitch_deg start_level_mm end_level_mm plan tread_levels_mm stringers cut_list unit_rise_mm outline_mm"},
		{"a stringer", stringer, "name build count positions stock width_mm thickness_mm step_mm notch_depth_mm throat_mm bottom_drop_mm first_riser_cut_mm last_tread_cut_mm seat_cut_mm head_cut_mm least_blank_mm stock_length_mm marks_mm outline_mm roots_mm square saw"},
		{"a square", square, "tongue_mm blade_mm drift_mm drift_rise_mm"},
		{"a saw under a code without a throat limit", saw, "uncut_far_face_mm stop_face_mm"},
	} {
		if diff := cmp.Diff(strings.Fields(c.want), c.have); diff != "" {
			t.Errorf("keys of %s (-want +have):\n%s", c.of, diff)
		}
	}
}

// object returns the keys of a JSON object in their order, and its values.
func object(t *testing.T, text []byte) (keys []string, values map[string]json.RawMessage) {
	t.Helper()
	if err := json.Unmarshal(text, &values); err != nil {
		t.Fatal(err)
	}
	dec := json.NewDecoder(bytes.NewReader(text))
	if _, err := dec.Token(); err != nil {
		t.Fatal(err)
	}
	for dec.More() {
		key, err := dec.Token()
		if err != nil {
			t.Fatal(err)
		}
		keys = append(keys, key.(string))
		var skipped json.RawMessage
		if err := dec.Decode(&skipped); err != nil {
			t.Fatal(err)
		}
	}
	return keys, values
}

func array(t *testing.T, text []byte) (values []json.RawMessage) {
	t.Helper()
	if err := json.Unmarshal(text, &values); err != nil || len(values) == 0 {
		t.Fatalf("no list: %v", err)
	}
	return values
}

// Where the plumb cuts differ with the foot, each outline has its own.
func TestShortStringersEachTheirOwn(t *testing.T) {
	var b bytes.Buffer
	s := compute(t, "job.yaml", `
units: imperial
levels: {total_rise: 15", header_depth: 11 1/4"}
stairway: [{flight: {risers: 2, run: 10"}}]
tread: {thickness: 1 1/2"}
riser: open
stringer: {stock: 2x12, foot_levels: [1/2", 0, -1/2"]}
`)
	if err := report.Text(&b, s, &rules.Code{Name: rules.None}, measure.Style{}); err != nil {
		t.Fatal(err)
	}
	if !regexp.MustCompile(`(?m)^  plumb cut at the head +5 1/2 +6 +6 1/2$`).MatchString(b.String()) {
		t.Errorf("no row with the three plumb cuts:\n%s", b.String())
	}
}

// Every example reads on one screen of a plain terminal a flight, one and a
// half a curve or a turn of winders with all they are framed with, half a one a
// landing, and never says anything that is no figure.
func TestTextFitsTheScreen(t *testing.T) {
	const wide, high = 80, 48
	examples, err := filepath.Glob("../../examples/*.yaml")
	if err != nil || len(examples) == 0 {
		t.Fatalf("no examples: %v", err)
	}
	for _, path := range examples {
		text, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		s := compute(t, path, string(text))
		for _, denominator := range []int{16, 64} {
			var b bytes.Buffer
			if err := report.Text(&b, s, &rules.Code{Name: rules.None}, measure.Style{Units: s.Job.Units, Denominator: denominator}); err != nil {
				t.Fatal(err)
			}
			lines := strings.Split(strings.TrimRight(b.String(), "\n"), "\n")
			if most := high*len(s.Flights()) + high*3/2*(len(s.Curves())+len(s.Winders())) + high/2*len(s.Landings()); len(lines) > most {
				t.Errorf("%s: %d lines, more than %d", path, len(lines), most)
			}
			for i, line := range lines {
				if len([]rune(line)) > wide {
					t.Errorf("%s:%d is %d characters wide: %s", path, i+1, len([]rune(line)), line)
				}
				for _, bad := range []string{"NaN", "Inf", measure.Unknown, "%!"} {
					if strings.Contains(line, bad) {
						t.Errorf("%s:%d says %s: %s", path, i+1, bad, line)
					}
				}
			}
		}
	}
}
