package views

import (
	"fmt"

	"stepoff/layout"
	"stepoff/layout/drawing"
	"stepoff/layout/lesson"
	"stepoff/spec/measure"
)

// Lesson draws one stage of the layout: what it adds in bold, what was there
// before in thin lines. k is the stage's place in its lesson, for the name.
func Lesson(s *layout.Stairway, stage lesson.Stage, k int, st measure.Style) *drawing.Drawing {
	d := &drawing.Drawing{Name: fmt.Sprintf("lesson-%02d", k+1), Title: stage.Title}
	switch e := stage.Element.(type) {
	case nil:
		wholeFigure(d, s, stage, st)
	case *layout.Flight:
		flightFigure(d, s, e, stage.Figure, st)
	case *layout.Landing:
		landingLevel(d, s, e, st)
	case *layout.Winders:
		windersFigure(d, s, e, stage.Figure == lesson.FigureWalls, st)
	case *layout.Curve:
		curveFigure(d, e, st)
	}
	return d
}

func wholeFigure(d *drawing.Drawing, s *layout.Stairway, stage lesson.Stage, st measure.Style) {
	if stage.Figure == lesson.FigureRise {
		floorToFloor(d, s, st)
		return
	}
	lyingPole(d, s, stage.Part, st)
}

// onBench are the figures drawn on the blank, each with what it adds.
func flightFigure(d *drawing.Drawing, s *layout.Stairway, f *layout.Flight, figure lesson.Figure, st measure.Style) {
	b := bench{d: d, f: f, g: &f.Stringers[0], st: st}
	switch figure {
	case lesson.FigureStep:
		stepSection(d, s, f, st, false)
	case lesson.FigureBoards:
		stepSection(d, s, f, st, true)
	case lesson.FigureHeadroom:
		headroomFigure(d, s, f, st)
	case lesson.FigureTest:
		testFit(d, s, f, st)
	case lesson.FigureKerf:
		kerfSection(d, b.g, st)
	case lesson.FigureBlank:
		b.whole()
		b.pick()
	case lesson.FigureSquare:
		b.foot(1.6)
		b.settings()
	case lesson.FigureFirstStep:
		b.foot(3.2)
		b.firstStep()
	case lesson.FigureTips:
		b.whole()
		b.tips()
	case lesson.FigureThroat:
		b.foot(2.6)
		b.throat()
	case lesson.FigureDrop:
		b.foot(1.7)
		b.drop()
	case lesson.FigureFoot:
		b.foot(1.7)
		b.seat()
	case lesson.FigureKicker:
		b.foot(1.7)
		b.kicker()
	case lesson.FigureHead:
		b.head(1.6)
		b.plumb()
	case lesson.FigureLedger:
		b.head(1.6)
		b.ledger()
	case lesson.FigureStops:
		b.foot(2.4)
		b.stops()
	case lesson.FigureTrace:
		b.whole()
		b.trace()
	case lesson.FigureAgain:
		b.whole()
		b.again()
	}
}
