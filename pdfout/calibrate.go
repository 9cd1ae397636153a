package pdfout

import (
	"errors"
	"fmt"
	"math"

	"stepoff/layout/drawing"
	"stepoff/layout/drawing/letter"
	"stepoff/layout/geom"
	"stepoff/spec/measure"
)

// Bars are the true lengths of the calibration page's two bars: the longest
// whole number of inches (imperial) or centimetres (metric) that fits across
// and along the paper.
func Bars(p Paper, u measure.Units) (across, along measure.Length) {
	step := measure.Inch
	if u == measure.Metric {
		step = measure.Centimetre
	}
	height := p.Height
	if p.Roll {
		height = p.Width
	}
	longest := func(side measure.Length) measure.Length { return (side - 2*p.Margin - 2*barInset) / step * step }
	return longest(p.Width), longest(height)
}

// barInset keeps a bar and its end marks off the margin, so that they are
// printed whole.
const barInset = 5 * measure.Millimetre

// Factor is what the printer makes of a true length: measured / drawn. A
// factor outside LeastScale to MostScale is an error: that is page scaling.
func Factor(measured, drawn measure.Length) (float64, error) {
	if drawn <= 0 || measured <= 0 {
		return 0, errors.New("a bar's length is more than 0")
	}
	f := float64(measured) / float64(drawn)
	if f < LeastScale || f > MostScale {
		return f, fmt.Errorf("the bar came out %.4f times as long as drawn; %g to %g can be the printer's own error, this is page scaling: print again at 100 %%, no fit to page", f, LeastScale, MostScale)
	}
	return f, nil
}

// calibration sets the printer's test page.
func (doc *Document) calibration(root *element) leaf {
	paper := doc.Paper
	paper.ScaleX, paper.ScaleY = 1, 1
	size := geom.Pt(paper.Width.MM(), paper.Height.MM())
	if paper.Roll {
		size.Y = size.X
	}
	section := root.add("Sect")
	return leaf{bookmark: "Printer test", height: size.Y, draw: func(c *canvas, _, _ int) {
		c.newPage(size)
		pl, w := paper.window(size)
		across, along := Bars(paper, doc.Units)
		style := measure.Style{Units: doc.Units}
		inset := barInset.MM()
		c.artifact("Bar", func() {
			// The bars cross clear of their ends, whose edges are measured.
			c.bar(pl, geom.Pt(inset, inset+barCross), geom.Pt(1, 0), across.MM())
			c.bar(pl, geom.Pt(inset+barCross, inset), geom.Pt(0, 1), along.MM())
		})
		c.onBars(pl, style, across, along)
		texts := []noteText{
			{text: "Printer test", height: drawing.Huge, bold: true},
			{text: "Printed at 100 %, no fit to page, the two bars are, from outer edge to outer edge of their end marks:", height: drawing.Normal, above: 3},
			{text: "across the paper (x): " + style.Inches(across), height: drawing.Normal, bold: true, above: 3},
			{text: "along the paper (y): " + style.Inches(along), height: drawing.Normal, bold: true, above: 3},
			{text: "Measure both with the tape or rule the stair is cut by, to the nearest 1/64 in or 0.5 mm. Give what you measure to this program: it answers with two factors for the job, and every sheet is then drawn so that it comes out true on this printer with this paper.", height: drawing.Normal, above: 3},
			{text: "Print the sheets on the same printer, from the same tray, at the same setting. Paper also moves with the damp: print the test again when the sheets have lain.", height: drawing.Normal, above: 3},
			{text: fmt.Sprintf("A bar more than 3 %% off is no printer's own error: the page was scaled on its way. Turn off fit to page and print again. Factors outside %g to %g are refused.", LeastScale, MostScale), height: drawing.Normal, above: 3},
			{text: join(" · ", "paper "+paper.Name, doc.Title, doc.Number, doc.Date), height: drawing.Small, most: 3, above: 3},
		}
		n := block(min(150, w.Width()-textInset-barCross), 1, texts)
		at := geom.Pt(textInset, w.Max.Y-barCross)
		for _, l := range n.lines {
			tag := "P"
			if l.height == drawing.Huge {
				tag = "H1"
			}
			c.tagged(section.add(tag), func() {
				if l.bold {
					c.bold(pl, geom.Pt(at.X, at.Y-l.down), 0, drawing.Left, l.height, l.Line)
				} else {
					c.set(pl, geom.Pt(at.X, at.Y-l.down), 0, drawing.Left, l.Line)
				}
			})
		}
	}}
}

// barCross is how far from its end each bar is crossed by the other, and
// textInset keeps the page's words off the upright one, millimetres.
const (
	barCross  = 12.0
	textInset = 32.0
)

// bar draws a bar whose length is from the outer edge of one end mark to the
// outer edge of the other.
func (c *canvas) bar(pl placing, from, along geom.Point, length float64) {
	const half = 4.0
	line := drawing.Line{Width: drawing.NarrowLine}
	inner := drawing.NarrowLine / 2
	left := geom.Pt(-along.Y, along.X)
	at := func(a, s float64) geom.Point {
		return geom.Pt(from.X+a*along.X+s*left.X, from.Y+a*along.Y+s*left.Y)
	}
	c.lines(pl, line, at(0, 0), at(length, 0))
	for _, a := range [...]float64{inner, length - inner} {
		c.lines(pl, line, at(a, -half), at(a, half))
	}
}

// onBars writes along each bar how long it is.
func (c *canvas) onBars(pl placing, style measure.Style, across, along measure.Length) {
	x := letter.Set("x: "+style.Inches(across)+" across the paper", drawing.Normal)
	y := letter.Set("y: "+style.Inches(along)+" along the paper", drawing.Normal)
	inset := barInset.MM()
	c.artifact("Bar", func() {
		c.set(pl, geom.Pt(inset+across.MM()/2, inset+barCross+2+x.Down), 0, drawing.Middle, x)
		c.set(pl, geom.Pt(inset+barCross+2+y.Up, inset+along.MM()/2), math.Pi/2, drawing.Middle, y)
	})
}
