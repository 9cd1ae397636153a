package report

import (
	"fmt"
	"io"
	"math"
	"strings"

	"stepoff/layout"
	"stepoff/layout/stringer"
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

// shared are the figures that every outline of the flight has alike.
func (t *text) shared(f *layout.Flight, g *layout.Group) {
	bare := t.st.BareMM
	t.row("framing square", "tongue %s, blade %s", bare(g.Square.Tongue), bare(g.Square.Blade))
	t.row("stepped, it drifts", "%s", t.drift(g))
	t.row("step, notch depth", "%s, %s; throat %s", bare(g.Step), bare(g.NotchDepth), bare(g.Throat))
	t.row("saw", "blade %s, %s deep; stop %s short of the root", bare(g.Saw.Blade), bare(g.Saw.Depth), bare(g.Saw.StopShort))
	if g.Saw.RootHole > 0 {
		t.row("hole at every root", "%s, its middle in the corner: half of it is off the throat", bare(g.Saw.RootHole))
	}
	if g.Saw.Bevel > 0 {
		t.row("blade tilted", "%.4g degrees: on the far face the line lies %s beside", g.Saw.Bevel*180/math.Pi, bare(g.Saw.BevelOffset(g.Thickness)))
	}
	t.row("finish by handsaw", "%s, still whole on the far face", bare(g.Saw.StopShort+g.Kerf.FarUncut))
	past := stringer.OvercutShown(t.st.Units)
	riser, tread := g.OvercutCost(past)
	t.row("an overcut of "+bare(past), "takes %s off the throat (riser), %s (tread)", bare(riser), bare(tread))
	t.row("head", "%s: last tread cut %s%s", headWord(f), bare(g.LastTread), t.headCut(f, g))
	if g.HeadContact != nil && sameHead(f) {
		t.row("on the header", "%s", t.contact(g))
	}
	if g.Ledger != nil {
		t.row("ledger notch", "%s high, %s deep, at the bottom of the plumb cut", bare(g.Ledger.Height), bare(g.Ledger.Depth))
	}
	if g.Kicker != nil {
		t.row("kicker notch", "%s high, %s deep, at the front of the seat", bare(g.Kicker.Height), bare(g.Kicker.Depth))
	}
}

// sameHead tells whether the heads are alike: on stringers so short that the
// seat runs through to the head, the plumb cut differs with the foot.
func sameHead(f *layout.Flight) bool {
	for _, g := range f.Stringers {
		if measure.SnapMM(g.HeadCut) != measure.SnapMM(f.Stringers[0].HeadCut) {
			return false
		}
	}
	return true
}

func (t *text) headCut(f *layout.Flight, g *layout.Group) string {
	if !sameHead(f) {
		return ""
	}
	return ", plumb cut " + t.st.BareMM(g.HeadCut)
}

// own are the figures of the one outline there is.
func (t *text) own(f *layout.Flight, g *layout.Group) {
	bare := t.st.BareMM
	t.row("foot", "%s", drop(g, t.st))
	t.row("first riser cut, seat", "%s, %s", bare(g.FirstRiserCut), bare(g.SeatCut))
	t.row("least blank", "%s", bare(g.LeastBlank))
	t.line("  Tips from the foot end of the blank, in one pull of the tape")
	var cells []string
	for k, tip := range g.Tips {
		cells = append(cells, fmt.Sprintf("%2d: %s", k+1, bare(tip.X)))
	}
	t.grid(cells)
}

// drop says what comes off the foot, or what is left on it where it reaches
// lower than it would if stepped off.
func drop(g *layout.Group, st measure.Style) string {
	if g.BottomDrop < 0 {
		return st.BareMM(-g.BottomDrop) + " longer than stepped off"
	}
	return "bottom drop " + st.BareMM(g.BottomDrop)
}

// side sets the outlines' own figures side by side.
func (t *text) side(f *layout.Flight) {
	bare := t.st.BareMM
	rows := []figure{
		{"outline", func(g *layout.Group) string { return g.Name }},
		{"stands", func(g *layout.Group) string {
			return strings.Replace(g.Where(f.Spec.Stringer.Count), " from the left", "", 1)
		}},
		{"foot above (below -)", func(g *layout.Group) string { return t.st.Bare(g.FootLevel) }},
		{"bottom drop (longer -)", func(g *layout.Group) string { return bare(g.BottomDrop) }},
		{"first riser cut", func(g *layout.Group) string { return bare(g.FirstRiserCut) }},
		{"seat", func(g *layout.Group) string { return bare(g.SeatCut) }},
		{"plumb cut at the head", func(g *layout.Group) string { return bare(g.HeadCut) }},
		{"least blank", func(g *layout.Group) string { return bare(g.LeastBlank) }},
		{"stock", func(g *layout.Group) string { return stockLength(g, t.st) }},
	}
	for k := range f.Stringers[0].Tips {
		rows = append(rows, figure{fmt.Sprintf("tip %d from the foot end", k+1), func(g *layout.Group) string { return bare(g.Tips[k].X) }})
	}
	for from := 0; from < len(f.Stringers); {
		from = t.columns(f, from, rows)
	}
}

// figure is a row of figures, one for each outline.
type figure struct {
	name string
	of   func(g *layout.Group) string
}

// columns sets as many outlines side by side, from the given one on, as the
// screen is wide, and returns the first one left over.
func (t *text) columns(f *layout.Flight, from int, rows []figure) int {
	lines := make([]string, len(rows))
	at := from
	for ; at < len(f.Stringers); at++ {
		width := 0
		for _, r := range rows {
			width = max(width, len(r.of(&f.Stringers[at])))
		}
		if at > from && len(lines[0])+width > lineWidth-2-labelWidth-1 {
			break
		}
		for i, r := range rows {
			lines[i] += fmt.Sprintf("%-*s  ", width, r.of(&f.Stringers[at]))
		}
	}
	for i, r := range rows {
		t.line("  %-*s %s", labelWidth, r.name, lines[i])
	}
	return at
}

func headWord(f *layout.Flight) string {
	if f.Hung() {
		return "hung"
	}
	return "flush"
}

func (t *text) drift(g *layout.Group) string {
	along, high := g.Square.Drift, g.Square.DriftRise
	if measure.SnapMM(along) == 0 && measure.SnapMM(high) == 0 {
		return "nowhere: the square's marks are true"
	}
	return fmt.Sprintf("%s along and %s up: tape the tips", signed(t.st, along), signed(t.st, high))
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
	said := t.st.BareMM(c) + " of the plumb cut bears"
	if measure.SnapMM(c) == 0 {
		said = "none of the plumb cut bears"
	}
	switch {
	case c >= layout.LittleContact.MM():
		return said
	case g.Ledger != nil:
		return said + ": little besides the ledger"
	}
	return said + ": little; hanger board, deeper header, ledger or hangers"
}
