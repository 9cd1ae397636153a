package exercise

import (
	"math/bits"
	"math/rand/v2"

	"stepoff/spec/measure"
)

// dice draws numbers. Only the generator's specified stream is used, not the
// library's ways of making numbers from it, which may change.
type dice struct{ stream *rand.PCG }

// newDice are the dice of one try at one problem of a set.
func newDice(seed uint64, problem, try int) dice {
	d := dice{rand.NewPCG(seed, uint64(problem)<<16|uint64(try))}
	d.stream.Uint64() // neighbouring seeds begin alike
	return d
}

// n is a number from 0 up to, but not, k: the upper half of a product, whose
// slight unevenness does not matter here.
func (d dice) n(k int) int {
	high, _ := bits.Mul64(d.stream.Uint64(), uint64(k))
	return int(high)
}

// from is a whole number of steps from low to high, both included.
func (d dice) from(low, high, step measure.Length) measure.Length {
	return low + step*measure.Length(d.n(int((high-low)/step)+1))
}

func one[T any](d dice, of ...T) T { return of[d.n(len(of))] }

// some are k of the things, in an order that is drawn too.
func some[T any](d dice, k int, of []T) []T {
	left := append([]T(nil), of...)
	var out []T
	for len(out) < k && len(left) > 0 {
		i := d.n(len(left))
		out = append(out, left[i])
		left = append(left[:i], left[i+1:]...)
	}
	return out
}
