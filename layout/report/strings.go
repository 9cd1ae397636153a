package report

import (
	"fmt"
	"math"
	"strings"

	"stepoff/layout"
	"stepoff/layout/stringer"
	"stepoff/spec"
	"stepoff/spec/measure"
)

// strings writes the figures of a flight whose treads stand between two strings.
func (t *text) strings(f *layout.Flight) {
	l, r := &f.Strings[0], &f.Strings[1]
	t.line("Strings: %s, each the other's mirror image", pullStrings(f, t.st))
	if h := l.Housed; h != nil {
		t.housings(h)
	} else {
		t.cleats(l.Cleated)
	}
	for _, row := range stringRows(t.st) {
		left, right := row.of(l), row.of(r)
		if left != right {
			left = "left " + left + ", right " + right
		}
		if left != "" {
			t.row(row.name, "%s", left)
		}
	}
	t.line("  Nosings from the foot end of the blank, in one pull of the tape")
	t.marks(l.Marks)
	if stringsDiffer(f) {
		t.line("  The same, on the right string")
		t.marks(r.Marks)
	}
}

func (t *text) marks(at []float64) {
	var cells []string
	for k, s := range at {
		cells = append(cells, fmt.Sprintf("%2d: %s", k+1, t.st.BareMM(s)))
	}
	t.grid(cells)
}

// stringsDiffer tells whether the two strings stand at different levels.
func stringsDiffer(f *layout.Flight) bool { return f.Strings[0].FootLevel != f.Strings[1].FootLevel }

// stringRow is a figure of a string.
type stringRow struct {
	name string
	of   func(s *layout.String) string
}

// stringRows are the figures of a string's outline, which differ where the feet do.
func stringRows(st measure.Style) []stringRow {
	bare := st.BareMM
	return []stringRow{
		{"foot", func(s *layout.String) string {
			return fmt.Sprintf("plumb cut %s, %s before the first nosing; level %s", bare(s.FootCut), bare(s.FootPlumb), bare(s.SeatCut))
		}},
		{"head", func(s *layout.String) string {
			return fmt.Sprintf("level cut %s, plumb cut %s", bare(s.HeadTop), bare(s.HeadCut))
		}},
		{"on the header", func(s *layout.String) string {
			if s.HeadContact == nil {
				return ""
			}
			return bare(*s.HeadContact) + " of the plumb cut bears"
		}},
		{"least blank", func(s *layout.String) string { return bare(s.LeastBlank) }},
	}
}

// pullStrings says what to pull for the two.
func pullStrings(f *layout.Flight, st measure.Style) string {
	l, r := &f.Strings[0], &f.Strings[1]
	of := " of " + stockName(f, st)
	if l.StockLength == r.StockLength {
		return "2" + of + stringLength(l, st)
	}
	return "1" + of + stringLength(l, st) + " and 1" + of + stringLength(r, st)
}

func stringLength(s *layout.String, st measure.Style) string {
	if s.StockLength == 0 {
		return ", longer than any board sold"
	}
	return " x " + st.Format(s.StockLength)
}

func (t *text) housings(h *stringer.Housed) {
	bare := t.st.BareMM
	for _, row := range JigSettings(h, t.st) {
		t.row(row[0], "%s", row[1])
	}
	t.row("nosings", "%s", NosingRound(h, t.st))
	t.row("across the string", "housings reach %s in, %s left below them", bare(h.Deepest), bare(h.Left))
	if len(h.Wedges) > 0 {
		t.row("wedges", "1:%.4g, %s wide, %s at the thin end", 1/h.WedgeTaper, bare(h.Depth), bare(h.Wedges[0].Tip))
	}
}

// JigSettings is what a stepped jig and the router are set to: a name and a figure
// a row. The jig's template rides on the string's top edge and is stepped from
// nosing to nosing.
func JigSettings(h *stringer.Housed, st measure.Style) [][]string {
	bare := st.BareMM
	rows := [][]string{
		{"stepped jig", fmt.Sprintf("%d stops, the first %s from the foot end, then every %s", len(h.Marks), bare(h.Marks[0]), bare(h.Step))},
		{"its fence", "on the top edge, " + bare(h.Router.Fence) + " square to the nosing"},
		{"its angle", fmt.Sprintf("treads %.2f degrees to the top edge, risers %.2f", h.Pitch*180/math.Pi, 90-h.Pitch*180/math.Pi)},
		{"housings", fmt.Sprintf("%s deep, %s left behind; %s", bare(h.Depth), bare(h.Behind), wallsOf(h))},
		{"router", fmt.Sprintf("cutter %s, guide bush %s: template %s outside the housing", st.FineMM(h.Cutter), st.FineMM(h.Bush), st.FineMM(h.Router.Offset))},
	}
	if h.RiserBoard > 0 {
		rows = append(rows, []string{"walls for wedges", fmt.Sprintf("1:%.4g off treads and riser boards, %.2f degrees", 1/h.WedgeTaper, math.Atan(h.WedgeTaper)*180/math.Pi)})
	}
	return rows
}

// wallsOf says how the walls of housings stand.
func wallsOf(h *stringer.Housed) string {
	if h.Undercut == 0 {
		return "walls square"
	}
	return fmt.Sprintf("walls undercut 1:%.4g", 1/h.Undercut)
}

// NosingRound says how the treads' nosings are rounded.
func NosingRound(h *stringer.Housed, st measure.Style) string {
	switch {
	case h.Round == 0:
		return "square: clean their housings' corners with a chisel"
	case 2*h.Round > h.Tread-1e-6:
		return "half round, radius " + st.BareMM(h.Round)
	}
	return "rounded above and below, radius " + st.BareMM(h.Round)
}

// WedgeOf says what a wedge holds.
func WedgeOf(w stringer.Wedge) string {
	if w.Riser {
		return "riser"
	}
	return "tread"
}

func (t *text) cleats(c *stringer.Cleated) {
	bare := t.st.BareMM
	t.row("step, margin", "%s; nosing line %s below the top edge", bare(c.Step), bare(c.Margin))
	t.row("cleats", "%s high, %s thick, %s", bare(c.Height), bare(c.Out), CleatScrews(c, t.st))
	t.row("across the stringer", "cleats reach %s in from the top edge, %s left below", bare(c.Deepest), bare(c.Left))
}

// CleatScrews says where a cleat's screws go.
func CleatScrews(c *stringer.Cleated, st measure.Style) string {
	return fmt.Sprintf("top on the mark of the tread's underside; %d screws on the middle line, the outer ones %s from the ends", c.Screws, st.BareMM(c.EdgeDistance()))
}

// stringCuts are the strings, wedges and cleats of a flight in its cut list.
func stringCuts(job *spec.Job, f *layout.Flight, st measure.Style) []CutRow {
	var rows []CutRow
	for i := range f.Strings {
		s := &f.Strings[i]
		rows = append(rows, CutRow{Count: 1, Part: s.Name, Stock: stockName(f, st), Length: strings.TrimPrefix(strings.TrimPrefix(stringLength(s, st), " x "), ", ")})
	}
	if len(f.Strings) == 0 {
		return nil
	}
	if h := f.Strings[0].Housed; h != nil {
		return append(rows, wedgeCuts(f, st)...)
	}
	c := f.Strings[0].Cleated
	part := "cleat"
	if job.Cleats.Kind == spec.SteelBracket {
		part = "bracket"
	}
	for _, k := range c.Cleats { // those alike in one row
		n := len(rows)
		length := st.InchesMM(k.Length) + " long"
		if last := &rows[n-1]; last.Part == part && last.Length == length {
			last.Count += 2
			continue
		}
		rows = append(rows, CutRow{Count: 2, Part: part, Stock: st.InchesMM(c.Out) + " thick", Ripped: st.InchesMM(c.Height) + " high", Length: length})
	}
	return rows
}

// wedgeCuts counts the wedges of both strings.
func wedgeCuts(f *layout.Flight, st measure.Style) []CutRow {
	var rows []CutRow
	for i := range f.Strings {
		for _, w := range f.Strings[i].Housed.Wedges {
			row := CutRow{Count: w.Count, Part: "wedge, " + WedgeOf(w),
				Stock:  st.InchesMM(w.Width) + " thick",
				Ripped: st.FineMM(w.Thick) + " to " + st.FineMM(w.Tip), Length: st.InchesMM(w.Length) + " long"}
			same := func(r CutRow) bool { return r.Part == row.Part && r.Length == row.Length && r.Ripped == row.Ripped }
			joined := false
			for k := range rows {
				if same(rows[k]) {
					rows[k].Count += row.Count
					joined = true
				}
			}
			if !joined {
				rows = append(rows, row)
			}
		}
	}
	return rows
}

// StringFoot says where the strings' feet stand: how far the plumb cut there is
// from the header's face.
func StringFoot(f *layout.Flight, st measure.Style) string {
	s := &f.Strings[0]
	packing := f.Spec.Stringer.BehindHead
	said := st.InchesMM(s.HeadX()+packing.MM()+s.Nosing+s.RiserBoard+s.FootPlumb) + " from its face to the plumb cut at the foot"
	if packing > 0 {
		said += ", " + st.Inches(packing) + " of it packing"
	}
	return said
}
