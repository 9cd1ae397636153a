package asbuilt

import (
	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

// limitsOf gathers what a code asks of the risers of a flight: of each by
// itself, with the treads below and above it, and of all together.
func limitsOf(code *rules.Code, risers, treads []measure.Length) Limits {
	of := func(key rules.Key) (measure.Length, bool) {
		l, ok := code.Limit(key)
		return l.Length, ok
	}
	total, n := sum(risers), measure.Length(len(risers))
	l := Limits{Risers: make([]Range, n)}
	for k := range l.Risers {
		r := Range{Least: 1, Most: total} // a riser is more than nothing
		if least, ok := of(rules.RiserMin); ok {
			r.Least = max(r.Least, least)
		}
		if most, ok := of(rules.RiserMax); ok {
			r.Most = min(r.Most, most)
		}
		if off, ok := of(rules.RiserDeviation); ok { // from the mean, which no pad changes
			r.Least, r.Most = max(r.Least, ceil(total-n*off, n)), min(r.Most, floor(total+n*off, n))
		}
		for _, i := range [...]int{k - 1, k} { // the treads the riser ends and begins
			if i < 0 || i >= len(treads) {
				continue
			}
			if least, ok := of(rules.TwoRisePlusRunMin); ok {
				r.Least = max(r.Least, ceil(least-treads[i], 2))
			}
			if most, ok := of(rules.TwoRisePlusRunMax); ok {
				r.Most = min(r.Most, floor(most-treads[i], 2))
			}
		}
		l.Risers[k] = r
	}
	if spread, ok := of(rules.RiserVariation); ok {
		l.Spread = &spread
	}
	if adjacent, ok := of(rules.RiserVariationAdjacent); ok {
		l.Adjacent = &adjacent
	}
	return l
}
