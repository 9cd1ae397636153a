package drawing

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"stepoff/layout/drawing/letter"
	"stepoff/layout/geom"
)

// Parts of a dimension, in millimetres on the sheet, after the habits of ISO
// 129: extension lines stand off the point and run on past the dimension line,
// which ends in oblique strokes; the figure stands above the line.
const (
	extensionGap  = 1.0 // point to where its extension line begins
	extensionPast = 2.0 // extension line beyond the dimension line
	stroke        = 1.5 // half an oblique stroke, along x and along y of the line
	figureGap     = 0.8 // dimension line to the figure
	figureSide    = 1.0 // free at either end of a figure between its strokes
)

// DimHeight is the height of a dimension's figures.
const DimHeight = Normal

// Resolve returns the drawing as paths and text only, in the order they are
// drawn, for a sheet on which scale millimetres stand for one of the drawing
// (1: full size; 0.05: 1:20). Places stay those of the thing drawn; heights of
// letters stay millimetres on the sheet.
func (d *Drawing) Resolve(scale float64) []Item {
	out := make([]Item, 0, len(d.Items))
	for _, it := range d.Items {
		if dim, ok := it.(Dim); ok {
			out = append(out, dim.resolve(scale)...)
			continue
		}
		out = append(out, it)
	}
	slices.SortStableFunc(out, func(a, b Item) int { return int(layerOf(a) - layerOf(b)) })
	return out
}

func layerOf(it Item) Layer {
	switch it := it.(type) {
	case Path:
		return it.Layer
	case Text:
		return it.Layer
	}
	return Dimension
}

// resolve draws the dimension. It reckons in millimetres on the sheet, and
// goes back to those of the drawing at the end.
func (d Dim) resolve(scale float64) []Item {
	a, b := r2.Scale(scale, d.A), r2.Scale(scale, d.B)
	along, lineA, lineB := d.line(a, b)
	if along == (Point{}) { // the points coincide: a figure without a line
		return []Item{Text{Layer: Dimension, At: d.A, Height: DimHeight, Align: Middle, Text: d.Text}}
	}
	var out []Item
	add := func(pts ...Point) {
		for i := range pts {
			pts[i] = r2.Scale(1/scale, pts[i])
		}
		out = append(out, Path{Layer: Dimension, Path: geom.Polyline(pts...)})
	}
	for _, end := range [...][2]Point{{a, lineA}, {b, lineB}} {
		off := r2.Sub(end[1], end[0])
		if long := r2.Norm(off); long > extensionGap {
			u := r2.Scale(1/long, off)
			add(r2.Add(end[0], r2.Scale(extensionGap, u)), r2.Add(end[1], r2.Scale(extensionPast, u)))
		}
	}

	// Writing runs to the right, or upward where the line is upright.
	if along.X < -upright || along.X < upright && along.Y < 0 {
		along, lineA, lineB = r2.Scale(-1, along), lineB, lineA
	}
	up := geom.Pt(-along.Y, along.X)
	set := letter.Set(d.Text, DimHeight)
	above := r2.Scale(figureGap+NarrowLine/2+set.Down, up)
	centre := r2.Scale(0.5, r2.Add(lineA, lineB))
	from, to := lineA, lineB
	if room := r2.Norm(r2.Sub(lineB, lineA)); room < set.Width+2*figureSide {
		// Too short: the figure stands outside, on the line drawn on past B.
		start := r2.Add(lineB, r2.Scale(extensionPast, along))
		centre = r2.Add(start, r2.Scale(set.Width/2, along))
		to = r2.Add(start, r2.Scale(set.Width, along))
	}
	add(from, to)
	slant := r2.Add(r2.Scale(stroke, along), r2.Scale(stroke, up))
	for _, p := range [...]Point{lineA, lineB} {
		add(r2.Sub(p, slant), r2.Add(p, slant))
	}
	return append(out, Text{
		Layer: Dimension, At: r2.Scale(1/scale, r2.Add(centre, above)), Height: DimHeight,
		Angle: math.Atan2(along.Y, along.X), Align: Middle, Text: d.Text,
	})
}

// upright is how far from the vertical, as a cosine, a line still counts as
// upright, to be read from the right: less than anyone sees.
const upright = 1e-3

// line returns the dimension line's direction and ends. The direction is 0
// where there is no line to draw.
func (d Dim) line(a, b Point) (along, lineA, lineB Point) {
	switch d.Direction {
	case Horizontal:
		y := math.Max(a.Y, b.Y)
		if d.Offset < 0 {
			y = math.Min(a.Y, b.Y)
		}
		lineA, lineB = geom.Pt(a.X, y+d.Offset), geom.Pt(b.X, y+d.Offset)
	case Vertical:
		x := math.Max(a.X, b.X)
		if d.Offset < 0 {
			x = math.Min(a.X, b.X)
		}
		lineA, lineB = geom.Pt(x+d.Offset, a.Y), geom.Pt(x+d.Offset, b.Y)
	default:
		v := r2.Sub(b, a)
		if n := r2.Norm(v); n > 0 {
			off := r2.Scale(d.Offset/n, geom.Pt(-v.Y, v.X))
			lineA, lineB = r2.Add(a, off), r2.Add(b, off)
		}
	}
	v := r2.Sub(lineB, lineA)
	if n := r2.Norm(v); n > 0 {
		along = r2.Scale(1/n, v)
	}
	return along, lineA, lineB
}

// Extent is the box round everything the drawing shows at a scale, its writing
// included, in millimetres of the drawing.
func (d *Drawing) Extent(scale float64) geom.Box {
	b := geom.EmptyBox()
	for _, it := range d.Resolve(scale) {
		switch it := it.(type) {
		case Path:
			b = b.Union(it.Box())
		case Text:
			for _, corner := range it.Corners() {
				b = b.Include(r2.Add(it.At, r2.Scale(1/scale, corner)))
			}
		}
	}
	return b
}

// Corners are the corners of the box round the writing, counter-clockwise from
// its lower left, as steps from its place in millimetres on the sheet.
func (t Text) Corners() [4]Point {
	set := letter.Set(t.Text, t.Height)
	x0 := set.Width * t.Align.Shift()
	sin, cos := math.Sincos(t.Angle)
	var out [4]Point
	for i, c := range [4]Point{{X: x0, Y: -set.Down}, {X: x0 + set.Width, Y: -set.Down}, {X: x0 + set.Width, Y: set.Up}, {X: x0, Y: set.Up}} {
		out[i] = geom.Pt(c.X*cos-c.Y*sin, c.X*sin+c.Y*cos)
	}
	return out
}

// Shift is where a line of writing begins, from its place, in widths of the
// line.
func (a Align) Shift() float64 { return [...]float64{Left: 0, Middle: -0.5, Right: -1}[a] }
