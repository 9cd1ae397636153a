package pdfout

import (
	"math"

	"stepoff/layout/geom"
)

// chunk is what a page is never broken within: a line, a row, a figure.
type chunk struct {
	above   float64 // free above it; nothing at the top of a column
	height  float64
	keep    bool // stays in one column with the next
	newPage bool
	head    *chunk // set again above it where it begins a column
	draw    func(c *canvas, x, top float64)
}

// columnWidth bounds a column of text, in millimetres: longer lines are hard
// to follow. Wider paper gets more columns.
const (
	columnWidth = 200.0
	columnGap   = 10.0
)

// columns is how many columns stand on a page and how wide each is.
func (f Flow) columns(width float64) (n int, each float64) {
	if f.Wide {
		return 1, width
	}
	n = max(1, int(math.Ceil((width+columnGap)/(columnWidth+columnGap)-1e-9)))
	return n, (width+columnGap)/float64(n) - columnGap
}

// set is a chunk in its place.
type set struct {
	*chunk
	x, top float64
}

// paginate spreads chunks over pages of columns inside the area.
func (f Flow) paginate(chunks []chunk, area geom.Box) [][]set {
	n, each := f.columns(area.Width())
	var pages [][]set
	column, top := n, 0.0 // full: the first chunk begins a page
	fresh := true
	next := func() {
		if column++; column >= n {
			pages, column = append(pages, nil), 0
		}
		top, fresh = area.Max.Y, true
	}
	put := func(c *chunk) {
		if !fresh {
			top -= c.above
		}
		p := &pages[len(pages)-1]
		*p = append(*p, set{c, area.Min.X + float64(column)*(each+columnGap), top})
		top -= c.height
		fresh = false
	}
	for i := range chunks {
		c := &chunks[i]
		if c.newPage && (column > 0 || !fresh) {
			column = n
		}
		if column >= n || !fresh && top-together(chunks[i:]) < area.Min.Y && !(i > 0 && chunks[i-1].keep && top-c.above-c.height >= area.Min.Y) {
			next()
			if c.head != nil && c.head != c {
				put(c.head)
			}
		}
		put(c)
	}
	return pages
}

// together is the height of the first chunk and those it must not be parted
// from.
func together(chunks []chunk) float64 {
	sum := 0.0
	for i := range chunks {
		sum += chunks[i].above + chunks[i].height
		if !chunks[i].keep {
			break
		}
	}
	return sum
}

// total is the height of all chunks one below the other.
func total(chunks []chunk) float64 {
	sum := 0.0
	for i := range chunks {
		if i > 0 {
			sum += chunks[i].above
		}
		sum += chunks[i].height
	}
	return sum
}
