package packet

import (
	"fmt"
	"slices"
	"strings"

	"stepoff/layout"
	"stepoff/layout/drawing"
	"stepoff/layout/lesson"
	"stepoff/layout/report"
	"stepoff/layout/turn"
	"stepoff/layout/views"
	"stepoff/pdfout"
	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

// printFirst stands at the head of every cover.
const printFirst = "Print this page first, at 100 %, with no fit to page. Measure both of its rulers with a tape: if either is not true, stop, and set the printer right before printing the rest."

// cover builds the pages before the sheets.
type cover struct {
	s       *layout.Stairway
	code    *rules.Code // nil: none
	st      measure.Style
	tilings []*pdfout.Tiling
	paper   pdfout.Paper
}

// title is the job's name, or what stands in for it.
func (c cover) title() string {
	if c.s.Job.Name == "" {
		return "Stair"
	}
	return c.s.Job.Name
}

// short is the one page before parts that were asked for by name: it tells of
// those stringers only whose templates follow.
func (c cover) short() pdfout.Flow {
	return pdfout.Flow{Title: "Cover", Rulers: true, Blocks: append(c.head(c.printed()), c.maps()...)}
}

// first is the cover of a whole set.
func (c cover) first() pdfout.Flow {
	tables := []pdfout.Table{c.outlines(nil), c.strings()}
	if _, ok := c.s.Elements[0].(*layout.Flight); !ok || len(c.s.Elements) > 1 {
		tables = append([]pdfout.Table{c.members()}, tables...)
	}
	blocks := append(c.head(tables...), pdfout.Heading{Level: 2, Text: "How the sheets lie"})
	return pdfout.Flow{Title: "Cover", Rulers: true, Blocks: append(blocks, c.maps()...)}
}

// printed are the figures of the stringers whose templates are printed; of all
// where none is.
func (c cover) printed() pdfout.Table {
	var names []string
	for _, t := range c.tilings {
		names = append(names, t.Part.Name)
	}
	if t := c.outlines(names); len(t.Rows) > 0 {
		return t
	}
	if t := c.outlines(nil); len(t.Rows) > 0 {
		return t
	}
	return c.strings()
}

func (c cover) head(tables ...pdfout.Table) []pdfout.Block {
	blocks := []pdfout.Block{
		pdfout.Heading{Level: 1, Text: c.title()},
		pdfout.Paragraph{Text: printFirst},
		pdfout.Table{Rows: c.numbers()},
	}
	for _, t := range tables {
		if len(t.Rows) > 0 {
			blocks = append(blocks, t)
		}
	}
	return append(blocks, pdfout.List{Items: lesson.Cautions(c.s)})
}

// numbers are the figures a framer checks against the site before cutting.
func (c cover) numbers() [][]string {
	s, st := c.s, c.st
	rows := [][]string{
		{"total rise, finished to finished", st.Format(s.TotalRise)},
		{"risers", report.Risers(s, func(mm float64) string { return st.InchesMM(mm) + "  (" + st.DecimalMM(mm) + ")" })},
	}
	if flights := s.Flights(); len(s.Elements) == 1 && len(flights) == 1 && len(flights[0].Stringers) > 0 {
		f, g := flights[0], &flights[0].Stringers[0]
		rows = append(rows, []string{"unit run, treads", fmt.Sprintf("%s, %d", st.Inches(f.UnitRun), f.Treads)},
			[]string{"header to foot", report.Foot(f, st)}, []string{"notch depth, throat", st.InchesMM(g.NotchDepth) + ", " + st.InchesMM(g.Throat)})
	}
	if flights := s.Flights(); len(s.Elements) == 1 && len(flights) == 1 && len(flights[0].Strings) > 0 {
		f := flights[0]
		rows = append(rows, []string{"unit run, treads", fmt.Sprintf("%s, %d", st.Inches(f.UnitRun), f.Treads)}, []string{"header to foot", report.Foot(f, st)},
			[]string{"left of the string", st.InchesMM(f.Strings[0].Left()) + " square across, below housings or cleats"})
	}
	return append(rows, []string{"how figures are printed", report.Legend(st)})
}

// members are the figures of everything the stairway is made of, where it is more
// than one flight, from the bottom up.
func (c cover) members() pdfout.Table {
	st := c.st
	t := pdfout.Table{Header: []string{"", "from", "up to", "risers", "unit run", "head to foot", "throat"}}
	for _, e := range c.s.Elements {
		switch e := e.(type) {
		case *layout.Flight:
			row := []string{e.Name, st.FormatMM(e.StartLevel), st.FormatMM(e.EndLevel), c.risers(e.Risers, e.UnitRise), "no stringer", "", ""}
			if len(e.Stringers) > 0 {
				g := &e.Stringers[0]
				row[4], row[5], row[6] = st.Inches(e.UnitRun), st.InchesMM(g.HeadX()), st.InchesMM(g.Throat)
			}
			if len(e.Strings) > 0 {
				row[4], row[5], row[6] = st.Inches(e.UnitRun), st.InchesMM(e.HeadX()), st.InchesMM(e.Strings[0].Left())+" left"
			}
			t.Rows = append(t.Rows, row)
		case *layout.Landing:
			t.Rows = append(t.Rows, []string{e.Name, "sheathing " + st.FormatMM(e.FramingLevel), st.FormatMM(e.Level), "", "", "", ""})
		case *layout.Winders:
			n := len(e.Levels) - 1
			t.Rows = append(t.Rows, []string{e.Name, st.FormatMM(e.Levels[0]), st.FormatMM(e.Levels[n]), c.risers(n, e.UnitRise), c.walkline(e.Laid), "", ""})
		case *layout.Curve:
			t.Rows = append(t.Rows, []string{e.Name, st.FormatMM(e.StartLevel), st.FormatMM(e.EndLevel), c.risers(e.Risers, e.UnitRise), c.walkline(e.Laid), "", ""})
		}
	}
	return t
}

func (c cover) risers(n int, rise float64) string {
	return fmt.Sprintf("%d at %s", n, c.st.InchesMM(rise))
}

// walkline is the least that tapered treads are deep on their walkline.
func (c cover) walkline(l *turn.Laid) string {
	least := l.Treads[0].Walkline
	for _, t := range l.Treads {
		least = min(least, t.Walkline)
	}
	return c.st.InchesMM(least) + " on the walkline"
}

// outlines are the figures that differ from one stringer to the next, and which
// flight's template serves where it is not its own: of the templates named, or of
// all.
func (c cover) outlines(named []string) pdfout.Table {
	st, flights := c.st, c.s.Flights()
	t := pdfout.Table{Header: []string{"stringer", "stands", "least blank", "stock", "bottom drop (longer -)", "first riser cut", "seat", "plumb cut"}}
	for _, f := range flights {
		for i := range f.Stringers {
			g := &f.Stringers[i]
			stock := "none sold so long"
			if g.StockLength > 0 {
				stock = fmt.Sprintf("%d of %s", len(g.Positions), st.Format(g.StockLength))
			}
			stands, of := g.Where(f.Spec.Stringer.Count), templateOf(c.s, g)
			if len(named) > 0 && !slices.Contains(named, of.names(of.g.Name, len(flights))[0]) {
				continue
			}
			if of.g != g {
				stands += "; cut as " + called(of.f, of.g, len(flights))
			}
			t.Rows = append(t.Rows, []string{called(f, g, len(flights)), stands, st.InchesMM(g.LeastBlank), stock,
				st.InchesMM(g.BottomDrop), st.InchesMM(g.FirstRiserCut), st.InchesMM(g.SeatCut), st.InchesMM(g.HeadCut)})
		}
	}
	return t
}

// The maps share what a letter page has left below the cover's text, so that
// the cover stays one page; none is larger than reads well, or too small for
// the sheets' names. Millimetres, captions included.
const (
	mapsRoom = 88.0
	mapMost  = 45.0
	mapLeast = 24.0
)

// maps shows how each part's sheets lie together, and counts them: one below
// the other while they are few, else in two columns.
func (c cover) maps() []pdfout.Block {
	n := len(c.tilings)
	rows := n
	if n > 3 {
		rows = (n + 1) / 2
	}
	height := max(mapLeast, min(mapMost, mapsRoom/float64(max(1, rows))))
	var blocks []pdfout.Block
	for _, t := range c.tilings {
		caption := fmt.Sprintf("%s: %d %s of %s", t.Part.Title, len(t.Sheets), plural(len(t.Sheets), "sheet"), c.paper.Name)
		blocks = append(blocks, pdfout.Figure{Drawing: t.Map(), MaxHeight: height, Caption: caption, NoScale: true})
	}
	if rows < n {
		return []pdfout.Block{pdfout.Columns{Left: blocks[:rows], Right: blocks[rows:]}}
	}
	return blocks
}

func plural(n int, word string) string {
	if n == 1 {
		return word
	}
	return word + "s"
}

// Heights of the pictures: the plan may take a page, for its dimensions need room
// at any scale; the next two share one; and that of a flight from the side.
// Millimetres on the sheet, captions included.
const (
	planHeight      = 260.0
	isometricHeight = 132.0
	unfoldedHeight  = 108.0
	severalHeight   = 150.0 // where it has several tapered members
	flightHeight    = 150.0
	curveHeight     = 180.0 // the level of every tread is written in it
)

// pictures show the whole stairway before the work on it is told.
func (c cover) pictures() pdfout.Flow {
	var blocks []pdfout.Block
	add := func(d *drawing.Drawing, height float64) {
		if d != nil { // nil where the job states no width
			blocks = append(blocks, pdfout.Figure{Drawing: d, MaxHeight: height})
		}
	}
	add(views.Plan(c.s, c.st), planHeight)
	add(views.Isometric(c.s, c.st), isometricHeight)
	unfolded := unfoldedHeight
	if views.SeveralTapered(c.s) {
		unfolded = severalHeight
	}
	add(views.Unfolded(c.s, c.st), unfolded)
	return pdfout.Flow{Title: "The stairway", Blocks: blocks, Wide: true}
}

// work is the cut sequence, the cut list and the stair drawn from the side, member
// by member; what landings and winders are framed with has pages of its own.
func (c cover) work() pdfout.Flow {
	w := work{cover: c, told: map[string]string{}}
	title := "Cut list"
	for _, e := range c.s.Elements {
		if len(c.s.Elements) > 1 {
			w.of = ", " + e.Label()
		}
		switch e := e.(type) {
		case *layout.Flight:
			w.flight(e)
			if e.HasStringers() {
				title = "Cut sequence"
			}
		case *layout.Winders:
			w.add(pdfout.Figure{Drawing: views.WindersElevation(c.s, e, c.code, c.st), MaxHeight: flightHeight})
			w.cutList(report.WindersCutList(c.s.Job, e, c.st))
		case *layout.Curve:
			w.add(pdfout.Figure{Drawing: views.CurveElevation(c.s, e, c.code, c.st), MaxHeight: curveHeight})
			w.cutList(report.CurveCutList(c.s.Job, e, c.st))
		}
	}
	return pdfout.Flow{Title: title, Blocks: w.blocks}
}

type work struct {
	cover
	blocks []pdfout.Block
	of     string            // ", flight-1"; empty where there is but one member
	told   map[string]string // a cut sequence, and the flight it was told for
}

func (w *work) add(blocks ...pdfout.Block) { w.blocks = append(w.blocks, blocks...) }

func (w *work) flight(f *layout.Flight) {
	if f.HasStringers() || len(w.s.Elements) == 1 { // of a single riser there is nothing to see
		w.add(pdfout.Figure{Drawing: views.Elevation(w.s, f, w.code, w.st), MaxHeight: flightHeight})
	}
	if f.HasStringers() {
		steps := w.steps(f)
		text := strings.Join(steps.Items, "\n")
		w.add(pdfout.Heading{Level: 2, Text: "Cut sequence" + w.of})
		if as, ok := w.told[text]; ok {
			w.add(pdfout.Paragraph{Text: "As of " + as + "."})
		} else {
			w.told[text] = f.Name
			w.add(steps)
		}
	}
	if len(f.Boards) > 0 {
		w.cutList(report.CutList(w.s.Job, f, w.st), report.CutNotes(w.s.Job, f, w.st))
	}
}

func (w *work) cutList(rows []report.CutRow, notes []string) {
	t := pdfout.Table{Header: []string{"", "part", "stock or thickness", "ripped to", "length", "steps"}, Align: []drawing.Align{drawing.Right}}
	for _, row := range rows {
		t.Rows = append(t.Rows, []string{fmt.Sprint(row.Count), row.Part, row.Stock, row.Ripped, row.Length, row.Steps})
	}
	w.add(pdfout.Heading{Level: 2, Text: "Cut list" + w.of}, t)
	if len(notes) > 0 {
		w.add(pdfout.List{Items: notes})
	}
}

func (c cover) steps(f *layout.Flight) pdfout.List {
	list := pdfout.List{Numbered: true}
	for _, step := range lesson.CutSequence(c.s, f, c.st) {
		list.Items = append(list.Items, step.Title+". "+step.Text)
	}
	return list
}
