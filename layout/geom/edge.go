package geom

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// Point is a place or a displacement in the plane, in millimetres.
type Point = r2.Vec

// Pt is short for Point{X: x, Y: y}.
func Pt(x, y float64) Point { return Point{X: x, Y: y} }

// Edge is a straight or circular piece of a path. Radius 0 means straight,
// From to To; otherwise the edge runs about Centre from the angle of From
// through Sweep radians (counter-clockwise positive) to To.
type Edge struct {
	From, To Point
	Centre   Point
	Radius   float64
	Sweep    float64
}

// Line returns the straight edge from a to b.
func Line(a, b Point) Edge { return Edge{From: a, To: b} }

// Arc returns the circular edge about centre with the given radius, from the
// angle start through sweep radians, counter-clockwise positive.
func Arc(centre Point, radius, start, sweep float64) Edge {
	at := func(a float64) Point {
		sin, cos := math.Sincos(a)
		return Pt(centre.X+radius*cos, centre.Y+radius*sin)
	}
	return Edge{From: at(start), To: at(start + sweep), Centre: centre, Radius: radius, Sweep: sweep}
}

// IsArc tells a circular edge from a straight one.
func (e Edge) IsArc() bool { return e.Radius != 0 }

// Start is the angle at which an arc begins, in radians.
func (e Edge) Start() float64 { return math.Atan2(e.From.Y-e.Centre.Y, e.From.X-e.Centre.X) }

// Length is the distance along the edge.
func (e Edge) Length() float64 {
	if e.IsArc() {
		return e.Radius * math.Abs(e.Sweep)
	}
	return r2.Norm(r2.Sub(e.To, e.From))
}

// Shift moves the edge by d.
func (e Edge) Shift(d Point) Edge {
	e.From, e.To, e.Centre = r2.Add(e.From, d), r2.Add(e.To, d), r2.Add(e.Centre, d)
	return e
}

// At returns the point a fraction f (0 to 1) of the way along the edge.
func (e Edge) At(f float64) Point {
	switch {
	case f == 0:
		return e.From
	case f == 1:
		return e.To
	case e.IsArc():
		sin, cos := math.Sincos(e.Start() + f*e.Sweep)
		return Pt(e.Centre.X+e.Radius*cos, e.Centre.Y+e.Radius*sin)
	}
	return r2.Add(e.From, r2.Scale(f, r2.Sub(e.To, e.From)))
}

// Box returns the smallest upright rectangle round the edge.
func (e Edge) Box() Box {
	b := EmptyBox().Include(e.From).Include(e.To)
	if !e.IsArc() {
		return b
	}
	// An arc reaches further only where it crosses a quarter of its circle.
	lo, hi := e.Start(), e.Start()+e.Sweep
	if hi < lo {
		lo, hi = hi, lo
	}
	if hi-lo > 2*math.Pi {
		hi = lo + 2*math.Pi // round more than once, however often
	}
	for q := math.Ceil(lo / (math.Pi / 2)); q*math.Pi/2 <= hi; q++ {
		sin, cos := math.Sincos(q * math.Pi / 2)
		b = b.Include(Pt(e.Centre.X+e.Radius*cos, e.Centre.Y+e.Radius*sin))
	}
	return b
}

// Reversed is the edge run the other way.
func (e Edge) Reversed() Edge {
	e.From, e.To, e.Sweep = e.To, e.From, -e.Sweep
	return e
}

// Nearest returns how far a point lies from the edge, and how far along the edge
// the place nearest to it is, as a fraction.
func (e Edge) Nearest(p Point) (distance, f float64) {
	if e.IsArc() {
		v := r2.Sub(p, e.Centre)
		f = math.Mod(math.Atan2(v.Y, v.X)-e.Start(), 2*math.Pi)
		if e.Sweep < 0 {
			f = -f
		}
		if f < 0 {
			f += 2 * math.Pi
		}
		if sweep := math.Abs(e.Sweep); f > sweep { // beyond an end: the nearer one
			f = 1
			if r2.Norm2(r2.Sub(p, e.From)) < r2.Norm2(r2.Sub(p, e.To)) {
				f = 0
			}
		} else {
			f /= sweep
		}
	} else if along := r2.Sub(e.To, e.From); along != (Point{}) {
		f = math.Max(0, math.Min(1, r2.Dot(r2.Sub(p, e.From), along)/r2.Norm2(along)))
	}
	return r2.Norm(r2.Sub(p, e.At(f))), f
}
