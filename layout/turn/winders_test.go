package turn_test

import (
	"fmt"
	"testing"

	"stepoff/layout/turn"
	"stepoff/spec/measure"
)

func TestScratch(t *testing.T) {
	for _, even := range []bool{false, true} {
		for _, c := range []struct {
			w  float64
			n  int
			ov float64
		}{{36, 3, 1.75}, {36, 3, 0}, {38, 4, 1.75}, {38, 4, 0}, {36, 5, 1.75}, {36, 2, 1.75}} {
			w := turn.Winders{Hand: turn.Left, Angle: 90, Treads: c.n, Even: even, Width: c.w * 25.4, Overhang: c.ov * 25.4,
				Depths: turn.Depths{Walklines: []float64{304.8}, LeastWalkline: 254, LeastNarrow: 152.4}}
			a, ok := w.LeastSetback()
			l := w.At(turn.Start, a.MM())
			sum := 0.0
			for _, tr := range l.Treads {
				sum += tr.Outline.Area()
				fmt.Printf("   %.4f %.4f %.4f\n", tr.Walkline/25.4, tr.Narrow/25.4, tr.Wide/25.4)
			}
			fmt.Println(even, c, a.MM()/25.4, ok, sum-l.Outline().Area(), l.Exit)
		}
	}
	_ = measure.Inch
}

func BenchmarkLeast(b *testing.B) {
	for _, even := range []bool{false, true} {
		b.Run(fmt.Sprint(even), func(b *testing.B) {
			w := turn.Winders{Hand: turn.Left, Angle: 90, Treads: 5, Even: even, Width: 36 * 25.4, Overhang: 30,
				Depths: turn.Depths{Walklines: []float64{304.8}, LeastWalkline: 254, LeastNarrow: 152.4}}
			for b.Loop() {
				w.LeastSetback()
			}
		})
	}
}
