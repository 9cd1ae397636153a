package report_test

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"stepoff/layout/report"
	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

// uStair is a U with a landing that is, or is not, built already.
func uStair(built string) string {
	return `
units: imperial
levels: {total_rise: 105"}
width: 36"
stairway:
  - flight: {risers: 7, run: 10"}
  - landing: {turn: right, angle: 180, gap: 4", finish: 3/4", joists: 2x8` + built + `}
  - flight: {risers: 7, run: 10"}
tread: {thickness: 1", nosing: 1"}
riser: {thickness: 3/4"}
stringer: {stock: 2x12}
`
}

// The keys of a landing that scripts rest on, in their order, and the names of
// the members; the outline by hand: 36 and 1 3/4 deep, two flights and the gap
// wide, to the right.
func TestLandingJSON(t *testing.T) {
	var b bytes.Buffer
	if err := writeJSON(&b, compute(t, "job.yaml", uStair(""))); err != nil {
		t.Fatal(err)
	}
	top, values := object(t, b.Bytes())
	if diff := cmp.Diff(strings.Fields("format job code total_rise_mm risers unit_rise_mm elements findings"), top); diff != "" {
		t.Errorf("keys of the layout (-want +have):\n%s", diff)
	}
	var names []string
	elements := array(t, values["elements"])
	for _, e := range elements {
		var named struct{ Kind, Name string }
		if err := json.Unmarshal(e, &named); err != nil {
			t.Fatal(err)
		}
		names = append(names, named.Kind+" "+named.Name)
	}
	if diff := cmp.Diff([]string{"flight flight-1", "landing landing-1", "flight flight-2"}, names); diff != "" {
		t.Errorf("members (-want +have):\n%s", diff)
	}
	keys, landing := object(t, elements[1])
	if diff := cmp.Diff(strings.Fields("kind name level_mm framing_level_mm outline_mm turn_deg clear_length_mm clear_width_mm framing"), keys); diff != "" {
		t.Errorf("keys of a landing (-want +have):\n%s", diff)
	}
	var got struct {
		Level   float64 `json:"level_mm"`
		Framing float64 `json:"framing_level_mm"`
		Turn    float64 `json:"turn_deg"`
	}
	if err := json.Unmarshal(elements[1], &got); err != nil {
		t.Fatal(err)
	}
	if got.Level != 52.5*25.4 || got.Framing != 51.75*25.4 || got.Turn != -180 {
		t.Errorf("%+v", got)
	}
	var outline [][2]float64
	if err := json.Unmarshal(landing["outline_mm"], &outline); err != nil {
		t.Fatal(err)
	}
	for i, p := range [][2]float64{{58, 60}, {58, 97.75}, {-18, 97.75}, {-18, 60}} {
		for k := range p {
			if want := p[k] * 25.4; measure.SnapMM(outline[i][k]) != measure.SnapMM(want) {
				t.Errorf("corner %d: %v, want %v in", i+1, outline[i], p)
			}
		}
	}
}

// With a landing built there is no one unit rise, and none is given; text and
// cut list name every part.
func TestBuiltLandingReport(t *testing.T) {
	var b bytes.Buffer
	s := compute(t, "job.yaml", uStair(`, built_level: 52"`))
	if err := writeJSON(&b, s); err != nil {
		t.Fatal(err)
	}
	top, _ := object(t, b.Bytes())
	if diff := cmp.Diff(strings.Fields("format job code total_rise_mm risers elements findings"), top); diff != "" {
		t.Errorf("keys of the layout (-want +have):\n%s", diff)
	}
	b.Reset()
	if err := report.Text(&b, s, &rules.Code{Name: rules.None}, measure.Style{}); err != nil {
		t.Fatal(err)
	}
	for _, line := range []string{
		"\n  risers                   7 at 7 7/16- (7.429\"), then 7 at 7 9/16+ (7.571\")\n",
		"\nflight-1: 7 risers from the lower floor to landing-1\n",
		"\nlanding-1: a half turn to the right, 7 risers up\n",
		"\n  built already            at 52; one unit rise for the whole stair would",
		"\n flight-2\n",
	} {
		if !strings.Contains(b.String(), line) {
			t.Errorf("no %q in:\n%s", line, b.String())
		}
	}
}
