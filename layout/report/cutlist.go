package report

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"stepoff/layout"
	"stepoff/spec"
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
func CutList(job *spec.Job, f *layout.Flight, st measure.Style) []CutRow {
	var rows []CutRow
	for i := range f.Stringers {
		g := &f.Stringers[i]
		rows = append(rows, CutRow{Count: len(g.Positions), Part: g.Name, Stock: stockName(f, st), Length: stockLength(g, st)})
	}
	rows = append(rows, stringCuts(job, f, st)...)
	return append(rows, boardRows(job, f.Boards, st)...)
}

// boardRows lists treads and riser boards.
func boardRows(job *spec.Job, boards []layout.Board, st measure.Style) []CutRow {
	var rows []CutRow
	for _, b := range boards {
		row := CutRow{Count: b.Count, Part: b.Kind.String(), Stock: st.Inches(b.Thickness) + " thick",
			Ripped: st.InchesMM(b.Depth), Length: "length: the job states no width", Steps: steps(b)}
		if b.Kind == layout.TreadBoard {
			// A winder deeper than one board is glued up of several: see tread-board.
			if boards := job.Tread.Boards; boards != nil && boards.Name != "" && measure.SnapMM(b.Depth) <= (boards.Width*measure.Length(boards.Count)).MM() {
				row.Stock = boards.Name
			}
			row.Ripped += " deep"
		} else {
			row.Ripped += " high"
		}
		if b.Length != nil {
			row.Length = st.Inches(*b.Length) + " long"
		}
		if said := bevels(b.Bevels); said != "" {
			row.Steps += ", " + said
		}
		rows = append(rows, row)
	}
	return rows
}

// CutNotes are what must be known besides before riser boards are ripped.
func CutNotes(job *spec.Job, f *layout.Flight, st measure.Style) []string {
	if job.Riser.Open {
		return nil
	}
	nosing := "the floor's nosing"
	if f.Head != nil {
		nosing = "the landing's nosing"
	}
	_, onWinder := f.Foot.(*layout.Winders)
	_, toWinder := f.Head.(*layout.Winders) // whose tread is as thick as the others
	if f.Treads == 0 && f.Spec.Stringer.TopRiser && !toWinder {
		from, whole := "floor or landing", f.UnitRise
		if onWinder {
			from = "the winder below"
			if job.Riser.Joint == spec.Behind {
				from, whole = "under the winder below", whole+job.Tread.Thickness.MM()
			}
		}
		return []string{fmt.Sprintf("riser no. 1 goes from %s up to %s: %s less its thickness", from, nosing, st.InchesMM(whole))}
	}
	if !f.HasStringers() {
		return nil
	}
	var notes []string
	low, high := firstRiserCuts(f)
	if low != high {
		notes = append(notes, fmt.Sprintf("scribe riser no. 1 to the pad: first riser cuts run from %s to %s", st.InchesMM(low), st.InchesMM(high)))
	}
	if f.Flooring > 0 && !onWinder {
		notes = append(notes, fmt.Sprintf("set before the flooring, riser no. 1 is %s higher", st.Inches(f.Flooring)))
	}
	if f.Hung() && f.Spec.Stringer.TopRiser && !toWinder {
		// From the top tread's cut, or the tread itself, up to the underside of
		// the floor's nosing, whose thickness the job does not state.
		whole := f.UnitRise
		if job.Riser.Joint == spec.Behind {
			whole += job.Tread.Thickness.MM()
		}
		notes = append(notes, fmt.Sprintf("riser no. %d goes up to %s: %s less its thickness", f.Risers, nosing, st.InchesMM(whole)))
	}
	return notes
}

// firstRiserCuts are the lowest and the highest of a flight's, or of the first riser
// boards between its strings.
func firstRiserCuts(f *layout.Flight) (low, high float64) {
	low = math.Inf(1)
	for _, g := range f.Stringers {
		low, high = min(low, g.FirstRiserCut), max(high, g.FirstRiserCut)
	}
	for _, s := range f.Strings {
		cut := s.Rise - s.Tread + s.Below
		low, high = min(low, cut), max(high, cut)
	}
	return low, high
}

// stockName is what the stringers are cut from, by name or by section.
func stockName(f *layout.Flight, st measure.Style) string {
	stock := f.Spec.Stringer.Stock
	if stock.Name != "" {
		return stock.Name
	}
	return st.Bare(stock.Thickness) + " x " + st.Inches(stock.Width)
}

func stockLength(g *layout.Group, st measure.Style) string {
	if g.StockLength == 0 {
		return "longer than any board sold"
	}
	return st.Format(g.StockLength)
}

func steps(b layout.Board) string {
	return "(no. " + numbers(b.Steps[0], b.Steps[1]) + ")"
}

// cutList writes the cut lists of all members, from the bottom up.
func (t *text) cutList(s *layout.Stairway) {
	t.line("")
	t.line("Cut list")
	for _, e := range s.Elements {
		if len(s.Elements) > 1 {
			t.line(" %s", e.Label())
		}
		switch e := e.(type) {
		case *layout.Flight:
			t.cutRows(CutList(s.Job, e, t.st), CutNotes(s.Job, e, t.st))
		case *layout.Landing:
			t.cutRows(frameList(e, t.st), frameNotes(e))
		case *layout.Winders:
			t.cutRows(WindersCutList(s.Job, e, t.st))
		case *layout.Curve:
			t.cutRows(CurveCutList(s.Job, e, t.st))
		}
	}
}

// cutRows writes one row a line, on two where it is wider than a terminal.
func (t *text) cutRows(rows []CutRow, notes []string) {
	width := 12
	for _, row := range rows {
		width = max(width, len(row.Part))
	}
	for _, row := range rows {
		cells := []string{row.Stock, row.Ripped, row.Length}
		cells = slices.DeleteFunc(cells, func(c string) bool { return c == "" })
		what := fmt.Sprintf("  %3d  %-*s ", row.Count, width, row.Part)
		line := what + strings.Join(cells, ", ") + "   " + row.Steps
		if len([]rune(line)) > lineWidth {
			t.line("%s%s", what, strings.Join(cells, ", "))
			line = strings.Repeat(" ", len(what)) + row.Steps
		}
		t.line("%s", line)
	}
	for _, note := range notes {
		t.note(note)
	}
}
