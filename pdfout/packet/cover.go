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
	return pdfout.Flow{Title: "Cover", Rulers: true, Blocks: append(c.head(), c.maps(60)...)}
}

// first is the cover of a whole set.
func (c cover) first() pdfout.Flow {
	blocks := append(c.head(), pdfout.Heading{Level: 2, Text: "How the sheets lie"})
	return pdfout.Flow{Title: "Cover", Rulers: true, Blocks: append(blocks, c.maps(40)...)}
}

func (c cover) head() []pdfout.Block {
	return []pdfout.Block{
		pdfout.Heading{Level: 1, Text: c.title()},
		pdfout.Paragraph{Text: printFirst},
		pdfout.Table{Rows: c.numbers()},
		pdfout.List{Items: lesson.Cautions},
	}
}

// numbers are the figures a framer checks against the site before cutting.
func (c cover) numbers() [][]string {
	s, st := c.s, c.st
	rows := [][]string{
		{"total rise, finished to finished", st.Format(s.TotalRise)},
		{"risers", fmt.Sprintf("%d at %s  (%s)", s.Risers, st.InchesMM(s.UnitRise), st.DecimalMM(s.UnitRise))},
	}
	for _, f := range s.Flights() {
		rows = append(rows, []string{"unit run", fmt.Sprintf("%s, %d treads", st.Inches(f.UnitRun), f.Treads)})
		for i := range f.Stringers {
			g := &f.Stringers[i]
			length := "longer than any stock length sold"
			if g.StockLength > 0 {
				length = st.Format(g.StockLength)
			}
			rows = append(rows,
				[]string{fmt.Sprintf("%s, %d off (%s)", g.Name, len(g.Positions), g.Where(f.Spec.Stringer.Count)),
					fmt.Sprintf("least blank %s, stock %s", st.InchesMM(g.LeastBlank), length)},
				[]string{"bottom drop, first riser cut", st.InchesMM(g.BottomDrop) + ", " + st.InchesMM(g.FirstRiserCut)},
				[]string{"seat cut, head plumb cut", st.InchesMM(g.SeatCut) + ", " + st.InchesMM(g.HeadCut)},
				[]string{"notch depth, throat", st.InchesMM(g.NotchDepth) + ", " + st.InchesMM(g.Throat)},
			)
		}
	}
	return append(rows, []string{"how figures are printed", report.Legend(st)})
}

// maps shows how each part's sheets lie together, and counts them.
func (c cover) maps(height float64) []pdfout.Block {
	var blocks []pdfout.Block
	for _, t := range c.tilings {
		caption := fmt.Sprintf("%s: %d %s of %s", t.Part.Title, len(t.Sheets), plural(len(t.Sheets), "sheet"), c.paper.Name)
		blocks = append(blocks, pdfout.Figure{Drawing: t.Map(), MaxHeight: height, Caption: caption, NoScale: true})
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
		blocks = append(blocks, pdfout.Figure{Drawing: views.Elevation(c.s, f, c.st), MaxHeight: 120})
		for i := range f.Stringers {
			g := &f.Stringers[i]
			title := "Cut sequence"
			if len(f.Stringers) > 1 {
				title += ", " + g.Name + " (" + g.Where(f.Spec.Stringer.Count) + ")"
			}
			blocks = append(blocks, pdfout.Heading{Level: 2, Text: title}, c.steps(f, g))
		}
		blocks = append(blocks, pdfout.Heading{Level: 2, Text: "Cut list"}, c.cutList(f))
	}
	return pdfout.Flow{Title: "Cut sequence", Blocks: blocks}
}

func (c cover) steps(f *layout.Flight, g *layout.Group) pdfout.List {
	list := pdfout.List{Numbered: true}
	for _, step := range lesson.CutSequence(c.s, f, g, c.st) {
		list.Items = append(list.Items, step.Title+". "+step.Text)
	}
	return list
}

func (c cover) cutList(f *layout.Flight) pdfout.Table {
	t := pdfout.Table{Header: []string{"", "part", "stock or thickness", "ripped to", "length"}, Align: []drawing.Align{drawing.Right}}
	for _, row := range report.CutList(f, c.st) {
		t.Rows = append(t.Rows, []string{fmt.Sprint(row.Count), row.Part, row.Stock, row.Ripped, row.Length})
	}
	return t
}
