package views

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

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
// fence screwed along it slides there. The legs stand along the paper's edges,
// so that it takes the least paper.
func PitchBoard(f *layout.Flight, st measure.Style) *drawing.Drawing {
	d := &drawing.Drawing{Name: "pitch-board", Title: "Pitch board, full size"}
	run, rise := f.UnitRun.MM(), f.UnitRise
	root, low, high := geom.Pt(run, 0), geom.Pt(0, 0), geom.Pt(run, rise)
	d.Line(drawing.Cut, low, root)
	d.Line(drawing.Cut, root, high)
	d.Line(drawing.Cut, low, high)

	// The strip for the fence lies outside the long side, as far as the legs'
	// corner-to-corner box goes.
	edge := r2.Unit(r2.Sub(high, low))
	up := fenceWidth / edge.X // of its outer line over the long side, plumb
	if up < rise {
		d.Polyline(drawing.Thin, geom.Pt(0, up), geom.Pt((rise-up)*run/rise, rise))
	}

	angle := math.Atan2(edge.Y, edge.X)
	middle := r2.Scale(0.5, r2.Add(low, high))
	along := func(from float64, height float64, text string) {
		at := r2.Add(middle, r2.Scale(from, geom.Pt(-edge.Y, edge.X)))
		d.Add(drawing.Text{Layer: drawing.Note, At: at, Height: height, Angle: angle, Align: drawing.Middle, Text: text})
	}
	along(fenceWidth/2-drawing.Normal/2, drawing.Normal, "fence edge: slides along the stringer's edge")
	along(-labelGap-drawing.Normal, drawing.Normal, "step "+inches(st, math.Hypot(run, rise)))
	d.Text(geom.Pt(run*0.62, labelGap), drawing.Normal, drawing.Middle, "tread, unit run "+st.Bare(f.UnitRun))
	d.Add(drawing.Text{Layer: drawing.Note, At: geom.Pt(run-labelGap, rise*0.5), Height: drawing.Normal,
		Angle: math.Pi / 2, Align: drawing.Middle, Text: "riser, unit rise " + inches(st, rise)})
	return d
}
