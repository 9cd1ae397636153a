package turn

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"stepoff/layout/geom"
)

// Depths says where a code measures tapered treads, and how deep they have to be
// there. Millimetres.
type Depths struct {
	// Walklines are distances from the inside edge of the clear width, one or
	// more. Where there are several, a tread has to be deep enough on each.
	Walklines []float64
	Arc       bool    // measured along the walkline, not straight across
	NarrowAt  float64 // how far from the inside edge the narrow end is measured

	LeastWalkline, LeastNarrow float64 // 0: not limited
}

// Segment is a riser line or a nosing within the clear width: from its inner end
// to its outer end.
type Segment struct{ In, Out geom.Point }

// Tapered is a winder, or a tapered tread of a curve. Depths are level, between
// nosings, in millimetres.
type Tapered struct {
	// Outline is the going, counter-clockwise: riser line to riser line, clear
	// width to clear width.
	Outline  geom.Path
	Angle    float64 // between its riser lines, in degrees
	Walkline float64 // the least of the walklines'
	// Narrow and Wide are the least and the most square to the nosing, from it to
	// the next one, both ends within the clear width; 0 where the nosings meet.
	Narrow, Wide float64
	// NarrowEnds and WideEnds are where they are measured: on this nosing, and on
	// the next.
	NarrowEnds, WideEnds Segment
}

// Laid is a turn of tapered treads in plan: winders, or a curve.
type Laid struct {
	Centre geom.Point // of the inside edge: the corner, or the curve's centre
	// Pivot is where all riser lines would meet; nil where they do not.
	Pivot     *geom.Point
	Risers    []Segment // one more than treads, from the bottom up
	Nosings   []Segment // of each riser line: moved down the stair by the overhang
	Treads    []Tapered
	Walklines []geom.Path // first nosing to last
	// Crossings are where each walkline crosses the nosings, from the bottom up.
	Crossings [][]geom.Point
	// Inside and Outside are the edges of the clear width, first riser line to
	// last.
	Inside, Outside geom.Path
	Entry, Exit     Place // of the first riser line and of the last

	c     corner
	lines []ray
	on    []walkline
	hand  Hand

	overhang float64
}

// Along is a walkline, 0 the first, from the k-th nosing to the next, 0 the lowest:
// its length is what that tread takes of a view that is unrolled along it.
func (l *Laid) Along(walkline, k int) geom.Path {
	w, fronts := l.on[walkline], nosings(l.lines, l.overhang)
	return l.path(w.between(w.meets(fronts[k]), w.meets(fronts[k+1])))
}

// Outline is the whole turn, counter-clockwise.
func (l *Laid) Outline() geom.Path { return l.between(0, len(l.Treads)) }

// Hand is the hand it turns to, going up.
func (l *Laid) Hand() Hand { return l.hand }

// Over is how far a tread's board reaches beyond its going. Millimetres.
type Over struct {
	Front           float64 // before its riser line, to the nosing
	Back            float64 // short of the next riser line, to the riser board that runs down behind it
	Inside, Outside float64 // past the edges of the clear width
}

// Board is the outline of the k-th tread's board, counter-clockwise, 0 the
// lowest.
func (l *Laid) Board(k int, over Over) geom.Path {
	return l.area(l.lines[k].down(over.Front), l.lines[k+1].down(over.Back), -over.Inside, l.c.width+over.Outside)
}

// toPlan puts a point of the corner's frame in its place in plan.
func (l *Laid) toPlan(p geom.Point) geom.Point { return l.Entry.Point(p.X, float64(l.hand)*p.Y) }

func (l *Laid) edge(e geom.Edge) geom.Edge {
	out := geom.Edge{From: l.toPlan(e.From), To: l.toPlan(e.To), Radius: e.Radius, Sweep: float64(l.hand) * e.Sweep}
	if e.IsArc() {
		out.Centre = l.toPlan(e.Centre)
	}
	return out
}

// path puts a path in plan; a closed one counter-clockwise. The corner's frame
// has closed paths clockwise where the turn is to the right.
func (l *Laid) path(p geom.Path) geom.Path {
	out := geom.Path{Closed: p.Closed}
	for _, e := range p.Edges {
		out.Edges = append(out.Edges, l.edge(e))
	}
	if p.Closed && l.hand == Right {
		out = out.Reversed()
	}
	return out
}

// lay works the turn out from its riser lines and walklines.
func lay(entry Place, hand Hand, c corner, lines []ray, overhang float64, by Depths, on []walkline) *Laid {
	l := &Laid{Entry: entry, hand: hand, c: c, lines: lines, on: on, overhang: overhang}
	l.Centre = l.toPlan(c.centre)
	l.Inside, l.Outside = l.path(c.round(0, c.mitred, 0)), l.path(c.round(c.width, c.mitred, 0))
	middle := c.last(c.width / 2)
	l.Exit = entry.On(middle.X, float64(hand)*middle.Y, float64(hand)*c.degrees)

	fronts := nosings(lines, overhang)
	for k, r := range lines {
		l.Risers = append(l.Risers, l.segment(r))
		l.Nosings = append(l.Nosings, l.segment(fronts[k]))
	}
	for _, w := range on {
		l.Walklines = append(l.Walklines, l.path(w.between(w.meets(fronts[0]), w.meets(fronts[len(lines)-1]))))
		var crossings []geom.Point
		for _, f := range fronts {
			crossings = append(crossings, l.toPlan(w.meets(f)))
		}
		l.Crossings = append(l.Crossings, crossings)
	}
	for k, d := range depths(c, fronts, by, on) {
		_, _, wide, widest := c.square(fronts[k], fronts[k+1], 0)
		l.Treads = append(l.Treads, Tapered{
			Outline: l.between(k, k+1), Angle: (lines[k+1].turned - lines[k].turned) * 180 / math.Pi,
			Walkline: d.walkline, Narrow: max(d.narrow, 0), Wide: max(wide, 0),
			NarrowEnds: Segment{l.toPlan(d.at.In), l.toPlan(d.at.Out)},
			WideEnds:   Segment{l.toPlan(widest.In), l.toPlan(widest.Out)},
		})
	}
	return l
}

// nosings are the riser lines moved down the stair, parallel to themselves.
func nosings(lines []ray, overhang float64) []ray {
	fronts := make([]ray, len(lines))
	for k, r := range lines {
		fronts[k] = r.down(overhang)
	}
	return fronts
}

// depth is what a code measures of one tread; narrow is less than 0 where the
// nosings cross.
type depth struct {
	walkline, narrow float64
	at               Segment // where narrow is measured
}

// depths measures every tread between its nosings. It serves those who look for
// a set-back and those who check one.
func depths(c corner, fronts []ray, by Depths, on []walkline) []depth {
	all := make([]depth, len(fronts)-1)
	for k := range all {
		all[k].walkline = math.Inf(1)
		all[k].narrow, all[k].at, _, _ = c.square(fronts[k], fronts[k+1], by.NarrowAt)
	}
	for _, w := range on {
		from := w.meets(fronts[0])
		for k := range all {
			to := w.meets(fronts[k+1])
			all[k].walkline = min(all[k].walkline, w.depth(from, to, by.Arc))
			from = to
		}
	}
	return all
}

func (l *Laid) segment(r ray) Segment {
	from, to := l.c.ends(r, 0, l.c.width)
	return Segment{l.toPlan(r.at(from)), l.toPlan(r.at(to))}
}

// square returns the least and the most from a nosing, square to it, to the next
// one, both ends within the clear width and at least so far from its inside
// edge. The way across grows evenly along the nosing, so both are at the ends of
// the part that counts.
func (c corner) square(front, back ray, inside float64) (least float64, at Segment, most float64, widest Segment) {
	lo, hi := c.ends(front, inside, c.width)
	across := func(t float64) (depth, on float64) { // and where on the next nosing that ends
		p := front.at(t)
		depth, _ = ray{p, front.up(), 0}.meets(back.from, back.along)
		return depth, r2.Dot(r2.Sub(r2.Add(p, r2.Scale(depth, front.up())), back.from), back.along)
	}
	// Both ends within the clear width: bring lo and hi in until they are.
	backLo, backHi := c.ends(back, inside, c.width)
	_, onLo := across(lo)
	_, onHi := across(hi)
	if rate := (onHi - onLo) / (hi - lo); rate > 0 {
		from := lo
		lo = max(lo, from+(backLo-onLo)/rate)
		hi = min(hi, from+(backHi-onLo)/rate)
	}
	if hi < lo { // nothing of it counts: the nosings are nearest where it would begin
		hi = lo
	}
	dLo, onLo := across(lo)
	dHi, onHi := across(hi)
	least, most = dLo, dHi
	at, widest = Segment{front.at(lo), back.at(onLo)}, Segment{front.at(hi), back.at(onHi)}
	if dHi < dLo {
		least, most, at, widest = dHi, dLo, widest, at
	}
	return least, at, most, widest
}

// between is what lies between two riser lines, counter-clockwise.
func (l *Laid) between(j, k int) geom.Path {
	return l.area(l.lines[j], l.lines[k], 0, l.c.width)
}

// area is what lies between two lines, and between two distances from the inside
// edge.
func (l *Laid) area(front, back ray, inside, outside float64) geom.Path {
	c := l.c
	fIn, fOut := c.ends(front, inside, outside)
	bIn, bOut := c.ends(back, inside, outside)
	in := part(c.round(inside, c.mitred, carriedOn), front.at(fIn), back.at(bIn))
	if t, ok := front.meets(back.from, back.along); ok && t > fIn+shortest && t < fOut { // they cross: it ends in a point there
		fIn, in = t, geom.Path{}
		bIn, _ = back.meets(front.from, front.along)
	}
	out := part(c.round(outside, c.mitred, carriedOn), front.at(fOut), back.at(bOut)).Reversed()
	p := geom.Path{Closed: true}
	add := func(edges ...geom.Edge) {
		for _, e := range edges {
			if e.Length() > shortest {
				p.Edges = append(p.Edges, e)
			}
		}
	}
	// Clockwise in the corner's frame: along the inside, out, back, in along the front.
	add(in.Edges...)
	add(geom.Line(back.at(bIn), back.at(bOut)))
	add(out.Edges...)
	add(geom.Line(front.at(fOut), front.at(fIn)))
	join(p.Edges)
	return l.path(p.Reversed())
}

// shortest is the length, in millimetres, below which two places are one: a tenth
// of a nanometre, which is what is written. An edge shorter than it comes from two
// lines that meet in a point, computed twice.
const shortest = 1e-7

// join lets each edge begin exactly where the one before ends.
func join(edges []geom.Edge) {
	for k := range edges {
		edges[k].From = edges[(k+len(edges)-1)%len(edges)].To
	}
}

// part is the piece of a path from one point on it to another.
func part(whole geom.Path, from, to geom.Point) geom.Path {
	var out geom.Path
	start, f := nearestEdge(whole.Edges, from)
	end, g := nearestEdge(whole.Edges, to)
	for k := start; k <= end; k++ {
		e, lo, hi := whole.Edges[k], 0.0, 1.0
		if k == start {
			lo = f
		}
		if k == end {
			hi = g
		}
		e = e.Part(lo, hi)
		if k == start {
			e.From = from
		}
		if k == end {
			e.To = to
		}
		if e.Length() > shortest {
			out.Edges = append(out.Edges, e)
		}
	}
	return out
}

// carriedOn is how far straight pieces are carried on beyond the turn: farther
// than a nosing overhangs, in millimetres.
const carriedOn = 1000

// nearestEdge returns which edge passes nearest to a point, and how far along it
// that is, as a share of it.
func nearestEdge(edges []geom.Edge, p geom.Point) (k int, f float64) {
	best := math.Inf(1)
	for i, e := range edges {
		if d, at := e.Nearest(p); d < best-shortest {
			k, f, best = i, at, d
		}
	}
	return k, f
}
