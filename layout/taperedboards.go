package layout

import (
	"math"

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

// taperedCutList lists the rectangles that tapered treads are cut from, and the
// riser boards of the riser lines from first to last, counted from 0. They are as
// high as a flight's, see Flight.boards; the very first lacks the tread's thickness
// where it stands on a floor or a landing, not on a winder.
func (s *Stairway) taperedCutList(l *turn.Laid, treads []TaperedBoard, rise float64, first, last int, onFloor float64) []Board {
	job := s.Job
	var all []Board
	for k, b := range treads {
		all = addBoard(all, Board{Kind: TreadBoard, Thickness: job.Tread.Thickness, Depth: b.Deep, Length: exact(b.Along)}, k+1)
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
		long, ends := l.RiserBoard(k, job.Riser.Thickness.MM())
		all = addBoard(all, Board{Kind: RiserBoard, Thickness: job.Riser.Thickness, Depth: high, Length: exact(long), Bevels: turnedOver(ends)}, k+1)
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
// are cut alike.
func addBoard(all []Board, b Board, step int) []Board {
	if k := len(all) - 1; k >= 0 && all[k].Kind == b.Kind && all[k].Steps[1] == step-1 &&
		alike(all[k].Depth, b.Depth) && alikeLengths(all[k].Length, b.Length) && alikeBevels(all[k].Bevels, b.Bevels) {
		all[k].Count++
		all[k].Steps[1] = step
		return all
	}
	b.Count, b.Steps = 1, [2]int{step, step}
	return append(all, b)
}

// sameBoard is how far two boards may differ, in millimetres, and be cut alike:
// they are worked out from lines turned by different angles, which costs the last
// digits.
const sameBoard = 1e-5

func alike(a, b float64) bool { return math.Abs(a-b) <= sameBoard }

func alikeLengths(a, b *measure.Length) bool {
	return a == b || a != nil && b != nil && alike(a.MM(), b.MM())
}
