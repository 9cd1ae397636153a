package turn

import (
	"math"

	"stepoff/layout/geom"
	"stepoff/spec/measure"
)

// WinderHeights says how high the treads of a turn stand. Millimetres; levels
// above the lower finished floor.
type WinderHeights struct {
	Level    float64 // finished, of the lowest tread
	Rise     float64 // unit rise
	Tread    float64 // thickness of the treads
	Flooring float64 // still to come on the lower floor
}

// Finished is the level of the k-th tread, 0 the lowest; one past the last is
// what the upper flight's first riser leads to.
func (h WinderHeights) Finished(k int) float64 { return h.Level + float64(k)*h.Rise }

// onFloor tells whether there is no riser below the one to the lowest tread.
func (h WinderHeights) onFloor() bool { return h.Level-h.Rise < shortest }

// BoxFraming says what stacked platform boxes are built of. Millimetres.
type BoxFraming struct {
	WinderHeights
	Sheathing float64 // thickness
	Stock     float64 // thickness of the lumber of rims and joists
	Spacing   float64 // of joists, centre to centre; 0: none
	// Seat is how far the boxes run on past the last riser line, under the feet of
	// the upper flight's stringers; 0 where it has none.
	Seat float64
}

// Box is one of a turn's stacked platform boxes. The lowest reaches under the
// whole turn, each next one, stacked on it, from its own riser line on: a tread
// lies on each where the next leaves it bare (common practice). Levels are above
// the lower finished floor.
type Box struct {
	// Outline is that of the frame and of its sheathing in plan, counter-clockwise:
	// the front's outer face on the riser line, clear width to clear width.
	Outline geom.Path
	Height  float64 // of its rims and joists
	Bottom  float64 // level of its underside
	Top     float64 // level of its sheathing: the finished tread less its thickness
	// Leg is from the lower floor, as it is today, to its underside: what a frame
	// wall or legs under the lowest box have to make up. 0 on the floor and on
	// another box.
	Leg float64
	// Parts are in the order they are put together: front, back, outer rims and
	// inner rims, each from the lower to the upper, joists from the outside in.
	Parts []BoxPart
}

// BoxPartKind tells the parts of a box apart.
type BoxPartKind int

// The parts of a box. Front and back run through from edge to edge, rims butt
// against them.
const (
	BoxFront BoxPartKind = iota
	BoxBack
	BoxOuterRim
	BoxInnerRim
	BoxJoist
)

func (k BoxPartKind) String() string {
	return [...]string{"front", "back", "outer rim", "inner rim", "joist"}[k]
}

// BoxPart is a rim or a joist on edge; all of a box are equally high.
type BoxPart struct {
	Kind    BoxPartKind
	Outline geom.Path // in plan, counter-clockwise
	Length  float64   // along it, long point to long point
	// Ends are of front and back the inner and the outer one, of rims and joists the
	// lower and the upper one, going up.
	Ends [2]BoxEnd
}

// BoxEnd is how the end of a part is cut: plumb, its bevel in degrees off square.
// More than 0, the long point is on its outer face, which is the box's, of a joist
// the one toward the outside of the turn; less, on the other.
type BoxEnd struct{ Bevel float64 }

// MostTilt is as far as a circular saw's shoe tilts, in degrees: common practice;
// some go a little farther.
const MostTilt = 45

// Saw is the tilt the end is cut at. A saw that rides on the face reaches up to
// MostTilt off square; past that it rides on the squared end, tilted by what is
// left to a right angle. Bevels are compared as they are written, so that the end
// of a right-angled mitre, reckoned from sines, is one the saw reaches.
func (e BoxEnd) Saw() (tilt float64, onEnd bool) {
	off := measure.SnapDegrees(math.Abs(e.Bevel))
	if off > MostTilt {
		return 90 - off, true
	}
	return off, false
}

// Boxes frames winders, from the lowest box up, which is the order they are
// stacked in. The outline of a box is all the goings it reaches under, and the
// seat.
//
// Each box's sheathing is a unit rise above the one's below, and it stands on that:
// rims and joists are the unit rise less the sheathing high. On the floor the
// lowest carries a whole riser from the finished floor to the top of its tread: its
// rims are the tread's thickness lower, and as much higher as flooring is to come.
func (l *Laid) Boxes(f BoxFraming) []Box {
	var boxes []Box
	for k := range l.Treads {
		front, back := l.lines[k], l.lines[len(l.Treads)].down(-f.Seat)
		b := Box{Outline: l.area(front, back, 0, l.c.width), Height: f.Rise - f.Sheathing, Top: f.Finished(k) - f.Tread}
		if k == 0 && f.onFloor() {
			b.Height += f.Flooring - f.Tread
		}
		b.Bottom = b.Top - f.Sheathing - b.Height
		if k == 0 && !f.onFloor() {
			b.Leg = b.Bottom + f.Flooring
		}
		b.Parts = l.boxParts(front, back, f)
		boxes = append(boxes, b)
	}
	return boxes
}
