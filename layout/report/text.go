package report

import (
	"fmt"
	"io"
	"strings"

	"stepoff/layout"
	"stepoff/spec"
	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

// lineWidth is what a plain terminal shows.
const lineWidth = 80

// Text writes the stairway as one screen of figures to lay out by.
func Text(w io.Writer, s *layout.Stairway, code *rules.Code, st measure.Style) error {
	t := &text{st: st}
	t.title(s)
	t.levels(s)
	if f, ok := s.Elements[0].(*layout.Flight); ok && len(s.Elements) == 1 {
		t.flight(s, f)
		t.strength(f, s.Strength(f, code))
	} else {
		t.members(s, code)
	}
	t.cutList(s)
	_, err := io.WriteString(w, t.String())
	return err
}

// members writes what the stairway is made of from the bottom up, and what it
// takes together.
func (t *text) members(s *layout.Stairway, code *rules.Code) {
	for i, e := range s.Elements {
		switch e := e.(type) {
		case *layout.Flight:
			t.flightHeading(e)
			t.flight(s, e)
			t.strength(e, s.Strength(e, code))
		case *layout.Landing:
			lower, _ := s.Elements[i-1].(*layout.Flight) // a curve has no stringers to hang or stand there
			upper, _ := s.Elements[i+1].(*layout.Flight)
			t.landing(s, e, lower, upper)
		case *layout.Winders:
			t.winders(e)
		case *layout.Curve:
			t.curve(s, e)
		}
	}
	t.plan(s, headroomOf(code))
}

type text struct {
	strings.Builder
	st measure.Style
}

func (t *text) line(format string, args ...any) {
	t.WriteString(strings.TrimRight(fmt.Sprintf(format, args...), " "))
	t.WriteByte('\n')
}

// labelWidth is the width of the labels' column.
const labelWidth = 24

// row writes a label and its figures in the two columns everything lines up in;
// what is too long goes on under itself.
func (t *text) row(label, format string, args ...any) {
	words := strings.Fields(fmt.Sprintf(format, args...))
	room := lineWidth - 2 - labelWidth - 1
	for line := ""; len(words) > 0; label = "" {
		line, words = words[0], words[1:]
		for len(words) > 0 && len(line)+1+len(words[0]) <= room {
			line, words = line+" "+words[0], words[1:]
		}
		t.line("  %-*s %s", labelWidth, label, line)
	}
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
		return "whole millimetres; + the true length is a little more, - a little less"
	}
	// The smallest part there is, printed, names the denominator.
	return fmt.Sprintf("inches to the nearest %s; + the true length is a little more, - a little less", st.Bare(st.Fineness()))
}

func (t *text) levels(s *layout.Stairway) {
	l := s.Job.Levels
	from := ""
	if l.Measured == spec.Rough {
		from = fmt.Sprintf("   (rough %s, + %s above, - %s below)", t.st.Bare(l.TotalRise), t.st.Bare(l.UpperFinish), t.st.Bare(l.LowerFinish))
	}
	t.row("total rise, finished", "%s%s", t.both(s.TotalRise), from)
	t.row("risers", "%s", Risers(s, func(mm float64) string { return t.st.BareMM(mm) + " (" + t.st.DecimalMM(mm) + ")" }))
}

// chosen says which figures were not in the job.
func (t *text) chosen(s *layout.Stairway, f *spec.Flight) {
	var what []string
	if f.RisersChosen {
		what = append(what, "risers")
	}
	if f.RunChosen {
		what = append(what, "unit run")
	}
	if len(what) > 0 {
		t.row("chosen here", "%s, the best under %s", strings.Join(what, " and "), s.Job.Code.Name)
	}
	if f.CountBy != "" {
		t.row("chosen here", "%d stringers, %s", f.Stringer.Count, f.CountBy)
	}
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
	if f.Treads == 0 {
		if f.Spec.RisersChosen {
			t.row("chosen here", "risers, the best under %s", s.Job.Code.Name)
		}
		t.line("")
		t.line("One riser and no tread: there is no stringer to cut.")
		return
	}
	t.row("unit run", "%s, %s, total run %s", t.st.Bare(f.UnitRun), counted(f.Treads, "tread"), t.st.BareMM(f.TotalRun))
	t.chosen(s, f.Spec)
	t.row("pitch", "%.2f degrees", float64(degrees(f.Pitch)))
	t.row("header to foot", "%s", Foot(f, t.st))
	t.line("")
	t.treadLevels(s, f.TreadLevels)
	t.line("")
	if len(f.Strings) > 0 {
		t.strings(f)
		return
	}
	if len(f.Stringers) == 1 {
		t.line("Stringer: %s", pull(f, &f.Stringers[0], t.st))
	} else {
		t.line("Stringers: %d of %s, %d outlines: the feet bear at different levels", f.Spec.Stringer.Count, stockName(f, t.st), len(f.Stringers))
	}
	t.shared(f, &f.Stringers[0])
	if len(f.Stringers) == 1 {
		t.own(f, &f.Stringers[0])
	} else {
		t.side(f)
	}
}

// treadLevels writes the finished levels of a climbing member's treads.
func (t *text) treadLevels(s *layout.Stairway, levels []float64) {
	above := ""
	if fl := s.Job.Levels.LowerFinish; fl > 0 {
		above = fmt.Sprintf("; above today's, %s more", t.st.Bare(fl))
	}
	t.line("Finished treads above the lower finished floor%s", above)
	var cells []string
	for k, level := range levels {
		cells = append(cells, fmt.Sprintf("%2d: %s", k+1, t.st.BareMM(level)))
	}
	t.grid(cells)
}

// Foot says where the foot stands: how far the first riser cut is from the
// header's face, and what of that is packing.
func Foot(f *layout.Flight, st measure.Style) string {
	if len(f.Strings) > 0 {
		return StringFoot(f, st)
	}
	packing := f.Spec.Stringer.BehindHead
	said := st.InchesMM(f.Stringers[0].HeadX()+packing.MM()) + " from its face to the first riser cut"
	if packing > 0 {
		said += ", " + st.Inches(packing) + " of it packing"
	}
	return said
}

func counted(n int, word string) string {
	if n == 1 {
		return "1 " + word
	}
	return fmt.Sprintf("%d %ss", n, word)
}

// pull says how many boards of which stock and length to pull.
func pull(f *layout.Flight, g *layout.Group, st measure.Style) string {
	if g.StockLength == 0 {
		return fmt.Sprintf("%d of %s, %s", len(g.Positions), stockName(f, st), stockLength(g, st))
	}
	return fmt.Sprintf("%d of %s x %s", len(g.Positions), stockName(f, st), stockLength(g, st))
}
