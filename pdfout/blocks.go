package pdfout

import (
	"fmt"

	"stepoff/layout/drawing"
	"stepoff/layout/drawing/letter"
	"stepoff/layout/geom"
	"stepoff/spec/measure"
)

// setter makes chunks of blocks.
type setter struct {
	width  float64 // of the column
	tall   float64 // of the column: nothing may be higher
	units  measure.Units
	parent *element // what the blocks' tags are added to
}

// Heights of capitals in running text, and the space above blocks.
const (
	textHeight = drawing.Normal
	blockGap   = 3.5
	itemGap    = 1.5
	itemIndent = 8.0
)

// headings are the tags and heights of headings by level from 1, with the
// space above.
var headings = [...]struct {
	tag           string
	height, above float64
}{1: {"H1", drawing.Huge, 6}, 2: {"H2", drawing.Large, 6}, 3: {"H3", drawing.Normal, 5}}

func (s setter) blocks(blocks []Block) ([]chunk, error) {
	var out []chunk
	for _, b := range blocks {
		before := len(out)
		switch b := b.(type) {
		case Heading:
			out = append(out, s.heading(b)...)
		case Paragraph:
			out = append(out, s.text(b.Text, b.height(), s.parent.add("P"), 0, "", nil)...)
		case List:
			out = append(out, s.list(b)...)
		case Table:
			out = append(out, s.table(b)...)
		case Figure:
			fig, err := s.figure(b)
			if err != nil {
				return nil, err
			}
			out = append(out, fig)
		case Band:
			band, err := s.band(b)
			if err != nil {
				return nil, err
			}
			out = append(out, band)
		case Space:
			out = append(out, s.space(b))
		case Columns:
			both, err := s.sideBySide(b)
			if err != nil {
				return nil, err
			}
			out = append(out, both...)
		case PageBreak:
			out = append(out, chunk{newPage: true, keep: true, draw: func(*canvas, float64, float64) {}})
		default:
			return nil, fmt.Errorf("a page holds a block that cannot be set")
		}
		if len(out) > before && out[before].above == 0 {
			out[before].above = blockGap
		}
	}
	return out, nil
}

// heading sets a heading in two lines at most.
func (s setter) heading(h Heading) []chunk {
	look := headings[min(max(h.Level, 1), len(headings)-1)]
	e := s.parent.add(look.tag)
	lines := wrap(h.Text, look.height, s.width, 2)
	out := stack(lines, look.height, func(l letter.Line) func(*canvas, float64, float64) {
		return func(c *canvas, x, top float64) {
			c.tagged(e, func() { c.bold(onPaper, geom.Pt(x, top-l.Up), 0, drawing.Left, look.height, l) })
		}
	})
	for i := range out {
		out[i].keep = true
	}
	if len(out) > 0 {
		out[0].above = look.above
	}
	return out
}

// text sets running text, indented, with a label before its first line.
func (s setter) text(text string, height float64, body *element, indent float64, label string, labelled *element) []chunk {
	first := true
	out := stack(wrap(text, height, s.width-indent, 0), height, func(l letter.Line) func(*canvas, float64, float64) {
		withLabel := first && label != ""
		first = false
		return func(c *canvas, x, top float64) {
			if withLabel {
				c.tagged(labelled, func() { c.set(onPaper, geom.Pt(x, top-l.Up), 0, drawing.Left, letter.Set(label, height)) })
			}
			c.tagged(body, func() { c.set(onPaper, geom.Pt(x+indent, top-l.Up), 0, drawing.Left, l) })
		}
	})
	// No first or last line alone.
	if len(out) > 1 {
		out[0].keep, out[len(out)-2].keep = true, true
	}
	return out
}

// stack makes a chunk of each line.
func stack(lines []letter.Line, height float64, draw func(letter.Line) func(*canvas, float64, float64)) []chunk {
	out := make([]chunk, len(lines))
	for i, l := range lines {
		out[i] = chunk{height: l.Up + l.Down, draw: draw(l)}
		if i > 0 {
			out[i].above = gapAbove(lines[i-1], l, height)
		}
	}
	return out
}

func (s setter) list(l List) []chunk {
	e := s.parent.add("L")
	var out []chunk
	for i, text := range l.Items {
		label := "•"
		if l.Numbered {
			label = fmt.Sprintf("%d.", i+1)
		}
		item := e.add("LI")
		lines := s.text(text, textHeight, item.add("LBody"), itemIndent, label, item.add("Lbl"))
		if i > 0 && len(lines) > 0 {
			lines[0].above = itemGap
		}
		out = append(out, lines...)
	}
	return out
}

// sideBySide sets two columns beside each other in one chunk, or one after the
// other where that would be too tall.
func (s setter) sideBySide(b Columns) ([]chunk, error) {
	half := s
	half.width = (s.width - columnGap) / 2
	// Tags are only kept of the setting that is used.
	group := &element{tag: "Sect", parent: s.parent}
	half.parent = group
	left, err := half.blocks(b.Left)
	if err != nil {
		return nil, err
	}
	right, err := half.blocks(b.Right)
	if err != nil {
		return nil, err
	}
	height := max(total(left), total(right))
	if height > s.tall {
		return s.blocks(append(append([]Block(nil), b.Left...), b.Right...))
	}
	s.parent.kids = append(s.parent.kids, group)
	return []chunk{{height: height, draw: func(c *canvas, x, top float64) {
		for _, side := range [...]struct {
			chunks []chunk
			x      float64
		}{{left, x}, {right, x + half.width + columnGap}} {
			pile(c, side.chunks, side.x, top)
		}
	}}}, nil
}
