package turn

import "stepoff/layout/geom"

// Hand is the hand a landing turns to, going up: its sign is that of the angle.
type Hand int

// Straight through, or a turn to a hand.
const (
	Straight Hand = 0
	Left     Hand = 1
	Right    Hand = -1
)

// Landing is what decides where a landing lies. Millimetres.
type Landing struct {
	Hand  Hand
	Angle float64 // 90 or 180; 0 straight through

	// Length is clear along the lower flight's travel: to the wall or, straight
	// through, to the upper flight's first nosing. Width is clear across it; of a
	// quarter turn, from the upper flight's first nosing to the wall.
	Length, Width float64
	Flight        float64 // clear width of the flights
	Gap           float64 // between the flights of a half turn
	// Aside shares out what the landing is wider than what stands on it: 0 all
	// of it lies on the outside of the turn (straight through: on the right), 1
	// all on the inside (on the left).
	Aside float64
	// Overhang is how far a nosing stands before its riser line: riser board
	// and nosing.
	Overhang float64
}

// Lying is a landing in plan.
type Lying struct {
	// Outline is the walking area, riser line to riser line and clear width to
	// clear width, counter-clockwise; its first point is the nearest to the lower
	// flight on the right.
	Outline []geom.Point
	// Up is how far the outline reaches from the lower flight's last riser line,
	// Across how wide it is.
	Up, Across float64
	Exit       Place // the upper flight's first riser line
}

// At lays the landing where the lower flight's last riser line is. The outline
// runs from riser line to riser line: where the upper flight's riser board and
// nosing stand on the landing, it is the overhang more than the clear size.
func (l Landing) At(entry Place) Lying {
	out := Lying{Up: l.Length + l.Overhang, Across: l.Width}
	side, need := float64(l.Hand), l.Flight // to the left; how wide what stands on it is
	toward := l.Flight / 2                  // from the middle of the lower flight to the edge it turns to
	switch l.Angle {
	case 90:
		out.Up, out.Across = l.Length, l.Width+l.Overhang
		toward += l.Overhang
	case 180:
		need += l.Flight + l.Gap
		toward += l.Flight + l.Gap
	default:
		side = 1
	}
	toward += l.Aside * (l.Width - need)
	switch l.Angle {
	case 90:
		out.Exit = entry.On(l.Flight/2+l.Aside*(out.Up-l.Flight), side*toward, side*90)
	case 180:
		out.Exit = entry.On(0, side*(l.Flight+l.Gap), side*180)
	default:
		out.Exit = entry.On(out.Up, 0, 0)
	}
	near, far := side*toward, side*(toward-out.Across)
	out.Outline = entry.box(0, out.Up, min(near, far), max(near, far))
	return out
}
