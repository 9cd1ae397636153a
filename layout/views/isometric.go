package views

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"stepoff/layout"
	"stepoff/layout/drawing"
	"stepoff/layout/geom"
	"stepoff/layout/stringer"
	"stepoff/layout/turn"
	"stepoff/spec"
	"stepoff/spec/measure"
)

// Sizes of what the picture adds for looks, in millimetres of the house: none
// is worked out or cut to.
const (
	floorMargin = 300.0       // of the lower floor, round the stair
	floorSheet  = 20.0        // thickness the lower floor is drawn with
	floorPiece  = 600.0       // of the upper floor, beyond the last riser
	plainFloor  = 11 * 25.4   // depth of an upper floor nobody measured: a joist and its flooring
	legSize     = 3.5 * 25.4  // a 4x4 post
	plainFrame  = 7.25 * 25.4 // depth of a landing's frame where no joist is named: a 2x8
)

// Isometric pictures the whole stairway for those who would rather look than
// read: treads, riser boards, stringers, landings on what carries them, and a
// piece of either floor. Lines that something hides are left out. It is nil
// where the job states no width.
func Isometric(s *layout.Stairway, st measure.Style) *drawing.Drawing {
	if s.Job.Width == nil {
		return nil
	}
	m := model{s: s, width: s.Job.Width.MM(), front: front(s)}
	for _, e := range s.Elements {
		switch e := e.(type) {
		case *layout.Flight:
			m.flight(e)
		case *layout.Landing:
			m.landing(e)
		case *layout.Winders:
			m.winders(e)
		case *layout.Curve:
			m.curve(e)
		}
	}
	m.floors()
	d := &drawing.Drawing{Name: "isometric", Title: "Isometric picture, true along the three axes"}
	for _, line := range m.best() {
		d.Line(drawing.Outline, line.From, line.To)
	}
	return d
}

type model struct {
	s            *layout.Stairway
	width, front float64
	solids       []solid
	box          geom.Box // in plan, round what stands on the floor
}

// best returns the picture from that corner, of four, from which most of the
// stair is seen. The first of equals is taken, whatever rounding makes of them.
func (m *model) best() []geom.Edge {
	heading := turn.Start.Heading
	var picture []geom.Edge
	most := 0.0
	corners := []float64{-135, 135, -45, 45} // from below first: risers are seen from there
	if _, ok := last(m.s).(*layout.Flight); ok && len(m.s.Elements) == 1 {
		corners = corners[:1] // a straight stair is best seen so, from either hand alike
	}
	for _, from := range corners {
		lines := isometricEye((heading + from) * math.Pi / 180).lines(m.solids)
		sum := 0.0
		for _, l := range lines {
			sum += l.Length()
		}
		if sum > most*(1+1e-6) {
			picture, most = lines, sum
		}
	}
	return picture
}

func (m *model) add(s solid) {
	m.solids = append(m.solids, s)
	for _, face := range s {
		for _, p := range face {
			m.box = m.box.Include(geom.Pt(p.X, p.Y))
		}
	}
}

// block adds a box of a frame between two places and two heights.
func (m *model) block(fr frame, along0, along1, left0, left1, low, high float64) {
	if along1 <= along0 || left1 <= left0 || high <= low {
		return
	}
	m.add(prism([]r3.Vec{fr.over(along0, left0, low), fr.over(along1, left0, low), fr.over(along1, left1, low), fr.over(along0, left1, low)},
		r3.Vec{Z: high - low}))
}

func (m *model) flight(f *layout.Flight) {
	fr, job, half := flightFrame(f), m.s.Job, m.width/2
	left, right := half, -half
	for k, side := range job.Sides {
		if side != spec.Open {
			continue
		}
		if k == 0 {
			left += job.Tread.Overhang.MM()
		} else {
			right -= job.Tread.Overhang.MM()
		}
	}
	for _, b := range stepBoards(m.s, f) {
		l, r := left, right
		if b.kind == layout.RiserBoard {
			l, r = half, -half
		}
		m.block(fr, b.Min.X, b.Max.X, r, l, f.StartLevel+b.Min.Y, f.StartLevel+b.Max.Y)
	}
	for i := range f.Strings {
		s := &f.Strings[i]
		outside := half // they stand outside the clear width
		if s.Hand == stringer.RightString {
			outside = -half - s.Thickness
		}
		var base []r3.Vec
		for _, p := range s.Outline {
			q := s.Elevation(p)
			base = append(base, fr.over(q.X, outside, f.StartLevel+q.Y))
		}
		m.add(prism(base, r3.Scale(s.Thickness, raise(fr.left, 0))))
	}
	for i := range f.Stringers {
		g := &f.Stringers[i]
		for _, at := range g.Positions {
			middle := m.stringerAt(f, g, at)
			base := make([]r3.Vec, len(g.Outline))
			for k, p := range g.Outline {
				q := g.Elevation(p)
				base[k] = fr.over(q.X, middle-g.Thickness/2, f.StartLevel+q.Y)
			}
			m.add(prism(base, r3.Scale(g.Thickness, raise(fr.left, 0))))
		}
	}
}

// stringerAt is how far to the left of the flight's middle a stringer stands:
// the outer ones flush with the clear width.
func (m *model) stringerAt(f *layout.Flight, g *layout.Group, position int) float64 {
	count := f.Spec.Stringer.Count
	if count < 2 {
		return 0
	}
	return (m.width - g.Thickness) * (0.5 - float64(position)/float64(count-1))
}

// floors adds a piece of the floor at either end.
func (m *model) floors() {
	base := m.box
	fr, half, end := exit(last(m.s)), m.width/2, 0.0
	if f, ok := last(m.s).(*layout.Flight); ok {
		fr, end = flightFrame(f), f.HeadX()+f.Spec.Stringer.BehindHead.MM()
	}
	depth := floorDepth(m.s)
	top := m.s.TotalRise.MM()
	m.block(fr, end, end+floorPiece, -half-floorMargin, half+floorMargin, top-depth, top)
	base = base.Grow(floorMargin)
	m.block(frameAt(0, 0, 0), base.Min.X, base.Max.X, base.Min.Y, base.Max.Y, -floorSheet, 0)
}

// landing adds a landing: its surface down to the underside of its frame, and
// what carries it.
func (m *model) landing(l *layout.Landing) {
	under, body := underside(l), l.Outline
	if l.Frame != nil {
		body = l.Frame.Outline // on under the upper flight
	}
	m.slab(l.Outline, l.FramingLevel, l.Level)
	m.slab(body, under, l.FramingLevel)
	if under <= 0 {
		return
	}
	switch l.Spec.On {
	case spec.OnLegs:
		for _, leg := range legs(body) {
			m.slab(leg, 0, under)
		}
	case spec.OnWalls:
		m.slab(body, 0, under)
	}
}

// slab adds a plan outline between two heights.
func (m *model) slab(outline []geom.Point, low, high float64) {
	if high <= low {
		return
	}
	base := make([]r3.Vec, len(outline))
	for k, p := range outline {
		base[k] = raise(p, low)
	}
	m.add(prism(base, r3.Vec{Z: high - low}))
}

// underside is the level of the underside of a landing's frame.
func underside(l *layout.Landing) float64 {
	depth := plainFrame
	if j := l.Spec.Joists; j != nil {
		depth = j.Width.MM()
	}
	return l.Level - (l.Spec.Finish + l.Spec.Sheathing).MM() - depth
}

// floorDepth is how deep the upper floor is drawn.
func floorDepth(s *layout.Stairway) float64 {
	for _, d := range [...]*measure.Length{s.Job.Levels.FloorDepth, s.Job.Levels.HeaderDepth} {
		if d != nil {
			return d.MM()
		}
	}
	return plainFloor
}
