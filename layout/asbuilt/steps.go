package asbuilt

import (
	"fmt"
	"slices"

	"stepoff/layout/check"
	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

// Step is one riser and the tread it leads to.
type Step struct {
	Number int // of the riser, from 1
	Riser  measure.Length
	Off    float64         // the riser less the mean, millimetres
	Tread  *measure.Length // nil: the upper floor
	Nosing *measure.Length // nil: not measured
	Pad    measure.Length  // on the tread; 0: none
	Padded measure.Length  // the riser with the pads on; as it is where there are none
	Faults []Fault
}

// Fault is what is wrong with a step.
type Fault struct {
	Rule string // id
	On   Part
	Text string // short: riser low, run under 10"

	outside bool // of the band that holds most
}

// AtFault tells whether anything is wrong with a part of the step.
func (s Step) AtFault(on Part) bool {
	return slices.ContainsFunc(s.Faults, func(f Fault) bool { return f.On == on })
}

// StandsOut tells whether the step's riser, tread or nosing is outside the band,
// as wide as the code lets them differ, that holds the most of the flight's.
func (s Step) StandsOut(on Part) bool {
	return slices.ContainsFunc(s.Faults, func(f Fault) bool { return f.On == on && f.outside })
}

// Part is what a fault is about.
type Part int

// The riser, the tread (its run), or its nosing.
const (
	Riser Part = iota
	Tread
	Nosing
)

// Parts are all of them.
var Parts = []Part{Riser, Tread, Nosing}

func (p Part) String() string { return [...]string{"riser", "run", "nosing"}[p] }

// steps sets the measurements step by step and says what is wrong with each. A
// riser or a tread by itself, and two neighbours, are held against the rules by
// themselves: what fails alone is at fault.
func (in *Inspection) steps(st measure.Style) []Step {
	a := in.Stair
	steps := make([]Step, len(a.Risers))
	for k, r := range a.Risers {
		s := Step{Number: k + 1, Riser: r, Off: r.MM() - in.MeanRise, Padded: r}
		if k < len(a.Treads) {
			s.Tread = &a.Treads[k]
		}
		if k < len(a.Nosings) {
			s.Nosing = &a.Nosings[k]
		}
		if in.Remedy.Verdict == Pad {
			s.Padded = in.Remedy.Padded[k]
			if k < len(a.Treads) {
				s.Pad = in.Remedy.Pads[k]
			}
		}
		steps[k] = s
	}
	f := faults{in, st, steps}
	f.alone()
	f.together(a.Risers, Riser, rules.RiserVariation, rules.RiserVariationAdjacent, rules.RiserDeviation)
	f.together(a.Treads, Tread, rules.RunVariation, rules.RunVariationAdjacent, rules.RunDeviation)
	f.together(a.Nosings, Nosing, rules.NosingVariation, "", "")
	return steps
}

type faults struct {
	in    *Inspection
	st    measure.Style
	steps []Step
}

func (f faults) add(k int, rule string, on Part, format string, args ...any) {
	f.steps[k].Faults = append(f.steps[k].Faults, Fault{Rule: rule, On: on, Text: fmt.Sprintf(format, args...)})
}

func (f faults) outside(k int, rule string, on Part, text string) {
	f.steps[k].Faults = append(f.steps[k].Faults, Fault{rule, on, text, true})
}

// failing are the findings of some rules that fail, on a few measurements.
func (f faults) failing(facts check.Facts, ids ...string) []check.Finding {
	facts.Style = f.st
	return slices.DeleteFunc(check.Judge(facts, f.in.Code), func(found check.Finding) bool {
		return found.Status != check.Fail || !slices.Contains(ids, found.ID)
	})
}

// alone finds what is wrong with each riser, run and nosing by itself, and with
// two rises and a run.
func (f faults) alone() {
	a := f.in.Stair
	for k, s := range f.steps {
		one := check.Facts{Risers: check.Wholes(a.Risers[k : k+1])}
		if s.Tread != nil {
			one.Runs = a.Treads[k : k+1]
		}
		for _, found := range f.failing(one, "riser-max", "riser-min") {
			f.add(k, found.ID, Riser, "riser %s", f.beyond(found))
		}
		for _, found := range f.failing(one, "run-min", "run-max") {
			f.add(k, found.ID, Tread, "run %s", f.beyond(found))
		}
		if s.Nosing != nil {
			for _, found := range f.failing(check.Facts{Nosings: a.Nosings[k : k+1], Runs: a.Treads}, "nosing") {
				f.add(k, found.ID, Nosing, "nosing %s", f.beyond(found))
			}
		}
		if s.Tread != nil {
			for _, found := range f.failing(check.Facts{Risers: check.Wholes(a.Risers[k : k+2]), Runs: one.Runs}, "two-rise-plus-run") {
				f.add(k, found.ID, Tread, "2R+T %s", f.beyond(found))
			}
		}
	}
}

// beyond says which side of its limit a figure is.
func (f faults) beyond(found check.Finding) string {
	word := "over"
	if found.Actual.Value < found.Limit.Value {
		word = "under"
	}
	return word + " " + f.st.InchesMM(found.Limit.Value)
}

// together finds which of a flight's lengths stand out: those outside the band
// that the code's variation allows and that holds the most of them; neighbours
// too far apart, told at the upper one; and what is too far off the mean.
func (f faults) together(lengths []measure.Length, on Part, spread, adjacent, deviation rules.Key) {
	rule := on.String() + "-variation"
	if l, ok := f.in.Code.Limit(spread); ok && len(lengths) > 0 {
		low := band(lengths, l.Length)
		for k, v := range lengths {
			switch {
			case v < low:
				f.outside(k, rule, on, on.String()+" "+less(on))
			case v > low+l.Length:
				f.outside(k, rule, on, on.String()+" "+more(on))
			}
		}
	}
	if l, ok := f.in.Code.Limit(adjacent); ok {
		for k := 1; k < len(lengths); k++ {
			switch apart := lengths[k] - lengths[k-1]; {
			case apart > l.Length:
				f.add(k, rule, on, "%s %s more than %d", on, f.st.Inches(apart), k)
			case -apart > l.Length:
				f.add(k, rule, on, "%s %s less than %d", on, f.st.Inches(-apart), k)
			}
		}
	}
	if l, ok := f.in.Code.Limit(deviation); ok {
		n := measure.Length(len(lengths))
		for k, v := range lengths {
			if off := v*n - sum(lengths); off.Abs() > l.Length*n {
				f.add(k, rule, on, "%s %s off the mean", on, f.st.InchesMM(off.Abs().MM()/float64(n)))
			}
		}
	}
}

func less(p Part) string { return [...]string{"low", "short", "small"}[p] }
func more(p Part) string { return [...]string{"high", "long", "large"}[p] }

// band returns the least length of the band, as wide as the variation allowed,
// that holds the most of the lengths; of several such bands the one whose middle
// is nearest the mean, then the lowest.
func band(lengths []measure.Length, width measure.Length) measure.Length {
	n := measure.Length(len(lengths))
	best, held, off := measure.Length(0), 0, measure.Length(0)
	sorted := slices.Sorted(slices.Values(lengths))
	for _, low := range sorted {
		holds := 0
		for _, v := range lengths {
			if low <= v && v <= low+width {
				holds++
			}
		}
		// Twice n times how far the band's middle is from the mean: exactly.
		from := (n*(2*low+width) - 2*sum(lengths)).Abs()
		if holds > held || holds == held && from < off {
			best, held, off = low, holds, from
		}
	}
	return best
}
