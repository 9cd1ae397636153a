package pdfout

import (
	"fmt"
	"math"
	"strings"

	"gonum.org/v1/gonum/spatial/r2"

	"stepoff/layout/drawing"
	"stepoff/layout/geom"
)

// stamp prints what is wrong with the job in a heavy frame.
func (p *sheetPage) stamp() {
	if len(p.doc.Stamp) == 0 {
		return
	}
	var texts []noteText
	for _, s := range p.doc.Stamp {
		texts = append(texts, noteText{text: s, height: drawing.Normal, bold: true, most: 4})
	}
	n, b, hides := p.put(texts, geom.Point{})
	p.write(n, b, hides, 2*drawing.WideLine, func(_ int, f func()) { p.artifact("Stamp", f) })
}

// title prints the title block: what sheet this is, of what, how to print it
// and how to lay it.
func (p *sheetPage) title(section *element) {
	texts := []noteText{{text: p.sheet.Name + " " + p.Part.Title, height: drawing.Large, bold: true, most: 2}}
	if p.Part.Hand != "" {
		texts = append(texts, noteText{text: strings.ToUpper(p.Part.Hand) + " HAND", height: drawing.Huge, bold: true, most: 1})
	}
	small := func(text string) {
		if text != "" {
			texts = append(texts, noteText{text: text, height: drawing.Small, most: 4})
		}
	}
	small(join(" · ", shorten(p.doc.Title), shorten(p.doc.Number), shorten(p.doc.Date)))
	small(fmt.Sprintf("sheet %d of %d, column %s row %d · paper %s", p.number, len(p.Sheets), columnName(p.sheet), p.sheet.Row+1, p.Paper.Name))
	small("print at 100 %, no fit to page" + p.Paper.factors())
	small(p.Part.Lay)
	if p.Part.Station != "" {
		small("figures at the edges: from " + p.Part.Station)
	}
	for _, caution := range p.Part.Cautions {
		small(caution)
	}
	m := p.miniature()
	n, b, hides := p.put(texts, geom.Pt(m.X+2*notePad, m.Y+notePad))
	heading, body := section.add("H2"), section.add("P")
	p.write(n, b, hides, drawing.NarrowLine, func(i int, f func()) {
		if n.lines[i].height == drawing.Large {
			p.tagged(heading, f)
		} else {
			p.tagged(body, f)
		}
	})
	p.drawMiniature(geom.Pt(b.Min.X+notePad, b.Min.Y+notePad), m)
}

// shorten keeps a name to what a title block has room for.
func shorten(s string) string { return fit(s, drawing.Small, 80) }

func columnName(s Sheet) string { return strings.TrimRight(s.Name, "0123456789") }

// factors says what the printer's factors are, where they are not 1.
func (p Paper) factors() string {
	if p.ScaleX == 1 && p.ScaleY == 1 {
		return ""
	}
	return fmt.Sprintf(" · printer factors %g across the paper, %g along it", p.ScaleX, p.ScaleY)
}

// join joins what is not empty.
func join(between string, parts ...string) string {
	var kept []string
	for _, s := range parts {
		if s != "" {
			kept = append(kept, s)
		}
	}
	return strings.Join(kept, between)
}

// mostInMiniature is how many sheets the little map shows; of more, nobody
// could tell one from another.
const mostInMiniature = 60

// miniature is the size of the little map in the title block; none for a
// single sheet.
func (p *sheetPage) miniature() geom.Point {
	if n := len(p.Sheets); n == 1 || n > mostInMiniature {
		return geom.Point{}
	}
	all := p.extent()
	scale := math.Min(70/all.Width(), 14/all.Height())
	return geom.Pt(all.Width()*scale, all.Height()*scale)
}

// extent is the box round all windows.
func (t *Tiling) extent() geom.Box {
	b := geom.EmptyBox()
	for _, s := range t.Sheets {
		b = b.Union(s.Window)
	}
	return b
}

// drawMiniature draws where the sheet lies among the others.
func (p *sheetPage) drawMiniature(at, size geom.Point) {
	if size == (geom.Point{}) {
		return
	}
	all := p.extent()
	scale := size.X / all.Width()
	p.artifact("Map", func() {
		for _, s := range p.Sheets {
			own := p.own(s)
			cell := geom.Box{
				Min: r2.Add(at, r2.Scale(scale, r2.Sub(own.Min, all.Min))),
				Max: r2.Add(at, r2.Scale(scale, r2.Sub(own.Max, all.Min))),
			}
			if s.Name == p.sheet.Name {
				p.fill(p.pl, 0.6, geom.Rect(cell).Edges)
			}
			p.stroke(p.pl, drawing.Line{Width: guide}, geom.Rect(cell).Edges, true)
		}
	})
}
