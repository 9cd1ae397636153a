package check

import (
	"fmt"
	"slices"
	"strings"

	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

// at is a riser or a run and where it is.
type at struct {
	where string
	Share
}

// name says where and how high: unit rise 7 1/2", riser 3 of 8 1/8".
func (j *judge) name(a at) string {
	of := " "
	if strings.ContainsAny(a.where, "0123456789") {
		of = " of "
	}
	return a.where + of + j.exactly(a.MM())
}

// numbered gives each of a flight's risers or runs its name; one name for all
// where they are alike.
func numbered(shares []Share, one, all string) []at {
	if len(shares) > 0 && alike(shares) {
		return []at{{all, shares[0]}}
	}
	named := make([]at, len(shares))
	for i, s := range shares {
		named[i] = at{fmt.Sprintf("%s %d", one, i+1), s}
	}
	return named
}

// most and least return the greatest and the least; the first of equals.
func most(all []at) at {
	return slices.MaxFunc(all, func(a, b at) int { return order(a.Share, b.Share) })
}

func least(all []at) at {
	return slices.MinFunc(all, func(a, b at) int { return order(a.Share, b.Share) })
}

func order(a, b Share) int {
	switch {
	case a.less(b):
		return -1
	case b.less(a):
		return 1
	}
	return 0
}

// allRisers are the flight's risers, the first one as it is at mid-width and at
// both edges of a pad that slopes.
func (j *judge) allRisers() []at {
	all := numbered(j.Risers, "riser", "unit rise")
	for _, e := range j.Foot {
		all = append(all, at{e.Where + " edge: first riser", e.Riser})
	}
	return all
}

func (j *judge) riserMax() {
	l, ok := j.limit(rules.RiserMax)
	if !ok || len(j.Risers) == 0 {
		return
	}
	a := most(j.allRisers())
	j.atMost(a.Compare(l.Length), bound{limit: l, actual: mm(a.MM()), found: j.name(a), right: j.otherCount(a, l, 1)})
}

func (j *judge) riserMin() {
	l, ok := j.limit(rules.RiserMin)
	if !ok || len(j.Risers) == 0 {
		return
	}
	a := least(j.allRisers())
	j.atLeast(a.Compare(l.Length), bound{limit: l, actual: mm(a.MM()), found: j.name(a), right: j.otherCount(a, l, -1)})
}

// otherCount says which number of risers would bring the worst one within its
// limit: more of them for a riser that is too high, fewer for one too low.
func (j *judge) otherCount(worst at, l rules.Limit, more int) string {
	if j.Plan == nil {
		return "" // a stair that stands: by how much it is off
	}
	off := worst.MM() - Share{j.Plan.TotalRise, j.Plan.Risers}.MM() // what the pad adds or takes
	for n := j.Plan.Risers + more; n >= 1 && n <= 10*j.Plan.Risers; n += more {
		unit := Share{j.Plan.TotalRise, n}
		if more*compareMM(unit.MM()+off, l.Length) > 0 {
			continue
		}
		for _, other := range []struct {
			key  rules.Key
			sign int
		}{{rules.RiserMax, 1}, {rules.RiserMin, -1}} {
			if o, ok := j.limit(other.key); ok && other.sign*unit.Compare(o.Length) > 0 {
				return "no number of risers is right for this total rise"
			}
		}
		change := several(n-j.Plan.Risers, "more riser")
		if more < 0 {
			change = several(j.Plan.Risers-n, "riser") + " fewer"
		}
		return change + ": " + j.tape(unit.MM())
	}
	return "the total rise is too little for a riser"
}

func (j *judge) riserVariation() {
	if j.Together != nil {
		j.builtLandings()
	}
	if len(j.Risers) == 0 {
		return
	}
	sets := []set{{values: j.Risers}}
	for _, e := range j.Foot {
		sets = append(sets, set{where: " at the " + e.Where + " edge", values: append([]Share{e.Riser}, j.Risers[1:]...)})
	}
	right := "the remedy says what brings them together"
	if j.Plan != nil {
		right = "the pad has to be more level there"
	}
	var plan *Share
	if j.Plan != nil {
		plan = &Share{j.Plan.TotalRise, j.Plan.Risers}
	}
	j.variation("riser", right, sets, rules.RiserVariation, rules.RiserVariationAdjacent, rules.RiserDeviation, plan)
}

// set is a flight's risers or runs as they are at one place.
type set struct {
	where  string
	values []Share
	last   string // the name of the last one where it is another thing than the rest
}

// pair is two of a set that differ.
type pair struct {
	where string
	a, b  at
	Share // how far apart
}

// variation holds the spread of a flight, its neighbours, and what differs from
// the plan (nil: from the mean) against the limits there are.
func (j *judge) variation(one, right string, sets []set, whole, adjacent, deviation rules.Key, plan *Share) {
	var spread, beside, off []pair
	for _, s := range sets {
		named := make([]at, len(s.values))
		for i, v := range s.values {
			named[i] = at{fmt.Sprintf("%s %d", one, i+1), v}
		}
		if s.last != "" && len(named) > 0 {
			named[len(named)-1].where = s.last
		}
		lo, hi := least(named), most(named)
		spread = append(spread, pair{s.where, hi, lo, hi.apart(lo.Share)})
		for i := 1; i < len(named); i++ {
			beside = append(beside, pair{s.where, named[i-1], named[i], named[i].apart(named[i-1].Share)})
		}
		planned := at{"the mean", Share{}}
		if plan != nil {
			planned = at{"the plan", *plan}
		} else if total, ok := sum(s.values); ok {
			planned.Share = Share{total.Total, total.Parts * len(s.values)}
		} else {
			continue
		}
		for _, n := range named {
			off = append(off, pair{s.where, n, planned, n.apart(planned.Share)})
		}
	}
	for _, c := range []struct {
		key   rules.Key
		pairs []pair
		alike string
	}{
		{whole, spread, "all " + one + "s alike"},
		{adjacent, beside, "neighbouring " + one + "s alike"},
		{deviation, off, "every " + one + " as planned"},
	} {
		l, ok := j.limit(c.key)
		if !ok || len(c.pairs) == 0 {
			continue
		}
		worst := slices.MaxFunc(c.pairs, func(p, q pair) int { return order(p.Share, q.Share) })
		found := fmt.Sprintf("%s and %s differ by %s%s", j.name(worst.a), j.name(worst.b), j.exactly(worst.MM()), worst.where)
		if worst.Total == 0 {
			found = c.alike
		}
		j.atMost(worst.Compare(l.Length), bound{limit: l, actual: mm(worst.MM()), found: found, right: right})
	}
}

func (j *judge) firstRiser() {
	j.stages("first riser", j.First, "an inspection before "+j.laid("lower")+" is laid finds it")
}

func (j *judge) lastRiser() {
	j.stages("last riser", j.Last, "an inspection before "+j.laid("upper")+" is laid finds it")
}

// laid names the flooring at an end of the flight: a floor's or, in a stairway of
// several flights, maybe a landing's.
func (j *judge) laid(end string) string {
	if j.Part != "" {
		return "the flooring"
	}
	return "the " + end + " floor"
}

// treadsOn is the stage at which a stair can be walked, and inspected, before
// its floors are laid.
const treadsOn = "treads on, floors to come"

// stages tells a riser at each stage of the work, and warns of every limit that
// it breaks while the floors are still to come: the stair is walked by then.
func (j *judge) stages(which string, stages []Stage, why string) {
	if len(stages) == 0 {
		return
	}
	var said, broken []string
	var by, kept []rules.Limit
	finished := stages[len(stages)-1]
	for _, s := range stages {
		said = append(said, j.exactly(s.Riser.MM())+" "+s.Name)
		if s.Name != treadsOn {
			continue
		}
		apart := s.Riser.apart(finished.Riser)
		differs := " by " + j.exactly(apart.MM()) + ", more than"
		for _, c := range []struct {
			key  rules.Key
			off  func(measure.Length) bool
			text string
		}{
			{rules.RiserVariation, func(l measure.Length) bool { return apart.Compare(l) > 0 }, "differs from the others" + differs},
			{rules.RiserMax, func(l measure.Length) bool { return s.Riser.Compare(l) > 0 }, "is higher than"},
			{rules.RiserMin, func(l measure.Length) bool { return s.Riser.Compare(l) < 0 }, "is lower than"},
			{rules.RiserVariationAdjacent, func(l measure.Length) bool { return apart.Compare(l) > 0 }, "differs from its neighbour" + differs},
			{rules.RiserDeviation, func(l measure.Length) bool { return apart.Compare(l) > 0 }, "differs from the plan" + differs},
		} {
			l, ok := j.limit(c.key)
			switch {
			case !ok:
			case c.off(l.Length):
				by, broken = append(by, l), append(broken, c.text+" "+j.limitText(l))
			case c.key == rules.RiserVariation:
				kept = append(kept, l)
			}
		}
	}
	text := which + ": " + strings.Join(said, "; ")
	if len(broken) == 0 {
		j.say(Pass, kept, nil, mm(finished.Riser.MM()), text)
		return
	}
	j.say(j.broken(), by, nil, mm(finished.Riser.MM()), text+"; till then it "+strings.Join(broken, ", ")+": "+why)
}
