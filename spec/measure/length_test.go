package measure_test

import (
	"math"
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
