package views

import (
	"gonum.org/v1/gonum/spatial/r2"

	"stepoff/layout"
	"stepoff/layout/drawing"
	"stepoff/layout/geom"
	"stepoff/spec"
	"stepoff/spec/measure"
)

// Dimension lines stand off the thing measured by whole rows, in millimetres
// on the sheet.
const dimRow = 9.0

// floorShown is how much of the floors is drawn beyond the stair, as a share
// of the total rise.
const floorShown = 0.12

// Elevation draws the flight from the side, treads, riser boards and floors
// with it, and dimensions what a framer builds by.
func Elevation(s *layout.Stairway, f *layout.Flight, st measure.Style) *drawing.Drawing {
	d := &drawing.Drawing{Name: f.Name + "-elevation", Title: title(f)}
	e := elevation{d: d, s: s, f: f, st: st}
	e.floors()
	e.boards()
	if len(f.Stringers) > 0 {
		e.stringer(&f.Stringers[0])
	}
	e.nosingLine()
	e.dimensions()
	return d
}

// title says which stringer is drawn where they are not all alike.
func title(f *layout.Flight) string {
	if len(f.Stringers) < 2 {
		return "Side elevation"
	}
	return "Side elevation, " + f.Stringers[0].Name + " (" + f.Stringers[0].Where(f.Spec.Stringer.Count) + ")"
}

type elevation struct {
	d  *drawing.Drawing
	s  *layout.Stairway
	f  *layout.Flight
	st measure.Style
}

func (e elevation) say(mm float64) string { return e.st.InchesMM(mm) }

// headX is where the head plumb cut stands; the end of the run where nothing
// is cut.
func (e elevation) headX() float64 {
	if len(e.f.Stringers) > 0 {
		return e.f.Stringers[0].HeadX()
	}
	return e.f.TotalRun
}

// header is where the face of the header stands.
func (e elevation) header() float64 { return e.headX() + e.f.Spec.Stringer.BehindHead.MM() }

func (e elevation) floors() {
	job, rise := e.s.Job, e.f.EndLevel-e.f.StartLevel
	shown := floorShown * e.s.TotalRise.MM()
	start := -shown - e.front()
	e.d.Line(drawing.Outline, geom.Pt(start, 0), geom.Pt(e.headX()+shown, 0))
	if fl := e.f.Flooring.MM(); fl > 0 {
		e.d.Line(drawing.Thin, geom.Pt(start, -fl), geom.Pt(e.headX()+shown, -fl))
	}
	face := e.header()
	end := face + 2*shown
	top := job.Levels.HeaderTop.MM()
	// The floor runs out over the header to its nosing; with a flush head the
	// top tread stands where that would be.
	floor := face
	if e.f.Hung() {
		floor = e.nosing(e.f.Risers).X
	}
	e.d.Line(drawing.Outline, geom.Pt(floor, rise), geom.Pt(end, rise))
	if top > 0 {
		// How thick the nosing is nobody measured: the flooring to come, if any.
		lip := job.Levels.UpperFinish.MM()
		if lip == 0 || lip > top {
			lip = top
		}
		e.d.Polyline(drawing.Outline, geom.Pt(floor, rise), geom.Pt(floor, rise-lip), geom.Pt(face, rise-lip))
		e.d.Line(drawing.Outline, geom.Pt(face, rise-top), geom.Pt(end, rise-top))
	}
	if depth := job.Levels.HeaderDepth; depth != nil {
		e.d.Polyline(drawing.Outline, geom.Pt(face, rise-top), geom.Pt(face, rise-depth.MM()), geom.Pt(end, rise-depth.MM()))
	} else {
		e.d.Line(drawing.Outline, geom.Pt(face, rise-top), geom.Pt(face, rise-e.f.UnitRise))
	}
	if ceiling := job.Levels.FloorDepth; ceiling != nil {
		e.d.Line(drawing.Thin, geom.Pt(face, rise-ceiling.MM()), geom.Pt(end, rise-ceiling.MM()))
	}
}

// front is how far the first nosing stands before the first riser cut.
func (e elevation) front() float64 {
	return e.s.Job.Riser.Thickness.MM() + e.s.Job.Tread.Nosing.MM()
}

// nosing is the place of nosing k.
func (e elevation) nosing(k int) geom.Point {
	return geom.Pt(float64(k-1)*e.f.UnitRun.MM()-e.front(), float64(k)*e.f.UnitRise)
}

func (e elevation) boards() {
	job := e.s.Job
	t, b, run := job.Tread.Thickness.MM(), job.Riser.Thickness.MM(), e.f.UnitRun.MM()
	for _, board := range e.f.Boards {
		for k := board.Steps[0]; k <= board.Steps[1]; k++ {
			if board.Kind == layout.TreadBoard {
				at := e.nosing(k)
				e.box(at.X, at.Y-t, at.X+board.Depth, at.Y)
				continue
			}
			// A riser board stands on the cut below it, or on the tread there.
			bottom := float64(k-1)*e.f.UnitRise - t
			if k == 1 {
				bottom = 0
			} else if job.Riser.Joint == spec.On {
				bottom += t
			}
			x := float64(k-1) * run
			if k > e.f.Treads {
				x = e.header()
			}
			e.box(x-b, bottom, x, bottom+board.Depth)
		}
	}
}

func (e elevation) box(x0, y0, x1, y1 float64) {
	e.d.Polygon(drawing.Thin, geom.Pt(x0, y0), geom.Pt(x1, y0), geom.Pt(x1, y1), geom.Pt(x0, y1))
}

func (e elevation) stringer(g *layout.Group) {
	pts := make([]geom.Point, len(g.Outline))
	for i, p := range g.Outline {
		pts[i] = g.Elevation(p)
	}
	e.d.Polygon(drawing.Cut, pts...)
}

func (e elevation) nosingLine() {
	e.d.Line(drawing.Centre, e.nosing(1), e.nosing(e.f.Risers))
}

// dimensions stand where nothing else is: rises left of the steps, the run over
// the upper floor, the rest right of the stair and below it.
func (e elevation) dimensions() {
	d, f := e.d, e.f
	total := f.EndLevel - f.StartLevel
	right := e.header() + 2*floorShown*e.s.TotalRise.MM()
	d.Dim(drawing.Vertical, geom.Pt(right, 0), geom.Pt(right, total), 4*dimRow, "total rise "+e.st.FormatMM(total))
	if len(f.Stringers) == 0 {
		return
	}
	g := &f.Stringers[0]
	head, foot := g.HeadX(), -f.Flooring.MM()
	d.Dim(drawing.Horizontal, geom.Pt(0, foot), geom.Pt(g.SeatCut, foot), -dimRow, "seat "+e.say(g.SeatCut))
	d.Dim(drawing.Horizontal, geom.Pt(0, foot), geom.Pt(head, foot), -2*dimRow, "to the head plumb cut "+e.say(head))

	left := e.nosing(1).X
	_, tip := g.Tip(1)
	d.Dim(drawing.Vertical, geom.Pt(left, tip-g.FirstRiserCut), geom.Pt(left, tip), -dimRow, "first riser cut "+e.say(g.FirstRiserCut))
	if k := f.Treads / 2; k > 1 { // half way up, where the left is free
		d.Dim(drawing.Vertical, e.nosing(k), e.nosing(k+1), -dimRow, "unit rise "+e.say(f.UnitRise))
	}
	if f.Risers > 1 {
		last := e.nosing(f.Risers - 1).X
		d.Dim(drawing.Horizontal, geom.Pt(last, total), geom.Pt(e.nosing(f.Risers).X, total), dimRow, "unit run "+e.say(f.UnitRun.MM()))
	}

	_, top := g.Tip(g.Notches)
	at := geom.Pt(head, top-g.HeadCut*0.75)
	to := r2.Add(at, geom.Pt(0.08*total, -0.08*total))
	d.Line(drawing.Dimension, at, to)
	d.Add(drawing.Text{Layer: drawing.Dimension, At: to, Height: drawing.Normal, Text: "plumb cut " + e.say(g.HeadCut)})
}
