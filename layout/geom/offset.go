package geom

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// Moved is the path with every point moved by a motion, which keeps lengths;
// mirrored says that it turns left into right, and arcs the other way with it.
func (p Path) Moved(motion func(Point) Point, mirrored bool) Path {
	out := Path{Closed: p.Closed, Edges: make([]Edge, len(p.Edges))}
	for k, e := range p.Edges {
		m := Edge{From: motion(e.From), To: motion(e.To), Radius: e.Radius, Sweep: e.Sweep}
		if e.IsArc() {
			m.Centre = motion(e.Centre)
			if mirrored {
				m.Sweep = -m.Sweep
			}
		}
		out.Edges[k] = m
	}
	return out
}

// Offset returns the closed path with every edge moved outward by d, inward
// where d is negative. Arcs keep their centres; corners stay corners, where the
// moved edges meet. ok is false where an edge would vanish, or two neighbours no
// longer meet: the shape is too small for such an offset.
func (p Path) Offset(d float64) (out Path, ok bool) {
	if p.Area() < 0 {
		d = -d // clockwise: outward is to the left
	}
	n := len(p.Edges)
	moved := make([]Edge, n)
	for k, e := range p.Edges {
		if moved[k], ok = e.toRight(d); !ok {
			return Path{}, false
		}
	}
	corners := make([]Point, n) // where edge k begins
	for k := range moved {
		before := moved[(k+n-1)%n]
		if corners[k], ok = before.corner(moved[k], p.Edges[k].From); !ok {
			return Path{}, false
		}
	}
	out.Closed = true
	for k, e := range moved {
		e.From, e.To = corners[k], corners[(k+1)%n]
		if e.IsArc() {
			e.Sweep = sweepTo(e, p.Edges[k].Sweep)
		} else if r2.Dot(r2.Sub(e.To, e.From), r2.Sub(p.Edges[k].To, p.Edges[k].From)) <= 0 {
			return Path{}, false // it has turned round: nothing of it is left
		}
		out.Edges = append(out.Edges, e)
	}
	return out, true
}

// toRight moves the edge by d to the right of the way it runs.
func (e Edge) toRight(d float64) (Edge, bool) {
	if !e.IsArc() {
		along := r2.Sub(e.To, e.From)
		if along == (Point{}) {
			return e, false
		}
		along = r2.Unit(along)
		return e.Shift(r2.Scale(d, Pt(along.Y, -along.X))), true
	}
	radius := e.Radius + math.Copysign(d, d*e.Sweep) // to the right of counter-clockwise is away from the centre
	if radius <= 0 {
		return e, false
	}
	scale := func(q Point) Point { return r2.Add(e.Centre, r2.Scale(radius/e.Radius, r2.Sub(q, e.Centre))) }
	e.From, e.To, e.Radius = scale(e.From), scale(e.To), radius
	return e, true
}

// parallel is the sine of the angle below which two edges go on into each other:
// rounding makes less of it than this, and no corner anybody cuts is as flat.
const parallel = 1e-9

// corner is where the edge, carried on, meets the next one, carried on; the
// place nearest to the corner they had.
func (e Edge) corner(next Edge, had Point) (Point, bool) {
	switch {
	case !e.IsArc() && !next.IsArc():
		a, b := r2.Sub(e.To, e.From), r2.Sub(next.To, next.From)
		cross := r2.Cross(a, b)
		if math.Abs(cross) < parallel*r2.Norm(a)*r2.Norm(b) {
			return next.From, true
		}
		f := r2.Cross(r2.Sub(next.From, e.From), b) / cross
		return r2.Add(e.From, r2.Scale(f, a)), true
	case e.IsArc() && next.IsArc():
		return next.From, r2.Norm(r2.Sub(e.To, next.From)) < 1e-6 // only arcs that run on into each other
	case e.IsArc():
		return lineOnCircle(next, e, had)
	}
	return lineOnCircle(e, next, had)
}

// lineOnCircle is where a line, carried on, meets the circle of an arc: of the
// two places the one nearest to that given.
func lineOnCircle(line, arc Edge, had Point) (Point, bool) {
	along := r2.Unit(r2.Sub(line.To, line.From))
	to := r2.Sub(arc.Centre, line.From)
	foot := r2.Add(line.From, r2.Scale(r2.Dot(to, along), along))
	off := r2.Norm(r2.Sub(arc.Centre, foot))
	if off > arc.Radius*(1+parallel) {
		return Point{}, false
	}
	half := math.Sqrt(math.Max(0, arc.Radius*arc.Radius-off*off))
	if half < arc.Radius*1e-5 { // it touches: the root makes a thousandth of the rounding in off
		half = 0
	}
	a, b := r2.Add(foot, r2.Scale(half, along)), r2.Sub(foot, r2.Scale(half, along))
	if r2.Norm2(r2.Sub(a, had)) < r2.Norm2(r2.Sub(b, had)) {
		return a, true
	}
	return b, true
}

// sweepTo is how far the arc runs from its From to its To, the way it ran before.
func sweepTo(e Edge, before float64) float64 {
	end := math.Atan2(e.To.Y-e.Centre.Y, e.To.X-e.Centre.X)
	sweep := math.Mod(end-e.Start(), 2*math.Pi)
	if before > 0 && sweep < 0 {
		sweep += 2 * math.Pi
	}
	if before < 0 && sweep > 0 {
		sweep -= 2 * math.Pi
	}
	return sweep
}
