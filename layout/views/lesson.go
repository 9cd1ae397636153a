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
	d := &drawing.Drawing{Name: fmt.Sprintf("lesson-%02d", k+1), Title: captions[stage.Figure]}
	switch e := stage.Element.(type) {
	case nil:
		wholeFigure(d, s, stage, st)
	case *layout.Flight:
		flightFigure(d, s, e, stage, st)
	case *layout.Landing:
		landingLevel(d, s, e, st)
	case *layout.Winders:
		if stage.Figure == lesson.FigureTapered {
			taperedBoard(d, s, e.Name, st)
			break
		}
		windersFigure(d, s, e, stage.Figure == lesson.FigureWalls, st)
	case *layout.Curve:
		switch stage.Figure {
		case lesson.FigureTapered:
			taperedBoard(d, s, e.Name, st)
		case lesson.FigureStrings:
			unrolledSteps(d, e, st)
		default:
			curveFigure(d, e, st)
		}
	}
	return d
}

// captions say what each figure shows. What is new on it is bold.
var captions = map[lesson.Figure]string{
	lesson.FigureRise:       "The rise is taken plumb between the finished floors",
	lesson.FigurePole:       "The story pole lying down: riser numbers above it, levels below",
	lesson.FigureStep:       "Rise and run, from nosing to nosing",
	lesson.FigureHeadroom:   "The headroom, and the opening it needs",
	lesson.FigureBlank:      "The blank, its crown drawn too high to be seen",
	lesson.FigureSquare:     "The square on the edge, its corner in the board",
	lesson.FigurePitchBoard: "The pitch board on the edge, its corner in the board",
	lesson.FigureFirstStep:  "The first tread line, in bold",
	lesson.FigureTips:       "The tips taped, tread and riser lines drawn",
	lesson.FigureThroat:     "Square across the board: above, the notch depth; below, the throat",
	lesson.FigureDrop:       "The first riser cut; dashed: a whole step down, and what is between",
	lesson.FigureFoot:       "The seat, in bold",
	lesson.FigureKicker:     "The notch for the kicker, in bold",
	lesson.FigureHead:       "The last tread line and the plumb cut, in bold",
	lesson.FigureLedger:     "The notch for the ledger, in bold",
	lesson.FigureStops:      "The saw stops at the ticks; dashed is left for the handsaw",
	lesson.FigureKerf:       "The board cut open along the saw's line",
	lesson.FigureTest:       "First riser cut at the foot; at the head the last tread cut below the floor",
	lesson.FigureTrace:      "The pattern and the next board",
	lesson.FigureBoards:     "The boards of the first steps: first riser board, and a tread",
	lesson.FigureLanding:    "The landing's level; below its flooring the sheathing and joists",
	lesson.FigureWinders:    "The setback, and the first depth on the walkline, a chain",
	lesson.FigureWalls:      "Where the riser lines meet the walls, from the corner",
	lesson.FigureCurve:      "The inside radius, and the first depth on the walkline, a chain",
	lesson.FigureTapered:    "The lowest tread on the piece it is cut from, its nosing below",
	lesson.FigureStrings:    "One step of the inside string, and below it of the outside one",
	lesson.FigureHousings:   "A string on its blank, as seen on its inner face",
	lesson.FigureAgain:      "The stringer on its blank",
}

func wholeFigure(d *drawing.Drawing, s *layout.Stairway, stage lesson.Stage, st measure.Style) {
	if stage.Figure == lesson.FigureRise {
		floorToFloor(d, s, st)
		return
	}
	lyingPole(d, s, stage.Part, st)
}

// flightFigure draws a stage of a flight: on its blank as it lies on the saw
// horses, or on the stair from the side.
func flightFigure(d *drawing.Drawing, s *layout.Stairway, f *layout.Flight, stage lesson.Stage, st measure.Style) {
	if len(f.Strings) > 0 {
		if stage.Figure == lesson.FigureHousings {
			stringOnBench(d, &f.Strings[0], st)
		} else {
			stepSection(d, s, f, st, false)
		}
		return
	}
	b := bench{d: d, f: f, g: &f.Stringers[0], st: st}
	switch stage.Figure {
	case lesson.FigureStep:
		stepSection(d, s, f, st, false)
	case lesson.FigureBoards:
		stepSection(d, s, f, st, true)
	case lesson.FigureHeadroom:
		headroomFigure(d, s, f, stage.Opening, st)
	case lesson.FigureTest:
		testFit(d, s, f, st)
	case lesson.FigureKerf:
		kerfSection(d, b.g, st)
	case lesson.FigureBlank:
		b.whole()
		b.pick()
	case lesson.FigureSquare, lesson.FigurePitchBoard:
		b.foot(1.6)
		b.settings()
	case lesson.FigureFirstStep:
		b.foot(2.2)
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
