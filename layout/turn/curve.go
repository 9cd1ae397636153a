package turn

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
	c := cornerOf(v.Width, v.Inside, v.Angle, 0)
	var lines []ray
	for k := range v.Treads + 1 {
		turned := c.share(k, v.Treads)
		lines = append(lines, ray{c.centre, c.out(turned), turned})
	}
	var on []walkline
	for _, d := range v.Depths.Walklines {
		on = append(on, walkline{c: c, about: c.centre, radius: v.Inside + d})
	}
	l := lay(entry, v.Hand, c, lines, v.Overhang, v.Depths, on)
	centre := l.Centre
	l.Pivot = &centre
	return l
}
