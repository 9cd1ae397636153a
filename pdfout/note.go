package pdfout

import (
	"math"

	"stepoff/layout/drawing"
	"stepoff/layout/drawing/letter"
	"stepoff/layout/geom"
)

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
