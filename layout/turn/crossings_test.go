package turn_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"stepoff/layout/geom"
	"stepoff/layout/turn"
)

// Where walklines cross the nosings is what depths are read from: straight across
// from crossing to crossing, along the walkline in runs that add up to it; and the
// wide depth is as far as its ends are apart, square to the nosing.
func TestCrossings(t *testing.T) {
	entry := turn.Place{At: geom.Pt(120, -40), Heading: 90}
	by := turn.Depths{Walklines: []float64{305, 500}, NarrowAt: 10}
	for name, l := range map[string]*turn.Laid{
		"radial": turn.Winders{Hand: turn.Left, Angle: 90, Treads: 3, Width: 914, Overhang: 44, Depths: by}.At(entry, 276),
		"even":   turn.Winders{Hand: turn.Right, Angle: 90, Treads: 4, Even: true, Width: 914, Overhang: 44, Depths: by}.At(entry, 276),
		"curve":  turn.Curve{Hand: turn.Right, Angle: 125, Treads: 15, Inside: 1524, Width: 1016, Overhang: 44, Depths: by}.At(entry),
	} {
		for i, w := range l.Walklines {
			sum := 0.0
			for k := range l.Treads {
				sum += l.Along(i, k).Length()
			}
			if math.Abs(sum-w.Length()) > 1e-6 {
				t.Errorf("%s: the runs on walkline %d add up to %.7f, and it is %.7f long", name, i, sum, w.Length())
			}
			for k, p := range l.Crossings[i] {
				if n := l.Nosings[k]; geom.Distance(p, n.In, n.Out) > 1e-6 {
					t.Errorf("%s: crossing %d of walkline %d lies off its nosing", name, k, i)
				}
			}
		}
		for k, tread := range l.Treads {
			least := math.Inf(1)
			for _, c := range l.Crossings {
				least = min(least, r2.Norm(r2.Sub(c[k+1], c[k])))
			}
			if math.Abs(least-tread.Walkline) > 1e-6 {
				t.Errorf("%s, tread %d: %.7f between its crossings, %.7f deep", name, k, least, tread.Walkline)
			}
			across := r2.Sub(tread.WideEnds.Out, tread.WideEnds.In)
			nosing := r2.Sub(l.Nosings[k].Out, l.Nosings[k].In)
			if math.Abs(r2.Norm(across)-tread.Wide) > 1e-6 || math.Abs(r2.Dot(across, nosing)) > 1e-3 {
				t.Errorf("%s, tread %d: wide is %.7f, and its ends are %v", name, k, tread.Wide, tread.WideEnds)
			}
		}
	}
}
