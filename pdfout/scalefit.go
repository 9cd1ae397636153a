package pdfout

import (
	"stepoff/layout/drawing"
	"stepoff/layout/geom"
)

// FitScale is the scale at which a drawing, its writing included, fills a room in
// millimetres, for a sketch that is to none.
func FitScale(d *drawing.Drawing, room geom.Point) float64 {
	scale, _ := anyScale(d, room)
	return scale
}
