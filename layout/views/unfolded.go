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

// Unfolded draws the whole stairway from the side as if it went straight on:
// flights and landings one after another along the way up, each at its level.
func Unfolded(s *layout.Stairway, st measure.Style) *drawing.Drawing {
	u := &unfolded{d: &drawing.Drawing{Name: "unfolded", Title: "Unfolded elevation, along the way up"}, s: s, st: st}
	u.aside = -levelsAside * s.TotalRise.MM()
	u.level("lower floor", 0, 0, s.Flights()[0])
	for i, e := range s.Elements {
		switch e := e.(type) {
		case *layout.Flight:
			u.flight(e)
		case *layout.Landing:
			u.landing(i, e)
		}
	}
	u.floors()
	return u.d
}

type unfolded struct {
	d     *drawing.Drawing
	s     *layout.Stairway
	st    measure.Style
	aside float64 // where levels are written
	x     float64 // where the next element begins
	row   int     // of it
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
	if f.Risers > 1 {
		u.d.Line(drawing.Centre, at(nosing(u.s, f, 1)), at(nosing(u.s, f, f.Risers)))
		n := f.Risers - 1
		words := u.st.Format(measure.Length(n) * f.UnitRun)
		u.d.Dim(drawing.Horizontal, geom.Pt(u.x-front(u.s), 0), geom.Pt(u.x+lastRiser(f)-front(u.s), 0), -dimRow, words)
	}
	u.rises(f)
	u.x += f.TotalRun
}

// rises says how a flight climbs, between the levels beside it. The rows
// alternate: a short flight's words run past its end.
func (u *unfolded) rises(f *layout.Flight) {
	words := fmt.Sprintf("%d at %s", f.Risers, each(f.UnitRise, u.st))
	u.d.Dim(drawing.Vertical, geom.Pt(u.aside, f.StartLevel), geom.Pt(u.aside, f.EndLevel), -float64(1+u.row%2)*dimRow, words)
	u.row++
}

// level writes a level where all are read, with a line to what stands at it:
// above the line, or below it where the flight that climbs from there, if any,
// has but one riser and the next level's line is too near.
func (u *unfolded) level(name string, level, to float64, climbs *layout.Flight) {
	u.d.Line(drawing.Thin, geom.Pt(u.aside, level), geom.Pt(to, level))
	figure := "0"
	if level != 0 {
		figure = u.st.FormatMM(level)
	}
	up := labelUp
	if climbs != nil && climbs.Risers == 1 {
		up = -labelDown
	}
	u.d.Text(geom.Pt(u.aside, level+up*u.s.TotalRise.MM()), drawing.Small, drawing.Left, name+" "+figure)
}

// How far from its line a level is written, of the total rise.
const (
	labelUp   = 0.045
	labelDown = 0.09
)

func (u *unfolded) landing(i int, l *layout.Landing) {
	below, above := flightsAt(u.s, i)
	way := append([]geom.Point{flightFrame(below).at(below.TotalRun, 0)}, crossing(l, below, above)...)
	way = append(way, flightFrame(above).origin)
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
		for _, x := range [...]float64{u.x, u.x + long - legSize} {
			u.d.Add(drawing.Path{Layer: drawing.Thin, Path: geom.Rect(geom.Box{Min: geom.Pt(x, 0), Max: geom.Pt(x+legSize, under)})})
		}
	case l.Spec.On == spec.OnWalls:
		u.d.Add(drawing.Path{Layer: drawing.Thin, Path: geom.Rect(geom.Box{Min: geom.Pt(u.x, 0), Max: geom.Pt(u.x+long, under)})})
	}
	u.level(l.Name, l.Level, u.x-front(u.s), above)
	u.d.Dim(drawing.Horizontal, geom.Pt(u.x-front(u.s), 0), geom.Pt(u.x+long-front(u.s), 0), -landingRow*dimRow, u.st.FormatMM(long))
	u.x += long
}

// floors draws either floor and the total rise.
func (u *unfolded) floors() {
	total := u.s.TotalRise.MM()
	shown := floorShown * total
	last := u.s.Elements[len(u.s.Elements)-1].(*layout.Flight)
	head := u.x - last.TotalRun
	lip := head + nosing(u.s, last, last.Risers).X
	if !last.Hung() {
		lip = head + headX(last)
	}
	end := head + headX(last) + last.Spec.Stringer.BehindHead.MM()
	u.d.Line(drawing.Outline, geom.Pt(-shown, 0), geom.Pt(end+shown, 0))
	depth := floorDepth(u.s)
	u.d.Polyline(drawing.Outline, geom.Pt(end+shown, total), geom.Pt(lip, total), geom.Pt(lip, total-u.s.Job.Levels.UpperFinish.MM()),
		geom.Pt(end, total-u.s.Job.Levels.UpperFinish.MM()), geom.Pt(end, total-depth), geom.Pt(end+shown, total-depth))
	u.level("upper floor", total, lip, nil)
	u.d.Dim(drawing.Vertical, geom.Pt(end+shown, 0), geom.Pt(end+shown, total), dimRow, fmt.Sprintf("%d risers, %s", u.s.Risers, u.st.Format(u.s.TotalRise)))
}
