package layout

import (
	"math"

	"stepoff/layout/geom"
	"stepoff/layout/turn"
)

// Footprint is the box round the whole stairway in plan, from its first nosing
// on. ok is false where the job states no width.
func (s *Stairway) Footprint() (box geom.Box, ok bool) {
	if s.Job.Width == nil {
		return geom.Box{}, false
	}
	box = geom.EmptyBox()
	first := turn.Start
	half := s.Job.Width.MM() / 2
	for _, side := range [...]float64{-half, half} {
		box = box.Include(first.Point(-overhang(s.Job), side))
	}
	for _, e := range s.Elements {
		box = box.Union(outlineOf(e).Box())
	}
	return box, true
}

// Passing is one member of a stairway that passes over another.
type Passing struct {
	Upper, Lower Element
	Where        geom.Box // round the floor both stand over
	// Headroom is the least, plumb, from the lower one's nosing line or surface to
	// the upper one's underside: 0 or less where they cut through each other.
	Headroom float64
	At       geom.Point // where that is
}

// Passings are the places where the stairway passes over itself, and over the
// floor one steps from onto it, from the bottom up.
func (s *Stairway) Passings() []Passing {
	if s.Job.Width == nil {
		return nil
	}
	lower := []Element{s.approach()}
	surfaces := [][]piece{s.surfaces(lower[0])}
	var all []Passing
	for _, upper := range s.Elements {
		under := s.undersides(upper)
		for k, surface := range surfaces {
			if p, ok := passing(under, surface); ok {
				p.Upper, p.Lower = upper, lower[k]
				all = append(all, p)
			}
		}
		lower, surfaces = append(lower, upper), append(surfaces, s.surfaces(upper))
	}
	return all
}

// passing finds where the undersides of one member are nearest to the surfaces
// of another; ok is false where they share no floor, or no more than an edge.
func passing(under, surface []piece) (p Passing, ok bool) {
	p = Passing{Where: geom.EmptyBox(), Headroom: math.Inf(1)}
	boxes := make([]geom.Box, len(surface))
	for k, low := range surface {
		boxes[k] = boxOf(low.outline)
	}
	for _, high := range under {
		box := boxOf(high.outline)
		for k, low := range surface {
			if !box.Meets(boxes[k]) {
				continue
			}
			shared := geom.Common(high.outline, low.outline)
			if geom.Area(shared) <= touching*geom.Closed(shared...).Length() {
				continue
			}
			p.Where = p.Where.Union(boxOf(shared))
			for _, at := range places(shared) {
				if h := high.level(at) - low.level(at); h < p.Headroom {
					p.Headroom, p.At = h, at
				}
			}
		}
	}
	return p, !p.Where.Empty()
}

// approach is the lower floor before the first nosing, as deep as the stair is
// wide: the landing that codes ask for there.
func (s *Stairway) approach() *Landing {
	width := s.Job.Width.MM()
	before := turn.Start.On(-overhang(s.Job)-width, 0, 0)
	return &Landing{Name: "the floor before the first riser", Lying: turn.Lying{Outline: before.Flight(width, width)}}
}

func boxOf(ps []geom.Point) geom.Box {
	box := geom.EmptyBox()
	for _, p := range ps {
		box = box.Include(p)
	}
	return box
}

// placesApart is how far apart headroom is looked at along the edges of what two
// members share, in millimetres. Surfaces and undersides are even, and have their
// least in a corner, but over and under tapered treads: those climb by shares of
// an angle, between two such places by less than a tenth of a millimetre other
// than evenly on a tread of 15 cm, and they bend most along an edge.
const placesApart = 25

// places are where the headroom over a piece of floor can be least: along its
// edges.
func places(shared []geom.Point) []geom.Point {
	var all []geom.Point
	for _, e := range geom.Closed(shared...).Edges {
		n := math.Ceil(e.Length() / placesApart)
		for k := range int(n) {
			all = append(all, e.At(float64(k)/n))
		}
	}
	return all
}

func (f *Flight) placed() turn.Place { return turn.Place{At: geom.Pt(f.X, f.Y), Heading: f.Heading} }

// seat is the longest seat cut: how far the flight's underside is level.
func (f *Flight) seat() float64 {
	seat, _ := f.Seat()
	return seat
}

// up is how far up the flight a place in plan lies, from its first riser line.
func (f *Flight) up(at geom.Point) float64 {
	one := f.placed().Point(1, 0)
	return (at.X-f.X)*(one.X-f.X) + (at.Y-f.Y)*(one.Y-f.Y)
}

// OpenFloor is a piece of the upper floor that has to be open for the headroom
// under it.
type OpenFloor struct {
	Over    Element
	Outline geom.Path // in plan, counter-clockwise
	Long    float64   // along the member's travel, on tapered treads along the walkline; what climbs is open up to its head
}

// OpeningInPlan returns what of the upper floor has to be open, over each member
// from the bottom up, for the headroom asked for, in millimetres. It is nil
// where the job states no floor depth or no width, and where the ceiling is too
// low over the lower floor itself: no opening gives that headroom.
func (s *Stairway) OpeningInPlan(headroom float64) []OpenFloor {
	if s.Job.Levels.FloorDepth == nil || s.Job.Width == nil {
		return nil
	}
	highest := s.TotalRise.MM() - s.Job.Levels.FloorDepth.MM() - headroom // surface that may lie under the floor
	if highest < 0 {
		return nil
	}
	var all []OpenFloor
	for _, e := range s.Elements {
		var o OpenFloor
		switch e := e.(type) {
		case *Landing:
			if e.Level > highest+touching {
				o = OpenFloor{Outline: outlineOf(e), Long: e.Up}
			}
		case *Flight:
			o = s.openOverFlight(e, highest)
		case *Winders:
			o = openOverTapered(e.Laid, e.Levels, e.UnitRise, highest)
		case *Curve:
			o = openOverTapered(e.Laid, e.Levels, e.UnitRise, highest)
		}
		if o.Outline.Edges != nil {
			o.Over = e
			all = append(all, o)
		}
	}
	return all
}

// openOverFlight is the upper part of a flight, where its nosing line is higher
// than that.
func (s *Stairway) openOverFlight(f *Flight, highest float64) (o OpenFloor) {
	if f.TotalRun <= 0 {
		return o
	}
	least := 0.0 // before it the landing is what is walked on
	if f.Foot == nil {
		least = -f.UnitRun.MM() - overhang(s.Job) // where the nosing line meets the floor
	}
	from := max(least, (highest-f.StartLevel-f.UnitRise)*f.UnitRun.MM()/f.UnitRise-overhang(s.Job))
	if from < f.TotalRun-touching {
		o.Long = f.TotalRun - from
		o.Outline = geom.Closed(f.placed().On(from, 0, 0).Flight(o.Long, s.Job.Width.MM())...)
	}
	return o
}

// openOverTapered is what of tapered treads climbs higher than that, from the
// nosing on where the first of them begins to: that stands over what is below. Where they
// begin the stair, the nosing line is carried on before the first nosing until
// it meets the floor, as before a flight.
func openOverTapered(l *turn.Laid, levels []float64, rise, highest float64) (o OpenFloor) {
	n := len(levels)
	for k, lev := range levels {
		if share := (highest - lev) / rise; share < 1-touching/rise {
			o.Outline = l.From(0)
			if k > 0 || share > 0 {
				o.Outline = l.Above(k, max(share, 0))
			}
			o.Long = (1 - max(share, 0)) * l.Treads[k].Walkline
			for j := k + 1; j < n; j++ {
				o.Long += l.Treads[j].Walkline
			}
			if first := levels[0] < rise+touching; share < 0 && first {
				before := min(-share, 1) * l.Treads[0].Walkline
				o.Outline = l.WithBefore(before - l.Past(l.Risers[0], l.Nosings[0].Out))
				o.Long += before
			}
			return o
		}
	}
	return o
}
