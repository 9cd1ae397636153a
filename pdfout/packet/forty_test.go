package packet

import (
	"fmt"
	"testing"

	"stepoff/layout"
	"stepoff/layout/geom"
	"stepoff/pdfout/pdftest"
	"stepoff/spec"
	"stepoff/spec/measure"
)

// forty are stringers of many kinds, laid out by the program: rises of 5 1/2 to
// 8 1/4, runs of 9 to 14, 3 to 18 risers, 2x10 and 2x12, hung and flush.
func forty(t *testing.T) []*layout.Stairway {
	t.Helper()
	var all []*layout.Stairway
	for i := range 40 {
		risers := 3 + (i*7)%16
		rise := 5.5 + 2.75*float64((i*11)%40)/39
		run := 9 + 5*float64((i*17)%40)/39
		job, err := spec.Load("job.yaml", fmt.Appendf(nil, `
units: imperial
code: none
levels: {total_rise: %.4f}
stairway: [{flight: {risers: %d, run: %.4f, head: %s}}]
tread: {thickness: 1 1/2"}
riser: open
stringer: {stock: %s, kicker: 2x4}
`, rise*float64(risers), risers, run, []string{"hung", "flush"}[i/2%2], []string{"2x10", "2x12"}[i%2]))
		if err != nil {
			t.Fatal(err)
		}
		s, err := layout.Compute(job)
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, s)
	}
	return all
}

// Every cut of forty varied stringers on five papers is covered within a
// hundredth of a millimetre once the sheets are laid back, and nothing is drawn
// as a cut that is none. What each sheet must keep to besides (the window, what
// neighbours share, crosses) is held in package pdfout over random drawings.
func TestFortyStringersReadBack(t *testing.T) {
	stairs := forty(t)
	for _, size := range []string{"letter", "legal", "tabloid", "a4", "a3"} {
		t.Run(size, func(t *testing.T) {
			for i, s := range stairs {
				g := &s.Flights()[0].Stringers[0]
				p := print(t, s, partStringer, size, measure.Inch/4)[0]
				var cuts []geom.Edge
				for _, c := range g.Cuts {
					cuts = append(cuts, geom.Line(geom.Pt(c.From.X, -c.From.Y), geom.Pt(c.To.X, -c.To.Y)))
				}
				drawn := p.all("Cut")
				if err := pdftest.Missing(cuts, drawn, trueSize); err != nil {
					t.Errorf("stringer %d: %v", i+1, err)
				}
				if err := pdftest.Extra(drawn, cuts, trueSize); err != nil {
					t.Errorf("stringer %d: %v", i+1, err)
				}
			}
		})
	}
}
