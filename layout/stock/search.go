package stock

import (
	"cmp"
	"encoding/binary"
	"slices"
)

// search looks for the cheapest way to cut what is left, by depth first: it
// takes the largest item left, tries the patterns that hold it, the dearest for
// their worth last, and turns back where what has been spent and what the rest
// is worth reach the best plan known.
//
// Nothing is lost by looking only at patterns to which no item left could be
// added: an item may always be moved from a later board into an earlier one with
// space for it.
type search struct {
	d     *demand
	w     worth
	left  []int
	now   []pattern
	best  []pattern
	limit int64 // a plan must cost less, in units
	floor int64 // and cannot cost less than this
	steps int
	cut   bool             // something was left out for want of steps
	seen  map[string]int64 // what was spent, by what was left
	key   []byte
}

// mostSeen bounds what is remembered.
const mostSeen = 50_000

// run looks for a plan below limit. found is nil when it knows none, and
// complete tells whether there is none beyond what it found.
func (d *demand) search(w worth, counts []int, limit int64, steps int) (found []pattern, complete bool) {
	s := &search{d: d, w: w, left: slices.Clone(counts), limit: limit, steps: steps, seen: map[string]int64{}}
	s.floor = w.units(w.of(counts))
	s.from(0, w.of(counts))
	return s.best, !s.cut || s.limit <= s.floor
}

func (s *search) from(spent, value int64) {
	first := slices.IndexFunc(s.left, func(n int) bool { return n > 0 })
	if first < 0 {
		s.best, s.limit = slices.Clone(s.now), spent
		return
	}
	if s.done(spent, value) || s.known(spent) {
		return
	}
	for _, c := range s.choices(first, spent, value) {
		if s.limit <= s.floor || s.cut && s.steps <= 0 {
			return
		}
		cost := s.d.rooms[c.room].cost
		if s.done(spent+cost, value-c.value) {
			continue
		}
		for _, u := range c.uses {
			s.left[u.item] -= u.count
		}
		s.now = append(s.now, c.pattern)
		s.from(spent+cost, value-c.value)
		s.now = s.now[:len(s.now)-1]
		for _, u := range c.uses {
			s.left[u.item] += u.count
		}
	}
}

// done tells whether nothing better can come of what has been spent and what
// the rest is worth.
func (s *search) done(spent, value int64) bool { return spent+s.w.units(value) >= s.limit }

// known tells whether as much was left before, for no more spent.
func (s *search) known(spent int64) bool {
	s.key = s.key[:0]
	for _, n := range s.left {
		s.key = binary.AppendUvarint(s.key, uint64(n))
	}
	before, ok := s.seen[string(s.key)]
	if ok && before <= spent {
		return true
	}
	if ok || len(s.seen) < mostSeen {
		s.seen[string(s.key)] = spent
	}
	return false
}

// choice is a pattern, and what its items are worth.
type choice struct {
	pattern
	value int64
}

// choices are the patterns with the item, full as far as what is left goes, that
// are worth nearly what they cost.
func (s *search) choices(first int, spent, value int64) []choice {
	// A pattern may fall short of its cost by so much; then the plan would
	// cost the limit.
	short := (s.limit-1-spent)*s.w.per - value
	var all []choice
	for r, room := range s.d.rooms {
		if room.size < s.d.items[first].size {
			continue
		}
		e := enumeration{s: s, room: r, need: room.cost*s.w.per - short}
		e.ratio = s.ratios(first)
		e.from(first, room.size, 0, nil)
		all = append(all, e.all...)
	}
	slices.SortStableFunc(all, func(a, b choice) int {
		return cmp.Compare(s.d.rooms[a.room].cost*s.w.per-a.value, s.d.rooms[b.room].cost*s.w.per-b.value)
	})
	return all
}

// ratios are the most value per size from each item on, of what is left.
func (s *search) ratios(first int) []float64 {
	ratio := make([]float64, len(s.left)+1)
	for i := len(s.left) - 1; i >= first; i-- {
		ratio[i] = ratio[i+1]
		if s.left[i] > 0 {
			ratio[i] = max(ratio[i], float64(s.w.prices[i])/float64(s.d.items[i].size))
		}
	}
	return ratio
}

// enumeration lists the full patterns of one room.
type enumeration struct {
	s     *search
	room  int
	need  int64 // the least value
	ratio []float64
	all   []choice
}

// mostChoices bounds the patterns tried at one place.
const mostChoices = 2000

func (e *enumeration) from(i int, space, value int64, uses []use) {
	s := e.s
	for ; i < len(s.left) && (s.left[i] == 0 || s.d.items[i].size > space); i++ {
	}
	if i == len(s.left) {
		if value >= e.need && e.full(space, uses) {
			e.all = append(e.all, choice{pattern{e.room, slices.Clone(uses)}, value})
		}
		return
	}
	if value+int64(float64(space)*e.ratio[i]*slack)+1 < e.need {
		return
	}
	if s.steps <= 0 || len(e.all) >= mostChoices {
		s.cut = true
		return
	}
	s.steps--
	most := min(s.left[i], int(space/s.d.items[i].size))
	least := 0
	if len(uses) == 0 {
		least = 1 // the first item is in every pattern
	}
	for n := most; n >= least; n-- {
		now := uses
		if n > 0 {
			now = append(now, use{i, n})
		}
		e.from(i+1, space-int64(n)*s.d.items[i].size, value+int64(n)*s.w.prices[i], now)
	}
}

// full tells whether nothing left fits into the space.
func (e *enumeration) full(space int64, uses []use) bool {
	for i := len(e.s.left) - 1; i >= 0; i-- {
		n := e.s.left[i]
		if n > 0 && e.s.d.items[i].size <= space {
			for _, u := range uses {
				if u.item == i {
					n -= u.count
				}
			}
			if n > 0 {
				return false
			}
		}
	}
	return true
}
