package report

import (
	"stepoff/layout"
	"stepoff/spec"
	"stepoff/spec/lumber"
)

// mpa is a stress in the JSON, kpa a load, newton a force, ratio a plain number:
// six decimals, as lengths have.
type (
	mpa    = mm
	kpa    = mm
	ratio  = mm
	newton = mm
)

// The shapes of what stringers and treads carry. Of a stringer fastened along a
// wall, which does not span, only its place is told.
type (
	carrierJSON struct {
		Position  int      `json:"position"`
		Support   string   `json:"support"`
		Span      *mm      `json:"span_mm,omitempty"`
		Supports  []mm     `json:"supports_mm,omitempty"`
		Tributary mm       `json:"tributary_mm"`
		Live      *kpa     `json:"live_kpa,omitempty"`
		Dead      *kpa     `json:"dead_kpa,omitempty"`
		Bending   *ratio   `json:"bending_ratio,omitempty"`
		Shear     *ratio   `json:"shear_ratio,omitempty"`
		Deflect   *ratio   `json:"deflection_ratio,omitempty"`
		Bearing   *ratio   `json:"bearing_ratio,omitempty"`
		Point     *ratio   `json:"point_bending_ratio,omitempty"`
		Stress    *mpa     `json:"bending_stress_mpa,omitempty"`
		Allowed   *mpa     `json:"allowable_bending_mpa,omitempty"`
		Sag       *mm      `json:"deflection_mm,omitempty"`
		Longest   *mm      `json:"longest_span_mm,omitempty"`
		Throat    *mm      `json:"least_throat_mm,omitempty"`
		Reactions []newton `json:"reactions_n,omitempty"`
		// Factors are the adjustment factors by symbol, and by what each is put on.
		Factors map[string]factorJSON `json:"factors,omitempty"`
	}
	factorJSON struct {
		Bending ratio `json:"bending"`
		Shear   ratio `json:"shear"`
		Bearing ratio `json:"bearing"`
		Modulus ratio `json:"modulus"`
	}
	treadsJSON struct {
		Span    mm                    `json:"span_mm"`
		Bending ratio                 `json:"bending_ratio"`
		Shear   ratio                 `json:"shear_ratio"`
		Deflect ratio                 `json:"deflection_ratio"`
		Longest mm                    `json:"longest_span_mm"`
		Factors map[string]factorJSON `json:"factors,omitempty"`
	}
)

func carriers(w *layout.Strength) []carrierJSON {
	var all []carrierJSON
	for i := range w.Stringers {
		all = append(all, carrier(w, &w.Stringers[i]))
	}
	return all
}

func carrier(w *layout.Strength, c *layout.Carrier) carrierJSON {
	out := carrierJSON{Position: c.Position + 1, Support: SupportWord(c.Support), Tributary: mm(c.Tributary)}
	if !c.Spans() {
		return out
	}
	of := func(v float64) *mm { return maybe(&v) }
	out.Span, out.Supports = of(c.LongestSpan()), mms(c.Beam.At)
	out.Live, out.Dead = of(w.Loads.Live/1000), of(w.Loads.Dead/1000)
	out.Bending, out.Shear, out.Deflect = of(c.BendingRatio), of(c.ShearRatio), of(c.DeflectionRatio)
	out.Bearing, out.Point = of(c.FootBearing/c.Allowed), of(c.PointRatio)
	out.Stress, out.Allowed = of(c.Bending), of(c.AllowedBending)
	out.Sag, out.Longest = of(c.Deflection), of(c.Limit.Least())
	if c.LeastThroatOK {
		out.Throat = of(c.LeastThroat)
	}
	out.Reactions = mms(c.Reactions)
	out.Factors = factors(w.Wood.Factors)
	return out
}

func treads(w *layout.Strength) *treadsJSON {
	t := w.Treads
	if t == nil {
		return nil
	}
	return &treadsJSON{Span: mm(t.Span), Bending: mm(t.BendingRatio), Shear: mm(t.ShearRatio), Deflect: mm(t.DeflectionRatio),
		Longest: mm(t.Longest), Factors: factors(t.Wood.Factors)}
}

func factors(fs []lumber.Factor) map[string]factorJSON {
	all := map[string]factorJSON{} // written with its keys in order
	for _, f := range fs {
		all[f.Symbol] = factorJSON{mm(f.Fb), mm(f.Fv), mm(f.FcPerp), mm(f.E)}
	}
	return all
}

// SupportWord is what the job file calls what holds a stringer.
func SupportWord(s spec.Support) string {
	if s == spec.AlongWall {
		return "wall"
	}
	return "span"
}
