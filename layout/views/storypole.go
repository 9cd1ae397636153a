package views

import (
	"fmt"
	"math"

	"stepoff/layout"
	"stepoff/layout/drawing"
	"stepoff/layout/geom"
	"stepoff/spec"
	"stepoff/spec/measure"
)

// poleWidth is the width of the story pole's strip: a 1x3, dressed 2 1/2 in.
const poleWidth = 63.5

// StoryPole draws the pole at full size: x is the height above the lower
// finished floor. The top of a finished tread, landing or floor is a line right
// across; the tread cut or the sheathing under it one half across. The words stand upright when the pole does.
func StoryPole(s *layout.Stairway, st measure.Style) *drawing.Drawing {
	d := &drawing.Drawing{Name: "story-pole", Title: "Story pole, full size"}
	low := 0.0
	tread := s.Job.Tread.Thickness.MM()
	for _, f := range s.Flights() {
		low = math.Min(low, f.StartLevel-f.Flooring.MM())
	}
	if _, ok := s.Elements[0].(*layout.Curve); ok && s.Job.Stringer.FootOn == spec.Rough {
		low = -s.Job.Levels.LowerFinish.MM()
	}
	high := s.TotalRise.MM()
	d.Line(drawing.Lumber, geom.Pt(low, 0), geom.Pt(high, 0))
	d.Line(drawing.Lumber, geom.Pt(low, poleWidth), geom.Pt(high, poleWidth))

	// The words under a line right across stand below it, those of a half one
	// beside its end, when the pole stands on end.
	full := func(x float64, text string) {
		d.Line(drawing.Cut, geom.Pt(x, 0), geom.Pt(x, poleWidth))
		d.Add(poleText(x-labelGap-drawing.Small, poleWidth, text))
	}
	half := func(x float64, text string) {
		d.Line(drawing.Cut, geom.Pt(x, poleWidth/2), geom.Pt(x, poleWidth))
		d.Add(poleText(x-drawing.Small/2, poleWidth/2, text))
	}
	if low < 0 {
		full(low, "floor today "+inches(st, low))
	}
	full(0, "lower finished floor 0")
	treads := func(name string, levels []float64, below float64) {
		if len(s.Elements) > 1 {
			name += " "
		} else {
			name = ""
		}
		for k, level := range levels {
			half(level-tread, "cut "+inches(st, level-tread))
			if level < below {
				full(level, fmt.Sprintf("%stread %d: %s", name, k+1, inches(st, level)))
			}
		}
	}
	for _, e := range s.Elements {
		switch e := e.(type) {
		case *layout.Flight:
			treads(e.Name, e.TreadLevels, e.EndLevel)
		case *layout.Winders:
			treads(e.Name, e.Levels, math.Inf(1))
		case *layout.Curve:
			treads(e.Name, e.Levels, e.EndLevel)
		}
	}
	for _, l := range s.Landings() {
		full(l.Level, l.Name+": "+inches(st, l.Level))
		if l.FramingLevel < l.Level {
			half(l.FramingLevel, "sheathing "+inches(st, l.FramingLevel))
		}
	}
	if up := s.Job.Levels.UpperFinish.MM(); up > 0 {
		half(high-up, "today "+inches(st, high-up))
	}
	full(high, "upper finished floor "+inches(st, high))
	return d
}

// poleText writes across the pole, from y toward its stock edge.
func poleText(x, y float64, text string) drawing.Text {
	return drawing.Text{Layer: drawing.Note, At: geom.Pt(x, y-labelGap),
		Height: drawing.Small, Angle: -math.Pi / 2, Text: text}
}
