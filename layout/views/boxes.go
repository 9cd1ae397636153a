package views

import (
	"fmt"

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
		number := drawing.Text{Layer: drawing.Note, Height: drawing.Small, Align: drawing.Middle, Text: fmt.Sprint(k + 1)}
		var along geom.Point
		ps := p.Outline.Points(1)
		for i, q := range ps {
			number.At = r2.Add(number.At, r2.Scale(1/float64(len(ps)), q))
			if side := r2.Sub(ps[(i+1)%len(ps)], q); r2.Norm(side) > r2.Norm(along) {
				along = side
			}
		}
		number.Angle = readable(along)
		up := geom.Pt(-r2.Unit(along).Y, r2.Unit(along).X)
		if r2.Dot(up, geom.Pt(0, 1)) < 0 {
			up = r2.Scale(-1, up)
		}
		number.At = r2.Sub(number.At, r2.Scale(numberLow, up))
		d.Add(number)
	}
	for _, e := range b.Outline.Edges {
		d.Dim(drawing.Aligned, e.From, e.To, -dimRow, st.FormatMM(e.Length()))
	}
	return d
}

// numberLow is how far below the middle of a part its number's line runs, in
// millimetres of the box: half a figure at about 1:10.
const numberLow = 12.0
