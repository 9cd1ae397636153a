package views

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"stepoff/layout"
	"stepoff/layout/drawing"
	"stepoff/layout/geom"
	"stepoff/layout/stringer"
	"stepoff/spec/measure"
)

// Sizes on the full-size template, in millimetres of the board, which are
// millimetres of the sheet too.
const (
	stopTick  = 12.0 // length of the line across a cut where the blade stops
	tipTick   = 10.0 // length of the line at a tip, square to the edge
	labelGap  = 2.5  // between a line and the words along it
	labelEdge = 3.0  // between the board's edge and the words under it
)

// Template draws a stringer on its blank at full size: every cut as one
// straight line, a tick across it where the blade stops, the tips with their
// distances from the foot end. x runs along the top edge from the foot end, y
// is minus the distance square in from that edge.
func Template(g *layout.Group, st measure.Style) *drawing.Drawing {
	d := &drawing.Drawing{Name: g.Name, Title: "Stringer on its blank, full size"}
	board(d, g, st)
	for _, c := range g.Cuts {
		from, to := onBoard(c.From), onBoard(c.To)
		d.Line(drawing.Cut, from, to)
		if c.Stops && c.Kind != stringer.KickerCut && c.Kind != stringer.LedgerCut {
			across(d, drawing.Mark, onBoard(c.Stop), r2.Sub(to, from), stopTick)
		}
		d.Add(cutLabel(g, c, st))
	}
	if hole := g.Saw.RootHole; hole > 0 {
		for _, root := range g.Roots {
			d.Add(drawing.Path{Layer: drawing.Cut, Path: geom.Circle(onBoard(root), hole/2)})
		}
	}
	for k, tip := range g.Tips {
		at := onBoard(tip)
		d.Line(drawing.Mark, at, geom.Pt(at.X, at.Y-tipTick))
		d.Add(tipLabel(g, k, st))
	}
	return d
}

// onBoard turns a point of the blank frame into the drawing's: q runs down.
func onBoard(p geom.Point) drawing.Point { return geom.Pt(p.X, -p.Y) }

// edgeWords is how far apart the words along the board's edges stand: closer
// than the width of a sheet, so that every sheet that shows an edge names it.
const edgeWords = 190.0

// board draws the blank's two long edges and its squared foot end, and says
// which is which and where the foot lies.
func board(d *drawing.Drawing, g *layout.Group, st measure.Style) {
	foot, head := geom.Pt(0, 0), geom.Pt(g.LeastBlank, 0)
	down := geom.Pt(0, -g.Width)
	d.Line(drawing.Lumber, foot, head)
	d.Line(drawing.Lumber, r2.Add(foot, down), r2.Add(head, down))
	d.Line(drawing.Lumber, foot, r2.Add(foot, down))
	d.Add(drawing.Text{Layer: drawing.Note, At: geom.Pt(labelGap+drawing.Small, -g.Width/2), Height: drawing.Small,
		Angle: math.Pi / 2, Align: drawing.Middle, Text: "foot end, squared: 0"})
	for x := edgeWords / 2; x < g.LeastBlank; x += edgeWords {
		d.Text(geom.Pt(x, -g.Width+labelGap), drawing.Small, drawing.Middle,
			"< foot   bottom edge, "+st.InchesMM(g.Width)+" from the top edge   head >")
	}
}

// across draws a line of the given length through at, square to the direction.
func across(d *drawing.Drawing, l drawing.Layer, at drawing.Point, along geom.Point, length float64) {
	half := r2.Scale(length/2, r2.Unit(geom.Pt(-along.Y, along.X)))
	d.Line(l, r2.Sub(at, half), r2.Add(at, half))
}

// cutLabel names a cut along its line, on the side that falls away.
func cutLabel(g *layout.Group, c stringer.Cut, st measure.Style) drawing.Text {
	from, to := onBoard(c.From), onBoard(c.To)
	length := r2.Norm(r2.Sub(to, from))
	name := ""
	switch c.Kind {
	case stringer.RiserCut:
		name = fmt.Sprintf("riser %d", c.Step)
	case stringer.TreadCut:
		name = fmt.Sprintf("tread %d", c.Step)
	case stringer.HeadCut:
		name = "head, plumb cut"
	case stringer.SeatCut:
		name = "seat, level cut"
	case stringer.KickerCut:
		name = "kicker"
	case stringer.LedgerCut:
		name = "ledger"
	}
	a, b := from, to
	if b.X < a.X { // always written left to right
		a, b = b, a
	}
	along := r2.Unit(r2.Sub(b, a))
	up := geom.Pt(-along.Y, along.X)
	off := labelGap
	if wasteBelow(c, along) {
		off = -labelGap - drawing.Small
	}
	at := r2.Add(r2.Scale(0.5, r2.Add(a, b)), r2.Scale(off, up))
	return drawing.Text{
		Layer: drawing.Note, At: at, Height: drawing.Small, Align: drawing.Middle,
		Angle: math.Atan2(along.Y, along.X),
		Text:  name + ": " + inches(st, length),
	}
}

// wasteBelow tells on which side of a cut, drawn left to right, the wood falls
// away. What falls away lies beyond the head, under the seat, and in the corner
// that kicker or ledger takes; treads and risers lose what is above them. A
// level line of the stair runs down to the right on the board, a plumb one up.
func wasteBelow(c stringer.Cut, along geom.Point) bool {
	plumb := along.Y > 0
	switch c.Kind {
	case stringer.SeatCut:
		return true
	case stringer.HeadCut:
		return plumb // below a line that climbs to the right is toward the head
	case stringer.KickerCut:
		return !plumb
	case stringer.LedgerCut:
		return true
	}
	return false
}

// tipLabel writes a tip's number and its distance from the foot end into the
// wood that falls away beside it, clear of the tread cut.
func tipLabel(g *layout.Group, k int, st measure.Style) drawing.Text {
	at := onBoard(g.Tips[k])
	down := labelEdge + drawing.Normal
	at.X += (down + labelGap) / math.Tan(g.Pitch)
	at.Y -= down
	return drawing.Text{
		Layer: drawing.Note, At: at, Height: drawing.Normal,
		Text: fmt.Sprintf("tip %d at %s", k+1, inches(st, g.Tips[k].X)),
	}
}

// inches prints a computed length as a tape shows it, without feet and without
// the mark.
func inches(st measure.Style, mm float64) string { return st.BareMM(mm) }
