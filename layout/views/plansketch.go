package views

import (
	"gonum.org/v1/gonum/spatial/r2"

	"stepoff/layout"
	"stepoff/layout/drawing"
	"stepoff/layout/geom"
	"stepoff/layout/turn"
)

// PlanSketch draws a stairway of any kind from above: edges, riser lines, and an
// arrow for the way up. It has no figures. It is nil where the job states no
// width.
func PlanSketch(s *layout.Stairway, title string) *drawing.Drawing {
	if s.Job.Width == nil {
		return nil
	}
	d := &drawing.Drawing{Name: "kind", Title: title}
	var way []geom.Point
	for _, e := range s.Elements {
		switch e := e.(type) {
		case *layout.Flight:
			way = append(way, sketchFlight(d, s, e)...)
		case *layout.Landing:
			d.Polygon(drawing.Outline, e.Outline...)
			way = append(way, over(e)...)
		case *layout.Winders:
			taperedPlan(d, e.Laid, drawing.Outline)
			way = append(way, middles(e.Laid.Risers)...)
		case *layout.Curve:
			taperedPlan(d, e.Laid, drawing.Outline)
			way = append(way, middles(e.Laid.Risers)...)
		}
	}
	arrow(d, straighten(way), s.Job.Width.MM())
	return d
}

// sketchFlight draws a flight and returns the ends of its way.
func sketchFlight(d *drawing.Drawing, s *layout.Stairway, f *layout.Flight) []geom.Point {
	fr, half := flightFrame(f), s.Job.Width.MM()/2
	for k := range f.Risers {
		at := float64(k) * f.UnitRun.MM()
		d.Line(drawing.Outline, fr.at(at, half), fr.at(at, -half))
	}
	for _, side := range [...]float64{half, -half} {
		d.Line(drawing.Outline, fr.at(0, side), fr.at(f.TotalRun, side))
	}
	return []geom.Point{fr.at(0, 0), fr.at(lastRiser(f), 0)}
}

// over is the way across a landing, by the corner where its flights' middles
// meet or half way along it.
func over(l *layout.Landing) []geom.Point {
	in, out := frameAt(l.Entry.At.X, l.Entry.At.Y, l.Entry.Heading), frameAt(l.Exit.At.X, l.Exit.At.Y, l.Exit.Heading)
	switch l.Spec.Angle {
	case 180:
		return []geom.Point{in.at(l.Up/2, 0), in.at(l.Up/2, in.sideways(out.origin))}
	case 90:
		return []geom.Point{in.at(in.lengthwise(out.origin), 0)}
	}
	return nil
}

func middles(lines []turn.Segment) []geom.Point {
	var out []geom.Point
	for _, l := range lines {
		out = append(out, r2.Scale(0.5, r2.Add(l.In, l.Out)))
	}
	return out
}

// arrow draws the way up, from a ring to an arrow's head.
func arrow(d *drawing.Drawing, way []geom.Point, width float64) {
	if len(way) < 2 {
		return
	}
	d.Polyline(drawing.Thin, way...)
	end, before := way[len(way)-1], way[len(way)-2]
	along := r2.Unit(r2.Sub(end, before))
	across := geom.Pt(-along.Y, along.X)
	back := r2.Sub(end, r2.Scale(0.18*width, along))
	d.Add(drawing.Path{Layer: drawing.Thin, Fill: 1, Path: geom.Closed(end, r2.Add(back, r2.Scale(0.07*width, across)), r2.Sub(back, r2.Scale(0.07*width, across)))})
	start := way[0]
	d.Add(drawing.Path{Layer: drawing.Thin, Path: geom.Path{Closed: true, Edges: []geom.Edge{geom.Arc(start, originSize*width, 0, 6.283185307179586)}}})
	first := r2.Unit(r2.Sub(way[1], start))
	d.Text(r2.Sub(start, r2.Scale(0.3*width, first)), drawing.Small, drawing.Middle, "up")
}
