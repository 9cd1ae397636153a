package strength

import (
	"cmp"
	"math"
)

// Member is a stringer of one section over its supports. Loads in N/mm of the
// horizontal projection.
type Member struct {
	Section Section
	Beam    Beam
	Live    float64
	Dead    float64
	Over    float64 // allowed deflection under the live load: span over this
	Usual   float64 // the live load deflection is looked at under, where Live is a multiple of it; 0: Live
	Point   float64 // N in the middle of any span that it has to bear too, without the live load; 0: none
}

// Verdict is how near a member comes to what it may bear: of each ratio 1 is all
// of it.
type Verdict struct {
	Bending, AllowedBending, BendingRatio float64
	Shear, AllowedShear, ShearRatio       float64
	Deflection, DeflectionRatio           float64   // plumb, under the live load
	TotalDeflection                       float64   // with the dead load, in the same span
	SpotRatio                             float64   // in bending, under Point; 0: there is none
	Reactions                             []float64 // N, one a support, as it runs through or apart
	Uplift                                []float64 // N with which it lifts off each support as it runs through; 0: it stands on it
	Moment, Force                         float64   // N mm, N square to the member
}

// Ratio is the greatest of them.
func (v Verdict) Ratio() float64 {
	return max(v.BendingRatio, v.ShearRatio, v.DeflectionRatio, v.SpotRatio)
}

// Holds tells whether no ratio is more than 1, but for rounding.
func (v Verdict) Holds() bool { return v.Ratio() <= 1+rounding }

// rounding is what a ratio may be over 1 where it was added up in another order:
// a member made exactly as strong as it must be holds.
const rounding = 1e-9

// Judge holds the member against its load: as it runs through over its supports,
// and as one span after another, whichever is worse. A stringer may be cut over
// a prop, and the live load may stand on one span alone; for bending and
// deflection a simple span is then never less than what comes of it.
func (m Member) Judge() Verdict {
	total := m.Live + m.Dead
	through, apart := m.Beam.Through(total), m.Beam.Apart(total)
	v := Verdict{Moment: math.Max(through.Moment, apart.Moment), Force: math.Max(through.Shear, apart.Shear)}
	for i, r := range through.Reactions {
		v.Reactions = append(v.Reactions, math.Max(r, apart.Reactions[i]))
		v.Uplift = append(v.Uplift, math.Max(0, -r))
	}
	v.Bending, v.AllowedBending, v.BendingRatio = m.Section.Bending(v.Moment)
	v.Shear, v.AllowedShear, v.ShearRatio = m.Section.Shear(v.Force)
	live, sagging := m.Beam.Apart(m.usual()), m.Beam.Apart(m.usual()+m.Dead)
	ei := m.Section.EI()
	v.Deflection = live.Sag / ei
	if live.SagSpan > 0 {
		v.DeflectionRatio = v.Deflection * m.Over / live.SagSpan
	}
	v.TotalDeflection = sagging.Sag / ei
	if m.Point > 0 {
		_, v.SpotRatio = m.WithPoint(m.Point)
	}
	return v
}

// usual is the live load that is there day by day: how much a stair bends matters
// under it, not under the multiple of it that a code asks strength for.
func (m Member) usual() float64 {
	return cmp.Or(m.Usual, m.Live)
}

// WithPoint is the bending ratio of the longest span under a point load in its
// middle, N, and the dead load, without the live load.
func (m Member) WithPoint(point float64) (stress, ratio float64) {
	l := m.LongestSpan()
	stress, _, ratio = m.Section.Bending(point*l/4 + m.Dead*l*l/8)
	return stress, ratio
}

// LongestSpan is the longest level distance between neighbouring supports.
func (m Member) LongestSpan() float64 {
	longest := 0.0
	for i := range len(m.Beam.At) - 1 {
		longest = math.Max(longest, m.Beam.At[i+1]-m.Beam.At[i])
	}
	return longest
}

// Limit is the longest level span of a simple beam by each measure; Spot is
// infinite where no point load has to be borne.
type Limit struct{ Bending, Shear, Deflection, Spot float64 }

// Least is the one that decides.
func (l Limit) Least() float64 { return min(l.Bending, l.Shear, l.Deflection, l.Spot) }

// Longest is how far the section reaches as a simple span under its load:
//
//	bending     w L2 / 8 = M
//	shear       w L cos a / 2 = V
//	deflection  5 w L4 / (384 EI cos a) = L / over, w the usual live load
//	spot        P L / 4 + w L2 / 8 = M, w the dead load
func (m Member) Longest() Limit {
	w, cos := m.Live+m.Dead, math.Cos(m.Beam.Slope)
	_, _, bending := m.Section.Bending(1)
	_, _, shear := m.Section.Shear(1)
	spot := math.Inf(1)
	if m.Point > 0 { // the root of w L2 / 8 + P L / 4 - M that is not lost in rounding where w is little
		p := m.Point / 4
		spot = 2 / bending / (p + math.Sqrt(p*p+m.Dead/2/bending))
	}
	return Limit{
		Spot:       spot,
		Bending:    math.Sqrt(8 / (w * bending)),
		Shear:      2 / (w * shear * cos),
		Deflection: math.Cbrt(384 * m.Section.EI() * cos / (5 * m.usual() * m.Over)),
	}
}

// LeastDepth is the least depth of the first ply with which the member holds,
// found by halving; ok is false where even most is too little. Other plies stay
// where Stiffened puts them.
func (m Member) LeastDepth(most float64) (depth float64, ok bool) {
	holds := func(depth float64) bool {
		section := append(Section(nil), m.Section...)
		section[0].Depth = depth
		if len(section) == 2 {
			section = Stiffened(section[0], section[1])
		}
		one := m
		one.Section = section
		return one.Judge().Holds()
	}
	if !holds(most) {
		return 0, false
	}
	low, high := 0.0, most
	for high-low > finest {
		if mid := (low + high) / 2; holds(mid) {
			high = mid
		} else {
			low = mid
		}
	}
	return high, true
}

// finest is how near LeastDepth comes, mm: a nanometre is what lengths are kept
// to.
const finest = 1e-6

// Bearing is the stress where a reaction stands on a length of a thickness.
func Bearing(reaction, thickness, length float64) float64 { return reaction / (thickness * length) }

// BearingLength is how much length a reaction needs.
func BearingLength(reaction, thickness, allowed float64) float64 {
	return reaction / (thickness * allowed)
}

// NotchedEnd is the shear a member may carry at a support where its lower edge
// is notched: dn is left of its depth d.
//
// Source: NDS 2018, 3.4.3.2: V = 2/3 Fv b dn (dn / d)2. From memory.
func NotchedEnd(fv, thickness, d, dn float64) float64 {
	return 2.0 / 3 * fv * thickness * dn * (dn / d) * (dn / d)
}
