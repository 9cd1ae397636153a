package views_test

import (
	"bytes"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"stepoff/layout"
	"stepoff/layout/drawing"
	"stepoff/layout/drawing/svg"
	"stepoff/layout/layouttest"
	"stepoff/layout/views"
	"stepoff/spec"
	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

var update = flag.Bool("update", false, "rewrite the golden drawings; look at the difference before keeping it")

const goldenDir = "../../testdata/golden/views"

// Every view of every example, as SVG: the text is compared, so a difference
// says which line moved. Golden files that no view writes fail.
func TestGoldenViews(t *testing.T) {
	jobs, err := filepath.Glob("../../examples/*.yaml")
	if err != nil || len(jobs) == 0 {
		t.Fatalf("no examples: %v", err)
	}
	written := map[string]bool{}
	for _, path := range jobs {
		s := example(t, path)
		st := measure.Style{Units: s.Job.Units}
		name := strings.TrimSuffix(filepath.Base(path), ".yaml")
		for _, d := range all(s, st) {
			var b bytes.Buffer
			if err := svg.Write(&b, d, svg.Options{Scale: scaleFor(d), Margin: 5, Paper: true}); err != nil {
				t.Fatal(err)
			}
			file := name + "-" + d.Name + ".svg"
			written[file] = true
			golden(t, file, b.Bytes())
		}
	}
	have, err := filepath.Glob(goldenDir + "/*")
	if err != nil {
		t.Fatal(err)
	}
	for _, h := range have {
		if !written[filepath.Base(h)] {
			t.Errorf("%s is no view of any example; remove it", h)
		}
	}
}

// all draws every view of a stairway.
func all(s *layout.Stairway, st measure.Style) []*drawing.Drawing {
	out := []*drawing.Drawing{views.StoryPole(s, st), views.Unfolded(s, st)}
	if s.Job.Width != nil {
		out = append(out, views.Plan(s, st), views.Isometric(s, st))
	}
	for _, e := range s.Elements {
		if d := views.TurnPlan(s, e, st); d != nil {
			out = append(out, d)
		}
	}
	for _, l := range s.Landings() {
		if d := views.Framing(s, l, st); d != nil {
			out = append(out, d)
		}
	}
	for _, f := range s.Flights() {
		out = append(out, views.Elevation(s, f, code(s), st))
		if w := s.Strength(f, code(s)); w != nil && w.Worst() != nil {
			out = append(out, views.Strength(f, w, st), views.SpanChart(f, w, st))
		}
		own := []*drawing.Drawing{}
		for i := range f.Stringers {
			g := &f.Stringers[i]
			own = append(own, views.Template(g, st))
			if i == 0 {
				own = append(own, views.PitchBoard(f, 0, st))
				if f.Treads > 1 {
					own = append(own, views.NotchStrip(g, st))
				}
			}
		}
		for i := range f.Strings {
			own = append(own, views.StringTemplate(&f.Strings[i], st))
		}
		if len(f.Strings) > 0 && f.Strings[0].Housed != nil {
			own = append(own, views.RouterTemplate(f.Strings[0].Housed, st))
		}
		for _, d := range own {
			if len(s.Flights()) > 1 {
				d.Name = f.Name + "-" + d.Name
			}
		}
		out = append(out, own...)
	}
	return append(out, tapered(s, st)...)
}

// tapered draws what only winders and curves have.
func tapered(s *layout.Stairway, st measure.Style) (out []*drawing.Drawing) {
	add := func(ds ...*drawing.Drawing) {
		for _, d := range ds {
			if d != nil {
				out = append(out, d)
			}
		}
	}
	for _, w := range s.Winders() {
		add(views.WindersElevation(s, w, code(s), st))
		for k := range w.Boxes {
			add(views.BoxPlan(w.Name, k+1, &w.Boxes[k], st))
		}
		for _, inside := range [...]bool{false, true} {
			add(views.WallMarks(w.Name, w.Hand(), inside, w.WallMarks, w.UnitRise, st),
				views.WallStrings(w.Name, w.Hand(), inside, w.WallStrings, w.HousedStrings))
		}
	}
	for _, c := range s.Curves() {
		add(views.CurveElevation(s, c, code(s), st))
		if c.Framing != nil {
			add(views.CurveFraming(c))
			for i := range c.Framing.Plates {
				add(views.PlateTemplate(c, &c.Framing.Plates[i]))
			}
		}
		for _, str := range c.Strings {
			add(views.CurveString(c.Name, str.CurveString, st))
		}
	}
	treads := views.Treads(s)
	for k, t := range treads {
		if k > 0 {
			if alike, _ := treads[k-1].Alike(t); alike {
				continue
			}
		}
		add(views.TreadTemplate(t, fmt.Sprintf("Tread %d of %s", t.Number, t.Member), st))
	}
	return out
}

// code is the one that an example names.
func code(s *layout.Stairway) *rules.Code { return codeOf(s.Job) }

func codeOf(job *spec.Job) *rules.Code {
	c, _ := rules.Lookup(job.Code.Name)
	return c
}

// scaleFor prints what shows winders at 1:10, a curve's, a side elevation and a landing's
// frame at 1:20, the whole stairway at 1:40 and everything else as large as it is.
func scaleFor(d *drawing.Drawing) float64 {
	switch {
	case strings.HasPrefix(d.Name, "winders-") && !strings.Contains(d.Name, "-tread-"):
		return 1.0 / 10
	case strings.HasSuffix(d.Name, "-string"):
		return 1.0 / 20
	case strings.HasSuffix(d.Name, "-plan"), strings.HasSuffix(d.Name, "-elevation"), strings.HasSuffix(d.Name, "-framing"):
		return 1.0 / 20
	case strings.HasSuffix(d.Name, "-strength"): // as wide as a page gives it
		return 150 / d.Bounds().Width()
	case d.Name == "plan" || d.Name == "isometric" || d.Name == "unfolded":
		return 1.0 / 40
	}
	return 1
}

func golden(t *testing.T, name string, got []byte) {
	t.Helper()
	path := filepath.Join(goldenDir, name)
	if *update {
		if err := os.MkdirAll(goldenDir, 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, got, 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatalf("%v (go test ./layout/views -update writes it)", err)
	}
	if diff := cmp.Diff(strings.Split(string(want), "\n"), strings.Split(string(got), "\n")); diff != "" {
		t.Errorf("%s differs (-golden +now):\n%s", name, diff)
	}
}

func example(t *testing.T, path string) *layout.Stairway {
	t.Helper()
	s, _ := layouttest.Example(t, path)
	return s
}
