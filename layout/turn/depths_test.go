package turn_test

import (
	"cmp"
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"pgregory.net/rapid"

	"stepoff/layout/geom"
	"stepoff/layout/turn"
	"stepoff/spec/measure"
)

// For each turn that is solved, every depth is measured again from the outlines
// of its treads alone, by walking along nosings and walklines in small steps: it
// is what is reported and meets what was asked. With a set-back a 64th of an inch
// less something does not. The limits are those of codes, and any others.
func TestSolvedTurnsMeasuredAgain(t *testing.T) {
	const in = 25.4
	rapid.Check(t, func(t *rapid.T) {
		w := winders(rapid.Float64Range(30, 60).Draw(t, "width"), rapid.IntRange(2, 5).Draw(t, "treads"),
			rapid.OneOf(rapid.Just(0.0), rapid.Float64Range(0.25, 2)).Draw(t, "overhang"), rapid.Bool().Draw(t, "even"))
		w.Angle = rapid.OneOf(rapid.Just(90.0), rapid.Float64Range(45, 90)).Draw(t, "angle")
		w.Hand = rapid.SampledFrom([]turn.Hand{turn.Left, turn.Right}).Draw(t, "hand")
		w.Depths = rapid.SampledFrom([]turn.Depths{
			{Walklines: []float64{12 * in}, LeastWalkline: 10 * in, LeastNarrow: 6 * in},
			{Walklines: []float64{12 * in}, LeastWalkline: 11 * in, LeastNarrow: 10 * in, Arc: true},
			{Walklines: []float64{270, w.Width - 270}, LeastWalkline: 220, LeastNarrow: 50},
			{Walklines: []float64{w.Width / 2}, LeastWalkline: 260, LeastNarrow: 100, NarrowAt: 150},
			{Walklines: []float64{w.Width / 2}, LeastWalkline: 230, Arc: true},
		}).Draw(t, "depths")
		least, ok := w.LeastSetback()
		if !ok {
			t.Skip("no set-back does")
		}
		again := walked(t, w, w.At(turn.Start, least.MM()))
		for k, tread := range w.At(turn.Start, least.MM()).Treads {
			if d := again[k]; math.Abs(d.walkline-tread.Walkline) > walkedWithin || math.Abs(max(0, d.narrow)-tread.Narrow) > walkedWithin {
				t.Errorf("tread %d: %g and %g deep, walked along %g and %g", k+1, tread.Walkline, tread.Narrow, d.walkline, d.narrow)
			}
		}
		if !enough(again, w.Depths, -walkedWithin) {
			t.Errorf("with %g set back something is less than asked: %+v", least.MM(), again)
		}
		if least == 0 {
			return
		}
		less := max(0, least-measure.Inch/64)
		if again := walked(t, w, w.At(turn.Start, less.MM())); enough(again, w.Depths, -walkedWithin) {
			t.Errorf("%g set back would do as well as %g: %+v", less.MM(), least.MM(), again)
		}
	})
}

// walkedWithin is how near what is walked along comes, in millimetres: two points
// found by halving, each to a few parts in 1e12 of some metres.
const walkedWithin = 1e-6

// onEdge is how far past an edge a point on it may be found, in millimetres: the
// last digits of some metres.
const onEdge = 1e-9

type walkedDepth struct{ walkline, narrow float64 }

func enough(all []walkedDepth, by turn.Depths, slack float64) bool {
	for _, d := range all {
		if d.walkline < by.LeastWalkline+slack || d.narrow < by.LeastNarrow+slack {
			return false
		}
	}
	return true
}

// line is a straight line: a point, and the way along it outward. Up the stair is
// square to it.
type line struct{ from, along, up geom.Point }

// beyond is how far a point lies up the stair from the line.
func (l line) beyond(p geom.Point) float64 { return r2.Dot(r2.Sub(p, l.from), l.up) }

// foot is how far along the line the foot of a point lies.
func (l line) foot(p geom.Point) float64 { return r2.Dot(r2.Sub(p, l.from), l.along) }

// walked measures every tread between its nosings. Of the turn it takes the
// outlines of the treads, its inside corner and where it begins and ends.
func walked(t *rapid.T, w turn.Winders, l *turn.Laid) []walkedDepth {
	var fronts []line
	for k := range w.Treads + 1 {
		fronts = append(fronts, front(t, w, l, k))
	}
	all := make([]walkedDepth, w.Treads)
	for k := range all {
		all[k] = walkedDepth{math.Inf(1), acrossNosings(w, l, fronts[k], fronts[k+1])}
	}
	for _, d := range w.Depths.Walklines {
		at, length := walkline(w, l, d)
		var meets []float64
		for _, f := range fronts {
			meets = append(meets, crossing(func(s float64) float64 { return f.beyond(at(s)) }, 0, length))
		}
		for k := range all {
			deep := r2.Norm(r2.Sub(at(meets[k+1]), at(meets[k])))
			if w.Depths.Arc {
				deep = meets[k+1] - meets[k]
			}
			all[k].walkline = min(all[k].walkline, deep)
		}
	}
	return all
}

// front is the k-th nosing: the riser line that two outlines share, or the first
// or last of them, moved down the stair by the overhang.
func front(t *rapid.T, w turn.Winders, l *turn.Laid, k int) line {
	place := l.Entry
	if k == w.Treads {
		place = l.Exit
	}
	f := line{from: place.At, up: r2.Sub(place.Point(1, 0), place.At)}
	if k > 0 && k < w.Treads {
		var shared []geom.Point
		for _, a := range l.Treads[k-1].Outline.Edges {
			for _, b := range l.Treads[k].Outline.Edges {
				if r2.Norm(r2.Sub(a.From, b.From)) < walkedWithin {
					shared = append(shared, a.From)
				}
			}
		}
		if len(shared) < 2 { // more where corners fall together
			t.Fatalf("outlines %d and %d share %d corners", k, k+1, len(shared))
		}
		slices.SortFunc(shared, func(a, b geom.Point) int {
			return cmp.Compare(r2.Norm(r2.Sub(a, l.Centre)), r2.Norm(r2.Sub(b, l.Centre)))
		})
		in, out := shared[0], shared[len(shared)-1]
		d := r2.Unit(r2.Sub(out, in))
		f = line{from: in, up: r2.Scale(float64(w.Hand), geom.Pt(-d.Y, d.X))}
	}
	f.along = r2.Scale(float64(w.Hand), geom.Pt(f.up.Y, -f.up.X))
	f.from = r2.Sub(f.from, r2.Scale(w.Overhang, f.up))
	return f
}

// withinWidth tells whether a point lies within the clear width, at least so far from
// its inside edge. The lanes before and after the turn run on.
func withinWidth(w turn.Winders, l *turn.Laid, p geom.Point) bool {
	hand := float64(w.Hand)
	off := func(at turn.Place) float64 { // from the lane's inside edge, outward
		return w.Width/2 - hand*r2.Dot(r2.Sub(p, at.At), r2.Sub(at.Point(0, 1), at.At))
	}
	entry, exit := off(l.Entry), off(l.Exit)
	if max(entry, exit) > w.Width+onEdge {
		return false
	}
	// The inside edge is two rays from the corner; beyond both is outside.
	from := math.Inf(1)
	for _, way := range []geom.Point{r2.Sub(l.Entry.Point(-1, 0), l.Entry.At), r2.Sub(l.Exit.Point(1, 0), l.Exit.At)} {
		v := r2.Sub(p, l.Centre)
		from = min(from, r2.Norm(r2.Sub(v, r2.Scale(max(0, r2.Dot(v, way)), way))))
	}
	if max(entry, exit) < 0 {
		from = -from
	}
	return from >= w.Depths.NarrowAt-onEdge
}

// acrossNosings is the least from a nosing, square to it, to the next, both ends
// within the clear width: walked from its inner end to its outer one, the ends of
// what counts found by halving.
func acrossNosings(w turn.Winders, l *turn.Laid, f, next line) float64 {
	from, to := begins(w, l, f), begins(w, l, next)
	at := func(s float64) (deep float64, counts bool) {
		p := r2.Add(f.from, r2.Scale(f.foot(l.Centre)+s, f.along))
		deep = -next.beyond(p) / r2.Dot(f.up, next.up)
		q := r2.Add(p, r2.Scale(deep, f.up))
		return deep, s >= from && next.foot(q)-next.foot(l.Centre) >= to && withinWidth(w, l, p) && withinWidth(w, l, q)
	}
	least := math.Inf(1)
	_, before := at(-w.Width)
	for s := -w.Width + walkedStep; s < 3*w.Width; s += walkedStep {
		deep, counts := at(s)
		if counts {
			least = min(least, deep)
		}
		if counts != before { // what counts begins or ends between
			in, out := s, s-walkedStep
			if before {
				in, out = out, in
			}
			for range 60 {
				if half := (in + out) / 2; half != in && half != out {
					if _, counts := at(half); counts {
						in = half
					} else {
						out = half
					}
				}
			}
			deep, _ := at(in)
			least = min(least, deep)
		}
		before = counts
	}
	return least
}

// walkedStep is a step along a nosing, in millimetres.
const walkedStep = 2.0

// begins is where a nosing begins, from where it passes the inside corner: where
// it meets the inside edge. One that passes outside of the corner and never meets
// it, as the last may where it overhangs more than the set-back, begins there.
func begins(w turn.Winders, l *turn.Laid, f line) float64 {
	for s := 0.0; s > -w.Width; s -= walkedStep {
		if !withinWidth(w, l, r2.Add(f.from, r2.Scale(f.foot(l.Centre)+s, f.along))) {
			return math.Inf(-1) // the edge itself decides
		}
	}
	return -walkedWithin / 10
}

// walkline is the line at a distance from the inside edge, by how far along it,
// from well before the turn to well beyond it: radial, an arc about where the
// first and the last riser line meet; even, straight, round the corner, straight.
func walkline(w turn.Winders, l *turn.Laid, d float64) (at func(s float64) geom.Point, length float64) {
	const before = 600.0 // mm: more than a nosing overhangs
	hand, angle := float64(w.Hand), w.Angle*math.Pi/180
	up, out := r2.Sub(l.Entry.Point(1, 0), l.Entry.At), r2.Sub(l.Entry.Point(0, -hand), l.Entry.At)
	setback := r2.Dot(r2.Sub(l.Centre, l.Entry.At), up)
	round := func(about geom.Point, radius, turned float64) geom.Point {
		sin, cos := math.Sincos(turned)
		return r2.Add(about, r2.Add(r2.Scale(radius*cos, out), r2.Scale(radius*sin, up)))
	}
	if !w.Even {
		back := setback / math.Tan(angle/2)
		pivot := r2.Sub(r2.Sub(l.Centre, r2.Scale(setback, up)), r2.Scale(back, out))
		radius := back + d
		margin := min(before/radius, math.Pi/4)
		return func(s float64) geom.Point { return round(pivot, radius, s/radius-margin) }, radius * (angle + 2*margin)
	}
	straight := setback + before
	end := round(l.Centre, d, angle)
	onward := r2.Sub(l.Exit.Point(1, 0), l.Exit.At)
	return func(s float64) geom.Point {
		switch {
		case s < straight:
			return r2.Add(round(l.Centre, d, 0), r2.Scale(s-straight, up))
		case s > straight+d*angle:
			return r2.Add(end, r2.Scale(s-straight-d*angle, onward))
		}
		return round(l.Centre, d, (s-straight)/d)
	}, 2*straight + d*angle
}

// crossing is where f goes from less than 0 to 0 or more: stepped to, then halved.
func crossing(f func(float64) float64, from, to float64) float64 {
	const steps = 400
	lo := from
	for k := 1; k <= steps; k++ {
		hi := from + (to-from)*float64(k)/steps
		if f(lo) < 0 && f(hi) >= 0 {
			for range 60 {
				if half := (lo + hi) / 2; f(half) < 0 {
					lo = half
				} else {
					hi = half
				}
			}
			return hi
		}
		lo = hi
	}
	return math.NaN()
}
