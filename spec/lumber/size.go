// Package lumber holds what softwood boards measure and how long they are
// sold, each figure with its source.
package lumber

import (
	"slices"

	"stepoff/spec/measure"
)

// Size is a board's dressed cross-section.
type Size struct {
	Thickness, Width measure.Length
}

// dressed is one nominal dimension and what it measures when surfaced dry, at
// a moisture content of 19 % or less.
//
// Source: PS 20, American Softwood Lumber Standard, minimum dressed sizes, as
// tabulated at engineeringtoolbox.com (softwood lumber sizes). They are minimum
// sizes, given in inches: the millimetres printed beside them (38, 286) are
// rounded, and are not used. A real board is measured.
type dressed struct {
	nominal string
	size    measure.Length
}

const sixteenth = measure.Inch / 16

var (
	thicknesses = []dressed{
		{"1", 12 * sixteenth},
		{"5/4", 16 * sixteenth},
		{"2", 24 * sixteenth},
		{"4", 56 * sixteenth},
	}
	widths = []dressed{
		{"4", 56 * sixteenth},
		{"6", 88 * sixteenth},
		{"8", 116 * sixteenth},
		{"10", 148 * sixteenth},
		{"12", 180 * sixteenth},
	}
)

// Lookup returns what a board of a nominal size measures: 2x12 is 1 1/2 by
// 11 1/4 in. ok is false for a name that is not among Names.
func Lookup(name string) (size Size, ok bool) {
	for _, t := range thicknesses {
		for _, w := range widths {
			if t.nominal+"x"+w.nominal == name {
				return Size{Thickness: t.size, Width: w.size}, true
			}
		}
	}
	return Size{}, false
}

// Names returns the nominal sizes that are known, thin to thick and narrow to
// wide.
func Names() []string {
	var names []string
	for _, t := range thicknesses {
		for _, w := range widths {
			names = append(names, t.nominal+"x"+w.nominal)
		}
	}
	return names
}

// Stock lengths. The length of a board is its actual length.
//
// Source, imperial: 6 to 24 ft by 2 ft, doityourself.com and sizes.com
// (secondary). Metric: steps of 300 mm, common practice where timber is sold by
// the metre; Canadian mills ship to 6.1 m, cwc.ca (secondary), so that 6.0 m is
// the longest whole step.
var (
	imperialLengths = steps(6*measure.Foot, 24*measure.Foot, 2*measure.Foot)
	metricLengths   = steps(1800*measure.Millimetre, 6000*measure.Millimetre, 300*measure.Millimetre)
)

func steps(from, to, by measure.Length) []measure.Length {
	var all []measure.Length
	for l := from; l <= to; l += by {
		all = append(all, l)
	}
	return all
}

// StockLengths returns the lengths boards are sold in, short to long.
func StockLengths(units measure.Units) []measure.Length {
	if units == measure.Metric {
		return slices.Clone(metricLengths)
	}
	return slices.Clone(imperialLengths)
}

// YardLengths returns the lengths that nearly any yard has on hand, short to
// long: 8 to 20 ft, or 2.4 to 6 m. Common practice; the shorter and the longer
// of StockLengths are ordered.
func YardLengths(units measure.Units) []measure.Length {
	least, most := 8*measure.Foot, 20*measure.Foot
	if units == measure.Metric {
		least, most = 2400*measure.Millimetre, 6000*measure.Millimetre
	}
	return slices.DeleteFunc(StockLengths(units), func(l measure.Length) bool { return l < least || l > most })
}

// StockLength returns the shortest length that is sold and is at least so
// long; ok is false when none is.
func StockLength(least measure.Length, units measure.Units) (length measure.Length, ok bool) {
	for _, l := range StockLengths(units) {
		if l >= least {
			return l, true
		}
	}
	return 0, false
}
