package layout_test

import (
	"cmp"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"go.yaml.in/yaml/v4"

	"stepoff/layout"
	"stepoff/layout/turn"
	"stepoff/spec"
	"stepoff/spec/measure"
)

// exact is how near a figure must come that the source gives without rounding:
// a ten-thousandth of a millimetre.
const exact = 1e-4

// publishedCase is one row of testdata/published.
type publishedCase struct {
	ID, Tag, Source string
	Job             map[string]string
	Expect          []struct {
		Figure, Value, Within string
		Nearest               int
	}
}

// Every row is a case worked in a published source, or derived from one as its
// tag says; the source stands in the row.
func TestPublished(t *testing.T) {
	files, err := filepath.Glob("../testdata/published/straight*.yaml")
	if err != nil || len(files) == 0 {
		t.Fatalf("no published cases: %v", err)
	}
	files = append(files, "../testdata/published/landings.yaml", "../testdata/published/turns.yaml")
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		var cases []publishedCase
		if err := yaml.Unmarshal(text, &cases); err != nil {
			t.Fatalf("%s: %v", file, err)
		}
		for _, c := range cases {
			t.Run(c.ID, func(t *testing.T) {
				if c.Source == "" || !strings.Contains("FMD", c.Tag) || c.Tag == "" || len(c.Expect) == 0 {
					t.Fatal("a row needs a source, a tag of F, M or D, and something expected")
				}
				c.run(t)
			})
		}
	}
}

func (c publishedCase) run(t *testing.T) {
	s := filled(t, c.jobText())
	for _, e := range c.Expect {
		got, ok := turnFigure(s, e.Figure)
		if !ok {
			got = figure(t, s, e.Figure, e.Nearest)
		}
		want := publishedValue(t, e.Value)
		within := exact
		if e.Figure == "treads" || e.Figure == "risers" {
			within = 0
		} else if e.Within != "exact" {
			within = publishedValue(t, e.Within)
		}
		if !(math.Abs(got-want) <= within) {
			t.Errorf("%s: got %.6f, want %s within %s", e.Figure, got, e.Value, e.Within)
		}
	}
}

// jobText fills the row's few words into a whole job.
func (c publishedCase) jobText() string {
	get := func(key, otherwise string) string {
		if v, ok := c.Job[key]; ok {
			return v
		}
		return otherwise
	}
	riser := get("riser", `{thickness: 3/4"}`)
	stairway := get("stairway", "")
	width := get("width", `36"`)
	nosing := `1"`
	if stairway == "" {
		stairway = fmt.Sprintf("[{flight: {risers: %s, run: %s}}]", get("risers", ""), get("run", ""))
	} else {
		riser, nosing = "open", "0" // old books measure from riser to riser
	}
	return fmt.Sprintf(`
units: %s
code: %s
levels: {total_rise: %s, measured: %s, lower_finish: %s, upper_finish: %s}
width: %s
stairway: %s
tread: {thickness: %s, nosing: %s}
riser: %s
stringer: {stock: %s, head: %s}
`, get("units", "imperial"), get("code", "none"), get("total_rise", ""), get("measured", "finished"), get("lower_finish", "0"), get("upper_finish", "0"),
		width, stairway, get("tread", `1 1/2"`), get("nosing", nosing), riser,
		get("stock", "2x12"), get("head", "hung"))
}

// turnFigure reads one figure off the stairway's first turn of winders, or its first
// curve; ok is false where it is no figure of those.
func turnFigure(s *layout.Stairway, name string) (figure float64, ok bool) {
	var depths spec.Depths
	var l *turn.Laid
	if all := s.Winders(); len(all) > 0 {
		depths, l = all[0].Spec.Depths, all[0].Laid
		if name == "set-back" {
			return all[0].Spec.Setback.MM(), true
		}
	} else if all := s.Curves(); len(all) > 0 {
		depths, l = all[0].Spec.Depths, all[0].Laid
		switch name { // the others are read off a flight
		case "unit rise":
			return all[0].UnitRise, true
		case "top level":
			return all[0].EndLevel, true
		}
	} else {
		return 0, false
	}
	least := func(of func(turn.Tapered) float64) float64 {
		return of(slices.MinFunc(l.Treads, func(a, b turn.Tapered) int { return cmp.Compare(of(a), of(b)) }))
	}
	switch name {
	case "depth on the walkline":
		return least(func(t turn.Tapered) float64 { return t.Walkline }), true
	case "narrow end":
		return least(func(t turn.Tapered) float64 { return t.Narrow }), true
	case "degrees a tread":
		return least(func(t turn.Tapered) float64 { return t.Angle }), true
	case "walklines":
		return float64(len(depths.Walklines)), true
	case "walkline":
		return depths.Walklines[0].MM(), true
	case "second walkline":
		return depths.Walklines[1].MM(), true
	case "least depth on the walkline":
		return depths.LeastWalkline.MM(), true
	case "least narrow end":
		return depths.LeastNarrow.MM(), true
	}
	return 0, false
}

// figure reads one figure off the stairway, in millimetres where it is a
// length.
func figure(t *testing.T, s *layout.Stairway, name string, nearest int) float64 {
	f := s.Flights()[0]
	g := f.Stringers[0]
	switch name {
	case "risers":
		return float64(s.Risers)
	case "total run of flight-1":
		return f.TotalRun
	case "unit rise of flight-2":
		return s.Flights()[1].UnitRise
	case "nineteen unit rises":
		return 19 * f.UnitRise
	case "level of landing-1":
		return s.Landings()[0].Level
	case "riser line to the far wall":
		box, _ := s.Footprint()
		return box.Height()
	case "landing is raised by":
		l := s.Landings()[0]
		return s.TotalRise.PartMM(l.Risers, s.Risers) - l.Level
	case "total rise":
		return s.TotalRise.MM()
	case "unit rise":
		return s.Parts[0].UnitRise()
	case "total run":
		return f.TotalRun
	case "treads":
		return float64(f.Treads)
	case "tread depth":
		return f.Boards[0].Depth
	case "two rises and a run":
		return 2*s.Parts[0].UnitRise() + f.UnitRun.MM()
	case "notches times step":
		return float64(g.Notches) * g.Step
	case "stock length":
		return g.StockLength.MM()
	case "notch depth":
		return g.NotchDepth
	case "throat":
		return g.Throat
	case "bottom drop":
		return g.BottomDrop
	case "first riser cut":
		return g.FirstRiserCut
	case "top level":
		return s.Level(s.Risers)
	case "rounded rise overshoots by":
		rise, ok := measure.FromMM(s.Parts[0].UnitRise())
		if !ok {
			t.Fatalf("unit rise %g is no length", s.Parts[0].UnitRise())
		}
		rounded, _ := rise.Nearest(nearest)
		return rounded.MM()*float64(s.Risers) - s.TotalRise.MM()
	}
	t.Fatalf("no figure is called %q", name)
	return 0
}

func publishedValue(t *testing.T, text string) float64 {
	t.Helper()
	l, err := measure.Parse(text, measure.Imperial)
	if err != nil {
		t.Fatal(err)
	}
	if !strings.ContainsAny(text, `"'m`) {
		return l.In() // a count
	}
	return l.MM()
}

// compute loads a job text and lays it out.
func compute(t interface {
	Helper()
	Fatal(...any)
}, text string) *layout.Stairway {
	t.Helper()
	job, err := spec.Load("job.yaml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	s, err := layout.Compute(job)
	if err != nil {
		t.Fatal(err)
	}
	return s
}
