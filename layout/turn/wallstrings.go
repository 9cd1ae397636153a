package turn

import (
	"math"

	"stepoff/layout/geom"
)

// WallString is the string along one face of winders, unrolled: it ends in the
// corner, where the next one begins, and the step there is shared between them.
// Millimetres; x along the faces from where the first riser line meets them, the
// same for both strings of a side, y the level above the lower finished floor.
type WallString struct {
	Wall     WinderWall
	From, To float64 // where it begins and ends; one of them is the corner
	Steps    []WallStep
	// Notched are the cuts of a notched string: plumb from tread to tread at each
	// riser line, level under each tread. A riser line in the corner has none: the
	// upper string begins a unit rise higher there. The last riser line is the upper
	// flight's.
	Notched []geom.Point
}

// WallStep is the piece of a step along one face.
type WallStep struct {
	Tread  int     // of the turn, 1 the lowest
	Run    float64 // on this face
	Whole  float64 // riser line to riser line, round the corner too
	Pitch  float64 // degrees: of the unit rise over the whole run
	Length float64 // of the run on the slope
}

// WallStrings are the strings of winders from the bottom up, on the outside, then
// on the inside. Where all riser lines meet in a point, or within a millimetre of it,
// there is none inside.
func (l *Laid) WallStrings(h WinderHeights) (strings []WallString) {
	for _, e := range [...]windersEdge{l.outsideEdge(), l.insideEdge()} {
		corner, at := e.unroll(l.Risers)
		if corner < leastWallString {
			continue
		}
		for _, s := range [...]WallString{{Wall: e.lower, To: corner}, {Wall: e.upper, From: corner, To: at[len(at)-1]}} {
			s.step(at, h)
			strings = append(strings, s)
		}
	}
	return strings
}

// leastWallString is the length, in millimetres, below which a face carries no
// string: at a newel where the riser lines meet in a point, or all but.
const leastWallString = 1

// unroll is where the corner and the riser lines are along the edge, from the
// first riser line.
func (e windersEdge) unroll(risers []Segment) (corner float64, at []float64) {
	for k, s := range risers {
		from, _ := e.fromCorner(s) // every riser line ends on the edge
		if k == 0 {
			corner = -from
		}
		at = append(at, corner+from)
	}
	return corner, at
}

// step works out the steps and the cuts. A tread is cut for the thickness of the
// tread below its finished level. The first cut comes up from the tread below the
// turn, or from the floor as it is today.
func (s *WallString) step(at []float64, h WinderHeights) {
	for k := range at[1:] {
		from, to := max(at[k], s.From), min(at[k+1], s.To)
		if to-from < wallTouching {
			continue
		}
		whole := at[k+1] - at[k]
		pitch := math.Atan2(h.Rise, whole)
		s.Steps = append(s.Steps, WallStep{k + 1, to - from, whole, pitch * 180 / math.Pi, (to - from) / math.Cos(pitch)})
		tread := h.Finished(k) - h.Tread
		if k == 0 {
			below := tread - h.Rise
			if h.onFloor() {
				below = -h.Flooring
			}
			s.Notched = append(s.Notched, geom.Pt(from, below))
		}
		s.Notched = append(s.Notched, geom.Pt(from, tread), geom.Pt(to, tread))
	}
}
