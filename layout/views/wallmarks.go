package views

import (
	"fmt"
	"math"
	"slices"

	"stepoff/layout/drawing"
	"stepoff/layout/geom"
	"stepoff/layout/turn"
	"stepoff/spec/measure"
)

// face is one side of a turn of winders as it is seen by who stands before it: the
// two walls on the outside, or the two faces of the newel, opened out about their
// corner.
type face struct {
	hand   turn.Hand
	inside bool
}

func (f face) holds(w turn.WinderWall) bool {
	return (w == turn.LowerNewel || w == turn.UpperNewel) == f.inside
}

// right is +1 where the stair climbs to the right on it, -1 to the left.
func (f face) right() float64 {
	if f.inside {
		return float64(f.hand)
	}
	return -float64(f.hand)
}

func (f face) name() (of, corner string) {
	if f.inside {
		return "newel", "inside corner"
	}
	return "walls", "corner of the walls"
}

// past is how far past the corner a mark stands, going up; less than 0 before it.
func past(m turn.WallMark) float64 {
	if m.Wall == turn.LowerWall || m.Wall == turn.LowerNewel {
		return -m.FromCorner
	}
	return m.FromCorner
}

// WallMarks draws where riser lines and finished treads are struck on the walls, or
// on the newel, seen by who faces them: distances from the corner, heights over the
// lower finished floor. It is nil where none of the marks stands there.
func WallMarks(member string, hand turn.Hand, inside bool, marks []turn.WallMark, rise float64, st measure.Style) *drawing.Drawing {
	f := face{hand, inside}
	marks = slices.DeleteFunc(slices.Clone(marks), func(m turn.WallMark) bool { return !f.holds(m.Wall) })
	if len(marks) == 0 {
		return nil
	}
	of, corner := f.name()
	d := &drawing.Drawing{Name: member + "-" + of + "-marks",
		Title: fmt.Sprintf("Marks on the %s at %s, as you face them; heights above the lower finished floor", of, member)}
	at := func(m turn.WallMark) float64 { return f.right() * past(m) }
	n := len(marks) - 1
	long := math.Abs(at(marks[n]) - at(marks[0]))
	low, high := marks[0].Height-rise, marks[n].Height

	d.Line(drawing.Centre, geom.Pt(0, low-cornerPast*rise), geom.Pt(0, high+cornerPast*rise))
	d.Text(geom.Pt(0, high+(cornerPast+0.1)*rise), drawing.Small, drawing.Middle, corner)
	margin := at(marks[0]) - f.right()*levelsAt*long // before the foot, where nothing else is
	align := drawing.Right
	if f.right() < 0 {
		align = drawing.Left
	}
	roomy := true // for the distances, each under its mark
	for k := range n {
		roomy = roomy && math.Abs(at(marks[k+1])-at(marks[k])) > distanceRoom
	}
	for k, m := range marks {
		x := at(m)
		if m.FromCorner > 0 && roomy {
			d.Line(drawing.Thin, geom.Pt(x, low), geom.Pt(x, m.Height-rise))
			d.Add(drawing.Text{Layer: drawing.Dimension, At: geom.Pt(x, low-levelLow*rise), Height: drawing.Small, Angle: math.Pi / 2, Align: drawing.Right,
				Text: st.InchesMM(m.FromCorner) + " from corner"})
		}
		d.Line(drawing.Outline, geom.Pt(x, m.Height-rise), geom.Pt(x, m.Height))
		to := geom.Pt(x+f.right()*levelsBeyond*long, m.Height)
		if k < n {
			to.X = at(marks[k+1])
		}
		d.Line(drawing.Outline, geom.Pt(x, m.Height), to)
		d.Line(drawing.Thin, geom.Pt(margin, m.Height), geom.Pt(x, m.Height))
		d.Text(geom.Pt(margin-f.right()*levelGap*long, m.Height-levelLow*rise), drawing.Small, align, fmt.Sprintf("riser line %d: %s", m.Riser, st.FormatMM(m.Height)))
	}
	return d
}

// How marks on a wall are laid out: shares of the unit rise, of the length marked,
// how far the last level is drawn, and where and how low the levels are written; and
// how far apart marks have to be, in millimetres of the wall, for their distances to
// be written side by side: nearer ones are in the list only.
const (
	cornerPast   = 0.35
	levelsBeyond = 0.08
	levelsAt     = 0.06
	levelGap     = 0.02
	levelLow     = 0.15
	distanceRoom = 60.0
)

// WallStrings draws the strings along one side of winders unrolled, as you face
// them: the cuts of notched strings, and the edges of housed ones, each with one
// radius where the pitch changes. It is nil where there is none,
// or hardly one.
func WallStrings(member string, hand turn.Hand, inside bool, notched []turn.WallString, housed []turn.HousedString) *drawing.Drawing {
	f := face{hand, inside}
	of, corner := f.name()
	d := &drawing.Drawing{Name: member + "-" + of + "-strings",
		Title: fmt.Sprintf("Strings along the %s at %s, unrolled, as you face them: wide the edges of housed strings, narrow the cuts of notched ones", of, member)}
	if !slices.ContainsFunc(housed, func(s turn.HousedString) bool { return f.holds(s.Wall) }) {
		d.Title = fmt.Sprintf("Strings along the %s at %s, unrolled, as you face them: the cuts of notched ones", of, member)
	}
	flip := func(p geom.Point) geom.Point { return geom.Pt(f.right()*p.X, p.Y) }
	b, split := geom.EmptyBox(), 0.0
	for _, s := range notched {
		if !f.holds(s.Wall) {
			continue
		}
		var line []geom.Point
		for _, p := range s.Notched {
			line = append(line, flip(p))
			b = b.Include(p)
		}
		d.Polyline(drawing.Thin, line...)
		if s.Wall == turn.LowerWall || s.Wall == turn.LowerNewel {
			split = s.To
		}
	}
	if b.Empty() || b.Width() < leastShown {
		return nil
	}
	whole := b
	for _, s := range housed {
		if !f.holds(s.Wall) {
			continue
		}
		for _, p := range [...]geom.Path{s.Upper, s.Lower} {
			whole = whole.Union(p.Box())
			d.Add(drawing.Path{Layer: drawing.Outline, Path: flipped(p, f.right())})
		}
		for _, end := range [...]int{0, 1} {
			up, low := endOf(s.Upper, end), endOf(s.Lower, end)
			d.Line(drawing.Outline, flip(up), flip(low))
		}
	}
	d.Line(drawing.Centre, flip(geom.Pt(split, whole.Min.Y)), flip(geom.Pt(split, whole.Max.Y+cornerPast*b.Height()/4)))
	d.Text(flip(geom.Pt(split, whole.Max.Y+cornerPast*b.Height()/3)), drawing.Small, drawing.Middle, corner)
	for _, s := range notched {
		if !f.holds(s.Wall) {
			continue
		}
		n := 0
		for k := 1; k < len(s.Notched); k++ { // each level cut's winder, under it
			a, c := s.Notched[k-1], s.Notched[k]
			if c.X > a.X && n < len(s.Steps) {
				d.Text(flip(geom.Pt((a.X+c.X)/2, a.Y-stepUnder*b.Height())), drawing.Small, drawing.Middle, fmt.Sprint(s.Steps[n].Tread))
				n++
			}
		}
	}
	return d
}

// leastShown is how long strings have to be, in millimetres, to be drawn: at a newel
// with hardly a set-back there is nothing to see.
const leastShown = 150.0

// stepUnder is how far under its cut a step's number stands, of the strings' height.
const stepUnder = 0.2

// flipped is a path as drawn to the right (1) or to the left (-1).
func flipped(p geom.Path, right float64) geom.Path {
	if right > 0 {
		return p
	}
	out := geom.Path{Closed: p.Closed}
	for _, e := range p.Edges {
		for _, q := range [...]*geom.Point{&e.From, &e.To, &e.Centre} {
			q.X = -q.X
		}
		e.Sweep = -e.Sweep
		out.Edges = append(out.Edges, e)
	}
	return out
}

// endOf is where a path begins (0) or ends (1).
func endOf(p geom.Path, end int) geom.Point {
	if end == 0 {
		return p.Edges[0].From
	}
	return p.Edges[len(p.Edges)-1].To
}
