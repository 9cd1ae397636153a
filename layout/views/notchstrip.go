package views

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"stepoff/layout"
	"stepoff/layout/drawing"
	"stepoff/layout/geom"
	"stepoff/spec/measure"
)

// riserShown is how much of the riser line the notch strip draws from the root
// up, as a share of the unit rise: enough to give its direction. The rest is
// struck from the root to the next taped tip, so that the strip stays shorter
// than a step.
const riserShown = 0.25

// stripEdge is how much of the board's edge is drawn before the tip.
const stripEdge = 15.0

// NotchStrip draws one tip with its tread line, the root and the beginning of
// the next riser line at full size: a strip that is laid to each taped tip in
// turn and marks them all. x runs along the edge from the tip.
func NotchStrip(g *layout.Group, st measure.Style) *drawing.Drawing {
	d := &drawing.Drawing{Name: "notch-strip", Title: "Notch strip, full size"}
	sin, cos := math.Sincos(g.Pitch)
	tip := geom.Pt(0, 0)
	root := geom.Pt(g.Run*cos, -g.NotchDepth)
	up := geom.Pt(sin, cos) // along the riser line
	top := r2.Add(root, r2.Scale(riserShown*g.Rise, up))
	d.Line(drawing.Lumber, geom.Pt(-stripEdge, 0), geom.Pt(top.X, 0))
	d.Line(drawing.Cut, tip, root)
	d.Line(drawing.Cut, root, top)
	d.Line(drawing.Mark, tip, geom.Pt(0, -tipTick))
	back := r2.Unit(r2.Sub(tip, root))
	across(d, drawing.Mark, r2.Add(root, r2.Scale(g.Saw.StopShort, back)), back, stopTick)
	across(d, drawing.Mark, r2.Add(root, r2.Scale(g.Saw.StopShort, up)), up, stopTick)

	down := labelEdge + drawing.Normal
	d.Text(geom.Pt((down+labelGap)/math.Tan(g.Pitch), -down), drawing.Normal, drawing.Left, "tip: lay it on each taped mark")
	middle := r2.Add(r2.Scale(0.5, root), r2.Scale(labelGap, up))
	d.Add(drawing.Text{Layer: drawing.Note, At: middle, Height: drawing.Small, Align: drawing.Middle,
		Angle: -g.Pitch, Text: "tread: " + inches(st, g.Run)})
	d.Text(r2.Add(root, geom.Pt(0, -labelGap-drawing.Normal)), drawing.Normal, drawing.Middle,
		"root: "+inches(st, root.X)+" along, "+inches(st, g.NotchDepth)+" in")
	return d
}
