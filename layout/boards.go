package layout

import (
	"slices"

	"stepoff/spec"
	"stepoff/spec/measure"
)

// BoardKind tells treads from riser boards.
type BoardKind int

// The kinds of board.
const (
	TreadBoard BoardKind = iota
	RiserBoard
)

func (k BoardKind) String() string { return [...]string{"tread", "riser"}[k] }

// Board is one size of tread or riser board and how many are wanted. Depth is
// what is ripped: a tread's depth, a riser board's height. Length is nil when
// the job states no width.
type Board struct {
	Kind      BoardKind
	Count     int
	Steps     [2]int // first and last step it serves, 1 up
	Thickness measure.Length
	Depth     float64
	Length    *measure.Length // long point to long point
	// Bevels of a riser board's ends, in degrees off square, see FramePiece.
	Bevels [2]float64
}

// boards works out treads and riser boards for the two joints.
//
// Behind: the riser board runs down behind the tread below, so a tread reaches
// from its nosing to the next riser board's face. On: the riser board stands on
// the tread, which runs on under it to its back.
func (f *Flight) boards(job *spec.Job) {
	b, p := job.Riser.Thickness.MM(), job.Tread.Nosing.MM()
	under := 0.0 // how far a tread runs under the riser board standing on it
	if job.Riser.Joint == spec.On {
		under = b
	}
	depth := f.UnitRun.MM() + p + under
	if f.Treads > 0 {
		f.add(TreadBoard, 1, f.Treads-1, job.Tread.Thickness, depth, f.treadLength(job))
		f.add(TreadBoard, f.Treads, f.Treads, job.Tread.Thickness, f.lastTreadDepth(job, under), f.treadLength(job))
	}
	if job.Riser.Open {
		return
	}
	first := f.UnitRise - job.Tread.Thickness.MM()
	other := first
	if job.Riser.Joint == spec.Behind {
		other = f.UnitRise
		if _, onWinder := f.Foot.(*Winders); onWinder {
			first = other // it runs down behind the last winder as behind any other tread
		}
	}
	last := f.Risers
	if f.Hung() && !f.Spec.Stringer.TopRiser {
		last-- // the header stands bare above the last tread
	}
	f.add(RiserBoard, 1, min(1, last), job.Riser.Thickness, first-f.lowestFoot().MM(), f.riserLength(job))
	f.add(RiserBoard, 2, last, job.Riser.Thickness, other, f.riserLength(job))
}

// lowestFoot is the lowest of the foot levels, to which the first riser board
// is ripped before it is scribed to the pad.
func (f *Flight) lowestFoot() measure.Length {
	if len(f.Spec.Stringer.FootLevels) == 0 {
		return 0
	}
	return slices.Min(f.Spec.Stringer.FootLevels)
}

// lastTreadDepth is the top tread's: it ends at the top riser board like the
// others where there is one, at the header where there is none.
func (f *Flight) lastTreadDepth(job *spec.Job, under float64) float64 {
	b, p := job.Riser.Thickness.MM(), job.Tread.Nosing.MM()
	depth := f.UnitRun.MM() + p
	switch {
	case !f.Hung():
		return depth + b // no riser board behind it: on to the header
	case f.Spec.Stringer.TopRiser:
		depth += under
	}
	return depth + f.floorNosing(job).MM() - p
}

// treadLength is the clear width and the overhang past each open side.
func (f *Flight) treadLength(job *spec.Job) *measure.Length {
	if job.Width == nil {
		return nil
	}
	l := *job.Width
	if f.Spec.Stringer.Build == spec.Housed {
		l += 2 * job.Housing.Depth // let into both strings
	}
	for _, s := range job.Sides {
		if s == spec.Open {
			l += job.Tread.Overhang
		}
	}
	return &l
}

// riserLength is the clear width, and with housed strings what is let into both.
func (f *Flight) riserLength(job *spec.Job) *measure.Length {
	if job.Width == nil || f.Spec.Stringer.Build != spec.Housed {
		return job.Width
	}
	l := *job.Width + 2*job.Housing.Depth
	return &l
}

// add appends the boards of steps first to last, joining them to the row
// before when they are the same size.
func (f *Flight) add(kind BoardKind, first, last int, thickness measure.Length, depth float64, length *measure.Length) {
	if last < first {
		return
	}
	n := last - first + 1
	if k := len(f.Boards) - 1; k >= 0 && f.Boards[k].Kind == kind && measure.SnapMM(f.Boards[k].Depth) == measure.SnapMM(depth) {
		f.Boards[k].Count += n
		f.Boards[k].Steps[1] = last
		return
	}
	f.Boards = append(f.Boards, Board{Kind: kind, Count: n, Steps: [2]int{first, last}, Thickness: thickness, Depth: depth, Length: length})
}
