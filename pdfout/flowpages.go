package pdfout

import (
	"fmt"
	"math"

	"stepoff/layout/drawing"
	"stepoff/layout/drawing/letter"
	"stepoff/layout/geom"
	"stepoff/spec/measure"
)

// Spaces round the text of a page, millimetres.
const (
	leastMargin = 12.0 // from the paper's edge to the text
	footerRoom  = 7.0  // below the text, for the page's footer
	stampGap    = 4.0
)

// leaf is one page, ready to be drawn. Height is what it needs of the paper; all
// pages get that of the tallest, so that a file from a roll has one page size
// too and viewers leave its scale alone.
type leaf struct {
	bookmark string
	height   float64
	draw     func(c *canvas, number, of int)
}

// leaves sets a Flow.
func (f Flow) leaves(doc *Document, parent *element) ([]leaf, error) {
	paper := doc.Paper
	size := geom.Pt(paper.Width.MM(), paper.Height.MM())
	if paper.Roll {
		size.Y = MaxLength.MM()
	}
	margin := math.Max(leastMargin, paper.Margin.MM())
	area := geom.Box{Min: geom.Pt(margin, margin+footerRoom), Max: geom.Pt(size.X-margin, size.Y-margin)}
	if f.Rulers {
		inset := paper.Margin.MM() + 2*rulerSide + 2
		area.Min.X = math.Max(area.Min.X, inset)
		area.Min.Y = math.Max(area.Min.Y, inset+footerRoom)
	}
	stamp := doc.stampNote(area.Width())
	area.Max.Y -= stamp.size.Y

	_, each := f.columns(area.Width())
	s := setter{width: each, tall: area.Height(), units: doc.Units, parent: parent.add("Sect")}
	chunks, err := s.blocks(f.Blocks)
	if err != nil {
		return nil, err
	}
	if paper.Roll {
		size, area = f.cut(size, area, chunks)
	}
	pages := f.paginate(chunks, area)
	if len(pages) == 0 {
		pages = [][]set{nil}
	}
	out := make([]leaf, len(pages))
	for i, page := range pages {
		out[i].height = size.Y
		out[i].draw = func(c *canvas, number, of int) {
			c.newPage(size)
			for _, k := range page {
				k.draw(c, k.x, k.top)
			}
			c.stampTop(stamp, geom.Pt(area.Min.X, area.Max.Y+stamp.size.Y))
			c.footer(doc, area, number, of)
			if f.Rulers && i == 0 {
				c.pageRulers(paper, size, doc.Units)
			}
		}
	}
	out[0].bookmark = f.Title
	return out, nil
}

// cut makes a roll's page as long as its text needs, but no shorter than it is
// wide.
func (f Flow) cut(size geom.Point, area geom.Box, chunks []chunk) (geom.Point, geom.Box) {
	n, _ := f.columns(area.Width())
	need, tallest := 0.0, 0.0
	for i := range chunks {
		need += chunks[i].above + chunks[i].height
		tallest = math.Max(tallest, together(chunks[i:]))
	}
	if n > 1 {
		need = need/float64(n) + tallest
	}
	other := size.Y - area.Height()
	short := math.Min(size.Y, math.Max(size.X, need+other+rounding))
	area.Max.Y -= size.Y - short
	size.Y = short
	return size, area
}

// footer prints what set the page belongs to.
func (c *canvas) footer(doc *Document, area geom.Box, number, of int) {
	page := letter.Set(fmt.Sprintf("page %d of %d", number, of), drawing.Small)
	text := fit(join(" · ", doc.Subject, doc.Title, doc.Number, doc.Date), drawing.Small, area.Width()-page.Width-5)
	c.artifact("Footer", func() {
		y := area.Min.Y - footerRoom + letter.Set("g", drawing.Small).Down
		c.set(onPaper, geom.Pt(area.Min.X, y), 0, drawing.Left, letter.Set(text, drawing.Small))
		c.set(onPaper, geom.Pt(area.Max.X, y), 0, drawing.Right, page)
		c.lines(onPaper, drawing.Line{Width: guide}, geom.Pt(area.Min.X, y+drawing.Small+1), geom.Pt(area.Max.X, y+drawing.Small+1))
	})
}

// stampNote sets the stamp for the head of a page; its height is 0 when there
// is none.
func (doc *Document) stampNote(width float64) note {
	if len(doc.Stamp) == 0 {
		return note{}
	}
	var texts []noteText
	for _, s := range doc.Stamp {
		texts = append(texts, noteText{text: s, height: drawing.Normal, bold: true, most: 4})
	}
	n := block(width, 1, texts)
	n.size.X = width
	n.size.Y += stampGap
	return n
}

func (c *canvas) stampTop(n note, at geom.Point) {
	if len(n.lines) == 0 {
		return
	}
	c.artifact("Stamp", func() {
		b := geom.Box{Min: geom.Pt(at.X, at.Y-n.size.Y+stampGap), Max: geom.Pt(at.X+n.size.X, at.Y)}
		c.stroke(onPaper, drawing.Line{Width: 2 * drawing.WideLine}, geom.Rect(b).Edges, true)
		for _, l := range n.lines {
			c.bold(onPaper, geom.Pt(at.X+notePad, at.Y-l.down), 0, drawing.Left, l.height, l.Line)
		}
	})
}

// pageRulers draws the check rulers along the page's lower and left sides,
// placed like a part at full size.
func (c *canvas) pageRulers(paper Paper, size geom.Point, units measure.Units) {
	pl, w := paper.window(size)
	across := ruler{start: geom.Pt(rulerEnd, rulerSide), along: geom.Pt(1, 0), room: w.Width() - 2*rulerEnd, units: units}
	from := 2*rulerSide + 1
	up := ruler{start: geom.Pt(rulerSide, from), along: geom.Pt(0, 1), room: w.Height() - from - rulerEnd, units: units}
	c.ruler(pl, across)
	c.ruler(pl, up)
}

// window is what lies inside the margins of a page, from its lower left
// corner, in true millimetres, and how it is laid on the page.
func (p Paper) window(size geom.Point) (fullSize, geom.Box) {
	p = p.filled()
	m := p.Margin.MM()
	w := geom.Box{Max: geom.Pt((size.X-2*m)*p.ScaleX, (size.Y-2*m)*p.ScaleY)}
	return fullSize{window: w, margin: geom.Pt(m, m), width: size.X, scaleX: p.ScaleX, scaleY: p.ScaleY}, w
}
