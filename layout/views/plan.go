package views

import (
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"stepoff/layout"
	"stepoff/layout/drawing"
	"stepoff/layout/geom"
	"stepoff/spec"
	"stepoff/spec/measure"
)

// What a plan shows, in millimetres of the house.
const (
	// cutHeight is how high over the lower floor a floor plan cuts the house:
	// about 4 ft (common practice). What stands higher is dashed.
	cutHeight = 48 * 25.4
	// wallThickness is that of a framed wall with its linings: 4 1/2 in
	// (common practice). Only its face is the stair's business.
	wallThickness = 4.5 * 25.4
	// wallGrey is how dark a wall is between its faces.
	wallGrey = 0.15
)

// Parts of a plan, as shares of the stair's width.
const (
	numberAside = 0.25 // of the riser numbers, from the middle of the flight to its right
	numberDown  = 0.05 // of their baseline below the middle, on a tread that lies aslant
	originSize  = 0.03 // radius of the ring where the travel line begins
	arrowLong   = 0.11
	arrowWide   = 0.035
	upBefore    = 0.27 // of UP, before the first riser
)

// numberUp is where a riser's number stands on its tread, and floorBeyond the
// upper floor's words after the last riser, as shares of the run.
const (
	numberUp    = 0.25
	floorBeyond = 1.3
)

// Plan draws the stairway from above: riser lines with their numbers, nosings,
// the way up, landings with their levels, walls, and what of the house it takes.
// It is nil where the job states no width.
func Plan(s *layout.Stairway, st measure.Style) *drawing.Drawing {
	if s.Job.Width == nil {
		return nil
	}
	p := &plan{
		d: &drawing.Drawing{Name: "plan", Title: "Plan, levels above the lower finished floor"},
		s: s, st: st, width: s.Job.Width.MM(), front: front(s), route: travel(s),
	}
	p.cut = p.findCut()
	p.box, _ = s.Footprint()
	p.middle = r2.Scale(0.5, r2.Add(p.box.Min, p.box.Max))
	p.walls()
	for i, e := range s.Elements {
		switch e := e.(type) {
		case *layout.Flight:
			p.flight(i, e)
		case *layout.Landing:
			p.landing(i, e)
		case *layout.Winders:
			p.winders(i, e)
		case *layout.Curve:
			p.curve(i, e)
		}
	}
	p.clear()
	p.opening()
	p.wayUp()
	p.footprint()
	return p.d
}

type plan struct {
	d            *drawing.Drawing
	s            *layout.Stairway
	st           measure.Style
	width, front float64
	cut          cut
	route        route
	box          geom.Box   // the footprint
	middle       geom.Point // of that box
	risers       int        // numbered so far
}

// cut is where the plan's cutting plane meets the stair: on a tread of what
// climbs there.
type cut struct {
	element int     // index of the member; past the last when nothing is cut
	tread   int     // of it, from 1
	along   float64 // of a flight
}

// findCut finds the tread that the cutting plane passes over, on a flight or a
// curve that goes on above it by a riser at least.
func (p *plan) findCut() cut {
	for i, e := range p.s.Elements {
		var risers int
		var start, end, rise, run float64
		switch e := e.(type) {
		case *layout.Flight:
			risers, start, end, rise, run = e.Risers, e.StartLevel, e.EndLevel, e.UnitRise, e.UnitRun.MM()
		case *layout.Curve:
			risers, start, end, rise = e.Risers, e.StartLevel, e.EndLevel, e.UnitRise
		}
		if risers < 2 || end <= cutHeight {
			continue
		}
		k := math.Floor((cutHeight - start) / rise) // risers below the plane
		k = math.Max(1, math.Min(k, float64(risers-1)))
		return cut{i, int(k), (k-0.5)*run - p.front/2}
	}
	return cut{element: len(p.s.Elements)}
}

// edge is the layer for what is seen of an element.
func (p *plan) edge(i int) drawing.Layer {
	if i > p.cut.element {
		return drawing.Hidden
	}
	return drawing.Outline
}

func (p *plan) flight(i int, f *layout.Flight) {
	fr, half, run := flightFrame(f), p.width/2, f.UnitRun.MM()
	across := func(l drawing.Layer, along float64) { p.d.Line(l, fr.at(along, half), fr.at(along, -half)) }
	at := func(along float64) drawing.Layer {
		if i == p.cut.element && along > p.cut.along {
			return drawing.Hidden
		}
		return p.edge(i)
	}
	for k := range f.Risers {
		along := float64(k) * run
		layer := at(along)
		across(layer, along)
		if layer == drawing.Outline && p.front > 0 {
			across(drawing.Thin, along-p.front)
		}
		if _, ok := f.Head.(*layout.Winders); !ok || k < f.Risers-1 { // they number their own treads
			p.risers++
			p.number(fr, along, run)
		}
	}
	if end := f.TotalRun; end > lastRiser(f) { // flush: the top tread, level with what it meets
		across(at(end), end)
	}
	for _, side := range [...]float64{half, -half} {
		if i == p.cut.element {
			p.d.Line(drawing.Outline, fr.at(-p.front, side), fr.at(p.cut.along+breakAt(side/half, run), side))
			p.d.Line(drawing.Hidden, fr.at(p.cut.along+breakAt(side/half, run)+breakGap*run, side), fr.at(f.TotalRun, side))
			continue
		}
		p.d.Line(p.edge(i), fr.at(-p.front, side), fr.at(f.TotalRun, side))
	}
	if i == p.cut.element {
		p.breakLine(func(along, left float64) geom.Point { return fr.at(p.cut.along+along, left) }, run)
	}
	p.flightDims(f, fr)
}

// number writes a riser's number on the tread above it.
func (p *plan) number(fr frame, along, run float64) {
	from, to := along, along+run-p.front
	at := fr.at((from+to)/2, -numberAside*p.width)
	switch {
	case math.Abs(fr.along.X) < levelEnough: // baseline low on the tread, whichever way it climbs
		at.Y = math.Min(fr.at(from, 0).Y, fr.at(to, 0).Y) + numberUp*(run-p.front)
	case math.Abs(fr.along.Y) > levelEnough: // aslant
		at.Y -= numberDown * p.width
	}
	p.d.Text(at, drawing.Small, drawing.Middle, fmt.Sprint(p.risers))
}

// Shape of the break line, as shares of the run: it leans across one tread, and
// is two lines with a zigzag in the middle of each.
const (
	breakLean = 0.22
	breakGap  = 0.16
	zigzag    = 0.3
	zigzagAt  = 0.05 // half its length, of half the width
	// numberRoom is half of what is left for the number of the tread, of half
	// the width.
	numberRoom = 0.22
)

// breakAt is how far along the flight from its middle the break line meets a
// side; 1 is the left one, -1 the right one.
func breakAt(side, run float64) float64 { return side*breakLean*run - breakGap*run/2 }

// breakLine draws the break on a tread, by places so far up from its middle and
// so far to the left.
func (p *plan) breakLine(place func(along, left float64) geom.Point, run float64) {
	for _, off := range [...]float64{0, breakGap * run} {
		at := func(side, more float64) geom.Point {
			return place(breakAt(side, run)+off+more*run, side*p.width/2)
		}
		// The tread's number stands between the pieces.
		p.d.Polyline(drawing.Thin, at(1, 0), at(2*zigzagAt, 0), at(zigzagAt, zigzag), at(-zigzagAt, -zigzag), at(-2*zigzagAt, 0), at(-2*numberAside+numberRoom, 0))
		p.d.Line(drawing.Thin, at(-2*numberAside-numberRoom, 0), at(-1, 0))
	}
}

// flightDims says how long the flight is, on the side away from the rest.
func (p *plan) flightDims(f *layout.Flight, fr frame) {
	side, off := p.outer(fr, fr.at(f.TotalRun/2, 0), f.Foot, f.Head)
	if f.Risers > 1 {
		n := f.Risers - 1
		words := runs(n, f.UnitRun, p.st)
		p.d.Dim(drawing.Aligned, fr.at(-p.front, off), fr.at(lastRiser(f)-p.front, off), side*dimRow, words)
	}
}

// clear gives the clear width, before the first riser.
func (p *plan) clear() {
	fr, half := entry(p.s.Elements[0]), p.width/2
	p.d.Dim(drawing.Aligned, fr.at(-p.front, half), fr.at(-p.front, -half), -widthRow*dimRow, p.st.Inches(*p.s.Job.Width)+" clear")
}

// Rows of dimensions: landings stand outside the flights, whose figures may run
// past a short flight's end; the width clear of UP; the footprint outside all.
const (
	landingRow   = 2
	widthRow     = 2.5
	footprintRow = 3.6
)

// outer tells on which side of a frame's axis, seen at a place of it, there is
// more room for dimensions: +1 left, -1 right; and where they begin, clear of a
// wall there and of landings that are wider.
func (p *plan) outer(fr frame, at geom.Point, beside ...layout.Turn) (side, off float64) {
	side = -1
	if r2.Dot(r2.Sub(p.middle, at), fr.left) < -1 {
		side = 1
	}
	off = p.width / 2
	for _, t := range beside {
		l, ok := t.(*layout.Landing)
		if !ok {
			continue
		}
		for _, q := range l.Outline {
			off = math.Max(off, side*fr.sideways(q))
		}
	}
	if p.wall(side) {
		off += wallThickness
	}
	return side, side * off
}

// wall tells whether a wall stands at a side, +1 left, -1 right.
func (p *plan) wall(side float64) bool {
	sides := p.s.Job.Sides
	k := 0
	if side < 0 {
		k = 1
	}
	return k < len(sides) && sides[k] == spec.Wall
}

// wayUp draws the travel line with its arrow from the first riser to the last,
// and says what is at either end.
func (p *plan) wayUp() {
	first := entry(p.s.Elements[0])
	end, run := lastLine(p.s)
	w, r := p.width, originSize*p.width
	for i, line := range p.route.lines {
		if i == 0 && line.Edges[0].Length() > r { // it begins on the ring
			line.Edges = slices.Clone(line.Edges)
			line.Edges[0] = line.Edges[0].Part(r/line.Edges[0].Length(), 1)
		}
		p.d.Add(line)
	}
	if len(p.route.lines) > 0 {
		ring := geom.Path{Edges: []geom.Edge{geom.Arc(p.route.start, r, 0, 2*math.Pi)}, Closed: true}
		p.d.Add(drawing.Path{Layer: drawing.Thin, Path: ring})
	}
	p.d.Add(arrow(p.route.end, end, w))
	beyond(p.d, first.at(-p.front-upBefore*w, first.sideways(p.route.start)), r2.Scale(-1, first.along), drawing.Normal, "UP")
	beyond(p.d, end.at(floorBeyond*run, 0), end.along, drawing.Small, "upper floor "+p.st.Format(p.s.TotalRise))
}

// arrow is an arrow's head at a place, along a frame's heading, on a stair so
// wide.
func arrow(at geom.Point, fr frame, width float64) drawing.Path {
	tip := frame{at, fr.along, fr.left}
	head := geom.Closed(tip.at(0, 0), tip.at(-arrowLong*width, arrowWide*width), tip.at(-arrowLong*width, -arrowWide*width))
	return drawing.Path{Layer: drawing.Thin, Path: head, Fill: 1}
}

// footprint says what the whole stair takes, where it is more than one flight.
func (p *plan) footprint() {
	if len(p.s.Elements) < 2 {
		return
	}
	b := p.box
	low := b.Min.Y
	p.d.Dim(drawing.Horizontal, geom.Pt(b.Min.X, low), geom.Pt(b.Max.X, low), -footprintRow*dimRow, "footprint "+p.st.FormatMM(b.Width()))
	// Upright where the upper floor's words do not run.
	x, side := b.Min.X, -1.0
	if end, _ := lastLine(p.s); end.along.X < -levelEnough {
		x, side = b.Max.X, 1
	}
	if p.wall(1) || p.wall(-1) {
		x += side * wallThickness
	}
	p.d.Dim(drawing.Vertical, geom.Pt(x, b.Min.Y), geom.Pt(x, b.Max.Y), side*footprintRow*dimRow, "footprint "+p.st.FormatMM(b.Height()))
}

// runs says how long a number of equal runs is.
func runs(n int, run measure.Length, st measure.Style) string {
	if n == 1 {
		return "run " + st.Inches(run)
	}
	whole := st.Format(measure.Length(n) * run)
	if st.Units == measure.Metric { // as short: a short flight has little room for it
		whole = st.Bare(measure.Length(n) * run)
	}
	return fmt.Sprintf("%d x %s = %s", n, each(run.MM(), st), whole)
}

// each is a rise or run of which there are several: in inches, or in bare
// millimetres to keep it short.
func each(mm float64, st measure.Style) string {
	if st.Units == measure.Metric {
		return st.BareMM(mm)
	}
	return st.InchesMM(mm)
}
