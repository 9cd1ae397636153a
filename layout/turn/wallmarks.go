package turn

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"stepoff/layout/geom"
)

// WinderWall is a face that winders run along: the walls on the outside, which
// meet in the outside corner, and the faces of the newel on the inside, which meet
// in the inside corner.
type WinderWall int

// The faces, going up.
const (
	LowerWall WinderWall = iota
	UpperWall
	LowerNewel
	UpperNewel
)

func (w WinderWall) String() string {
	return [...]string{"lower wall", "upper wall", "lower newel face", "upper newel face"}[w]
}

// WallMark is where a line is struck on a wall or a newel. Millimetres.
type WallMark struct {
	Riser      int // of the turn, 1 the one to its lowest tread; one more than treads
	Wall       WinderWall
	FromCorner float64 // along the wall; a line into the corner itself is the lower wall's
	Height     float64 // finished, of the tread that riser leads to, above the lower finished floor
}

// WallMarks are the marks of the riser lines of winders, those on the outside from
// the bottom up, then those on the inside.
func (l *Laid) WallMarks(h WinderHeights) []WallMark { return l.wallMarks(l.Risers, h) }

// NosingMarks are the same of the nosings. One that does not reach an inside edge
// has no mark there: at a newel without a set-back the last runs before it.
func (l *Laid) NosingMarks(h WinderHeights) []WallMark { return l.wallMarks(l.Nosings, h) }

func (l *Laid) wallMarks(lines []Segment, h WinderHeights) (marks []WallMark) {
	for _, e := range [...]windersEdge{l.outsideEdge(), l.insideEdge()} {
		for k, s := range lines {
			from, on := e.fromCorner(s)
			if !on {
				continue
			}
			m := WallMark{k + 1, e.lower, math.Abs(from), h.Finished(k)}
			if from > 0 {
				m.Wall = e.upper
			}
			marks = append(marks, m)
		}
	}
	return marks
}

// windersEdge is the outside or the inside edge of winders: two straight pieces
// that meet in a corner.
type windersEdge struct {
	lower, upper  WinderWall
	corner        geom.Point
	before, after geom.Point // the ways up along its pieces
	end           func(Segment) geom.Point
}

func (l *Laid) outsideEdge() windersEdge {
	return windersEdge{LowerWall, UpperWall, l.toPlan(l.c.mitre(l.c.width)), l.Entry.along(), l.Exit.along(),
		func(s Segment) geom.Point { return s.Out }}
}

func (l *Laid) insideEdge() windersEdge {
	return windersEdge{LowerNewel, UpperNewel, l.Centre, l.Entry.along(), l.Exit.along(),
		func(s Segment) geom.Point { return s.In }}
}

// fromCorner is how far along the edge past its corner a line ends, less than 0
// before it; on is false where it ends off the edge.
func (e windersEdge) fromCorner(s Segment) (from float64, on bool) {
	d := r2.Sub(e.end(s), e.corner)
	before, after := r2.Dot(d, e.before), r2.Dot(d, e.after)
	switch {
	case r2.Norm(d) < wallTouching:
		return 0, true
	case math.Abs(r2.Cross(e.after, d)) < wallTouching && after > 0:
		return after, true
	case math.Abs(r2.Cross(e.before, d)) < wallTouching && before < 0:
		return before, true
	}
	return 0, false
}

// wallTouching is how near to a wall, in millimetres, the end of a line lies on it:
// what is written, far more than rounding leaves on a stair's scale.
const wallTouching = 1e-6
