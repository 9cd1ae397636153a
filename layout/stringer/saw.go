package stringer

import (
	"math"

	"stepoff/layout/geom"
	"stepoff/spec/measure"
)

// Saw is a circular saw as it is set. Lengths in millimetres.
type Saw struct {
	Blade     float64 // diameter
	Depth     float64 // how far the blade reaches below the shoe
	StopShort float64 // how far short of the root the blade stops on the face
	Bevel     float64 // tilt from square, radians
	RootHole  float64 // diameter of a hole drilled at every root, its middle in the corner; 0: none
}

// Through is how deep the blade has to be set to come through stock of a
// thickness: the thickness, longer by its tilt.
func (w Saw) Through(stock float64) float64 { return stock / math.Cos(w.Bevel) }

// BevelOffset is how far beside the line on the face a tilted blade comes out on
// the far face.
func (w Saw) BevelOffset(stock float64) float64 { return stock * math.Tan(w.Bevel) }

// Kerf is what the round blade does in an inside corner.
type Kerf struct {
	// FarUncut is how much of the line is still whole on the far face when the
	// kerf reaches the root on the near one: the handsaw's part. It is also how
	// far a sawyer who clears the far face overcuts the near one.
	FarUncut float64
}

// reach is how far ahead of the arbor the kerf reaches at a depth z below the
// shoe, taken along the blade: half its chord there.
func (w Saw) reach(z float64) float64 {
	radius := w.Blade / 2
	above := radius - w.Depth + z // from the arbor down to that depth
	return math.Sqrt(math.Max(0, radius*radius-above*above))
}

func (w Saw) kerf(stock float64) Kerf {
	return Kerf{FarUncut: w.reach(0) - w.reach(w.Through(stock))}
}

// OvercutShown is the overcut whose cost is told as an example: 1/4 in, or 5 mm.
// Millimetres.
func OvercutShown(u measure.Units) float64 {
	if u == measure.Metric {
		return 5
	}
	return (measure.Inch / 4).MM()
}

// OvercutCost returns the throat an overcut of the given length past the root
// costs, along the riser line and along the tread line.
func (s *Sawn) OvercutCost(past float64) (riser, tread float64) {
	sin, cos := math.Sincos(s.Pitch)
	return past * cos, past * sin
}

// OvercutLimit returns how far past the root an overcut may run, along the riser
// line and along the tread line, before the throat is down to the least allowed;
// 0 where it is already.
func (s *Sawn) OvercutLimit(leastThroat float64) (riser, tread float64) {
	spare := 0.0
	if s.Throat > leastThroat {
		spare = s.Width - s.NotchDepth - leastThroat // from the corner: a hole drilled there is run through first
	}
	sin, cos := math.Sincos(s.Pitch)
	return spare / cos, spare / sin
}

// AfterOvercut is the throat left where the saw has run past a root by the given
// lengths along the riser line and the tread line: both end under the same root,
// and the greater counts.
func (s *Sawn) AfterOvercut(riser, tread float64) float64 {
	r, _ := s.OvercutCost(riser)
	_, t := s.OvercutCost(tread)
	return s.Width - s.NotchDepth - math.Max(s.Saw.RootHole/2, math.Max(r, t))
}

// NotchSection is the least section beside the notch for a kicker or a ledger:
// from its inside corner to the nearest riser or tread cut that leaves wood on
// both sides of it. ok is false where there is no such notch.
func (s *Sawn) NotchSection(kind CutKind) (least float64, ok bool) {
	for _, c := range s.Cuts {
		if c.Kind != kind {
			continue
		}
		least, ok = math.Inf(1), true
		for _, d := range s.Cuts {
			if d.Kind == TreadCut || d.Kind == RiserCut && d.Step > 1 { // the first riser cut is the notch's own face
				least = math.Min(least, geom.Distance(c.To, d.From, d.To))
			}
		}
	}
	return least, ok
}
