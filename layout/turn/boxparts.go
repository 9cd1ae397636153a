package turn

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"stepoff/layout/geom"
)

// boxSide is one edge of a box in the corner's frame, the box on its left, and the
// part that stands along it.
type boxSide struct {
	kind         BoxPartKind
	edge         geom.Edge
	outer, inner ray // the part's faces, along the edge
	leftOut      bool
	// Where the part's ends cut its outer and its inner face.
	start, finish faces
}

// faces is how far along its outer and its inner face a part reaches.
type faces struct{ outer, inner float64 }

// boxParts works out the parts of the box between two lines.
//
// Front and back run through to the edges of the clear width: the front is what
// the riser board is nailed to. The other parts butt against their inner faces. So
// an end is off square by as much as the corner is, less than a mitre at a sharp one.
func (l *Laid) boxParts(front, back ray, f BoxFraming) []BoxPart {
	sides := l.boxSides(front, back, f.Stock)
	cutToFit(sides, f.Stock)
	var parts []BoxPart
	for _, s := range sides {
		if !s.leftOut {
			parts = append(parts, l.boxPart(s, f.Stock))
		}
	}
	// Of the inner rims, the lower comes last round the box.
	slices.Reverse(parts[len(parts)-count(parts, BoxInnerRim):])
	slices.SortStableFunc(parts, func(a, b BoxPart) int { return int(a.Kind - b.Kind) })
	return append(parts, l.boxJoists(sides, f)...)
}

func count(parts []BoxPart, kind BoxPartKind) (n int) {
	for _, p := range parts {
		if p.Kind == kind {
			n++
		}
	}
	return n
}

// boxSides goes round the box: front, along the outside, back, along the inside.
func (l *Laid) boxSides(front, back ray, stock float64) []boxSide {
	c := l.c
	fIn, fOut := c.ends(front, 0, c.width)
	bIn, bOut := c.ends(back, 0, c.width)
	in := part(c.round(0, c.mitred, carriedOn), front.at(fIn), back.at(bIn)).Reversed()
	out := part(c.round(c.width, c.mitred, carriedOn), front.at(fOut), back.at(bOut))
	var sides []boxSide
	add := func(kind BoxPartKind, edges ...geom.Edge) {
		for _, e := range edges {
			along := r2.Unit(r2.Sub(e.To, e.From))
			outer := ray{from: e.From, along: along}
			sides = append(sides, boxSide{kind: kind, edge: e, outer: outer, inner: outer.down(-stock)})
		}
	}
	add(BoxFront, geom.Line(front.at(fIn), front.at(fOut)))
	add(BoxOuterRim, out.Edges...)
	add(BoxBack, geom.Line(back.at(bOut), back.at(bIn)))
	add(BoxInnerRim, in.Edges...)
	return sides
}

// cutToFit cuts every part where it meets its neighbours. A rim that would come out
// shorter than it is thick is left out, since it would split when nailed; what is
// beside it then meets the next but one. Without the upper inner rim, which is
// never shorter than the lower one at the same front, there is none.
func cutToFit(sides []boxSide, stock float64) {
	for again := true; again; {
		meetNeighbours(sides)
		again = false
		for k := range sides {
			s := &sides[k]
			rim := s.kind == BoxOuterRim || s.kind == BoxInnerRim
			if s.leftOut || !rim || min(s.finish.outer-s.start.outer, s.finish.inner-s.start.inner) >= stock {
				continue
			}
			s.leftOut, again = true, true
			if s.kind == BoxInnerRim && k+1 < len(sides) {
				sides[k+1].leftOut = true
			}
			break
		}
	}
}

// meetNeighbours works out where the ends of all parts are cut.
func meetNeighbours(sides []boxSide) {
	for i := range sides {
		if sides[i].leftOut {
			continue
		}
		j := (i + 1) % len(sides)
		for sides[j].leftOut {
			j = (j + 1) % len(sides)
		}
		a, b := &sides[i], &sides[j]
		afterA, beforeB := sides[(i+1)%len(sides)], sides[(j+len(sides)-1)%len(sides)]
		through, butting := a, b
		if b.kind < a.kind {
			through, butting = b, a
		}
		ofThrough, ofButting := []ray{butting.outer}, []ray{through.inner}
		switch {
		case afterA.leftOut: // nothing stands between them: flush with the edge there
			flush := map[*boxSide]ray{a: afterA.outer, b: beforeB.outer}
			ofThrough, ofButting = []ray{flush[through]}, []ray{flush[butting]}
			if r2.Cross(a.outer.along, b.outer.along) > 0 { // they meet
				ofButting = append(ofButting, through.inner)
				if butting.kind != BoxInnerRim { // past the inside corner the box goes on behind a rim's face
					ofThrough = append(ofThrough, butting.outer)
				}
			}
		case r2.Dot(a.outer.along, b.outer.along) > flatCorner:
			mitre := ray{from: b.edge.From, along: r2.Add(a.outer.up(), b.outer.up())}
			ofThrough, ofButting = []ray{mitre}, []ray{mitre}
		case r2.Cross(a.outer.along, b.outer.along) < 0:
			// The turn's inside corner: one runs past it, the other stands on its outer face.
			ofThrough, ofButting = []ray{butting.inner}, []ray{through.outer}
		}
		ofA, ofB := ofThrough, ofButting
		if through == b {
			ofA, ofB = ofButting, ofThrough
		}
		a.finish = a.cut(ofA, 1)
		b.start = b.cut(ofB, -1)
	}
}

// flatCorner is the cosine of the bend, 40 degrees, below which a corner is mitred:
// butted, one of its ends would be a feather more than 50 degrees off square.
var flatCorner = math.Cos(40 * math.Pi / 180)

// cut is where a part ends that some lines bound, ahead (1) or behind (-1): along
// the one it meets first. Where that is one line on its outer face and another on
// its inner, it is cut square.
func (s *boxSide) cut(lines []ray, ahead float64) faces {
	first, square := faces{math.Inf(1), math.Inf(1)}, math.Inf(1)
	single := false
	for _, r := range lines {
		o, ok := s.outer.meets(r.from, r.along)
		i, _ := s.inner.meets(r.from, r.along)
		if !ok {
			continue
		}
		at := faces{ahead * o, ahead * i}
		single = at.outer <= first.outer && at.inner <= first.inner || single && first.outer <= at.outer && first.inner <= at.inner
		first = faces{min(first.outer, at.outer), min(first.inner, at.inner)}
		square = min(first.outer, first.inner)
	}
	if !single {
		first = faces{square, square}
	}
	return faces{ahead * first.outer, ahead * first.inner}
}

// corners are the part's, counter-clockwise.
func (s *boxSide) corners() []geom.Point {
	return []geom.Point{s.outer.at(s.start.outer), s.outer.at(s.finish.outer), s.inner.at(s.finish.inner), s.inner.at(s.start.inner)}
}

// boxPart puts a part in plan.
func (l *Laid) boxPart(s boxSide, stock float64) BoxPart {
	p := BoxPart{
		Kind:    s.kind,
		Length:  max(s.finish.outer, s.finish.inner) - min(s.start.outer, s.start.inner),
		Ends:    [2]BoxEnd{bevel(s.start.inner-s.start.outer, stock), bevel(s.finish.outer-s.finish.inner, stock)},
		Outline: l.path(geom.Closed(s.corners()...)),
	}
	if s.kind == BoxBack || s.kind == BoxInnerRim { // which run the other way round the box
		p.Ends[0], p.Ends[1] = p.Ends[1], p.Ends[0]
	}
	return p
}

// bevel is the end of a part whose outer face is so much longer than its inner.
func bevel(longer, stock float64) BoxEnd {
	if math.Abs(longer) < shortest {
		return BoxEnd{}
	}
	return BoxEnd{math.Atan2(longer, stock) * 180 / math.Pi}
}
