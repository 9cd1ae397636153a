package views

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"stepoff/layout"
	"stepoff/layout/drawing"
	"stepoff/layout/geom"
	"stepoff/layout/turn"
)

// frame is where something stands in plan: places are told by how far along its
// heading they are from its origin, and how far to the left.
type frame struct{ origin, along, left geom.Point }

// frameAt returns the frame at a place with a heading in degrees.
func frameAt(x, y, heading float64) frame {
	along := turn.Place{Heading: heading}.Point(1, 0) // exact along an axis
	return frame{geom.Pt(x, y), along, geom.Pt(-along.Y, along.X)}
}

func flightFrame(f *layout.Flight) frame { return frameAt(f.X, f.Y, f.Heading) }

func (fr frame) at(along, left float64) geom.Point {
	return r2.Add(fr.origin, r2.Add(r2.Scale(along, fr.along), r2.Scale(left, fr.left)))
}

// over is a place of the frame at a height.
func (fr frame) over(along, left, height float64) r3.Vec { return raise(fr.at(along, left), height) }

func raise(p geom.Point, height float64) r3.Vec { return r3.Vec{X: p.X, Y: p.Y, Z: height} }

// sideways is how far to the left of the frame's axis a place lies.
func (fr frame) sideways(p geom.Point) float64 { return r2.Dot(r2.Sub(p, fr.origin), fr.left) }

// lengthwise is how far along the frame's axis a place lies.
func (fr frame) lengthwise(p geom.Point) float64 { return r2.Dot(r2.Sub(p, fr.origin), fr.along) }

// readable turns the direction of a line of writing so that it is read from
// below or from the right.
func readable(along geom.Point) float64 {
	if along.X < -levelEnough || along.X < levelEnough && along.Y < 0 {
		along = r2.Scale(-1, along)
	}
	return math.Atan2(along.Y, along.X)
}

// levelEnough is how far from upright, as a cosine, a line still counts as it.
const levelEnough = 1e-9

// beyond writes at the end of something that points along a direction, clear
// of it.
func beyond(d *drawing.Drawing, at, along geom.Point, height float64, text string) {
	align := drawing.Middle
	if along.X > levelEnough {
		align = drawing.Left
	} else if along.X < -levelEnough {
		align = drawing.Right
	}
	d.Text(at, height, align, text)
}

// front is how far a nosing stands before the riser cut below it.
func front(s *layout.Stairway) float64 {
	return s.Job.Riser.Thickness.MM() + s.Job.Tread.Nosing.MM()
}

// lastRiser is how far along a flight its last riser line stands.
func lastRiser(f *layout.Flight) float64 { return float64(f.Risers-1) * f.UnitRun.MM() }
