package stringer

import (
	"math"

	"stepoff/spec/measure"
)

// Saw is a circular saw as it is set. Lengths in millimetres.
type Saw struct {
	Blade     float64 // diameter
	Depth     float64 // how far the blade reaches below the shoe
	StopShort float64 // how far short of the root the blade stops on the face
}

// Kerf is what the round blade does in an inside corner.
type Kerf struct {
	// FarUncut is how much of the line is still whole on the far face when the
	// kerf reaches the root on the near one: the handsaw's part. It is also how
	// far a sawyer who clears the far face overcuts the near one.
	FarUncut float64
}

// reach is how far ahead of the arbor the kerf reaches at a depth z below the
// shoe: half the chord of the blade there.
func (w Saw) reach(z float64) float64 {
	radius := w.Blade / 2
	above := radius - w.Depth + z // from the arbor down to that depth
	return math.Sqrt(math.Max(0, radius*radius-above*above))
}

func (w Saw) kerf(stock float64) Kerf {
	return Kerf{FarUncut: w.reach(0) - w.reach(stock)}
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
	spare := math.Max(0, s.Throat-leastThroat)
	sin, cos := math.Sincos(s.Pitch)
	return spare / cos, spare / sin
}
