package stock

import (
	"cmp"
	"math"
	"slices"
)

// firstFit is first-fit decreasing: boards of the room first given, each filled
// with the largest that still fits; then each board is exchanged for the
// cheapest that holds what is cut from it. An item too large for the room opens
// the cheapest one that holds it.
func (d *demand) firstFit(opens int) []packed {
	left := d.counts()
	var all []packed
	for i := 0; i < len(left); {
		if left[i] == 0 {
			i++
			continue
		}
		r := max(opens, d.roomFor(d.items[i].size))
		p := d.filled(pattern{room: r}, left, i)
		p.room = d.roomFor(d.sizeOf(p.uses))
		all = append(all, d.take(p, left))
	}
	return all
}

// filled returns the pattern with as many of the largest items as still fit
// added, from an item on.
func (d *demand) filled(p pattern, left []int, from int) pattern {
	space := d.rooms[p.room].size - d.sizeOf(p.uses)
	have := map[int]int{}
	for _, u := range p.uses {
		have[u.item] = u.count
	}
	least := d.items[len(d.items)-1].size
	for i := from; i < len(left) && space >= least; i++ {
		if n := min(int64(left[i]-have[i]), space/d.items[i].size); n > 0 {
			have[i] += int(n)
			space -= n * d.items[i].size
		}
	}
	p.uses = nil
	for i, n := range have {
		p.uses = append(p.uses, use{i, n})
	}
	slices.SortFunc(p.uses, func(a, b use) int { return a.item - b.item })
	return p
}

// take cuts a pattern from as many boards as it can be, and lessens what is
// left.
func (d *demand) take(p pattern, left []int) packed {
	boards := math.MaxInt
	for _, u := range p.uses {
		boards = min(boards, left[u.item]/u.count)
	}
	for _, u := range p.uses {
		left[u.item] -= boards * u.count
	}
	return packed{p, boards}
}

// dive rounds the linear program's answer: whole boards of each pattern first,
// then, again and again, the pattern it wants most, with the program solved anew
// for what is left. kept is what it had taken at the first rounding.
func (d *demand) dive(start *master) (all, kept []packed) {
	left := d.counts()
	m := start
	rest, of := d.part(left)
	for len(rest.items) > 0 {
		if m == nil {
			m = newMaster(&rest)
			m.solve(diveRounds)
		}
		took := m.round(&rest)
		all = append(all, renamed(took, of)...)
		for _, p := range took {
			for _, u := range p.uses {
				left[of[u.item]] -= p.boards * u.count
			}
		}
		if kept == nil {
			kept = slices.Clone(all)
		}
		rest, of = d.part(left)
		m = nil
	}
	return all, kept
}

// diveRounds bounds the making of patterns for a rest.
const diveRounds = 40

// nearly is how near to the next whole number counts as it: 0.2 left smaller gaps
// than rounding down did, where both were tried.
const nearly = 0.2

// round takes the whole boards of the program's answer; one board of what it
// wants most where there are none.
func (m *master) round(d *demand) []packed {
	left := d.counts()
	order := make([]int, len(m.basis))
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(a, b int) int {
		return cmp.Or(cmp.Compare(m.x[b], m.x[a]), cmp.Compare(m.basis[a], m.basis[b]))
	})
	var took []packed
	for _, i := range order {
		boards := int(math.Floor(m.x[i] + nearly))
		p := m.pool[m.basis[i]]
		for _, u := range p.uses {
			boards = min(boards, left[u.item]/u.count)
		}
		if boards <= 0 {
			continue
		}
		for _, u := range p.uses {
			left[u.item] -= boards * u.count
		}
		took = append(took, packed{p, boards})
	}
	if took == nil {
		p := m.pool[m.basis[order[0]]]
		p = d.clipped(p, left)
		p = d.filled(p, left, 0)
		took = []packed{{p, 1}}
	}
	return took
}
