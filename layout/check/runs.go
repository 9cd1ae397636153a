package check

import (
	"cmp"
	"fmt"
	"math"

	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

// runMin holds the shortest run. Those of tapered treads are winder-walkline's
// where the code has a depth for them.
func (j *judge) runMin() {
	l, ok := j.limit(rules.RunMin)
	if !ok || len(j.Runs) == 0 || j.hasOwn(rules.WinderWalklineMin, rules.TaperedWalklineMin) {
		return
	}
	a := least(j.runs())
	j.atLeast(a.Compare(l.Length), bound{limit: l, actual: mm(a.MM()), found: j.name(a), right: j.otherRun(l)})
}

func (j *judge) runMax() {
	l, ok := j.limit(rules.RunMax)
	if !ok || len(j.Runs) == 0 {
		return
	}
	a := most(j.runs())
	j.atMost(a.Compare(l.Length), bound{limit: l, actual: mm(a.MM()), found: j.name(a), right: j.otherRun(l)})
}

// runs are the runs with their names.
func (j *judge) runs() []at {
	if j.OnWalkline {
		return numbered(Wholes(j.Runs), "walkline run", "run on the walkline")
	}
	return numbered(Wholes(j.Runs), "run", "unit run")
}

// hasOwn tells whether the runs are those of tapered treads, for which the code
// has limits of its own.
func (j *judge) hasOwn(winder, tapered rules.Key) bool {
	if !j.OnWalkline || j.Turn == nil {
		return false
	}
	_, ok := j.taperedLimit(winder, tapered)
	return ok
}

// otherRun says what a run on its limit makes of the total run.
func (j *judge) otherRun(l rules.Limit) string {
	switch {
	case j.Plan == nil:
		return ""
	case j.OnWalkline:
		return j.otherWalkline(l)
	}
	treads := len(j.Runs)
	if !j.HungHead {
		treads++ // the top tread, level with the floor, takes a run too
	}
	return fmt.Sprintf("a run of %s makes the total run %s", j.limitText(l), j.Style.Format(l.Length*measure.Length(treads)))
}

// otherWalkline says what brings the runs on a walkline to a limit.
func (j *judge) otherWalkline(l rules.Limit) string {
	least, most := least(j.runs()), most(j.runs())
	switch {
	case j.Turn.Curve && l.Key == rules.RunMin:
		return j.atLeastTape(l.Length.MM()-least.MM()) + " more: a greater inside radius or angle, or fewer risers"
	case j.Turn.Curve:
		return j.atLeastTape(most.MM()-l.Length.MM()) + " less: a smaller inside radius or angle, or more risers"
	}
	return j.atLeastTape(most.MM()-l.Length.MM()) + " less: a smaller set-back, or more winders"
}

func (j *judge) runVariation() {
	if j.Together != nil {
		j.between("unit run", j.Together.Runs, rules.RunVariation, "one run for all flights", "")
	}
	if len(j.Runs) > 0 && !j.hasOwn(rules.WinderVariation, rules.WinderVariation) && !j.hasOwn(rules.WinderAdjacent, rules.WinderAdjacent) {
		j.variation("run", "the nosings have to move", []set{{values: Wholes(j.Runs)}},
			rules.RunVariation, rules.RunVariationAdjacent, rules.RunDeviation, nil)
	}
}

// topRun tells the last run as it will be between the top tread's nosing and
// the upper floor's own.
func (j *judge) topRun() {
	if j.TopRun == nil || len(j.Runs) == 0 {
		return
	}
	header := "the header bare"
	if j.TopRun.Covered {
		header = "a riser board on the header"
	}
	found := fmt.Sprintf("top run %s with %s and a floor nosing of %s: last tread cut %s",
		j.exactly(j.TopRun.Run), header, j.Style.Inches(j.TopRun.Floor), j.exactly(j.TopRun.LastCut))
	status := Pass
	if compareMM(j.TopRun.Run, j.Runs[0]) != 0 {
		status = j.broken()
		found += fmt.Sprintf("; the others are %s", j.Style.Inches(j.Runs[0]))
	}
	j.say(status, nil, length(j.Runs[0]), mm(j.TopRun.Run), found)
}

// nosing holds the overhang against its least and its most. A deep tread may
// have less than the least.
func (j *judge) nosing() {
	if len(j.Nosings) == 0 {
		return
	}
	named := numbered(Wholes(j.Nosings), "nosing", "nosing")
	if j.FloorNosing && named[len(named)-1].where != "nosing" {
		named[len(named)-1].where = floorNosing
	}
	if l, ok := j.limit(rules.NosingMin); ok {
		a := least(named)
		exempt, may := j.limit(rules.NosingExemptRun)
		if may = may && (len(j.Runs) > 0 || j.tapers()); a.Compare(l.Length) < 0 && may {
			run := j.leastDepth()
			if run.Compare(exempt.Length) >= 0 {
				j.say(Pass, []rules.Limit{l, exempt}, length(l.Length), mm(a.MM()),
					fmt.Sprintf("%s; none is needed with a run of %s or more", j.name(a), j.limitText(exempt)))
			} else {
				j.atLeast(-1, bound{limit: l, actual: mm(a.MM()), found: j.name(a), by: []rules.Limit{exempt},
					right: fmt.Sprintf("treads %s deeper, or a run of %s", j.atLeastTape((l.Length - a.Total).MM()), j.limitText(exempt))})
			}
		} else {
			j.atLeast(a.Compare(l.Length), bound{limit: l, actual: mm(a.MM()), found: j.name(a), right: ofFloor(a, j.atLeastTape((l.Length-a.Total).MM())+" more")})
		}
	}
	if l, ok := j.limit(rules.NosingMax); ok {
		a := most(named)
		j.atMost(a.Compare(l.Length), bound{limit: l, actual: mm(a.MM()), found: j.name(a),
			right: cmp.Or(ofFloor(a, j.atLeastTape((a.Total-l.Length).MM())+" less"), fmt.Sprintf("treads %s less deep", j.atLeastTape((a.Total-l.Length).MM())))})
	}
}

// leastDepth is the shortest run; of tapered treads, which are as deep nowhere
// else, that at the narrow end.
func (j *judge) leastDepth() at {
	if j.tapers() {
		name, v := j.Turn.named(atNarrowEnd)
		exact, _ := measure.FromMM(v)
		return at{name, Whole(exact)}
	}
	return least(j.runs())
}

// floorNosing names the nosing that is none of the treads'.
const floorNosing = "the upper floor's nosing (top_nosing)"

// ofFloor says that the upper floor's nosing is what has to change; nothing for
// a tread's.
func ofFloor(a at, change string) string {
	if a.where != floorNosing {
		return ""
	}
	return "the floor's nosing " + change
}

func (j *judge) nosingVariation() {
	if len(j.Nosings) > 0 {
		s := set{values: Wholes(j.Nosings)}
		if j.FloorNosing {
			s.last = floorNosing
		}
		j.variation("nosing", "they have to be alike", []set{s}, rules.NosingVariation, "", "", nil)
	}
}

// twoRisePlusRun holds two rises and a run against the code: for every run with
// the riser below and the riser above it.
func (j *judge) twoRisePlusRun() {
	var all []at
	for i, run := range j.Runs {
		for _, k := range []int{i, i + 1} {
			if k < len(j.Risers) {
				all = append(all, at{fmt.Sprintf("2R+T at tread %d%s", i+1, j.onLine()), j.Risers[k].Times(2).Plus(run)})
			}
		}
	}
	if len(all) == 0 {
		return
	}
	if lo := least(all); most(all).apart(lo.Share).Total == 0 {
		all = []at{{"2R+T" + j.onLine(), lo.Share}}
	}
	if l, ok := j.limit(rules.TwoRisePlusRunMin); ok {
		a := least(all)
		j.atLeast(a.Compare(l.Length), bound{limit: l, actual: mm(a.MM()), found: j.name(a), right: j.runBy(a.apart(Whole(l.Length)), "longer")})
	}
	if l, ok := j.limit(rules.TwoRisePlusRunMax); ok {
		a := most(all)
		j.atMost(a.Compare(l.Length), bound{limit: l, actual: mm(a.MM()), found: j.name(a), right: j.runBy(a.apart(Whole(l.Length)), "shorter")})
	}
}

// onLine says where runs are taken that are no straight treads'.
func (j *judge) onLine() string {
	if j.OnWalkline {
		return " on the walkline"
	}
	return ""
}

func (j *judge) runBy(s Share, how string) string {
	return fmt.Sprintf("a run %s %s, or another number of risers", j.atLeastTape(s.MM()), how)
}

// pitch is that of the nosing line: mean rise over mean run.
func (j *judge) pitch() {
	if len(j.Risers) == 0 || len(j.Runs) == 0 {
		return
	}
	rise, run := mean(j.Risers), mean(Wholes(j.Runs))
	pitch := measure.SnapDegrees(math.Atan2(rise, run) * 180 / math.Pi)
	found := fmt.Sprintf("pitch %.2f degrees%s", pitch, j.onLine())
	hold := func(key rules.Key, is func(int, bound), tape func(float64) string, word string) {
		if l, ok := j.limit(key); ok {
			right := fmt.Sprintf("a run of %s %s", tape(rise/math.Tan(l.Degrees*math.Pi/180)), word)
			if round := fmt.Sprintf("%.2f", pitch); pitch != l.Degrees && round == fmt.Sprintf("%.2f", l.Degrees) {
				found = fmt.Sprintf("pitch %.6f degrees%s", pitch, j.onLine()) // two decimals would hide which side of it
			}
			is(cmp.Compare(pitch, l.Degrees), bound{limit: l, to: degrees(l.Degrees), actual: degrees(pitch), found: found, right: right})
		}
	}
	hold(rules.PitchMin, j.atLeast, j.atMostTape, "at most")
	hold(rules.PitchMax, j.atMost, j.atLeastTape, "at least")
}
