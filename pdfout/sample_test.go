package pdfout_test

import (
	"bytes"
	"fmt"
	"math"
	"strings"
	"testing"

	"stepoff/layout/drawing"
	"stepoff/layout/geom"
	"stepoff/pdfout"
	"stepoff/pdfout/pdftest"
	"stepoff/spec/measure"
)

const in = 25.4

// sawTooth is a part of a kind often printed: n notches of a rise and run cut
// into a board, lying along x with the board's upper edge on y = 0, with the
// board as lumber, the cuts, a stop tick near each root, and words.
func sawTooth(n int, rise, run, width float64) pdfout.Part {
	d := &drawing.Drawing{Name: "saw-tooth", Title: "Saw-tooth board"}
	step := math.Hypot(rise, run)
	depth := rise * run / step
	toRoot := run * run / step // along the edge, from a tip to the next root
	start := 4 * in
	end := start + float64(n)*step
	foot, head := geom.Pt(width*rise/run, -width), geom.Pt(end-width*run/rise, -width)

	d.Polygon(drawing.Lumber, geom.Pt(-2*in, 0), geom.Pt(end+2*in, 0), geom.Pt(end+2*in, -width), geom.Pt(-2*in, -width))
	d.Line(drawing.Cut, geom.Pt(0, 0), foot)
	d.Line(drawing.Cut, geom.Pt(end, 0), head)
	for k := range n {
		tip := geom.Pt(start+float64(k)*step, 0)
		root := geom.Pt(tip.X+toRoot, -depth)
		next := geom.Pt(tip.X+step, 0)
		d.Line(drawing.Cut, tip, root)
		d.Line(drawing.Cut, root, next)
		d.Line(drawing.Mark, geom.Pt(root.X-8, root.Y), geom.Pt(root.X-2, root.Y+6))
		d.Text(geom.Pt(root.X, root.Y-8), drawing.Normal, drawing.Middle, fmt.Sprintf("notch %d", k+1))
	}
	d.Dim(drawing.Aligned, geom.Pt(start, 0), geom.Pt(start+step, 0), 10, `12 1/2"`)
	return pdfout.Part{
		Name: "saw-tooth", Title: "Saw-tooth board", Drawing: d,
		Station:  "the foot end of the blank",
		Lay:      "Lay STOCK EDGE on the upper edge of the blank, figures from its squared end.",
		Stock:    geom.Line(geom.Pt(-2*in, 0), geom.Pt(end+2*in, 0)),
		Cautions: []string{"Guards on, eyes and ears protected, stock clamped. Cut one, test it, then trace the rest."},
	}
}

// stringer is the part most tests use: 172 in of board, 11 1/4 in wide.
func stringer() pdfout.Part { return sawTooth(13, 7.5*in, 10*in, 11.25*in) }

// paper is a sheet with the usual margin and overlap.
func paper(name string, width, height measure.Length) pdfout.Paper {
	return pdfout.Paper{Name: name, Width: width, Height: height, Margin: measure.Inch / 4, Overlap: measure.Inch / 2}
}

func inches(v float64) measure.Length { return measure.Length(math.Round(v * float64(measure.Inch))) }

var letterPaper = paper("letter", inches(8.5), inches(11))

func plan(t testing.TB, part pdfout.Part, p pdfout.Paper, u measure.Units) *pdfout.Tiling {
	t.Helper()
	tiling, err := pdfout.Plan(part, p, u)
	if err != nil {
		t.Fatal(err)
	}
	return tiling
}

// document wraps pages into a document on a paper.
func document(p pdfout.Paper, u measure.Units, pages ...pdfout.Page) pdfout.Document {
	return pdfout.Document{Title: "Board loft", Number: "B-7", Date: "2026-03-02", Subject: "Full-size templates", Paper: p, Units: u, Pages: pages}
}

func write(t testing.TB, doc pdfout.Document) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := pdfout.Write(&b, doc); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// laid says to the reader how a sheet lies on its page.
func laid(tl *pdfout.Tiling, i int) pdftest.Laid {
	return pdftest.Laid{
		Window: tl.Sheets[i].Window, Turned: tl.Turned, Margin: tl.Paper.Margin.MM(),
		ScaleX: tl.Paper.ScaleX, ScaleY: tl.Paper.ScaleY,
	}
}

// pieced is what the sheets of a part show of a layer once they are laid where
// they belong. from is the index of the part's first page.
func pieced(tl *pdfout.Tiling, f *pdftest.File, from int, layer string) []pdftest.Path {
	var all []pdftest.Path
	for i := range tl.Sheets {
		all = append(all, pdftest.Layer(f.Pages[from+i].Unplace(laid(tl, i)), layer)...)
	}
	return all
}

// edges are the edges of a drawing's layer.
func edges(d *drawing.Drawing, layer drawing.Layer) []geom.Edge {
	var out []geom.Edge
	for _, it := range d.Items {
		if p, ok := it.(drawing.Path); ok && p.Layer == layer {
			out = append(out, p.Edges...)
		}
	}
	return out
}

// inFile is a layer's name in the file.
func inFile(l drawing.Layer) string { return strings.ToUpper(l.String()[:1]) + l.String()[1:] }
