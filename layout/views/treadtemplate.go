package views

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"stepoff/layout"
	"stepoff/layout/drawing"
	"stepoff/layout/geom"
	"stepoff/layout/turn"
	"stepoff/spec"
	"stepoff/spec/measure"
)

// Tread is a winder, or a tread of a curve.
type Tread struct {
	Job    *spec.Job
	Member string // winders-1
	Number int    // in its member, 1 the lowest
	Laid   *turn.Laid
	Board  *layout.TaperedBoard
}

// Treads are a stairway's tapered treads, member by member from the bottom up.
func Treads(s *layout.Stairway) []Tread {
	var all []Tread
	add := func(name string, l *turn.Laid, boards []layout.TaperedBoard) {
		for k := range boards {
			all = append(all, Tread{s.Job, name, k + 1, l, &boards[k]})
		}
	}
	for _, e := range s.Elements {
		switch e := e.(type) {
		case *layout.Winders:
			add(e.Name, e.Laid, e.Boards)
		case *layout.Curve:
			add(e.Name, e.Laid, e.Boards)
		}
	}
	return all
}

// lying is the frame a tread is cut in, seen from above: x along its nosing, from
// the left end of the rectangle it is cut from, y up the stair from the nosing.
type lying struct {
	angle float64
	shift geom.Point
}

func (t Tread) lying() lying {
	n := t.Laid.Nosings[t.Number-1]
	right := r2.Scale(float64(t.Laid.Hand()), r2.Sub(n.Out, n.In)) // a turn to the right has its inside there
	angle := -math.Atan2(right.Y, right.X)
	return lying{angle, r2.Scale(-1, t.Board.Outline.Turned(angle).Box().Min)}
}

func (l lying) path(p geom.Path) geom.Path {
	out := p.Turned(l.angle)
	for k, e := range out.Edges {
		out.Edges[k] = e.Shift(l.shift)
	}
	return out
}

func (l lying) at(p geom.Point) geom.Point {
	sin, cos := math.Sincos(l.angle)
	return r2.Add(l.shift, geom.Pt(p.X*cos-p.Y*sin, p.X*sin+p.Y*cos))
}

func (l lying) segment(s turn.Segment) turn.Segment {
	return turn.Segment{In: l.at(s.In), Out: l.at(s.Out)}
}

// Outline is the tread's board in the frame of its template.
func (t Tread) Outline() geom.Path { return t.lying().path(t.Board.Outline) }

// sameTread is how near two outlines have to be, in millimetres, for one template
// to serve both: they are worked out at different angles, which costs the last
// digits.
const sameTread = 1e-5

// Alike tells whether two treads are cut to one template, and whether it is
// turned over for the second.
func (t Tread) Alike(o Tread) (alike, over bool) {
	a, b := &t.Laid.Treads[t.Number-1], &o.Laid.Treads[o.Number-1]
	for _, d := range [...]float64{a.Walkline - b.Walkline, a.Narrow - b.Narrow, a.Wide - b.Wide} {
		if math.Abs(d) > sameTread {
			return false, false
		}
	}
	mine, other := t.Outline(), o.Outline()
	if t.Laid.Hand() == o.Laid.Hand() {
		return sameShape(mine, other), false
	}
	return sameShape(mine, mirrored(other)), true
}

// mirrored is a closed path turned over, left to right, its box in the same place.
func mirrored(p geom.Path) geom.Path {
	b := p.Box()
	flip := func(q geom.Point) geom.Point { return geom.Pt(b.Min.X+b.Max.X-q.X, q.Y) }
	out := geom.Path{Closed: p.Closed}
	for _, e := range p.Edges {
		e.From, e.To, e.Centre, e.Sweep = flip(e.From), flip(e.To), flip(e.Centre), -e.Sweep
		out.Edges = append(out.Edges, e)
	}
	return out.Reversed()
}

// sameShape tells whether two closed paths are the same, wherever they begin.
func sameShape(a, b geom.Path) bool {
	n := len(a.Edges)
	if n != len(b.Edges) {
		return false
	}
	near := func(p, q geom.Point) bool { return r2.Norm(r2.Sub(p, q)) <= sameTread }
	for from := range n {
		same := true
		for k := 0; k < n && same; k++ {
			e, f := a.Edges[k], b.Edges[(from+k)%n]
			same = near(e.From, f.From) && near(e.To, f.To) && e.IsArc() == f.IsArc() && near(e.At(0.5), f.At(0.5))
		}
		if same {
			return true
		}
	}
	return false
}

// TreadTemplate draws a tapered tread's board as it is cut, at full size: its
// going from riser line to riser line, where the riser boards stand, the next
// nosing, and the depths between them. The name is of all that are cut to it.
func TreadTemplate(t Tread, name string, st measure.Style) *drawing.Drawing {
	d := &drawing.Drawing{Name: fmt.Sprintf("%s-tread-%d", t.Member, t.Number), Title: name + ", full size"}
	w := treadTemplate{Tread: t, lying: t.lying(), d: d, st: st, board: t.Outline()}
	w.rectangle()
	w.going()
	w.risers()
	w.depths()
	w.name(name)
	d.Add(drawing.Path{Layer: drawing.Cut, Path: w.board})
	return d
}

type treadTemplate struct {
	Tread
	lying
	d     *drawing.Drawing
	st    measure.Style
	board geom.Path
}

// rectangle is the board the tread is cut from.
func (w *treadTemplate) rectangle() {
	w.d.Add(drawing.Path{Layer: drawing.Lumber, Path: geom.Rect(w.board.Box())})
}

func (w *treadTemplate) going() {
	w.d.Add(drawing.Path{Layer: drawing.Thin, Path: w.lying.path(w.Laid.Treads[w.Number-1].Outline)})
	next := w.segment(w.Laid.Nosings[w.Number])
	w.d.Line(drawing.Centre, next.In, next.Out)
	w.words(next, true, "nosing of the next tread, over it")
}

// risers draws the riser lines, and the faces of riser boards: of the one under
// the tread's front, and of one that stands on it.
func (w *treadTemplate) risers() {
	job := w.Job
	front, back := w.segment(w.Laid.Risers[w.Number-1]), w.segment(w.Laid.Risers[w.Number])
	nosing := turn.Segment{In: geom.Pt(front.In.X, 0), Out: geom.Pt(front.Out.X, 0)}
	w.words(nosing, true, "nosing: front edge of the board")
	w.words(front, true, "riser line")
	w.words(back, false, "next riser line")
	if job.Riser.Open {
		return
	}
	thick := job.Riser.Thickness.MM()
	face := w.segment(w.Laid.RiserFace(w.Number-1, thick))
	w.d.Line(drawing.Mark, face.In, face.Out)
	w.words(face, true, "riser board under it: its face")
	if job.Riser.Joint == spec.On {
		face := w.segment(w.Laid.RiserFace(w.Number, thick))
		w.d.Line(drawing.Mark, face.In, face.Out)
		w.words(face, false, "riser board on it: its face")
	}
}

// words writes along a line, again and again where it is long, so that every
// sheet that shows it names it.
func (w *treadTemplate) words(s turn.Segment, above bool, text string) {
	a, b := s.In, s.Out
	if w.Laid.Hand() == turn.Right {
		a, b = b, a
	}
	along := r2.Sub(b, a)
	length := r2.Norm(along)
	n := math.Max(1, math.Floor(length/edgeWords))
	angle := readable(along)
	sin, cos := math.Sincos(angle)
	off := labelGap
	if !above {
		off = -labelGap - drawing.Small
	}
	for k := 0.0; k < n; k++ {
		at := r2.Add(r2.Add(a, r2.Scale((k+0.5)/n, along)), r2.Scale(off, geom.Pt(-sin, cos)))
		w.d.Add(drawing.Text{Layer: drawing.Note, At: at, Height: drawing.Small, Angle: angle, Align: drawing.Middle, Text: text})
	}
}

// depthAside is how far inside the board the narrow and the wide depth are
// written, in millimetres.
const depthAside = 8.0

// depths draws the walklines and dimensions the depths on them, and the narrow and
// the wide one.
func (w *treadTemplate) depths() {
	k := w.Number - 1
	t := &w.Laid.Treads[k]
	for i, crossings := range w.Laid.Crossings {
		w.d.Add(drawing.Path{Layer: drawing.Centre, Path: w.lying.path(w.Laid.Along(i, k))})
		a, b := w.at(crossings[k]), w.at(crossings[k+1])
		deep := r2.Norm(r2.Sub(b, a))
		w.d.Dim(drawing.Aligned, a, b, 0, "walkline "+w.st.InchesMM(deep))
	}
	inward := -float64(w.Laid.Hand()) * depthAside
	if t.Narrow > 0 {
		w.d.Dim(drawing.Aligned, w.at(t.NarrowEnds.In), w.at(t.NarrowEnds.Out), inward, "narrow "+w.st.InchesMM(t.Narrow))
	}
	w.d.Dim(drawing.Aligned, w.at(t.WideEnds.In), w.at(t.WideEnds.Out), -inward, "wide "+w.st.InchesMM(t.Wide))
}

// grainLong is the length of the arrow that shows the grain, in millimetres.
const grainLong = 60.0

// name writes which treads it is for, and the grain, into the board's middle.
func (w *treadTemplate) name(name string) {
	middle := geom.Pt(0, 0)
	ps := w.board.Points(1)
	for _, p := range ps {
		middle = r2.Add(middle, r2.Scale(1/float64(len(ps)), p))
	}
	w.d.Text(middle, drawing.Large, drawing.Middle, name)
	arrow := r2.Add(middle, geom.Pt(0, -2*drawing.Large))
	for _, way := range [...]float64{-1, 1} {
		tip := r2.Add(arrow, geom.Pt(way*grainLong/2, 0))
		w.d.Line(drawing.Note, arrow, tip)
		w.d.Polyline(drawing.Note, r2.Add(tip, geom.Pt(-way*4, 1.5)), tip, r2.Add(tip, geom.Pt(-way*4, -1.5)))
	}
	w.d.Text(r2.Add(arrow, geom.Pt(0, -labelGap-drawing.Small)), drawing.Small, drawing.Middle, "grain, along the nosing; this face up, seen going up the stair")
}
