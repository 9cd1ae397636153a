package stock

import "math/bits"

// worth is a price on each item such that no pattern's items are worth more
// than its room costs: whatever is left to be cut, it costs at least what it is
// worth. Prices are whole numbers, per of them a unit of cost, and that they are
// such has been shown in whole numbers.
type worth struct {
	prices []int64
	per    int64
}

// proveSteps bounds the proof for one room.
const proveSteps = 400_000

// prove turns prices into a worth: where the best pattern of a room, or what it
// could at most be, passes the room's cost, all prices are lowered in that
// proportion.
func prove(d *demand, values []int64, per int64, limits []int) worth {
	w := worth{prices: append([]int64(nil), values...), per: per}
	f := newFiller(d.items, values, limits)
	over, cost := int64(1), int64(1) // the worst proportion, value over cost
	for _, room := range d.rooms {
		c := room.cost * per
		_, _, value := f.fill(room.size, c, proveSteps)
		if value > c && more(value, c, over, cost) {
			over, cost = value, c
		}
	}
	if over > cost {
		for i, p := range w.prices {
			hi, lo := bits.Mul64(uint64(p), uint64(cost))
			q, _ := bits.Div64(hi, lo, uint64(over)) // hi < over, as p and cost are less than 2^41
			w.prices[i] = int64(q)
		}
	}
	return w
}

// more tells whether a/b is more than c/d.
func more(a, b, c, d int64) bool {
	h1, l1 := bits.Mul64(uint64(a), uint64(d))
	h2, l2 := bits.Mul64(uint64(c), uint64(b))
	return h1 > h2 || h1 == h2 && l1 > l2
}

// of is what so many of each item are worth.
func (w worth) of(counts []int) int64 {
	sum := int64(0)
	for i, n := range counts {
		sum += int64(n) * w.prices[i]
	}
	return sum
}

// units is the least whole cost that covers a worth.
func (w worth) units(value int64) int64 { return (value + w.per - 1) / w.per }
