package views

import (
	"fmt"
	"math"

	"stepoff/layout"
	"stepoff/layout/drawing"
	"stepoff/layout/geom"
	"stepoff/spec/measure"
)

// The chart's size on the sheet, millimetres: it is drawn to no scale.
const (
	chartWide = 130.0
	chartTall = 125.0
	chartTick = 1.5
	chartBits = 24 // straight bits of a curve
)

// chartAdvice stands under every chart.
const chartAdvice = "advice, no approval: net section, the teeth ignored; tables such as DCA 6 rule where adopted"

// chartRange is which runs and rises the chart shows in a system of units.
type chartRange struct {
	runFrom, runTo, runStep measure.Length
	rises                   []measure.Length
	spanStep                measure.Length
}

func chartRangeOf(u measure.Units) chartRange {
	if u == measure.Metric {
		mm := measure.Millimetre
		return chartRange{220 * mm, 320 * mm, 20 * mm, []measure.Length{150 * mm, 160 * mm, 170 * mm, 180 * mm, 190 * mm, 200 * mm}, 200 * mm}
	}
	in := measure.Inch
	return chartRange{9 * in, 12 * in, in / 2, []measure.Length{6 * in, 13 * in / 2, 7 * in, 15 * in / 2, 31 * in / 4, 8 * in}, measure.Foot / 2}
}

// SpanChart draws the longest clear span of the stringer that is worst off, its
// stock, load, width and wood unchanged, against unit rise and unit run. This
// stair's own steps are marked. nil where no stringer spans.
func SpanChart(f *layout.Flight, w *layout.Strength, st measure.Style) *drawing.Drawing {
	c := w.Worst()
	if c == nil {
		return nil
	}
	size := st.InchesMM(c.Group.Thickness) + " by " + st.InchesMM(c.Group.Width)
	if name := f.Spec.Stringer.Stock.Name; name != "" {
		size = name
	}
	wood := size + ", " + w.Wood.Name
	if c.Stiffener != nil {
		wood += " with its strongback"
	}
	what := fmt.Sprintf("a sawn stringer of %s, under %s", wood, st.LineLoad(c.Live+c.Dead))
	d := &drawing.Drawing{Name: f.Name + "-spans", Title: "Longest clear span of " + what}
	ch := chart{d: d, what: what, c: c, st: st, r: chartRangeOf(st.Units)}
	ch.bounds(c)
	ch.frame()
	for _, rise := range ch.r.rises {
		ch.curve(rise)
	}
	ch.own(f)
	return d
}

type chart struct {
	d           *drawing.Drawing
	what        string // stock, wood and load it is of
	c           *layout.Carrier
	st          measure.Style
	r           chartRange
	least, most float64 // spans at the lower and the upper edge
}

// bounds finds whole steps round all the spans.
func (ch *chart) bounds(c *layout.Carrier) {
	step := ch.r.spanStep.MM()
	low, high := math.Inf(1), 0.0
	for _, rise := range ch.r.rises {
		for k := range chartBits + 1 { // with a strongback the ends need not have the most and the least
			if span, ok := c.Reach(rise.MM(), ch.run(k)); ok {
				low, high = math.Min(low, span), math.Max(high, span)
			}
		}
	}
	if low > high { // nothing holds anywhere: an empty chart says so
		low, high = 0, step
	}
	ch.least, ch.most = math.Floor(low/step)*step, math.Ceil(high/step)*step
}

// run is that of the k-th of a curve's points.
func (ch *chart) run(k int) float64 {
	from, to := ch.r.runFrom.MM(), ch.r.runTo.MM()
	return from + (to-from)*float64(k)/chartBits
}

// at is where a run and a span lie on the sheet.
func (ch *chart) at(run, span float64) geom.Point {
	from, to := ch.r.runFrom.MM(), ch.r.runTo.MM()
	return geom.Pt(chartWide*(run-from)/(to-from), chartTall*(span-ch.least)/(ch.most-ch.least))
}

// spanLines is how many lines across the chart there are at the most.
const spanLines = 12

func (ch *chart) frame() {
	d := ch.d
	d.Polygon(drawing.Outline, geom.Pt(0, 0), geom.Pt(chartWide, 0), geom.Pt(chartWide, chartTall), geom.Pt(0, chartTall))
	for run := ch.r.runFrom; run <= ch.r.runTo; run += ch.r.runStep {
		x := ch.at(run.MM(), ch.least).X
		d.Line(drawing.Thin, geom.Pt(x, 0), geom.Pt(x, -chartTick))
		d.Text(geom.Pt(x, -chartTick-1-drawing.Small), drawing.Small, drawing.Middle, ch.st.Inches(run))
	}
	step := ch.r.spanStep.MM()
	for (ch.most-ch.least)/step > spanLines {
		step *= 2
	}
	for span := ch.least; span <= ch.most+step/1000; span += step {
		y := ch.at(0, span).Y
		d.Line(drawing.Thin, geom.Pt(-chartTick, y), geom.Pt(0, y))
		if span > ch.least && span < ch.most-step/2 {
			d.Add(drawing.Path{Layer: drawing.Hidden, Path: geom.Polyline(geom.Pt(0, y), geom.Pt(chartWide, y))})
		}
		d.Text(geom.Pt(-chartTick-1, y-drawing.Small/2), drawing.Small, drawing.Right, ch.st.FormatMM(span))
	}
	d.Text(geom.Pt(0, -chartTick-6-2*drawing.Small), drawing.Small, drawing.Left, "unit run")
	// The chart is passed on alone too: what it is of and what it is worth stand on it.
	d.Text(geom.Pt(0, chartTall+3+2*drawing.Small), drawing.Small, drawing.Left, ch.what)
	d.Text(geom.Pt(0, chartTall+2), drawing.Small, drawing.Left, "longest clear span, level; one line for each unit rise")
	d.Text(geom.Pt(0, -chartTick-8-4*drawing.Small), drawing.Small, drawing.Left, chartAdvice)
}

// curve draws one rise over all runs. Its name stands at its end.
func (ch *chart) curve(rise measure.Length) {
	var pts []geom.Point
	for k := range chartBits + 1 {
		run := ch.run(k)
		if span, ok := ch.c.Reach(rise.MM(), run); ok {
			pts = append(pts, ch.at(run, span))
		}
	}
	if len(pts) < 2 {
		return
	}
	ch.d.Polyline(drawing.Outline, pts...)
	end := pts[len(pts)-1]
	ch.d.Text(geom.Pt(end.X+1.5, end.Y-drawing.Small/2), drawing.Small, drawing.Left, "rise "+ch.st.Inches(rise))
}

// ownMark is half the size of the cross that marks this stair, millimetres.
const ownMark = 2.5

// own marks this stair's steps where they lie on the chart.
func (ch *chart) own(f *layout.Flight) {
	run := f.UnitRun.MM()
	span, ok := ch.c.Reach(f.UnitRise, run)
	if !ok || run < ch.r.runFrom.MM() || run > ch.r.runTo.MM() || span < ch.least || span > ch.most {
		return
	}
	p := ch.at(run, span)
	ch.d.Line(drawing.Cut, geom.Pt(p.X-ownMark, p.Y), geom.Pt(p.X+ownMark, p.Y))
	ch.d.Line(drawing.Cut, geom.Pt(p.X, p.Y-ownMark), geom.Pt(p.X, p.Y+ownMark))
	ch.d.Text(geom.Pt(chartWide, -chartTick-6-2*drawing.Small), drawing.Small, drawing.Right,
		"the cross: this stair, "+ch.st.InchesMM(f.UnitRise)+" by "+ch.st.Inches(f.UnitRun))
}
