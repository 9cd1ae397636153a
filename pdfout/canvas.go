package pdfout

import (
	"bytes"
	"errors"
	"math"
	"slices"
	"strconv"

	"github.com/go-pdf/fpdf"

	"stepoff/layout/drawing"
	"stepoff/layout/drawing/letter"
	"stepoff/layout/geom"
	"stepoff/spec/measure"
)

// ptPerMM converts millimetres to points, PDF's unit.
const ptPerMM = 72 / 25.4

// fontName is the name the font goes by inside the file.
const fontName = "go"

// canvas writes pages. Lines are written as PDF operators of our own, to a
// tenth of a micrometre: the library's own calls round to two decimals of a
// point, and its arcs miss their circle.
type canvas struct {
	tallest float64 // height of the file's pages, millimetres
	pdf     *fpdf.Fpdf
	tags    *structure
	buf     []byte     // operators not yet handed to the library
	size    geom.Point // of the page, millimetres as drawn
	line    drawing.Line
	drawn   bool    // line has been written since the page or the last q began
	size72  float64 // font size in force, points
	err     error
}

var errNotANumber = errors.New("a place on the sheet is not a number: the drawing cannot be printed")

// newPage begins a page; everything before it is finished.
func (c *canvas) newPage(size geom.Point) {
	c.flush()
	size.Y = math.Max(size.Y, c.tallest)
	c.size = size
	c.pdf.AddPageFormat("P", fpdf.SizeType{Wd: size.X * ptPerMM, Ht: size.Y * ptPerMM})
	c.tags.newPage()
	c.drawn = false
	c.size72 = 0
	c.op("1 j") // round joins: a corner ends where the line does
}

// flush hands what was written to the library.
func (c *canvas) flush() {
	if len(c.buf) > 0 {
		c.pdf.RawWriteBuf(bytes.NewReader(c.buf[:len(c.buf)-1])) // the library ends the line
		c.buf = c.buf[:0]
	}
}

// op writes an operator line.
func (c *canvas) op(s string) { c.buf = append(append(c.buf, s...), '\n') }

// num writes a number to four decimals. Steps of a nanometre were taken
// before, so that every processor writes the same figures.
func (c *canvas) num(v float64) {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		c.err = errNotANumber
		v = 0
	}
	n := int64(math.Round(v * 1e4))
	if n < 0 {
		c.buf = append(c.buf, '-')
		n = -n
	}
	c.buf = strconv.AppendInt(c.buf, n/1e4, 10)
	if n %= 1e4; n != 0 {
		frac := [5]byte{'.', byte('0' + n/1000), byte('0' + n/100%10), byte('0' + n/10%10), byte('0' + n%10)}
		end := 5
		for frac[end-1] == '0' {
			end--
		}
		c.buf = append(c.buf, frac[:end]...)
	}
	c.buf = append(c.buf, ' ')
}

// point writes a place on the paper given in millimetres.
func (c *canvas) point(p geom.Point) {
	c.num(measure.SnapMM(p.X) * ptPerMM)
	c.num(measure.SnapMM(p.Y) * ptPerMM)
}

// with sets the line to draw with.
func (c *canvas) with(l drawing.Line) {
	if c.drawn && c.line.Width == l.Width && slices.Equal(c.line.Dash, l.Dash) {
		return
	}
	if !c.drawn || c.line.Width != l.Width {
		c.num(l.Width * ptPerMM)
		c.op("w")
	}
	if !c.drawn || !slices.Equal(c.line.Dash, l.Dash) {
		c.buf = append(c.buf, '[')
		for _, d := range l.Dash {
			c.num(d * ptPerMM)
		}
		c.op("] 0 d")
	}
	c.line, c.drawn = l, true
}

// joined is how far apart, in millimetres, an edge's end and the next one's
// beginning may be and still be one corner.
const joined = 1e-6

// trace writes a chain of edges as a path. Edges that do not begin where the
// one before ended begin a new piece.
func (c *canvas) trace(pl placing, edges []geom.Edge, closed bool) {
	var last geom.Point
	for i, e := range edges {
		if i == 0 || math.Abs(e.From.X-last.X) > joined || math.Abs(e.From.Y-last.Y) > joined {
			c.point(pl.at(e.From))
			c.op("m")
		}
		last = e.To
		if closed && i == len(edges)-1 && !e.IsArc() {
			break // closing the path draws it
		}
		if !e.IsArc() {
			c.point(pl.at(e.To))
			c.op("l")
			continue
		}
		for _, q := range e.Cubics() {
			c.point(pl.at(q.C1))
			c.point(pl.at(q.C2))
			c.point(pl.at(q.To))
			c.op("c")
		}
	}
	if closed {
		c.op("h")
	}
}

// stroke draws a chain of edges.
func (c *canvas) stroke(pl placing, l drawing.Line, edges []geom.Edge, closed bool) {
	if len(edges) == 0 {
		return
	}
	c.with(l)
	c.trace(pl, edges, closed)
	c.op("S")
}

// lines draws a line through places.
func (c *canvas) lines(pl placing, l drawing.Line, pts ...geom.Point) {
	c.stroke(pl, l, geom.Polyline(pts...).Edges, false)
}

// fill fills a closed chain of edges: 0 leaves the paper white, 1 is black.
func (c *canvas) fill(pl placing, dark float64, edges []geom.Edge) {
	if len(edges) == 0 {
		return
	}
	c.num(1 - dark)
	c.op("g")
	c.trace(pl, edges, true)
	c.op("f")
	c.op("0 g")
}

// clipped draws what f draws inside a box of the placing only.
func (c *canvas) clipped(pl placing, b geom.Box, f func()) {
	c.op("q")
	c.drawn, c.size72 = false, 0
	c.trace(pl, geom.Rect(b).Edges, true)
	c.op("W n")
	f()
	c.op("Q")
	c.drawn, c.size72 = false, 0
}

// text writes a line at a place of the drawing.
func (c *canvas) text(pl placing, t drawing.Text) {
	c.set(pl, t.At, t.Angle, t.Align, letter.Set(safe(t.Text), t.Height))
}

// set writes a line that has been set.
func (c *canvas) set(pl placing, at geom.Point, angle float64, align drawing.Align, l letter.Line) {
	if len(l.Spans) == 0 {
		return
	}
	sin, cos := direction(angle + pl.turn())
	p := pl.at(at)
	if math.IsNaN(p.X+p.Y+angle) || math.IsInf(p.X+p.Y+angle, 0) {
		c.err = errNotANumber
		return
	}
	start := l.Width * align.Shift()
	place := func(x, y float64) geom.Point {
		x += start
		return geom.Pt(p.X+x*cos-y*sin, p.Y+x*sin+y*cos)
	}
	for _, s := range l.Spans {
		if s.Bar == nil {
			c.run(s.Runs[0], place, sin, cos)
			continue
		}
		c.buf = append(append(append(c.buf, "/Span <</ActualText ("...), s.Text...), ")>> BDC\n"...)
		for _, r := range s.Runs {
			c.run(r, place, sin, cos)
		}
		c.lines(onPaper, drawing.Line{Width: letter.BarWidth}, place(s.Bar.X0, s.Bar.Y), place(s.Bar.X1, s.Bar.Y))
		c.op("EMC")
	}
}

// bold writes a line with its letters' outlines thickened.
func (c *canvas) bold(pl placing, at geom.Point, angle float64, align drawing.Align, height float64, l letter.Line) {
	c.with(drawing.Line{Width: height / 16})
	c.op("2 Tr")
	c.set(pl, at, angle, align, l)
	c.op("0 Tr")
}

// run writes one run through the library, which keeps count of the letters
// used and embeds those.
func (c *canvas) run(r letter.Run, place func(x, y float64) geom.Point, sin, cos float64) {
	// Rounded up to the library's two decimals, so that no letter is smaller
	// than asked for.
	size := math.Ceil(letter.Em(r.Height)*ptPerMM*100-1e-6) / 100
	if size != c.size72 {
		c.flush()
		c.pdf.SetFontSize(size)
		c.size72 = size
	}
	p := place(r.X, r.Y)
	if sin == 0 && cos == 1 {
		c.flush()
		c.pdf.Text(p.X*ptPerMM, (c.size.Y-p.Y)*ptPerMM, r.Text)
		return
	}
	c.op("q")
	for _, v := range [...]float64{cos, sin, -sin, cos} {
		c.num(v)
	}
	c.point(p)
	c.op("cm")
	c.flush()
	c.pdf.Text(0, c.size.Y*ptPerMM, r.Text)
	c.op("Q")
}

// direction is sin and cos of an angle, exact for quarter turns.
func direction(angle float64) (sin, cos float64) {
	sin, cos = math.Sincos(angle)
	return measure.SnapDegrees(sin), measure.SnapDegrees(cos)
}
