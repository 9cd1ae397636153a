package views

import (
	"stepoff/layout"
	"stepoff/layout/drawing"
	"stepoff/layout/geom"
)

// everyPoint is every point moved.
func everyPoint(ps []geom.Point, motion func(geom.Point) geom.Point) []geom.Point {
	out := make([]geom.Point, len(ps))
	for i, p := range ps {
		out[i] = motion(p)
	}
	return out
}

// nearString draws a string as if it were seen through: its outline, and its
// housings or cleats with it.
func (e elevation) nearString(s *layout.String) {
	e.d.Polygon(drawing.Cut, everyPoint(s.Outline, s.Elevation)...)
	if s.Housed != nil {
		for i := range s.Housed.Housings {
			for _, run := range s.Housed.Housings[i].Walls() {
				e.d.Add(drawing.Path{Layer: drawing.Hidden, Path: s.ElevationPath(run)})
			}
		}
		return
	}
	for _, c := range s.Cleated.Cleats {
		e.d.Polygon(drawing.Outline, everyPoint(c.Corners, s.Elevation)...)
	}
}

// stringDimensions stand as those of a sawn stringer do.
func (e elevation) stringDimensions(s *layout.String) {
	d, f := e.d, e.f
	total := f.EndLevel - f.StartLevel
	foot, head, floor := s.HeadX()-s.Span(), s.HeadX(), -s.Below
	first := e.nosing(1)
	d.Dim(drawing.Horizontal, geom.Pt(foot, floor), geom.Pt(s.SeatEnd(), floor), -dimRow, "level cut "+e.say(s.SeatCut))
	d.Dim(drawing.Horizontal, geom.Pt(foot, floor), geom.Pt(head, floor), -2*dimRow, "plumb cut to plumb cut "+e.say(s.Span()))
	d.Dim(drawing.Vertical, geom.Pt(foot, floor), geom.Pt(foot, floor+s.FootCut), -2*dimRow, "plumb cut "+e.say(s.FootCut))
	if f.Risers > 1 {
		d.Dim(drawing.Vertical, geom.Pt(foot, first.Y), geom.Pt(foot, e.nosing(2).Y), -dimRow, "unit rise "+e.say(f.UnitRise))
		last := e.nosing(f.Risers - 1).X
		d.Dim(drawing.Horizontal, geom.Pt(last, total), geom.Pt(e.nosing(f.Risers).X, total), 2*dimRow, "unit run "+e.say(f.UnitRun.MM()))
	}
	at := geom.Pt(head, s.HeadLevelY()-s.HeadCut*0.75)
	to := geom.Pt(at.X+0.08*total, at.Y-0.08*total)
	d.Line(drawing.Dimension, at, to)
	d.Add(drawing.Text{Layer: drawing.Dimension, At: to, Height: drawing.Normal, Text: "plumb cut " + e.say(s.HeadCut)})
}
