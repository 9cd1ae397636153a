package pdfout

import (
	"strings"

	"gonum.org/v1/gonum/spatial/r2"

	"stepoff/layout/drawing"
	"stepoff/layout/drawing/letter"
	"stepoff/layout/geom"
	"stepoff/pdfout/tile"
	"stepoff/spec/measure"
)

// sheets draws the pages of one part.
type sheets struct {
	*Tiling
	swell float64 // how much more room letters take than their size, in true millimetres
	doc   *Document
	paths []partPath
	texts []partText
	field field // of the sheet being drawn
}

// partPath is a path of the part with the box round it.
type partPath struct {
	drawing.Path
	box geom.Box
}

// partText is a writing of the part, with the box round it and whether some
// sheet shows the whole of it.
type partText struct {
	drawing.Text
	box   geom.Box
	whole bool
}

func newSheets(t *Tiling, doc *Document) *sheets {
	// Letters are drawn at their size whatever the printer's factors. In true
	// millimetres, in which everything is placed, they take as much more.
	s := &sheets{Tiling: t, doc: doc, swell: max(1, t.Paper.ScaleX, t.Paper.ScaleY)}
	for _, it := range t.Part.Drawing.Resolve(1) {
		switch it := it.(type) {
		case drawing.Path:
			s.paths = append(s.paths, partPath{it, it.Box()})
		case drawing.Text:
			it.Text = safe(it.Text)
			text := partText{Text: it, box: geom.EmptyBox()}
			for _, corner := range it.Corners() {
				text.box = text.box.Include(r2.Add(it.At, r2.Scale(s.swell, corner)))
			}
			for _, sheet := range t.Sheets {
				text.whole = text.whole || inside(text.box, sheet.Window)
			}
			s.texts = append(s.texts, text)
		}
	}
	return s
}

// letters sets a line with the room it takes on a sheet.
func (s *sheets) letters(text string, height float64) letter.Line {
	return swollen(letter.Set(text, height), s.swell)
}

func swollen(l letter.Line, by float64) letter.Line {
	l.Width, l.Up, l.Down = l.Width*by, l.Up*by, l.Down*by
	return l
}

// inside tells whether a box lies in another.
func inside(b, in geom.Box) bool {
	return in.Contains(b.Min, tile.Slack) && in.Contains(b.Max, tile.Slack)
}

// page draws one sheet.
func (s *sheets) page(c *canvas, n int, section *element) {
	sheet := s.Sheets[n]
	c.newPage(s.pageSize())
	s.field.clear(sheet.Window)
	p := &sheetPage{sheets: s, canvas: c, sheet: sheet, pl: s.placing(sheet), number: n + 1}
	p.look()
	p.weigh()
	p.layers(drawing.Lumber, drawing.Note)
	p.edges()
	left, right := p.stations()
	_, leftSeam := p.neighbour(sheet, -1, 0)
	_, rightSeam := p.neighbour(sheet, 1, 0)
	p.station(left, true, leftSeam)
	p.station(right, false, rightSeam)
	for _, x := range p.between(left, right) {
		p.station(x, true, false)
	}
	p.rulers(left, right)
	p.stockEdge()
	p.stamp()
	p.title(section)
	p.layers(drawing.Mark, drawing.Cut)
}

// sheetPage is one sheet while it is drawn.
type sheetPage struct {
	*sheets
	*canvas
	sheet  Sheet
	pl     fullSize
	number int
	shown  []shownPath
	words  []partText
}

// shownPath is what of a path the sheet shows.
type shownPath struct {
	partPath
	edges []geom.Edge // cut at the window's sides
	whole bool
}

// look picks what of the part is on the sheet.
func (p *sheetPage) look() {
	grown := p.sheet.Window.Grow(tile.Slack)
	for _, path := range p.paths {
		if !path.box.Meets(grown) {
			continue
		}
		s := shownPath{partPath: path, whole: path.Closed && inside(path.box, p.sheet.Window)}
		s.edges = tile.Edges(path.Edges, p.sheet.Window)
		p.shown = append(p.shown, s)
	}
	for _, t := range p.texts {
		if p.shows(t) {
			p.words = append(p.words, t)
		}
	}
}

// weigh fills the field with what the part draws on the sheet.
func (p *sheetPage) weigh() {
	for _, path := range p.shown {
		weight := int32(weighsLine)
		switch path.Layer {
		case drawing.Cut:
			weight = weighsCut
		case drawing.Mark:
			weight = weighsMark
		}
		for _, e := range path.edges {
			p.field.line(e, weight)
		}
	}
	for _, t := range p.words {
		p.field.area(t.box, weighsText)
	}
}

// shows tells whether a writing is on the sheet: whole, or, where no sheet has
// it whole, as much as there is of it if that is more than half.
func (p *sheetPage) shows(t partText) bool {
	if t.whole {
		return inside(t.box, p.sheet.Window)
	}
	return p.sheet.Window.Contains(r2.Scale(0.5, r2.Add(t.box.Min, t.box.Max)), 0)
}

// layers draws the part's layers from one to another.
func (p *sheetPage) layers(from, to drawing.Layer) {
	for layer := from; layer <= to; layer++ {
		var draw []func()
		for _, path := range p.shown {
			if path.Layer != layer {
				continue
			}
			if path.Fill > 0 {
				draw = append(draw, func() {
					p.clipped(p.pl, p.sheet.Window, func() { p.fill(p.pl, path.Fill, path.Edges) })
				})
			}
			if len(path.edges) > 0 {
				draw = append(draw, func() { p.stroke(p.pl, layer.Line(), path.edges, path.whole) })
			}
		}
		for _, t := range p.words {
			if t.Layer != layer {
				continue
			}
			draw = append(draw, func() {
				if t.whole {
					p.text(p.pl, t.Text)
				} else {
					p.clipped(p.pl, p.sheet.Window, func() { p.text(p.pl, t.Text) })
				}
			})
		}
		if len(draw) == 0 {
			continue
		}
		name := layer.String()
		p.artifact(strings.ToUpper(name[:1])+name[1:], func() {
			for _, f := range draw {
				f()
			}
		})
	}
}

// style prints stations.
func (t *Tiling) style() measure.Style { return measure.Style{Units: t.Units} }
