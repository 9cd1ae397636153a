package turn

import "stepoff/spec/measure"

// Curve is what decides where a curved flight lies. Millimetres.
type Curve struct {
	Hand     Hand    // Left or Right
	Angle    float64 // degrees, more than 0 and less than 360
	Treads   int
	Inside   float64 // radius of the inside edge
	Width    float64 // clear width
	Overhang float64 // how far a nosing stands before its riser line
	Depths   Depths
}

// At lays the curve from its first riser line. Riser lines are radial and turn by
// equal angles; walklines are arcs about the centre.
func (v Curve) At(entry Place) *Laid {
	c, lines, on := v.lines()
	l := lay(entry, v.Hand, c, lines, v.Overhang, v.Depths, on)
	centre := l.Centre
	l.Pivot = &centre
	return l
}

// lines are the riser lines and the walklines.
func (v Curve) lines() (c corner, lines []ray, on []walkline) {
	c = cornerOf(v.Width, v.Inside, v.Angle, 0)
	for k := range v.Treads + 1 {
		turned := c.share(k, v.Treads)
		lines = append(lines, ray{c.centre, c.out(turned), turned})
	}
	for _, d := range v.Depths.Walklines {
		on = append(on, walkline{c: c, about: c.centre, radius: v.Inside + d})
	}
	return c, lines, on
}

// MostInside bounds the search for an inside radius: a stair with more is as
// good as straight.
const MostInside measure.Length = 100 * measure.Metre

// LeastInside is the least inside radius, to the nanometre, at which every tread
// is as deep on the walkline and at its narrow end as it has to be; ok is false
// where none is. Both depths grow with the radius.
func (v Curve) LeastInside() (inside measure.Length, ok bool) {
	return least(1, MostInside, func(l measure.Length) bool {
		v.Inside = l.MM()
		return v.Meets()
	})
}

// Meets tells whether every tread is deep enough.
func (v Curve) Meets() bool {
	c, lines, on := v.lines()
	return v.Depths.met(c, nosings(lines, v.Overhang), on)
}
