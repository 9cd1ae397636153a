package check

import (
	"stepoff/spec"
	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

// Depths is where a code measures tapered treads, and how deep they have to be
// there; of a curve it may ask otherwise than of winders. Where the code says
// nothing, the usual walkline is taken, and the narrow end is usual unless the
// code lets winders meet in a point. The job's width is known and its flights
// have their runs.
func Depths(job *spec.Job, code *rules.Code, curve bool) spec.Depths {
	d := spec.Depths{Walklines: walklines(*job.Width, code)}
	if l, ok := code.Limit(rules.WinderNarrowDatum); ok {
		d.NarrowAt = l.Length
	}
	if l, ok := WalklineLimit(code, curve); ok {
		d.LeastWalkline = l.Length
		if l.Of == rules.UnitRun {
			d.LeastWalkline = straightRun(job, code)
		}
	}
	l, ok := NarrowLimit(code, curve)
	_, byAngle := code.Limit(rules.WinderAngleMin) // such a code lets winders meet in a point
	switch {
	case ok:
		d.LeastNarrow = l.Length
	case !byAngle && !curve:
		d.LeastNarrow = spec.UsualNarrow
	}
	return d
}

// WalklineLimit is the least depth on the walkline: of winders, or of a curve's
// tapered treads where the code tells the two apart.
func WalklineLimit(code *rules.Code, curve bool) (rules.Limit, bool) {
	return taperedLimit(code.Limit, curve, rules.WinderWalklineMin, rules.TaperedWalklineMin)
}

// NarrowLimit is the least depth at the narrow end, likewise.
func NarrowLimit(code *rules.Code, curve bool) (rules.Limit, bool) {
	return taperedLimit(code.Limit, curve, rules.WinderNarrowMin, rules.TaperedNarrowMin)
}

// taperedLimit is the limit for winders or, of a curve, that for its tapered treads
// where there is one.
func taperedLimit(limit func(rules.Key) (rules.Limit, bool), curve bool, winder, tapered rules.Key) (rules.Limit, bool) {
	if l, ok := limit(tapered); ok && curve {
		return l, true
	}
	return limit(winder)
}

// walklines are the code's lines, from the inside edge of the clear width.
//
// A line told from the centre of the inside handrail is taken from the inside
// edge: where the handrail will stand is not known, it stands within the clear
// width or at its edge, and nearer to the inside a tread is less deep.
func walklines(width measure.Length, code *rules.Code) []measure.Length {
	from, _ := code.Limit(rules.WalklineFrom)
	datum, told := code.Limit(rules.WalklineDatum)
	below, narrow := code.Limit(rules.WalklineMiddleBelow)
	switch {
	case from.Word == rules.FromMiddle || narrow && width < below.Length:
		return []measure.Length{width / 2}
	case from.Word == rules.FromEachSide && told:
		return []measure.Length{datum.Length, width - datum.Length}
	case told:
		return []measure.Length{datum.Length}
	}
	return []measure.Length{spec.UsualWalkline}
}

// MeasuredAs is Depths as a stair is judged: the job's own walkline may decide
// where the stair is laid out and not where it is judged. Depths are taken
// straight across, which is the safe side of along the walkline.
func MeasuredAs(job *spec.Job, code *rules.Code, own *measure.Length, curve bool) spec.Depths {
	d := Depths(job, code, curve)
	if own != nil && ByOwnWalkline(code) {
		d.Walklines = []measure.Length{*own}
	}
	return d
}

// ByOwnWalkline tells whether a stair under a code is judged on the walkline that
// its job names: the code has none, or has it from a handrail that the job alone
// can place.
func ByOwnWalkline(code *rules.Code) bool {
	from, told := code.Limit(rules.WalklineFrom)
	return !told || from.Word == rules.FromHandrail
}

// straightRun is the longest run of the straight flights; where there is none,
// the least the code allows.
func straightRun(job *spec.Job, code *rules.Code) measure.Length {
	if run, ok := longestRun(job); ok {
		return run
	}
	least, _ := code.Limit(rules.RunMin)
	return least.Length
}

// longestRun is that of the straight flights; ok is false where none has a tread.
func longestRun(job *spec.Job) (longest measure.Length, ok bool) {
	for _, e := range job.Stairway {
		if e.Flight != nil && e.Flight.Run != nil && e.Flight.Risers != nil && *e.Flight.Risers > 1 {
			longest = max(longest, *e.Flight.Run)
		}
	}
	return longest, longest > 0
}
