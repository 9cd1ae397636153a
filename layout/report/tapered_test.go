package report_test

import (
	"bytes"
	"encoding/json"
	"maps"
	"math"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"stepoff/layout/report"
	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

// example is the JSON of an example's layout.
func example(t *testing.T, name string) []byte {
	t.Helper()
	path := "../../examples/" + name
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	if err := writeJSON(&b, compute(t, path, string(text))); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// The names scripts rest on, in their order.
func TestTaperedKeys(t *testing.T) {
	_, values := object(t, example(t, "winder-l.yaml"))
	winders, inWinders := object(t, array(t, values["elements"])[1])
	tread, inTread := object(t, array(t, inWinders["treads"])[0])
	board, _ := object(t, inTread["board"])
	measured, _ := object(t, inWinders["measured"])
	_, values = object(t, example(t, "curved.yaml"))
	curve, inCurve := object(t, array(t, values["elements"])[0])
	curveTread, _ := object(t, array(t, inCurve["treads"])[0])
	const treadKeys = "name level_mm outline_mm nosing_mm walkline_mm narrow_mm wide_mm angle_deg board"
	for _, c := range []struct {
		of   string
		have []string
		want string
	}{
		{"winders", winders, "kind name setback_mm pivot_mm treads boxes wall_marks nosing_marks wall_strings housed_strings framing_cut_list lines turn_deg corner_mm unit_rise_mm outline_mm measured cut_list"},
		{"a winder", tread, treadKeys},
		{"a board", board, "outline_mm length_mm depth_mm"},
		{"where it is measured", measured, "walklines_mm along narrow_at_mm least_walkline_mm least_narrow_mm"},
		{"a curve", curve, "kind name inside_radius_mm outside_radius_mm treads studs plates strings bearers plate_sheets framing_cut_list risers unit_rise_mm start_level_mm end_level_mm tread_levels_mm turn_deg plan centre_mm outline_mm measured cut_list"},
		{"a curve's tread", curveTread, treadKeys},
	} {
		if diff := cmp.Diff(strings.Fields(c.want), c.have); diff != "" {
			t.Errorf("keys of %s (-want +have):\n%s", c.of, diff)
		}
	}
}

// Two figures of the curve worked by hand: the chord on the walkline between
// nosings moved by b + p is that between the riser lines, 2 x 72 in x sin(125/30
// degrees); the outlines of its treads together cover the piece of the ring
// between the radii.
func TestCurveJSON(t *testing.T) {
	const in = 25.4
	var out struct {
		Elements []struct {
			Inside  float64   `json:"inside_radius_mm"`
			Outside float64   `json:"outside_radius_mm"`
			Levels  []float64 `json:"tread_levels_mm"`
			Treads  []struct {
				Level    float64      `json:"level_mm"`
				Outline  [][2]float64 `json:"outline_mm"`
				Walkline float64      `json:"walkline_mm"`
			}
		}
	}
	if err := json.Unmarshal(example(t, "curved.yaml"), &out); err != nil {
		t.Fatal(err)
	}
	c := out.Elements[0]
	if c.Inside != 60*in || c.Outside != 100*in || len(c.Treads) != 15 {
		t.Fatalf("radii %g and %g, %d treads", c.Inside, c.Outside, len(c.Treads))
	}
	area := 0.0
	for k, tread := range c.Treads {
		if want := 7.25 * in * float64(k+1); math.Abs(tread.Level-want) > 1e-6 || tread.Level != c.Levels[k] {
			t.Errorf("tread %d at %g and %g, want %g", k+1, tread.Level, c.Levels[k], want)
		}
		if want := 2 * 72 * in * math.Sin(125.0/30*math.Pi/180); math.Abs(tread.Walkline-want) > 1e-5 {
			t.Errorf("tread %d is %g deep on the walkline, want %g", k+1, tread.Walkline, want)
		}
		for i, p := range tread.Outline {
			q := tread.Outline[(i+1)%len(tread.Outline)]
			area += (p[0]*q[1] - p[1]*q[0]) / 2
		}
	}
	ring := 125.0 / 360 * math.Pi * (100*100 - 60*60) * in * in
	// The points stay within 0.1 mm of arcs 2.2 and 1.3 of a radius long.
	if within := 0.1 * 125 / 180 * math.Pi * (100 + 60) * in; math.Abs(area-ring) > within {
		t.Errorf("the treads cover %g, the piece of the ring %g", area, ring)
	}
}

// Whatever the winders and the curve are, their figures fit a plain terminal.
func TestTaperedTextFits(t *testing.T) {
	for _, members := range []string{
		`[{flight: {risers: 4, run: 10"}}, {winders: {turn: right, treads: 5, lines: even, framing: none}}, {flight: {risers: 6, run: 10"}}]`,
		`[{flight: {risers: 1}}, {winders: {turn: right, angle: 47.3, treads: 2, setback: 13 5/64"}}, {flight: {risers: 12, run: 10"}}]`,
		`[{curve: {turn: left, risers: 14, inside_radius: 2', angle: 207.37, lamination: 1"}}]`,
		`[{curve: {turn: left, risers: 14, inside_radius: 40', angle: 25, layers: 3}}]`,
	} {
		for _, units := range []string{"imperial", "metric"} {
			s := compute(t, "job.yaml", `
units: `+units+`
code: none
levels: {total_rise: 97 1/2"}
width: 40"
stairway: `+members+`
tread: {thickness: 1", nosing: 1"}
riser: {thickness: 3/4"}
stringer: {stock: 2x12}
`)
			var b bytes.Buffer
			if err := report.Text(&b, s, &rules.Code{Name: rules.None}, measure.Style{Units: s.Job.Units, Denominator: 64}); err != nil {
				t.Fatal(err)
			}
			for _, line := range strings.Split(b.String(), "\n") {
				if len([]rune(line)) > 80 || strings.Contains(line, "NaN") || strings.Contains(line, measure.Unknown) || strings.Contains(line, "%!") {
					t.Errorf("%s: %s", members, line)
				}
			}
		}
	}
}

// A landing between curves, winders behind a flight of one riser and a turn to
// the right with even lines are written like any other.
func TestTaperedText(t *testing.T) {
	for _, c := range []struct{ members, want string }{
		{`[{curve: {turn: left, risers: 7, inside_radius: 5', angle: 60}}, {landing: {turn: right}}, {curve: {turn: right, risers: 7, inside_radius: 5', angle: 60}}]`,
			"curve-2: 7 risers from landing-1 to the upper floor"},
		{`[{flight: {risers: 1}}, {winders: {turn: right, treads: 3, lines: even}}, {flight: {risers: 11, run: 10"}}]`,
			"winders-1: a quarter turn to the right, 3 winders, 1 riser up"},
		{`[{flight: {risers: 3, run: 10"}}, {winders: {turn: right, angle: 60, treads: 2, setback: 12"}}, {flight: {risers: 10, run: 10"}}]`,
			"set-back                 12, before and after the inside corner: as stated"},
	} {
		s := compute(t, "job.yaml", `
units: imperial
levels: {total_rise: 97 1/2"}
width: 36"
stairway: `+c.members+`
tread: {thickness: 1", nosing: 1"}
riser: {thickness: 3/4"}
stringer: {stock: 2x12}
`)
		var b bytes.Buffer
		if err := report.Text(&b, s, &rules.Code{Name: rules.None}, measure.Style{}); err != nil {
			t.Fatal(err)
		}
		if !strings.Contains(b.String(), c.want) {
			t.Errorf("nothing says %q:\n%s", c.want, b.String())
		}
	}
}

// Every key that winders and curves have in the JSON stands in the README's
// reference.
func TestReadmeNamesTaperedKeys(t *testing.T) {
	readme, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	var check func(v any)
	missing := map[string]bool{}
	check = func(v any) {
		switch v := v.(type) {
		case []any:
			for _, each := range v {
				check(each)
			}
		case map[string]any:
			for key, value := range v {
				if !bytes.Contains(readme, []byte("`"+key+"`")) {
					missing[key] = true
				}
				check(value)
			}
		}
	}
	for _, name := range []string{"winder-l.yaml", "curved.yaml"} {
		var out struct{ Elements []map[string]any }
		if err := json.Unmarshal(example(t, name), &out); err != nil {
			t.Fatal(err)
		}
		for _, e := range out.Elements {
			if e["kind"] == "winders" || e["kind"] == "curve" {
				check(e)
			}
		}
	}
	if len(missing) > 0 {
		t.Errorf("the README's JSON reference lacks %v", slices.Sorted(maps.Keys(missing)))
	}
}
