package turn

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// RiserFace is the front of the board on the k-th riser line, 0 the lowest, that is
// so thick: from edge to edge of the clear width, as the riser line is.
func (l *Laid) RiserFace(k int, thick float64) Segment { return l.segment(l.lines[k].down(thick)) }

// RiserBoard is what the board on the k-th riser line is cut to, 0 the lowest: its
// length, long point to long point, and how its inner and its outer end are cut.
// More than 0, the long point is on its front. An inner end that would run round
// the newel's corner is cut square, clear of the corner.
//
// On a curve the riser line's own length serves, cut square: over a board an arc
// leaves a square end by far less than a saw's kerf.
func (l *Laid) RiserBoard(k int, thick float64) (length float64, ends [2]BoxEnd) {
	back := l.lines[k]
	front := back.down(thick)
	backIn, backOut := l.c.ends(back, 0, l.c.width)
	if !l.c.mitred {
		return backOut - backIn, ends
	}
	frontIn, frontOut := l.c.ends(front, 0, l.c.width)
	newel := r2.Sub(l.c.centre, back.from)
	if up := r2.Dot(newel, back.up()); up > -thick+shortest && up < -shortest {
		frontIn = max(frontIn, backIn, r2.Dot(newel, back.along))
		backIn = frontIn
	}
	ends = [2]BoxEnd{bevel(backIn-frontIn, thick), bevel(frontOut-backOut, thick)}
	return math.Max(frontOut, backOut) - math.Min(frontIn, backIn), ends
}
