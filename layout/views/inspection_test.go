package views_test

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"stepoff/layout/asbuilt"
	"stepoff/layout/drawing"
	"stepoff/layout/drawing/svg"
	"stepoff/layout/geom"
	"stepoff/layout/views"
	"stepoff/spec"
	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

const inspectionGolden = "../../testdata/golden/inspection"

// The drawing of every measured stair of the examples, as SVG. A golden file
// that none of them writes any more fails.
func TestGoldenInspections(t *testing.T) {
	names, err := filepath.Glob("../../examples/as-built/*.yaml")
	if err != nil || len(names) == 0 {
		t.Fatalf("no measured stairs among the examples: %v", err)
	}
	written := map[string]bool{}
	for _, name := range names {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		a, err := spec.LoadAsBuilt(name, text)
		if err != nil {
			t.Fatal(err)
		}
		var got bytes.Buffer
		if err := svg.Write(&got, draw(t, a, a.Code.Name), svg.Options{Scale: 1.0 / 20}); err != nil {
			t.Fatal(err)
		}
		file := strings.TrimSuffix(filepath.Base(name), ".yaml") + ".svg"
		written[file] = true
		path := filepath.Join(inspectionGolden, file)
		if *update {
			if err := os.MkdirAll(inspectionGolden, 0o755); err != nil {
				t.Fatal(err)
			}
			if err := os.WriteFile(path, got.Bytes(), 0o644); err != nil {
				t.Fatal(err)
			}
			continue
		}
		want, err := os.ReadFile(path)
		if err != nil {
			t.Fatalf("%v (go test ./layout/views -update writes it)", err)
		}
		if diff := cmp.Diff(strings.Split(string(want), "\n"), strings.Split(got.String(), "\n")); diff != "" {
			t.Errorf("%s differs (-golden +now):\n%s", file, diff)
		}
	}
	kept, err := os.ReadDir(inspectionGolden)
	if err != nil {
		t.Fatal(err)
	}
	for _, file := range kept {
		if !written[file.Name()] {
			t.Errorf("%s is no example's; remove it", file.Name())
		}
	}
}

type fataler interface {
	Helper()
	Fatal(args ...any)
}

func inspect(t fataler, a *spec.AsBuilt, code string) *asbuilt.Inspection {
	t.Helper()
	c, ok := rules.Lookup(code)
	if !ok {
		t.Fatal("no code " + code)
	}
	in, err := asbuilt.Inspect(a, c, measure.Style{Units: a.Units})
	if err != nil {
		t.Fatal(err)
	}
	return in
}

func draw(t fataler, a *spec.AsBuilt, code string) *drawing.Drawing {
	t.Helper()
	return views.Inspection(inspect(t, a, code), measure.Style{Units: a.Units})
}

// Of any flight every tread is drawn where it was measured, every pad as thick
// as it is, and everything at fault is marked and told.
func TestInspectionShowsWhatIsMeasuredAndWhatIsWrong(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 15).Draw(t, "risers")
		a := &spec.AsBuilt{}
		some := func(what string, least, most, count int) (ls []measure.Length) {
			for range count {
				ls = append(ls, measure.Length(rapid.IntRange(least, most).Draw(t, what))*measure.Inch/16)
			}
			return ls
		}
		a.Risers, a.Treads = some("riser", 104, 124, n), some("tread", 158, 166, n-1)
		if rapid.Bool().Draw(t, "nosings measured") {
			a.Nosings = some("nosing", 10, 22, n)
		}
		in := inspect(t, a, "irc-2021")
		d := views.Inspection(in, measure.Style{})

		x, level := 0.0, 0.0
		boxes := 0
		for _, s := range in.Steps {
			level += s.Riser.MM()
			if !slices.ContainsFunc(lines(d, drawing.Outline), func(e geom.Edge) bool { return near(e.From, geom.Pt(x, level)) && e.To.X > x && e.To.Y == e.From.Y }) {
				t.Fatalf("tread %d is not drawn at %g, %g", s.Number, x, level)
			}
			if s.Pad > 0 && !slices.ContainsFunc(filled(d, drawing.Thin), func(b geom.Box) bool {
				return near(b.Min, geom.Pt(x, level)) && math.Abs(b.Height()-s.Pad.MM()) < 1e-6
			}) {
				t.Fatalf("the pad on tread %d is not drawn", s.Number)
			}
			for _, part := range asbuilt.Parts {
				if s.AtFault(part) {
					boxes++
				}
				if s.AtFault(part) && !says(d, fmt.Sprintf("%d: ", s.Number), part.String()) {
					t.Fatalf("step %d: that its %s is at fault is not told", s.Number, part)
				}
			}
			if len(s.Faults) == 1 && !says(d, fmt.Sprintf("%d: %s", s.Number, s.Faults[0].Text)) {
				t.Fatalf("step %d: %s is not told", s.Number, s.Faults[0].Text)
			}
			if s.Tread != nil {
				x += s.Tread.MM()
			}
		}
		if marked, crossed := len(filled(d, drawing.Mark)), len(lines(d, drawing.Mark)); marked != boxes || crossed != boxes*(4+2) {
			t.Fatalf("%d at fault, %d marked, with %d lines", boxes, marked, crossed)
		}
	})
}

func near(a, b geom.Point) bool { return math.Hypot(a.X-b.X, a.Y-b.Y) < 1e-6 }

func lines(d *drawing.Drawing, layer drawing.Layer) (all []geom.Edge) {
	for _, it := range d.Items {
		if p, ok := it.(drawing.Path); ok && p.Layer == layer {
			all = append(all, p.Edges...)
		}
	}
	return all
}

func filled(d *drawing.Drawing, layer drawing.Layer) (all []geom.Box) {
	for _, it := range d.Items {
		if p, ok := it.(drawing.Path); ok && p.Layer == layer && p.Fill > 0 {
			all = append(all, p.Box())
		}
	}
	return all
}

// says tells whether a line of writing begins with words and holds some others.
func says(d *drawing.Drawing, begins string, holds ...string) bool {
	return slices.ContainsFunc(d.Items, func(it drawing.Item) bool {
		text, ok := it.(drawing.Text)
		ok = ok && strings.HasPrefix(text.Text, begins)
		for _, words := range holds {
			ok = ok && strings.Contains(text.Text, words)
		}
		return ok
	})
}
