package views

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"stepoff/layout/drawing"
	"stepoff/layout/geom"
	"stepoff/layout/turn"
	"stepoff/spec/measure"
)

// BoxPlan draws one of a turn's stacked boxes from above, without its sheathing:
// its parts, numbered as they are listed, and its outline's sides.
func BoxPlan(member string, number int, b *turn.Box, st measure.Style) *drawing.Drawing {
	d := &drawing.Drawing{
		Name:  fmt.Sprintf("%s-box-%d", member, number),
		Title: fmt.Sprintf("Box %d of %s from above, without its sheathing; the way up begins at its front, part 1", number, member),
	}
	for k, p := range b.Parts {
		layer := drawing.Outline
		if p.Kind == turn.BoxJoist {
			layer = drawing.Thin
		}
		d.Add(drawing.Path{Layer: layer, Path: p.Outline})
		d.Add(partNumber(p, k+1, middleOf(b.Outline)))
	}
	inner, _ := innerCorner(b.Outline)
	for k, e := range b.Outline.Edges {
		if n := len(b.Outline.Edges); k == inner || k == (inner+n-1)%n && inner >= 0 {
			continue // crowded there: said in words
		}
		d.Dim(drawing.Aligned, e.From, e.To, -dimRow, st.FormatMM(e.Length()))
	}
	return d
}

// InnerSides are the two sides of a box that meet in the turn's inside corner: how
// far it reaches from there down the stair, and up; ok is false where it does not
// reach round that corner.
func InnerSides(b *turn.Box) (down, up float64, ok bool) {
	k, ok := innerCorner(b.Outline)
	if !ok {
		return 0, 0, false
	}
	edges := b.Outline.Edges
	down, up = edges[k].Length(), edges[(k+len(edges)-1)%len(edges)].Length()
	return down, up, true
}

// innerCorner is the edge that begins in the outline's corner that points inward;
// -1 where none does.
func innerCorner(p geom.Path) (edge int, ok bool) {
	n := len(p.Edges)
	for k, e := range p.Edges {
		before := p.Edges[(k+n-1)%n]
		if r2.Cross(r2.Unit(r2.Sub(before.To, before.From)), r2.Unit(r2.Sub(e.To, e.From))) < -levelEnough {
			return k, true
		}
	}
	return -1, false
}

// middleOf is about the middle of a closed path: the mean of its corners.
func middleOf(p geom.Path) geom.Point {
	var m geom.Point
	for _, e := range p.Edges {
		m = r2.Add(m, r2.Scale(1/float64(len(p.Edges)), e.From))
	}
	return m
}

// How far from the middle of a part its number stands, toward the box's middle, in
// millimetres of the box: half the stock and clear of it, for writing above its
// line and below it.
const (
	numberAbove = 32.0
	numberBelow = 70.0
)

// partNumber writes a part's number beside it, on the side of the box's middle.
func partNumber(p turn.BoxPart, number int, box geom.Point) drawing.Text {
	middle := middleOf(p.Outline)
	var along geom.Point
	for _, e := range p.Outline.Edges {
		if side := r2.Sub(e.To, e.From); r2.Norm(side) > r2.Norm(along) {
			along = side
		}
	}
	angle := readable(along)
	sin, cos := math.Sincos(angle)
	off, up := numberAbove, geom.Pt(-sin, cos)
	if r2.Dot(r2.Sub(box, middle), up) < 0 {
		off = -numberBelow
	}
	return drawing.Text{Layer: drawing.Note, At: r2.Add(middle, r2.Scale(off, up)), Height: drawing.Small, Angle: angle, Align: drawing.Middle, Text: fmt.Sprint(number)}
}
