package stringer

import "stepoff/spec/measure"

// Request is what is known before a sawn stringer is laid out. Lengths in
// millimetres.
type Request struct {
	Rise, Run float64 // unit rise and unit run
	Risers    int     // risers of the flight
	Flush     bool    // the top tread is level with the upper floor; otherwise one rise below (hung)
	Tread     float64 // thickness of the finished tread
	LastTread float64 // the last tread cut, from the last riser cut to the head plumb cut: see LastTread

	// Below is how far the foot bears below the lower finished floor: flooring
	// laid later round the foot, less this stringer's own foot level. Negative
	// when it bears above.
	Below float64

	Width, Thickness float64 // of the board
	Kicker           *Block  // plate laid flat under the foot, or nil
	Ledger           *Block  // ledger on edge under the head, or nil

	Saw Saw
	// SquareStep is the fineness of the framing square's marks: 1/16 in, or 1 mm.
	SquareStep float64
	// Style prints the lengths in refusals.
	Style measure.Style
}

// Block is the upright rectangle a notch leaves room for, as it stands in the
// stair.
type Block struct{ Height, Depth float64 }

// Notches is how many steps are sawn into the board: the risers when the head
// is flush, one fewer when it is hung.
func (r Request) Notches() int {
	if r.Flush {
		return r.Risers
	}
	return r.Risers - 1
}

// Head is what decides how long the last tread cut is.
type Head struct {
	Flush       bool
	Run         float64
	RiserBoard  float64 // its thickness; 0 when risers are open
	Covered     bool    // a riser board covers the header above the last tread
	Nosing      float64 // of the treads
	FloorNosing float64 // of the upper floor
	Behind      float64 // hanger board or packing between head and header
}

// LastTread returns the length of the last tread cut.
//
// Hung: the header's face has to stand where the top run, measured to the
// floor's own nosing, comes out as every other run. The floor's nosing belongs
// at N*run - b - p; it overhangs whatever faces the header, which is the riser
// board where one covers it and the header itself where none does.
// Flush: the top tread runs to the header, one full run.
func LastTread(h Head) float64 {
	last := h.Run
	if !h.Flush {
		last += h.FloorNosing - h.Nosing
		if !h.Covered {
			last -= h.RiserBoard
		}
	}
	return last - h.Behind
}
