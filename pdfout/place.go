package pdfout

import (
	"math"

	"stepoff/layout/geom"
)

// placing lays points of a drawing on the paper.
type placing interface {
	// at is the place on the paper, in millimetres as drawn, from the lower
	// left corner of the page.
	at(geom.Point) geom.Point
	// turn is the angle by which writing is turned, in radians.
	turn() float64
}

// fullSize lays a drawing on the paper as it is: by translation, a quarter
// turn where the sheet lies on its side, and nothing else. What the printer
// makes of a true length is taken back per axis of the paper.
type fullSize struct {
	window         geom.Box // of the drawing, true millimetres
	turned         bool
	margin         geom.Point // of the window's lower left corner as the paper stands
	width          float64    // of the paper, millimetres as drawn
	scaleX, scaleY float64    // measured / drawn, across and along the paper
}

func (f fullSize) at(p geom.Point) geom.Point {
	u, v := p.X-f.window.Min.X, p.Y-f.window.Min.Y
	if f.turned {
		// A quarter turn to the left: the drawing's x runs up the paper.
		return geom.Pt(f.width-f.margin.X-v/f.scaleX, f.margin.Y+u/f.scaleY)
	}
	return geom.Pt(f.margin.X+u/f.scaleX, f.margin.Y+v/f.scaleY)
}

func (f fullSize) turn() float64 {
	if f.turned {
		return math.Pi / 2
	}
	return 0
}

// scaled lays a drawing on the paper at a scale: never for cutting.
type scaled struct {
	from, to geom.Point // this point of the drawing stands there on the paper
	scale    float64    // millimetres on the paper for one of the drawing
}

func (s scaled) at(p geom.Point) geom.Point {
	return geom.Pt(s.to.X+(p.X-s.from.X)*s.scale, s.to.Y+(p.Y-s.from.Y)*s.scale)
}

func (s scaled) turn() float64 { return 0 }

// onPaper places points that are given on the paper already.
var onPaper = scaled{scale: 1}
