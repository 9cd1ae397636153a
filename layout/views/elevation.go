package views

import (
	"gonum.org/v1/gonum/spatial/r2"

	"stepoff/layout"
	"stepoff/layout/drawing"
	"stepoff/layout/geom"
	"stepoff/spec"
	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

// Dimension lines stand off the thing measured by whole rows, in millimetres
// on the sheet.
const dimRow = 9.0

// floorShown is how much of the floors is drawn beyond the stair, as a share
// of the total rise.
const floorShown = 0.12

// Elevation draws the flight from the side, treads, riser boards and floors
// with it, dimensions what a framer builds by, and shows how high over the nosing
// line the code has the handrail and the guard it asks for; without a code (nil)
// neither.
func Elevation(s *layout.Stairway, f *layout.Flight, code *rules.Code, st measure.Style) *drawing.Drawing {
	d := &drawing.Drawing{Name: f.Name + "-elevation", Title: title(s, f)}
	e := elevation{d: d, s: s, f: f, st: st}
	e.floors()
	e.boards()
	if len(f.Stringers) > 0 {
		e.stringer(&f.Stringers[0])
	}
	if len(f.Strings) > 0 {
		e.nearString(&f.Strings[0])
	}
	e.nosingLine()
	if f.Risers > 1 {
		rails(d, s, f, code, st, []geom.Point{e.nosing(1), e.nosing(f.Risers)})
	}
	e.dimensions()
	return d
}

// title says which stringer is drawn where they are not all alike.
func title(s *layout.Stairway, f *layout.Flight) string {
	title := "Side elevation"
	if len(s.Elements) > 1 {
		title += " of " + f.Name
	}
	if len(f.Stringers) < 2 {
		return title
	}
	return title + ", " + f.Stringers[0].Name + " (" + f.Stringers[0].Where(f.Spec.Stringer.Count) + ")"
}

type elevation struct {
	d  *drawing.Drawing
	s  *layout.Stairway
	f  *layout.Flight
	st measure.Style
}

func (e elevation) say(mm float64) string { return e.st.InchesMM(mm) }

// header is where the face of the header stands.
func (e elevation) header() float64 { return e.f.HeadX() + e.f.Spec.Stringer.BehindHead.MM() }

// floors draws what the flight stands on and what it rises to: a floor or a
// landing.
func (e elevation) floors() {
	e.below()
	rise := e.f.EndLevel - e.f.StartLevel
	face, shown := e.header(), floorShown*e.s.TotalRise.MM()
	end := face + 2*shown
	on := e.above()
	// The floor runs out over the header to its nosing; with a flush head the
	// top tread stands where that would be.
	floor := face
	if e.f.Hung() {
		floor = e.nosing(e.f.Risers).X
	}
	e.d.Line(drawing.Outline, geom.Pt(floor, rise), geom.Pt(end, rise))
	if on.top > 0 {
		// How thick the nosing is nobody measured: the flooring, if any.
		lip := on.finish
		if lip == 0 || lip > on.top {
			lip = on.top
		}
		e.d.Polyline(drawing.Outline, geom.Pt(floor, rise), geom.Pt(floor, rise-lip), geom.Pt(face, rise-lip))
		e.d.Line(drawing.Outline, geom.Pt(face, rise-on.top), geom.Pt(end, rise-on.top))
	}
	if on.depth != nil {
		e.d.Polyline(drawing.Outline, geom.Pt(face, rise-on.top), geom.Pt(face, rise-on.depth.MM()), geom.Pt(end, rise-on.depth.MM()))
	} else {
		e.d.Line(drawing.Outline, geom.Pt(face, rise-on.top), geom.Pt(face, rise-e.f.UnitRise))
	}
	if on.ceiling != nil {
		e.d.Line(drawing.Thin, geom.Pt(face, rise-on.ceiling.MM()), geom.Pt(end, rise-on.ceiling.MM()))
	}
}

// below draws the floor the flight stands on, or the landing, whose framing runs
// on under the seat.
func (e elevation) below() {
	shown := floorShown * e.s.TotalRise.MM()
	start, end := -shown-front(e.s), e.f.HeadX()+shown
	fl := e.f.Flooring.MM()
	if w, ok := e.f.Foot.(*layout.Winders); ok && w.Spec.Boxes {
		e.onBox(w, start)
		return
	}
	l, ok := e.f.Foot.(*layout.Landing)
	if !ok {
		e.d.Line(drawing.Outline, geom.Pt(start, 0), geom.Pt(end, 0))
		if fl > 0 {
			e.d.Line(drawing.Thin, geom.Pt(start, -fl), geom.Pt(end, -fl))
		}
		return
	}
	under := underside(l) - l.Level
	end = e.f.UnitRun.MM()
	if x, ok := e.f.Seat(); ok {
		end = x
	}
	laid := end // how far the flooring goes: up to the first riser where the foot stands under it
	if fl > 0 {
		laid = 0
	}
	e.d.Line(drawing.Outline, geom.Pt(start, 0), geom.Pt(laid, 0))
	for _, y := range [...]float64{-l.Spec.Finish.MM(), -(l.Spec.Finish + l.Spec.Sheathing).MM()} {
		e.d.Line(drawing.Thin, geom.Pt(start, y), geom.Pt(end, y))
	}
	e.d.Polyline(drawing.Outline, geom.Pt(start, under), geom.Pt(end, under), geom.Pt(end, -l.Spec.Finish.MM()))
}

// onBox draws the last winder's tread and the sheathing under it, which runs on
// under the flight's foot.
func (e elevation) onBox(w *layout.Winders, start float64) {
	t, back, seat := e.s.Job.Tread.Thickness.MM(), 0.0, e.f.UnitRun.MM()
	if e.s.Job.Riser.Joint == spec.Behind {
		back = -e.s.Job.Riser.Thickness.MM()
	}
	if x, ok := e.f.Seat(); ok {
		seat = x
	}
	under := -t - w.Spec.Sheathing.MM()
	e.d.Polyline(drawing.Outline, geom.Pt(start, 0), geom.Pt(back, 0), geom.Pt(back, -t))
	e.d.Polyline(drawing.Outline, geom.Pt(start, -t), geom.Pt(seat, -t), geom.Pt(seat, under), geom.Pt(start, under))
}

// bearing is what a flight rises to, measured down from its finished level:
// finish, top of the header, its underside, the ceiling; nil where nobody knows.
type bearing struct {
	finish, top    float64
	depth, ceiling *measure.Length
}

func (e elevation) above() bearing {
	turn, levels := e.f.Head, e.s.Job.Levels
	if turn == nil {
		return bearing{levels.UpperFinish.MM(), levels.HeaderTop.MM(), levels.HeaderDepth, levels.FloorDepth}
	}
	top, depth := turn.Header()
	return bearing{finish: turn.Flooring().MM(), top: top.MM(), depth: depth}
}

// nosing is the place of nosing k.
func (e elevation) nosing(k int) geom.Point { return nosing(e.s, e.f, k) }

// nosing is the place of nosing k in a flight's elevation frame.
func nosing(s *layout.Stairway, f *layout.Flight, k int) geom.Point {
	return geom.Pt(float64(k-1)*f.UnitRun.MM()-front(s), float64(k)*f.UnitRise)
}

func (e elevation) boards() {
	for _, b := range stepBoards(e.s, e.f) {
		e.box(b.Min.X, b.Min.Y, b.Max.X, b.Max.Y)
	}
}

// stepBoard is a tread or riser board seen from the side, in its flight's elevation
// frame.
type stepBoard struct {
	kind layout.BoardKind
	geom.Box
}

// stepBoards places a flight's treads and riser boards.
func stepBoards(s *layout.Stairway, f *layout.Flight) []stepBoard {
	var all []stepBoard
	t, b := s.Job.Tread.Thickness.MM(), s.Job.Riser.Thickness.MM()
	for _, row := range f.Boards {
		for k := row.Steps[0]; k <= row.Steps[1]; k++ {
			if row.Kind == layout.TreadBoard {
				at := nosing(s, f, k)
				all = append(all, stepBoard{row.Kind, geom.Box{Min: geom.Pt(at.X, at.Y-t), Max: geom.Pt(at.X+row.Depth, at.Y)}})
				continue
			}
			// A riser board stands on the cut below it, or on the tread there.
			bottom := float64(k-1)*f.UnitRise - t
			_, onWinder := f.Foot.(*layout.Winders)
			if k == 1 && !onWinder {
				bottom = 0
			} else if s.Job.Riser.Joint == spec.On {
				bottom += t
			}
			x := float64(k-1) * f.UnitRun.MM()
			if k > f.Treads {
				x = f.HeadX() + f.Spec.Stringer.BehindHead.MM()
			}
			all = append(all, stepBoard{row.Kind, geom.Box{Min: geom.Pt(x-b, bottom), Max: geom.Pt(x, bottom+row.Depth)}})
		}
	}
	return all
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

// totalRow is the row of the total rise: clear of the plumb cut's figure, which is
// written toward it and on a low stair reaches as far.
const totalRow = 6

// dimensions stand where nothing else is: rises left of the steps, the run over
// the upper floor, the rest right of the stair and below it.
func (e elevation) dimensions() {
	d, f := e.d, e.f
	total := f.EndLevel - f.StartLevel
	right := e.header() + 2*floorShown*e.s.TotalRise.MM()
	what := "total rise"
	if len(e.s.Elements) > 1 {
		what = "rise"
	}
	d.Dim(drawing.Vertical, geom.Pt(right, 0), geom.Pt(right, total), totalRow*dimRow, what+" "+e.st.FormatMM(total))
	if len(f.Strings) > 0 {
		e.stringDimensions(&f.Strings[0])
	}
	if len(f.Stringers) == 0 {
		return
	}
	g := &f.Stringers[0]
	head, foot := g.HeadX(), -f.Flooring.MM()
	d.Dim(drawing.Horizontal, geom.Pt(0, foot), geom.Pt(g.SeatCut, foot), -dimRow, "seat "+e.say(g.SeatCut))
	d.Dim(drawing.Horizontal, geom.Pt(0, foot), geom.Pt(head, foot), -2*dimRow, "to the head plumb cut "+e.say(head))

	left := e.nosing(1).X
	_, tip := g.Tip(1)
	d.Dim(drawing.Vertical, geom.Pt(left, tip-g.FirstRiserCut), geom.Pt(left, tip), -2*dimRow, "first riser cut "+e.say(g.FirstRiserCut))
	if f.Risers > 1 {
		// At the foot: farther up its figure would run into the rails.
		d.Dim(drawing.Vertical, e.nosing(1), e.nosing(2), -dimRow, "unit rise "+e.say(f.UnitRise))
		last := e.nosing(f.Risers - 1).X
		d.Dim(drawing.Horizontal, geom.Pt(last, total), geom.Pt(e.nosing(f.Risers).X, total), dimRow, "unit run "+e.say(f.UnitRun.MM()))
	}

	_, top := g.Tip(g.Notches)
	at := geom.Pt(head, top-g.HeadCut*0.75)
	to := r2.Add(at, geom.Pt(0.08*total, -0.08*total))
	d.Line(drawing.Dimension, at, to)
	d.Add(drawing.Text{Layer: drawing.Dimension, At: to, Height: drawing.Normal, Text: "plumb cut " + e.say(g.HeadCut)})
}
