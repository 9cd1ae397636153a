package stock

import "math"

// master is the linear program over patterns: so much of each that every item
// is cut as often as it is wanted, at least cost. It is solved by the revised
// simplex method with a dense inverse of the basis; only patterns that some
// price makes worth while ever come into it.
//
// Products are rounded by themselves (float64(a*b)), for processors that would
// fuse them with the sum that follows: the same patterns everywhere.
type master struct {
	d     *demand
	limit []int // on each item in one pattern
	pool  []pattern
	basis []int       // into pool, one a row
	inv   [][]float64 // the basis' inverse
	x     []float64   // how much of each pattern of the basis
	want  []float64
	price []float64 // of each item
	since int       // pivots since the inverse was made anew
}

const (
	// tiny is a number taken for 0: sums of a few hundred products of numbers
	// of about 1 are good to 1e-13.
	tiny = 1e-9
	// afresh is after how many pivots the inverse is made anew.
	afresh = 64
	// jitter sets the wants apart, so that the method does not go round in
	// circles among equals. The bound is not made from these wants.
	jitter = 1e-7
)

func newMaster(d *demand) *master {
	m := &master{d: d, limit: d.counts(), price: make([]float64, len(d.items))}
	for i, it := range d.items {
		// The start: each item alone, in the room that is cheapest for one.
		best := pattern{room: -1}
		least := math.Inf(1)
		for r, room := range d.rooms {
			n := min(int64(it.count), room.size/it.size)
			if n == 0 {
				continue
			}
			if each := float64(room.cost) / float64(n); each < least {
				least, best = each, pattern{room: r, uses: []use{{i, int(n)}}}
			}
		}
		m.pool = append(m.pool, best)
		m.basis = append(m.basis, i)
		m.want = append(m.want, float64(it.count)+float64(jitter*float64(i+1)))
	}
	m.invert()
	return m
}

// invert makes the basis' inverse anew, by elimination; false when the basis
// has none that can be told from rounding.
func (m *master) invert() bool {
	n := len(m.basis)
	a := make([][]float64, n) // basis beside the unit matrix
	for i := range a {
		a[i] = make([]float64, 2*n)
		a[i][n+i] = 1
	}
	for k, p := range m.basis {
		for _, u := range m.pool[p].uses {
			a[u.item][k] = float64(u.count)
		}
	}
	for k := range n {
		pivot := k
		for i := k + 1; i < n; i++ {
			if math.Abs(a[i][k]) > math.Abs(a[pivot][k]) {
				pivot = i
			}
		}
		if math.Abs(a[pivot][k]) < tiny {
			return false
		}
		a[k], a[pivot] = a[pivot], a[k]
		by := a[k][k]
		for j := range a[k] {
			a[k][j] /= by
		}
		for i := range n {
			if f := a[i][k]; i != k && f != 0 {
				for j := k; j < 2*n; j++ {
					a[i][j] -= float64(f * a[k][j])
				}
			}
		}
	}
	m.inv = make([][]float64, n)
	for i := range m.inv {
		m.inv[i] = a[i][n:]
	}
	m.x = make([]float64, n)
	for i := range m.x {
		for j, w := range m.want {
			m.x[i] += float64(m.inv[i][j] * w)
		}
	}
	m.since = 0
	return true
}

// prices works out what each item is worth.
func (m *master) prices() {
	clear(m.price)
	for i, p := range m.basis {
		cost := float64(m.d.rooms[m.pool[p].room].cost)
		for j, v := range m.inv[i] {
			m.price[j] += float64(cost * v)
		}
	}
}

// saving is how much cheaper than its parts' prices a pattern is.
func (m *master) saving(p pattern) float64 {
	worth := 0.0
	for _, u := range p.uses {
		worth += float64(float64(u.count) * m.price[u.item])
	}
	return worth - float64(m.d.rooms[p.room].cost)
}

// enter brings a pattern of the pool into the basis, and returns which row it
// takes; -1 when it cannot.
func (m *master) enter(p int) int {
	n := len(m.basis)
	column := make([]float64, n)
	for i := range column {
		for _, u := range m.pool[p].uses {
			column[i] += float64(float64(u.count) * m.inv[i][u.item])
		}
	}
	leaves, least := -1, math.Inf(1)
	for i, c := range column {
		if c <= tiny {
			continue
		}
		if t := math.Max(0, m.x[i]) / c; t < least {
			leaves, least = i, t
		}
	}
	if leaves < 0 {
		return -1
	}
	by := column[leaves]
	row := m.inv[leaves]
	for j := range row {
		row[j] /= by
	}
	for i := range m.inv {
		if c := column[i]; i != leaves && c != 0 {
			for j, v := range row {
				m.inv[i][j] -= float64(c * v)
			}
			m.x[i] -= float64(c * least)
		}
	}
	m.x[leaves] = least
	m.basis[leaves] = p
	if m.since++; m.since >= afresh && !m.invert() {
		return -1
	}
	return leaves
}

// settle runs the method over the patterns of the pool.
func (m *master) settle() bool {
	m.prices()
	for range 20*len(m.basis) + 200 {
		best, most := -1, tiny*float64(m.d.rooms[len(m.d.rooms)-1].cost)
		for p := range m.pool {
			if s := m.saving(m.pool[p]); s > most {
				best, most = p, s
			}
		}
		if best < 0 {
			return true
		}
		row := m.enter(best)
		if row < 0 {
			return false
		}
		if m.since == 0 {
			m.prices()
			continue
		}
		for j, v := range m.inv[row] {
			m.price[j] -= float64(most * v)
		}
	}
	return false
}

// solve makes patterns until none is worth bringing in, or a number of rounds
// has passed. What is left is good for a bound in any case.
func (m *master) solve(rounds int) {
	values := make([]int64, len(m.price))
	for range rounds {
		if !m.settle() {
			return
		}
		per := m.scale(values)
		f := newFiller(m.d.items, values, m.limit)
		grew := false
		for r, room := range m.d.rooms {
			floor := room.cost*per + per/1_000_000_000 + 1
			if uses, _, _ := f.fill(room.size, floor, priceSteps); uses != nil {
				m.pool = append(m.pool, pattern{room: r, uses: uses})
				grew = true
			}
		}
		if !grew {
			return
		}
	}
}

// priceSteps bounds the making of one pattern.
const priceSteps = 20_000

// scale turns the prices into whole numbers, per of them for a unit of cost:
// rounded down, none below 0.
func (m *master) scale(values []int64) (per int64) {
	per = m.d.scale()
	for i, p := range m.price {
		values[i] = 0
		if v := math.Floor(float64(p * float64(per))); v > 0 {
			values[i] = int64(min(v, most))
		}
	}
	return per
}

// most bounds a board's cost in the finer whole numbers: with MostParts boards
// the sum stays within an int64.
const most = 1 << 40

// scale is how many of the finer whole numbers stand for a unit of cost.
func (d *demand) scale() int64 {
	return max(1, most/d.rooms[len(d.rooms)-1].cost)
}
