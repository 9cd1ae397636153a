package turn

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"stepoff/layout/geom"
)

// Past tells how far up the stair from a riser line or nosing of the turn a
// point lies, square to it; less than 0 before it.
func (l *Laid) Past(line Segment, p geom.Point) float64 {
	along := r2.Unit(r2.Sub(line.Out, line.In))
	return float64(l.hand) * r2.Cross(along, r2.Sub(p, line.In))
}

// Share tells how far from one riser line or nosing to the next a point lies, as
// a share of the way: 0 on the first and before it, 1 on the next and past it. In
// between it is the same all along a line through where the two would meet, so
// that a surface which climbs by it is as high all along both.
func (l *Laid) Share(from, to Segment, p geom.Point) float64 {
	past, short := l.Past(from, p), -l.Past(to, p)
	switch {
	case past <= 0:
		return 0
	case short <= 0:
		return 1
	}
	return past / (past + short)
}

// Above is what of the turn lies past the line that Share gives between the
// k-th nosing, 0 the lowest, and the next, counter-clockwise.
func (l *Laid) Above(k int, share float64) geom.Path {
	a, b := l.lines[k].down(l.overhang), l.lines[k+1].down(l.overhang)
	// past(a) : short(b) = share : 1 - share; past and short are level in p, so
	// that this is a line.
	square := r2.Add(r2.Scale(1-share, a.up()), r2.Scale(share, b.up()))
	long2 := r2.Norm2(square)
	off := (1-share)*r2.Dot(a.up(), a.from) + share*r2.Dot(b.up(), b.from)
	line := ray{
		from:   r2.Scale(off/long2, square),
		along:  r2.Scale(1/math.Sqrt(long2), geom.Pt(square.Y, -square.X)),
		turned: a.turned + share*(b.turned-a.turned),
	}
	return l.area(line, l.lines[len(l.lines)-1], 0, l.c.width)
}

// From is what of the turn lies past the k-th riser line, 0 the lowest,
// counter-clockwise.
func (l *Laid) From(k int) geom.Path { return l.between(k, len(l.Treads)) }

// WithBefore is the whole turn and so much of the clear width before its first
// riser line, counter-clockwise.
func (l *Laid) WithBefore(far float64) geom.Path {
	return l.area(l.lines[0].down(far), l.lines[len(l.lines)-1], 0, l.c.width)
}
