package measure_test

import (
	"math"
	"math/big"
	"testing"

	"pgregory.net/rapid"

	"stepoff/spec/measure"
)

func TestFromMMTakesBackWhatMMGives(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := measure.Length(rapid.Int64Range(-int64(measure.Max), int64(measure.Max)).Draw(t, "nm"))
		if got, ok := measure.FromMM(l.MM()); !ok || got != l {
			t.Fatalf("%d nm is %v mm, which is %d nm, %v", l, l.MM(), got, ok)
		}
	})
}

// Held against exact rational arithmetic: a level is the total rise times k/n,
// whichever k, and the last is the total rise itself.
func TestPartsDoNotGatherError(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := measure.Length(rapid.Int64Range(1, int64(20*measure.Metre)).Draw(t, "nm"))
		n := rapid.IntRange(1, 200).Draw(t, "n")
		k := rapid.IntRange(0, n).Draw(t, "k")
		want, _ := new(big.Rat).SetFrac64(int64(l)*int64(k), int64(n)*int64(measure.Millimetre)).Float64()
		if got := l.PartMM(k, n); math.Abs(got-want) > 1e-11 { // two roundings below 20 000 mm
			t.Fatalf("%d/%d of %d nm = %v mm, want %v", k, n, l, got, want)
		}
		if got := l.PartMM(n, n); got != l.MM() {
			t.Fatalf("the whole of %d nm = %v mm, want %v", l, got, l.MM())
		}
	})
}

func TestNoNumberHasNoLength(t *testing.T) {
	for _, mm := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), 1e9} {
		if l, ok := measure.FromMM(mm); ok || l != 0 {
			t.Errorf("FromMM(%v) = %d, %v", mm, l, ok)
		}
	}
}

func TestSnapLeavesNoMinusZero(t *testing.T) {
	for got, want := range map[float64]float64{
		measure.SnapMM(-1e-9):            0,
		measure.SnapMM(1.23456789):       1.234568,
		measure.SnapDegrees(-1e-12):      0,
		measure.SnapDegrees(36.86989765): 36.86989765,
	} {
		if got != want || math.Signbit(got) != math.Signbit(want) {
			t.Errorf("snapped to %v, want %v", got, want)
		}
	}
}
