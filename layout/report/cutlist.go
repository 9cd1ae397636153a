package report

import (
	"fmt"

	"stepoff/layout"
	"stepoff/spec/measure"
)

// CutRow is one row of a cut list, in words.
type CutRow struct {
	Count  int
	Part   string
	Stock  string // what it is cut from: 2x12, or its thickness
	Ripped string // tread depth or riser height; empty for stringers
	Length string
	Steps  string // which steps it serves; empty for stringers
}

// CutList lists a flight's stringers, treads and riser boards.
func CutList(f *layout.Flight, st measure.Style) []CutRow {
	var rows []CutRow
	for i := range f.Stringers {
		g := &f.Stringers[i]
		rows = append(rows, CutRow{Count: len(g.Positions), Part: g.Name, Stock: stockName(f), Length: stockLength(g, st)})
	}
	for _, b := range f.Boards {
		row := CutRow{Count: b.Count, Part: b.Kind.String(), Stock: st.Inches(b.Thickness) + " thick",
			Ripped: st.InchesMM(b.Depth), Length: "length: the job states no width", Steps: steps(b)}
		if b.Kind == layout.TreadBoard {
			row.Ripped += " deep"
		} else {
			row.Ripped += " high"
		}
		if b.Length != nil {
			row.Length = st.Inches(*b.Length) + " long"
		}
		rows = append(rows, row)
	}
	return rows
}

func stockName(f *layout.Flight) string {
	if n := f.Spec.Stringer.Stock.Name; n != "" {
		return n
	}
	return "stock as measured"
}

func stockLength(g *layout.Group, st measure.Style) string {
	if g.StockLength == 0 {
		return "more than any stock length sold"
	}
	return st.Format(g.StockLength)
}

func steps(b layout.Board) string {
	if b.Steps[0] == b.Steps[1] {
		return fmt.Sprintf("(no. %d)", b.Steps[0])
	}
	return fmt.Sprintf("(no. %d to %d)", b.Steps[0], b.Steps[1])
}
