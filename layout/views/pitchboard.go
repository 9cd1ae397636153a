package views

import (
	"math"

	"stepoff/layout"
	"stepoff/layout/drawing"
	"stepoff/layout/geom"
	"stepoff/spec/measure"
)

// fenceWidth is how wide the strip is drawn that guides the pitch board along
// the stringer's edge: any straight strip will do.
const fenceWidth = 20.0

// PitchBoard draws one notch at full size as a board to mark with: the two
// legs are riser and tread, the long side lies on the stringer's edge, and a
// fence screwed along it slides there. The legs stand along the paper's edges
// but for a turn, in radians, that some boards need to fit a sheet.
func PitchBoard(f *layout.Flight, turn float64, st measure.Style) *drawing.Drawing {
	return StepBoard(f.UnitRun.MM(), f.UnitRise, turn, st)
}

// StepBoard is the pitch board of any step: of a string that is unrolled.
func StepBoard(run, rise, turn float64, st measure.Style) *drawing.Drawing {
	d := &drawing.Drawing{Name: "pitch-board", Title: "Pitch board, full size"}
	sin, cos := math.Sincos(turn)
	at := func(x, y float64) geom.Point { return geom.Pt(x*cos-y*sin, x*sin+y*cos) }
	root, low, high := at(run, 0), at(0, 0), at(run, rise)
	d.Line(drawing.Cut, low, root)
	d.Line(drawing.Cut, root, high)
	d.Line(drawing.Cut, low, high)

	// The strip for the fence lies outside the long side, as far as the legs'
	// corner-to-corner box goes.
	pitch := math.Atan2(rise, run)
	up := fenceWidth / math.Cos(pitch) // of its outer line over the long side, along the riser
	if up < rise {
		d.Polyline(drawing.Thin, at(0, up), at((rise-up)*run/rise, rise))
	}

	words := func(p geom.Point, angle float64, text string) {
		d.Add(drawing.Text{Layer: drawing.Note, At: p, Height: drawing.Normal, Angle: angle + turn, Align: drawing.Middle, Text: text})
	}
	along := func(off float64, text string) { // beside the middle of the long side
		sin, cos := math.Sincos(pitch)
		words(at(run/2-off*sin, rise/2+off*cos), pitch, text)
	}
	along(fenceWidth/2-drawing.Normal/2, "fence edge: slides along the stringer's edge")
	along(-labelGap-drawing.Normal, "step "+inches(st, math.Hypot(run, rise)))
	words(at(run*0.62, labelGap), 0, "tread, unit run "+inches(st, run))
	words(at(run-labelGap, rise*0.5), math.Pi/2, "riser, unit rise "+inches(st, rise))
	return d
}
