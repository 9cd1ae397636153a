package stringer

import (
	"math"

	"stepoff/layout/geom"
)

// Sawn is a sawn stringer laid out: every figure in millimetres, every point
// in the blank frame unless it says elevation.
type Sawn struct {
	Request

	Notches       int
	Pitch         float64 // radians above level
	Step          float64 // tip to tip along the edge
	NotchDepth    float64 // from the edge square in to the root
	Throat        float64 // wood left square across under each root, or under the hole drilled there
	BottomDrop    float64 // what comes off the foot: unit rise - first riser cut
	FirstRiserCut float64
	SeatCut       float64 // level cut at the foot
	HeadCut       float64 // plumb cut at the head
	LeastBlank    float64 // extent of the outline along the board
	Clipped       bool    // so short that the seat runs through to the head plumb line

	Cuts    []Cut        // in the order they are sawn
	Outline []geom.Point // closed, no repeated last point; notches for kicker and ledger taken out
	Tips    []geom.Point // outside corners, on the edge (q = 0)
	Roots   []geom.Point // the inside corners between notches

	Square Square
	Kerf   Kerf

	heel geom.Point // elevation: foot of the first riser cut
	s0   float64    // s of the outline's least point, before shifting
}

// Sawn lays the stringer out. What cannot be built is refused with every
// reason there is.
func (r Request) Sawn() (*Sawn, Refusals) {
	s := &Sawn{
		Request:       r,
		Notches:       r.Notches(),
		Pitch:         math.Atan2(r.Rise, r.Run),
		Step:          math.Hypot(r.Rise, r.Run),
		FirstRiserCut: r.Rise - r.Tread + r.Below,
		BottomDrop:    r.Tread - r.Below,
		heel:          geom.Pt(0, -r.Below),
	}
	s.NotchDepth = r.Rise * r.Run / s.Step
	s.Throat = r.Width - s.NotchDepth - r.Saw.RootHole/2 // the hole puts the root that much deeper
	s.Square = r.square()

	headX := s.HeadX()
	_, topLevel := s.Tip(s.Notches)
	seat := s.bottomEdgeX(-r.Below)
	s.Clipped = seat >= headX
	if s.Clipped {
		s.SeatCut, s.HeadCut = headX, topLevel+r.Below
	} else {
		s.SeatCut, s.HeadCut = seat, topLevel-s.bottomEdgeY(headX)
	}
	// Going up or along the run never goes down the board, so the heel has the
	// least s of all corners and the top of the head plumb cut the greatest.
	s.s0 = s.along(s.heel)
	s.LeastBlank = s.along(geom.Pt(headX, topLevel)) - s.s0
	if bad := s.refuse(); len(bad) > 0 {
		return nil, bad
	}
	s.Kerf = r.Saw.kerf(r.Thickness)
	s.layOut()
	return s, nil
}

// HeadX is where the head plumb cut stands, in elevation.
func (s *Sawn) HeadX() float64 { return float64(s.Notches-1)*s.Run + s.LastTread }

// Tip returns the outside corner of notch k (1 to Notches) in elevation: the
// riser cut's x and the tread cut's level.
func (s *Sawn) Tip(k int) (x, y float64) {
	return float64(k-1) * s.Run, float64(k)*s.Rise - s.Tread
}

// topEdgeY and the two below are the board's edges in elevation.
func (s *Sawn) topEdgeY(x float64) float64 { return s.Rise - s.Tread + s.Rise/s.Run*x }

func (s *Sawn) bottomEdgeY(x float64) float64 {
	return s.topEdgeY(x) - s.Width/math.Cos(s.Pitch)
}

func (s *Sawn) bottomEdgeX(y float64) float64 {
	return (y - s.Rise + s.Tread + s.Width/math.Cos(s.Pitch)) * s.Run / s.Rise
}

// layOut finds cuts, tips, roots and outline in elevation and turns them into
// the blank frame.
func (s *Sawn) layOut() {
	heel := s.heel
	seatEnd := geom.Pt(s.SeatCut, heel.Y)
	headX := s.HeadX()
	_, topLevel := s.Tip(s.Notches)
	headFoot := geom.Pt(headX, topLevel-s.HeadCut)

	at := heel
	outline := s.footCorners()
	for k := 1; k <= s.Notches; k++ {
		x, y := s.Tip(k)
		tip := geom.Pt(x, y)
		end := geom.Pt(x+s.Run, y)
		if k == s.Notches {
			end.X = headX
		} else {
			s.Roots = append(s.Roots, s.blank(end))
		}
		s.Tips = append(s.Tips, s.blank(tip))
		s.cut(RiserCut, k, tip, at)
		s.cut(TreadCut, k, tip, end)
		outline = append(outline, tip, end)
		at = end
	}
	s.cut(HeadCut, 0, at, headFoot)
	s.cut(SeatCut, 0, heel, seatEnd)
	s.cutNotches(headFoot)
	outline = append(outline, s.headCorners(headFoot)...)
	if s.Ledger == nil && !s.Clipped || s.Ledger != nil && s.SeatCut < headX-s.Ledger.Depth {
		outline = append(outline, seatEnd)
	}
	for _, p := range outline {
		s.Outline = append(s.Outline, s.blank(p))
	}
}

// footCorners are the outline's corners from the seat up to the first tip, and
// headCorners those from the last tread cut down to the bottom edge, with the
// notches that kicker and ledger need.
func (s *Sawn) footCorners() []geom.Point {
	k := s.Kicker
	if k == nil {
		return []geom.Point{s.heel}
	}
	y := s.heel.Y
	return []geom.Point{geom.Pt(k.Depth, y), geom.Pt(k.Depth, y+k.Height), geom.Pt(0, y+k.Height)}
}

func (s *Sawn) headCorners(foot geom.Point) []geom.Point {
	l := s.Ledger
	if l == nil {
		return []geom.Point{foot}
	}
	x, y := foot.X-l.Depth, foot.Y+l.Height
	return []geom.Point{geom.Pt(foot.X, y), geom.Pt(x, y), geom.Pt(x, s.underside(x))}
}

// underside is the level at which a plumb line at x leaves the stringer: the
// bottom edge, or the seat.
func (s *Sawn) underside(x float64) float64 { return math.Max(s.bottomEdgeY(x), s.heel.Y) }

func (s *Sawn) cutNotches(headFoot geom.Point) {
	if k := s.Kicker; k != nil {
		y := s.heel.Y
		s.cut(KickerCut, 0, geom.Pt(0, y+k.Height), geom.Pt(k.Depth, y+k.Height))
		s.cut(KickerCut, 0, geom.Pt(k.Depth, y), geom.Pt(k.Depth, y+k.Height))
	}
	if l := s.Ledger; l != nil {
		x, y := headFoot.X-l.Depth, headFoot.Y+l.Height
		s.cut(LedgerCut, 0, geom.Pt(headFoot.X, y), geom.Pt(x, y))
		s.cut(LedgerCut, 0, geom.Pt(x, s.underside(x)), geom.Pt(x, y))
	}
}

// along is the unshifted s of an elevation point: its distance along the top
// edge from the first tip.
func (s *Sawn) along(p geom.Point) float64 {
	return p.X*math.Cos(s.Pitch) + (p.Y-s.Rise+s.Tread)*math.Sin(s.Pitch)
}

// blank turns an elevation point into the blank frame.
func (s *Sawn) blank(p geom.Point) geom.Point {
	return geom.Pt(s.along(p)-s.s0, p.X*math.Sin(s.Pitch)-(p.Y-s.Rise+s.Tread)*math.Cos(s.Pitch))
}

// Elevation turns a point of the blank frame back into the elevation frame.
func (s *Sawn) Elevation(p geom.Point) geom.Point {
	sin, cos := math.Sincos(s.Pitch)
	along := p.X + s.s0
	return geom.Pt(along*cos+p.Y*sin, along*sin-p.Y*cos+s.Rise-s.Tread)
}
