package lumber_test

import (
	"testing"

	"stepoff/spec/lumber"
	"stepoff/spec/measure"
)

// PS 20, minimum dressed sizes, dry, in inches; the millimetres printed beside
// them are the inches rounded to a whole one.
var ps20 = []struct{ nominal, thickness, width string }{
	{"1x4", "3/4", "3 1/2"},
	{"1x6", "3/4", "5 1/2"},
	{"1x8", "3/4", "7 1/4"},
	{"1x10", "3/4", "9 1/4"},
	{"1x12", "3/4", "11 1/4"},
	{"5/4x6", "1", "5 1/2"},
	{"2x4", "1 1/2", "3 1/2"},
	{"2x6", "1 1/2", "5 1/2"},
	{"2x8", "1 1/2", "7 1/4"},
	{"2x10", "1 1/2", "9 1/4"},
	{"2x12", "1 1/2", "11 1/4"},
	{"4x4", "3 1/2", "3 1/2"},
	{"4x12", "3 1/2", "11 1/4"},
}

func TestDressedSizesAreThoseOfPS20(t *testing.T) {
	for _, row := range ps20 {
		size, ok := lumber.Lookup(row.nominal)
		thickness, _ := measure.Parse(row.thickness, measure.Imperial)
		width, _ := measure.Parse(row.width, measure.Imperial)
		if want := (lumber.Size{Thickness: thickness, Width: width}); !ok || size != want {
			t.Errorf("%s is %+v, %v; want %+v", row.nominal, size, ok, want)
		}
	}
}

func TestNamesAreAllKnownAndNoOthers(t *testing.T) {
	names := lumber.Names()
	if len(names) != 20 {
		t.Errorf("%d names, want 4 thicknesses by 5 widths", len(names))
	}
	for _, name := range names {
		if size, ok := lumber.Lookup(name); !ok || size.Thickness <= 0 || size.Width < size.Thickness {
			t.Errorf("%s is %+v, %v", name, size, ok)
		}
	}
	for _, name := range []string{"", "2x", "x12", "2x13", "2X12", " 2x12", "2x12 ", "12x2", "2x124"} {
		if _, ok := lumber.Lookup(name); ok {
			t.Errorf("%q is known", name)
		}
	}
}

// Sold by 2 ft from 6 to 24 ft, and by 300 mm to 6 m.
func TestStockLengthIsTheShortestThatReaches(t *testing.T) {
	for _, c := range []struct {
		least string
		units measure.Units
		want  string // empty: none reaches
	}{
		{"0", measure.Imperial, "6'"},
		{"6'", measure.Imperial, "6'"},
		{`6' 0 1/64"`, measure.Imperial, "8'"},
		{`162.05in`, measure.Imperial, "14'"},
		{"24'", measure.Imperial, "24'"},
		{`24' 0 1/64"`, measure.Imperial, ""},
		{"0", measure.Metric, "1.8m"},
		{"4100mm", measure.Metric, "4.2m"},
		{"6m", measure.Metric, "6m"},
		{"6001mm", measure.Metric, ""},
	} {
		least, _ := measure.Parse(c.least, measure.Undeclared)
		want, _ := measure.Parse(c.want, measure.Undeclared) // 0 for none
		if got, ok := lumber.StockLength(least, c.units); got != want || ok != (c.want != "") {
			t.Errorf("%s %s: %s, %v; want %s", c.least, c.units, measure.Style{Units: c.units}.Format(got), ok, c.want)
		}
	}
}

// What a yard has on hand is what is sold, without the shortest and the longest.
func TestYardLengths(t *testing.T) {
	for _, c := range []struct {
		units       measure.Units
		least, most measure.Length
		count       int
	}{
		{measure.Imperial, 8 * measure.Foot, 20 * measure.Foot, 7},
		{measure.Metric, 2400 * measure.Millimetre, 6 * measure.Metre, 13},
	} {
		all := lumber.YardLengths(c.units)
		if len(all) != c.count || all[0] != c.least || all[c.count-1] != c.most {
			t.Errorf("%s: %v", c.units, all)
		}
	}
}
