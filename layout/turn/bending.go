package turn

// How tight, in thicknesses, a layer of a laminated string may be bent dry, to the
// radius of its face. Laminated timber is limited to these; from memory (NDS
// 5.3.8), to be verified. Plywood is stiffer along its face grain, and its maker
// gives the radius.
const (
	BendSoftwood = 125
	BendHardwood = 100
)

// CurveBend is a string bent from thin layers round an upright form. Millimetres.
type CurveBend struct {
	// FormRadius is the form's in plan, its round side out, the first layer against
	// it. A string lies within the clear width, so it is the inside string's own
	// radius, and the outside string's less its thickness.
	FormRadius float64
	// Tightest is the radius the first layer is bent to on the form, along its
	// climb: larger than the form's.
	Tightest  float64
	MostLayer float64 // the thickest layer that takes that bend
	Layer     float64 // thickness of a layer
	Layers    int
	Thickness float64 // of all layers
	// InnerRun and OuterRun are what the layers' first and last face measure round
	// the turn in plan: layers bent further out have to be longer.
	InnerRun, OuterRun float64
}

// Bend works out how a string at least so thick is laminated from stock of a layer's
// thickness; a layer of 0 is worked out: the fewest equal layers that bend. Times is
// how many thicknesses the radius has to be.
//
// A string climbs on its form as a helix: (R cos a, R sin a, c a), where c is the
// climb a radian, R tan(pitch). Its curvature is R / (R^2 + c^2), so it is bent to
// (R^2 + c^2) / R = R (1 + tan^2(pitch)) = R / cos^2(pitch). The pitch is that on
// the form.
func (c *CurveString) Bend(s CurveSteps, thickness, layer, times float64) (*CurveBend, []CurveRefusal) {
	var bad curveRefusals
	say := s.Style.FormatMM
	b := &CurveBend{Layer: layer, Thickness: thickness, FormRadius: c.Radius}
	if layer > 0 { // whole layers of the stock there is
		b.Layers = fewest(thickness, layer)
		b.Thickness = float64(b.Layers) * layer
	}
	if c.Name == CurveOutside {
		b.FormRadius -= b.Thickness
	}
	if b.FormRadius < curveTouching {
		bad.add("thickness", "a string %s thick has no room within a radius of %s", say(b.Thickness), say(c.Radius))
		return nil, bad
	}
	climb := c.UnitRise / radians(s.Step()) // a radian
	b.Tightest = b.FormRadius + climb*climb/b.FormRadius
	b.MostLayer = b.Tightest / times
	switch {
	case layer <= 0:
		b.Layers = fewest(thickness, b.MostLayer)
		b.Layer = thickness / float64(b.Layers)
	case layer > b.MostLayer*(1+sameShare):
		bad.add("layer", "layers %s thick do not bend round %s, the %s string's form with its climb: %s is the most", say(layer), say(b.Tightest), c.Name, say(b.MostLayer))
		return nil, bad
	}
	b.InnerRun = b.FormRadius * radians(s.Angle)
	b.OuterRun = (b.FormRadius + b.Thickness) * radians(s.Angle)
	return b, nil
}
