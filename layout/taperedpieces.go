package layout

import (
	"cmp"
	"math"
	"slices"

	"stepoff/layout/turn"
	"stepoff/spec"
	"stepoff/spec/measure"
)

// addPiece appends one piece, joining it to one before that is cut alike.
func addPiece(all []FramePiece, p FramePiece) []FramePiece {
	for k := range all {
		q := &all[k]
		if q.Part == p.Part && q.Stock == p.Stock && alike(q.Length, p.Length) && alike(q.Width, p.Width) && alikeBevels(q.Bevels, p.Bevels) {
			q.Count += p.Count
			return all
		}
	}
	return append(all, p)
}

// sameBevel is how far two bevels may differ, in degrees, and be one setting of
// the saw.
const sameBevel = 1e-4

func alikeBevels(a, b [2]float64) bool {
	return math.Abs(a[0]-b[0]) <= sameBevel && math.Abs(a[1]-b[1]) <= sameBevel
}

// turnedOver is a piece's bevels as it is cut, whichever way it is then turned:
// end for end, upside down, or both. Of the four, the one with the greater bevel
// first, and that more than 0.
func turnedOver(ends [2]turn.BoxEnd) [2]float64 {
	first, second := ends[0].Bevel, ends[1].Bevel
	if math.Abs(second) > math.Abs(first)+sameBevel {
		first, second = second, first
	}
	if first < 0 {
		first, second = -first, -second
	}
	return [2]float64{first, second}
}

// pieces lists what the boxes are cut from.
func (w *Winders) pieces() (all []FramePiece) {
	thick := w.Spec.Sheathing.MM()
	for _, b := range w.Boxes {
		for _, p := range b.Parts {
			all = addPiece(all, FramePiece{Part: "box " + p.Kind.String(), Count: 1, Stock: w.BoxStock.Name, Length: p.Length, Width: b.Height, Bevels: turnedOver(p.Ends)})
		}
	}
	slices.SortStableFunc(all, func(a, b FramePiece) int { return order(a.Part) - order(b.Part) })
	for _, b := range w.Boxes {
		long, deep := extent(b.Outline, w.Laid.Risers[len(w.Treads)])
		all = addPiece(all, FramePiece{Part: "sheathing", Count: 1, Thickness: thick, Length: max(long, deep), Width: min(long, deep)})
	}
	if w.Legs > 0 {
		all = append(all, FramePiece{Part: "leg", Count: w.Legs, Stock: postStock, Length: w.Boxes[0].Leg})
	}
	return all
}

// order puts like parts of all boxes together.
func order(part string) int {
	return slices.Index([]string{"box front", "box back", "box outer rim", "box inner rim", "box joist"}, part)
}

// pieces lists what the walls of the curve are cut from.
func (c *Curve) pieces() (all []FramePiece) {
	for _, p := range c.Framing.Plates {
		for _, layer := range p.Layers {
			for _, g := range layer {
				all = addPiece(all, FramePiece{Part: p.Name + " plate segment", Count: 1, Thickness: c.Spec.Sheet.Thickness.MM(), Length: g.Blank.X, Width: g.Blank.Y})
			}
		}
	}
	for _, s := range c.Framing.Studs {
		all = addPiece(all, FramePiece{Part: "stud", Count: 1, Stock: c.PlateStock.Name, Length: s.Height})
	}
	bearers := slices.Clone(c.Framing.Bearers)
	slices.SortStableFunc(bearers, func(a, b turn.Bearer) int {
		switch {
		case a.Ledger == b.Ledger:
			return 0
		case a.Ledger:
			return 1
		}
		return -1
	})
	for _, b := range bearers {
		part, stock := "bearer", c.BearerStock
		if b.Ledger {
			part, stock = "ledger", c.LedgerStock
		}
		p := FramePiece{Part: part, Count: 1, Stock: stock.Name, Length: b.Length}
		if !alike(b.Depth, stock.Width.MM()) {
			p.Width = b.Depth
			if p.Width > stock.Width.MM() {
				p.Stock = narrowest(p.Width).Name
			}
		}
		all = addPiece(all, p)
	}
	return all
}

// narrowest is the narrowest board two inches thick that is so wide; its name is
// empty where none is.
func narrowest(mm float64) spec.Piece {
	for _, name := range twoByStocks {
		if p := nominal(name); p.Width.MM() >= mm-touching {
			return p
		}
	}
	return spec.Piece{Size: nominal(twoByStocks[0]).Size}
}

// twoByStocks are boards two inches thick, narrowest first: what boxes are built
// of, common practice.
var twoByStocks = []string{"2x4", "2x6", "2x8", "2x10", "2x12"}

// plateKerf is what a cut between two pieces of a sheet takes: 1/8 in, common
// practice.
const plateKerf = measure.Inch / 8

// sheets is how many sheets the plate segments take, cut as the rectangles they
// lie in, the grain along the sheet, the widest first in rows: no more than this,
// fewer where they are laid into each other.
func (c *Curve) sheets() int {
	type rect struct{ long, wide float64 }
	var all []rect
	for _, p := range c.Framing.Plates {
		for _, layer := range p.Layers {
			for _, g := range layer {
				all = append(all, rect{g.Blank.X, g.Blank.Y})
			}
		}
	}
	slices.SortFunc(all, func(a, b rect) int {
		if alike(a.wide, b.wide) {
			return 0
		}
		return cmp.Compare(b.wide, a.wide)
	})
	long, wide, kerf := c.Spec.Sheet.Length.MM(), c.Spec.Sheet.Width.MM(), plateKerf.MM()
	var rows []float64 // what is left of each row's length
	var left []float64 // of each sheet's width
next:
	for _, r := range all {
		for k := range rows {
			if rows[k] >= r.long-touching {
				rows[k] -= r.long + kerf
				continue next
			}
		}
		sheet := slices.IndexFunc(left, func(l float64) bool { return l >= r.wide-touching })
		if sheet < 0 {
			sheet = len(left)
			left = append(left, wide)
		}
		left[sheet] -= r.wide + kerf
		rows = append(rows, long-r.long-kerf)
	}
	return len(left)
}
