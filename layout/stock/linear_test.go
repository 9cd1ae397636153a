package stock

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/optimize/convex/lp"
)

// TestLinear: the linear program's value and the bound shown from its prices are
// those that an independent solver, gonum's, gives with every pattern written
// out.
func TestLinear(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 60 {
		var items []item
		for range 2 + r.IntN(5) {
			items = append(items, item{size: 150 + r.Int64N(850), count: 1 + r.IntN(9)})
		}
		d := newDemand(items, []room{{size: 1000, cost: 10}, {size: 1400, cost: 13}, {size: 2000, cost: 21}})
		m := newMaster(&d)
		m.solve(mostRounds)
		values := make([]int64, len(d.items))
		per := m.scale(values)
		w := prove(&d, values, per, d.counts())
		got := float64(w.of(d.counts())) / float64(per)
		want := byGonum(t, &d)
		if math.Abs(got-want) > 1e-6*want {
			t.Errorf("%+v: %.9f, gonum says %.9f", d.items, got, want)
		}
	}
}

// byGonum writes out every pattern of every room, and solves.
func byGonum(t *testing.T, d *demand) float64 {
	var columns [][]int
	var costs []float64
	for _, room := range d.rooms {
		now := make([]int, len(d.items))
		var all func(i int, space int64)
		all = func(i int, space int64) {
			if i == len(d.items) {
				if space == room.size {
					return // nothing in it
				}
				columns = append(columns, append([]int(nil), now...))
				costs = append(costs, float64(room.cost))
				return
			}
			for n := 0; n <= d.items[i].count && int64(n)*d.items[i].size <= space; n++ {
				now[i] = n
				all(i+1, space-int64(n)*d.items[i].size)
			}
			now[i] = 0
		}
		all(0, room.size)
	}
	n := len(d.items)
	a := mat.NewDense(n, len(columns)+n, nil) // a surplus for each item
	b := make([]float64, n)
	for j, c := range columns {
		for i, v := range c {
			a.Set(i, j, float64(v))
		}
	}
	for i, it := range d.items {
		a.Set(i, len(columns)+i, -1)
		b[i] = float64(it.count)
	}
	value, _, err := lp.Simplex(append(costs, make([]float64, n)...), a, b, 1e-10, nil)
	if err != nil {
		t.Fatal(err)
	}
	return value
}

// TestFill: the best pattern is that of trying everything, and with too few
// steps what is said it could at most be is no less.
func TestFill(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 300 {
		n := 1 + r.IntN(6)
		items, values, limits := make([]item, n), make([]int64, n), make([]int, n)
		for i := range items {
			items[i].size = 1 + r.Int64N(40)
			values[i] = r.Int64N(50)
			limits[i] = r.IntN(4)
		}
		best := int64(0)
		var try func(i int, space, value int64)
		try = func(i int, space, value int64) {
			best = max(best, value)
			for k := 0; i < n && k <= limits[i] && int64(k)*items[i].size <= space; k++ {
				try(i+1, space-int64(k)*items[i].size, value+int64(k)*values[i])
			}
		}
		try(0, 100, 0)
		f := newFiller(items, values, limits)
		uses, value, most := f.fill(100, 0, 1<<30)
		sum := int64(0)
		for _, u := range uses {
			sum += int64(u.count) * values[u.item]
		}
		if value != best || most != best || sum != best {
			t.Fatalf("%v %v %v: %d (%d, at most %d); trying everything gives %d", items, values, limits, value, sum, most, best)
		}
		for steps := range 4 {
			if _, value, most := f.fill(100, 0, steps); value > best || most < best {
				t.Fatalf("%v %v %v in %d steps: %d, at most %d; right is %d", items, values, limits, steps, value, most, best)
			}
		}
	}
}
