package views

import (
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"stepoff/layout"
	"stepoff/layout/drawing"
	"stepoff/layout/geom"
	"stepoff/layout/stringer"
	"stepoff/spec/measure"
)

// screwCross is half the length of the arms of a screw's cross, mm.
const screwCross = 4.0

// StringTemplate draws a string on its blank at full size, seen on its inner face:
// the cuts at its ends, and its housings with their nosings as true arcs, or its
// cleats with their screws. x runs along the top edge from the foot end; y runs
// down into the left string, and up into the right one, which is its mirror image
// and lies with its top edge toward whoever marks it.
func StringTemplate(s *layout.String, st measure.Style) *drawing.Drawing {
	face := onFace{d: &drawing.Drawing{Name: s.Name, Title: "String on its blank, inner face, full size"}, s: s, st: st}
	face.board()
	for _, e := range face.outline().Edges {
		if !face.alongBoard(e) {
			face.d.Add(drawing.Path{Layer: drawing.Cut, Path: geom.Path{Edges: []geom.Edge{e}}})
		}
	}
	face.ends()
	if s.Housed != nil {
		face.housings()
	} else {
		face.d.Title = "Stringer on its blank, inner face, full size"
		face.cleats()
	}
	for k, at := range s.Marks {
		face.d.Line(drawing.Mark, face.at(geom.Pt(at, 0)), face.at(geom.Pt(at, tipTick)))
		face.note(geom.Pt(at+labelGap, labelEdge), drawing.Small, drawing.Left, fmt.Sprintf("nosing %d at %s", k+1, inches(st, at)))
	}
	return face.d
}

// StringOutline and StringHousings are what a router cuts of a string, in the frame
// of its template: the outline, right through, and the housings, to their depth,
// each closed; nil for the latter where there are none.
func StringOutline(s *layout.String) *drawing.Drawing {
	d := &drawing.Drawing{Name: s.Name, Title: "Outline of " + s.Name}
	d.Add(drawing.Path{Layer: drawing.Cut, Path: s.Hand.Face(geom.Closed(s.Outline...))})
	return d
}

// StringHousings: see StringOutline.
func StringHousings(s *layout.String) *drawing.Drawing {
	if s.Housed == nil {
		return nil
	}
	d := &drawing.Drawing{Name: s.Name + "-housings", Title: "Housings of " + s.Name}
	for _, h := range s.Housed.Housings {
		d.Add(drawing.Path{Layer: drawing.Cut, Path: s.Hand.Face(h.Outline)})
	}
	return d
}

// onFace draws on the inner face of a string, from points of its blank frame.
type onFace struct {
	d  *drawing.Drawing
	s  *layout.String
	st measure.Style
}

func (o onFace) at(p geom.Point) geom.Point {
	if o.s.Hand == stringer.RightString {
		return p
	}
	return onBoard(p)
}

func (o onFace) outline() geom.Path { return o.s.Hand.Face(geom.Closed(o.s.Outline...)) }

func (o onFace) polygon(l drawing.Layer, ps []geom.Point) {
	o.d.Add(drawing.Path{Layer: l, Path: o.s.Hand.Face(geom.Closed(ps...))})
}

// note writes a line along the board so that its middle lies at a place of the
// blank frame, less than half its height off.
func (o onFace) note(at geom.Point, height float64, align drawing.Align, text string) {
	p := o.at(at)
	if o.s.Hand == stringer.LeftString {
		p.Y -= height // the words lie below the line they begin at, in the board
	}
	o.d.Text(p, height, align, text)
}

// noteAlong is a note turned the way from a to b runs.
func (o onFace) noteAlong(a, b geom.Point, text string) {
	a, b = o.at(a), o.at(b)
	way := r2.Sub(b, a)
	angle := readable(way)
	sin, cos := math.Sincos(angle)
	middle := r2.Add(r2.Scale(0.5, r2.Add(a, b)), r2.Scale(labelGap, geom.Pt(-sin, cos)))
	o.d.Add(drawing.Text{Layer: drawing.Note, At: middle, Height: drawing.Small, Align: drawing.Middle, Angle: angle, Text: text})
}

// onEdge is how near to the board's edge a corner counts as on it, mm: the rounding
// of turning it into the blank frame.
const onEdge = 1e-6

// alongBoard tells whether an edge of the outline is an edge of the board, which
// is not cut.
func (o onFace) alongBoard(e geom.Edge) bool {
	on := func(q float64) bool {
		return math.Abs(math.Abs(e.From.Y)-q) < onEdge && math.Abs(math.Abs(e.To.Y)-q) < onEdge
	}
	return on(0) || on(o.s.Width)
}

// board draws the blank's edges and its squared foot end.
func (o onFace) board() {
	s := o.s
	line := func(a, b geom.Point) { o.d.Line(drawing.Lumber, o.at(a), o.at(b)) }
	line(geom.Pt(0, 0), geom.Pt(s.LeastBlank, 0))
	line(geom.Pt(0, s.Width), geom.Pt(s.LeastBlank, s.Width))
	line(geom.Pt(0, 0), geom.Pt(0, s.Width))
	o.noteAlong(geom.Pt(labelGap+2*drawing.Small, s.Width/2), geom.Pt(labelGap+2*drawing.Small, 0), "foot end, squared: 0")
	for x := edgeWords / 2; x < s.LeastBlank; x += edgeWords {
		o.note(geom.Pt(x, s.Width-labelGap-drawing.Small), drawing.Small, drawing.Middle,
			fmt.Sprintf("%s string   < foot   bottom edge, %s from the top edge   head >", s.Hand, o.st.InchesMM(s.Width)))
	}
}

// ends names the cuts at foot and head. The outline runs from the foot's corner up
// its plumb cut and along the top edge.
func (o onFace) ends() {
	s := o.s
	name := func(a, b int, text string, long float64) {
		n := len(s.Outline)
		o.noteAlong(s.Outline[a%n], s.Outline[b%n], text+": "+inches(o.st, long))
	}
	n := len(s.Outline)
	head := slices.IndexFunc(s.Outline, func(p geom.Point) bool { return math.Abs(p.X-s.LeastBlank) < onEdge })
	name(0, 1, "foot, plumb cut", s.FootCut)
	if s.HeadTop > onEdge && head > 0 {
		name(head-1, head, "head, level cut", s.HeadTop)
	}
	if head >= 0 {
		name(head, head+1, "head, plumb cut", s.HeadCut)
	}
	below := r2.Scale(2*labelGap+drawing.Small, o.downWay()) // in the waste: the first riser's housing runs out at this cut
	o.noteAlong(r2.Add(s.Outline[n-1], below), r2.Add(s.Outline[0], below), "foot, level cut: "+inches(o.st, s.SeatCut))
}

// housings draws the walls of the recess as cuts, and the wedges as they lie.
func (o onFace) housings() {
	for i := range o.s.Housed.Housings {
		h := &o.s.Housed.Housings[i]
		for _, run := range h.Walls() {
			o.d.Add(drawing.Path{Layer: drawing.Cut, Path: o.s.Hand.Face(run)})
		}
		for _, w := range h.Wedges {
			o.polygon(drawing.Thin, w)
		}
		if h.Step > o.s.Notches() {
			continue
		}
		level := o.levelWay()
		t := o.s.Tread
		in := r2.Add(h.Nosing, r2.Scale(t/2+drawing.Small/2, o.downWay()))
		from := r2.Add(in, r2.Scale(o.s.Housed.Round, level))
		o.noteAlong(from, r2.Add(from, r2.Scale(o.s.Run*0.8, level)), fmt.Sprintf("tread %d, %s deep", h.Step, inches(o.st, o.s.Housed.Depth)))
	}
}

// levelWay and downWay are the stair's level, toward the head, and its plumb, down,
// in the blank frame.
func (o onFace) levelWay() geom.Point {
	sin, cos := math.Sincos(o.s.Pitch)
	return geom.Pt(cos, sin)
}

func (o onFace) downWay() geom.Point {
	sin, cos := math.Sincos(o.s.Pitch)
	return geom.Pt(-sin, cos)
}

// cleats draws where they are fastened, the treads' sections over them, and the
// screws on their line.
func (o onFace) cleats() {
	for _, c := range o.s.Cleated.Cleats {
		o.polygon(drawing.Mark, c.Corners)
		o.polygon(drawing.Thin, c.Tread)
		for _, p := range c.Screws {
			at := o.at(p)
			o.d.Line(drawing.Mark, r2.Sub(at, geom.Pt(screwCross, 0)), r2.Add(at, geom.Pt(screwCross, 0)))
			o.d.Line(drawing.Mark, r2.Sub(at, geom.Pt(0, screwCross)), r2.Add(at, geom.Pt(0, screwCross)))
		}
		mid := func(a, b geom.Point) geom.Point { return r2.Scale(0.5, r2.Add(a, b)) }
		o.noteAlong(mid(c.Tread[0], c.Tread[3]), mid(c.Tread[1], c.Tread[2]), fmt.Sprintf("tread %d", c.Step))
		low := r2.Scale(3*drawing.Small+labelGap, o.downWay())
		o.noteAlong(r2.Add(c.Corners[3], low), r2.Add(c.Corners[2], low), fmt.Sprintf("cleat %d, %s", c.Step, inches(o.st, c.Length)))
	}
}

// templateEdge is how much of the router template's fence is drawn beyond its
// opening, mm.
const templateEdge = 40.0

// RouterTemplate draws the opening of the template that housings are routed with,
// at full size: the bush runs along it, and the cutter leaves the housing, which is
// dashed. x runs along the string's top edge, on which the fence rides, from the
// nosing's mark.
func RouterTemplate(h *stringer.Housed, st measure.Style) *drawing.Drawing {
	d := &drawing.Drawing{Name: "router-template", Title: "Router template, full size"}
	nosing := h.Marks[0]
	lay := func(p geom.Path) geom.Path {
		return p.Moved(func(q geom.Point) geom.Point { return geom.Pt(q.X-nosing, -q.Y) }, true)
	}
	opening := lay(h.Router.Template)
	b := opening.Box()
	d.Line(drawing.Lumber, geom.Pt(b.Min.X-templateEdge, 0), geom.Pt(b.Max.X+templateEdge, 0))
	d.Add(drawing.Path{Layer: drawing.Cut, Path: opening})
	d.Add(drawing.Path{Layer: drawing.Hidden, Path: lay(h.Router.Housing)})
	d.Line(drawing.Mark, geom.Pt(0, 0), geom.Pt(0, -tipTick))
	d.Text(geom.Pt(labelGap, -labelEdge-drawing.Small), drawing.Small, drawing.Left, "lay on each nosing's mark; fence on this edge")
	words := []string{
		"cutter " + st.FineMM(h.Cutter) + ", bush " + st.FineMM(h.Bush),
		"opening " + st.FineMM(h.Router.Offset) + " outside the housing",
		"housing " + st.FineMM(h.Depth) + " deep",
		"turn over for the other hand",
	}
	for k, w := range words {
		d.Text(geom.Pt(b.Min.X, b.Min.Y-labelGap-float64(k+1)*2.8*drawing.Small), drawing.Small, drawing.Left, w)
	}
	return d
}

// stringOnBench draws a string of a lesson: its outline thin, its housings or cleats
// bold, the nosings' marks taped.
func stringOnBench(d *drawing.Drawing, s *layout.String, st measure.Style) {
	o := onFace{d: d, s: s, st: st}
	d.Add(drawing.Path{Layer: drawing.Thin, Path: o.outline()})
	d.Line(drawing.Lumber, o.at(geom.Pt(0, 0)), o.at(geom.Pt(s.LeastBlank, 0)))
	if s.Housed != nil {
		for i := range s.Housed.Housings {
			for _, run := range s.Housed.Housings[i].Walls() {
				d.Add(drawing.Path{Layer: drawing.Cut, Path: s.Hand.Face(run)})
			}
		}
	} else {
		for _, c := range s.Cleated.Cleats {
			o.polygon(drawing.Cut, c.Corners)
			o.polygon(drawing.Thin, c.Tread)
		}
	}
	for _, at := range s.Marks {
		d.Line(drawing.Mark, o.at(geom.Pt(at, 0)), o.at(geom.Pt(at, s.Margin)))
	}
	d.Dim(drawing.Horizontal, geom.Pt(0, 0), geom.Pt(s.Marks[0], 0), dimRow, st.InchesMM(s.Marks[0]))
	if len(s.Marks) > 1 {
		d.Dim(drawing.Horizontal, geom.Pt(s.Marks[0], 0), geom.Pt(s.Marks[1], 0), 2*dimRow, st.InchesMM(s.Step))
	}
}
