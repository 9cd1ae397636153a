package views

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"stepoff/layout"
	"stepoff/layout/drawing"
	"stepoff/layout/geom"
	"stepoff/layout/turn"
)

// laid is the plan of a member with tapered treads; nil of any other.
func laid(e layout.Element) *turn.Laid {
	switch e := e.(type) {
	case *layout.Winders:
		return e.Laid
	case *layout.Curve:
		return e.Laid
	}
	return nil
}

func placeFrame(p turn.Place) frame { return frameAt(p.At.X, p.At.Y, p.Heading) }

// entry is where a member begins in plan, and the way up from there.
func entry(e layout.Element) frame {
	switch e := e.(type) {
	case *layout.Flight:
		return flightFrame(e)
	case *layout.Landing:
		return placeFrame(e.Entry)
	}
	return placeFrame(laid(e).Entry)
}

// exit is where a member ends in plan, and the way on from there.
func exit(e layout.Element) frame {
	switch e := e.(type) {
	case *layout.Flight:
		fr := flightFrame(e)
		fr.origin = fr.at(e.TotalRun, 0)
		return fr
	case *layout.Landing:
		return placeFrame(e.Exit)
	}
	return placeFrame(laid(e).Exit)
}

// last is the stairway's uppermost member.
func last(s *layout.Stairway) layout.Element { return s.Elements[len(s.Elements)-1] }

// lastLine is where the stairway's last riser line stands, and the way on; and
// how deep the tread below it is.
func lastLine(s *layout.Stairway) (fr frame, run float64) {
	e := last(s)
	if f, ok := e.(*layout.Flight); ok {
		fr = flightFrame(f)
		fr.origin = fr.at(lastRiser(f), 0)
		return fr, f.UnitRun.MM()
	}
	treads := laid(e).Treads
	return exit(e), treads[len(treads)-1].Walkline
}

// route is the way up a stairway: up the middle of flights and landings, on
// tapered treads along the walkline, the first where there are several.
type route struct {
	start, end geom.Point
	lines      []drawing.Path // from the bottom up; walklines as centre lines
}

// travel is the way up from the first riser line to the last; where the stair
// begins or ends with tapered treads, from its first nosing or to its last.
func travel(s *layout.Stairway) route {
	var r route
	var ps []geom.Point // since the last walkline
	begun := false
	add := func(p geom.Point) {
		if n := len(ps); n == 0 || r2.Norm(r2.Sub(p, ps[n-1])) > 1e-6 {
			ps = append(ps, p)
		}
		if !begun {
			r.start, begun = p, true
		}
		r.end = p
	}
	flush := func() {
		if len(ps) > 1 {
			r.lines = append(r.lines, drawing.Path{Layer: drawing.Thin, Path: geom.Polyline(ps...)})
		}
		ps = nil
	}
	for i, e := range s.Elements {
		switch e := e.(type) {
		case *layout.Flight:
			for _, along := range wayUp(e, tapers(s, i-1), tapers(s, i+1)) {
				add(flightFrame(e).at(along, 0))
			}
		case *layout.Landing:
			for _, p := range crossing(e) {
				add(p)
			}
		default:
			for _, w := range laid(e).Walklines[:1] {
				add(w.Edges[0].From)
				flush()
				r.lines = append(r.lines, drawing.Path{Layer: drawing.Centre, Path: w})
				add(w.Edges[len(w.Edges)-1].To)
			}
		}
	}
	flush()
	return r
}

// tapers tells whether the i-th member has tapered treads.
func tapers(s *layout.Stairway, i int) bool {
	return i >= 0 && i < len(s.Elements) && laid(s.Elements[i]) != nil
}

// wayUp is where along a flight the way up begins and ends: at its first riser
// line and its last. Beside tapered treads it is a run nearer to the flight's
// middle, and goes over to their walkline from there.
func wayUp(f *layout.Flight, below, above bool) []float64 {
	from, to := 0.0, lastRiser(f)
	if below {
		from += f.UnitRun.MM()
	}
	if above {
		to -= f.UnitRun.MM()
	}
	if (below || above) && from > to {
		return nil
	}
	return []float64{from, to}
}

// crossing is where the way up turns on a landing: where the middles of what it
// joins meet, or half way along a landing that turns by a half.
func crossing(l *layout.Landing) []geom.Point {
	from, to := placeFrame(l.Entry), placeFrame(l.Exit)
	turn := r2.Cross(from.along, to.along)
	if math.Abs(turn) > 0.5 { // a quarter
		return []geom.Point{from.at(from.lengthwise(to.origin), 0)}
	}
	aside := from.sideways(to.origin)
	if r2.Dot(from.along, to.along) > 0 { // straight on
		if math.Abs(aside) < 1e-6 {
			return nil
		}
		half := from.lengthwise(to.origin) / 2
		return []geom.Point{from.at(half, 0), from.at(half, aside)}
	}
	b := reach(l, from)
	half := (b.Min.X + b.Max.X) / 2
	return []geom.Point{from.at(half, 0), from.at(half, aside)}
}
