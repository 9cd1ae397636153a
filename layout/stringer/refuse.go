package stringer

import (
	"fmt"
	"math"

	"stepoff/spec/measure"
)

// Refusal says why a stringer cannot be built. Key is the job's key that
// holds the value to change.
type Refusal struct{ Key, Message string }

// Refusals are all the reasons there are.
type Refusals []Refusal

func (r *Refusals) add(key, format string, args ...any) {
	*r = append(*r, Refusal{key, fmt.Sprintf(format, args...)})
}

// touching is the least a part of the outline may measure: below it two
// corners fall on each other and the outline is no outline. A tenth of a
// millimetre, far less than a saw kerf.
const touching = 0.1

func (s *Sawn) refuse() Refusals {
	var bad Refusals
	say := s.Style.FormatMM
	if s.LeastBlank > measure.Max.MM() || s.HeadX() > measure.Max.MM() {
		bad.add("levels.total_rise", "the flight comes out longer than a kilometre: look at its rise, its run and its risers")
		return bad
	}
	if s.Throat < touching {
		if hole := s.Saw.RootHole; hole > 0 && s.Width-s.NotchDepth >= touching {
			bad.add("saw.root_hole", "a hole of %s at the roots takes the whole throat of %s; drill a smaller one, or none", say(hole), say(s.Width-s.NotchDepth))
			return bad
		}
		bad.add("stringer.stock", "a board %s wide is cut through by notches %s deep; take a wider board", say(s.Width), say(s.NotchDepth))
		return bad // every other figure hangs on the throat
	}
	switch {
	case s.Rise-s.Tread < touching:
		bad.add("tread.thickness", "a tread %s thick leaves no riser cut in a unit rise of %s", say(s.Tread), say(s.Rise))
		return bad
	case s.FirstRiserCut < touching:
		bad.add("stringer.foot_levels", "the foot bears %s above the finished floor, which leaves no first riser cut under a rise of %s and a tread of %s", say(-s.Below), say(s.Rise), say(s.Tread))
		return bad
	case s.SeatCut < touching:
		bad.add("stringer.foot", "the first riser cut of %s runs out of the board's bottom edge before it reaches the floor: no seat is left; the foot may bear at most %s below the finished floor", say(s.FirstRiserCut), say(s.Width/math.Cos(s.Pitch)-s.Rise+s.Tread))
		return bad
	case s.LastTread < touching:
		bad.add("stringer.behind_head", "the last tread cut comes out as %s: what stands at the head takes the whole run of %s", say(s.LastTread), say(s.Run))
	case s.HeadCut < touching:
		bad.add("stringer.top_nosing", "the head lies %s past the last full run, beyond the board's bottom edge: no plumb cut is left", say(s.LastTread-s.Run))
	}
	s.refuseNotches(&bad)
	switch w := s.Saw; {
	case w.Depth < s.Thickness:
		bad.add("saw.depth", "a blade set %s deep does not reach through stock %s thick; set it %s or more", say(w.Depth), say(s.Thickness), say(s.Thickness))
	case w.Depth < w.Through(s.Thickness):
		bad.add("saw.bevel", "tilted by %.4g degrees, a blade set %s deep does not reach through stock %s thick, which takes %s; set it deeper, tilt it less, or saw square",
			w.Bevel*180/math.Pi, say(w.Depth), say(s.Thickness), say(w.Through(s.Thickness)))
	case w.RootHole/2 > s.shortestStop()/2:
		bad.add("saw.root_hole", "a hole of %s takes more than half of a line %s long; drill a smaller one", say(w.RootHole), say(s.shortestStop()))
	case w.StopShort+w.RootHole/2 > s.shortestStop()-touching:
		bad.add("saw.stop_short", "stopping %s short of the root leaves nothing of a line %s long to saw", say(w.StopShort), say(s.shortestStop()))
	case w.Depth >= w.Blade/2:
		bad.add("saw.depth", "a blade of %s cannot reach %s below the shoe: half its diameter is %s", say(w.Blade), say(w.Depth), say(w.Blade/2))
	}
	return bad
}

// shortestStop is the shortest line on which the blade has to stop; any length
// where there is no root.
func (s *Sawn) shortestStop() float64 {
	if s.Notches < 2 {
		return math.Inf(1)
	}
	return math.Min(s.Rise, s.Run)
}

// refuseNotches holds the kicker's and the ledger's notch against the wood
// there is.
func (s *Sawn) refuseNotches(bad *Refusals) {
	say := s.Style.FormatMM
	if k := s.Kicker; k != nil {
		if k.Height > s.FirstRiserCut-touching {
			bad.add("stringer.kicker", "a kicker %s high takes the whole first riser cut of %s", say(k.Height), say(s.FirstRiserCut))
		}
		if k.Depth > s.SeatCut-touching {
			bad.add("stringer.kicker", "a kicker %s deep takes the whole seat of %s", say(k.Depth), say(s.SeatCut))
		}
	}
	l := s.Ledger
	if l == nil {
		return
	}
	if l.Height > s.HeadCut-touching {
		bad.add("stringer.ledger", "a ledger %s high takes the whole head plumb cut of %s", say(l.Height), say(s.HeadCut))
	}
	if l.Depth > s.LastTread-touching {
		bad.add("stringer.ledger", "a ledger %s thick takes the whole last tread cut of %s", say(l.Depth), say(s.LastTread))
	}
	if k := s.Kicker; k != nil && s.Clipped && k.Depth+l.Depth > s.SeatCut-touching {
		bad.add("stringer.ledger", "kicker and ledger together take the whole seat of %s", say(s.SeatCut))
	}
}
