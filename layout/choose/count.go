package choose

import (
	"math"
	"slices"

	"stepoff/layout"
	"stepoff/spec"
	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

// usualSpacing is how far apart sawn stringers stand at most where the treads'
// strength is not known. Source: AWC DCA 6, figures 29 and 33 (secondary).
const usualSpacing = 18 * measure.Inch

// leastSpacing is how close stringers are set at the closest, under treads of the
// weakest boards (common practice): for strength alone there are better ways.
const leastSpacing = 12 * measure.Inch

// Counts gives every flight that asks for `count: auto` the fewest stringers
// that hold, by the strength of stringers and treads and by the code's own
// limits. Where none does, or nothing is known of the wood, the count stays by
// spacing; CountBy says which. The job's riser counts and runs are filled in
// already; the job itself is not changed.
func Counts(job *spec.Job, code *rules.Code) *spec.Job {
	if !slices.ContainsFunc(job.Stairway, asksCount) {
		return job
	}
	out := clone(job)
	number := 0 // of the flight
	for _, e := range out.Stairway {
		if e.Flight == nil {
			continue
		}
		at := number
		number++
		st := &e.Flight.Stringer
		if !asksCount(e) {
			continue
		}
		bySpacing := st.Count
		if job.Width == nil {
			e.Flight.CountBy = "as usual: the width is not stated"
			continue
		}
		if len(st.Support) > 1 || len(st.FootLevels) > 0 {
			e.Flight.CountBy = "as many as the job's lists have"
			continue
		}
		st.Count, e.Flight.CountBy = fewest(out, at, st, bySpacing, code)
	}
	return out
}

func asksCount(e spec.Element) bool { return e.Flight != nil && e.Flight.Stringer.CountAuto }

// fewest tries counts of one flight from two up.
func fewest(job *spec.Job, at int, st *spec.Stringer, otherwise int, code *rules.Code) (count int, why string) {
	defer func(was int) { st.Count = was }(st.Count)
	for n := 2; *job.Width/measure.Length(n-1) >= leastSpacing; n++ {
		st.Count = n
		f, w := strengthOf(job, at, code)
		if w == nil {
			return otherwise, "by spacing"
		}
		if w.Unknown != "" && !spansNone(st) {
			return otherwise, "by spacing: " + w.Unknown
		}
		if w.Holds() && closeEnough(f, w, job, code) {
			return n, "the fewest that hold"
		}
	}
	return otherwise, "by spacing: no count holds by itself; stepoff check --suggest finds what does"
}

// spansNone tells whether every stringer is fastened along a wall.
func spansNone(st *spec.Stringer) bool {
	return !slices.ContainsFunc(st.Support, func(s spec.Support) bool { return s == spec.Span })
}

// closeEnough holds the spacing against the code and, where the treads have no
// verdict, against what is usual.
func closeEnough(f *layout.Flight, w *layout.Strength, job *spec.Job, code *rules.Code) bool {
	if l, ok := code.Limit(rules.StringerCountMin); ok && f.Spec.Stringer.Count < l.Count {
		return false
	}
	most := math.Inf(1)
	if w.Treads == nil {
		most = usualSpacing.MM()
	}
	if l, ok := code.Limit(rules.StringerClearMax); ok && !job.Riser.Open {
		most = math.Min(most, (l.Length + f.Spec.Stringer.Stock.Thickness).MM())
	} else if l, ok := code.Limit(rules.StringerSpacingMax); ok {
		most = math.Min(most, l.Length.MM())
	}
	return measure.SnapMM(f.Spacing) <= measure.SnapMM(most)
}

// strengthOf lays the job out and works one flight's strength out; nil where the
// stair cannot be built, or the flight has no stringer.
func strengthOf(job *spec.Job, at int, code *rules.Code) (*layout.Flight, *layout.Strength) {
	s, err := layout.Compute(job)
	if err != nil {
		return nil, nil // said when it is laid out in earnest
	}
	f := s.Flights()[at]
	return f, s.Strength(f, code)
}

// clone copies a job as far down as the flights, so that they may be changed.
func clone(job *spec.Job) *spec.Job {
	out := *job
	out.Stairway = nil
	for _, e := range job.Stairway {
		if e.Flight != nil {
			f := *e.Flight
			e.Flight = &f
		}
		out.Stairway = append(out.Stairway, e)
	}
	return &out
}
