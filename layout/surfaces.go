package layout

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"stepoff/layout/geom"
	"stepoff/layout/turn"
)

// brokenWithin is how far outside of an arc the polygon may run that stands for
// it where members are held against each other, in millimetres: less than any
// stair is built to, and on the safe side, since it only takes more room.
const brokenWithin = 0.1

// outlineOf is a member in plan, riser line to riser line, counter-clockwise; it
// has no edges where the member has no run, or no width is known.
func outlineOf(e Element) geom.Path {
	switch e := e.(type) {
	case *Flight:
		return geom.Closed(e.Outline...)
	case *Landing:
		return geom.Closed(e.Outline...)
	case *Winders:
		return e.Outline()
	case *Curve:
		return e.Outline()
	}
	return geom.Path{}
}

// piece is a part of a member over which one rule gives a level: a convex
// polygon in plan, counter-clockwise.
type piece struct {
	outline []geom.Point
	level   func(geom.Point) float64
}

func level(l float64) func(geom.Point) float64 { return func(geom.Point) float64 { return l } }

// surfaces are what headroom is measured from: the nosing line of a flight, the
// surface through the nosings of winders and of a curve, a landing.
func (s *Stairway) surfaces(e Element) []piece {
	switch e := e.(type) {
	case *Flight:
		if e.Outline == nil {
			return nil
		}
		return []piece{{e.Outline, func(p geom.Point) float64 {
			return e.StartLevel + e.UnitRise + (e.up(p)+overhang(s.Job))*e.UnitRise/e.UnitRun.MM()
		}}}
	case *Landing:
		return []piece{{e.Outline, level(e.Level)}}
	case *Winders:
		return ramp(e.Laid, e.Levels, e.UnitRise)
	case *Curve:
		return ramp(e.Laid, e.Levels, e.UnitRise)
	}
	return nil
}

// ramp is the surface through the nosings of tapered treads: it climbs from each
// nosing to the next, and past the last one is as high as what is stepped onto
// there.
func ramp(l *turn.Laid, levels []float64, rise float64) []piece {
	n := len(l.Treads)
	between := func(k int) func(geom.Point) float64 { // the k-th nosing and the next
		if k == n {
			return level(levels[n-1] + rise)
		}
		return func(p geom.Point) float64 { return levels[k] + rise*l.Share(l.Nosings[k], l.Nosings[k+1], p) }
	}
	var all []piece
	for k, t := range l.Treads {
		in, out := l.Nosings[k+1].In, l.Nosings[k+1].Out
		if l.Hand() == turn.Left { // what lies to the left of the line is what lies past it
			in, out = out, in
		}
		for _, tri := range geom.Triangles(t.Outline.Around(brokenWithin)) {
			all = append(all, piece{geom.LeftOf(tri, in, out), between(k)}, piece{geom.LeftOf(tri, out, in), between(k + 1)})
		}
	}
	return all
}

// undersides are what is lowest of a member: a flight's stringers, a landing's
// joists, what winders and a curve stand on.
func (s *Stairway) undersides(e Element) []piece {
	switch e := e.(type) {
	case *Flight:
		return s.underFlight(e)
	case *Landing:
		return []piece{{e.Outline, level(s.underTurn(e))}}
	case *Winders:
		return s.underWinders(e)
	case *Curve:
		return s.underCurve(e)
	}
	return nil
}

// underFlight is the underside of the flight's stringers: level along the seat,
// then as steep as the flight. What the foot stands on runs on under the seat.
func (s *Stairway) underFlight(f *Flight) []piece {
	if f.Outline == nil {
		return nil
	}
	below := f.Spec.Stringer.Stock.Width.MM() / math.Cos(f.Pitch)
	under := func(p geom.Point) float64 {
		if len(f.Strings) > 0 {
			return f.StartLevel + math.Min(f.Strings[0].Underside(f.up(p)), f.Strings[1].Underside(f.up(p)))
		}
		tips := f.UnitRise - s.Job.Tread.Thickness.MM() + f.up(p)*f.UnitRise/f.UnitRun.MM()
		return f.StartLevel + math.Max(tips-below, -f.Flooring.MM())
	}
	seat := under
	if f.Foot != nil {
		seat = level(s.underTurn(f.Foot))
	}
	bend := f.placed().On(f.seat(), 0, 0)
	right, left := bend.Point(0, -1), bend.Point(0, 1)
	return []piece{{geom.LeftOf(f.Outline, right, left), seat}, {geom.LeftOf(f.Outline, left, right), under}}
}

// underTurn is the lowest level of a landing's joists, or of what winders stand
// on.
func (s *Stairway) underTurn(t Turn) float64 {
	switch t := t.(type) {
	case *Landing:
		under := t.FramingLevel - t.Spec.Sheathing.MM()
		if t.Spec.Joists != nil {
			under -= t.Spec.Joists.Width.MM()
		}
		return under
	case *Winders:
		return s.underWinder(t, 0)
	}
	return 0
}

// underWinder is the level of what is lowest under the k-th tread of a turn: the
// underside of the lowest box, which reaches under all of them. Where there are
// none, joists as wide as the stringers' stock are taken under each tread.
func (s *Stairway) underWinder(w *Winders, k int) float64 {
	if len(w.Boxes) == 0 {
		return w.Levels[k] - s.Job.Tread.Thickness.MM() - s.Job.Stringer.Stock.Width.MM()
	}
	return max(w.Boxes[0].Bottom, 0) // on the floor it stands below the flooring to come
}

func (s *Stairway) underWinders(w *Winders) []piece {
	var all []piece
	for k, t := range w.Treads {
		for _, tri := range geom.Triangles(t.Outline.Around(brokenWithin)) {
			all = append(all, piece{tri, level(s.underWinder(w, k))})
		}
	}
	return all
}

// underCurve is the underside of strings from the stringers' stock, as a straight
// stringer has it: each place as steep as a string through it would be, and never
// lower than the foot. The walls that carry a curve's edges on plates leave no way
// through under it at all, and are not asked about here.
func (s *Stairway) underCurve(c *Curve) []piece {
	each := c.Spec.Angle * math.Pi / 180 / float64(len(c.Treads)) // turned on a tread
	width, tread := s.Job.Stringer.Stock.Width.MM(), s.Job.Tread.Thickness.MM()
	var all []piece
	for k, t := range c.Treads {
		under := func(p geom.Point) float64 {
			run := each * math.Max(r2.Norm(r2.Sub(p, c.Centre)), brokenWithin)
			tips := c.UnitRise*(float64(k+1)+c.Share(c.Laid.Risers[k], c.Laid.Risers[k+1], p)) - tread
			return c.StartLevel + math.Max(tips-width*math.Hypot(1, c.UnitRise/run), 0)
		}
		for _, tri := range geom.Triangles(t.Outline.Around(brokenWithin)) {
			all = append(all, piece{tri, under})
		}
	}
	return all
}
