package booklet

import (
	"fmt"
	"strings"

	"stepoff/layout/drawing"
	"stepoff/layout/lesson"
	"stepoff/layout/lesson/exercise"
	"stepoff/layout/views"
	"stepoff/pdfout"
	"stepoff/spec/measure"
)

// Practice says which set of exercises is printed, and how.
type Practice struct {
	Seed  uint64
	Count int
	Level lesson.Level
	Units measure.Units
	Paper pdfout.Paper
}

// Exercises are the sheets of a set of problems, two to a page with room to work,
// and its answers with how they are found.
func Exercises(p Practice) (problems, answers pdfout.Document, err error) {
	set, err := exercise.Set(p.Seed, p.Count, p.Level, p.Units)
	if err != nil {
		return problems, answers, err
	}
	st := measure.Style{Units: p.Units}
	ask := pdfout.Flow{Title: "Exercises"}
	told := pdfout.Flow{Title: "Answers", Blocks: []pdfout.Block{
		pdfout.Heading{Level: 1, Text: "Answers"},
		pdfout.Paragraph{Text: p.name() + ". An answer is right within what stands beside it."},
		pdfout.Paragraph{Text: legend(st), Small: true},
	}}
	for i, x := range set {
		d, err := problemFigure(x, st)
		if err != nil {
			return problems, answers, err
		}
		ask.Blocks = append(ask.Blocks, pdfout.Band{Of: 2, Blocks: problem(i, x, d)})
		told.Blocks = append(told.Blocks, pdfout.Band{Of: answersTo, Blocks: solution(i, x, st)})
	}
	problems = p.document("Exercises", ask)
	answers = p.document("Answers", told)
	return problems, answers, nil
}

// answersTo is how many answers a page is given to; one that needs more takes it.
const answersTo = 6

func (p Practice) name() string {
	level := "first level"
	if p.Level == lesson.Full {
		level = "full level"
	}
	return fmt.Sprintf("Set %d, %d exercises, %s", p.Seed, p.Count, level)
}

func (p Practice) document(subject string, flow pdfout.Flow) pdfout.Document {
	return pdfout.Document{Title: p.name(), Subject: subject, Paper: p.Paper, Units: p.Units, Pages: []pdfout.Page{flow}}
}

// problemFigure is the drawing beside a problem; nil where it has none.
func problemFigure(x exercise.Problem, st measure.Style) (*drawing.Drawing, error) {
	switch {
	case len(x.Names) > 0:
		d, parts := views.Parts(x.Stairway, x.Stairway.Flights()[0], x.Names)
		if len(parts) != len(x.Names) {
			return nil, fmt.Errorf("the drawing of the parts lacks one of %s", strings.Join(x.Names, ", "))
		}
		return d, nil
	case x.Drawn != nil:
		return views.Drawn(x.Drawn, st), nil
	}
	return nil, nil
}

// Heights of what a problem's half page holds, millimetres.
const (
	partsFigure = 95
	drawnFigure = 46
	drawnSpace  = 12
)

func problem(i int, x exercise.Problem, d *drawing.Drawing) []pdfout.Block {
	blocks := []pdfout.Block{pdfout.Heading{Level: 2, Text: fmt.Sprintf("%d. %s", i+1, x.Title)}, pdfout.Paragraph{Text: x.Ask}}
	if len(x.Names) > 0 {
		lines := pdfout.Table{}
		for _, a := range x.Answers {
			lines.Rows = append(lines.Rows, []string{a.Name, blank + blank})
		}
		return append(blocks, pdfout.Columns{
			Left:  []pdfout.Block{pdfout.Figure{Drawing: d, MaxHeight: partsFigure, NoScale: true, Caption: "A stair from the side"}},
			Right: []pdfout.Block{lines}})
	}
	var given [][]string
	for _, g := range x.Given {
		given = append(given, []string{g.Name, g.Value})
	}
	if x.Drawn != nil {
		return append(blocks, drawnProblem(x, given, d)...)
	}
	var wanted [][]string
	for _, a := range x.Answers {
		wanted = append(wanted, []string{a.Name, blank + blank})
	}
	blocks = append(blocks, pdfout.Columns{Left: []pdfout.Block{pdfout.Table{Rows: given}}, Right: []pdfout.Block{pdfout.Table{Rows: wanted}}})
	return append(blocks, pdfout.Space{})
}

// drawnProblem shows a drawing over what is given and room to answer.
func drawnProblem(x exercise.Problem, given [][]string, d *drawing.Drawing) []pdfout.Block {
	var wanted []pdfout.Block
	for _, a := range x.Answers {
		wanted = append(wanted, pdfout.Paragraph{Text: a.Name}, pdfout.Space{Height: drawnSpace})
	}
	return []pdfout.Block{
		pdfout.Figure{Drawing: d, MaxHeight: drawnFigure, NoScale: true},
		pdfout.Columns{Left: []pdfout.Block{pdfout.Table{Rows: given}}, Right: wanted},
	}
}

func solution(i int, x exercise.Problem, st measure.Style) []pdfout.Block {
	blocks := []pdfout.Block{pdfout.Heading{Level: 3, Text: fmt.Sprintf("%d. %s", i+1, x.Title)}}
	t := pdfout.Table{}
	for _, a := range x.Answers {
		row := []string{a.Name, a.Value}
		if a.Tolerance > 0 {
			row = append(row, "within "+tolerance(a.Tolerance, st))
		}
		t.Rows = append(t.Rows, row)
	}
	var worked []pdfout.Block
	for _, w := range x.Worked {
		worked = append(worked, pdfout.Paragraph{Text: w, Small: true})
	}
	return append(blocks, pdfout.Columns{Left: []pdfout.Block{t}, Right: worked})
}

// tolerance prints what an answer may be off by, which may be half of a tape's
// marks.
func tolerance(l measure.Length, st measure.Style) string {
	if st.Units == measure.Metric && l%measure.Millimetre != 0 {
		return st.Decimal(l)
	}
	return measure.Style{Units: st.Units, Denominator: 32}.Inches(l)
}
