package turn

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"stepoff/layout/geom"
)

// Place is the middle of the clear width on a riser line, and the way up from
// there.
type Place struct {
	At      geom.Point
	Heading float64 // degrees, 0 or more and less than 360
}

// Start is where a stairway begins: at the origin, heading along +y.
var Start = Place{Heading: 90}

// along is the way up; across is square to it, to the left.
func (p Place) along() geom.Point { return unit(p.Heading) }

func (p Place) across() geom.Point {
	a := p.along()
	return geom.Pt(-a.Y, a.X)
}

// Point returns the point so far up from the place, and so far to the left.
func (p Place) Point(up, left float64) geom.Point {
	return r2.Add(p.At, r2.Add(r2.Scale(up, p.along()), r2.Scale(left, p.across())))
}

// On returns the place so far up from this one and so far to the left, turned
// to the left by so many degrees.
func (p Place) On(up, left, turned float64) Place {
	heading := math.Mod(p.Heading+turned, 360)
	if heading < 0 {
		heading += 360
	}
	return Place{p.Point(up, left), heading}
}

// Flight returns the outline of a flight that begins at the place: riser line
// to riser line, counter-clockwise from the right end of the first. A flight of
// one riser has a run of 0 and no outline.
func (p Place) Flight(run, width float64) []geom.Point {
	if run <= 0 {
		return nil
	}
	return p.box(0, run, -width/2, width/2)
}

// box returns the corners of the rectangle between two distances up and two to
// the left, counter-clockwise from the lower right one.
func (p Place) box(from, to, right, left float64) []geom.Point {
	return []geom.Point{p.Point(from, right), p.Point(to, right), p.Point(to, left), p.Point(from, left)}
}

// unit is the direction of a heading; exact where it is along an axis, so that
// flights square to each other meet without a gap.
func unit(heading float64) geom.Point {
	switch heading {
	case 0:
		return geom.Pt(1, 0)
	case 90:
		return geom.Pt(0, 1)
	case 180:
		return geom.Pt(-1, 0)
	case 270:
		return geom.Pt(0, -1)
	}
	sin, cos := math.Sincos(heading * math.Pi / 180)
	return geom.Pt(cos, sin)
}
