package views

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"stepoff/layout"
	"stepoff/layout/drawing"
	"stepoff/layout/geom"
	"stepoff/spec"
)

// travel is the way up the middle of the stairway, from the first riser line to
// the last.
func travel(s *layout.Stairway) []geom.Point {
	var route []geom.Point
	add := func(p geom.Point) {
		if n := len(route); n == 0 || r2.Norm(r2.Sub(p, route[n-1])) > 1e-6 {
			route = append(route, p)
		}
	}
	for i, e := range s.Elements {
		switch e := e.(type) {
		case *layout.Flight:
			fr := flightFrame(e)
			add(fr.at(0, 0))
			add(fr.at(lastRiser(e), 0))
		case *layout.Landing:
			below, above := flightsAt(s, i)
			for _, p := range crossing(e, below, above) {
				add(p)
			}
		}
	}
	return route
}

// flightsAt are the flights below and above the element i, a landing.
func flightsAt(s *layout.Stairway, i int) (below, above *layout.Flight) {
	return s.Elements[i-1].(*layout.Flight), s.Elements[i+1].(*layout.Flight)
}

// crossing is where the way up turns on a landing: where the middles of its two
// flights meet, or half way along a landing that turns by a half.
func crossing(l *layout.Landing, below, above *layout.Flight) []geom.Point {
	from, to := flightFrame(below), flightFrame(above)
	turn := r2.Cross(from.along, to.along)
	if math.Abs(turn) > 0.5 { // a quarter
		return []geom.Point{from.at(from.lengthwise(to.origin), 0)}
	}
	aside := from.sideways(to.origin)
	if r2.Dot(from.along, to.along) > 0 { // straight on
		if math.Abs(aside) < 1e-6 {
			return nil
		}
		half := (from.lengthwise(to.origin) + below.TotalRun) / 2
		return []geom.Point{from.at(half, 0), from.at(half, aside)}
	}
	b := reach(l, from)
	half := (b.Min.X + b.Max.X) / 2
	return []geom.Point{from.at(half, 0), from.at(half, aside)}
}

// landing draws a landing with its name, level and clear sizes.
func (p *plan) landing(i int, l *layout.Landing) {
	below, above := flightsAt(p.s, i)
	p.d.Polygon(p.edge(i), l.Outline...)
	fr := flightFrame(below)
	p.landingWords(l, fr, above)
	p.landingDims(l, below, above, fr)
}

// reach is how far a landing goes along a frame's heading, and to its left.
func reach(l *layout.Landing, fr frame) geom.Box {
	b := geom.EmptyBox()
	for _, q := range l.Outline {
		b = b.Include(geom.Pt(fr.lengthwise(q), fr.sideways(q)))
	}
	return b
}

// landingWords writes name and level where the way up does not go: in the far
// half of a landing that turns, in the left half of one straight through.
func (p *plan) landingWords(l *layout.Landing, fr frame, above *layout.Flight) {
	b := reach(l, fr)
	along, from := fr.left, fr.at(b.Min.X+nameAt*b.Width(), (b.Min.Y+b.Max.Y)/2)
	to := fr.at(b.Min.X+levelAt*b.Width(), (b.Min.Y+b.Max.Y)/2)
	if l.Spec.Turn == spec.Straight {
		along, from = fr.along, fr.at((b.Min.X+b.Max.X)/2, b.Min.Y+nameAt*b.Height())
		to = fr.at((b.Min.X+b.Max.X)/2, b.Min.Y+levelAt*b.Height())
	}
	angle := readable(along)
	sin, cos := math.Sincos(angle)
	if r2.Dot(r2.Sub(from, to), geom.Pt(-sin, cos)) < 0 { // the name is the upper line, from wherever it is read
		from, to = to, from
	}
	for _, line := range [...]struct {
		at    geom.Point
		words string
	}{{from, l.Name}, {to, p.st.FormatMM(l.Level)}} {
		p.d.Add(drawing.Text{Layer: drawing.Note, At: line.at, Height: drawing.Small, Angle: angle, Align: drawing.Middle, Text: line.words})
	}
}

// Where a landing's name and level are written, as shares of its length.
const (
	nameAt  = 0.84
	levelAt = 0.58
)

// landingDims gives the clear sizes, which are taken from the nosings of the
// upper flight that stand on the landing, or from the lower one's last riser
// line, to the far edges.
func (p *plan) landingDims(l *layout.Landing, below, above *layout.Flight, fr frame) {
	b := reach(l, fr)
	side, off := p.outer(fr, fr.at(b.Min.X, 0))
	edge := func(far, off float64) float64 { // of the landing on that side, past its wall
		return far + off - math.Copysign(p.width/2, off)
	}
	far := b.Max.Y
	if side < 0 {
		far = b.Min.Y
	}
	// Along the lower flight.
	start, end := b.Min.X, b.Max.X
	switch {
	case l.Spec.Turn == spec.Straight:
		end -= p.front
	case l.Spec.Angle == 180:
		start += p.front
	}
	p.d.Dim(drawing.Aligned, fr.at(start, edge(far, off)), fr.at(end, edge(far, off)), side*landingRow*dimRow, p.st.Inches(l.Spec.Length)+" clear")
	// Across it, beyond its far edge.
	if l.Spec.Turn == spec.Straight {
		return
	}
	low, high := b.Min.Y, b.Max.Y
	if l.Spec.Angle == 90 {
		if l.Spec.Turn == spec.Left {
			high -= p.front
		} else {
			low += p.front
		}
	}
	top := b.Max.X
	if p.wall(1) || p.wall(-1) {
		top += wallThickness
	}
	p.d.Dim(drawing.Aligned, fr.at(top, high), fr.at(top, low), landingRow*dimRow, p.st.Inches(l.Spec.Width)+" clear")
}

// walls draws the walls along the sides that have one, from the first riser to
// the last and round the landings.
func (p *plan) walls() {
	for _, side := range [...]float64{1, -1} {
		if !p.wall(side) {
			continue
		}
		if band := p.band(p.boundary(side), side); band != nil {
			p.d.Add(drawing.Path{Layer: drawing.Thin, Path: geom.Closed(band...), Fill: wallGrey})
		}
	}
}

// boundary is the edge of the stairway at one side, going up.
func (p *plan) boundary(side float64) []geom.Point {
	var out []geom.Point
	for i, e := range p.s.Elements {
		switch e := e.(type) {
		case *layout.Flight:
			fr, from := flightFrame(e), 0.0
			if i == 0 {
				from = -p.front
			}
			out = append(out, fr.at(from, side*p.width/2), fr.at(e.TotalRun, side*p.width/2))
		case *layout.Landing:
			_, above := flightsAt(p.s, i)
			out = append(out, around(e.Outline, out[len(out)-1], flightFrame(above).at(0, side*p.width/2), side < 0)...)
		}
	}
	return straighten(out)
}

// around are the corners of an outline passed on the way from one place on it
// to another, counter-clockwise or the other way.
func around(outline []geom.Point, from, to geom.Point, counter bool) []geom.Point {
	n := len(outline)
	ps := append([]geom.Point(nil), outline...)
	if (geom.Area(ps) > 0) != counter {
		for i := range n / 2 {
			ps[i], ps[n-1-i] = ps[n-1-i], ps[i]
		}
	}
	station := func(q geom.Point) float64 { // how far round the outline a place is
		sum, best, at := 0.0, math.Inf(1), 0.0
		for i, a := range ps {
			b := ps[(i+1)%n]
			if d := geom.Distance(q, a, b); d < best-1e-6 {
				best, at = d, sum+r2.Norm(r2.Sub(q, a))
			}
			sum += r2.Norm(r2.Sub(b, a))
		}
		return at
	}
	total := 0.0
	for i, a := range ps {
		total += r2.Norm(r2.Sub(ps[(i+1)%n], a))
	}
	start := station(from)
	ahead := func(q geom.Point) float64 { return math.Mod(station(q)-start+total, total) }
	goal := ahead(to)
	var out []geom.Point
	first := 0
	for i, q := range ps {
		if ahead(q) < ahead(ps[first]) {
			first = i
		}
	}
	for k := range n {
		if q := ps[(first+k)%n]; ahead(q) < goal {
			out = append(out, q)
		}
	}
	return out
}

// straighten leaves out places passed without turning, and doubled ones.
func straighten(ps []geom.Point) []geom.Point {
	var out []geom.Point
	for _, q := range ps {
		for len(out) > 1 && math.Abs(r2.Cross(r2.Sub(out[len(out)-1], out[len(out)-2]), r2.Sub(q, out[len(out)-1]))) < 1e-3 &&
			r2.Dot(r2.Sub(out[len(out)-1], out[len(out)-2]), r2.Sub(q, out[len(out)-1])) >= 0 {
			out = out[:len(out)-1]
		}
		if len(out) == 0 || r2.Norm(r2.Sub(q, out[len(out)-1])) > 1e-6 {
			out = append(out, q)
		}
	}
	return out
}

// band is the wall along an edge, on its outside. It is nil where there is no
// room for one, between flights that stand close.
func (p *plan) band(edge []geom.Point, side float64) []geom.Point {
	n := len(edge)
	if n < 2 {
		return nil
	}
	out := append([]geom.Point(nil), edge...)
	for i := n - 1; i >= 0; i-- {
		// Moved out square to the edges that meet here, which turn by quarters.
		var off geom.Point
		for _, j := range [...]int{i - 1, i} {
			if j < 0 || j+1 >= n {
				continue
			}
			along := r2.Unit(r2.Sub(edge[j+1], edge[j]))
			step := r2.Scale(side*wallThickness, geom.Pt(-along.Y, along.X))
			if j == i-1 || r2.Dot(off, step) < 1e-6*wallThickness {
				off = r2.Add(off, step)
			}
		}
		out = append(out, r2.Add(edge[i], off))
	}
	if !geom.Simple(out) {
		return nil
	}
	return out
}
