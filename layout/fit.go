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
		for _, p := range outlineOf(e) {
			box = box.Include(p)
		}
	}
	return box, true
}

func outlineOf(e Element) []geom.Point {
	switch e := e.(type) {
	case *Flight:
		return e.Outline
	case *Landing:
		return e.Outline
	}
	return nil
}

// Passing is one member of a stairway that passes over another.
type Passing struct {
	Upper, Lower Element
	Where        geom.Box // the floor both stand over
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
	var all []Passing
	for i, upper := range s.Elements {
		for _, lower := range append([]Element{s.approach()}, s.Elements[:i]...) {
			where, ok := common(outlineOf(upper), outlineOf(lower))
			if !ok {
				continue
			}
			p := Passing{Upper: upper, Lower: lower, Where: where, Headroom: math.Inf(1)}
			for _, at := range places(where, upper) {
				if h := s.underside(upper, at) - s.surface(lower, at); h < p.Headroom {
					p.Headroom, p.At = h, at
				}
			}
			all = append(all, p)
		}
	}
	return all
}

// approach is the lower floor before the first nosing, as deep as the stair is
// wide: the landing that codes ask for there.
func (s *Stairway) approach() *Landing {
	width := s.Job.Width.MM()
	before := turn.Start.On(-overhang(s.Job)-width, 0, 0)
	return &Landing{Name: "the floor before the first riser", Lying: turn.Lying{Outline: before.Flight(width, width)}}
}

// common is the box that two outlines share; ok is false where they share none,
// or no more than an edge. Flights and landings lie square to each other, so
// their outlines are boxes.
func common(a, b []geom.Point) (shared geom.Box, ok bool) {
	if len(a) == 0 || len(b) == 0 {
		return shared, false
	}
	p, q := boxOf(a), boxOf(b)
	shared = geom.Box{
		Min: geom.Pt(math.Max(p.Min.X, q.Min.X), math.Max(p.Min.Y, q.Min.Y)),
		Max: geom.Pt(math.Min(p.Max.X, q.Max.X), math.Min(p.Max.Y, q.Max.Y)),
	}
	return shared, shared.Width() > touching && shared.Height() > touching
}

func boxOf(ps []geom.Point) geom.Box {
	box := geom.EmptyBox()
	for _, p := range ps {
		box = box.Include(p)
	}
	return box
}

// places are where the headroom below a member can be least: surface and
// underside run evenly from corner to corner, but a flight's underside bends
// where its seat ends.
func places(where geom.Box, upper Element) []geom.Point {
	xs, ys := []float64{where.Min.X, where.Max.X}, []float64{where.Min.Y, where.Max.Y}
	if f, ok := upper.(*Flight); ok {
		bend := f.placed().Point(f.seat(), 0)
		xs = append(xs, math.Min(math.Max(bend.X, where.Min.X), where.Max.X))
		ys = append(ys, math.Min(math.Max(bend.Y, where.Min.Y), where.Max.Y))
	}
	var all []geom.Point
	for _, x := range xs {
		for _, y := range ys {
			all = append(all, geom.Pt(x, y))
		}
	}
	return all
}

func (f *Flight) placed() turn.Place { return turn.Place{At: geom.Pt(f.X, f.Y), Heading: f.Heading} }

// seat is the longest seat cut: how far the flight's underside is level.
func (f *Flight) seat() float64 {
	seat := 0.0
	for _, g := range f.Stringers {
		seat = max(seat, g.SeatCut)
	}
	return seat
}

// up is how far up the flight a place in plan lies, from its first riser line.
func (f *Flight) up(at geom.Point) float64 {
	one := f.placed().Point(1, 0)
	return (at.X-f.X)*(one.X-f.X) + (at.Y-f.Y)*(one.Y-f.Y)
}

// surface is the level that headroom is measured from: the nosing line, or the
// landing.
func (s *Stairway) surface(e Element, at geom.Point) float64 {
	switch e := e.(type) {
	case *Flight:
		return e.StartLevel + e.UnitRise + (e.up(at)+overhang(s.Job))*e.UnitRise/e.UnitRun.MM()
	case *Landing:
		return e.Level
	}
	return 0
}

// underside is the level of what is lowest of a member over a place: a flight's
// stringers, a landing's joists.
func (s *Stairway) underside(e Element, at geom.Point) float64 {
	switch e := e.(type) {
	case *Flight:
		top := e.UnitRise - s.Job.Tread.Thickness.MM() + e.up(at)*e.UnitRise/e.UnitRun.MM()
		below := e.Spec.Stringer.Stock.Width.MM() / math.Cos(e.Pitch)
		return e.StartLevel + math.Max(top-below, -e.Flooring.MM())
	case *Landing:
		under := e.FramingLevel - e.Spec.Sheathing.MM()
		if e.Spec.Joists != nil {
			under -= e.Spec.Joists.Width.MM()
		}
		return under
	}
	return 0
}

// OpenFloor is a piece of the upper floor that has to be open for the headroom
// under it.
type OpenFloor struct {
	Over    Element
	Outline []geom.Point // in plan, counter-clockwise
	Long    float64      // along the member's travel; a flight's ends at its head
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
		switch e := e.(type) {
		case *Landing:
			if e.Level > highest+touching {
				all = append(all, OpenFloor{e, e.Outline, e.Up})
			}
		case *Flight:
			if e.TotalRun <= 0 {
				continue
			}
			least := 0.0 // before it the landing is what is walked on
			if e.Foot == nil {
				least = -e.UnitRun.MM() - overhang(s.Job) // where the nosing line meets the floor
			}
			from := max(least, (highest-e.StartLevel-e.UnitRise)*e.UnitRun.MM()/e.UnitRise-overhang(s.Job))
			if from < e.TotalRun-touching {
				start := e.placed().On(from, 0, 0)
				long := e.TotalRun - from
				all = append(all, OpenFloor{e, start.Flight(long, s.Job.Width.MM()), long})
			}
		}
	}
	return all
}
