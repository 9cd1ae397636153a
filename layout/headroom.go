package layout

import "stepoff/spec/measure"

// Headroom is what is over a flight or a curve where the upper floor still covers it.
// What was not measured is nil. Millimetres.
type Headroom struct {
	Least *float64 // plumb, nosing line to ceiling, where it is least
	AtX   *float64 // where that is, in the flight's elevation frame; of a curve along its first walkline
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

// Overhead returns what climbs to the upper floor, a flight or a curve, and the
// floor above it. A curve is looked at along its first walkline, an opening over
// it ends on a line through its centre: that is under the same nosing line all
// along. It is nil where the job does not state the floor's depth, and over a
// flight of one riser.
func (s *Stairway) Overhead() *Overhead {
	if s.Job.Levels.FloorDepth == nil {
		return nil
	}
	o := &Overhead{FloorDepth: s.Job.Levels.FloorDepth.MM(), FirstNosing: -overhang(s.Job)}
	switch e := s.Elements[len(s.Elements)-1].(type) {
	case *Flight:
		if !e.HasStringers() {
			return nil
		}
		o.Rise, o.Run, o.TotalRise = e.UnitRise, e.UnitRun.MM(), e.EndLevel-e.StartLevel
		o.Head = e.HeadX()
	case *Curve:
		if len(e.Walklines) == 0 {
			return nil
		}
		o.Run = e.Walklines[0].Length() / float64(len(e.Treads)) // treads are alike
		o.Rise, o.TotalRise = e.UnitRise, e.EndLevel-e.StartLevel
		o.Head = float64(len(e.Treads)) * o.Run // its last riser line
	}
	return o
}

// Headroom returns the headroom over the top flight or curve, and the opening it needs
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
