package pdfout

import (
	"fmt"
	"math"
	"slices"
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

// rulers draws the two check rulers inside the stations at left and right:
// near the sides of the window, where they hide least. The one across the
// sheet is laid first; the other keeps clear of it.
func (p *sheetPage) rulers(left, right float64) {
	w := p.sheet.Window
	var across []ruler
	upright := map[ruler][2]float64{} // what each leaves the other, from and to
	for off := 0.0; off <= rulerPlay; off += 2 * square {
		low := ruler{start: geom.Pt(w.Min.X+rulerEnd, w.Min.Y+p.band(1)+rulerSide+off), along: geom.Pt(1, 0), room: w.Width() - 2*rulerEnd, units: p.Units}
		high := low
		high.start.Y = w.Max.Y - p.band(-1) - rulerSide - off
		across = append(across, low, high)
		upright[low] = [2]float64{low.box().Max.Y + 1, w.Max.Y - rulerEnd}
		upright[high] = [2]float64{w.Min.Y + rulerEnd, high.box().Min.Y - 1}
	}
	// Not at the price of an inch of the other.
	longest := 0
	inches := func(r ruler) int {
		span := upright[r]
		return ruler{room: span[1] - span[0]}.inches()
	}
	for _, r := range across {
		longest = max(longest, inches(r))
	}
	level := p.lightestRuler(slices.DeleteFunc(across, func(r ruler) bool { return inches(r) < longest }))
	span := upright[level]
	level = p.lay(level)

	var up []ruler
	for off := 0.0; off <= rulerPlay; off += 2 * square {
		first := ruler{start: geom.Pt(left+stationRoom+rulerSide+off, span[0]), along: geom.Pt(0, 1), room: span[1] - span[0], units: p.Units}
		last := first
		last.start.X = right - stationRoom - rulerSide - off
		up = append(up, first, last)
	}
	p.ruler(p.pl, level)
	p.ruler(p.pl, p.lay(p.lightestRuler(up)))
}

// rulerPlay is how far into the sheet a ruler may move to keep off what is
// drawn, millimetres.
const rulerPlay = 6 * square

// lightestRuler finds the ruler that hides least.
func (p *sheetPage) lightestRuler(rulers []ruler) ruler {
	best, least := rulers[0], math.MaxInt
	for _, r := range rulers {
		if hides := p.field.weight(r.box()); hides < least {
			best, least = r, hides
		}
	}
	return best
}

// lay puts the ruler's words where they hide least and takes its place.
func (p *sheetPage) lay(r ruler) ruler {
	_, play := r.fitting()
	least := math.MaxInt
	for at := 0.0; at <= play && least > 0; at += square {
		if hides := p.field.weight(r.wordsBox(at)); hides < least {
			r.words, least = at, hides
		}
	}
	p.field.area(r.box(), weighsNote)
	return r
}

// band is the width shared with the neighbour so many rows down; 0 where there
// is none.
func (p *sheetPage) band(rows int) float64 {
	if _, ok := p.neighbour(p.sheet, 0, rows); ok {
		return p.Paper.Overlap.MM()
	}
	return 0
}

// stockOff is how far the words STOCK EDGE stand off it, and stockEvery how
// often they are repeated on a long sheet, millimetres.
const (
	stockOff   = 1.8
	stockEvery = 600.0
)

// stockEdge names the lumber edge where it crosses the sheet.
func (p *sheetPage) stockEdge() {
	set := p.letters("STOCK EDGE", drawing.Normal)
	var pieces []geom.Edge
	for _, e := range p.Part.Stock.Clip(p.sheet.Window) {
		n := math.Max(1, math.Round(e.Length()/stockEvery))
		for i := 0.0; i < n; i++ {
			pieces = append(pieces, e.Part(i/n, (i+1)/n))
		}
	}
	for _, e := range pieces {
		long := e.Length()
		if e.IsArc() || long < set.Width {
			continue
		}
		u := r2.Scale(1/long, r2.Sub(e.To, e.From))
		if u.X < 0 {
			u, e.From = r2.Scale(-1, u), e.To
		}
		n := geom.Pt(-u.Y, u.X)
		best, least := geom.Point{}, math.MaxInt
		for _, off := range [...]float64{stockOff, -stockOff - set.Up} {
			for f := 0.0; f <= long-set.Width; f += 2 * square {
				at := r2.Add(e.From, r2.Add(r2.Scale(f, u), r2.Scale(off, n)))
				b := geom.EmptyBox().Include(at).Include(r2.Add(at, r2.Add(r2.Scale(set.Width, u), r2.Scale(set.Up, n))))
				if !inside(b, p.sheet.Window) {
					continue
				}
				if hides := p.field.weight(b); hides < least {
					best, least = at, hides
				}
			}
		}
		if least == math.MaxInt {
			continue
		}
		p.artifact("Stock", func() {
			p.bold(p.pl, best, math.Atan2(u.Y, u.X), drawing.Left, drawing.Normal, set)
		})
		p.field.area(geom.EmptyBox().Include(best).Include(r2.Add(best, r2.Add(r2.Scale(set.Width, u), r2.Scale(set.Up, n)))), weighsNote)
	}
}

// note is a block of lines in a box.
type note struct {
	lines []noteLine
	size  geom.Point
}

type noteLine struct {
	letter.Line
	height float64
	bold   bool
	down   float64 // baseline, from the top of the block
}

// notePad is kept free inside a block's sides.
const notePad = 1.5

// block sets texts below one another, wrapped to a width; letters take swell
// times their size.
func block(width, swell float64, texts []noteText) note {
	var n note
	y, wide := notePad, 0.0
	for _, t := range texts {
		for i, l := range wrap(t.text, t.height, (width-2*notePad)/swell, t.most) {
			l = swollen(l, swell)
			if len(n.lines) > 0 {
				y += math.Max(clearance, (leading-1)*t.height-n.lines[len(n.lines)-1].Down)
			}
			if i == 0 {
				y += t.above
			}
			y += l.Up
			n.lines = append(n.lines, noteLine{l, t.height, t.bold, y})
			y += l.Down
			wide = math.Max(wide, l.Width)
		}
	}
	n.size = geom.Pt(wide+2*notePad, y+notePad)
	return n
}

type noteText struct {
	text   string
	height float64
	bold   bool
	most   int     // lines; 0: as many as it takes
	above  float64 // kept free above it
}

// write writes a block into a box, its paper cleared where that hides no cut.
func (p *sheetPage) write(n note, b geom.Box, hides int, frame float64, in func(i int, f func())) {
	p.artifact("Frame", func() {
		edges := geom.Rect(b).Edges
		if hides < weighsMark {
			p.fill(p.pl, 0, edges)
		}
		p.stroke(p.pl, drawing.Line{Width: frame}, edges, true)
	})
	for i, l := range n.lines {
		at := geom.Pt(b.Min.X+notePad, b.Max.Y-l.down)
		in(i, func() {
			if l.bold {
				p.bold(p.pl, at, 0, drawing.Left, l.height, l.Line)
			} else {
				p.set(p.pl, at, 0, drawing.Left, l.Line)
			}
		})
	}
}

// widths a block is tried at, millimetres.
var blockWidths = [...]float64{170, 130, 100, 75}

// put finds the width and the place at which a block hides least. extra is
// room kept below its lines. A block with too many lines for the sheet loses
// the last.
func (p *sheetPage) put(texts []noteText, extra geom.Point) (note, geom.Box, int) {
	w := p.sheet.Window
	var bestNote note
	var best geom.Box
	least := math.MaxInt
	for ; least == math.MaxInt && len(texts) > 0; texts = texts[:len(texts)-1] {
		for _, width := range blockWidths {
			n := block(math.Min(width, w.Width()-3*square), p.swell, texts)
			n.size = geom.Pt(math.Max(n.size.X, extra.X), n.size.Y+extra.Y)
			if b, hides := p.field.emptiest(n.size, w.Min); hides < least {
				bestNote, best, least = n, b, hides
			}
		}
	}
	p.field.area(best, weighsNote)
	return bestNote, best, least
}

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

// style prints stations.
func (t *Tiling) style() measure.Style { return measure.Style{Units: t.Units} }
