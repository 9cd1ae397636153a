package turn

import (
	"fmt"
	"math"

	"stepoff/layout/geom"
	"stepoff/spec/measure"
)

// The two sides of a curved flight, as plates, studs and strings are named.
const (
	CurveInside  = "inside"
	CurveOutside = "outside"
)

// CurveSteps is what the framing of a curved flight hangs on. Millimetres, and
// levels above the lower finished floor. Angles run from the first riser line,
// going up, in degrees, whichever hand the flight turns to.
//
// Riser line 1 is at 0 and the last at Angle, so there is one going fewer than
// there are risers, as in a flight with a hung head. A riser line is the plane of
// the riser cuts: wood stands behind it, riser board and nosing before it.
type CurveSteps struct {
	Angle         float64 // more than 0 and less than 360
	Inside, Width float64 // radius of the inside edge of the clear width; the clear width
	// Levels are the finished level the flight starts from and the level of each
	// riser's top after it: one more than risers, which are 2 or more.
	Levels []float64
	Tread  float64 // thickness of the finished tread
	Floor  float64 // what plates and strings stand on: below Levels[0] by flooring that is laid later
	// Style prints the lengths in refusals.
	Style measure.Style
}

// Risers counts the riser lines.
func (s CurveSteps) Risers() int { return len(s.Levels) - 1 }

// Goings counts the treads: the last riser rises to the upper floor.
func (s CurveSteps) Goings() int { return s.Risers() - 1 }

// Outside is the radius of the outside edge of the clear width.
func (s CurveSteps) Outside() float64 { return s.Inside + s.Width }

// Step is the angle of one going.
func (s CurveSteps) Step() float64 { return s.Angle / float64(s.Goings()) }

// RiserAngle is where riser line k (1 to Risers) stands: a share of the whole
// angle, never a sum of steps, so that the last is Angle exactly.
func (s CurveSteps) RiserAngle(k int) float64 {
	if k == s.Risers() {
		return s.Angle
	}
	return s.Angle * float64(k-1) / float64(s.Goings())
}

// UnitRise is what each riser rises.
func (s CurveSteps) UnitRise() float64 {
	return (s.Levels[s.Risers()] - s.Levels[0]) / float64(s.Risers())
}

// under is the level of the underside of tread k (1 to Goings).
func (s CurveSteps) under(k int) float64 { return s.Levels[k] - s.Tread }

// CurveRefusal says why the framing of a curve cannot be built. Key names the
// value to change: inside_radius, angle, width, tread, sheet, plate, spacing,
// throat, layer, thickness.
type CurveRefusal struct{ Key, Message string }

// atLeast prints a least length, in millimetres, so that what is written to it is
// enough.
func (s CurveSteps) atLeast(mm float64) string {
	l, ok := measure.FromMM(mm)
	if !ok {
		return measure.Unknown
	}
	return s.Style.Format(s.Style.Up(l))
}

type curveRefusals []CurveRefusal

func (r *curveRefusals) add(key, format string, args ...any) {
	*r = append(*r, CurveRefusal{key, fmt.Sprintf(format, args...)})
}

// curveTouching is the least a cut or a part of an outline may measure: below it
// two corners fall on each other. A tenth of a millimetre, far less than a kerf.
const curveTouching = 0.1

func radians(degrees float64) float64 { return degrees * math.Pi / 180 }

// turnedTo is the angle in the corner's frame, exact at the end of the turn.
func (l *Laid) turnedTo(degrees float64) float64 {
	if degrees == l.c.degrees {
		return l.c.angle
	}
	return radians(degrees)
}

// Ring places in plan what lies between two radii about the centre and two
// angles from the first riser line, in degrees: true arcs, counter-clockwise.
func (l *Laid) Ring(inner, outer, from, to float64) geom.Path {
	a, b := l.turnedTo(from), l.turnedTo(to)
	out := geom.Arc(l.c.centre, outer, a-math.Pi/2, b-a)
	out.From, out.To = ray{l.c.centre, l.c.out(a), a}.at(outer), ray{l.c.centre, l.c.out(b), b}.at(outer)
	in := geom.Arc(l.c.centre, inner, b-math.Pi/2, a-b)
	in.From, in.To = ray{l.c.centre, l.c.out(b), b}.at(inner), ray{l.c.centre, l.c.out(a), a}.at(inner)
	return l.path(geom.Path{Closed: true, Edges: []geom.Edge{out, geom.Line(out.To, in.From), in, geom.Line(in.To, out.From)}})
}

// Bar places in plan a straight piece along a radius at an angle from the first
// riser line: between two distances from the centre along that radius, and from
// the radius so far up the stair, or down it where ahead is negative.
func (l *Laid) Bar(angle, inner, outer, ahead float64) geom.Path {
	turned := l.turnedTo(angle)
	r := ray{l.c.centre, l.c.out(turned), turned}
	off := r.down(-ahead)
	ps := []geom.Point{r.at(inner), r.at(outer), off.at(outer), off.at(inner)}
	p := geom.Closed(ps...)
	if ahead < 0 {
		p = p.Reversed()
	}
	return l.path(p)
}
