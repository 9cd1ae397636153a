package turn

import (
	"math"

	"stepoff/layout/geom"
)

// BearerStock is a board on edge. Millimetres.
type BearerStock struct{ Thickness, Depth float64 }

// Bearer is a level board on edge that carries a tread from wall to wall: a
// bearer its front, along the tread's riser line, behind it; a ledger its back,
// along the next riser line, before it. A bearer lies on the studs of both walls.
// A ledger is fastened to the studs and the bearer behind it; the last one, on
// the end line, to the studs under it and to the header.
//
// Both ends are cut square. The riser board nails to the bearer's face, the riser
// plane; it stands on the ledger, whose thickness less the riser board's is what
// the tread's back edge bears on.
type Bearer struct {
	Ledger bool
	Riser  int // the riser line it stands at
	Tread  int // the tread it carries: Riser, or of a ledger the one below
	Angle  float64

	Level     float64 // of its top: the tread's underside
	Thickness float64
	// Depth is the stock's; less where so little is left over the plates, more
	// where it stands on the plates because a stud would be shorter than
	// ShortestStud.
	Depth    float64
	OnPlates bool // it stands on the plates, not on studs or against them
	// OffWall: a ledger that clears the bearer before it only beyond the inside
	// wall; its inner end is fastened to that bearer.
	OffWall bool

	From   float64 // its inner end, along the riser line from the centre
	Length float64 // end to end
	Span   float64 // clear between the walls
}

// To is its outer end, along the riser line from the centre.
func (b Bearer) To() float64 { return b.From + b.Length }

// ahead is how far it reaches up the stair from its riser line; a ledger down.
func (b Bearer) ahead() float64 {
	if b.Ledger {
		return -b.Thickness
	}
	return b.Thickness
}

// In is the piece in its place in plan.
func (b Bearer) In(l *Laid) geom.Path { return l.Bar(b.Angle, b.From, b.To(), b.ahead()) }

// squareEnd is how far from the centre, along a radius, a square end may lie so
// that neither corner of a board of a thickness, one face on the radius, stands
// past an arc: by Pythagoras, the corner off the radius is the farther one. At the
// inside edge the corner on the radius is the nearer one, and nothing comes off.
func squareEnd(radius, thickness float64) float64 {
	return math.Sqrt(radius*radius - thickness*thickness)
}

// ledgerStart is where, along its riser line from the centre, a ledger clears the
// bearer of the same tread. The ledger's face runs its thickness before riser
// line k+1, the bearer's back its thickness behind line k, a step away: a point s
// along k+1 and l before it is s sin(step) - l cos(step) beyond line k, which has
// to be the bearer's thickness.
func ledgerStart(step, bearer, ledger float64) float64 {
	if step >= 90 {
		return 0
	}
	sin, cos := math.Sincos(radians(step))
	return (bearer + ledger*cos) / sin
}

// bearers lists bearer and ledger of each tread, from the bottom up.
func (s CurveSteps) bearers(w CurveWalls) []Bearer {
	var all []Bearer
	for k := 1; k <= s.Goings(); k++ {
		room := s.room(w, k)
		add := func(ledger bool, stock BearerStock, depth float64) {
			b := Bearer{
				Ledger: ledger, Riser: k, Tread: k, Level: s.under(k), Thickness: stock.Thickness, Depth: depth,
				OnPlates: depth == room, From: s.Inside, Span: s.Width - 2*w.Plates.Width,
			}
			if ledger {
				b.Riser++
				b.From = max(b.From, ledgerStart(s.Step(), w.Bearer.Thickness, stock.Thickness))
				b.OffWall = b.From > s.Inside+w.Plates.Width
			}
			b.Angle = s.RiserAngle(b.Riser)
			b.Length = squareEnd(s.Outside(), stock.Thickness) - b.From
			all = append(all, b)
		}
		add(false, w.Bearer, carried(room, w.Bearer.Depth))
		if k == s.Goings() {
			add(true, w.Ledger, carried(room, w.Ledger.Depth))
		} else { // not on studs of its own
			add(true, w.Ledger, min(room, w.Ledger.Depth))
		}
	}
	return all
}

// carried is how deep a board under a tread is that stands on studs: its stock's
// depth, or, where the studs would be too short, all the room over the plates.
func carried(room, depth float64) float64 {
	if room-depth < ShortestStud {
		return room
	}
	return depth
}
