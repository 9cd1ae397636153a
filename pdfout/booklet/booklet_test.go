package booklet

import (
	"bytes"
	"fmt"
	"path/filepath"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"stepoff/layout/drawing"
	"stepoff/layout/geom"
	"stepoff/layout/layouttest"
	"stepoff/layout/lesson"
	"stepoff/pdfout"
	"stepoff/pdfout/html"
	"stepoff/pdfout/pdftest"
	"stepoff/spec"
	"stepoff/spec/measure"
)

func paperFor(t *testing.T, u measure.Units) pdfout.Paper {
	t.Helper()
	size := "letter"
	if u == measure.Metric {
		size = "a4"
	}
	p, err := spec.ParsePaperSize(size, u)
	if err != nil {
		t.Fatal(err)
	}
	return Paper(spec.Paper{Size: p, Margin: measure.Inch / 4, Overlap: measure.Inch / 2, ScaleX: 1, ScaleY: 1})
}

// documents calls each with the lesson of every example, in both units, and with
// sets of exercises and their answers.
func documents(t *testing.T, each func(name string, doc pdfout.Document)) {
	t.Helper()
	jobs, err := filepath.Glob("../../examples/*.yaml")
	if err != nil || len(jobs) == 0 {
		t.Fatalf("no examples: %v", err)
	}
	for _, job := range jobs {
		s, code := layouttest.Example(t, job)
		for _, units := range []measure.Units{measure.Imperial, measure.Metric} {
			doc, err := Lesson(s, Options{Paper: paperFor(t, units), Style: measure.Style{Units: units}, Code: code, Level: lesson.Full})
			if err != nil {
				t.Fatal(err)
			}
			each(fmt.Sprintf("%s, units %d", filepath.Base(job), units), doc)
		}
	}
	for _, units := range []measure.Units{measure.Imperial, measure.Metric} {
		for seed := range uint64(3) {
			problems, answers, err := Exercises(Practice{Seed: seed, Count: 48, Level: lesson.Full, Units: units, Paper: paperFor(t, units)})
			if err != nil {
				t.Fatal(err)
			}
			each(fmt.Sprintf("exercises %d", seed), problems)
			each(fmt.Sprintf("answers %d", seed), answers)
		}
	}
}

// shown calls each with every figure of a document and the rooms it is shown in,
// in millimetres: on its page, and on a screen held in the hand.
func shown(doc pdfout.Document, each func(f pdfout.Figure, room geom.Point)) {
	wide := doc.Paper.Width.MM() - 24
	var walk func(blocks []pdfout.Block, width float64)
	walk = func(blocks []pdfout.Block, width float64) {
		for _, b := range blocks {
			switch b := b.(type) {
			case pdfout.Figure:
				high := b.MaxHeight
				if high == 0 {
					high = 60 // what a step's text leaves
				}
				each(b, geom.Pt(width, high-9))
				each(b, geom.Pt(115, 130))
			case pdfout.Columns:
				walk(b.Left, (width-10)/2)
				walk(b.Right, (width-10)/2)
			case pdfout.Band:
				walk(b.Blocks, width)
			}
		}
	}
	for _, page := range doc.Pages {
		if flow, ok := page.(pdfout.Flow); ok {
			walk(flow.Blocks, wide)
		}
	}
}

// slightly is how much of two writings' boxes may run into each other, as an area
// for each millimetre of height: the boxes are drawn round the tallest letters.
const slightly = 0.4

// Every figure has a caption, and none of its writing runs into another where it
// is shown.
func TestFigures(t *testing.T) {
	documents(t, func(name string, doc pdfout.Document) {
		shown(doc, func(f pdfout.Figure, room geom.Point) {
			where := fmt.Sprintf("%s, %s in %.0f x %.0f mm", name, f.Drawing.Name, room.X, room.Y)
			if f.Drawing.Title == "" && f.Caption == "" {
				t.Errorf("%s has no caption", where)
			}
			scale := pdfout.FitScale(f.Drawing, room)
			var boxes [][]geom.Point
			var texts []string
			for _, it := range f.Drawing.Resolve(scale) {
				text, ok := it.(drawing.Text)
				if !ok {
					continue
				}
				var box []geom.Point
				for _, c := range text.Corners() {
					box = append(box, r2.Add(r2.Scale(scale, text.At), c))
				}
				for k, other := range boxes {
					if common := geom.Common(box, other); len(common) > 2 && geom.Area(common) > slightly*text.Height {
						t.Errorf("%s: %q runs into %q", where, text.Text, texts[k])
					}
				}
				boxes, texts = append(boxes, box), append(texts, text.Text)
			}
		})
	})
}

// A step takes half a page: a lesson of n steps has (n+1)/2 pages of them.
func TestStepsAreHalfPages(t *testing.T) {
	documents(t, func(name string, doc pdfout.Document) {
		for _, page := range doc.Pages {
			flow := page.(pdfout.Flow)
			bands := 0
			for _, b := range flow.Blocks {
				if band, ok := b.(pdfout.Band); ok && band.Of == 2 {
					bands++
				}
			}
			if bands == 0 {
				continue
			}
			alone := doc
			alone.Pages, alone.Attachments = []pdfout.Page{flow}, nil
			var out bytes.Buffer
			if err := pdfout.Write(&out, alone); err != nil {
				t.Fatalf("%s: %v", name, err)
			}
			if got, want := pages(t, out.Bytes()), (bands+1)/2; got != want {
				t.Errorf("%s: %d half pages take %d pages, want %d", name, bands, got, want)
			}
		}
	})
}

func pages(t *testing.T, pdf []byte) int {
	t.Helper()
	f, err := pdftest.Read(pdf)
	if err != nil {
		t.Fatal(err)
	}
	return len(f.Pages)
}

// The same lesson and the same set give the same bytes, on paper and as a page for
// a screen, and both end whole.
func TestSameBytes(t *testing.T) {
	s, code := layouttest.Example(t, "../../examples/attic.yaml")
	written := func(write func(*bytes.Buffer, pdfout.Document) error) string {
		doc, err := Lesson(s, Options{Paper: paperFor(t, measure.Imperial), Style: measure.Style{}, Code: code, Level: lesson.Full})
		if err != nil {
			t.Fatal(err)
		}
		_, answers, err := Exercises(Practice{Seed: 4, Count: 16, Level: lesson.Full, Paper: paperFor(t, measure.Imperial)})
		if err != nil {
			t.Fatal(err)
		}
		var out bytes.Buffer
		for _, d := range []pdfout.Document{doc, answers} {
			if err := write(&out, d); err != nil {
				t.Fatal(err)
			}
		}
		return out.String()
	}
	pdf := func(w *bytes.Buffer, d pdfout.Document) error { return pdfout.Write(w, d) }
	screen := func(w *bytes.Buffer, d pdfout.Document) error { return html.Write(w, d) }
	if one, other := written(pdf), written(pdf); one != other {
		t.Error("two PDF files of the same lesson differ")
	}
	if page, other := written(screen), written(screen); page != other {
		t.Error("two pages of the same lesson differ")
	} else if strings.Count(page, "</html>") != 2 {
		t.Error("a page does not end")
	}
}

// A lesson with models holds sheets that say at which scale they are, and that they
// are not for lumber; a screen refuses them.
func TestModels(t *testing.T) {
	s, code := layouttest.Example(t, "../../examples/deck.yaml")
	doc, err := Lesson(s, Options{Paper: paperFor(t, measure.Imperial), Code: code, Models: []int{2, 4}})
	if err != nil {
		t.Fatal(err)
	}
	n := 0
	for _, page := range doc.Pages {
		if tiling, ok := page.(*pdfout.Tiling); ok {
			n++
			if !strings.Contains(tiling.Part.Title, "not for cutting lumber") || len(tiling.Part.Cautions) == 0 {
				t.Errorf("part %s does not say that it is a model", tiling.Part.Name)
			}
		}
	}
	if n != 2 {
		t.Errorf("%d models, want 2", n)
	}
	if err := html.Write(&bytes.Buffer{}, doc); err == nil {
		t.Error("sheets to cut to are put on a screen")
	}
}
