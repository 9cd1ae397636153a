package measure

import "math"

// Length is a signed distance in whole nanometres.
//
// One inch is exactly 25 400 000 nm, so every fraction on a tape down to 1/64
// and every metric length are whole numbers: comparing with == is right, the
// zero value is no length at all, and a Length may key a map.
//
// Exact: addition, subtraction, multiplying by a whole number, negation,
// parsing of everything but decimals finer than a nanometre. Not exact: MM and
// In (float64), FromMM, PartMM, Round and Nearest, which say what they round
// to. Lengths read from a file are bounded by Max, so sums and products of the
// sizes a stair has cannot overflow.
type Length int64

// The units a length is built from, and the largest length that is read.
const (
	Nanometre  Length = 1
	Millimetre Length = 1_000_000
	Centimetre Length = 10 * Millimetre
	Metre      Length = 1000 * Millimetre
	Inch       Length = 25_400_000 // exact: international inch, 25.4 mm
	Foot       Length = 12 * Inch

	// Max bounds what is read: one kilometre. Ten thousand of them still fit
	// an int64 of nanometres nearly a thousand times over.
	Max Length = 1000 * Metre
)

// MM returns the length in millimetres. The nearest float64: within 1e-10 mm
// for anything up to Max.
func (l Length) MM() float64 { return float64(l) / float64(Millimetre) }

// In returns the length in inches, as the nearest float64.
func (l Length) In() float64 { return float64(l) / float64(Inch) }

// Abs returns the length without its sign.
func (l Length) Abs() Length {
	if l < 0 {
		return -l
	}
	return l
}

// FromMM returns the length nearest to a computed number of millimetres,
// rounded to the nanometre. Not-a-number and anything beyond Max have no
// length: ok is false and the length 0.
func FromMM(mm float64) (l Length, ok bool) {
	nm := math.Round(mm * float64(Millimetre))
	if !(math.Abs(nm) <= float64(Max)) {
		return 0, false
	}
	return Length(nm), true
}

// PartMM returns k/n of the length in millimetres: exactly l.MM() when k = n,
// otherwise the nearest float64 but for two roundings. The product is a whole
// number of nanometres, so that nothing gathers from one part to the next. n is
// not 0, and k times the length is less than nine thousand kilometres.
func (l Length) PartMM(k, n int) float64 {
	return float64(int64(l)*int64(k)) / float64(n) / float64(Millimetre)
}

// SnapMM rounds a number of millimetres to the nanometre (six decimals) and
// turns -0 into 0. Every writer passes its numbers through here: below a
// nanometre two processors may differ in the last bit of a sum.
func SnapMM(mm float64) float64 { return snap(mm, 1e6) }

// SnapDegrees rounds an angle in degrees to 1e-9 and turns -0 into 0, for the
// same reason as SnapMM.
func SnapDegrees(deg float64) float64 { return snap(deg, 1e9) }

func snap(v, per float64) float64 {
	r := math.Round(v*per) / per
	if r == 0 {
		return 0 // not -0
	}
	return r
}
