package report

import (
	"fmt"
	"math"
	"strings"

	"stepoff/layout"
	"stepoff/layout/stringer"
	"stepoff/spec/measure"
)

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
