package views_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"stepoff/layout/drawing"
	"stepoff/layout/geom"
	"stepoff/layout/views"
	"stepoff/spec/measure"
)

func turningJob(members string) string {
	return "units: imperial\nlevels: {total_rise: 105.25, floor_depth: 11}\nwidth: 36\nsides: [open, wall]\n" +
		"tread: {thickness: 1 1/2, nosing: 1}\nriser: {thickness: 3/4}\nstringer: {stock: 2x12}\nstairway: [" + members + "]\n"
}

// Whatever the turn, its plan numbers every tread, dimensions each depth on the
// walkline and at the narrow end, both set-backs and the clear width, and marks
// the pivot where there is one. The figures are those of the layout.
func TestTurnPlanOfWinders(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		angle, treads := 90, rapid.IntRange(2, 4).Draw(t, "treads")
		if treads == 2 {
			angle = rapid.IntRange(45, 90).Draw(t, "angle")
		}
		lines := rapid.SampledFrom([]string{"radial", "even"}).Draw(t, "lines")
		s := compute(t, turningJob(fmt.Sprintf("{flight: {risers: 4, run: 10}}, {winders: {turn: %s, treads: %d, angle: %d, lines: %s}}, {flight: {run: 10}}",
			rapid.SampledFrom([]string{"left", "right"}).Draw(t, "hand"), treads, angle, lines)))
		w, st := s.Winders()[0], measure.Style{}
		d := views.TurnPlan(s, w, st)
		if err := d.Check(); err != nil {
			t.Fatal(err)
		}
		var dims, texts []string
		for _, it := range d.Items {
			switch it := it.(type) {
			case drawing.Dim:
				dims = append(dims, it.Text)
			case drawing.Text:
				texts = append(texts, it.Text)
			}
		}
		all := strings.Join(dims, "|") + "|"
		words := strings.Join(texts, "|") + "|"
		for k, tread := range w.Treads {
			if !strings.Contains(all, st.InchesMM(tread.Walkline)+"|") || !strings.Contains(words, "narrow "+st.InchesMM(tread.Narrow)+"|") {
				t.Fatalf("tread %d, %s on the walkline and %s narrow, is not dimensioned: %s %s", k+1, st.InchesMM(tread.Walkline), st.InchesMM(tread.Narrow), all, words)
			}
			if !strings.Contains("|"+words, fmt.Sprintf("|%d|", 4+k)) {
				t.Fatalf("tread %d has no number: %s", 4+k, words)
			}
		}
		if n := strings.Count(all, st.Inches(*w.Spec.Setback)+" set-back|"); n != 2 {
			t.Fatalf("the set-back is dimensioned %d times: %s", n, all)
		}
		if !strings.Contains(all, `36" clear|`) || (lines == "radial") != strings.Contains(words, "pivot|") {
			t.Fatalf("clear width or pivot: %s %s", all, words)
		}
	})
}

// A curve's plan and the plan of its stairway have its edges as true arcs.
func TestCurvesAreArcs(t *testing.T) {
	s := compute(t, turningJob("{curve: {turn: right, inside_radius: 60, angle: 130}}"))
	c, st := s.Curves()[0], measure.Style{}
	detail := views.TurnPlan(s, c, st)
	for _, d := range []*drawing.Drawing{views.Plan(s, st), detail} {
		turned := map[float64]float64{} // by radius
		for _, it := range d.Items {
			p, ok := it.(drawing.Path)
			if !ok || p.Layer != drawing.Outline && p.Layer != drawing.Hidden && p.Layer != drawing.Centre {
				continue
			}
			for _, e := range p.Edges {
				if e.IsArc() {
					turned[math.Round(e.Radius*1e6)/1e6] += math.Abs(e.Sweep) * 180 / math.Pi
				}
			}
		}
		for _, r := range []float64{c.Inside, c.Outside} {
			if got := turned[r]; math.Abs(got-130) > 2 { // less the gap of the break line
				t.Errorf("%s: %g degrees are drawn at a radius of %g: %v", d.Name, got, r, turned)
			}
		}
		if got := turned[c.Inside+304.8]; math.Abs(got-130) > 1 {
			t.Errorf("%s: %g degrees of the walkline are drawn: %v", d.Name, got, turned)
		}
	}
	for _, want := range []string{`inside radius 5' 0"`, "130 degrees", `36" clear`} {
		if !saysOrDims(detail, want) {
			t.Errorf("%q is not on the curve's plan", want)
		}
	}
}

func saysOrDims(d *drawing.Drawing, words string) bool {
	for _, it := range d.Items {
		switch it := it.(type) {
		case drawing.Dim:
			if it.Text == words {
				return true
			}
		case drawing.Text:
			if it.Text == words {
				return true
			}
		}
	}
	return false
}

// The way up goes along the walkline on tapered treads and up the middle of
// flights, in one line from the first riser to the last.
func TestWayUpIsOneLine(t *testing.T) {
	s := compute(t, turningJob("{flight: {risers: 5, run: 10}}, {winders: {turn: left, treads: 3}}, {flight: {risers: 1, run: 10}}, {winders: {turn: left, treads: 3}}, {flight: {run: 10}}"))
	var ends [][2]geom.Point
	walk := 0
	for _, it := range views.Plan(s, measure.Style{}).Items {
		p, ok := it.(drawing.Path)
		if !ok || p.Closed {
			continue
		}
		if p.Layer == drawing.Centre {
			walk++
		}
		if n := len(p.Edges); p.Layer == drawing.Centre || n > 0 && p.Layer == drawing.Thin && len(ends) > 0 && p.Edges[0].From == ends[len(ends)-1][1] {
			ends = append(ends, [2]geom.Point{p.Edges[0].From, p.Edges[n-1].To})
		}
	}
	if walk != 2 {
		t.Fatalf("%d walklines are drawn", walk)
	}
	for i := 1; i < len(ends); i++ {
		if ends[i][0] != ends[i-1][1] {
			t.Errorf("the way up breaks off at %v and goes on at %v", ends[i-1][1], ends[i][0])
		}
	}
	f := s.Flights()[2]
	if end := ends[len(ends)-1][1]; math.Hypot(end.X-f.X, 0) > 1e-6 {
		t.Errorf("it ends at %v, not up the middle of the last flight, x = %g", end, f.X)
	}
}

// Two quarter turns with one riser between them, winders at the very top and at the
// very foot: the words at the levels beside the unfolded elevation do not lie
// on each other at 1:64.
func TestUnfoldedLevelsAreApart(t *testing.T) {
	const clear = drawing.Small * 64
	for _, members := range []string{
		`{flight: {risers: 5}}, {winders: {turn: left, treads: 3}}, {flight: {risers: 1}}, {winders: {turn: left, treads: 3}}, {flight: {risers: 5}}`,
		`{flight: {risers: 12}}, {winders: {turn: right, treads: 3}}, {flight: {risers: 1}}`,
		`{flight: {risers: 1}}, {winders: {turn: right, treads: 3}}, {flight: {risers: 12}}`,
	} {
		s := compute(t, turningJob(members))
		var at []float64
		for _, it := range views.Unfolded(s, measure.Style{}).Items {
			if text, ok := it.(drawing.Text); ok {
				at = append(at, text.At.Y)
			}
		}
		slices.Sort(at)
		if len(at) < 3 {
			t.Fatalf("%s: %d levels", members, len(at))
		}
		for k := 1; k < len(at); k++ {
			if at[k]-at[k-1] < clear {
				t.Errorf("%s: levels' words %.0f and %.0f mm up are too near", members, at[k-1], at[k])
			}
		}
	}
}
