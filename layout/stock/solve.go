package stock

import "slices"

// DefaultEffort is the number of steps a search for a better plan may take.
const DefaultEffort = 200_000

// mostItems is how many different sizes the linear program takes; more of them
// are gathered into classes.
const mostItems = 120

// answer is a way to cut everything, and how good it is.
type answer struct {
	boards []packed
	cost   int64 // in units
	bound  int64
}

// solve finds a plan for a demand.
func (d *demand) solve(effort int) answer {
	var a answer
	if len(d.items) == 0 {
		return a
	}
	better := func(all []packed) {
		if cost := d.cost(all); a.boards == nil || cost < a.cost {
			a.boards, a.cost = all, cost
		}
	}
	for r := range d.rooms {
		better(d.firstFit(r))
	}
	if len(d.items) > mostItems {
		d.byClasses(&a, better)
		return a
	}
	m := newMaster(d)
	m.solve(mostRounds)
	values := make([]int64, len(d.items))
	per := m.scale(values)
	w := prove(d, values, per, d.counts())
	a.bound = w.units(w.of(d.counts()))
	if a.cost == a.bound {
		return a
	}
	all, kept := d.dive(m)
	better(all)
	// What the first rounding left, and then more and more of what it took, is
	// searched for the missing boards; at last everything.
	for _, keep := range [...]int{4, 3, 2, 1, 0} {
		if a.cost == a.bound {
			return a
		}
		left := d.counts()
		var stay []packed
		for _, p := range kept {
			if n := p.boards * keep / 4; n > 0 {
				stay = append(stay, packed{p.pattern, n})
				for _, u := range p.uses {
					left[u.item] -= n * u.count
				}
			}
		}
		steps := effort / 8
		if keep == 0 {
			steps = effort / 2
		}
		found, complete := d.search(w, left, a.cost-d.cost(stay), steps)
		if found != nil {
			for _, p := range found {
				stay = append(stay, packed{p, 1})
			}
			better(stay)
		}
		if keep == 0 && complete {
			a.bound = a.cost
		}
	}
	return a
}

// mostRounds bounds the making of patterns.
const mostRounds = 400

// byClasses plans for many different sizes. Sizes near each other are taken as
// one: as the least of them for the bound, as the largest for a plan.
func (d *demand) byClasses(a *answer, better func([]packed)) {
	classes := d.classes()
	small, large := d.classed(classes, true), d.classed(classes, false)
	m := newMaster(&small)
	m.solve(mostRounds)
	values := make([]int64, len(small.items))
	per := m.scale(values)
	w := prove(&small, values, per, small.counts())
	a.bound = w.units(w.of(small.counts()))
	if a.cost == a.bound {
		return
	}
	m = newMaster(&large)
	m.solve(mostRounds)
	all, _ := large.dive(m)
	better(d.unclassed(classes, all))
	prices, per := m.between(&large, d)
	w = prove(d, prices, per, d.counts())
	a.bound = max(a.bound, w.units(w.of(d.counts())))
	better(d.greedy(prices, per))
}

// between returns the program's prices for the sizes of another demand: a size
// between two of the program's has a price between theirs, on the straight line.
func (m *master) between(of, d *demand) (prices []int64, per int64) {
	values := make([]int64, len(of.items))
	per = m.scale(values)
	prices = make([]int64, len(d.items))
	k := 0
	for i, it := range d.items {
		for k < len(of.items) && of.items[k].size > it.size {
			k++ // the program's first size that is no larger
		}
		small, large := item{}, of.items[max(0, k-1)]
		low, high := int64(0), values[max(0, k-1)]
		if k < len(of.items) {
			small, low = of.items[k], values[k]
		}
		prices[i] = low
		if large.size > small.size {
			share := float64(it.size-small.size) / float64(large.size-small.size)
			prices[i] += int64(float64(share * float64(high-low)))
		}
	}
	return prices, per
}

// classes parts the items, which stand in order, into mostItems runs.
func (d *demand) classes() [][]int {
	n := len(d.items)
	classes := make([][]int, mostItems)
	for c := range classes {
		for i := c * n / mostItems; i < (c+1)*n/mostItems; i++ {
			classes[c] = append(classes[c], i)
		}
	}
	return classes
}

// classed is the demand with each class's items as the least or the largest of
// them.
func (d *demand) classed(classes [][]int, least bool) demand {
	out := demand{rooms: d.rooms, unit: d.unit}
	for _, of := range classes {
		size, count := d.items[of[0]].size, 0
		if least {
			size = d.items[of[len(of)-1]].size
		}
		for _, i := range of {
			count += d.items[i].count
		}
		out.items = append(out.items, item{size, count})
	}
	return out
}

// unclassed puts items in the places of their classes, the largest first, and
// exchanges each board for the cheapest that holds them.
func (d *demand) unclassed(classes [][]int, all []packed) []packed {
	left := d.counts()
	var out []packed
	for _, p := range all {
		for range p.boards {
			var q pattern
			for _, u := range p.uses {
				for need, k := u.count, 0; need > 0; k++ {
					i := classes[u.item][k]
					if n := min(need, left[i]); n > 0 {
						q.uses = append(q.uses, use{i, n})
						left[i] -= n
						need -= n
					}
				}
			}
			q.room = d.roomFor(d.sizeOf(q.uses))
			out = append(out, packed{q, 1})
		}
	}
	return out
}

// greedy fills one board after the other, each with what is worth most for its
// cost at the given prices.
func (d *demand) greedy(prices []int64, per int64) []packed {
	left := d.counts()
	open := len(left) // items of which some are left
	var f *filler
	known := 0 // how many items f was made with
	var all []packed
	for open > 0 {
		if f == nil || 2*open < known {
			f, known = newFiller(d.items, prices, left), open
		}
		var best pattern
		var gain int64
		for r, room := range d.rooms {
			uses, value, _ := f.fill(room.size, 0, greedySteps)
			if uses == nil {
				continue
			}
			if surplus := value - room.cost*per; best.uses == nil || surplus > gain {
				best, gain = pattern{r, uses}, surplus
			}
		}
		if best.uses == nil { // only what has no price is left
			i := slices.IndexFunc(left, func(n int) bool { return n > 0 })
			best = pattern{room: d.roomFor(d.items[i].size), uses: []use{{i, 1}}}
		}
		best = d.filled(best, left, 0)
		best.room = d.roomFor(d.sizeOf(best.uses))
		all = append(all, d.take(best, left))
		for _, u := range best.uses {
			f.limitTo(u.item, left[u.item])
			if left[u.item] == 0 {
				open--
			}
		}
	}
	return all
}

// greedySteps bounds the filling of one board.
const greedySteps = 300
