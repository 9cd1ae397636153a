package stringer

import (
	"math"

	"stepoff/layout/geom"
)

// Wedge is one size of wedge and how many of it one string takes. All are cut
// from one profile: they have the same taper. Lengths in millimetres.
type Wedge struct {
	Riser  bool // behind risers; otherwise under treads
	Count  int
	Length float64
	Thick  float64 // at the thick end
	Tip    float64 // at the thin end
	Width  float64 // the depth of the housing
}

// driven are the wedges of step k as they lie when driven home, in elevation:
// under the tread, behind the riser.
func (s *Housed) driven(k int) [][]geom.Point {
	if s.open() || s.WedgeTaper == 0 {
		return nil
	}
	from := WedgeTip.MM() / s.WedgeTaper // from where the walls begin
	x0, y0 := s.riserLine(k), s.under(k)
	back, low := s.treadBack(k), s.riserFoot(k)
	return [][]geom.Point{
		{{X: x0 + from, Y: y0}, {X: back, Y: y0}, {X: back, Y: s.wedgeUnder(k, back)}, {X: x0 + from, Y: s.wedgeUnder(k, x0+from)}},
		{{X: x0, Y: y0 - from}, {X: x0, Y: low}, {X: s.wedgeBehind(k, low), Y: low}, {X: s.wedgeBehind(k, y0-from), Y: y0 - from}},
	}
}

// treadBack is the x of tread k's back edge, or of the head plumb cut where that
// comes first, and riserFoot the level on which riser board k stands.
func (s *Housed) treadBack(k int) float64 {
	if k == s.Notches() {
		if face, ok := s.topRiserFace(); ok && !s.OnTread {
			return face
		}
		return s.HeadX()
	}
	if s.OnTread {
		return s.riserLine(k + 1)
	}
	return s.riserFace(k + 1)
}

func (s *Housed) riserFoot(k int) float64 {
	switch {
	case k == 1:
		return -s.Below
	case s.OnTread:
		return float64(k-1) * s.Rise
	}
	return s.under(k - 1)
}

// wedges counts the wedges of one string, those of one size together.
func (s *Housed) wedges(bad *Refusals) {
	if s.open() {
		return
	}
	say := s.Style.FormatMM
	for k := 1; k <= s.Notches(); k++ {
		under, behind := s.treadBack(k)-s.riserLine(k), s.under(k)-s.riserFoot(k)
		for i, room := range [...]float64{under, behind} {
			w := Wedge{Riser: i == 1, Count: 1, Thick: room * s.WedgeTaper, Tip: WedgeTip.MM(), Width: s.Depth}
			w.Length = room - w.Tip/s.WedgeTaper
			if w.Length < w.Tip {
				bad.add("housing.wedge_taper", "a taper of 1:%.4g makes a wedge only %s thick in the %s it has room for: nothing to drive; write a steeper one, at most 1:%.0f",
					1/s.WedgeTaper, say(w.Thick), say(room), math.Floor(room/w.Tip/2))
				return
			}
			s.addWedge(w)
		}
	}
}

func (s *Housed) addWedge(w Wedge) {
	for i := range s.Wedges {
		if o := &s.Wedges[i]; o.Riser == w.Riser && math.Abs(o.Length-w.Length) < touching/1000 {
			o.Count++
			return
		}
	}
	s.Wedges = append(s.Wedges, w)
}
