package stringer

import (
	"math"

	"stepoff/layout/geom"
)

// CleatedRequest is what is known before a solid stringer is laid out whose treads
// bear on cleats or brackets fastened to its face. Lengths in millimetres.
type CleatedRequest struct {
	SolidRequest
	CleatSizes
}

// CleatSizes are the sizes of the cleats. Lengths in millimetres.
type CleatSizes struct {
	Height  float64 // down from the tread's underside
	Out     float64 // from the stringer's face, under the tread
	Setback float64 // from the tread's front, or the riser board's back, and from its own back to the cleat's ends
	Screws  int     // through each cleat into the stringer
}

// Cleated is such a stringer laid out. Points lie in the blank frame.
type Cleated struct {
	Solid
	CleatSizes

	Cleats  []Cleat
	Deepest float64 // how far below the top edge, square in, the cleats reach
	Left    float64 // wood left square across, from there to the bottom edge
}

// Cleat is what one tread bears on at one stringer: its top is the line to fasten
// it to, its middle line the one the screws stand on.
type Cleat struct {
	Step    int
	Length  float64
	Corners []geom.Point // from the front of the top, round
	Tread   []geom.Point // the tread's section, likewise
	Screws  []geom.Point // evenly along the middle line, the outer ones an EdgeDistance from the ends
}

// EdgeDistance is how far the outer screws stand from the ends of a cleat: the
// cleat's height, and so twice the distance to its edges (from memory: wood splits
// sooner along the grain than across it).
func (c *Cleated) EdgeDistance() float64 { return c.Height }

// Cleated lays the stringer out. What cannot be built is refused with every
// reason there is.
func (r CleatedRequest) Cleated() (*Cleated, Refusals) {
	var bad Refusals
	s := &Cleated{Solid: Solid{SolidRequest: r.SolidRequest}, CleatSizes: r.CleatSizes}
	s.lay("cleats", &bad)
	if len(bad) > 0 {
		return nil, bad
	}
	say := s.Style.FormatMM
	var short *Cleat // the shortest, where the screws have no room in it
	for k := 1; k <= s.Notches(); k++ {
		c := s.cleat(k)
		if c.Length < 2*s.EdgeDistance()+touching && (short == nil || c.Length < short.Length) {
			short = &c
		}
		s.Cleats = append(s.Cleats, c)
		for _, p := range append(c.Corners, c.Tread...) {
			s.Deepest = math.Max(s.Deepest, p.Y)
		}
	}
	s.Left = s.Width - s.Deepest
	if s.Left < touching {
		bad.add("stringer.stock", "a stringer %s wide is too narrow: with %s above the nosing line its cleats reach %s in from the top edge; take one wider than %s, or a smaller cleats.margin",
			say(s.Width), say(s.Margin), say(s.Deepest), say(s.Deepest))
	}
	if low := s.Rise - s.Tread - s.Height; low < -s.Below+touching {
		bad.add("cleats.height", "the first cleat, %s high under a tread %s thick, does not stand clear of the floor in a unit rise of %s", say(s.Height), say(s.Tread), say(s.Rise))
	}
	if short != nil && len(bad) == 0 { // a cleat too high is told above: its screws stand as far from its ends
		bad.add("cleats.setback", "a setback of %s leaves a cleat %s long under tread %d, and screws %s from either end need more than %s",
			say(s.Setback), say(math.Max(0, short.Length)), short.Step, say(s.EdgeDistance()), say(2*s.EdgeDistance()))
	}
	if len(bad) > 0 {
		return nil, bad
	}
	return s, nil
}

// cleat is that of tread k.
func (s *Cleated) cleat(k int) Cleat {
	tip := s.nosing(k)
	front, back := tip.X, s.riserLine(k+1)
	if s.RiserBoard > 0 {
		front = s.riserLine(k) // behind the riser board under the tread
		if !s.OnTread {
			back -= s.RiserBoard
		}
	}
	if k == s.Notches() {
		back = math.Min(back, s.HeadX())
	}
	under := tip.Y - s.Tread
	c := Cleat{Step: k, Length: back - front - 2*s.Setback}
	x0, x1 := front+s.Setback, back-s.Setback
	low := under - s.Height
	for _, p := range [...]geom.Point{{X: x0, Y: under}, {X: x1, Y: under}, {X: x1, Y: low}, {X: x0, Y: low}} {
		c.Corners = append(c.Corners, s.blank(p))
	}
	for _, p := range [...]geom.Point{tip, {X: back, Y: tip.Y}, {X: back, Y: under}, {X: tip.X, Y: under}} {
		c.Tread = append(c.Tread, s.blank(p))
	}
	inset := s.EdgeDistance()
	for i := range s.Screws {
		x := x0 + inset + float64(i)*(c.Length-2*inset)/float64(s.Screws-1)
		c.Screws = append(c.Screws, s.blank(geom.Pt(x, under-s.Height/2)))
	}
	return c
}
