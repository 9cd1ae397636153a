package pdfout

import (
	"fmt"
	"math"

	"stepoff/layout/drawing"
	"stepoff/layout/drawing/letter"
	"stepoff/layout/geom"
	"stepoff/spec/measure"
)

// figureHeight is how high a figure may be that does not say, in millimetres.
const figureHeight = 110

// figureAbove is the space above a figure, in millimetres.
const figureAbove = 4.0

// notForCutting is on every drawing that is not at full size on its own sheet.
const notForCutting = "not for cutting"

// figure sets a drawing with what must stand below it: its scale, a bar to
// measure by, and that it is not for cutting.
func (s setter) figure(f Figure) (chunk, error) {
	if err := f.Drawing.Check(); err != nil {
		return chunk{}, err
	}
	title := f.Caption
	if title == "" {
		title = f.Drawing.Title
	}
	legend := title
	bar := 0.0 // height of the scale bar with its figures
	if !f.NoScale {
		bar = 7
	}
	high := f.MaxHeight
	if high == 0 {
		high = figureHeight
	}
	captions := 2*leading*drawing.Small + bar
	room := geom.Pt(s.width, math.Min(high, s.tall-captions-1)-captions)
	if room.Y < 10 {
		return chunk{}, fmt.Errorf("drawing %s: no room for it, %g mm high", f.Drawing.Name, high)
	}

	var scale float64
	var box geom.Box
	if f.NoScale {
		scale, box = anyScale(f.Drawing, room)
		legend += " · to no scale, " + notForCutting
	} else {
		r, b, ok := largest(f.Drawing, room, s.units)
		if !ok {
			return chunk{}, fmt.Errorf("drawing %s is too large for a page at any scale", f.Drawing.Name)
		}
		scale, box = 1/r.one, b
		legend += " · scale " + r.String() + ", " + notForCutting
	}
	lines := wrap(legend, drawing.Small, s.width, 2)
	drawn := box.Height() * scale
	height := drawn + 2 + bar + stackHeight(lines, drawing.Small)
	e := s.parent.add("Figure")
	e.alt = safe(title)
	caption := s.parent.add("P")
	units := s.units
	return chunk{height: height, above: figureAbove, draw: func(c *canvas, x, top float64) {
		left := x + (s.width-box.Width()*scale)/2
		c.tagged(e, func() {
			c.figure(f.Drawing, scaled{from: box.Min, to: geom.Pt(left, top-drawn), scale: scale})
			if bar > 0 {
				c.scaleBar(geom.Pt(x, top-drawn-2-bar), scale, units)
			}
		})
		c.tagged(caption, func() {
			y := top - drawn - 2 - bar
			for i, l := range lines {
				if i > 0 {
					y -= gapAbove(lines[i-1], l, drawing.Small)
				}
				y -= l.Up
				c.set(onPaper, geom.Pt(x, y), 0, drawing.Left, l)
				y -= l.Down
			}
		})
	}}, nil
}

// figure draws a drawing at a scale.
func (c *canvas) figure(d *drawing.Drawing, pl scaled) {
	for _, it := range d.Resolve(pl.scale) {
		switch it := it.(type) {
		case drawing.Path:
			if it.Fill > 0 {
				c.fill(pl, it.Fill, it.Edges)
			}
			c.stroke(pl, it.Layer.Line(), it.Edges, it.Closed)
		case drawing.Text:
			c.text(pl, it)
		}
	}
}

// scaleBar draws a bar of a round length with its figures; at is the lower
// left corner.
func (c *canvas) scaleBar(at geom.Point, scale float64, u measure.Units) {
	length, parts := barLength(scale, u)
	style := measure.Style{Units: u}
	const thick = 1.2
	y0, y1 := at.Y+2, at.Y+2+thick
	step := length.MM() * scale / float64(parts)
	for i := range parts {
		x0 := at.X + float64(i)*step
		cell := geom.Rect(geom.Box{Min: geom.Pt(x0, y0), Max: geom.Pt(x0+step, y1)})
		if i%2 == 0 {
			c.fill(onPaper, 1, cell.Edges)
		}
		c.stroke(onPaper, drawing.Line{Width: guide}, cell.Edges, true)
	}
	end := at.X + length.MM()*scale
	c.set(onPaper, geom.Pt(end+1.5, y0-0.6), 0, drawing.Left, letter.Set(style.Format(length), drawing.Small))
}
