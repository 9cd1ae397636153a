package views

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"stepoff/layout"
	"stepoff/layout/drawing"
	"stepoff/layout/geom"
	"stepoff/layout/lesson"
)

// NamedPart is one part of a stair in the drawing of the parts: where its leader
// points to.
type NamedPart struct {
	Name string
	At   geom.Point // in the flight's elevation frame
	from geom.Point // where its letter stands
}

// Parts draws a flight from the side with a leader to each of the parts named (see
// lesson.PartNames), lettered from A on in that order. The flight has stringers;
// what it has not got, such as a kicker, has no leader.
func Parts(s *layout.Stairway, f *layout.Flight, names []string) (*drawing.Drawing, []NamedPart) {
	d := &drawing.Drawing{Name: "parts", Title: "The parts of a stair"}
	e := elevation{d: d, s: s, f: f}
	e.floors()
	e.boards()
	e.stringer(&f.Stringers[0])
	rail := handrailHeight
	d.Line(drawing.Outline, r2.Add(e.nosing(1), geom.Pt(0, rail)), r2.Add(e.nosing(f.Risers-1), geom.Pt(0, rail)))
	d.Line(drawing.Outline, r2.Add(e.nosing(1), geom.Pt(0, rail-40)), r2.Add(e.nosing(f.Risers-1), geom.Pt(0, rail-40)))
	var parts []NamedPart
	known := namedParts(e)
	for _, name := range names {
		if k := slices.IndexFunc(known, func(p NamedPart) bool { return p.Name == name }); k >= 0 {
			parts = append(parts, known[k])
		}
	}
	for i, p := range parts {
		d.Line(drawing.Thin, p.from, p.At)
		d.Add(drawing.Path{Layer: drawing.Thin, Fill: 1, Path: geom.Rect(geom.Box{Min: p.At, Max: p.At}.Grow(dotSize))})
		d.Add(drawing.Text{Layer: drawing.Note, At: beside(p), Height: drawing.Large, Align: drawing.Middle, Text: lesson.PartLetter(i)})
	}
	return d, parts
}

const (
	// handrailHeight is where the rail is drawn over the nosings: 36 in, common
	// practice.
	handrailHeight = 36 * 25.4
	dotSize        = 8.0 // half the dot at the end of a leader, mm of the stair
	letterOff      = 70.0
)

// beside is where a part's letter stands: on beyond its leader.
func beside(p NamedPart) geom.Point {
	way := r2.Unit(r2.Sub(p.from, p.At))
	return r2.Add(r2.Add(p.from, r2.Scale(letterOff, way)), geom.Pt(0, -40))
}

// namedParts finds the parts on the flight that is drawn.
func namedParts(e elevation) []NamedPart {
	f, g := e.f, &e.f.Stringers[0]
	t, b := e.s.Job.Tread.Thickness.MM(), e.s.Job.Riser.Thickness.MM()
	run, rise := f.UnitRun.MM(), f.UnitRise
	up := geom.Pt(-0.55, 0.84) // leaders over the flight lean toward its foot
	var all []NamedPart
	over := func(name string, at geom.Point, long float64) {
		all = append(all, NamedPart{name, at, r2.Add(at, r2.Scale(long, up))})
	}
	under := func(name string, at geom.Point, long float64) {
		all = append(all, NamedPart{name, at, r2.Add(at, r2.Scale(long, geom.Pt(0.6, -0.8)))})
	}
	n := f.Treads
	k := max(2, n/3)
	one := e.nosing(k)
	over("nosing", geom.Pt(one.X+4, one.Y-t/2), 1.2*rise)
	m := max(3, n/2)
	over("tread", geom.Pt(e.nosing(m).X+0.6*run, e.nosing(m).Y-t/2), 1.7*rise)
	h := max(4, 2*n/3)
	over("riser board", geom.Pt(float64(h-1)*run-b/2, float64(h)*rise-0.55*rise), 1.5*rise)
	j := max(2, n-2)
	over("handrail", r2.Add(e.nosing(j), geom.Pt(0, handrailHeight-20)), 0.9*rise)
	root := geom.Pt(float64(k)*run, float64(k)*rise-t)
	square := geom.Pt(math.Sin(g.Pitch), -math.Cos(g.Pitch))
	under("root", r2.Add(root, r2.Scale(6, square)), 2.6*rise)
	under("throat", r2.Add(geom.Pt(float64(m)*run, float64(m)*rise-t), r2.Scale(g.Throat*0.7, square)), 2.2*rise)
	under("stringer", r2.Add(geom.Pt((float64(h)-0.4)*run, float64(h)*rise-t), r2.Scale(g.Throat*0.8, square)), 2.4*rise)
	head := geom.Pt(f.HeadX(), float64(g.Notches)*rise-t-g.HeadCut*0.6)
	under("plumb cut at the head", head, 2.6*rise)
	if depth := e.above().depth; depth != nil {
		at := geom.Pt(e.header()+30, f.EndLevel-f.StartLevel-depth.MM()*0.6)
		all = append(all, NamedPart{"header", at, r2.Add(at, geom.Pt(2*run, -1.2*rise))})
	}
	under("seat", geom.Pt(g.SeatCut*0.75, -f.Flooring.MM()), 0.9*rise)
	if g.Kicker != nil {
		at := geom.Pt(g.Kicker.Depth/2, -f.Flooring.MM()+g.Kicker.Height/2)
		all = append(all, NamedPart{"kicker", at, r2.Add(at, geom.Pt(-1.2*rise, -1.5*rise))})
	}
	all = append(all, NamedPart{"lower finished floor", geom.Pt(-1.1*run, 0), geom.Pt(-1.4*run, 0.9*rise)})
	top := geom.Pt(e.header()+1.2*run, f.EndLevel-f.StartLevel)
	return append(all, NamedPart{"upper finished floor", top, r2.Add(top, geom.Pt(0.2*run, 0.8*rise))})
}
