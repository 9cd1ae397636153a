package report

import (
	"errors"
	"math"
	"strconv"

	"stepoff/spec/measure"
)

// mm is a length in the JSON: millimetres to the nanometre, never -0, never
// with an exponent.
type mm float64

// MarshalJSON implements json.Marshaler.
func (v mm) MarshalJSON() ([]byte, error) { return number(measure.SnapMM(float64(v))) }

// deg is an angle in the JSON: degrees to 1e-9.
type deg float64

// MarshalJSON implements json.Marshaler.
func (v deg) MarshalJSON() ([]byte, error) { return number(measure.SnapDegrees(float64(v))) }

var errNotANumber = errors.New("a figure of this stair is not a number")

func number(v float64) ([]byte, error) {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return nil, errNotANumber
	}
	return strconv.AppendFloat(nil, v, 'f', -1, 64), nil
}

func degrees(rad float64) deg { return deg(rad * 180 / math.Pi) }

func mms(vs []float64) []mm {
	out := make([]mm, len(vs))
	for i, v := range vs {
		out[i] = mm(v)
	}
	return out
}

// maybe is for figures that are left out where they do not apply.
func maybe(v *float64) *mm {
	if v == nil {
		return nil
	}
	m := mm(*v)
	return &m
}
