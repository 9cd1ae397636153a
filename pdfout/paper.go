package pdfout

import (
	"fmt"

	"stepoff/layout/geom"
	"stepoff/spec/measure"
)

// Paper is what the sheets are printed on. Every page stands upright: Width,
// the short side, goes across the paper path and Height along it. A drawing
// that lies on its side is drawn turned.
type Paper struct {
	Name          string // as printed on the sheets: letter, A4, roll 36 in
	Width, Height measure.Length
	Margin        measure.Length // kept free on all four sides
	Overlap       measure.Length // shared by neighbouring sheets

	// Roll: Height is not used, a page is as long as what stands on it, at
	// least as long as it is wide and at most MaxLength.
	Roll bool

	// ScaleX and ScaleY are what the printer makes of a true length across
	// and along the paper, measured / drawn: a length is drawn divided by
	// them, so that it comes out true. 0 counts as 1.
	ScaleX, ScaleY float64
}

// MaxLength is the longest page: 200 in, 14 400 pt, beyond which readers of
// PDF files are not bound to follow.
const MaxLength = 200 * measure.Inch

// LeastScale and MostScale bound what can be the printer's own error. Beyond
// them the page was scaled on its way ("fit to page"), which no factor may
// hide.
const (
	LeastScale = 0.97
	MostScale  = 1.03
)

// leastPrintable is the smallest side, less margins, on which the rulers and
// the title block find room.
const leastPrintable = 90 * measure.Millimetre

// Check tells why nothing can be printed on the paper, or nil.
func (p Paper) Check() error {
	p = p.filled()
	height := p.Height
	if p.Roll {
		height = MaxLength
	}
	for _, f := range []struct {
		axis string
		v    float64
	}{{"across", p.ScaleX}, {"along", p.ScaleY}} {
		if !(f.v >= LeastScale && f.v <= MostScale) {
			return fmt.Errorf("the printer's factor %s the paper is %g; right is %g to %g: more is page scaling, to be switched off when printing", f.axis, f.v, LeastScale, MostScale)
		}
	}
	switch {
	case p.Width <= 0 || height <= 0:
		return fmt.Errorf("paper %s has no size", p.Name)
	case p.Width > height:
		return fmt.Errorf("paper %s is given wider than high; the short side comes first", p.Name)
	case height > MaxLength:
		return fmt.Errorf("paper %s is longer than 200 in, the longest page a PDF reader must take", p.Name)
	case p.Margin < 0 || p.Overlap < 0:
		return fmt.Errorf("paper %s has a negative margin or overlap", p.Name)
	case p.Width-2*p.Margin < leastPrintable || height-2*p.Margin < leastPrintable:
		return fmt.Errorf("paper %s leaves less than 90 mm (3 9/16 in) inside its margins, too little for the rulers and the title block", p.Name)
	case p.Width-2*p.Margin < 3*p.Overlap:
		return fmt.Errorf("the overlap takes more than a third of paper %s; take a smaller one", p.Name)
	}
	return nil
}

// filled returns the paper with factors that were left out set to 1.
func (p Paper) filled() Paper {
	if p.ScaleX == 0 {
		p.ScaleX = 1
	}
	if p.ScaleY == 0 {
		p.ScaleY = 1
	}
	return p
}

// printable is the size inside the margins across and along the paper, in
// true millimetres: what comes out of the printer, not what is drawn. A roll
// gives its longest page.
func (p Paper) printable() geom.Point {
	p = p.filled()
	height := p.Height
	if p.Roll {
		height = MaxLength
	}
	return geom.Pt((p.Width-2*p.Margin).MM()*p.ScaleX, (height-2*p.Margin).MM()*p.ScaleY)
}
