package asbuilt

import (
	"slices"

	"stepoff/spec/measure"
)

// Limits are what the risers of one flight must meet.
type Limits struct {
	// Risers holds what each riser by itself may be, from the bottom up.
	Risers []Range
	// Spread is what the highest may be more than the lowest, Adjacent what two
	// that follow each other may differ by; nil: no such limit.
	Spread, Adjacent *measure.Length
}

// Range is the least and the most, both allowed.
type Range struct{ Least, Most measure.Length }

func (r Range) holds(l measure.Length) bool { return r.Least <= l && l <= r.Most }

// Met tells whether risers are within the limits.
func (l Limits) Met(risers []measure.Length) bool {
	for k, r := range risers {
		if !l.Risers[k].holds(r) {
			return false
		}
		if l.Adjacent != nil && k > 0 && (r-risers[k-1]).Abs() > *l.Adjacent {
			return false
		}
	}
	return l.Spread == nil || slices.Max(risers)-slices.Min(risers) <= *l.Spread
}

// Padded returns the risers of a flight whose treads are padded: one pad a
// tread, 0 for none. A pad makes the riser below it higher and the one above it
// lower; the floors stay where they are.
func Padded(risers, pads []measure.Length) []measure.Length {
	out := slices.Clone(risers)
	for k, p := range pads {
		out[k] += p
		out[k+1] -= p
	}
	return out
}

// Pads returns the pads, one a tread in whole steps, that bring the risers
// within the limits with the least total thickness, and of those with the least
// total the ones on the fewest treads. ok is false when there are none.
//
// With p the pads and r the risers, the padded risers are r[k] + p[k] - p[k-1],
// and nothing is padded below the first tread and above the last. For a given
// lowest riser all limits but Adjacent bound differences of two pads that follow
// each other, so that there is one padding of which no pad can be thinner: see
// search.least. The lowest riser is one of the padded ones, a whole number of
// steps off one that was measured, and no less than the mean less the spread:
// few, and each is tried. Where neighbours are limited too that padding is only
// the least that can be hoped for, and search.best finds the right one above it.
func Pads(risers []measure.Length, limits Limits, step measure.Length) (pads []measure.Length, ok bool) {
	var searches []*search
	for _, lowest := range lowest(risers, limits, step) {
		if s := newSearch(risers, limits, lowest, step); s != nil {
			searches = append(searches, s)
		}
	}
	slices.SortStableFunc(searches, func(a, b *search) int { return a.hope.compare(b.hope) })
	var best *padding
	for _, s := range searches {
		if best != nil && s.hope.compare(best.work) >= 0 {
			break
		}
		if found := s.best(best); found != nil {
			best = found
		}
	}
	if best == nil {
		return nil, false
	}
	pads = make([]measure.Length, len(risers)-1)
	for k := range pads {
		pads[k] = measure.Length(best.pads[k+1]) * step
	}
	return pads, true
}

// work is what a padding costs: its total thickness in steps, then the number of
// treads that are padded.
type work struct{ total, treads int }

func (w work) compare(v work) int {
	if w.total != v.total {
		return w.total - v.total
	}
	return w.treads - v.treads
}

// on adds the pad of one more tread.
func (w work) on(pad int) work {
	if pad > 0 {
		return work{w.total + pad, w.treads + 1}
	}
	return w
}

// padding is a set of pads in steps: those of the treads from 1 up, with a 0 for
// each floor before and after them.
type padding struct {
	pads []int
	work work
}

// lowest returns every length that the lowest riser may have, padded; one that
// bounds nothing where the spread is not limited.
func lowest(risers []measure.Length, limits Limits, step measure.Length) []measure.Length {
	if limits.Spread == nil {
		return []measure.Length{noLowest}
	}
	total, n := measure.Length(0), measure.Length(len(risers))
	var rests []measure.Length
	for _, r := range risers {
		total += r
		rests = append(rests, r%step)
	}
	slices.Sort(rests)
	mean := total / n // rounded down: the lowest is no more than this
	least := max(1, ceil(total-n**limits.Spread, n))
	var all []measure.Length
	for _, rest := range slices.Compact(rests) {
		for l := rest + step*ceil(least-rest, step); l <= mean; l += step {
			all = append(all, l)
		}
	}
	return all
}

// noLowest is a lowest riser that bounds nothing.
const noLowest measure.Length = 0

// floor and ceil divide by a number that is more than 0.
func floor(a, b measure.Length) measure.Length {
	q := a / b
	if a%b < 0 {
		q--
	}
	return q
}

func ceil(a, b measure.Length) measure.Length { return -floor(-a, b) }
