package report

import (
	"fmt"
	"io"
	"strings"

	"stepoff/layout"
	"stepoff/spec"
	"stepoff/spec/measure"
)

// lineWidth is what a plain terminal shows.
const lineWidth = 80

// Text writes the stairway as one screen of figures to lay out by.
func Text(w io.Writer, s *layout.Stairway, st measure.Style) error {
	t := &text{st: st}
	t.title(s)
	t.levels(s)
	for _, f := range s.Flights() {
		t.flight(s, f)
	}
	t.cutList(s)
	_, err := io.WriteString(w, t.String())
	return err
}

type text struct {
	strings.Builder
	st measure.Style
}

func (t *text) line(format string, args ...any) {
	t.WriteString(strings.TrimRight(fmt.Sprintf(format, args...), " "))
	t.WriteByte('\n')
}

// row writes a label and its figure in the two columns everything lines up in.
func (t *text) row(label, format string, args ...any) {
	t.line("  %-24s %s", label, fmt.Sprintf(format, args...))
}

// grid writes short cells in as many even columns as fit.
func (t *text) grid(cells []string) {
	width := 0
	for _, c := range cells {
		width = max(width, len(c))
	}
	columns := max(1, (lineWidth-2+2)/(width+2))
	for len(cells) > 0 {
		n := min(columns, len(cells))
		var b strings.Builder
		for _, c := range cells[:n] {
			fmt.Fprintf(&b, "%-*s  ", width, c)
		}
		t.line("  %s", b.String())
		cells = cells[n:]
	}
}

func (t *text) title(s *layout.Stairway) {
	var words []string
	for _, w := range []string{s.Job.Name, s.Job.Number, s.Job.Date} {
		if w != "" {
			words = append(words, w)
		}
	}
	if len(words) > 0 {
		t.line("%s", strings.Join(words, "   "))
	}
	code := s.Job.Code.Name
	if !s.Job.Code.Given {
		code += " (none named in the job: taken by default)"
	}
	t.line("code %s", code)
	t.line("%s", Legend(t.st))
	t.line("")
}

// Legend says how the figures are printed.
func Legend(st measure.Style) string {
	if st.Units == measure.Metric {
		return "millimetres to the nearest 1; + the true length is a little more, - a little less"
	}
	return fmt.Sprintf("inches to the nearest 1/%d; + the true length is a little more, - a little less", st.Denominator)
}

func (t *text) levels(s *layout.Stairway) {
	l := s.Job.Levels
	from := ""
	if l.Measured == spec.Rough {
		from = fmt.Sprintf("   (rough %s, + %s above, - %s below)", t.st.Bare(l.TotalRise), t.st.Bare(l.UpperFinish), t.st.Bare(l.LowerFinish))
	}
	t.row("total rise, finished", "%s%s", t.both(s.TotalRise), from)
	t.row("risers", "%d at %s   (%s)", s.Risers, t.st.BareMM(s.UnitRise), t.st.DecimalMM(s.UnitRise))
}

// both is a long length in inches and, where that helps, in feet.
func (t *text) both(l measure.Length) string {
	bare, feet := t.st.Bare(l), t.st.Format(l)
	if t.st.Units == measure.Metric || l < measure.Foot {
		return bare
	}
	return bare + " = " + feet
}

func (t *text) flight(s *layout.Stairway, f *layout.Flight) {
	t.row("unit run, treads", "%s, %d treads, total run %s", t.st.Bare(f.UnitRun), f.Treads, t.st.BareMM(f.TotalRun))
	t.row("pitch", "%.2f degrees", float64(degrees(f.Pitch)))
	t.line("")
	if f.Treads == 0 {
		t.line("One riser and no tread: there is no stringer to cut.")
		return
	}
	t.line("Finished treads above the lower finished floor")
	var cells []string
	for k, level := range f.TreadLevels {
		cells = append(cells, fmt.Sprintf("%2d: %s", k+1, t.st.BareMM(level)))
	}
	t.grid(cells)
	for i := range f.Stringers {
		t.line("")
		t.stringer(s, f, &f.Stringers[i])
	}
}

func (t *text) stringer(s *layout.Stairway, f *layout.Flight, g *layout.Group) {
	bare := t.st.BareMM
	t.line("%s: %d of %s x %s (%s)", titled(g.Name), len(g.Positions), stockName(f), stockLength(g, t.st), g.Where(f.Spec.Stringer.Count))
	if g.FootLevel != 0 {
		t.row("its foot bears", "%s against the level measured from", t.st.Bare(g.FootLevel))
	}
	t.row("framing square", "tongue %s, blade %s; %s", bare(g.Square.Tongue), bare(g.Square.Blade), t.drift(g))
	t.row("step, notch depth", "%s, %s; throat %s", bare(g.Step), bare(g.NotchDepth), bare(g.Throat))
	t.row("least blank", "%s", bare(g.LeastBlank))
	t.row("bottom drop", "%s: first riser cut %s, seat %s", bare(g.BottomDrop), bare(g.FirstRiserCut), bare(g.SeatCut))
	if g.Kicker != nil {
		t.row("kicker notch", "%s high, %s deep, at the front of the seat", bare(g.Kicker.Height), bare(g.Kicker.Depth))
	}
	t.row("head", "%s: last tread cut %s, plumb cut %s", headWord(f), bare(g.LastTread), bare(g.HeadCut))
	if g.Ledger != nil {
		t.row("ledger notch", "%s high, %s deep, at the bottom of the plumb cut", bare(g.Ledger.Height), bare(g.Ledger.Depth))
	}
	if g.HeadContact != nil {
		t.row("on the header", "%s", t.contact(g))
	}
	t.row("saw", "blade %s, set %s deep; stop %s short of the root,", bare(g.Saw.Blade), bare(g.Saw.Depth), bare(g.Saw.StopShort))
	t.row("", "%s is then still whole on the far face: finish by handsaw", bare(g.Saw.StopShort+g.Kerf.FarUncut))
	quarter := (measure.Inch / 4).MM()
	if t.st.Units == measure.Metric {
		quarter = 5
	}
	riser, tread := g.OvercutCost(quarter)
	t.row("an overcut of "+bare(quarter), "costs %s of throat on a riser line, %s on a tread line", bare(riser), bare(tread))
	t.line("  Tips from the foot end of the blank, in one pull of the tape")
	var cells []string
	for k, tip := range g.Tips {
		cells = append(cells, fmt.Sprintf("%2d: %s", k+1, bare(tip.X)))
	}
	t.grid(cells)
}

func titled(name string) string { return strings.ToUpper(name[:1]) + name[1:] }

func headWord(f *layout.Flight) string {
	if f.Hung() {
		return "hung"
	}
	return "flush"
}

func (t *text) drift(g *layout.Group) string {
	along, high := g.Square.Drift, g.Square.DriftRise
	if measure.SnapMM(along) == 0 && measure.SnapMM(high) == 0 {
		return "stepping does not drift"
	}
	return fmt.Sprintf("stepping drifts %s along, %s up", signed(t.st, along), signed(t.st, high))
}

// signed prints a difference with its sign before it.
func signed(st measure.Style, v float64) string {
	switch {
	case measure.SnapMM(v) > 0:
		return "+" + st.DecimalMM(v)
	case measure.SnapMM(v) < 0:
		return st.DecimalMM(v)
	}
	return "0"
}

// contact says how much of the plumb cut has header behind it, and what
// framers do when it is little.
func (t *text) contact(g *layout.Group) string {
	c := *g.HeadContact
	said := fmt.Sprintf("%s of the plumb cut bears", t.st.BareMM(c))
	if c < layout.LittleContact.MM() {
		said += ": little; hanger board, deeper header, ledger or hangers"
	}
	return said
}

func (t *text) cutList(s *layout.Stairway) {
	t.line("")
	t.line("Cut list")
	for _, f := range s.Flights() {
		for _, row := range CutList(f, t.st) {
			ripped := row.Ripped
			if ripped != "" {
				ripped += ", "
			}
			t.line("  %3d  %-12s %s", row.Count, row.Part, row.Stock+", "+ripped+row.Length+"   "+row.Steps)
		}
		if f.Flooring > 0 && !s.Job.Riser.Open {
			t.line("  a first riser board set before the flooring is %s higher", t.st.Bare(f.Flooring))
		}
	}
}
