package strength

import (
	"cmp"
	"math"
)

// Tread is one board of a tread, lying flat over stringers, each bay a simple
// span. Loads in N/mm2 on its face.
type Tread struct {
	Depth, Thickness float64 // of the board, level and plumb
	E, Fb, Fv        float64
	Live, Dead       float64
	Point            float64 // N, on a patch
	// Usual and UsualPoint are what deflection is looked at under, where Live and
	// Point are more than is there day by day; 0: Live and Point.
	Usual, UsualPoint float64
	Patch             float64 // side of the patch along the span
	Over              float64 // allowed deflection: span over this
}

// TreadVerdict is how near a tread comes to what it may bear, by the worse of
// point load and uniform live load, each with the dead load and not together.
type TreadVerdict struct {
	BendingRatio, ShearRatio, DeflectionRatio float64
	Bending, AllowedBending                   float64
	ByPoint                                   bool // the point load decides
}

// Ratio is the greatest of the three.
func (v TreadVerdict) Ratio() float64 {
	return math.Max(v.BendingRatio, math.Max(v.ShearRatio, v.DeflectionRatio))
}

// Judge holds the tread over a span against its loads. Formulas of a simple beam
// under a load P spread over a length c in its middle: moment P L / 4 - P c / 8;
// deflection P (8 L3 - 4 L c2 + c3) / (384 EI); shear with the patch at a
// support, P (1 - c / (2 L)). Deflection is that of the usual live part.
func (t Tread) Judge(span float64) TreadVerdict {
	b, d, l := t.Depth, t.Thickness, span
	s, area, ei := b*d*d/6, b*d, t.E*b*d*d*d/12
	c := math.Min(t.Patch, l)
	dead, live := t.Dead*b, t.Live*b
	usual, usualPoint := cmp.Or(t.Usual, t.Live)*b, cmp.Or(t.UsualPoint, t.Point)
	point := t.verdict(s, area, t.Point*(l/4-c/8)+dead*l*l/8, t.Point*(1-c/(2*l))+dead*l/2,
		usualPoint*(8*l*l*l-4*l*c*c+c*c*c)/(384*ei), l)
	point.ByPoint = true
	uniform := t.verdict(s, area, (live+dead)*l*l/8, (live+dead)*l/2, 5*usual*l*l*l*l/(384*ei), l)
	if uniform.Ratio() > point.Ratio() {
		return uniform
	}
	return point
}

func (t Tread) verdict(s, area, moment, shear, sag, span float64) TreadVerdict {
	fb := moment / s
	return TreadVerdict{Bending: fb, AllowedBending: t.Fb, BendingRatio: fb / t.Fb,
		ShearRatio: 1.5 * shear / area / t.Fv, DeflectionRatio: sag * t.Over / span}
}

// Longest is the longest span the tread holds over, up to most.
func (t Tread) Longest(most float64) float64 {
	low, high := 0.0, most
	if t.Judge(most).Ratio() <= 1 {
		return most
	}
	for high-low > finest {
		if mid := (low + high) / 2; t.Judge(mid).Ratio() <= 1 {
			low = mid
		} else {
			high = mid
		}
	}
	return low
}
