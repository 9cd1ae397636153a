package turn

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"stepoff/spec/measure"
)

// The least inside radius is deep enough, and a nanometre less is not: property of
// any curve. On the walkline it is depth / (2 sin(a/2)) - d, by hand.
func TestLeastInside(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		in := func(least, most float64, what string) float64 {
			return rapid.Float64Range(least, most).Draw(rt, what)
		}
		v := Curve{
			Hand: Left, Angle: in(10, 340, "angle"), Treads: rapid.IntRange(4, 20).Draw(rt, "treads"), Width: in(600, 1500, "width"), Overhang: in(0, 60, "overhang"),
			Depths: Depths{Walklines: []float64{in(200, 500, "walkline")}, LeastWalkline: in(200, 300, "depth on it"), LeastNarrow: in(0, 160, "narrow")},
		}
		inside, ok := v.LeastInside()
		if !ok {
			rt.Fatalf("%+v: none of up to 100 m", v)
		}
		each := v.Angle / float64(v.Treads) * math.Pi / 180
		byHand := v.Depths.LeastWalkline/(2*math.Sin(each/2)) - v.Depths.Walklines[0]
		if inside.MM() < byHand-1e-5 {
			rt.Errorf("%+v: %.6f mm, less than the walkline's %.6f", v, inside.MM(), byHand)
		}
		meets := func(inside measure.Length) bool {
			v.Inside = inside.MM()
			for _, tread := range v.At(Start).Treads {
				if tread.Walkline < v.Depths.LeastWalkline-depthRounding || tread.Narrow < v.Depths.LeastNarrow-depthRounding {
					return false
				}
			}
			return v.Meets()
		}
		if !meets(inside) || inside > 1 && meets(inside-1) {
			rt.Errorf("%+v: %.6f mm is not the least", v, inside.MM())
		}
	})
}

// No radius deepens treads that turn a right angle each: a nosing does not face
// the next one.
func TestNoInsideDoes(t *testing.T) {
	for angle, does := range map[float64]bool{170: true, 180: false, 350: false} {
		v := Curve{Hand: Left, Angle: angle, Treads: 2, Width: 900, Overhang: 44, Depths: Depths{Walklines: []float64{300}, LeastNarrow: 150}}
		if inside, ok := v.LeastInside(); ok != does {
			t.Errorf("%g degrees: %v, %v", angle, inside, ok)
		}
	}
}
