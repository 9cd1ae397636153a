package pdfout_test

import (
	"bytes"
	"strings"
	"testing"

	"stepoff/layout/drawing"
	"stepoff/layout/geom"
	"stepoff/pdfout"
	"stepoff/pdfout/pdftest"
	"stepoff/spec/measure"
)

// bands are pages of bands, each with a heading that tells it, a figure and room to
// work.
func bands(t *testing.T, of, n int, text string) *pdftest.File {
	t.Helper()
	d := &drawing.Drawing{Name: "box", Title: "A box"}
	d.Add(drawing.Path{Layer: drawing.Cut, Path: geom.Rect(geom.Box{Max: geom.Pt(300, 200)})})
	d.Text(geom.Pt(150, 100), drawing.Small, drawing.Middle, "box")
	var flow pdfout.Flow
	for range n {
		flow.Blocks = append(flow.Blocks, pdfout.Band{Of: of, Blocks: []pdfout.Block{
			pdfout.Heading{Level: 2, Text: "Band"},
			pdfout.Figure{Drawing: d, NoScale: true},
			pdfout.Paragraph{Text: text},
			pdfout.Space{},
		}})
	}
	doc := pdfout.Document{
		Title: "bands", Pages: []pdfout.Page{flow},
		Paper: pdfout.Paper{Name: "letter", Width: 17 * measure.Inch / 2, Height: 11 * measure.Inch, Margin: measure.Inch / 4, Overlap: measure.Inch / 2},
	}
	var out bytes.Buffer
	if err := pdfout.Write(&out, doc); err != nil {
		t.Fatal(err)
	}
	return pdftest.MustRead(t, out.Bytes())
}

// A page holds as many bands as it has shares, whatever stands in them; what does
// not fit its share takes a page of its own.
func TestBandsShareAPage(t *testing.T) {
	for _, c := range []struct {
		of, n, pages int
		text         string
	}{
		{2, 4, 2, "short"},
		{2, 5, 3, strings.Repeat("some more words ", 20)},
		{2, 1, 1, "short"},
		{1, 2, 2, ""},
		{2, 3, 3, strings.Repeat("so many words ", 110)},
	} {
		if f := bands(t, c.of, c.n, c.text); len(f.Pages) != c.pages {
			t.Errorf("%d bands, %d to a page: %d pages, want %d", c.n, c.of, len(f.Pages), c.pages)
		}
	}
}
