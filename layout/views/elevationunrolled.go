package views

import (
	"fmt"

	"gonum.org/v1/gonum/spatial/r2"

	"stepoff/layout"
	"stepoff/layout/drawing"
	"stepoff/layout/geom"
	"stepoff/layout/turn"
	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

// WindersElevation draws a turn of winders from the side as if its walkline ran
// straight on: treads, riser boards, the boxes they stand on, what is climbed from
// and to.
func WindersElevation(s *layout.Stairway, w *layout.Winders, code *rules.Code, st measure.Style) *drawing.Drawing {
	e := unrolledElevation{unrolled: unrollWinders(s, w), st: st, d: elevationOf(w.Name, w.Laid, walklines(w.Spec.Depths.Walklines), st)}
	e.low = w.Levels[0] - w.UnitRise
	if w.Spec.Boxes {
		e.onBoxes()
	}
	rails(e.d, s, w, code, st, e.draw())
	e.each()
	return e.d
}

// CurveElevation draws a curved flight likewise.
func CurveElevation(s *layout.Stairway, c *layout.Curve, code *rules.Code, st measure.Style) *drawing.Drawing {
	e := unrolledElevation{unrolled: unrollCurve(s, c), st: st, d: elevationOf(c.Name, c.Laid, walklines(c.Spec.Depths.Walklines), st)}
	e.low = c.StartLevel
	shown := floorShown * s.TotalRise.MM()
	e.d.Line(drawing.Outline, geom.Pt(-front(s)-shown, e.low), geom.Pt(e.long(), e.low))
	top := e.nosing(len(e.levels))
	e.d.Polyline(drawing.Outline, r2.Add(top, geom.Pt(shown, 0)), top, geom.Pt(top.X, top.Y-s.Job.Tread.Thickness.MM()))
	rails(e.d, s, c, code, st, e.draw())
	e.total()
	return e.d
}

func elevationOf(name string, l *turn.Laid, walkline measure.Length, st measure.Style) *drawing.Drawing {
	return &drawing.Drawing{Name: name + "-elevation", Title: fmt.Sprintf("%s from the side, unrolled along the walkline %s from the inside edge", name, st.Inches(walkline))}
}

// walklines is the one that views are unrolled along.
func walklines(all []measure.Length) measure.Length { return all[0] }

type unrolledElevation struct {
	unrolled
	d   *drawing.Drawing
	st  measure.Style
	low float64 // level that the drawing begins at
}

// onBoxes draws the boxes; of the first one as much as is shown.
func (e unrolledElevation) onBoxes() {
	for k, b := range e.boxes() {
		if k > 0 {
			e.d.Add(drawing.Path{Layer: drawing.Outline, Path: geom.Rect(b)})
			continue
		}
		e.d.Polyline(drawing.Outline, geom.Pt(b.Min.X, e.low), geom.Pt(b.Min.X, b.Max.Y), b.Max, geom.Pt(b.Max.X, e.low))
	}
}

// draw draws what winders and curves have alike: boards, the line through the
// nosings, which is returned, the level of each tread under it.
func (e unrolledElevation) draw() (line []geom.Point) {
	for _, b := range e.unrolled.boards() {
		e.d.Add(drawing.Path{Layer: drawing.Thin, Path: geom.Rect(b.Box)})
	}
	for k := range e.lines {
		line = append(line, e.nosing(k))
	}
	e.d.Polyline(drawing.Centre, line...)
	t, rise := e.s.Job.Tread.Thickness.MM(), e.rise()
	for k, level := range e.levels {
		e.d.Text(geom.Pt(e.lines[k]+levelIn*rise, level-t-levelUnder*rise), drawing.Small, drawing.Left, fmt.Sprintf("%d at %s", k+1, e.st.FormatMM(level)))
	}
	e.d.Dim(drawing.Vertical, geom.Pt(e.nosing(0).X, e.levels[0]-rise), e.nosing(0), -dimRow, "unit rise "+e.st.InchesMM(rise))
	return line
}

// Where a tread's level is written, from its riser line and its underside, as
// shares of the unit rise.
const (
	levelIn    = 0.15
	levelUnder = 0.55
)

// each says how deep each tread is along the walkline.
func (e unrolledElevation) each() {
	for k := range e.levels {
		e.d.Dim(drawing.Horizontal, geom.Pt(e.nosing(k).X, e.low), geom.Pt(e.nosing(k+1).X, e.low), -float64(1+k%2)*dimRow, e.st.InchesMM(e.lines[k+1]-e.lines[k]))
	}
}

// total says how far the treads go along the walkline, and how high.
func (e unrolledElevation) total() {
	n := len(e.levels)
	first, last := e.nosing(0), e.nosing(n)
	e.d.Dim(drawing.Horizontal, geom.Pt(first.X, e.low), geom.Pt(e.nosing(1).X, e.low), -dimRow, e.st.InchesMM(e.lines[1]))
	e.d.Dim(drawing.Horizontal, geom.Pt(first.X, e.low), geom.Pt(last.X, e.low), -2*dimRow, fmt.Sprintf("%d treads, %s", n, e.st.FormatMM(e.lines[n])))
	e.d.Dim(drawing.Vertical, geom.Pt(last.X+floorShown*e.s.TotalRise.MM(), e.low), geom.Pt(last.X+floorShown*e.s.TotalRise.MM(), last.Y), dimRow,
		fmt.Sprintf("%d risers, %s", n+1, e.st.FormatMM(last.Y-e.low)))
}
