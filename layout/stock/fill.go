package stock

import (
	"cmp"
	"slices"
)

// filler finds the pattern of most value: the knapsack problem, by depth first
// and a bound. Values are whole numbers.
type filler struct {
	place  map[int]int // of an item in order
	order  []int       // items worth something, the most for their size first
	ratio  []float64   // value per size, in that order
	size   []int64
	value  []int64
	limit  []int
	small  []int64 // the least size from here on
	steps  int     // left
	bound  int64   // that no pattern left out for want of steps can pass
	most   int64
	now    []use // places in order, and how many
	chosen []use
}

// slack covers what rounding takes from a product of two floating numbers.
const slack = 1 + 1e-12

// newFiller prepares for the values of items, each with a limit on its number.
func newFiller(items []item, values []int64, limits []int) *filler {
	f := &filler{place: map[int]int{}}
	for i := range items {
		if values[i] > 0 && limits[i] > 0 {
			f.order = append(f.order, i)
		}
	}
	ratio := func(i int) float64 { return float64(values[i]) / float64(items[i].size) }
	slices.SortFunc(f.order, func(a, b int) int { return cmp.Or(cmp.Compare(ratio(b), ratio(a)), cmp.Compare(a, b)) })
	n := len(f.order)
	f.ratio, f.size, f.value, f.limit = make([]float64, n), make([]int64, n), make([]int64, n), make([]int, n)
	f.small = make([]int64, n+1)
	f.small[n] = 1 << 62
	for k := n - 1; k >= 0; k-- {
		i := f.order[k]
		f.ratio[k], f.size[k], f.value[k], f.limit[k] = ratio(i), items[i].size, values[i], limits[i]
		f.place[i] = k
		f.small[k] = min(f.small[k+1], items[i].size)
	}
	return f
}

// limitTo sets how many there may be of an item.
func (f *filler) limitTo(item, n int) {
	if k, ok := f.place[item]; ok {
		f.limit[k] = n
	}
}

// fill returns the best pattern found for a room within a number of steps, of a
// value above floor; none if there is none. No pattern has a value above most.
func (f *filler) fill(room int64, floor int64, steps int) (uses []use, value, most int64) {
	f.steps, f.most, f.bound = steps, floor, floor
	f.now, f.chosen = f.now[:0], f.chosen[:0]
	f.from(0, room, 0)
	if f.most > floor {
		for _, u := range f.chosen {
			uses = append(uses, use{f.order[u.item], u.count})
		}
		slices.SortFunc(uses, func(a, b use) int { return a.item - b.item })
	}
	return uses, f.most, max(f.bound, f.most)
}

// upTo is a value that no filling of the space with items from k on passes.
func (f *filler) upTo(k int, space int64) int64 {
	if k == len(f.order) || space < f.small[k] {
		return 0
	}
	return int64(float64(space) * f.ratio[k] * slack)
}

func (f *filler) from(k int, space, value int64) {
	if value > f.most {
		f.most = value
		f.chosen = append(f.chosen[:0], f.now...)
	}
	for k < len(f.order) && space >= f.small[k] && (f.size[k] > space || f.limit[k] == 0) {
		k++
	}
	best := value + f.upTo(k, space)
	if best <= f.most {
		return
	}
	if f.steps <= 0 {
		f.bound = max(f.bound, best)
		return
	}
	f.steps--
	most := min(int64(f.limit[k]), space/f.size[k])
	for n := most; n >= 0; n-- {
		left, worth := space-n*f.size[k], value+n*f.value[k]
		if worth+f.upTo(k+1, left) <= f.most {
			continue
		}
		if n == 0 {
			f.from(k+1, left, worth)
			continue
		}
		f.now = append(f.now, use{k, int(n)})
		f.from(k+1, left, worth)
		f.now = f.now[:len(f.now)-1]
	}
}
