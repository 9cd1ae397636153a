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
		ends := map[int]geom.Point{}
		for k, r := range w.Laid.Risers {
			ends[k+1] = r.Out
		}
		for _, m := range w.WallMarks {
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
		d.Text(r2.Add(*p, r2.Scale(0.3, r2.Sub(*p, w.Centre))), drawing.Small, drawing.Middle, "pivot")
	}
	first, entry := w.Laid.Risers[0], w.Entry
	along := r2.Sub(entry.Point(1, 0), entry.At)
	corner := r2.Add(first.In, r2.Scale(w.Spec.Setback.MM(), along))
	if w.Spec.Setback.MM() > 0 {
		side := 1.0
		if w.Hand() == turn.Right {
			side = -1
		}
		d.Dim(drawing.Aligned, first.In, corner, side*1.6*dimRow, st.Inches(*w.Spec.Setback))
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

// taperedBoard draws the lowest tread of a turn or curve on the piece it is cut
// from, its nosing lowest.
func taperedBoard(d *drawing.Drawing, s *layout.Stairway, member string, st measure.Style) {
	for _, t := range Treads(s) {
		if t.Member != member {
			continue
		}
		outline := t.Outline()
		box := outline.Box()
		d.Add(drawing.Path{Layer: drawing.Cut, Path: outline})
		d.Add(drawing.Path{Layer: drawing.Hidden, Path: geom.Rect(box)})
		d.Dim(drawing.Horizontal, box.Min, geom.Pt(box.Max.X, box.Min.Y), -dimRow, st.InchesMM(t.Board.Along))
		d.Dim(drawing.Vertical, geom.Pt(box.Max.X, box.Min.Y), box.Max, dimRow, st.InchesMM(t.Board.Deep))
		return
	}
}

// unrolledSteps draws one step of either string of a curve as it is straight.
func unrolledSteps(d *drawing.Drawing, c *layout.Curve, st measure.Style) {
	low := 0.0
	for _, radius := range [...]float64{c.Inside, c.Outside} {
		run := c.RunAt(radius)
		a, b, e := geom.Pt(0, low), geom.Pt(run, low), geom.Pt(run, low+c.UnitRise)
		d.Polyline(drawing.Cut, a, b, e)
		d.Line(drawing.Thin, a, e)
		d.Dim(drawing.Horizontal, a, b, -dimRow, "run "+st.InchesMM(run))
		if low == 0 { // of the other it is the same
			d.Dim(drawing.Vertical, b, e, dimRow, "rise "+st.InchesMM(c.UnitRise))
		}
		low -= 2.4 * c.UnitRise
	}
}
