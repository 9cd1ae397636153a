package packet

import (
	"fmt"

	"stepoff/layout"
	"stepoff/layout/drawing"
	"stepoff/layout/lesson"
	"stepoff/layout/report"
	"stepoff/layout/views"
	"stepoff/pdfout"
	"stepoff/spec/measure"
)

// printFirst stands at the head of every cover.
const printFirst = "Print this page first, at 100 %, with no fit to page. Measure both of its rulers with a tape: if either is not true, stop, and set the printer right before printing the rest."

// cover builds the pages before the sheets.
type cover struct {
	s       *layout.Stairway
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

// short is the one page before parts that were asked for by name.
func (c cover) short() pdfout.Flow {
	return pdfout.Flow{Title: "Cover", Rulers: true, Blocks: append(c.head(), c.maps()...)}
}

// first is the cover of a whole set.
func (c cover) first() pdfout.Flow {
	blocks := append(c.head(), pdfout.Heading{Level: 2, Text: "How the sheets lie"})
	return pdfout.Flow{Title: "Cover", Rulers: true, Blocks: append(blocks, c.maps()...)}
}

func (c cover) head() []pdfout.Block {
	blocks := []pdfout.Block{
		pdfout.Heading{Level: 1, Text: c.title()},
		pdfout.Paragraph{Text: printFirst},
		pdfout.Table{Rows: c.numbers()},
	}
	for _, f := range c.s.Flights() {
		if len(f.Stringers) > 0 {
			blocks = append(blocks, c.outlines(f))
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
	for _, f := range s.Flights() {
		if len(f.Stringers) > 0 {
			g := &f.Stringers[0]
			rows = append(rows, []string{"unit run, treads", fmt.Sprintf("%s, %d", st.Inches(f.UnitRun), f.Treads)},
				[]string{"header to foot", report.Foot(f, st)}, []string{"notch depth, throat", st.InchesMM(g.NotchDepth) + ", " + st.InchesMM(g.Throat)})
		}
	}
	return append(rows, []string{"how figures are printed", report.Legend(st)})
}

// outlines are the figures that differ from one stringer to the next.
func (c cover) outlines(f *layout.Flight) pdfout.Table {
	st := c.st
	t := pdfout.Table{Header: []string{"stringer", "stands", "least blank", "stock", "bottom drop (longer -)", "first riser cut", "seat", "plumb cut"}}
	for i := range f.Stringers {
		g := &f.Stringers[i]
		stock := "none sold so long"
		if g.StockLength > 0 {
			stock = fmt.Sprintf("%d of %s", len(g.Positions), st.Format(g.StockLength))
		}
		t.Rows = append(t.Rows, []string{g.Name, g.Where(f.Spec.Stringer.Count), st.InchesMM(g.LeastBlank), stock,
			st.InchesMM(g.BottomDrop), st.InchesMM(g.FirstRiserCut), st.InchesMM(g.SeatCut), st.InchesMM(g.HeadCut)})
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

// work is the cut sequence, the cut list and the stair drawn from the side.
func (c cover) work() pdfout.Flow {
	var blocks []pdfout.Block
	for _, f := range c.s.Flights() {
		blocks = append(blocks, pdfout.Figure{Drawing: views.Elevation(c.s, f, c.st), MaxHeight: 150})
		if len(f.Stringers) > 0 {
			blocks = append(blocks, pdfout.Heading{Level: 2, Text: "Cut sequence"}, c.steps(f))
		}
		if len(f.Boards) > 0 {
			blocks = append(blocks, pdfout.Heading{Level: 2, Text: "Cut list"}, c.cutList(f))
			if notes := report.CutNotes(c.s.Job, f, c.st); len(notes) > 0 {
				blocks = append(blocks, pdfout.List{Items: notes})
			}
		}
	}
	return pdfout.Flow{Title: "Cut sequence", Blocks: blocks}
}

func (c cover) steps(f *layout.Flight) pdfout.List {
	list := pdfout.List{Numbered: true}
	for _, step := range lesson.CutSequence(c.s, f, c.st) {
		list.Items = append(list.Items, step.Title+". "+step.Text)
	}
	return list
}

func (c cover) cutList(f *layout.Flight) pdfout.Table {
	t := pdfout.Table{Header: []string{"", "part", "stock or thickness", "ripped to", "length", "steps"}, Align: []drawing.Align{drawing.Right}}
	for _, row := range report.CutList(c.s.Job, f, c.st) {
		t.Rows = append(t.Rows, []string{fmt.Sprint(row.Count), row.Part, row.Stock, row.Ripped, row.Length, row.Steps})
	}
	return t
}
