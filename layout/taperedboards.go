package layout

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"stepoff/layout/geom"
	"stepoff/layout/turn"
	"stepoff/spec"
	"stepoff/spec/measure"
)

// TaperedBoard is the board of a winder or of a curve's tread as it is cut.
// Millimetres.
type TaperedBoard struct {
	// Outline in plan, counter-clockwise: from the nosing to the riser board behind
	// it, or under it, trimmed to the edges of the clear width; past an open side
	// by the overhang.
	Outline geom.Path
	// Along and Deep are the rectangle it is cut from: along its nosing, with the
	// grain, and square to that.
	Along, Deep float64
	Riser       float64 // length of the riser board at its front, along the riser line; 0 where risers are open
}

// taperedBoards works out the boards of tapered treads: from nosing to riser
// board as a straight tread's, see Flight.boards.
func (s *Stairway) taperedBoards(l *turn.Laid) []TaperedBoard {
	job := s.Job
	over := turn.Over{Front: overhang(job)}
	if job.Riser.Joint == spec.Behind {
		over.Back = job.Riser.Thickness.MM()
	}
	for i, side := range job.Sides {
		if side != spec.Open {
			continue
		}
		// Going up, the inside is on the hand the turn turns to.
		if inside := (i == 0) == (l.Hand() == turn.Left); inside {
			over.Inside = job.Tread.Overhang.MM()
		} else {
			over.Outside = job.Tread.Overhang.MM()
		}
	}
	var boards []TaperedBoard
	for k := range l.Treads {
		b := TaperedBoard{Outline: l.Board(k, over)}
		b.Along, b.Deep = extent(b.Outline, l.Nosings[k])
		if !job.Riser.Open {
			b.Riser = long(l.Risers[k])
		}
		boards = append(boards, b)
	}
	return boards
}

// extent is how long and how deep a piece is, along a line and square to it.
func extent(p geom.Path, along turn.Segment) (long, deep float64) {
	angle := math.Atan2(along.Out.Y-along.In.Y, along.Out.X-along.In.X)
	b := p.Turned(-angle).Box()
	return b.Width(), b.Height()
}

// long is how long a line is within the clear width.
func long(s turn.Segment) float64 { return r2.Norm(r2.Sub(s.Out, s.In)) }

// taperedCutList lists the rectangles that tapered treads are cut from, and the
// riser boards of the riser lines from first to last, counted from 0. They are as
// high as a flight's, see Flight.boards; what stands on a floor, not on the tread
// below it, is the very first, and lacks the tread's thickness.
func (s *Stairway) taperedCutList(l *turn.Laid, treads []TaperedBoard, rise float64, first, last int, onFloor float64) []Board {
	job := s.Job
	var all []Board
	for k, b := range treads {
		all = addBoard(all, TreadBoard, k+1, job.Tread.Thickness, b.Deep, exact(b.Along))
	}
	if job.Riser.Open {
		return all
	}
	for k := first; k <= last; k++ {
		high := rise
		if job.Riser.Joint == spec.On {
			high -= job.Tread.Thickness.MM()
		} else if k == 0 {
			high -= onFloor
		}
		all = addBoard(all, RiserBoard, k+1, job.Riser.Thickness, high, exact(long(l.Risers[k])))
	}
	return all
}

// exact is a computed length to the nanometre; nil where it is out of range.
func exact(mm float64) *measure.Length {
	if l, ok := measure.FromMM(mm); ok {
		return &l
	}
	return nil
}

// addBoard appends the board of one step, joining it to the row before where both
// are the same size.
func addBoard(all []Board, kind BoardKind, step int, thickness measure.Length, depth float64, length *measure.Length) []Board {
	if k := len(all) - 1; k >= 0 && all[k].Kind == kind && all[k].Steps[1] == step-1 && alike(all[k].Depth, depth) && alikeLengths(all[k].Length, length) {
		all[k].Count++
		all[k].Steps[1] = step
		return all
	}
	return append(all, Board{kind, 1, [2]int{step, step}, thickness, depth, length})
}

// sameBoard is how far two boards may differ, in millimetres, and be cut alike:
// they are worked out from lines turned by different angles, which costs the last
// digits.
const sameBoard = 1e-5

func alike(a, b float64) bool { return math.Abs(a-b) <= sameBoard }

func alikeLengths(a, b *measure.Length) bool {
	return a == b || a != nil && b != nil && alike(a.MM(), b.MM())
}
