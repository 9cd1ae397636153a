package views

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"stepoff/layout"
	"stepoff/layout/drawing"
	"stepoff/layout/geom"
)

// PlanSketch draws a stairway of any kind from above: edges, riser lines, and an
// arrow for the way up. It has no figures. It is nil where the job states no
// width.
func PlanSketch(s *layout.Stairway, title string) *drawing.Drawing {
	if s.Job.Width == nil {
		return nil
	}
	d := &drawing.Drawing{Name: "kind", Title: title}
	for _, e := range s.Elements {
		switch e := e.(type) {
		case *layout.Flight:
			sketchFlight(d, s, e)
		case *layout.Landing:
			d.Polygon(drawing.Outline, e.Outline...)
		default:
			taperedPlan(d, laid(e), drawing.Outline)
		}
	}
	sketchWay(d, s)
	return d
}

// sketchFlight draws a flight's riser lines and edges.
func sketchFlight(d *drawing.Drawing, s *layout.Stairway, f *layout.Flight) {
	fr, half := flightFrame(f), s.Job.Width.MM()/2
	for k := range f.Risers {
		at := float64(k) * f.UnitRun.MM()
		d.Line(drawing.Outline, fr.at(at, half), fr.at(at, -half))
	}
	for _, side := range [...]float64{half, -half} {
		d.Line(drawing.Outline, fr.at(0, side), fr.at(f.TotalRun, side))
	}
}

// sketchWay draws the way up, from a ring to an arrow's head.
func sketchWay(d *drawing.Drawing, s *layout.Stairway) {
	way := travel(s)
	if len(way.lines) == 0 {
		return
	}
	for _, line := range way.lines {
		line.Layer = drawing.Thin
		d.Add(line)
	}
	width := s.Job.Width.MM()
	end, _ := lastLine(s)
	d.Add(arrow(way.end, end, width))
	ring := geom.Path{Closed: true, Edges: []geom.Edge{geom.Arc(way.start, originSize*width, 0, 2*math.Pi)}}
	d.Add(drawing.Path{Layer: drawing.Thin, Path: ring})
	d.Text(r2.Sub(way.start, r2.Scale(0.3*width, entry(s.Elements[0]).along)), drawing.Small, drawing.Middle, "up")
}
