package stock_test

import (
	"testing"

	"pgregory.net/rapid"

	"stepoff/layout/stock"
	"stepoff/spec/measure"
)

// TestRips: by hand. Strips 5 1/2 wide, two to a 2x12 (11 1/8 of 11 1/4 with the
// kerf), 3 ft long: seven of them are four pieces; with a tread of the whole
// width at 3 ft, five pieces of 3 ft. On 8 ft boards two a board: three boards;
// on 16 ft five: one board of 16 ft, which is less. Least: 15 ft and four kerfs
// fit 16 ft.
func TestRips(t *testing.T) {
	o := stock.Order{
		Parts: []stock.Part{{Name: "strip", Length: 3 * foot, Width: 11 * inch / 2, Count: 7}, {Name: "tread", Length: 3 * foot, Count: 1}},
		Stock: twoFoot(), Width: 45 * inch / 4, Kerf: inch / 8,
	}
	p := cut(t, o)
	if len(p.Boards) != 1 || p.Boards[0].Stock != 16*foot || len(p.Boards[0].Pieces) != 5 {
		t.Fatalf("%+v", p.Boards)
	}
	two := 0
	for _, piece := range p.Boards[0].Pieces {
		if len(piece.Strips) == 2 {
			two++
			if piece.Strips[1].From != 11*inch/2+inch/8 {
				t.Errorf("the second strip begins at %d", piece.Strips[1].From)
			}
		}
	}
	if two != 3 {
		t.Errorf("%d pieces of two strips", two)
	}
	// Half the area of seven strips and that of the tread: 13 ft 6 in at least, so 14.
	if p.Bound != int64(14*foot) || p.Proved {
		t.Errorf("a bound of %d in, proved %v", p.Bound/int64(inch), p.Proved)
	}
}

// TestOneRip: parts of which no two fit beside each other are planned as though
// they were as wide as the board.
func TestOneRip(t *testing.T) {
	o := random(5, 20, 10, twoFoot())
	o.Width = 45 * inch / 4
	wide := cut(t, o)
	for i := range o.Parts {
		o.Parts[i].Width = measure.Length(6+i%5) * inch
	}
	ripped := cut(t, o)
	if ripped.Cost != wide.Cost || ripped.Bound != wide.Bound {
		t.Errorf("cost %d, bound %d; without rips %d, %d", ripped.Cost, ripped.Bound, wide.Cost, wide.Bound)
	}
}

// TestRipsHold: whatever the widths, a plan holds, and its bound is no more than
// what one of the widest parts alone, or the area, needs.
func TestRipsHold(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := drawOrder(t, 8, 6)
		o.Width = 12 * inch
		for i := range o.Parts {
			o.Parts[i].Width = measure.Length(rapid.Int64Range(0, int64(o.Width)).Draw(t, "width"))
		}
		ripped := cut(t, o)
		for i := range o.Parts {
			o.Parts[i].Width = 0
		}
		if wide := cut(t, o); ripped.Bound > wide.Cost {
			t.Fatalf("ripped side by side a bound of %d, and %d is enough without", ripped.Bound, wide.Cost)
		}
	})
}
