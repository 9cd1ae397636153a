package drawing

// Line is how a layer's lines look, in millimetres on the sheet.
type Line struct {
	Width float64
	Dash  []float64 // dash, gap, dash, gap...; empty: continuous
}

// Widths of lines: the group 0.7/0.35 of ISO 128. Middle is the step between,
// for what is seen but not cut, so that a cut is the heaviest line anywhere.
const (
	WideLine   = 0.7
	MiddleLine = 0.5
	NarrowLine = 0.35
)

// Lengths of ISO 128's line elements, in widths of a narrow line (from
// memory): dash 12, long dash 24, gap 3. Dots are drawn a gap long rather than
// half a width, which a poor printer loses.
const (
	dash     = 12 * NarrowLine
	longDash = 24 * NarrowLine
	gap      = 3 * NarrowLine
	dot      = gap
)

// lines is the one table of what layers look like. Line kinds after ISO 128:
// 01.1 and 01.2 continuous narrow and wide, 02.1 dashed for edges behind
// something, 04.1 chain for centres, 05.1 double-dotted chain for the shape a
// piece has before it is worked.
var lines = [LayerCount]Line{
	Lumber:    {NarrowLine, []float64{longDash, gap, dot, gap, dot, gap}},
	Outline:   {MiddleLine, nil},
	Hidden:    {NarrowLine, []float64{dash, gap}},
	Centre:    {NarrowLine, []float64{longDash, gap, dot, gap}},
	Thin:      {NarrowLine, nil},
	Dimension: {NarrowLine, nil},
	Note:      {NarrowLine, nil},
	Mark:      {NarrowLine, nil},
	Cut:       {WideLine, nil},
}

// Line says how the layer's lines look.
func (l Layer) Line() Line { return lines[l] }
