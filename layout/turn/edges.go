package turn

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"stepoff/layout/geom"
)

// corner is a turn in its own frame: x up from the first riser line, y to the
// inside from the middle of the clear width, turning to +y whatever the hand. A
// turn to the right is its mirror image.
//
// What runs round it at a distance from the inside edge is a straight piece, an
// arc about the centre and a straight piece again: walklines, the edge itself,
// a line beside it. Of winders the inside edge is a sharp corner, of a curve an
// arc.
type corner struct {
	width   float64
	centre  geom.Point
	inside  float64 // radius of the inside edge; 0 at winders
	degrees float64 // turned
	angle   float64 // the same in radians
	setback float64 // straight pieces of the turn before and after the arc
	mitred  bool    // the outside edge is a corner too, not an arc
}

// cornerOf lays the inside edge's corner or centre.
func cornerOf(width, inside, degrees, setback float64) corner {
	return corner{
		width: width, inside: inside, degrees: degrees, angle: degrees * math.Pi / 180, setback: setback, mitred: inside == 0,
		centre: geom.Pt(setback, width/2+inside),
	}
}

// out is the way from the centre to the outside, square to the turn, at an angle
// turned.
func (c corner) out(turned float64) geom.Point {
	d := c.onward(turned)
	return geom.Pt(d.Y, -d.X)
}

// onward is the way up at an angle turned; exact at the end of a right angle, so
// that members square to each other meet without a gap.
func (c corner) onward(turned float64) geom.Point {
	switch turned {
	case 0:
		return geom.Pt(1, 0)
	case c.angle:
		return unit(c.degrees)
	}
	sin, cos := math.Sincos(turned)
	return geom.Pt(cos, sin)
}

// first and last are the ends of the line at a distance from the inside edge: on
// the first and on the last riser line.
func (c corner) first(d float64) geom.Point { return geom.Pt(0, c.width/2-d) }

func (c corner) last(d float64) geom.Point {
	return r2.Add(c.arcEnd(c.inside+d), r2.Scale(c.setback, c.onward(c.angle)))
}

func (c corner) arcStart(radius float64) geom.Point {
	return geom.Pt(c.setback, c.centre.Y-radius)
}

func (c corner) arcEnd(radius float64) geom.Point {
	return r2.Add(c.centre, r2.Scale(radius, c.out(c.angle)))
}

// round is the line at a distance from the inside edge, from the first riser
// line to the last, its straight pieces carried on so far beyond both. At winders
// it is a corner where a mitre is asked for, else bent round the corner.
func (c corner) round(d float64, mitre bool, beyond float64) geom.Path {
	radius := c.inside + d
	from := r2.Sub(c.first(d), r2.Scale(beyond, c.onward(0)))
	to := r2.Add(c.last(d), r2.Scale(beyond, c.onward(c.angle)))
	if radius == 0 || mitre {
		return geom.Path{Edges: pieces(from, c.mitre(radius), to)}
	}
	arc := geom.Arc(c.centre, radius, -math.Pi/2, c.angle)
	arc.From, arc.To = c.arcStart(radius), c.arcEnd(radius)
	edges := append(pieces(from, arc.From), arc)
	return geom.Path{Edges: append(edges, pieces(arc.To, to)...)}
}

// mitre is where the straight pieces at a radius from the corner meet.
func (c corner) mitre(radius float64) geom.Point {
	return r2.Add(c.centre, r2.Add(r2.Scale(radius, c.out(0)), r2.Scale(radius*math.Tan(c.angle/2), c.onward(0))))
}

// pieces joins points, leaving out pieces of no length.
func pieces(ps ...geom.Point) (edges []geom.Edge) {
	for i := 1; i < len(ps); i++ {
		if r2.Norm(r2.Sub(ps[i], ps[i-1])) > shortest {
			edges = append(edges, geom.Line(ps[i-1], ps[i]))
		}
	}
	return edges
}

// ray is a riser line or a nosing: a point on it, the way outward along it, and
// the angle it has turned from the first riser line.
type ray struct {
	from, along geom.Point
	turned      float64
}

func (r ray) at(t float64) geom.Point { return r2.Add(r.from, r2.Scale(t, r.along)) }

// up is the way up the stair, square to the line.
func (r ray) up() geom.Point { return geom.Pt(-r.along.Y, r.along.X) }

// down returns the line moved down the stair, parallel to itself.
func (r ray) down(d float64) ray {
	return ray{r2.Sub(r.from, r2.Scale(d, r.up())), r.along, r.turned}
}

// meets returns how far along r the other line crosses it.
func (r ray) meets(point, along geom.Point) (t float64, ok bool) {
	cross := r2.Cross(r.along, along)
	if math.Abs(cross) < parallel {
		return 0, false
	}
	return r2.Cross(r2.Sub(point, r.from), along) / cross, true
}

// parallel is the sine below which two lines count as parallel: they would meet
// kilometres away.
const parallel = 1e-9

// leaves returns how far along the ray it leaves what lies within a distance d
// of the inside edge, the straight pieces carried on beyond the turn. The middle
// riser line of an even number runs into the corner itself: on neither piece, but
// for what shortest allows. A nosing
// that passes outside of it begins where it is nearest to the centre.
func (c corner) leaves(r ray, d float64, mitre bool) float64 {
	radius := c.inside + d
	start, end := c.arcStart(radius), c.arcEnd(radius)
	if mitre {
		start = c.mitre(radius)
		end = start
	}
	best := math.Inf(-1)
	if t, ok := r.meets(start, c.onward(0)); ok && r.turned <= math.Pi && r.at(t).X <= start.X+shortest { // a line that has come round passes over it
		best = max(best, t)
	}
	ahead := c.onward(c.angle)
	if t, ok := r.meets(end, ahead); ok && !c.fullTurn() && r2.Dot(r2.Sub(r.at(t), end), ahead) >= -shortest {
		best = max(best, t)
	}
	foot := r2.Dot(r2.Sub(c.centre, r.from), r.along) // nearest to the centre
	off := r2.Norm2(r2.Sub(r.at(foot), c.centre))
	if half := radius*radius - off; !mitre && radius > 0 && half >= 0 {
		for _, t := range [...]float64{foot - math.Sqrt(half), foot + math.Sqrt(half)} {
			if c.onArc(r.at(t), r.turned) {
				best = max(best, t)
			}
		}
	}
	if math.IsInf(best, -1) {
		return foot
	}
	return best
}

// fullTurn tells whether the turn is a half or more: then its far straight piece
// lies back over its beginning and is no boundary of it.
func (c corner) fullTurn() bool { return c.angle >= math.Pi-parallel }

// onArc tells whether a point at the arc's radius, near a ray, lies within its
// sweep.
func (c corner) onArc(p geom.Point, near float64) bool {
	v := r2.Sub(p, c.centre)
	turned := math.Atan2(v.Y, v.X) + math.Pi/2
	turned += 2 * math.Pi * math.Round((near-turned)/(2*math.Pi))
	return turned >= -parallel && turned <= c.angle+parallel
}

// ends returns where a ray enters the clear width, so far from its inside edge,
// and where it leaves it at a distance from the same edge.
func (c corner) ends(r ray, inside, outside float64) (from, to float64) {
	return c.leaves(r, inside, c.mitred && inside <= 0), c.leaves(r, outside, c.mitred)
}
