package views_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"stepoff/layout"
	"stepoff/layout/drawing"
	"stepoff/layout/geom"
	"stepoff/layout/views"
	"stepoff/spec"
	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

// A stair of so many risers of 7" and runs of 10", its nosings 1 3/4" before the
// risers.
func plainStair(t *testing.T, risers int, sides string) (*layout.Stairway, *layout.Flight) {
	t.Helper()
	text := fmt.Sprintf("units: imperial\nlevels: {total_rise: %d}\nwidth: 36\nsides: %s\n"+
		"stairway: [flight: {risers: %d, run: 10}]\ntread: {thickness: 1, nosing: 1}\nriser: {thickness: 3/4}\nstringer: {stock: 2x12}\n", 7*risers, sides, risers)
	job, err := spec.Load("job.yaml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	s, err := layout.Compute(job)
	if err != nil {
		t.Fatal(err)
	}
	return s, s.Flights()[0]
}

// The band is drawn where the code asks for a rail, and stands plumb over the
// first and the last nosing at its heights: 2021 IRC R311.7.8 (4 risers; 34" to
// 38") and R312.1 (a drop over 30"; 34" at the open side of a stair).
func TestRails(t *testing.T) {
	irc, _ := rules.Lookup("irc-2021")
	guards, err := rules.Read("guards.yaml", []byte("title: Guards higher than handrails\nbase: irc-2021\nlimits:\n  guard-stair-height-min: 42 in\n"))
	if err != nil {
		t.Fatal(err)
	}
	adk, _ := rules.Lookup("uk-adk")
	for _, tt := range []struct {
		name    string
		risers  int
		sides   string
		code    *rules.Code
		heights []float64 // inches
		words   string
	}{
		{"no code", 8, "[wall, open]", nil, nil, ""},
		{"too few risers", 3, "[wall, open]", irc, nil, ""},
		{"between walls", 8, "[wall, wall]", irc, []float64{34, 38}, `handrail 34" to 38"`},
		{"open, a low drop", 5, "[wall, open]", irc, []float64{34, 38}, `handrail 34" to 38"`},
		{"open", 8, "[wall, open]", irc, []float64{34, 38}, `handrail 34" to 38"; guard, at least 34"`},
		{"a guard above the band", 8, "[open, open]", guards, []float64{34, 38, 42}, `handrail 34" to 38"; guard, at least 42"`},
		{"from how many risers is not known", 8, "[wall, wall]", adk, []float64{900 / 25.4, 1000 / 25.4}, `any handrail 35 7/16"- to 39 3/8"-`},
	} {
		t.Run(tt.name, func(t *testing.T) {
			s, f := plainStair(t, tt.risers, tt.sides)
			d := views.Elevation(s, f, tt.code, measure.Style{Units: measure.Imperial})
			const in = 25.4
			var heights []float64
			for _, e := range lines(d, drawing.Thin) {
				from, to := geom.Pt(-1.75*in, 7*in), geom.Pt((10*float64(tt.risers-1)-1.75)*in, 7*in*float64(tt.risers))
				h := e.From.Y - from.Y
				if math.Abs(e.From.X-from.X)+math.Abs(e.To.X-to.X)+math.Abs(e.To.Y-to.Y-h) < 1e-6 {
					heights = append(heights, h/in)
				}
			}
			if !slices.EqualFunc(heights, tt.heights, func(a, b float64) bool { return math.Abs(a-b) < 1e-6 }) {
				t.Errorf("lines at %v, want %v", heights, tt.heights)
			}
			words := ""
			for _, it := range d.Items {
				if text, ok := it.(drawing.Text); ok && (strings.Contains(text.Text, "handrail") || strings.Contains(text.Text, "guard")) {
					words += text.Text
				}
			}
			if words != tt.words {
				t.Errorf("says %q, want %q", words, tt.words)
			}
		})
	}
}

// What is known from memory only says so on the drawing.
func TestRailsToVerify(t *testing.T) {
	irc, _ := rules.Lookup("irc-2021")
	unsure := *irc
	unsure.Limits = slices.Clone(irc.Limits)
	for i := range unsure.Limits {
		if unsure.Limits[i].Key == rules.HandrailHeightMax {
			unsure.Limits[i].Basis = rules.FromMemory
		}
	}
	s, f := plainStair(t, 8, "[wall, open]")
	if d := views.Elevation(s, f, &unsure, measure.Style{Units: measure.Imperial}); !says(d, `handrail 34" to 38" (verify); guard, at least 34"`) {
		t.Error("a height from memory is not marked")
	}
}
