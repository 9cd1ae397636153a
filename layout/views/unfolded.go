package views

import (
	"fmt"

	"gonum.org/v1/gonum/spatial/r2"

	"stepoff/layout"
	"stepoff/layout/drawing"
	"stepoff/layout/geom"
	"stepoff/spec"
	"stepoff/spec/measure"
)

// levelsAside is how far before the first riser the levels are written, as a
// share of the total rise.
const levelsAside = 0.38

// tapersAside is the same where winders have their two levels written in one line.
const tapersAside = 0.75

// Unfolded draws the whole stairway from the side as if it went straight on: its
// members one after another along the way up, each at its level, winders and
// curves unrolled along their walkline.
func Unfolded(s *layout.Stairway, st measure.Style) *drawing.Drawing {
	u := &unfolded{d: &drawing.Drawing{Name: "unfolded", Title: "Unfolded elevation, along the way up"}, s: s, st: st}
	if len(s.Winders())+len(s.Curves()) > 0 {
		u.d.Title += "; tapered treads along the walkline"
	}
	u.aside, u.rows = -levelsAside*s.TotalRise.MM(), 2+min(1, len(s.Winders())+len(s.Curves()))
	if len(s.Winders()) > 0 {
		u.aside = -tapersAside * s.TotalRise.MM()
		u.rows = max(u.rows, len(s.Elements)) // each in its own: levels lie near each other
	}
	u.level("lower floor", 0, 0, climbs(s.Elements[0]))
	for i, e := range s.Elements {
		switch e := e.(type) {
		case *layout.Flight:
			u.flight(e)
		case *layout.Curve:
			u.curve(e)
		case *layout.Landing:
			u.landing(i, e)
		case *layout.Winders:
			u.winders(e)
		}
	}
	u.floors()
	return u.d
}

// SeveralTapered tells whether winders or curves stand among several members: what
// is said of them takes more room then.
func SeveralTapered(s *layout.Stairway) bool {
	return len(s.Elements) > 3 && len(s.Winders())+len(s.Curves()) > 0
}

// climbs is how many risers a flight or a curve has.
func climbs(e layout.Element) int {
	switch e := e.(type) {
	case *layout.Flight:
		return e.Risers
	case *layout.Curve:
		return e.Risers
	}
	return 0
}

type unfolded struct {
	d     *drawing.Drawing
	s     *layout.Stairway
	st    measure.Style
	aside float64 // where levels are written
	x     float64 // where the next element begins
	row   int     // of it
	rows  int     // that what climbs is written in, in turn; a third where there are tapered treads

	turns int // lengths written below those of flights so far

	// Where the last member ends: the upper floor's nosing, and the face of what
	// it bears on.
	lip, face float64
}

func (u *unfolded) flight(f *layout.Flight) {
	at := func(p geom.Point) geom.Point { return r2.Add(p, geom.Pt(u.x, f.StartLevel)) }
	for _, b := range stepBoards(u.s, f) {
		u.d.Add(drawing.Path{Layer: drawing.Thin, Path: geom.Rect(geom.Box{Min: at(b.Min), Max: at(b.Max)})})
	}
	for i := range f.Stringers {
		g := &f.Stringers[i]
		pts := make([]geom.Point, len(g.Outline))
		for k, p := range g.Outline {
			pts[k] = at(g.Elevation(p))
		}
		u.d.Polygon(drawing.Outline, pts...)
	}
	if len(f.Strings) > 0 {
		s := f.Strings[0].Solid
		u.d.Polygon(drawing.Outline, everyPoint(s.Outline, func(p geom.Point) geom.Point { return at(s.Elevation(p)) })...)
	}
	if f.Risers > 1 {
		u.d.Line(drawing.Centre, at(nosing(u.s, f, 1)), at(nosing(u.s, f, f.Risers)))
		n := f.Risers - 1
		words := u.st.Format(measure.Length(n) * f.UnitRun)
		u.d.Dim(drawing.Horizontal, geom.Pt(u.x-front(u.s), 0), geom.Pt(u.x+lastRiser(f)-front(u.s), 0), -dimRow, words)
	}
	u.rises(f.Risers, f.UnitRise, f.StartLevel, f.EndLevel)
	u.lip, u.face = u.x+nosing(u.s, f, f.Risers).X, u.x+f.HeadX()+f.Spec.Stringer.BehindHead.MM()
	if !f.Hung() {
		u.lip = u.x + f.HeadX()
	}
	u.x += f.TotalRun
}

// curve draws a curved flight along its walkline.
func (u *unfolded) curve(c *layout.Curve) {
	un := unrollCurve(u.s, c)
	u.steps(un)
	u.along(un, c.Risers-1)
	u.rises(c.Risers, c.UnitRise, c.StartLevel, c.EndLevel)
	u.x += un.long()
	u.lip, u.face = u.x-front(u.s), u.x
}

// winders draws a turn of winders along their walkline, standing on their boxes.
func (u *unfolded) winders(w *layout.Winders) {
	un := unrollWinders(u.s, w)
	un.framed(u.d, u.x, w, 0)
	u.steps(un)
	u.along(un, len(w.Levels))
	n := len(w.Levels) - 1
	u.d.Line(drawing.Thin, geom.Pt(u.aside, w.Levels[0]), geom.Pt(u.x+un.nosing(0).X, w.Levels[0]))
	u.d.Line(drawing.Thin, geom.Pt(u.aside, w.Levels[n]), geom.Pt(u.x+un.nosing(n).X, w.Levels[n]))
	u.d.Text(geom.Pt(u.aside, (w.Levels[0]+w.Levels[n])/2-labelHalf*u.s.TotalRise.MM()), drawing.Small, drawing.Left,
		w.Name+" "+u.st.FormatMM(w.Levels[0])+" to "+u.st.FormatMM(w.Levels[n]))
	u.rises(n, w.UnitRise, w.Levels[0], w.Levels[n])
	u.x += un.long()
}

// steps draws the boards of tapered treads and the line through their nosings.
func (u *unfolded) steps(un unrolled) {
	at := geom.Pt(u.x, 0)
	for _, b := range un.boards() {
		u.d.Add(drawing.Path{Layer: drawing.Thin, Path: geom.Rect(b.Box.Shift(at))})
	}
	var line []geom.Point
	for k := range un.lines {
		line = append(line, r2.Add(un.nosing(k), at))
	}
	u.d.Polyline(drawing.Centre, line...)
}

// turnRow is the row of the next length of a landing or of tapered treads. Where
// there are tapered treads two rows take turns: their figures are longer than many a
// turn.
func (u *unfolded) turnRow() float64 {
	row := landingRow
	if u.rows > 2 {
		row += u.turns % 2
		u.turns++
	}
	return float64(row)
}

// along says how long so many treads are along the walkline.
func (u *unfolded) along(un unrolled, treads int) {
	u.d.Dim(drawing.Horizontal, geom.Pt(u.x-front(u.s), 0), geom.Pt(u.x+un.lines[treads]-front(u.s), 0), -u.turnRow()*dimRow, u.st.FormatMM(un.lines[treads])+" walkline")
}

// rises says how so many risers climb, between the levels beside them. The rows
// take turns: a short member's words run past its end.
func (u *unfolded) rises(risers int, rise, from, to float64) {
	if risers == 1 && u.rows > 2 {
		return // between lines with their levels, and no room beside what climbs next to it
	}
	words := fmt.Sprintf("%d at %s", risers, each(rise, u.st))
	u.d.Dim(drawing.Vertical, geom.Pt(u.aside, from), geom.Pt(u.aside, to), -float64(1+u.row%u.rows)*dimRow, words)
	u.row++
}

// level writes a level where all are read, with a line to what stands at it:
// above the line, or below it where what climbs from there, if anything does, has
// but one riser and the next level's line is too near.
func (u *unfolded) level(name string, level, to float64, risers int) {
	u.d.Line(drawing.Thin, geom.Pt(u.aside, level), geom.Pt(to, level))
	figure := "0"
	if level != 0 {
		figure = u.st.FormatMM(level)
	}
	up := labelUp
	if risers == 1 {
		up = -labelDown
	}
	u.d.Text(geom.Pt(u.aside, level+up*u.s.TotalRise.MM()), drawing.Small, drawing.Left, name+" "+figure)
}

// How far from its line a level is written, of the total rise.
const (
	labelUp   = 0.045
	labelDown = 0.09
	labelHalf = 0.02 // half of it, between two lines
)

func (u *unfolded) landing(i int, l *layout.Landing) {
	way := append([]geom.Point{l.Entry.At}, crossing(l)...)
	way = append(way, l.Exit.At)
	long := 0.0
	for k := 1; k < len(way); k++ {
		long += r2.Norm(r2.Sub(way[k], way[k-1]))
	}
	under := underside(l)
	u.d.Add(drawing.Path{Layer: drawing.Outline, Path: geom.Rect(geom.Box{Min: geom.Pt(u.x, under), Max: geom.Pt(u.x+long, l.Level)})})
	if finish := l.Spec.Finish.MM(); finish > 0 {
		u.d.Line(drawing.Thin, geom.Pt(u.x, l.Level-finish), geom.Pt(u.x+long, l.Level-finish))
	}
	switch {
	case under <= 0:
	case l.Spec.On == spec.OnLegs:
		u.legs(long, under)
	case l.Spec.On == spec.OnWalls:
		u.d.Add(drawing.Path{Layer: drawing.Thin, Path: geom.Rect(geom.Box{Min: geom.Pt(u.x, 0), Max: geom.Pt(u.x+long, under)})})
	}
	u.level(l.Name, l.Level, u.x-front(u.s), climbs(u.s.Elements[i+1]))
	u.d.Dim(drawing.Horizontal, geom.Pt(u.x-front(u.s), 0), geom.Pt(u.x+long-front(u.s), 0), -u.turnRow()*dimRow, u.st.FormatMM(long))
	u.x += long
}

// legs draws those at either end of what is so long and stands so high over the
// lower floor.
func (u *unfolded) legs(long, high float64) {
	for _, x := range [...]float64{u.x, u.x + long - legSize} {
		u.d.Add(drawing.Path{Layer: drawing.Thin, Path: geom.Rect(geom.Box{Min: geom.Pt(x, 0), Max: geom.Pt(x+legSize, high)})})
	}
}

// floors draws either floor and the total rise.
func (u *unfolded) floors() {
	total := u.s.TotalRise.MM()
	shown := floorShown * total
	lip, end := u.lip, u.face
	u.d.Line(drawing.Outline, geom.Pt(-shown, 0), geom.Pt(end+shown, 0))
	depth := floorDepth(u.s)
	u.d.Polyline(drawing.Outline, geom.Pt(end+shown, total), geom.Pt(lip, total), geom.Pt(lip, total-u.s.Job.Levels.UpperFinish.MM()),
		geom.Pt(end, total-u.s.Job.Levels.UpperFinish.MM()), geom.Pt(end, total-depth), geom.Pt(end+shown, total-depth))
	u.level("upper floor", total, lip, 0)
	u.d.Dim(drawing.Vertical, geom.Pt(end+shown, 0), geom.Pt(end+shown, total), dimRow, fmt.Sprintf("%d risers, %s", u.s.Risers, u.st.Format(u.s.TotalRise)))
}
