package turn

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"stepoff/layout/geom"
)

// equalChords returns the n+1 points that divide the line at a distance from the
// inside edge into n equal chords, from its first riser line to its last. The
// line is the same from either end, so half of it is stepped: at its middle an
// even number of chords has a point, an odd one the middle of a chord.
func equalChords(c corner, d float64, n int) []geom.Point {
	h := halfLine{c: c, radius: c.inside + d, half: c.angle / 2}
	h.arc = h.radius * h.half
	whole, chord := h.arc+c.setback, 0.0
	if whole > 0 {
		chord = root(func(x float64) float64 { return h.step(x, n, nil) - whole }, 0, 2*whole/float64(n)*slightlyMore)
	}
	ps := make([]geom.Point, n+1)
	k := n / 2 // the nearest to the middle, on this side
	if n%2 == 0 {
		ps[k] = h.at(0)
		k--
	}
	h.step(chord, n, func(p geom.Point) {
		ps[k], ps[n-k] = p, h.mirrored(p)
		k--
	})
	ps[0], ps[n] = c.first(d), c.last(d)
	return ps
}

// slightlyMore lets a root at the end of its range lie within it.
const slightlyMore = 1 + 1e-6

// halfLine is the half of a line round a turn from its middle back to its first
// riser line: half the arc, then the straight piece.
type halfLine struct {
	c                 corner
	radius, half, arc float64 // radius, angle and length of the half arc
}

// at is the point so far back from the middle.
func (h halfLine) at(back float64) geom.Point {
	if back > h.arc || h.radius == 0 {
		return geom.Pt(h.c.setback-(back-h.arc), h.c.centre.Y-h.radius)
	}
	return r2.Add(h.c.centre, r2.Scale(h.radius, h.c.out(h.half-back/h.radius)))
}

// mirrored is the same point of the other half.
func (h halfLine) mirrored(p geom.Point) geom.Point {
	axis, v := h.c.out(h.half), r2.Sub(p, h.c.centre)
	return r2.Add(h.c.centre, r2.Sub(r2.Scale(2*r2.Dot(v, axis), axis), v))
}

// step steps chords off from the middle and returns how far back the last of n
// in all reaches.
func (h halfLine) step(chord float64, n int, each func(geom.Point)) (back float64) {
	if n%2 == 1 {
		back = h.across(chord)
		if each != nil {
			each(h.at(back))
		}
	}
	for range n / 2 {
		back = h.next(back, chord)
		if each != nil {
			each(h.at(back))
		}
	}
	return back
}

// across is how far back from the middle the ends of a chord lie whose middle is
// there.
func (h halfLine) across(chord float64) float64 {
	if reach := h.radius * math.Sin(h.half); chord/2 >= reach { // also where the line is a corner
		return h.arc + (chord/2-reach)/math.Cos(h.half)
	}
	return h.radius * math.Asin(chord/2/h.radius)
}

// next is how far back a chord ends that begins so far back.
func (h halfLine) next(back, chord float64) float64 {
	if back >= h.arc {
		return back + chord
	}
	if s := chord / 2 / h.radius; s < 1 {
		if on := back + 2*h.radius*math.Asin(s); on <= h.arc {
			return on
		}
	}
	p := h.at(back)
	above := p.Y - (h.c.centre.Y - h.radius)
	level := math.Sqrt(max(0, chord*chord-above*above))
	return h.arc + h.c.setback - (p.X - level)
}

// root returns where f, which grows from below 0 to 0 or more between the two,
// is 0: by the secant where that stays between, else by halving.
func root(f func(float64) float64, lo, hi float64) float64 {
	fLo, fHi := f(lo), f(hi)
	for range 200 {
		if hi-lo <= rootWithin*(1+math.Abs(hi)) || fHi == fLo {
			break
		}
		x := lo + (hi-lo)*-fLo/(fHi-fLo)
		if !(x > lo && x < hi) {
			x = (lo + hi) / 2
		}
		fx := f(x)
		if fx == 0 {
			return x
		}
		if fx < 0 {
			lo, fLo = x, fx
			fHi /= 2 // Illinois: keeps the far end from staying where it is
		} else {
			hi, fHi = x, fx
			fLo /= 2
		}
	}
	return (lo + hi) / 2
}

// rootWithin is how near a root is brought, relative to its size: ten thousand
// times finer than the nanometre that is written, at the size of a stair.
const rootWithin = 1e-13
