package pdfout

import (
	"math"
	"slices"

	"stepoff/layout/drawing"
	"stepoff/layout/drawing/letter"
	"stepoff/layout/geom"
)

// Spaces in a table, millimetres, and the line between rows, which only leads
// the eye.
const (
	cellSide  = 2.0 // free left and right of a column's text
	cellSpace = 0.9 // free above and below a row's text
	guide     = 0.18
	cellLines = 12 // of one cell; more is cut
)

// table sets a table in normal letters if it fits, else in small ones, else
// with its widest columns wrapped.
func (s setter) table(t Table) []chunk {
	rows := t.Rows
	if len(t.Header) > 0 {
		rows = append([][]string{t.Header}, rows...)
	}
	n := 0
	for _, r := range rows {
		n = max(n, len(r))
	}
	if n == 0 {
		return nil
	}
	height := textHeight
	widths := natural(rows, n, height)
	if sum(widths) > s.width {
		height = drawing.Small
		widths = natural(rows, n, height)
	}
	squeeze(widths, s.width)

	e := s.parent.add("Table")
	var out []chunk
	var head *chunk
	set := make([]cells, len(rows))
	first := 0.0
	for i, texts := range rows {
		set[i] = setCells(texts, widths, t.Align, height)
		first = math.Max(first, set[i].first)
	}
	for i, k := range set {
		header := i == 0 && len(t.Header) > 0
		if !header { // rows with and without fractions are equally high
			k.high += first - k.first
			k.first = first
		}
		r := row(e.add("TR"), k, header, i == len(rows)-1)
		if header {
			r.keep = true
			head = again(k)
		} else {
			r.head = head
		}
		out = append(out, r)
	}
	return out
}

// natural is how wide the columns would be with no line broken.
func natural(rows [][]string, n int, height float64) []float64 {
	widths := make([]float64, n)
	for _, r := range rows {
		for i, cell := range r {
			widths[i] = math.Max(widths[i], letter.Set(safe(cell), height).Width+2*cellSide)
		}
	}
	return widths
}

// squeeze narrows the widest columns until the table fits.
func squeeze(widths []float64, room float64) {
	order := slices.Clone(widths)
	slices.Sort(order)
	// All columns wider than a limit are cut to it; the limit is what the
	// others leave.
	left := room
	for i, w := range order {
		limit := left / float64(len(order)-i)
		if w > limit {
			for j := range widths {
				widths[j] = math.Min(widths[j], limit)
			}
			return
		}
		left -= w
	}
}

func sum(v []float64) float64 {
	s := 0.0
	for _, x := range v {
		s += x
	}
	return s
}

// cells are the cells of one row, set.
type cells struct {
	lines  [][]letter.Line
	widths []float64
	align  []drawing.Align
	size   float64 // of letters
	first  float64 // from the top to the first baseline, the same for all
	high   float64
}

func setCells(texts []string, widths []float64, align []drawing.Align, size float64) cells {
	k := cells{widths: widths, align: align, size: size}
	for i, text := range texts {
		room := widths[i] - 2*cellSide
		lines := wrap(text, size, room+rounding, cellLines)
		k.lines = append(k.lines, lines)
		if len(lines) > 0 {
			k.first = math.Max(k.first, lines[0].Up)
		}
	}
	for _, lines := range k.lines {
		if len(lines) > 0 {
			k.high = math.Max(k.high, k.first-lines[0].Up+stackHeight(lines, size))
		}
	}
	return k
}

// rounding is what a width may be exceeded by, in millimetres, where it was
// added up in another order.
const rounding = 1e-6

// write writes the cells; in wraps each in its tag.
func (k cells) write(c *canvas, x, top float64, bold bool, in func(i int, f func())) {
	for i, lines := range k.lines {
		a := drawing.Left
		if i < len(k.align) {
			a = k.align[i]
		}
		at := x + cellSide - a.Shift()*(k.widths[i]-2*cellSide)
		if len(lines) > 0 {
			in(i, func() {
				y := top - k.first
				for j, l := range lines {
					if j > 0 {
						y -= lines[j-1].Down + gapAbove(lines[j-1], l, k.size) + l.Up
					}
					if bold {
						c.bold(onPaper, geom.Pt(at, y), 0, a, k.size, l)
					} else {
						c.set(onPaper, geom.Pt(at, y), 0, a, l)
					}
				}
			})
		}
		x += k.widths[i]
	}
}

// row sets one row.
func row(tr *element, k cells, header, last bool) chunk {
	tags := make([]*element, len(k.lines))
	for i := range tags {
		tag := "TD"
		if header {
			tag = "TH"
		}
		tags[i] = tr.add(tag)
	}
	height := k.high + 2*cellSpace
	return chunk{height: height, draw: func(c *canvas, x, top float64) {
		k.write(c, x, top-cellSpace, header, func(i int, f func()) { c.tagged(tags[i], f) })
		rule(c, x, top-height, sum(k.widths), header || last)
	}}
}

// again is the header set once more where a table goes on in another column:
// not read aloud a second time.
func again(k cells) *chunk {
	height := k.high + 2*cellSpace
	return &chunk{height: height, draw: func(c *canvas, x, top float64) {
		c.artifact("Header", func() { k.write(c, x, top-cellSpace, true, func(_ int, f func()) { f() }) })
		rule(c, x, top-height, sum(k.widths), true)
	}}
}

// rule draws the line below a row.
func rule(c *canvas, x, y, width float64, strong bool) {
	w := guide
	if strong {
		w = drawing.NarrowLine
	}
	c.artifact("Rule", func() {
		c.lines(onPaper, drawing.Line{Width: w}, geom.Pt(x, y), geom.Pt(x+width, y))
	})
}
