package views

import (
	"gonum.org/v1/gonum/spatial/r2"

	"stepoff/layout"
	"stepoff/layout/drawing"
	"stepoff/layout/geom"
	"stepoff/layout/turn"
	"stepoff/spec/measure"
)

// taperedPlan draws the treads of a turn or curve: their riser lines in bold,
// their nosings and the edges in thin lines, the walkline as a chain.
func taperedPlan(d *drawing.Drawing, l *turn.Laid, bold drawing.Layer) {
	for _, edge := range [...]geom.Path{l.Inside, l.Outside} {
		d.Add(drawing.Path{Layer: drawing.Outline, Path: edge})
	}
	for k := range l.Risers {
		d.Line(bold, l.Risers[k].In, l.Risers[k].Out)
		d.Line(drawing.Thin, l.Nosings[k].In, l.Nosings[k].Out)
	}
	for _, w := range l.Walklines {
		d.Add(drawing.Path{Layer: drawing.Centre, Path: w})
	}
}

// numberTreads writes the numbers of tapered treads, from the first on.
func numberTreads(d *drawing.Drawing, l *turn.Laid, first int) {
	for k := range l.Treads {
		middle := r2.Scale(0.25, r2.Add(r2.Add(l.Risers[k].In, l.Risers[k+1].In), r2.Add(l.Risers[k].Out, l.Risers[k+1].Out)))
		out := r2.Scale(0.5, r2.Add(l.Risers[k].Out, l.Risers[k+1].Out))
		d.Text(r2.Add(middle, r2.Scale(0.45, r2.Sub(out, middle))), drawing.Small, drawing.Middle, fmtInt(first+k))
	}
}

func windersFigure(d *drawing.Drawing, s *layout.Stairway, w *layout.Winders, walls bool, st measure.Style) {
	taperedPlan(d, w.Laid, drawing.Cut)
	numberTreads(d, w.Laid, 1)
	if walls {
		marks := w.WallMarks(turn.WinderHeights{Level: w.Levels[0], Rise: w.UnitRise, Tread: s.Job.Tread.Thickness.MM(), Flooring: s.Job.Levels.LowerFinish.MM()})
		ends := map[int]geom.Point{}
		for k, r := range w.Laid.Risers {
			ends[k+1] = r.Out
		}
		for _, m := range marks {
			if m.Wall != turn.LowerWall && m.Wall != turn.UpperWall {
				continue
			}
			at := ends[m.Riser]
			beyond(d, r2.Add(at, r2.Scale(0.05, r2.Sub(at, w.Centre))), r2.Sub(at, w.Centre), drawing.Normal, st.InchesMM(m.FromCorner))
		}
		return
	}
	if p := w.Pivot; p != nil {
		for k := range w.Laid.Risers {
			d.Line(drawing.Hidden, *p, w.Laid.Risers[k].In)
		}
		d.Text(*p, drawing.Small, drawing.Right, "pivot ")
	}
	first, entry := w.Laid.Risers[0], w.Entry
	along := r2.Sub(entry.Point(1, 0), entry.At)
	corner := r2.Add(first.In, r2.Scale(w.Spec.Setback.MM(), along))
	if w.Spec.Setback.MM() > 0 {
		side := 1.0
		if w.Hand() == turn.Right {
			side = -1
		}
		d.Dim(drawing.Aligned, first.In, corner, side*dimRow, st.Inches(*w.Spec.Setback))
	}
	if len(w.Crossings) > 0 {
		a, b := w.Crossings[0][0], w.Crossings[0][1]
		d.Line(drawing.Cut, a, b)
		far := r2.Scale(0.5, r2.Add(first.Out, w.Laid.Risers[1].Out))
		mid := r2.Scale(0.5, r2.Add(a, b))
		to := r2.Add(mid, r2.Scale(1.5, r2.Sub(far, mid)))
		d.Line(drawing.Dimension, mid, to)
		t := drawing.Text{Layer: drawing.Dimension, At: to, Height: drawing.Normal, Align: drawing.Left, Text: st.InchesMM(w.Treads[0].Walkline)}
		if to.X < mid.X {
			t.Align = drawing.Right
		}
		d.Add(t)
	}
}

func curveFigure(d *drawing.Drawing, c *layout.Curve, st measure.Style) {
	taperedPlan(d, c.Laid, drawing.Cut)
	numberTreads(d, c.Laid, 1)
	first := c.Laid.Risers[0]
	d.Line(drawing.Centre, c.Centre, first.In)
	d.Line(drawing.Centre, c.Centre, c.Laid.Risers[len(c.Laid.Risers)-1].In)
	// Before the first riser line, where no tread is.
	d.Dim(drawing.Aligned, c.Centre, first.In, -float64(c.Hand())*dimRow, "inside radius "+st.FormatMM(c.Inside))
	a, b := c.Crossings[0][0], c.Crossings[0][1]
	mid := r2.Scale(0.5, r2.Add(a, b))
	to := r2.Add(c.Centre, r2.Scale(1.15*c.Outside/r2.Norm(r2.Sub(mid, c.Centre)), r2.Sub(mid, c.Centre)))
	d.Line(drawing.Dimension, mid, to)
	t := drawing.Text{Layer: drawing.Dimension, At: to, Height: drawing.Normal, Text: st.InchesMM(c.Treads[0].Walkline)}
	if to.X < mid.X {
		t.Align = drawing.Right
	}
	d.Add(t)
}
