package choose

import (
	"slices"

	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

// runStep is the fineness to which a run is chosen: nobody sets a square finer.
func (q Request) runStep() measure.Length {
	if q.Style.Units == measure.Metric {
		return measure.Millimetre
	}
	return measure.Inch / 16
}

// runs lists the unit runs worth considering for a riser count: the one given;
// or the tread board less its nosing, what fits the available run, what the two
// rules of thumb ask for, and the least the code allows. None is under the
// code's least or over its most.
func (q Request) runs(risers int) []measure.Length {
	if q.Run != nil {
		return []measure.Length{*q.Run}
	}
	step := q.runStep()
	down := func(l measure.Length) measure.Length { // to whole steps, toward less
		if rest := l % step; rest < 0 {
			return l - rest - step
		}
		return l - l%step
	}
	var all []measure.Length
	if q.BoardRun != nil {
		all = append(all, *q.BoardRun)
	}
	if n := measure.Length(q.treads(risers)); q.Available != nil && n > 0 {
		all = append(all, down((*q.Available-q.Front)/n))
	}
	rise := q.Rise / measure.Length(risers)
	// Between the runs the two rules ask for every run is as far from both
	// together: rounding stays between them, so that it decides nothing.
	one, other := twoRisesAndRun-2*rise, riseAndRun-rise
	all = append(all, down(max(one, other)), -down(-min(one, other)))
	least, most := q.runLimits()
	all = append(all, least)
	var kept []measure.Length
	for _, run := range all {
		kept = append(kept, min(max(run, least), most))
	}
	slices.Sort(kept)
	return slices.Compact(kept)
}

// The runs considered where a code sets no least or most. 8 in is less, and
// 15 in more, than any code in the data allows or rule of thumb asks for.
const (
	leastRun = 8 * measure.Inch
	mostRun  = 15 * measure.Inch
)

func (q Request) runLimits() (least, most measure.Length) {
	return q.limit(rules.RunMin, leastRun), q.limit(rules.RunMax, mostRun)
}

// limit is the code's length of that name, or what is taken where it has none.
func (q Request) limit(key rules.Key, otherwise measure.Length) measure.Length {
	if l, ok := q.Code.Limit(key); ok {
		return l.Length
	}
	return otherwise
}

// The unit rises between which counts are weighed where a code sets no least
// or most: at 5 in the rule 2R+T = 25 asks for a run of 15, at 9 1/2, the most
// of any code in the data (OSHA 1910.25), for one of 6.
const (
	leastRise = 5 * measure.Inch
	mostRise  = 9*measure.Inch + measure.Inch/2
)

// counts lists the riser counts to weigh: every one the code's limits of the
// rise allow, and the next on either side.
func (q Request) counts() []int {
	if q.Risers != nil {
		return []int{*q.Risers}
	}
	most, least := q.limit(rules.RiserMax, mostRise), q.limit(rules.RiserMin, leastRise)
	fewest := int((q.Rise + most - 1) / most) // the first count that is not too high
	greatest := int(q.Rise / least)           // the last that is not too low
	var all []int
	for n := max(1, q.Flights, fewest-1); n <= max(greatest+1, fewest) && n <= mostRisers; n++ {
		all = append(all, n)
	}
	return all
}

// mostRisers is more than any stairway has: what asks for more is a slip of the
// pen, such as metres for millimetres.
const mostRisers = 200
