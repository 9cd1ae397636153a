package asbuilt

import (
	"fmt"
	"slices"

	"stepoff/layout/check"
	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

// Verdict is what has to be done to the steps.
type Verdict int

// Nothing; pads on treads; the flight built anew.
const (
	Nothing Verdict = iota
	Pad
	Rebuild
)

func (v Verdict) String() string { return [...]string{"nothing", "pads", "rebuild"}[v] }

// Remedy is the least work that brings the steps within the limits of the code.
type Remedy struct {
	Verdict Verdict
	Step    measure.Length // pads are whole steps thick

	// Pads are one a tread, 0 for none; Padded the risers with them on, Spread
	// how far those are apart. Of Pad only.
	Pads   []measure.Length
	Padded []measure.Length
	Spread Spread

	Why  []string // of Rebuild: why no pads will do
	Also []string // what is wrong besides the steps, and what the pads change
}

// Total is the thickness of all pads together.
func (r Remedy) Total() measure.Length { return sum(r.Pads) }

// The fineness of pads: what a rip fence is set to.
const (
	imperialStep = measure.Inch / 16
	metricStep   = measure.Millimetre
)

// The rules that speak of the steps themselves: what pads change, and what only a
// new flight does.
var (
	riserRules = []string{"riser-max", "riser-min", "riser-variation", "two-rise-plus-run"}
	runRules   = []string{"run-min", "run-max", "run-variation", "pitch", "flight-rise", "flight-risers", "risers-in-line"}
)

func (in *Inspection) remedy(st measure.Style) Remedy {
	a := in.Stair
	r := Remedy{Step: imperialStep}
	if a.Units == measure.Metric {
		r.Step = metricStep
	}
	limits := limitsOf(in.Code, a.Risers, a.Treads)
	r.Also = in.besides(limits, st)
	for _, f := range check.Of(in.Findings, check.Fail) {
		if slices.Contains(runRules, f.ID) {
			r.Why = append(r.Why, f.Text)
		}
	}
	if len(r.Why) > 0 {
		r.Why = append(r.Why, "pads change no run and no number of steps")
	}
	pads, ok := Pads(a.Risers, limits, r.Step)
	if !ok {
		r.Why = append([]string{in.why(limits, r.Step, st)}, r.Why...)
	}
	switch {
	case len(r.Why) > 0:
		r.Verdict = Rebuild
	case sum(pads) > 0:
		r.Verdict, r.Pads = Pad, pads
		r.Padded = Padded(a.Risers, pads)
		r.Spread = *spreadOf(r.Padded)
		r.Also = append(r.Also, in.padded(slices.Max(pads), st)...)
	}
	return r
}

// besides says what is wrong that is not the steps', and what no rule says.
func (in *Inspection) besides(limits Limits, st measure.Style) (said []string) {
	for _, f := range check.Of(in.Findings, check.Fail) {
		if !slices.Contains(runRules, f.ID) && !slices.Contains(riserRules, f.ID) {
			said = append(said, f.Text)
		}
	}
	if t := in.Throat; t != nil && max(t.Riser, t.Tread) > 0 {
		said = append(said, fmt.Sprintf("overcuts have taken %s from the throat: have a licensed professional say whether the stringers are to be stiffened", st.InchesMM(max(t.Riser, t.Tread))))
	}
	_, deviation := in.Code.Limit(rules.RiserDeviation)
	numbered := limits.Spread != nil || limits.Adjacent != nil || deviation
	if in.Risers.Apart > 0 && !numbered && in.Code.Name != rules.None {
		said = append(said, fmt.Sprintf("%s gives no number for how far risers may differ, and these are %s apart: ask the building official", in.Code.Name, st.Inches(in.Risers.Apart)))
	}
	return said
}

// verify is what is added where a limit that is from memory decides.
func verify(l rules.Limit) string {
	if l.Basis != rules.FromMemory {
		return ""
	}
	return "; verify " + l.Text + ": from memory"
}

// padded says what the pads change besides the risers: over the thickest one
// there is so much less headroom, and the handrail stands so much lower. Where
// along the stair they were measured is not known, so the worst is told.
func (in *Inspection) padded(thickest measure.Length, st measure.Style) (said []string) {
	a := in.Stair
	less := func(what string, l *measure.Length, key rules.Key, right string) {
		if l == nil {
			return
		}
		text := fmt.Sprintf("%s is up to %s less over a padded tread: %s", what, st.Inches(thickest), st.Inches(*l-thickest))
		if limit, ok := in.Code.Limit(key); ok && *l-thickest < limit.Length {
			text += fmt.Sprintf(", less than %s there: %s", limit.Text, right) + verify(limit)
		}
		said = append(said, text)
	}
	less("headroom", a.Headroom, rules.HeadroomMin, "measure it over the padded treads")
	less("the handrail's height", a.HandrailHeight, rules.HandrailHeightMin, "raise it where it stands too low")
	return said
}

// why says in plain words why no pads will do.
func (in *Inspection) why(limits Limits, step measure.Length, st measure.Style) string {
	a, code := in.Stair, in.Code
	n := len(a.Risers)
	mean := fmt.Sprintf("%d risers share %s, which is %s each even if all are alike", n, st.Inches(in.TotalRise), st.InchesMM(in.MeanRise))
	if l, ok := code.Limit(rules.RiserMax); ok && in.TotalRise > l.Length*measure.Length(n) {
		return mean + ", more than " + l.Text + ": there are too few" + verify(l)
	}
	if l, ok := code.Limit(rules.RiserMin); ok && in.TotalRise < l.Length*measure.Length(n) {
		return mean + ", less than " + l.Text + ": there are too many" + verify(l)
	}
	without := limits // two rises and a run
	without.Risers = limitsOf(code, a.Risers, nil).Risers
	if _, ok := Pads(a.Risers, without, step); ok {
		return "pads can bring the risers together, but not two rises and a run within their limits"
	}
	if k, level, most := tooHigh(a.Risers, without); k > 0 {
		within := "with every riser within its limits"
		if limits.Spread != nil {
			within = fmt.Sprintf("with the risers within %s of each other", st.Inches(*limits.Spread))
		}
		return fmt.Sprintf("tread %d stands %s over the lower floor, and pads lower no tread: %s it may stand no higher than %s", k, st.Inches(level), within, st.InchesMM(most))
	}
	without.Adjacent = nil
	if _, ok := Pads(a.Risers, without, step); ok {
		return fmt.Sprintf("pads can bring all risers together, but not every two neighbours within %s of each other", st.Inches(*limits.Adjacent))
	}
	return fmt.Sprintf("no pads in whole steps of %s bring every riser within its limits", st.Inches(step))
}

// tooHigh finds the tread that stands furthest above where it may stand with all
// risers within their limits, pads or not, whatever their steps; 0 where none
// stands too high. level is where it stands, most where it may, in millimetres.
func tooHigh(risers []measure.Length, limits Limits) (tread int, level measure.Length, most float64) {
	worst := measure.Length(0)
	for k := 1; k < len(risers); k++ {
		now := sum(risers[:k])
		if may := highest(k, risers, limits); now-may > worst {
			tread, level, most, worst = k, now, may.MM(), now-may
		}
	}
	return tread, level, most
}

// highest is the greatest level tread k may have: the risers below it as high as
// they may be and those above it as low, whichever asks for less. The lowest
// riser is free: raised, it lets those below go higher and asks more of those
// above, so that the best is where the two meet.
func highest(k int, risers []measure.Length, limits Limits) measure.Length {
	total := sum(risers)
	below := func(lowest measure.Length) measure.Length {
		most := measure.Length(0)
		for _, r := range limits.Risers[:k] {
			most += min(r.Most, lowest+*limits.Spread)
		}
		return most
	}
	above := func(lowest measure.Length) measure.Length {
		least := measure.Length(0)
		for _, r := range limits.Risers[k:] {
			least += max(r.Least, lowest)
		}
		return total - least
	}
	if limits.Spread == nil {
		free := total
		limits.Spread = &free
		return min(below(0), above(0))
	}
	lo, hi := measure.Length(0), total // below(lo) <= above(lo), or they never meet
	for hi-lo > 1 {
		if mid := lo + (hi-lo)/2; below(mid) <= above(mid) {
			lo = mid
		} else {
			hi = mid
		}
	}
	return max(min(below(lo), above(lo)), min(below(hi), above(hi)))
}
