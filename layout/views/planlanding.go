package views

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"stepoff/layout"
	"stepoff/layout/drawing"
	"stepoff/layout/geom"
	"stepoff/spec"
)

// landing draws a landing with its name, level and clear sizes.
func (p *plan) landing(i int, l *layout.Landing) {
	p.d.Polygon(p.edge(i), l.Outline...)
	fr := placeFrame(l.Entry)
	p.landingWords(l, fr)
	p.landingDims(l, fr)
}

// reach is how far a landing goes along a frame's heading, and to its left.
func reach(l *layout.Landing, fr frame) geom.Box {
	b := geom.EmptyBox()
	for _, q := range l.Outline {
		b = b.Include(geom.Pt(fr.lengthwise(q), fr.sideways(q)))
	}
	return b
}

// landingWords writes name and level where the way up does not go: in the far
// half of a landing that turns, in the left half of one straight through.
func (p *plan) landingWords(l *layout.Landing, fr frame) {
	b := reach(l, fr)
	along, from := fr.left, fr.at(b.Min.X+nameAt*b.Width(), (b.Min.Y+b.Max.Y)/2)
	to := fr.at(b.Min.X+levelAt*b.Width(), (b.Min.Y+b.Max.Y)/2)
	if l.Spec.Turn == spec.Straight {
		along, from = fr.along, fr.at((b.Min.X+b.Max.X)/2, b.Min.Y+nameAt*b.Height())
		to = fr.at((b.Min.X+b.Max.X)/2, b.Min.Y+levelAt*b.Height())
	}
	angle := readable(along)
	sin, cos := math.Sincos(angle)
	if r2.Dot(r2.Sub(from, to), geom.Pt(-sin, cos)) < 0 { // the name is the upper line, from wherever it is read
		from, to = to, from
	}
	for _, line := range [...]struct {
		at    geom.Point
		words string
	}{{from, l.Name}, {to, p.st.FormatMM(l.Level)}} {
		p.d.Add(drawing.Text{Layer: drawing.Note, At: line.at, Height: drawing.Small, Angle: angle, Align: drawing.Middle, Text: line.words})
	}
}

// Where a landing's name and level are written, as shares of its length.
const (
	nameAt  = 0.84
	levelAt = 0.58
)

// landingDims gives the clear sizes, which are taken from the nosings of the
// upper flight that stand on the landing, or from the lower one's last riser
// line, to the far edges.
func (p *plan) landingDims(l *layout.Landing, fr frame) {
	b := reach(l, fr)
	side, off := p.outer(fr, fr.at(b.Min.X, 0))
	edge := func(far, off float64) float64 { // of the landing on that side, past its wall
		return far + off - math.Copysign(p.width/2, off)
	}
	far := b.Max.Y
	if side < 0 {
		far = b.Min.Y
	}
	// Along the lower flight.
	start, end := b.Min.X, b.Max.X
	switch {
	case l.Spec.Turn == spec.Straight:
		end -= p.front
	case l.Spec.Angle == 180:
		start += p.front
	}
	p.d.Dim(drawing.Aligned, fr.at(start, edge(far, off)), fr.at(end, edge(far, off)), side*landingRow*dimRow, p.st.Inches(l.Spec.Length)+" clear")
	// Across it, beyond its far edge.
	if l.Spec.Turn == spec.Straight {
		return
	}
	low, high := b.Min.Y, b.Max.Y
	if l.Spec.Angle == 90 {
		if l.Spec.Turn == spec.Left {
			high -= p.front
		} else {
			low += p.front
		}
	}
	top := b.Max.X
	if p.wall(1) || p.wall(-1) {
		top += wallThickness
	}
	p.d.Dim(drawing.Aligned, fr.at(top, high), fr.at(top, low), landingRow*dimRow, p.st.Inches(l.Spec.Width)+" clear")
}
