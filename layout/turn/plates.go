package turn

import (
	"math"

	"stepoff/layout/geom"
)

// PlateRunOff is the most that the grain of a plate's segment may run off at its
// ends, in degrees, where nothing else is said: short grain there breaks out
// under a nail. Common practice; the figure from memory.
const PlateRunOff = 30

// PlateStock is what curved sole plates are cut from, and how. Millimetres.
type PlateStock struct {
	SheetLength, SheetWidth float64 // the length along the face grain
	Thickness               float64
	Width                   float64 // of the plate, as the studs are deep
	Layers                  int     // 1 or more, nailed together with staggered joints
	RunOff                  float64 // PlateRunOff; 0: not limited
}

// Height is the plate's, all layers.
func (s PlateStock) Height() float64 { return float64(s.Layers) * s.Thickness }

// Plate is a curved sole plate: a ring from the first riser line to the last.
type Plate struct {
	Name         string  // CurveInside or CurveOutside
	Inner, Outer float64 // radii
	Face         float64 // the radius flush with the edge of the clear width: Inner of the inside plate, Outer of the outside one
	Angle        float64 // degrees
	// Segments counts those of the first layer, which are all alike. Every second
	// layer has its joints in the middle of those, and so half a segment at
	// either end and one whole segment fewer; where one segment is the whole
	// plate it is so in every layer.
	Segments int
	Layers   [][]PlateSegment // from the floor up, each in the order going up
}

// PlateSegment is one piece of one layer, full size. Templates of pieces of the
// same angle are alike whatever the flight's hand: turned over, each is itself.
type PlateSegment struct {
	From, To     float64 // degrees from the first riser line: the joints
	Angle        float64 // of the piece
	Inner, Outer float64
	// Outline is the template seen from above: two true arcs and the two joints,
	// counter-clockwise, in the frame of its blank: x along the chord and the face
	// grain, y away from the curve's centre, the blank's corner at the origin.
	Outline geom.Path
	// Blank is the rectangle it is cut from: X along the grain.
	Blank geom.Point
	// Centre is the curve's centre in that frame: a trammel's nail.
	Centre geom.Point
}

// MostAngle returns the most degrees of a plate that one segment may take:
// limited by the sheet's length and width, the grain, and half a ring. It is 0
// where the sheet is narrower than the plate.
//
// A ring's piece of the angle f between radii a and b, its chord along x, is
// 2 b sin(f/2) long: its outer corners lie farthest apart. From its inner corners
// to its outer arc it is b - a cos(f/2) wide. Both grow with f. The grain runs
// along the chord, the plate along the arc, and the two part by f/2 at the ends.
func (s PlateStock) MostAngle(inner float64) float64 {
	a, b := inner, inner+s.Width
	half := 90.0
	if s.SheetLength < 2*b {
		half = math.Asin(s.SheetLength/(2*b)) * 180 / math.Pi
	}
	if cos := (b - s.SheetWidth) / a; cos >= 1 {
		return 0
	} else if cos > 0 {
		half = min(half, math.Acos(cos)*180/math.Pi)
	}
	if s.RunOff > 0 {
		half = min(half, s.RunOff)
	}
	return 2 * half
}

// fewest is how many equal parts, each of at most so much, make up the whole.
func fewest(whole, most float64) int { return max(1, int(math.Ceil(whole/most-sameShare))) }

// sameShare keeps a part that fits exactly from being counted as one too large:
// the roundings of a few sines and divisions.
const sameShare = 1e-9

// plate lays out a plate with its inner edge at a radius.
func (s PlateStock) plate(name string, inner, angle float64) Plate {
	p := Plate{Name: name, Inner: inner, Outer: inner + s.Width, Face: inner, Angle: angle}
	if name == CurveOutside {
		p.Face = p.Outer
	}
	n := fewest(angle, s.MostAngle(inner))
	p.Segments = n
	whole, half := p.segment(angle/float64(n)), p.segment(angle/float64(2*n))
	at := func(halves int) float64 { // so many half segments on; the end exactly
		if halves == 2*n {
			return angle
		}
		return angle * float64(halves) / float64(2*n)
	}
	for layer := range s.Layers {
		var row []PlateSegment
		add := func(piece PlateSegment, from, to int) {
			piece.From, piece.To = at(from), at(to)
			row = append(row, piece)
		}
		start := 0
		if layer%2 == 1 && n > 1 {
			start = 1
			add(half, 0, 1)
		}
		for k := start; k+2 <= 2*n; k += 2 {
			add(whole, k, k+2)
		}
		if start == 1 {
			add(half, 2*n-1, 2*n)
		}
		p.Layers = append(p.Layers, row)
	}
	return p
}

// segment draws the template of a piece. The corners are reckoned from the same
// sine and cosine, so the blank's sides pass through them.
func (p Plate) segment(angle float64) PlateSegment {
	half := radians(angle) / 2
	sin, cos := math.Sincos(half)
	c := geom.Pt(p.Outer*sin, -p.Inner*cos)
	corner := func(radius, side float64) geom.Point { return geom.Pt(c.X+side*radius*sin, c.Y+radius*cos) }
	outer := geom.Arc(c, p.Outer, math.Pi/2-half, 2*half)
	outer.From, outer.To = corner(p.Outer, 1), corner(p.Outer, -1)
	inner := geom.Arc(c, p.Inner, math.Pi/2+half, -2*half)
	inner.From, inner.To = corner(p.Inner, -1), corner(p.Inner, 1)
	return PlateSegment{
		Angle: angle, Inner: p.Inner, Outer: p.Outer, Centre: c,
		Outline: geom.Path{Closed: true, Edges: []geom.Edge{outer, geom.Line(outer.To, inner.From), inner, geom.Line(inner.To, outer.From)}},
		Blank:   geom.Pt(2*p.Outer*sin, p.Outer-p.Inner*cos),
	}
}

// Joints are the angles of a layer's joints, its ends left out.
func (p Plate) Joints(layer int) []float64 {
	var at []float64
	for _, g := range p.Layers[layer][1:] {
		at = append(at, g.From)
	}
	return at
}

// Mark is the line across the template at an angle from the first riser line: a
// riser line, a stud, a joint of the layer above. It is false where the piece
// does not reach there. Seen from above, a flight to the left climbs from the
// right end of the template to the left one.
func (g PlateSegment) Mark(hand Hand, angle float64) (Segment, bool) {
	if angle < g.From || angle > g.To {
		return Segment{}, false
	}
	sin, cos := math.Sincos(radians(angle - (g.From+g.To)/2))
	at := func(radius float64) geom.Point {
		return geom.Pt(g.Centre.X-float64(hand)*radius*sin, g.Centre.Y+radius*cos)
	}
	return Segment{at(g.Inner), at(g.Outer)}, true
}

// In is the piece in its place in plan.
func (g PlateSegment) In(l *Laid) geom.Path { return l.Ring(g.Inner, g.Outer, g.From, g.To) }
