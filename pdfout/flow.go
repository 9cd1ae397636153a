package pdfout

import "stepoff/layout/drawing"

// Page is a member of a Document: a Flow, a *Tiling or a Calibration.
type Page interface{ page() }

// Flow is text, tables and figures, set on as many pages as they take. A Flow
// begins a new page.
type Flow struct {
	Title  string // bookmark; empty: none
	Blocks []Block
	Rulers bool // check rulers on both axes of its first page: "print this page first"
	// Wide sets it in one column however wide the paper: for pictures, which a
	// column would make small.
	Wide bool
}

// Block is one piece of a Flow.
type Block interface{ block() }

// Heading is a heading; Level 1 is the largest, 3 the smallest.
type Heading struct {
	Level int
	Text  string
}

// Paragraph is running text, in small letters where it stands beside the matter.
type Paragraph struct {
	Text  string
	Small bool
}

func (p Paragraph) height() float64 {
	if p.Small {
		return drawing.Small
	}
	return textHeight
}

// List is a bulleted or numbered list.
type List struct {
	Numbered bool
	Items    []string
}

// Table is a table. Header may be empty. Align gives the columns' alignment;
// columns past its end stand at the left.
type Table struct {
	Header []string
	Rows   [][]string
	Align  []drawing.Align
}

// Figure is a drawing at the largest round scale at which it fits the width
// and MaxHeight (millimetres on the sheet; 0: what suits a page). It carries
// its scale, a scale bar and the words "not for cutting".
type Figure struct {
	Drawing   *drawing.Drawing
	MaxHeight float64
	Caption   string // empty: the drawing's title
	NoScale   bool   // for a sketch that is to no scale: no scale text and no bar
}

// Columns sets blocks side by side. What is too tall for a page is set one
// after the other.
type Columns struct{ Left, Right []Block }

// PageBreak begins a new page.
type PageBreak struct{}

// Calibration is the printer's test page: the longest bars that fit, across
// and along the paper, drawn without the paper's factors.
type Calibration struct{}

func (Flow) page()        {}
func (*Tiling) page()     {}
func (Calibration) page() {}

func (Heading) block()   {}
func (Paragraph) block() {}
func (List) block()      {}
func (Table) block()     {}
func (Figure) block()    {}
func (Columns) block()   {}
func (PageBreak) block() {}
