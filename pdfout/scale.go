package pdfout

import (
	"fmt"

	"stepoff/layout/drawing"
	"stepoff/layout/geom"
	"stepoff/spec/measure"
)

// ratios are the scales a figure may have: one of the drawing for so many on
// the paper's one, largest first. Metric after ISO 5455; imperial the scales
// of an architect's rule, with what they are called.
var (
	metricRatios   = []ratio{{1, ""}, {2, ""}, {5, ""}, {10, ""}, {20, ""}, {50, ""}, {100, ""}, {200, ""}, {500, ""}, {1000, ""}}
	imperialRatios = []ratio{
		{1, `full size`}, {2, `6" = 1' 0"`}, {4, `3" = 1' 0"`}, {8, `1 1/2" = 1' 0"`}, {12, `1" = 1' 0"`}, {16, `3/4" = 1' 0"`},
		{24, `1/2" = 1' 0"`}, {32, `3/8" = 1' 0"`}, {48, `1/4" = 1' 0"`}, {64, `3/16" = 1' 0"`}, {96, `1/8" = 1' 0"`},
		{192, `1/16" = 1' 0"`}, {384, `1/32" = 1' 0"`},
	}
)

type ratio struct {
	one  float64 // 1 : one
	rule string
}

// String is the scale as printed below a figure.
func (r ratio) String() string {
	s := fmt.Sprintf("1:%g", r.one)
	if r.rule != "" {
		return r.rule + " (" + s + ")"
	}
	return s
}

func ratios(u measure.Units) []ratio {
	if u == measure.Metric {
		return metricRatios
	}
	return imperialRatios
}

// largest is the largest round scale at which the drawing, its writing
// included, fits the room, and the box it then takes, in millimetres of the
// drawing.
func largest(d *drawing.Drawing, room geom.Point, u measure.Units) (ratio, geom.Box, bool) {
	for _, r := range ratios(u) {
		b := d.Extent(1 / r.one)
		if b.Width() <= room.X*r.one && b.Height() <= room.Y*r.one {
			return r, b, true
		}
	}
	return ratio{}, geom.EmptyBox(), false
}

// anyScale is the scale that fills the room, for a sketch that is to none. Letters
// keep their size, so it is searched for; where they alone are too much, the
// smallest scale looked at is taken.
func anyScale(d *drawing.Drawing, room geom.Point) (float64, geom.Box) {
	fits := func(scale float64) bool {
		b := d.Extent(scale)
		return b.Width()*scale <= room.X && b.Height()*scale <= room.Y
	}
	b := d.Bounds()
	high := min(room.X/max(b.Width(), 1e-3), room.Y/max(b.Height(), 1e-3))
	low := high / 20
	if fits(high) {
		return high, d.Extent(high)
	}
	for range 14 {
		if middle := (low + high) / 2; fits(middle) {
			low = middle
		} else {
			high = middle
		}
	}
	return low, d.Extent(low)
}

// barLength is a round length for a scale bar, 25 to 70 mm long on the paper
// where a round one is, and into how many parts it is divided.
func barLength(scale float64, u measure.Units) (length measure.Length, parts int) {
	type bar struct {
		l     measure.Length
		parts int
	}
	in, ft, mm, m := measure.Inch, measure.Foot, measure.Millimetre, measure.Metre
	lengths := []bar{{1 * in, 4}, {2 * in, 2}, {3 * in, 3}, {6 * in, 6}, {ft, 4}, {2 * ft, 2}, {4 * ft, 4}, {5 * ft, 5}, {10 * ft, 5}, {20 * ft, 4}, {40 * ft, 4}, {100 * ft, 5}}
	if u == measure.Metric {
		lengths = []bar{{20 * mm, 2}, {50 * mm, 5}, {100 * mm, 5}, {200 * mm, 4}, {500 * mm, 5}, {m, 5}, {2 * m, 4}, {5 * m, 5}, {10 * m, 5}, {20 * m, 4}, {50 * m, 5}}
	}
	for _, b := range lengths {
		if b.l.MM()*scale >= 25 {
			return b.l, b.parts
		}
	}
	last := lengths[len(lengths)-1]
	return last.l, last.parts
}
