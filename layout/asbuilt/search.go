package asbuilt

import (
	"slices"

	"stepoff/spec/measure"
)

// search finds the pads for one lowest riser. Pads and changes are in whole
// steps; index k is riser k, or the tread on top of it, counted from 1, and 0
// and n are the floors.
type search struct {
	n        int
	risers   []measure.Length // from 1
	step     measure.Length
	adjacent *measure.Length

	// low and high bound how much riser k is changed: pad k less pad k-1.
	low, high []int
	// least and most bound the pads of every padding there is.
	least, most []int
	hope        work // of the least padding: no other costs less
}

// newSearch returns nil when no padding keeps the risers between the lowest and
// what the spread allows above it.
func newSearch(risers []measure.Length, limits Limits, lowest, step measure.Length) *search {
	n := len(risers)
	s := &search{
		n: n, risers: append([]measure.Length{0}, risers...), step: step, adjacent: limits.Adjacent,
		low: make([]int, n+1), high: make([]int, n+1), least: make([]int, n+1), most: make([]int, n+1),
	}
	for k := 1; k <= n; k++ {
		allowed := limits.Risers[k-1]
		allowed.Least = max(allowed.Least, lowest)
		if limits.Spread != nil {
			allowed.Most = min(allowed.Most, lowest+*limits.Spread)
		}
		s.low[k] = int(ceil(allowed.Least-s.risers[k], step))
		s.high[k] = int(floor(allowed.Most-s.risers[k], step))
		if s.low[k] > s.high[k] {
			return nil
		}
	}
	if !s.bound() {
		return nil
	}
	for k := 1; k < n; k++ {
		s.hope = s.hope.on(s.least[k])
	}
	return s
}

// bound finds the least and the most that every pad can be, and tells whether
// there is a padding at all.
//
// The limits are pad[k] >= pad[k-1] + low[k] and pad[k-1] >= pad[k] - high[k],
// with pads of 0 or more. Raising each pad as far as the first asks on the way
// up and as far as the second asks on the way down settles both: what a pad is
// raised by on the way down never breaks the first again, since low is not more
// than high. Nothing was raised further than it must be, so no padding has a
// thinner pad anywhere; a floor that had to be raised means that there is none.
// The most is the same the other way round.
func (s *search) bound() bool {
	for k := 1; k <= s.n; k++ {
		s.least[k] = max(0, s.least[k-1]+s.low[k])
		s.most[k] = s.most[k-1] + s.high[k]
	}
	if s.least[s.n] > 0 || s.most[s.n] < 0 {
		return false
	}
	s.most[s.n] = 0
	for k := s.n; k > 0; k-- {
		s.least[k-1] = max(s.least[k-1], s.least[k]-s.high[k])
		s.most[k-1] = min(s.most[k-1], s.most[k]-s.low[k])
	}
	return s.least[0] == 0 && s.most[0] >= 0
}

// best returns the padding that costs least; nil when there is none, or none
// that costs less than the one already found.
func (s *search) best(found *padding) *padding {
	if s.adjacent == nil {
		return &padding{slices.Clone(s.least), s.hope}
	}
	return s.walk(found)
}

// A state is a way to pad the treads up to one: how thick its own pad is and how
// the riser below it is changed, at the least cost, and the state of the tread
// below from which it came.
type state struct {
	pad, change int
	work        work
	below       int // index among the states of the tread below
}

// walk goes up the flight from the lower floor to the upper one and keeps, for
// every pad a tread may have and every change of the riser below it, the
// cheapest way there: that is all the next riser asks about. States that cannot
// end up cheaper than what is found already are dropped.
func (s *search) walk(found *padding) *padding {
	states := make([][]state, s.n+1)
	states[0] = []state{{}}
	for k := 1; k <= s.n; k++ {
		cheapest := map[[2]int]int{} // by pad and change, index into states[k]
		for below, from := range states[k-1] {
			for change := s.low[k]; change <= s.high[k]; change++ {
				pad := from.pad + change
				if pad < s.least[k] || pad > s.most[k] || k > 1 && !s.near(k, from.change, change) {
					continue
				}
				to := state{pad, change, from.work, below}
				if k < s.n {
					to.work = to.work.on(pad)
				}
				if found != nil && to.work.total+s.left(k) > found.work.total {
					continue
				}
				key := [2]int{pad, change}
				if at, there := cheapest[key]; !there {
					cheapest[key] = len(states[k])
					states[k] = append(states[k], to)
				} else if to.work.compare(states[k][at].work) < 0 {
					states[k][at] = to
				}
			}
		}
	}
	return s.cheapest(states, found)
}

// near tells whether riser k, changed, is as near to the one below it, changed
// too, as neighbours must be.
func (s *search) near(k, below, change int) bool {
	apart := s.risers[k] + measure.Length(change)*s.step - s.risers[k-1] - measure.Length(below)*s.step
	return apart.Abs() <= *s.adjacent
}

// left is the least total of the pads above tread k.
func (s *search) left(k int) int {
	total := 0
	for _, p := range s.least[k+1:] {
		total += p
	}
	return total
}

// cheapest traces the cheapest way to the upper floor back down.
func (s *search) cheapest(states [][]state, found *padding) *padding {
	var best *state
	for i := range states[s.n] {
		if end := &states[s.n][i]; best == nil || end.work.compare(best.work) < 0 {
			best = end
		}
	}
	if best == nil || found != nil && best.work.compare(found.work) >= 0 {
		return nil
	}
	out := &padding{make([]int, s.n+1), best.work}
	for k, at := s.n, best; k > 0; k-- {
		out.pads[k] = at.pad
		at = &states[k-1][at.below]
	}
	return out
}
