package lesson

import (
	"fmt"
	"regexp"
	"strings"

	"stepoff/layout"
	"stepoff/spec"
	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

// Level is how much a lesson tells.
type Level int

// First is what an apprentice needs for a first stair; Full is everything.
const (
	First Level = iota
	Full
)

// ParseLevel reads the word of a level.
func ParseLevel(word string) (Level, error) {
	switch word {
	case "first":
		return First, nil
	case "full":
		return Full, nil
	}
	return First, fmt.Errorf("%s is no level: write first or full", measure.Quote(word))
}

// Stage is one step of the layout as it is taught: one drawing, what is done, the
// arithmetic, and what commonly goes wrong.
type Stage struct {
	Figure  Figure
	Element layout.Element // the member it is about; nil: the whole stairway
	Title   string
	Text    string // one or two sentences
	Sums    []string
	Mistake string // the mistake commonly made here
	Tell    string // how to see it
	Terms   []Term // of the trade, met here for the first time

	Part    layout.Part // between fixed levels, of the stage that divides it
	Opening float64     // needed for the headroom, level from the head plumb cut, of the stage that tells of it
}

// Figure says which drawing shows a stage.
type Figure int

// The drawings.
const (
	FigureRise Figure = iota
	FigurePole
	FigureStep
	FigureHeadroom
	FigureBlank
	FigureSquare
	FigurePitchBoard
	FigureFirstStep
	FigureTips
	FigureThroat
	FigureDrop
	FigureFoot
	FigureKicker
	FigureHead
	FigureLedger
	FigureStops
	FigureKerf
	FigureTest
	FigureTrace
	FigureBoards
	FigureLanding
	FigureWinders
	FigureWalls
	FigureCurve
	FigureTapered
	FigureStrings
	FigureHousings
	FigureAgain
)

// Teach tells the layout of a stairway as ordered stages. Every number in it
// comes from the stairway, and every limit from its code (nil: none is told).
func Teach(s *layout.Stairway, code *rules.Code, st measure.Style, level Level) []Stage {
	t := &teacher{s: s, code: code, st: st, level: level, met: map[string]bool{}}
	t.measuring()
	first := true
	for i, e := range s.Elements {
		t.element, t.index = e, i
		switch e := e.(type) {
		case *layout.Flight:
			if len(e.Strings) > 0 {
				t.f = e
				t.strung()
				continue
			}
			if len(e.Stringers) == 0 {
				continue
			}
			t.f, t.g = e, &e.Stringers[0]
			if first {
				t.stringer()
			} else {
				t.again()
			}
			first = false
		case *layout.Landing:
			t.landing()
		case *layout.Winders:
			t.winders()
		case *layout.Curve:
			t.curve()
		}
	}
	return t.stages
}

// teacher gathers the stages.
type teacher struct {
	s     *layout.Stairway
	code  *rules.Code
	st    measure.Style
	level Level

	part    layout.Part    // whose risers are being shared
	element layout.Element // the member in hand
	index   int            // of it
	f       *layout.Flight // the flight in hand, and its first outline
	g       *layout.Group

	met    map[string]bool // terms explained
	stages []Stage
}

func (t *teacher) full() bool { return t.level == Full }

// stage adds one. In its texts {total rise} stands for a figure of the table in
// figures.go, [throat] for a term of the glossary.
func (t *teacher) stage(figure Figure, title, text string, sums []string, mistake, tell string) {
	e := t.element
	if figure == FigureRise || figure == FigurePole {
		e = nil
	}
	stage := Stage{Figure: figure, Element: e, Title: title}
	stage.Text = t.fill(text, &stage)
	for _, sum := range sums {
		if sum != "" {
			stage.Sums = append(stage.Sums, t.fill(sum, &stage))
		}
	}
	stage.Mistake, stage.Tell = t.fill(mistake, &stage), t.fill(tell, &stage)
	t.stages = append(t.stages, stage)
}

var slot = regexp.MustCompile(`\{[^{}]*\}|\[[^\[\]]*\]`)

// fill puts figures and terms into a text. A name that is none is a mistake of
// this package, which its tests find; the text then shows it.
func (t *teacher) fill(text string, stage *Stage) string {
	return slot.ReplaceAllStringFunc(text, func(s string) string {
		name := s[1 : len(s)-1]
		if s[0] == '{' {
			if figure, ok := figures[name]; ok {
				return figure(t)
			}
			return s
		}
		term, ok := Explain(name)
		if !ok {
			return s
		}
		if !t.met[term.Word] {
			t.met[term.Word] = true
			stage.Terms = append(stage.Terms, term)
		}
		return name
	})
}

// when is a line that is told only where it applies.
func when(applies bool, line string) string {
	if applies {
		return line
	}
	return ""
}

// joined joins the sentences that apply.
func joined(sentences ...string) string {
	var kept []string
	for _, s := range sentences {
		if s != "" {
			kept = append(kept, s)
		}
	}
	return strings.Join(kept, " ")
}

func (t *teacher) job() *spec.Job { return t.s.Job }
