package stringer

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"stepoff/layout/geom"
)

// CutKind says which cut of the stringer a line is.
type CutKind int

// The cuts.
const (
	RiserCut CutKind = iota
	TreadCut
	HeadCut
	SeatCut
	KickerCut
	LedgerCut
)

// Cut is one straight saw cut in the blank frame. Where it ends in an inside
// corner, To is that corner and the blade has to stop: Stop is then the place
// on the line where it does, and Uncut how much of the line beyond Stop is
// still whole on the far face. Otherwise the saw runs through and Stops is
// false.
type Cut struct {
	Kind     CutKind
	Step     int // number of the notch from the foot, 1 up; 0 when it belongs to none
	From, To geom.Point
	Stops    bool
	Stop     geom.Point
	Uncut    float64
}

// cut adds the line between two elevation points, To being the inside corner
// where it ends in one.
func (s *Sawn) cut(kind CutKind, step int, from, to geom.Point) {
	c := Cut{Kind: kind, Step: step, From: s.blank(from), To: s.blank(to)}
	switch kind {
	case RiserCut:
		c.Stops = step > 1
	case TreadCut:
		c.Stops = step < s.Notches
	case KickerCut, LedgerCut:
		c.Stops = true
	}
	if c.Stops {
		length := r2.Norm(r2.Sub(c.To, c.From))
		hole := 0.0 // what of the line a hole at its root takes out
		if kind == RiserCut || kind == TreadCut {
			hole = s.Saw.RootHole / 2
		}
		short := math.Min(s.Saw.StopShort+hole, length)
		c.Stop = r2.Add(c.To, r2.Scale(short/length, r2.Sub(c.From, c.To)))
		c.Uncut = math.Min(short+s.Kerf.FarUncut, length) - hole
	}
	s.Cuts = append(s.Cuts, c)
}
