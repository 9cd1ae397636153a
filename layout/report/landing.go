package report

import (
	"fmt"

	"stepoff/layout"
	"stepoff/spec"
	"stepoff/spec/measure"
)

// heading begins the figures of one member of a stairway that has several.
func (t *text) heading(name, format string, args ...any) {
	t.line("")
	t.line("%s: %s", name, fmt.Sprintf(format, args...))
}

func (t *text) flightHeading(f *layout.Flight) {
	t.heading(f.Name, "%s %s", counted(f.Risers, "riser"), between(f.Foot, f.Head))
	t.row("from level, to level", "%s, %s", t.st.BareMM(f.StartLevel), t.st.BareMM(f.EndLevel))
}

// between says what a member that climbs stands on and rises to.
func between(foot, head layout.Turn) string {
	from, to := "the lower floor", "the upper floor"
	if foot != nil {
		from = foot.Label()
	}
	if head != nil {
		to = head.Label()
	}
	return "from " + from + " to " + to
}

// turning says which way a landing turns: a quarter turn to the left.
func turning(l *spec.Landing) string {
	switch l.Angle {
	case 90:
		return "a quarter turn" + toHand(l.Turn)
	case 180:
		return "a half turn" + toHand(l.Turn)
	}
	return "straight through"
}

func toHand(turn spec.Turn) string {
	if turn == spec.Right {
		return " to the right"
	}
	return " to the left"
}

func (t *text) landing(s *layout.Stairway, l *layout.Landing, lower, upper *layout.Flight) {
	bare := t.st.BareMM
	t.heading(l.Name, "%s, %s up", turning(l.Spec), counted(l.Risers, "riser"))
	t.row("finished level", "%s", bare(l.Level))
	t.row("top of the sheathing", "%s above the lower finished floor%s", bare(l.FramingLevel), t.aboveToday(s, l.FramingLevel))
	if l.Spec.BuiltLevel != nil {
		t.row("built already", "at %s; one unit rise for the whole stair would have it at %s", bare(l.Level), bare(s.TotalRise.PartMM(l.Risers, s.Risers)))
	}
	gap := ""
	if l.Spec.Gap > 0 {
		gap = fmt.Sprintf("; %s between the flights", t.st.Bare(l.Spec.Gap))
	}
	t.row("clear", "%s along the lower flight, %s across%s", t.st.Bare(l.Spec.Length), t.st.Bare(l.Spec.Width), gap)
	t.row("riser line to riser line", "%s along, %s across", bare(l.Up), bare(l.Across))
	t.hangs(lower)
	t.stands(upper)
	if w := l.Frame; w != nil {
		t.row("joists", "top at %s, underside at %s; %s on centre; on %s", bare(w.Top), bare(w.Bottom), t.st.Bare(l.Spec.Spacing), l.Spec.On)
		if w.Seat > 0 {
			t.row("framed on", "%s under the seat of %s", bare(w.Seat), upper.Name)
		}
	}
}

func (t *text) aboveToday(s *layout.Stairway, level float64) string {
	if fl := s.Job.Levels.LowerFinish; fl > 0 {
		return fmt.Sprintf(", %s above today's", t.st.BareMM(level+fl.MM()))
	}
	return ""
}

// hangs says where the lower flight's stringers meet the landing.
func (t *text) hangs(f *layout.Flight) {
	if f != nil && len(f.Strings) > 0 {
		s := &f.Strings[0]
		below := f.EndLevel - f.StartLevel - s.HeadLevelY()
		from := t.st.BareMM(below)
		if below < 0 {
			from = t.st.BareMM(-below) + " above"
		}
		t.row(f.Name+" meets it", "plumb cut from %s to %s below the finished landing", from, t.st.BareMM(below+s.HeadCut))
	}
	if f == nil || len(f.Stringers) == 0 {
		return
	}
	g := &f.Stringers[0]
	_, top := g.Tip(g.Notches)
	below := f.EndLevel - f.StartLevel - top
	t.row(f.Name+" meets it", "plumb cut from %s to %s below the finished landing", t.st.BareMM(below), t.st.BareMM(below+g.HeadCut))
}

// stands says where the upper flight's stringers stand.
func (t *text) stands(f *layout.Flight) {
	if f == nil || !f.HasStringers() {
		return
	}
	on := "the finished landing"
	if f.Spec.Stringer.FootOn == spec.Rough {
		on = "its sheathing"
	}
	if len(f.Strings) > 0 {
		s := &f.Strings[0]
		t.row(f.Name+" stands", "on %s, plumb cut %s, level cut %s", on, t.st.BareMM(s.FootCut), t.st.BareMM(s.SeatCut))
		return
	}
	g := &f.Stringers[0]
	t.row(f.Name+" stands", "on %s, first riser cut %s, seat %s", on, t.st.BareMM(g.FirstRiserCut), t.st.BareMM(g.SeatCut))
}

// plan says what the stairway takes of the house.
func (t *text) plan(s *layout.Stairway, headroom *measure.Length) {
	box, ok := s.Footprint()
	if !ok {
		return
	}
	t.line("")
	t.line("In plan")
	t.row("takes", "%s along the first flight, %s across it", t.st.FormatMM(box.Height()), t.st.FormatMM(box.Width()))
	for _, p := range s.Passings() {
		said := fmt.Sprintf("passes over %s, headroom %s", p.Lower.Label(), t.st.BareMM(p.Headroom))
		if p.Headroom <= 0 {
			said = fmt.Sprintf("cuts through %s by %s", p.Lower.Label(), t.st.BareMM(-p.Headroom))
		}
		t.row(p.Upper.Label(), "%s", said)
	}
	if headroom == nil {
		return
	}
	for _, o := range s.OpeningInPlan(headroom.MM()) {
		t.row("floor open over "+o.Over.Label(), "%s of it, for headroom of %s", t.st.BareMM(o.Long), t.st.Bare(*headroom))
	}
}

// frameList lists what a landing's frame is cut from.
func frameList(l *layout.Landing, st measure.Style) []CutRow {
	if l.Frame == nil {
		return nil
	}
	var rows []CutRow
	for _, p := range l.Frame.Pieces {
		row := CutRow{Count: p.Count, Part: p.Part, Stock: p.Stock, Length: st.InchesMM(p.Length) + " long"}
		if p.Width > 0 {
			row.Stock = st.Inches(l.Spec.Sheathing) + " thick"
			row.Length = st.InchesMM(p.Width) + " x " + st.InchesMM(p.Length)
		}
		rows = append(rows, row)
	}
	return rows
}

// frameNotes are what must be known besides before a landing is framed.
func frameNotes(l *layout.Landing) []string {
	if l.Frame == nil {
		return []string{"no joists are stated: the landing's framing is not listed"}
	}
	return nil
}
