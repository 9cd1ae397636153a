package stringer

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"stepoff/layout/geom"
	"stepoff/spec/measure"
)

// SolidRequest is what is known before a string is laid out that keeps both its
// edges: no step is sawn into it. Lengths in millimetres. Of the Request, kicker,
// ledger, saw and square are not used.
type SolidRequest struct {
	Request

	RiserBoard float64 // its thickness; 0 when risers are open
	OnTread    bool    // riser boards stand on the treads; otherwise they run down behind them
	Nosing     float64 // overhang past the riser board's face; past the riser line when risers are open
	TopRiser   float64 // riser line of the riser board above the last tread; 0 when none covers the header

	Margin    float64 // from the nosing line to the top edge, square to them
	FootPlumb float64 // from the plumb cut at the foot to the first nosing, level
	HeadLevel float64 // length of the level cut at the head, of a hung one
}

// Solid is the outline of such a string: two edges parallel to the nosing line,
// plumb and level cuts at both ends. Figures in millimetres; points in the blank
// frame, which is that of the string seen on its inner face, foot to the left; a
// right string is its mirror image, see Hand.
type Solid struct {
	SolidRequest

	Pitch      float64 // radians above level
	Step       float64 // nosing to nosing along the edge
	SeatCut    float64 // level cut at the foot
	FootCut    float64 // plumb cut at the foot
	HeadCut    float64 // plumb cut at the head
	HeadTop    float64 // level cut at the head
	LeastBlank float64 // extent of the outline along the board

	Outline []geom.Point // closed, no repeated last point
	Marks   []float64    // s of each tread's nosing, from the foot end

	top []geom.Point // elevation: the outline before it was turned into the blank frame
	s0  float64
}

// Hand says which string of a flight it is, going up.
type Hand int

// The hands.
const (
	LeftString Hand = iota
	RightString
)

func (h Hand) String() string { return [...]string{"left", "right"}[h] }

// Face turns a path of the blank frame into what is seen on the string's inner
// face, x along the top edge from the foot end: with y up, the left string's top
// edge lies above and the right one's below, for one is the other's mirror image.
func (h Hand) Face(p geom.Path) geom.Path {
	if h == RightString {
		return p
	}
	return p.Moved(func(q geom.Point) geom.Point { return geom.Pt(q.X, -q.Y) }, true)
}

// front is how far the first nosing stands before the first riser line.
func (s *SolidRequest) front() float64 { return s.RiserBoard + s.Nosing }

// HeadX is where the head plumb cut stands, in elevation.
func (s *SolidRequest) HeadX() float64 { return float64(s.Notches()-1)*s.Run + s.LastTread }

// riserLine is the x of the back of riser board k, and nosing the place of nosing
// k, in elevation.
func (s *SolidRequest) riserLine(k int) float64 { return float64(k-1) * s.Run }

func (s *SolidRequest) nosing(k int) geom.Point {
	return geom.Pt(s.riserLine(k)-s.front(), float64(k)*s.Rise)
}

// lay works the outline out. What spoils it is added to the refusals; key names
// the group of the job that holds the margin and the two cuts.
func (s *Solid) lay(key string, bad *Refusals) {
	s.Pitch = math.Atan2(s.Rise, s.Run)
	s.Step = math.Hypot(s.Rise, s.Run)
	n, say := s.Notches(), s.Style.FormatMM
	floor := -s.Below
	foot, head := s.nosing(1).X-s.FootPlumb, s.HeadX()
	seat := s.bottomEdgeX(floor)
	footTop := s.topEdgeY(foot)
	headTop := s.topEdgeY(head - s.HeadLevel)
	if s.Flush {
		headTop = float64(n)*s.Rise + s.Margin // over the top tread, which is level with the floor
	}
	s.HeadTop = head - s.topEdgeX(headTop)
	s.FootCut = footTop - floor
	under := math.Max(s.bottomEdgeY(head), floor)
	s.SeatCut = math.Min(seat, head) - foot
	s.HeadCut = headTop - under
	s.s0 = s.along(geom.Pt(foot, floor))
	s.LeastBlank = s.along(geom.Pt(head, headTop)) - s.s0
	switch {
	case s.LeastBlank > measure.Max.MM() || head > measure.Max.MM():
		bad.add("levels.total_rise", "the flight comes out longer than a kilometre: look at its rise, its run and its risers")
		return
	case s.Rise-s.Tread < touching:
		bad.add("tread.thickness", "a tread %s thick leaves no room under it in a unit rise of %s", say(s.Tread), say(s.Rise))
		return
	case s.FootCut < touching:
		bad.add(key+".foot_plumb", "a plumb cut %s before the first nosing stands where the string's top edge has run into the floor; write less than %s",
			say(s.FootPlumb), say(s.FootPlumb+s.FootCut*s.Run/s.Rise))
	case s.SeatCut < touching:
		bad.add("stringer.stock", "a string %s wide has left the floor before its plumb cut; take a wider board", say(s.Width))
	case s.LastTread < touching:
		bad.add("stringer.behind_head", "the last tread comes out as %s: what stands at the head takes the whole run of %s", say(s.LastTread), say(s.Run))
	case s.HeadTop < touching && s.Flush:
		bad.add("stringer.top_nosing", "the head lies before the string's top edge is as high as the upper floor")
	case s.HeadCut < touching:
		bad.add(key+".head_level", "a level cut of %s at the head leaves no plumb cut; write less", say(s.HeadLevel))
	case head-s.HeadLevel < foot && !s.Flush:
		bad.add(key+".head_level", "a level cut of %s is longer than the string; write less", say(s.HeadLevel))
	}
	if len(*bad) > 0 {
		return
	}
	s.top = []geom.Point{geom.Pt(foot, floor), geom.Pt(foot, footTop)}
	if s.HeadTop > touching {
		s.top = append(s.top, geom.Pt(head-s.HeadTop, headTop))
	}
	s.top = append(s.top, geom.Pt(head, headTop), geom.Pt(head, under))
	if seat < head {
		s.top = append(s.top, geom.Pt(seat, floor))
	}
	for _, p := range s.top {
		s.Outline = append(s.Outline, s.blank(p))
	}
	for k := 1; k <= n; k++ {
		s.Marks = append(s.Marks, s.blank(s.nosing(k)).X)
	}
}

// topEdgeY and those below are the string's edges in elevation.
func (s *Solid) topEdgeY(x float64) float64 {
	return s.Rise + (x+s.front())*s.Rise/s.Run + s.Margin/math.Cos(s.Pitch)
}

func (s *Solid) topEdgeX(y float64) float64 {
	return (y-s.Margin/math.Cos(s.Pitch)-s.Rise)*s.Run/s.Rise - s.front()
}

func (s *Solid) bottomEdgeY(x float64) float64 {
	return s.topEdgeY(x) - s.Width/math.Cos(s.Pitch)
}

func (s *Solid) bottomEdgeX(y float64) float64 {
	return s.topEdgeX(y + s.Width/math.Cos(s.Pitch))
}

// along is the unshifted s of an elevation point: its distance along the top edge.
func (s *Solid) along(p geom.Point) float64 {
	sin, cos := math.Sincos(s.Pitch)
	return p.X*cos + (p.Y-s.topEdgeY(0))*sin
}

// blank turns an elevation point into the blank frame.
func (s *Solid) blank(p geom.Point) geom.Point {
	sin, cos := math.Sincos(s.Pitch)
	return geom.Pt(s.along(p)-s.s0, p.X*sin-(p.Y-s.topEdgeY(0))*cos)
}

// blankPath turns a path of the elevation into the blank frame.
func (s *Solid) blankPath(p geom.Path) geom.Path { return p.Moved(s.blank, true) }

// Elevation turns a point of the blank frame back into the elevation frame.
func (s *Solid) Elevation(p geom.Point) geom.Point {
	sin, cos := math.Sincos(s.Pitch)
	along := p.X + s.s0
	return r2.Add(geom.Pt(0, s.topEdgeY(0)), geom.Pt(along*cos+p.Y*sin, along*sin-p.Y*cos))
}

// ElevationPath turns a path of the blank frame back into the elevation frame.
func (s *Solid) ElevationPath(p geom.Path) geom.Path { return p.Moved(s.Elevation, true) }

// HeadLevelY is the level of the top of the head plumb cut, in elevation.
func (s *Solid) HeadLevelY() float64 {
	under := math.Max(s.bottomEdgeY(s.HeadX()), -s.Below)
	return under + s.HeadCut
}

// SeatEnd is the x at which the level cut at the foot ends, in elevation.
func (s *Solid) SeatEnd() float64 { return s.nosing(1).X - s.FootPlumb + s.SeatCut }

// Span is the level distance from the plumb cut at the foot to that at the head.
func (s *Solid) Span() float64 { return s.HeadX() - s.nosing(1).X + s.FootPlumb }

// Underside is the level at which a plumb line at x leaves the string, in
// elevation: its bottom edge, or the seat.
func (s *Solid) Underside(x float64) float64 { return math.Max(s.bottomEdgeY(x), -s.Below) }
