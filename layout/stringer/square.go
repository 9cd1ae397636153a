package stringer

import "math"

// Square is a framing square set to its nearest marks, and where stepping with
// it ends up. Lengths in millimetres.
type Square struct {
	Tongue, Blade float64 // rise and run as set
	// Drift is how far the last tip is off along the edge, and DriftRise how far
	// the top tread cut is off in height, after stepping every notch: too far or
	// too high when positive.
	Drift, DriftRise float64
}

func (r Request) square() Square {
	set := func(v float64) float64 { return math.Round(v/r.SquareStep) * r.SquareStep }
	q := Square{Tongue: set(r.Rise), Blade: set(r.Run)}
	n := float64(r.Notches())
	q.Drift = (n - 1) * (math.Hypot(q.Tongue, q.Blade) - math.Hypot(r.Rise, r.Run))
	q.DriftRise = n * (q.Tongue - r.Rise)
	return q
}
