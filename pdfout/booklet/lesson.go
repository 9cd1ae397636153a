package booklet

import (
	"fmt"
	"strings"
	"time"

	"stepoff/layout"
	"stepoff/layout/drawing"
	"stepoff/layout/lesson"
	"stepoff/layout/views"
	"stepoff/pdfout"
	"stepoff/spec"
	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

// Options say what a booklet holds and how it is printed.
type Options struct {
	Paper   pdfout.Paper
	Style   measure.Style
	Code    *rules.Code // nil: no limits are told
	Level   lesson.Level
	Models  []int     // also a template of the stringers for a cardboard model, one to so many
	Stamp   []string  // what a failing job fails
	Created time.Time // zero: undated
}

// Lesson is the booklet that teaches a stairway's layout.
func Lesson(s *layout.Stairway, o Options) (pdfout.Document, error) {
	doc := pdfout.Document{
		Title: name(s), Number: s.Job.Number, Date: s.Job.Date, Subject: "The layout step by step",
		Created: o.Created, Paper: o.Paper, Units: o.Style.Units, Stamp: o.Stamp,
	}
	if len(s.Job.Source) > 0 {
		doc.Attachments = []pdfout.Attachment{{Name: "job.yaml", Description: "the job this lesson was made from", Bytes: s.Job.Source}}
	}
	stages := lesson.Teach(s, o.Code, o.Style, o.Level)
	words, err := vocabulary()
	if err != nil {
		return doc, err
	}
	doc.Pages = []pdfout.Page{opening(s, stages, o), words, steps(s, stages, o.Style), checklist(stages)}
	models, err := modelPages(s, o)
	if err != nil {
		return doc, err
	}
	doc.Pages = append(doc.Pages, models...)
	return doc, nil
}

// Paper is a job's paper as pages take it.
func Paper(p spec.Paper) pdfout.Paper {
	return pdfout.Paper{
		Name: p.Size.Name, Width: p.Size.Width, Height: p.Size.Height, Roll: p.Size.Roll,
		Margin: p.Margin, Overlap: p.Overlap, ScaleX: p.ScaleX, ScaleY: p.ScaleY,
	}
}

func name(s *layout.Stairway) string {
	if s.Job.Name == "" {
		return "Stair"
	}
	return s.Job.Name
}

// opening is the first page: what stair it is, what it measures, the cautions.
func opening(s *layout.Stairway, stages []lesson.Stage, o Options) pdfout.Flow {
	st := o.Style
	rows := [][]string{
		{"total rise, finished to finished", st.Format(s.TotalRise)},
		{"risers", fmt.Sprint(s.Risers)},
	}
	if r, ok := s.UnitRise(); ok {
		rows = append(rows, []string{"unit rise", st.InchesMM(r) + "  (" + st.DecimalMM(r) + ")"})
	}
	for _, f := range s.Flights() {
		of := ""
		if len(s.Elements) > 1 {
			of = ", " + f.Name
		}
		rows = append(rows, []string{"unit run" + of, fmt.Sprintf("%s, %d treads", st.Inches(f.UnitRun), f.Treads)})
	}
	blocks := []pdfout.Block{
		pdfout.Heading{Level: 1, Text: name(s)},
		pdfout.Paragraph{Text: "The layout of this stair, step by step, with its own numbers. Read a step, look at its figure, then do it on the board."},
		pdfout.Table{Rows: rows},
		pdfout.Paragraph{Text: legend(st), Small: true},
	}
	if d := views.PlanSketch(s, "The stairway from above"); d != nil {
		blocks = append(blocks, pdfout.Figure{Drawing: d, MaxHeight: planHeight, NoScale: true})
	}
	blocks = append(blocks,
		pdfout.Heading{Level: 2, Text: "Cautions"}, pdfout.List{Items: lesson.Cautions(s)},
		pdfout.Heading{Level: 2, Text: "The steps"}, contents(stages))
	return pdfout.Flow{Title: "The lesson", Blocks: blocks}
}

// contents lists the steps in two columns.
func contents(stages []lesson.Stage) pdfout.Table {
	var t pdfout.Table
	half := (len(stages) + 1) / 2
	for k := range half {
		row := []string{fmt.Sprint(k + 1), stages[k].Title}
		if l := half + k; l < len(stages) {
			row = append(row, fmt.Sprint(l+1), stages[l].Title)
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

// planHeight is that of the plan on the first page, millimetres.
const planHeight = 48

// legend says how figures are printed.
func legend(st measure.Style) string {
	if st.Units == measure.Metric {
		return "Figures are whole millimetres: + the true length is a little more, - a little less."
	}
	return "Figures are inches to the nearest " + st.Inches(st.Fineness()) + ": + the true length is a little more, - a little less."
}

// partsHeight and kindHeight are those of the pictures of the vocabulary.
const (
	partsHeight = 170
	kindHeight  = 68
)

// vocabulary shows the parts of a stair with their names, what the words mean,
// and the kinds of stairway.
func vocabulary() (pdfout.Flow, error) {
	kinds, err := lesson.Kinds()
	if err != nil {
		return pdfout.Flow{}, err
	}
	s := kinds[0].Stairway
	d, parts := views.Parts(s, s.Flights()[0], lesson.PartNames)
	blocks := []pdfout.Block{
		pdfout.Heading{Level: 1, Text: "The parts of a stair"},
		pdfout.Figure{Drawing: d, MaxHeight: partsHeight, NoScale: true},
		partNames(parts),
		pdfout.PageBreak{},
		pdfout.Heading{Level: 1, Text: "The words"},
		pdfout.Table{Rows: glossary()},
		pdfout.PageBreak{},
		pdfout.Heading{Level: 1, Text: "Kinds of stairway"},
	}
	for i := 0; i+1 < len(kinds); i += 2 {
		blocks = append(blocks, pdfout.Columns{Left: kind(kinds[i]), Right: kind(kinds[i+1])})
	}
	return pdfout.Flow{Title: "The words", Blocks: blocks}, nil
}

func kind(k lesson.Kind) []pdfout.Block {
	return []pdfout.Block{pdfout.Figure{
		Drawing: views.PlanSketch(k.Stairway, k.Name), MaxHeight: kindHeight, NoScale: true, Caption: k.Name + ". " + k.Text,
	}}
}

// partNames tells which letter is which part, three to a row.
func partNames(parts []views.NamedPart) pdfout.Table {
	var t pdfout.Table
	rows := (len(parts) + 2) / 3
	for k := range rows {
		var row []string
		for i := k; i < len(parts); i += rows {
			row = append(row, lesson.PartLetter(i), parts[i].Name)
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

func glossary() [][]string {
	var rows [][]string
	for _, t := range lesson.Glossary {
		rows = append(rows, []string{t.Word, t.Meaning})
	}
	return rows
}

// steps are the stages, each half a page.
func steps(s *layout.Stairway, stages []lesson.Stage, st measure.Style) pdfout.Flow {
	f := pdfout.Flow{Title: "The steps"}
	for k, stage := range stages {
		d := views.Lesson(s, stage, k, st)
		f.Blocks = append(f.Blocks, pdfout.Band{Of: 2, Blocks: stageBlocks(k, stage, d)})
	}
	return f
}

// tall are the figures that stand beside their text; the others are as wide as the
// page and stand above it.
var tall = map[lesson.Figure]bool{
	lesson.FigureRise: true, lesson.FigureStep: true, lesson.FigureSquare: true, lesson.FigurePitchBoard: true, lesson.FigureFirstStep: true, lesson.FigureHeadroom: true, lesson.FigureDrop: true,
	lesson.FigureFoot: true, lesson.FigureKicker: true, lesson.FigureHead: true, lesson.FigureLedger: true,
	lesson.FigureTest: true, lesson.FigureBoards: true, lesson.FigureLanding: true, lesson.FigureWinders: true,
	lesson.FigureWalls: true, lesson.FigureCurve: true, lesson.FigureTapered: true, lesson.FigureStrings: true,
}

// tallHeight is that of a figure that stands beside its text, millimetres: what
// half a letter page leaves below a heading.
const tallHeight = 100

func stageBlocks(k int, stage lesson.Stage, d *drawing.Drawing) []pdfout.Block {
	heading := pdfout.Heading{Level: 2, Text: fmt.Sprintf("%d. %s", k+1, stage.Title)}
	figure := pdfout.Figure{Drawing: d, NoScale: true}
	text := pdfout.Paragraph{Text: stage.Text}
	if tall[stage.Figure] {
		figure.MaxHeight = tallHeight
		beside := append([]pdfout.Block{text}, append(sums(stage), warnings(stage)...)...)
		return []pdfout.Block{heading, pdfout.Columns{Left: []pdfout.Block{figure}, Right: beside}}
	}
	if len(stage.Sums) == 0 {
		return append([]pdfout.Block{heading, figure, text}, warnings(stage)...)
	}
	return []pdfout.Block{heading, figure, text, pdfout.Columns{Left: sums(stage), Right: warnings(stage)}}
}

func sums(stage lesson.Stage) (blocks []pdfout.Block) {
	for _, sum := range stage.Sums {
		blocks = append(blocks, pdfout.Paragraph{Text: sum, Small: true})
	}
	return blocks
}

// warnings are the common mistake, how to see it, and the words that are new.
func warnings(stage lesson.Stage) []pdfout.Block {
	blocks := []pdfout.Block{pdfout.Paragraph{Text: "Common mistake: " + stage.Mistake + " To see it: " + stage.Tell, Small: true}}
	var words []string
	for _, t := range stage.Terms {
		words = append(words, t.Word+": "+t.Meaning)
	}
	if len(words) > 0 {
		blocks = append(blocks, pdfout.Paragraph{Text: "New words. " + strings.Join(words, "; ") + ".", Small: true})
	}
	return blocks
}

// blank is room to write by hand.
const blank = "____________"

// checklist is the page that is signed.
func checklist(stages []lesson.Stage) pdfout.Flow {
	t := pdfout.Table{Header: []string{"", "step", "done by", "looked at by"}}
	for k, stage := range stages {
		t.Rows = append(t.Rows, []string{fmt.Sprint(k + 1), stage.Title, blank, blank})
	}
	return pdfout.Flow{Title: "Checklist", Blocks: []pdfout.Block{
		pdfout.Heading{Level: 1, Text: "Checklist"},
		pdfout.Paragraph{Text: "Sign each step when it is done, and have it looked at before the saw is picked up."},
		t,
		pdfout.Table{Rows: [][]string{{"apprentice", blank + blank, "date", blank}, {"teacher", blank + blank, "date", blank}}},
	}}
}
