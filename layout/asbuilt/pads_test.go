package asbuilt_test

import (
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"stepoff/layout/asbuilt"
	"stepoff/spec/measure"
)

const sixteenth = measure.Inch / 16

// anyway is what one riser may be by itself where no code says.
var anyway = asbuilt.Range{Least: 1, Most: measure.Metre}

func limits(n int, each asbuilt.Range, spread, adjacent *measure.Length) asbuilt.Limits {
	return asbuilt.Limits{Risers: slices.Repeat([]asbuilt.Range{each}, n), Spread: spread, Adjacent: adjacent}
}

func at(l measure.Length) *measure.Length { return &l }

func work(pads []measure.Length) (total measure.Length, treads int) {
	for _, p := range pads {
		total += p
		if p > 0 {
			treads++
		}
	}
	return total, treads
}

// bruteForce goes through every padding of whole steps there is: a pad on tread
// k is less than the total rise, or a riser above it would be nothing. It
// returns the least total, and the fewest treads with that total.
func bruteForce(risers []measure.Length, l asbuilt.Limits, step measure.Length) (total measure.Length, treads int, ok bool) {
	rise := measure.Length(0)
	for _, r := range risers {
		rise += r
	}
	pads := make([]measure.Length, len(risers)-1)
	var next func(k int)
	next = func(k int) {
		if k < len(pads) {
			for pads[k] = 0; pads[k] <= rise; pads[k] += step {
				next(k + 1)
			}
			pads[k] = 0
			return
		}
		if !l.Met(asbuilt.Padded(risers, pads)) {
			return
		}
		if sum, n := work(pads); !ok || sum < total || sum == total && n < treads {
			total, treads, ok = sum, n, true
		}
	}
	next(0)
	return total, treads, ok
}

// small draws a flight small enough to try every padding: risers of a few steps
// of 4, not all whole ones.
func small(t *rapid.T, adjacent bool) (risers []measure.Length, l asbuilt.Limits) {
	n := rapid.IntRange(1, 4).Draw(t, "risers")
	if n == 4 {
		risers = lengths(t, n, 3, 18)
	} else {
		risers = lengths(t, n, 3, 40)
	}
	each := asbuilt.Range{Least: measure.Length(rapid.IntRange(1, 12).Draw(t, "least"))}
	each.Most = each.Least + measure.Length(rapid.IntRange(0, 40).Draw(t, "most"))
	l = limits(n, each, nil, nil)
	if rapid.Bool().Draw(t, "each its own") {
		for k := range l.Risers {
			l.Risers[k].Most += measure.Length(rapid.IntRange(-3, 3).Draw(t, "more"))
		}
	}
	if rapid.Bool().Draw(t, "a spread") {
		l.Spread = at(measure.Length(rapid.IntRange(0, 14).Draw(t, "spread")))
	}
	if adjacent {
		l.Adjacent = at(measure.Length(rapid.IntRange(0, 9).Draw(t, "adjacent")))
	}
	return risers, l
}

func lengths(t *rapid.T, n, least, most int) []measure.Length {
	var all []measure.Length
	for range n {
		all = append(all, measure.Length(rapid.IntRange(least, most).Draw(t, "riser")))
	}
	return all
}

// No padding has less total thickness, nor as little on fewer treads; where no
// padding is found there is none. Held against trying every one.
func TestPadsAreTheLeastByBruteForce(t *testing.T) {
	const step = 4
	for name, adjacent := range map[string]bool{"spread": false, "neighbours": true} {
		t.Run(name, rapid.MakeCheck(func(t *rapid.T) {
			risers, l := small(t, adjacent)
			pads, ok := asbuilt.Pads(risers, l, step)
			total, treads, there := bruteForce(risers, l, step)
			if ok != there {
				t.Fatalf("%v under %+v: a padding is found: %t; there is one: %t", risers, l, ok, there)
			}
			if !ok {
				return
			}
			if !l.Met(asbuilt.Padded(risers, pads)) {
				t.Fatalf("%v under %+v: pads %v break the limits", risers, l, pads)
			}
			if sum, n := work(pads); sum != total || n != treads {
				t.Fatalf("%v under %+v: pads %v come to %d on %d treads; %d on %d are enough", risers, l, pads, sum, n, total, treads)
			}
		}))
	}
}

// Stairs of a usual size: what is found is within the limits, in whole steps,
// and taking one step off any pad breaks a limit or the padding was not least.
func TestPadsOfUsualStairs(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(2, 20).Draw(t, "risers")
		var risers []measure.Length
		for range n {
			risers = append(risers, 7*measure.Inch+sixteenth/4*measure.Length(rapid.IntRange(-30, 40).Draw(t, "riser")))
		}
		l := limits(n, asbuilt.Range{Least: 4 * measure.Inch, Most: 8 * measure.Inch}, at(3*measure.Inch/8), nil)
		if rapid.Bool().Draw(t, "neighbours") {
			l.Adjacent = at(5 * measure.Millimetre)
		}
		pads, ok := asbuilt.Pads(risers, l, sixteenth)
		if !ok {
			return
		}
		if len(pads) != n-1 || !l.Met(asbuilt.Padded(risers, pads)) {
			t.Fatalf("%v: pads %v break the limits", risers, pads)
		}
		for k, p := range pads {
			if p < 0 || p%sixteenth != 0 {
				t.Fatalf("%v: pad %d is %d", risers, k+1, p)
			}
			if p == 0 {
				continue
			}
			thinner := slices.Clone(pads)
			thinner[k] -= sixteenth
			if l.Met(asbuilt.Padded(risers, thinner)) {
				t.Fatalf("%v: pads %v are more than is needed on tread %d", risers, pads, k+1)
			}
		}
	})
}

// Nothing is padded where the risers are within the limits already.
func TestNoPadsWhereNoneAreNeeded(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		risers, l := small(t, rapid.Bool().Draw(t, "neighbours"))
		pads, ok := asbuilt.Pads(risers, l, 4)
		total, _ := work(pads)
		if met := l.Met(risers); met != (ok && total == 0) {
			t.Fatalf("%v under %+v: met %t, pads %v", risers, l, met, pads)
		}
	})
}

// Cases worked by hand.
func TestPadsByHand(t *testing.T) {
	in := func(sixteenths ...measure.Length) []measure.Length {
		var ls []measure.Length
		for _, s := range sixteenths {
			ls = append(ls, s*sixteenth)
		}
		return ls
	}
	three8 := at(6 * sixteenth)
	for _, c := range []struct {
		name   string
		risers []measure.Length
		l      asbuilt.Limits
		want   []measure.Length // nil: none
	}{
		{"bottom riser 3/4 low: one pad of 3/8", in(108, 120, 120, 120), limits(4, anyway, three8, nil), in(6, 0, 0)},
		{"a riser 3/4 low half way: 3/8 of it on its own tread", in(120, 108, 120, 120), limits(4, anyway, three8, nil), in(0, 6, 0)},
		{"top riser 3/4 low: every tread would have to come down", in(120, 120, 120, 108), limits(4, anyway, three8, nil), nil},
		{"top riser 3/4 high: raised over two treads", in(120, 120, 120, 132), limits(4, anyway, three8, nil), in(0, 0, 6)},
		{"one riser", in(120), limits(1, anyway, three8, nil), []measure.Length{}},
		{"one riser too high", in(120), limits(1, asbuilt.Range{Least: 1, Most: 119 * sixteenth}, nil, nil), nil},
		// -4, -3, -2, -2, -1 sixteenths is the quickest way to lose 12 that climbs back one at a time.
		{"neighbours within 1/16: a ramp of pads", in(108, 120, 120, 120, 120, 120, 120), limits(7, anyway, nil, at(1*sixteenth)), in(8, 5, 3, 1, 0, 0)},
	} {
		pads, ok := asbuilt.Pads(c.risers, c.l, sixteenth)
		if ok != (c.want != nil) {
			t.Errorf("%s: %v", c.name, pads)
			continue
		}
		if diff := cmp.Diff(c.want, pads); ok && diff != "" {
			t.Errorf("%s: want -, got +:\n%s", c.name, diff)
		}
	}
}

// The worst there is to search: many risers, each off by its own part of a step,
// neighbours limited, and no padding at all.
func BenchmarkPads(b *testing.B) {
	for _, c := range []struct {
		name     string
		adjacent *measure.Length
	}{{"spread", nil}, {"neighbours", at(5 * measure.Millimetre)}} {
		b.Run(c.name, func(b *testing.B) {
			var risers []measure.Length
			for k := range 18 {
				risers = append(risers, 185*measure.Millimetre+measure.Length(k*37%11)*measure.Millimetre/11)
			}
			risers[0] += 10 * measure.Millimetre
			l := limits(18, asbuilt.Range{Least: 125 * measure.Millimetre, Most: 200 * measure.Millimetre}, at(10*measure.Millimetre), c.adjacent)
			for b.Loop() {
				asbuilt.Pads(risers, l, measure.Millimetre)
			}
		})
	}
}
