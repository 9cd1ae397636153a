package measure_test

import (
	"math"
	"strings"
	"testing"

	"stepoff/spec/measure"
)

// One psf is one lbf (4.448 221 615 260 5 N exactly: 0.453 592 37 kg times
// 9.806 65 m/s2) over one square foot (0.304 8 m exactly): the printed constant
// is that to ten figures.
func TestPSFIsAPoundForceOnASquareFoot(t *testing.T) {
	want := 0.45359237 * 9.80665 / (0.3048 * 0.3048)
	if math.Abs(measure.PSF-want) > 5e-9 {
		t.Errorf("PSF = %v, want %v", measure.PSF, want)
	}
}

func TestParsePressure(t *testing.T) {
	for text, want := range map[string]float64{
		"40 psf": 40 * measure.PSF, "40psf": 40 * measure.PSF, "12.5 psf": 12.5 * measure.PSF,
		"1.9 kPa": 1900, "0": 0, "0 psf": 0, "100 kPa": 100_000,
	} {
		if got, err := measure.ParsePressure(text); err != nil || math.Abs(got-want) > 1e-9 {
			t.Errorf("%q = %v Pa, %v; want %v", text, got, err, want)
		}
	}
	for _, text := range []string{"", "40", "psf", "-40 psf", "040 psf", "4e1 psf", "40 PSF", "40 lb", "40 kpa", "40 psf/ft", "1,9 kPa", ".5 kPa", "inf kPa"} {
		if got, err := measure.ParsePressure(text); err == nil || !strings.Contains(err.Error(), "40 psf or 1.9 kPa") {
			t.Errorf("%q = %v, %v; want an error with a right spelling", text, got, err)
		}
	}
	for _, text := range []string{"100.1 kPa", "3000 psf", strings.Repeat("9", 50) + " psf"} {
		if got, err := measure.ParsePressure(text); err == nil || !strings.Contains(err.Error(), "100 kPa") {
			t.Errorf("%q = %v, %v; want the bound", text, got, err)
		}
	}
}

func TestUnitsAndDenominators(t *testing.T) {
	for text, want := range map[string]measure.Units{"imperial": measure.Imperial, "metric": measure.Metric} {
		if got, err := measure.ParseUnits(text); err != nil || got != want || got.String() != text {
			t.Errorf("%q = %s, %v", text, got, err)
		}
	}
	for text, want := range map[string]int{"16": 16, "32": 32, "64": 64} {
		if got, err := measure.ParseDenominator(text); err != nil || got != want {
			t.Errorf("%q = %d, %v", text, got, err)
		}
	}
	for _, text := range []string{"", "Imperial", "mm", "8", "1/16", "016", "128"} {
		if _, err := measure.ParseUnits(text); err == nil || !strings.Contains(err.Error(), "imperial or metric") {
			t.Errorf("units %q: %v", text, err)
		}
		if _, err := measure.ParseDenominator(text); err == nil || !strings.Contains(err.Error(), "16, 32 or 64") {
			t.Errorf("denominator %q: %v", text, err)
		}
	}
}
