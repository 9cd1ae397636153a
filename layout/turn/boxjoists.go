package turn

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"stepoff/layout/geom"
)

// boxJoists fills a box with joists along the upper flight's travel, laid out from
// the outer edge there at their spacing, centre to centre. A joist ends where it
// meets a part, cut along its face; where it meets a corner of one, square.
func (l *Laid) boxJoists(sides []boxSide, f BoxFraming) []BoxPart {
	if f.Spacing <= 0 {
		return nil
	}
	grid := joistGrid{from: l.c.mitre(l.c.width), along: l.c.onward(l.c.angle)}
	outline, far := make([]geom.Point, len(sides)), 0.0
	var taken [][]geom.Point // by the parts, and by the edge, where they leave it bare
	take := func(ps ...geom.Point) {
		for i, p := range ps {
			ps[i] = grid.of(p)
		}
		taken = append(taken, ps)
	}
	for k, s := range sides {
		outline[k] = grid.of(s.edge.From)
		far = max(far, outline[k].Y)
		take(s.edge.From, s.edge.To)
		if !s.leftOut {
			take(s.corners()...)
		}
	}
	var joists []BoxPart
	for v := f.Spacing; v < far; v += f.Spacing {
		for _, q := range joistsAt(v, f.Stock, taken, outline) {
			if min(q.finish.outer-q.start.outer, q.finish.inner-q.start.inner) < f.Stock {
				continue // too short to nail
			}
			lo, hi := v-f.Stock/2, v+f.Stock/2
			joists = append(joists, BoxPart{
				Kind:   BoxJoist,
				Length: max(q.finish.outer, q.finish.inner) - min(q.start.outer, q.start.inner),
				Ends:   [2]BoxEnd{bevel(q.start.inner-q.start.outer, f.Stock), bevel(q.finish.outer-q.finish.inner, f.Stock)},
				Outline: l.path(geom.Closed(grid.at(q.start.outer, lo), grid.at(q.finish.outer, lo),
					grid.at(q.finish.inner, hi), grid.at(q.start.inner, hi))),
			})
		}
	}
	return joists
}

// joistGrid measures along the joists (X) and from the outer edge inward (Y).
type joistGrid struct{ from, along geom.Point }

func (g joistGrid) across() geom.Point { return geom.Pt(-g.along.Y, g.along.X) }

func (g joistGrid) of(p geom.Point) geom.Point {
	d := r2.Sub(p, g.from)
	return geom.Pt(r2.Dot(d, g.along), r2.Dot(d, g.across()))
}

func (g joistGrid) at(u, v float64) geom.Point {
	return r2.Add(g.from, r2.Add(r2.Scale(u, g.along), r2.Scale(v, g.across())))
}

// joist is where a joist's outer and inner face begin and end.
type joist struct{ start, finish faces }

// joistsAt are the joists of a thickness that fit along one line, between what is
// taken and within the outline.
func joistsAt(v, thick float64, taken [][]geom.Point, outline []geom.Point) (fit []joist) {
	lo, hi := v-thick/2+shortest, v+thick/2-shortest // what only touches its side is not in its way
	var spans [][2]float64
	for _, ps := range taken {
		if a, b := spanBetween(ps, lo, hi); a <= b {
			spans = append(spans, [2]float64{a, b})
		}
	}
	slices.SortFunc(spans, func(a, b [2]float64) int {
		if a[0] < b[0] {
			return -1
		}
		return 1
	})
	for k, end := 1, math.Inf(-1); k < len(spans); k++ {
		end = max(end, spans[k-1][1])
		next := spans[k][0]
		middle := (end + next) / 2
		if next <= end || !inside(outline, geom.Pt(middle, v)) {
			continue
		}
		reach := func(ahead, square float64) faces {
			o, m, i := nearest(taken, middle, lo, ahead), nearest(taken, middle, v, ahead), nearest(taken, middle, hi, ahead)
			if math.Abs(o+i-2*m) > joistStraight {
				return faces{square, square}
			}
			whole := thick / (hi - lo) // from what was taken for its sides out to them
			return faces{m + (o-m)*whole, m + (i-m)*whole}
		}
		fit = append(fit, joist{reach(-1, end), reach(1, next)})
	}
	return fit
}

// joistStraight is how far, in millimetres, the middle of an end may lie off the
// line of its sides and still count as one straight face: far more than rounding
// leaves, far less than a saw.
const joistStraight = 1e-4

// spanBetween is from where to where a convex figure reaches between two heights;
// the first is more where it does not.
func spanBetween(ps []geom.Point, lo, hi float64) (from, to float64) {
	from, to = math.Inf(1), math.Inf(-1)
	take := func(x float64) { from, to = min(from, x), max(to, x) }
	for k, p := range ps {
		q := ps[(k+1)%len(ps)]
		if p.Y >= lo && p.Y <= hi {
			take(p.X)
		}
		for _, y := range [...]float64{lo, hi} {
			if (p.Y < y) != (q.Y < y) {
				take(p.X + (q.X-p.X)*(y-p.Y)/(q.Y-p.Y))
			}
		}
	}
	return from, to
}

// nearest is where the line at a height first meets one of the figures from a
// point on, ahead (1) or back (-1).
func nearest(figures [][]geom.Point, from, y, ahead float64) float64 {
	best := math.Inf(1)
	for _, ps := range figures {
		a, b := spanBetween(ps, y, y)
		for _, x := range [...]float64{a, b} {
			if d := ahead * (x - from); d >= 0 {
				best = min(best, d)
			}
		}
	}
	return from + ahead*best
}

// inside tells whether a point lies within an outline.
func inside(outline []geom.Point, p geom.Point) bool {
	in := false
	for k, a := range outline {
		b := outline[(k+1)%len(outline)]
		if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(b.X-a.X)*(p.Y-a.Y)/(b.Y-a.Y) {
			in = !in
		}
	}
	return in
}
