package layout

import "stepoff/spec/measure"

// Headroom is what is over a flight where the upper floor still covers it.
// What was not measured is nil. Millimetres.
type Headroom struct {
	Least *float64 // plumb, nosing line to ceiling, where it is least
	AtX   *float64 // where that is, in the flight's elevation frame
	// OpeningNeeded is how far the opening has to reach, level, from the head
	// plumb cut, for the headroom asked for; nil where none was asked for, or
	// where the ceiling is too low over the lower floor itself.
	OpeningNeeded *float64
}

// Overhead is a flight and the floor above it, in the flight's elevation frame:
// what headroom is worked out from. Millimetres.
type Overhead struct {
	Rise, Run   float64 // unit rise, unit run
	TotalRise   float64 // of the flight, to the finished upper floor
	FloorDepth  float64 // finished upper floor down to the ceiling below
	FirstNosing float64 // x of the first nosing; less than 0
	Head        float64 // x of the head plumb cut
}

// nosingLine is the height from which headroom is measured: the line through
// the nosings, carried on below the first of them until it meets the floor.
func (o Overhead) nosingLine(x float64) float64 {
	return max(0, o.Rise+(x-o.FirstNosing)*o.Rise/o.Run)
}

// Least returns the least headroom over the nosing line and where it is, under
// a floor whose opening ends a level distance from the head plumb cut. The
// nosing line climbs and the ceiling does not, so it is always under the far
// edge of the opening.
func (o Overhead) Least(opening float64) (least, atX float64) {
	atX = o.Head - opening
	return o.TotalRise - o.FloorDepth - o.nosingLine(atX), atX
}

// OpeningFor returns how far the opening has to reach from the head plumb cut
// for that much headroom. For a hung head as it is usually cut this is
// (headroom + floor) x run / rise + riser board + nosing; a flush head adds a
// run. ok is false where the ceiling is lower than that over the lower floor.
func (o Overhead) OpeningFor(headroom float64) (opening float64, ok bool) {
	height := o.TotalRise - o.FloorDepth - headroom // of the nosing line under the far edge
	if height < 0 {
		return 0, false
	}
	return o.Head - o.FirstNosing - (height-o.Rise)*o.Run/o.Rise, true
}

// Overhead returns the top flight and the floor above it. It is nil where the
// job does not state the floor's depth.
func (s *Stairway) Overhead() *Overhead {
	flights := s.Flights()
	if s.Job.Levels.FloorDepth == nil || len(flights) == 0 {
		return nil
	}
	f := flights[len(flights)-1]
	if len(f.Stringers) == 0 {
		return nil
	}
	return &Overhead{
		Rise: f.UnitRise, Run: f.UnitRun.MM(), TotalRise: f.EndLevel - f.StartLevel,
		FloorDepth:  s.Job.Levels.FloorDepth.MM(),
		FirstNosing: -(s.Job.Riser.Thickness + s.Job.Tread.Nosing).MM(),
		Head:        f.Stringers[0].HeadX(),
	}
}

// Headroom returns the headroom over the top flight, and the opening it needs
// for the headroom asked for (nil: none is). It is nil where the job does not
// state the floor's depth.
func (s *Stairway) Headroom(asked *measure.Length) *Headroom {
	o := s.Overhead()
	if o == nil {
		return nil
	}
	var h Headroom
	if s.Job.Opening != nil {
		least, at := o.Least(s.Job.Opening.MM())
		h.Least, h.AtX = &least, &at
	}
	if asked != nil {
		if needed, ok := o.OpeningFor(asked.MM()); ok {
			h.OpeningNeeded = &needed
		}
	}
	return &h
}
