package packet

import (
	"bytes"
	"errors"
	"maps"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"stepoff/layout"
	"stepoff/layout/geom"
	"stepoff/layout/layouttest"
	"stepoff/pdfout"
	"stepoff/pdfout/pdftest"
	"stepoff/spec"
	"stepoff/spec/measure"
)

// trueSize is how near a line on paper must be to where it belongs: a hundredth
// of a millimetre, a tenth of the finest pencil line.
const trueSize = 0.01

// stair345 is the stair whose figures can be checked by hand; the other jobs
// are the examples.
const stair345 = `
name: Three four five
units: imperial
levels: {total_rise: 105"}
width: 36"
stairway:
  - flight: {risers: 14, run: 10"}
tread: {thickness: 1 1/2", nosing: 1"}
riser: {thickness: 3/4"}
stringer: {stock: 2x12, kicker: 2x4, ledger: 2x4}
`

func jobs(t testing.TB) map[string]*layout.Stairway {
	t.Helper()
	texts := map[string]string{"3-4-5": stair345}
	examples, err := filepath.Glob("../../examples/*.yaml")
	if err != nil || len(examples) == 0 {
		t.Fatalf("no examples: %v", err)
	}
	for _, path := range examples {
		text, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		texts[filepath.Base(path)] = string(text)
	}
	all := map[string]*layout.Stairway{}
	for name, text := range texts {
		all[name] = laidOut(t, name, text)
	}
	return all
}

// laidOut lays a job out as the command does: what it leaves open is chosen under
// its code.
func laidOut(t testing.TB, name, text string) *layout.Stairway {
	t.Helper()
	s, _ := layouttest.Stairway(t, name, text)
	return s
}

// stringerJobs are those that have stringers: the others have curves only.
func stringerJobs(t testing.TB) map[string]*layout.Stairway {
	all := jobs(t)
	maps.DeleteFunc(all, func(_ string, s *layout.Stairway) bool { return len(s.Flights()) == 0 })
	return all
}

// printed is one template's set, and the pages it was read back from.
type printed struct {
	serves []served // stringers cut from it; none for another part
	tiling *pdfout.Tiling
	file   *pdftest.File
	bytes  []byte
	first  int // index of the part's first page
}

// sheet is the lines of one sheet, laid back where they belong on the blank.
func (p printed) sheet(i int, layers ...string) []pdftest.Path {
	tl := p.tiling
	paths := p.file.Pages[p.first+i].Unplace(pdftest.Laid{
		Window: tl.Sheets[i].Window, Turned: tl.Turned, Margin: tl.Paper.Margin.MM(),
		ScaleX: tl.Paper.ScaleX, ScaleY: tl.Paper.ScaleY,
	})
	var out []pdftest.Path
	for _, l := range layers {
		out = append(out, pdftest.Layer(paths, l)...)
	}
	return out
}

func (p printed) all(layers ...string) []pdftest.Path {
	var out []pdftest.Path
	for i := range p.tiling.Sheets {
		out = append(out, p.sheet(i, layers...)...)
	}
	return out
}

// print prints a part of a job on the paper: one set for each of its drawings,
// a stringer's outlines in their order.
func print(t *testing.T, s *layout.Stairway, part string, size string, margin measure.Length) []printed {
	t.Helper()
	on := s.Job.Paper
	paperSize, err := spec.ParsePaperSize(size, measure.Imperial)
	if err != nil {
		t.Fatal(err)
	}
	on.Size, on.Margin = paperSize, margin
	st := measure.Style{Units: s.Job.Units}
	var b bytes.Buffer
	if err := Write(&b, s, Options{Parts: []string{part}, Paper: on, Style: st}); err != nil {
		t.Fatal(err)
	}
	file := pdftest.MustRead(t, b.Bytes())
	parts, err := pick(s, nil, st, []string{part})
	if err != nil {
		t.Fatal(err)
	}
	var all []printed
	first := 1 // after the cover
	for _, p := range parts {
		tiling, err := p.plan(paper(on), st.Units)
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, printed{tiling: tiling, file: file, bytes: b.Bytes(), first: first})
		first += len(tiling.Sheets)
	}
	if first != len(file.Pages) {
		t.Fatalf("%d pages for a cover and %d sheets", len(file.Pages), first-1)
	}
	if part == partStringer {
		for i, own := range templates(s.Flights(), sameOutline, everyOutline) {
			all[i].serves = own.serves
		}
	}
	return all
}

// outline is a stringer's outline as edges of the template: q runs down.
func outline(g *layout.Group) []geom.Edge {
	var out []geom.Edge
	for i, p := range g.Outline {
		q := g.Outline[(i+1)%len(g.Outline)]
		out = append(out, geom.Line(geom.Pt(p.X, -p.Y), geom.Pt(q.X, -q.Y)))
	}
	return out
}

// Read back from one page of a roll, 12 in wide and 11 1/4 in wide without a
// margin, every edge of every outline stands at true size.
func TestOutlineOnARoll(t *testing.T) {
	for name, s := range stringerJobs(t) {
		for size, margin := range map[string]measure.Length{`roll 12"`: measure.Inch / 4, `roll 11 1/4"`: 0} {
			for _, p := range print(t, s, "stringer", size, margin) {
				if got := len(p.tiling.Sheets); got != 1 {
					t.Errorf("%s, %s on %s: %d sheets, want one", name, p.tiling.Part.Name, size, got)
					continue
				}
				for _, own := range p.serves {
					if err := pdftest.Missing(outline(own.g), p.sheet(0, "Cut", "Lumber"), trueSize); err != nil {
						t.Errorf("%s, %s of %s on %s: %v", name, own.g.Name, own.f.Name, size, err)
					}
				}
			}
		}
	}
}

// Pieced together from letter sheets, nothing that is cut is missing, and no
// cut is there that is not the stringer's.
func TestOutlineFromLetterSheets(t *testing.T) {
	for name, s := range stringerJobs(t) {
		for _, p := range print(t, s, "stringer", "letter", measure.Inch/4) {
			drawn := p.all("Cut")
			for _, own := range p.serves {
				g := own.g
				var cuts, lines []geom.Edge
				for _, e := range outline(g) {
					if !onStockEdge(g, e) {
						cuts = append(cuts, e)
					}
				}
				for _, c := range g.Cuts {
					lines = append(lines, geom.Line(geom.Pt(c.From.X, -c.From.Y), geom.Pt(c.To.X, -c.To.Y)))
				}
				if err := pdftest.Missing(append(cuts, lines...), drawn, trueSize); err != nil {
					t.Errorf("%s, %s of %s: %v", name, g.Name, own.f.Name, err)
				}
				if err := pdftest.Extra(drawn, lines, trueSize); err != nil {
					t.Errorf("%s, %s of %s: %v", name, g.Name, own.f.Name, err)
				}
			}
			for i := range p.tiling.Sheets {
				if len(p.sheet(i, "Cut", "Mark")) == 0 {
					t.Errorf("%s, %s: sheet %s shows no cut and no mark", name, p.tiling.Part.Name, p.tiling.Sheets[i].Name)
				}
			}
		}
	}
}

// onStockEdge tells whether an edge of the outline is the board's own.
func onStockEdge(g *layout.Group, e geom.Edge) bool {
	return math.Abs(e.From.Y+g.Width) < trueSize && math.Abs(e.To.Y+g.Width) < trueSize
}

// mutool, which shares no code with the reader used here, finds every end of
// every cut where that reader finds it.
func TestIndependentReaderAgrees(t *testing.T) {
	for name, s := range stringerJobs(t) {
		p := print(t, s, "stringer", "letter", measure.Inch/4)[0]
		traced := pdftest.Trace(t, p.bytes)
		for i := range p.tiling.Sheets {
			page := p.first + i
			for _, path := range pdftest.Layer(p.file.Pages[page].Paths, "Cut") {
				for _, piece := range path.Pieces {
					if !near(traced[page], piece.From) || !near(traced[page], piece.To) {
						t.Errorf("%s, page %d: the second reader has no line from %v to %v", name, page+1, piece.From, piece.To)
					}
				}
			}
		}
	}
}

func near(points []geom.Point, p geom.Point) bool {
	for _, q := range points {
		if r2.Norm(r2.Sub(p, q)) <= trueSize {
			return true
		}
	}
	return false
}

// The file is sound to qpdf, the cover is one page when parts are named, and
// the pages carry what the trade needs to read on them.
func TestSet(t *testing.T) {
	for name, s := range jobs(t) {
		var b bytes.Buffer
		if err := Write(&b, s, Options{Paper: s.Job.Paper, Style: measure.Style{Units: s.Job.Units}}); err != nil {
			t.Fatal(err)
		}
		pdftest.Ask(t, b.Bytes(), "qpdf", "--check")
		f := pdftest.MustRead(t, b.Bytes())
		if f.Preferences["PrintScaling"] != "None" {
			t.Errorf("%s: PrintScaling is %q, want None", name, f.Preferences["PrintScaling"])
		}
		whole := ""
		for _, p := range f.Pages {
			whole += strings.Join(p.Lines(), "\n") + "\n"
		}
		wanted := []string{s.Job.Name, "Cut list", "Local code and the building official decide"}
		if len(s.Flights()) > 0 {
			wanted = append(wanted, "Cut sequence", "crown")
		}
		for _, want := range wanted {
			if !strings.Contains(whole, want) {
				t.Errorf("%s: no page says %q", name, want)
			}
		}
		for _, bad := range []string{"NaN", "Inf", measure.Unknown, "%!"} {
			if strings.Contains(whole, bad) {
				t.Errorf("%s: a page says %q", name, bad)
			}
		}
		if len(f.Attachments) != 1 || !bytes.Equal(f.Attachments[0].Bytes, s.Job.Source) {
			t.Errorf("%s: the job is not attached as it was read", name)
		}

		var again bytes.Buffer
		if err := Write(&again, s, Options{Paper: s.Job.Paper, Style: measure.Style{Units: s.Job.Units}}); err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(b.Bytes(), again.Bytes()) {
			t.Errorf("%s: two sets of one job differ", name)
		}
	}
}

// The story pole has every finished tread and landing, every tread cut and the
// sheathing of every landing, at its height, in one strip.
func TestStoryPole(t *testing.T) {
	for name, s := range jobs(t) {
		p := print(t, s, "story-pole", `roll 12"`, measure.Inch/4)[0]
		lines := p.all("Cut")
		stands := func(x, from float64) {
			if err := pdftest.Missing([]geom.Edge{geom.Line(geom.Pt(x, from), geom.Pt(x, 60))}, lines, trueSize); err != nil {
				t.Errorf("%s: no line at %.4f: %v", name, x, err)
			}
		}
		var levels []float64
		for _, f := range s.Flights() {
			levels = append(levels, f.TreadLevels...)
		}
		for _, w := range s.Winders() {
			levels = append(levels, w.Levels...)
		}
		for _, c := range s.Curves() {
			levels = append(levels, c.Levels...)
		}
		for _, level := range levels {
			stands(level, 5)
			stands(level-s.Job.Tread.Thickness.MM(), 40)
		}
		for _, l := range s.Landings() {
			stands(l.Level, 5)
			stands(l.FramingLevel, 40)
		}
		stands(s.TotalRise.MM(), 5)
	}
}

func TestUnknownPart(t *testing.T) {
	s := jobs(t)["3-4-5"]
	err := Write(&bytes.Buffer{}, s, Options{Parts: []string{"strnger"}, Paper: s.Job.Paper})
	if u := (UnknownPart{}); !errors.As(err, &u) || u.Name != "strnger" || len(u.Known) == 0 {
		t.Errorf("got %v, want an unknown part with the known ones", err)
	}
}
