package turn

import (
	"math"

	"stepoff/layout/geom"
)

// CurveString is a string of a curved flight, unrolled: the cylinder it stands in
// cut open and laid flat. Its riser lines are radii, so unrolled they stand its
// own radius times the angle of a going apart, and its edges, which climb evenly
// as they turn, are straight. What is marked on it flat is right once it is bent.
// Millimetres; of the face at Radius, the string's face at the edge of the clear
// width.
type CurveString struct {
	Name              string  // CurveInside or CurveOutside
	Radius            float64 // in plan
	Risers            int
	UnitRise, UnitRun float64
	Pitch             float64 // degrees above level
	Run               float64 // first riser line to last: radius x angle
	Height            float64 // unit rise x risers
	Length            float64 // along the pitch, first riser line to last
	Throat            float64 // wood left square across under each root
	NotchDepth        float64 // from the edge square in to the root
	BoardWidth        float64 // notch depth and throat
	FirstRiserCut     float64
	SeatCut, HeadCut  float64 // level cut at the foot, plumb cut at the head
	LeastBlank        float64 // the outline's extent along the pitch

	// Outline is closed, clockwise from the heel: x along the unrolled run from the
	// first riser line, y the level above the lower finished floor.
	Outline     geom.Path
	Tips, Roots []geom.Point // outside corners of the notches; inside corners between two
}

// Strings unrolls the string at the inside edge and the one at the outside edge of
// the clear width, each with the same throat.
func (s CurveSteps) Strings(throat float64) ([]*CurveString, []CurveRefusal) {
	var all []*CurveString
	var bad []CurveRefusal
	for _, at := range []struct {
		name   string
		radius float64
	}{{CurveInside, s.Inside}, {CurveOutside, s.Outside()}} {
		c, refused := s.Unrolled(at.name, at.radius, throat)
		if len(refused) > 0 {
			bad = append(bad, refused...)
			continue
		}
		all = append(all, c)
	}
	if len(bad) > 0 {
		return nil, bad
	}
	return all, nil
}

// Unrolled unrolls a string at any radius. It is the straight stringer of a flight
// with a hung head whose unit run is the radius times the angle of a going: tread
// cut k lies level at level k less the tread, riser cuts stand plumb, a unit run
// apart; the foot is a level cut on the floor, the head a plumb cut on the last
// riser line. The bottom edge runs the throat, square across, under the roots.
func (s CurveSteps) Unrolled(name string, radius, throat float64) (*CurveString, []CurveRefusal) {
	n := s.Goings()
	c := &CurveString{Name: name, Radius: radius, Risers: s.Risers(), UnitRise: s.UnitRise(), Throat: throat}
	c.UnitRun = radius * radians(s.Step())
	c.Run = radius * radians(s.Angle)
	c.Height = s.Levels[s.Risers()] - s.Levels[0]
	pitch := math.Atan2(c.UnitRise, c.UnitRun)
	sin, cos := math.Sincos(pitch)
	c.Pitch = pitch * 180 / math.Pi
	c.Length = c.Run / cos
	c.NotchDepth = c.UnitRise * cos // the root lies a unit rise plumb below the edge
	c.BoardWidth = c.NotchDepth + throat
	c.FirstRiserCut = s.under(1) - s.Floor

	// The line through the roots falls from root k to a tread below the level the
	// flight starts from at x = 0; the bottom edge lies throat/cos plumb below it.
	bottom := s.Levels[0] - s.Tread - throat/cos
	underside := func(x float64) float64 { return bottom + x*c.UnitRise/c.UnitRun }
	c.SeatCut = (s.Floor - bottom) * c.UnitRun / c.UnitRise
	top := s.under(n)
	foot := underside(c.Run)
	clipped := c.SeatCut >= c.Run // so short that the seat runs through to the head
	if clipped {
		c.SeatCut, foot = c.Run, s.Floor
	}
	c.HeadCut = top - foot
	if bad := s.refuseString(c); len(bad) > 0 {
		return nil, bad
	}
	c.LeastBlank = c.Run*cos + (top-s.Floor)*sin // from the heel to the top of the head cut

	ps := []geom.Point{geom.Pt(0, s.Floor)}
	at := func(k int) float64 { // riser cut k+1
		if k == n {
			return c.Run
		}
		return c.Run * float64(k) / float64(n)
	}
	for k := 1; k <= n; k++ {
		tip, end := geom.Pt(at(k-1), s.under(k)), geom.Pt(at(k), s.under(k))
		ps = append(ps, tip, end)
		c.Tips = append(c.Tips, tip)
		if k < n {
			c.Roots = append(c.Roots, end)
		}
	}
	ps = append(ps, geom.Pt(c.Run, foot))
	if !clipped {
		ps = append(ps, geom.Pt(c.SeatCut, s.Floor))
	}
	c.Outline = geom.Closed(ps...)
	return c, nil
}

// refuseString says what of a string cannot be cut.
func (s CurveSteps) refuseString(c *CurveString) []CurveRefusal {
	var bad curveRefusals
	say := s.Style.FormatMM
	switch {
	case c.Throat < curveTouching:
		bad.add("throat", "the %s string is cut through by its notches, %s deep", c.Name, say(c.NotchDepth))
	case c.UnitRise-s.Tread < curveTouching:
		bad.add("tread", "a tread %s thick leaves no riser cut in a unit rise of %s", say(s.Tread), say(c.UnitRise))
	case c.FirstRiserCut < curveTouching:
		bad.add("tread", "the %s string's foot leaves no first riser cut under a rise of %s and a tread of %s", c.Name, say(c.UnitRise), say(s.Tread))
	case c.UnitRun < curveTouching:
		bad.add("inside_radius", "the %s string has a unit run of %s: take a larger radius", c.Name, say(c.UnitRun))
	case c.SeatCut < curveTouching:
		bad.add("throat", "the %s string runs out at its bottom edge before it reaches the floor: no seat is left; give it a throat of more than %s",
			c.Name, say(c.Throat+(curveTouching-c.SeatCut)*c.UnitRise/c.UnitRun*math.Cos(radians(c.Pitch))))
	}
	return bad
}
