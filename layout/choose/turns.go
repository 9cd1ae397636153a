package choose

import (
	"fmt"
	"strings"

	"stepoff/layout"
	"stepoff/spec"
	"stepoff/spec/measure"
	"stepoff/spec/rules"
	"stepoff/spec/source"
)

// turns fills in where the code measures winders and the treads of curves, how
// deep they have to be there, and the set-backs that are left open.
func turns(job *spec.Job, code *rules.Code) (bad source.Mistakes) {
	if job.Width == nil {
		return nil
	}
	for i, e := range job.Stairway {
		switch {
		case e.Winders != nil:
			w := e.Winders
			w.Depths = depths(job, code, w.Walkline, w.Depths.Arc, false)
			if w.Narrow != nil {
				w.Depths.LeastNarrow = *w.Narrow
			}
			bad = append(bad, walklineWithin(job, fmt.Sprintf("stairway[%d].winders", i), w.Depths)...)
			if w.Setback == nil && len(bad) == 0 {
				bad = append(bad, setback(job, fmt.Sprintf("stairway[%d].winders", i), w)...)
			}
		case e.Curve != nil:
			c := e.Curve
			c.Depths = depths(job, code, c.Walkline, c.Depths.Arc, true)
			bad = append(bad, walklineWithin(job, fmt.Sprintf("stairway[%d].curve", i), c.Depths)...)
		}
	}
	return bad
}

// walklineWithin says where the code's walkline lies beyond a narrow stair.
func walklineWithin(job *spec.Job, key string, d spec.Depths) (bad source.Mistakes) {
	say := measure.Style{Units: job.Units}.Format
	for _, l := range d.Walklines {
		if l <= 0 || l >= *job.Width {
			return source.Mistakes{job.Mistake("width", "width: the walkline of %s lies %s from the inside edge, which is not within a clear width of %s; make the stair wider, or write walkline: less than that",
				strings.TrimLeft(key[strings.LastIndex(key, ".")+1:], "."), say(l), say(*job.Width))}
		}
	}
	return nil
}

// setback chooses the least set-back that is deep enough.
func setback(job *spec.Job, key string, w *spec.Winders) source.Mistakes {
	if w.Treads == 0 || w.Angle == 0 {
		return nil // said where it is wrong
	}
	least, ok := layout.PlanOf(w, job).LeastSetback()
	if !ok {
		return source.Mistakes{job.Mistake(key, "winders: no set-back makes every tread %s deep on the walkline and %s at its narrow end; write fewer treads, or less narrow",
			measure.Style{Units: job.Units}.Format(w.Depths.LeastWalkline), measure.Style{Units: job.Units}.Format(w.Depths.LeastNarrow))}
	}
	w.Setback, w.SetbackChosen = &least, true
	return nil
}

// depths is where the code measures tapered treads; of a curve it may ask
// otherwise than of winders. A walkline named by the job takes the place of the
// code's.
func depths(job *spec.Job, code *rules.Code, own *measure.Length, arc, curve bool) spec.Depths {
	d := spec.Depths{Arc: arc, Walklines: walklines(job, code)}
	if own != nil {
		d.Walklines = []measure.Length{*own}
	}
	if l, ok := code.Limit(rules.WinderNarrowDatum); ok {
		d.NarrowAt = l.Length
	}
	if l, ok := limitOf(code, curve, rules.WinderWalklineMin, rules.TaperedWalklineMin); ok {
		d.LeastWalkline = l.Length
		if l.Of == rules.UnitRun {
			d.LeastWalkline = straightRun(job, code)
		}
	}
	l, ok := limitOf(code, curve, rules.WinderNarrowMin, rules.TaperedNarrowMin)
	_, byAngle := code.Limit(rules.WinderAngleMin) // such a code lets winders meet in a point
	switch {
	case ok:
		d.LeastNarrow = l.Length
	case !byAngle:
		d.LeastNarrow = spec.UsualNarrow
	}
	return d
}

// limitOf is the limit for winders or, in a curve, that for tapered treads where
// the code tells the two apart.
func limitOf(code *rules.Code, curve bool, winder, tapered rules.Key) (rules.Limit, bool) {
	if l, ok := code.Limit(tapered); ok && curve {
		return l, true
	}
	return code.Limit(winder)
}

// walklines are the code's lines, from the inside edge of the clear width.
//
// A line told from the centre of the inside handrail is taken from the inside
// edge: where the handrail will stand is not known, it stands within the clear
// width or at its edge, and nearer to the inside a tread is less deep.
func walklines(job *spec.Job, code *rules.Code) []measure.Length {
	from, _ := code.Limit(rules.WalklineFrom)
	datum, told := code.Limit(rules.WalklineDatum)
	below, narrow := code.Limit(rules.WalklineMiddleBelow)
	width := *job.Width
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

// straightRun is the longest run of the straight flights; where there is none,
// the least the code allows.
func straightRun(job *spec.Job, code *rules.Code) measure.Length {
	longest := measure.Length(0)
	for _, e := range job.Stairway {
		if e.Flight != nil && e.Flight.Run != nil && *e.Flight.Risers > 1 {
			longest = max(longest, *e.Flight.Run)
		}
	}
	if least, ok := code.Limit(rules.RunMin); ok && longest == 0 {
		return least.Length
	}
	return longest
}
