package stock

import (
	"cmp"
	"slices"
)

// demand is an order in one dimension: sizes to be put into rooms. A size is a
// part's length and one kerf, a room the length between the trims and one kerf,
// so that sizes fit when their sum is no more than the room: the last part of a
// board needs no kerf.
type demand struct {
	items []item // the largest first, no two of one size
	rooms []room // small and cheap to large and dear
	unit  int64  // of the rooms' costs, in those of the order
}

// item is one size, and how often it is wanted.
type item struct {
	size  int64
	count int
}

// room is one stock length.
type room struct {
	size int64
	cost int64 // in units: the greatest measure that all costs are multiples of
}

// use is how often an item is in a pattern.
type use struct{ item, count int }

// pattern is one way to fill a room, items in order.
type pattern struct {
	room int
	uses []use
}

// packed is a pattern, and how many boards have it.
type packed struct {
	pattern
	boards int
}

// newDemand makes rooms of sizes and costs. A room for which a larger or equal
// one costs no more is dropped.
func newDemand(items []item, rooms []room) demand {
	d := demand{items: slices.Clone(items)}
	slices.SortFunc(d.items, func(a, b item) int { return cmp.Compare(b.size, a.size) })
	merged := d.items[:0]
	for _, it := range d.items {
		if n := len(merged); n > 0 && merged[n-1].size == it.size {
			merged[n-1].count += it.count
		} else if it.count > 0 {
			merged = append(merged, it)
		}
	}
	d.items = merged
	all := slices.Clone(rooms)
	slices.SortFunc(all, func(a, b room) int { return cmp.Or(cmp.Compare(b.size, a.size), cmp.Compare(a.cost, b.cost)) })
	for _, r := range all {
		if n := len(d.rooms); n == 0 || r.cost < d.rooms[n-1].cost {
			d.rooms = append(d.rooms, r)
		}
	}
	slices.Reverse(d.rooms)
	for _, r := range d.rooms {
		d.unit = divisor(r.cost, d.unit)
	}
	for i := range d.rooms {
		d.rooms[i].cost /= d.unit
	}
	return d
}

// divisor is the greatest common divisor.
func divisor(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// roomFor returns the cheapest room that holds a size; -1 when none does.
func (d *demand) roomFor(size int64) int {
	for i, r := range d.rooms {
		if r.size >= size {
			return i
		}
	}
	return -1
}

func (d *demand) sizeOf(uses []use) int64 {
	sum := int64(0)
	for _, u := range uses {
		sum += int64(u.count) * d.items[u.item].size
	}
	return sum
}

// cost of boards, in units.
func (d *demand) cost(all []packed) int64 {
	sum := int64(0)
	for _, p := range all {
		sum += int64(p.boards) * d.rooms[p.room].cost
	}
	return sum
}

func (d *demand) counts() []int {
	counts := make([]int, len(d.items))
	for i, it := range d.items {
		counts[i] = it.count
	}
	return counts
}

// part returns the demand for what is left of the counts, and which item of d
// each of its items is.
func (d *demand) part(left []int) (demand, []int) {
	rest := demand{rooms: d.rooms, unit: d.unit}
	var of []int
	for i, n := range left {
		if n > 0 {
			rest.items = append(rest.items, item{size: d.items[i].size, count: n})
			of = append(of, i)
		}
	}
	return rest, of
}

// renamed returns the patterns of a part of the demand as those of the whole.
func renamed(all []packed, of []int) []packed {
	out := make([]packed, len(all))
	for i, p := range all {
		out[i] = packed{pattern{room: p.room, uses: slices.Clone(p.uses)}, p.boards}
		for k := range out[i].uses {
			out[i].uses[k].item = of[out[i].uses[k].item]
		}
	}
	return out
}

// clipped returns the pattern as far as there is something left to be cut, in
// the cheapest room that holds it; no uses when nothing is.
func (d *demand) clipped(p pattern, left []int) pattern {
	var out pattern
	for _, u := range p.uses {
		if n := min(u.count, left[u.item]); n > 0 {
			out.uses = append(out.uses, use{u.item, n})
		}
	}
	if len(out.uses) > 0 {
		out.room = d.roomFor(d.sizeOf(out.uses))
	}
	return out
}
