package pdfout_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"stepoff/layout/drawing"
	"stepoff/layout/geom"
	"stepoff/pdfout"
	"stepoff/pdfout/pdftest"
	"stepoff/spec/measure"
)

func flowed(t testing.TB, p pdfout.Paper, u measure.Units, blocks ...pdfout.Block) *pdftest.File {
	t.Helper()
	return pdftest.MustRead(t, write(t, document(p, u, pdfout.Flow{Blocks: blocks})))
}

// words are a text's words.
func words(s string) []string { return strings.Fields(s) }

// TestNothingLost: text of any length, in any block, comes out whole and in
// order, inside the page, on as many pages as it takes.
func TestNothingLost(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := 0
		var want []string
		text := func(label string) string {
			var w []string
			for range rapid.IntRange(1, 60).Draw(t, label) {
				n++
				w = append(w, rapid.SampledFrom([]string{fmt.Sprintf("w%d", n), fmt.Sprintf(`%d 3/8"`, n), "plain"}).Draw(t, "word"))
			}
			want = append(want, w...)
			return strings.Join(w, " ")
		}
		var blocks []pdfout.Block
		for range rapid.IntRange(1, 12).Draw(t, "blocks") {
			switch rapid.IntRange(0, 3).Draw(t, "kind") {
			case 0:
				n++
				want = append(want, fmt.Sprintf("h%d", n))
				blocks = append(blocks, pdfout.Heading{Level: rapid.IntRange(1, 3).Draw(t, "level"), Text: fmt.Sprintf("h%d", n)})
			case 1:
				blocks = append(blocks, pdfout.Paragraph{Text: text("paragraph")})
			case 2:
				blocks = append(blocks, pdfout.List{Items: []string{text("item"), text("item")}})
			case 3:
				blocks = append(blocks, pdfout.PageBreak{})
			}
		}
		p := drawPaper(t)
		var b writer
		if err := pdfout.Write(&b, document(p, measure.Imperial, pdfout.Flow{Blocks: blocks})); err != nil {
			t.Fatal(err)
		}
		f, err := pdftest.Read(b)
		if err != nil {
			t.Fatal(err)
		}
		var got []string
		for _, tag := range f.Tags {
			if tag.Name != "Lbl" {
				got = append(got, words(tag.Text)...)
			}
		}
		// Lines of one paragraph are tied to one tag without a blank between:
		// compare letters.
		if diff := cmp.Diff(strings.ReplaceAll(strings.Join(want, ""), " ", ""), strings.Join(got, "")); diff != "" {
			t.Fatalf("-want +got:\n%s", diff)
		}
		for _, page := range f.Pages {
			for _, w := range page.Writing {
				for _, r := range w.Runs {
					if r.At.X < 0 || r.At.X+r.Width > page.Width+1e-6 || r.At.Y < 0 || r.At.Y+r.Height > page.Height {
						t.Fatalf("page %d: %q at %v, %g wide, on a page of %g x %g", page.Number, r.Text, r.At, r.Width, page.Width, page.Height)
					}
					if r.Height < drawing.Small-1e-9 {
						t.Fatalf("page %d: %q is %g high", page.Number, r.Text, r.Height)
					}
				}
			}
		}
	})
}

// TestHeadingsStayWithTheirText: no heading stands last on a page.
func TestHeadingsStayWithTheirText(t *testing.T) {
	for lines := range 60 {
		var blocks []pdfout.Block
		for i := range lines {
			blocks = append(blocks, pdfout.Paragraph{Text: fmt.Sprintf("line %d", i)})
		}
		blocks = append(blocks, pdfout.Heading{Level: 2, Text: "Cut list"}, pdfout.Paragraph{Text: "right below"})
		for _, page := range flowed(t, letterPaper, measure.Imperial, blocks...).Pages {
			if page.Has("Cut list") != page.Has("right below") {
				t.Errorf("after %d lines the heading is parted from its text", lines)
			}
		}
	}
}

// TestTableGoesOn: a table over several pages has its header on each, every
// row once, and columns aligned as asked.
func TestTableGoesOn(t *testing.T) {
	table := pdfout.Table{Header: []string{"part", "length"}, Align: []drawing.Align{drawing.Left, drawing.Right}}
	for i := range 120 {
		table.Rows = append(table.Rows, []string{fmt.Sprintf("part %d", i), fmt.Sprintf(`%d 1/2"`, i)})
	}
	f := flowed(t, letterPaper, measure.Imperial, table)
	if len(f.Pages) < 2 {
		t.Fatalf("%d pages", len(f.Pages))
	}
	seen := map[string]int{}
	for _, page := range f.Pages {
		if !page.Has("part") || !page.Has("length") {
			t.Errorf("page %d has no header", page.Number)
		}
		right := map[string]bool{}
		for _, w := range page.Writing {
			r := w.Runs[0]
			if strings.HasPrefix(w.Text, "part ") {
				seen[w.Text]++
				right[fmt.Sprintf("%.3f", r.At.X)] = true
			}
			if w.Text == `"` {
				right[fmt.Sprintf("right %.3f", r.At.X+r.Width)] = true
			}
		}
		if len(right) != 2 {
			t.Errorf("page %d: the columns stand at %v", page.Number, right)
		}
	}
	for i := range 120 {
		if n := seen[fmt.Sprintf("part %d", i)]; n != 1 {
			t.Errorf("row %d stands %d times", i, n)
		}
	}
}

// TestWideTableIsWrapped: a table wider than the page stays on it.
func TestWideTableIsWrapped(t *testing.T) {
	long := strings.Repeat("a long remark ", 12)
	f := flowed(t, letterPaper, measure.Imperial, pdfout.Table{Header: []string{"a", "b", "c"}, Rows: [][]string{{"1", long, long}}})
	for _, w := range f.Pages[0].Writing {
		for _, r := range w.Runs {
			if r.At.X+r.Width > f.Pages[0].Width-10 {
				t.Errorf("%q ends at %.1f mm", r.Text, r.At.X+r.Width)
			}
		}
	}
}

// TestFigureScale: a figure is drawn at a round scale that it names, with a
// bar as long as it says, and is not for cutting.
func TestFigureScale(t *testing.T) {
	for _, c := range []struct {
		units  measure.Units
		length float64
		says   string
		ratio  float64
		bar    float64 // of the thing drawn
	}{
		{measure.Metric, 3000, "scale 1:20,", 20, 500},
		{measure.Metric, 160, "scale 1:1,", 1, 50},
		{measure.Metric, 90_000, "scale 1:500,", 500, 20_000},
		{measure.Imperial, 120 * in, `scale 3/4" = 1' 0" (1:16),`, 16, 2 * 12 * in},
		{measure.Imperial, 1000 * in, `scale 1/16" = 1' 0" (1:192),`, 192, 20 * 12 * in},
	} {
		d := &drawing.Drawing{Name: "bar", Title: "A long bar"}
		d.Line(drawing.Cut, geom.Pt(0, 0), geom.Pt(c.length, 0))
		f := flowed(t, letterPaper, c.units, pdfout.Figure{Drawing: d})
		page := f.Pages[0]
		if !page.Has(c.says) || !page.Has("not for cutting") || !page.Has("A long bar") {
			t.Errorf("%g mm: %q", c.length, page.Lines())
		}
		var drawn, bar float64
		for _, p := range page.Paths {
			if p.Layer != "Figure" || !p.Stroked {
				continue
			}
			long := math.Abs(p.Pieces[0].To.X - p.Pieces[0].From.X)
			if math.Abs(p.Width-drawing.WideLine) < 1e-3 {
				drawn = long
			} else {
				bar += long
			}
		}
		if math.Abs(drawn-c.length/c.ratio) > trueSize {
			t.Errorf("%g mm: drawn %.3f mm, want %.3f", c.length, drawn, c.length/c.ratio)
		}
		if math.Abs(bar-c.bar/c.ratio) > trueSize {
			t.Errorf("%g mm: a scale bar of %.3f mm, want %.3f", c.length, bar, c.bar/c.ratio)
		}
		if says := (measure.Style{Units: c.units}).FormatMM(c.bar); !page.Has(says) {
			t.Errorf("%g mm: the bar does not say %s: %q", c.length, says, page.Lines())
		}
		for _, tag := range f.Tags {
			if tag.Name == "Figure" && tag.Alt != "A long bar" {
				t.Errorf("the figure is read as %q", tag.Alt)
			}
		}
	}
}

// TestNeverACutLayer: nothing on a page of text or at a scale is marked as a
// cut in the file.
func TestNeverACutLayer(t *testing.T) {
	f := flowed(t, letterPaper, measure.Imperial, pdfout.Figure{Drawing: stringer().Drawing}, pdfout.Figure{Drawing: stringer().Drawing, NoScale: true})
	for _, p := range f.Pages[0].Paths {
		if p.Layer == "Cut" || p.Layer == "Mark" {
			t.Fatalf("a figure has a %s", p.Layer)
		}
	}
}

// TestColumns: blocks beside each other begin level and keep their sides.
func TestColumns(t *testing.T) {
	f := flowed(t, letterPaper, measure.Imperial, pdfout.Columns{
		Left: []pdfout.Block{pdfout.Paragraph{Text: "left side"}}, Right: []pdfout.Block{pdfout.Paragraph{Text: "right side"}},
	})
	at := map[string]geom.Point{}
	for _, w := range f.Pages[0].Writing {
		at[w.Text] = w.Runs[0].At
	}
	l, r := at["left side"], at["right side"]
	if l.Y != r.Y || l.X >= f.Pages[0].Width/2 || r.X <= f.Pages[0].Width/2 {
		t.Errorf("left at %v, right at %v", l, r)
	}
}

// TestFooterAndStamp: every page of text says what it belongs to, its number,
// and what is wrong with the job.
func TestFooterAndStamp(t *testing.T) {
	doc := document(letterPaper, measure.Imperial, pdfout.Flow{Blocks: []pdfout.Block{pdfout.Paragraph{Text: "one"}, pdfout.PageBreak{}, pdfout.Paragraph{Text: "two"}}})
	doc.Stamp = []string{"NOT TO CODE"}
	f := pdftest.MustRead(t, write(t, doc))
	if len(f.Pages) != 2 {
		t.Fatalf("%d pages", len(f.Pages))
	}
	for i, page := range f.Pages {
		frame := geom.EmptyBox()
		for _, p := range page.Paths {
			if p.Layer == "Stamp" {
				for _, q := range p.Pieces {
					frame = frame.Include(q.From)
				}
			}
		}
		if m := letterPaper.Margin.MM(); frame.Max.Y > page.Height-m || frame.Max.Y < page.Height-2*m {
			t.Errorf("page %d: the stamp's frame reaches to %.1f mm of %.1f", i+1, frame.Max.Y, page.Height)
		}
		for _, w := range page.Writing {
			in := frame.Contains(w.Runs[0].At, 0)
			if stamped := slices.Contains(w.Tags, "Stamp"); in != stamped {
				t.Errorf("page %d: %q stands in the stamp's frame: %v", i+1, w.Text, in)
			}
		}
		for _, want := range []string{"Full-size templates · Board loft · B-7 · 2026-03-02", fmt.Sprintf("page %d of 2", i+1), "NOT TO CODE"} {
			if !page.Has(want) {
				t.Errorf("page %d does not say %q: %q", i+1, want, page.Lines())
			}
		}
	}
}

// TestCalibration: the bars of the printer's test page are as long as it and
// Bars say, drawn without the paper's factors.
func TestCalibration(t *testing.T) {
	for _, u := range []measure.Units{measure.Imperial, measure.Metric} {
		p := letterPaper
		p.ScaleX, p.ScaleY = 0.98, 1.02
		page := pdftest.MustRead(t, write(t, document(p, u, pdfout.Calibration{}))).Pages[0]
		across, along := pdfout.Bars(p, u)
		box := geom.EmptyBox()
		width := 0.0
		for _, path := range page.Paths {
			if path.Layer == "Bar" && path.Stroked {
				width = path.Width
				for _, q := range path.Pieces {
					box = box.Include(q.From).Include(q.To)
				}
			}
		}
		// Each bar's ends reach further than the other bar's marks; a mark's
		// outer edge is half a line beyond its middle, and the bar's own line
		// runs to the edge.
		if w, h := box.Width(), box.Height(); math.Abs(w-across.MM()) > trueSize || math.Abs(h-along.MM()) > trueSize {
			t.Errorf("bars of %.3f x %.3f mm, lines %.2f mm wide; want %.3f x %.3f", w, h, width, across.MM(), along.MM())
		}
		style := measure.Style{Units: u}
		for _, want := range []string{"across the paper (x): " + style.Inches(across), "along the paper (y): " + style.Inches(along)} {
			if !page.Has(want) {
				t.Errorf("the page does not say %q: %q", want, page.Lines())
			}
		}
	}
}

// TestFactor: measured over drawn; page scaling is refused.
func TestFactor(t *testing.T) {
	if f, err := pdfout.Factor(inches(9.963), inches(10)); err != nil || math.Abs(f-0.9963) > 1e-9 {
		t.Errorf("%v, %v", f, err)
	}
	for _, measured := range []measure.Length{inches(9.69), inches(10.31), 0, -inches(10)} {
		if _, err := pdfout.Factor(measured, inches(10)); err == nil {
			t.Errorf("%v measured on 10 in is taken", measured.In())
		}
	}
	if _, err := pdfout.Factor(inches(9.6), inches(10)); err == nil || !strings.Contains(err.Error(), "page scaling") {
		t.Errorf("the reason is not given: %v", err)
	}
}
