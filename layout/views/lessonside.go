package views

import (
	"math"
	"strconv"

	"stepoff/layout"
	"stepoff/layout/drawing"
	"stepoff/layout/geom"
	"stepoff/spec/measure"
)

func fmtInt(k int) string { return strconv.Itoa(k) }

// floorToFloor draws the two floors and how the rise between them is measured.
func floorToFloor(d *drawing.Drawing, s *layout.Stairway, st measure.Style) {
	h := s.TotalRise.MM()
	levels := s.Job.Levels
	low, up := levels.LowerFinish.MM(), levels.UpperFinish.MM()
	d.Line(drawing.Outline, geom.Pt(0, 0), geom.Pt(1.6*h, 0))
	if low > 0 {
		d.Line(drawing.Thin, geom.Pt(0, -low), geom.Pt(1.6*h, -low))
	}
	edge, deep := 0.95*h, 0.1*h
	if levels.FloorDepth != nil {
		deep = levels.FloorDepth.MM()
	}
	d.Polyline(drawing.Outline, geom.Pt(1.6*h, h), geom.Pt(edge, h), geom.Pt(edge, h-deep), geom.Pt(1.6*h, h-deep))
	if up > 0 {
		d.Line(drawing.Thin, geom.Pt(edge, h-up), geom.Pt(1.6*h, h-up))
	}
	d.Text(geom.Pt(1.58*h, h-0.75*deep), drawing.Small, drawing.Right, "upper finished floor")
	d.Text(geom.Pt(1.58*h, 0.02*h), drawing.Small, drawing.Right, "lower finished floor")
	// A straightedge carries the level out to where the pole stands.
	pole := 0.35 * h
	d.Polyline(drawing.Thin, geom.Pt(1.15*h, h), geom.Pt(1.15*h, h+0.02*h), geom.Pt(pole-0.08*h, h+0.02*h), geom.Pt(pole-0.08*h, h), geom.Pt(edge, h))
	d.Text(geom.Pt(0.6*h, h+0.05*h), drawing.Small, drawing.Middle, "straightedge, level")
	d.Line(drawing.Cut, geom.Pt(pole, 0), geom.Pt(pole, h))
	d.Text(geom.Pt(pole+0.03*h, 0.4*h), drawing.Small, drawing.Left, "plumb")
	d.Dim(drawing.Vertical, geom.Pt(pole, 0), geom.Pt(pole, h), -dimRow, "total rise "+st.Format(s.TotalRise))
}

// poleBroad is how broad the pole is drawn, as a share of the rise it shows.
const poleBroad = 0.045

// lyingPole draws the story pole lying down, its foot at the left: the number of
// each level above it, the level below it.
func lyingPole(d *drawing.Drawing, s *layout.Stairway, part layout.Part, st measure.Style) {
	from, to := part.From.MM(), part.To.MM()
	long := to - from
	broad := poleBroad * long
	d.Polygon(drawing.Outline, geom.Pt(0, 0), geom.Pt(long, 0), geom.Pt(long, broad), geom.Pt(0, broad))
	for k := 0; k <= part.Risers; k++ {
		x := s.Level(part.Below+k) - from
		d.Line(drawing.Cut, geom.Pt(x, 0), geom.Pt(x, broad))
		d.Text(geom.Pt(x, 1.4*broad), drawing.Small, drawing.Middle, fmtInt(k))
		d.Add(drawing.Text{Layer: drawing.Dimension, At: geom.Pt(x+0.35*broad, -0.5*broad), Height: drawing.Normal, Angle: math.Pi / 2, Align: drawing.Right, Text: st.BareMM(x + from)})
	}
}

// shownSteps are the steps of a section.
const shownSteps = 3

// stepSection draws the first steps from the side, their boards on the stringer:
// with rise and run, or with the sizes of the boards.
func stepSection(d *drawing.Drawing, s *layout.Stairway, f *layout.Flight, st measure.Style, boards bool) {
	n := min(shownSteps, f.Treads)
	reach := nosing(s, f, n).X + f.UnitRun.MM()
	window := geom.Box{Min: geom.Pt(-1e6, -1e6), Max: geom.Pt(reach, 1e6)}
	var pts []geom.Point
	if len(f.Strings) > 0 {
		pts = everyPoint(f.Strings[0].Outline, f.Strings[0].Elevation)
	} else {
		pts = everyPoint(f.Stringers[0].Outline, f.Stringers[0].Elevation)
	}
	for _, e := range geom.Closed(pts...).Edges {
		for _, c := range e.Clip(window) {
			d.Line(drawing.Thin, c.From, c.To)
		}
	}
	layer := drawing.Thin
	if boards {
		layer = drawing.Cut
	}
	var tread, riser *stepBoard
	for _, b := range stepBoards(s, f) {
		if b.Max.Y > nosing(s, f, n).Y+1 {
			continue
		}
		d.Polygon(layer, b.Min, geom.Pt(b.Max.X, b.Min.Y), b.Max, geom.Pt(b.Min.X, b.Max.Y))
		switch {
		case b.kind == layout.TreadBoard: // the highest shown: nothing stands over it
			tread = &b
		case b.kind == layout.RiserBoard && riser == nil:
			riser = &b
		}
	}
	d.Line(drawing.Outline, geom.Pt(-0.6*f.UnitRun.MM(), 0), geom.Pt(reach, 0))
	if boards {
		if tread != nil {
			d.Dim(drawing.Horizontal, geom.Pt(tread.Min.X, tread.Max.Y), tread.Max, dimRow, "tread "+st.InchesMM(tread.Width()))
		}
		if riser != nil {
			d.Dim(drawing.Vertical, geom.Pt(riser.Min.X, riser.Min.Y), geom.Pt(riser.Min.X, riser.Max.Y), -dimRow, st.InchesMM(riser.Height()))
		}
		return
	}
	one := nosing(s, f, 1)
	d.Dim(drawing.Vertical, geom.Pt(one.X, 0), one, -dimRow, "unit rise "+st.InchesMM(f.UnitRise))
	if n > 1 {
		d.Line(drawing.Cut, geom.Pt(one.X, 0), one)
		d.Line(drawing.Cut, one, geom.Pt(nosing(s, f, 2).X, one.Y))
		last := nosing(s, f, n)
		before := nosing(s, f, n-1)
		d.Dim(drawing.Horizontal, before, last, dimRow, "unit run "+st.Inches(f.UnitRun))
	} else {
		d.Line(drawing.Cut, geom.Pt(one.X, 0), one)
	}
}

// headroomFigure draws the flight under a floor that is open as far as the headroom
// needs, and the height that is then free over the nosings.
func headroomFigure(d *drawing.Drawing, s *layout.Stairway, f *layout.Flight, opening float64, st measure.Style) {
	e := elevation{d: d, s: s, f: f, st: st}
	e.floors()
	e.boards()
	e.nosingLine()
	over := s.Overhead()
	if over == nil {
		return
	}
	least, at := over.Least(opening)
	floor := f.EndLevel - f.StartLevel
	ceiling := floor - s.Job.Levels.FloorDepth.MM()
	far := at - floorShown*2*s.TotalRise.MM()
	d.Polyline(drawing.Outline, geom.Pt(far, floor), geom.Pt(at, floor), geom.Pt(at, ceiling), geom.Pt(far, ceiling))
	d.Line(drawing.Cut, geom.Pt(at, ceiling-least), geom.Pt(at, ceiling))
	d.Dim(drawing.Vertical, geom.Pt(at, ceiling-least), geom.Pt(at, ceiling), -dimRow, "headroom "+st.InchesMM(least))
	d.Dim(drawing.Horizontal, geom.Pt(at, floor), geom.Pt(f.HeadX(), floor), dimRow, "opening "+st.InchesMM(opening))
}

// testFit draws the stringer standing in its place.
func testFit(d *drawing.Drawing, s *layout.Stairway, f *layout.Flight, st measure.Style) {
	e := elevation{d: d, s: s, f: f, st: st}
	e.floors()
	g := &f.Stringers[0]
	e.stringer(g)
	_, first := g.Tip(1)
	_, last := g.Tip(g.Notches)
	d.Dim(drawing.Vertical, geom.Pt(0, first-g.FirstRiserCut), geom.Pt(0, first), -dimRow, st.InchesMM(g.FirstRiserCut))
	rise := f.EndLevel - f.StartLevel
	right := e.header() + 2*floorShown*s.TotalRise.MM()
	d.Line(drawing.Dimension, geom.Pt(f.HeadX(), last), geom.Pt(right, last))
	d.Dim(drawing.Vertical, geom.Pt(right, last), geom.Pt(right, rise), dimRow, st.InchesMM(rise-last))
}

// kerfSection cuts the board along a line that is being sawn: the round blade
// has reached the tick on the upper face and is behind on the lower one.
func kerfSection(d *drawing.Drawing, g *layout.Group, st measure.Style) {
	r, c, t, stop := g.Saw.Blade/2, g.Saw.Depth, g.Thickness, g.Saw.StopShort
	reach := math.Sqrt(r*r - (r-c)*(r-c)) // of the kerf on the upper face, ahead of the arbor
	arbor := geom.Pt(-reach, r-c)         // the tick is x = 0, the upper face y = 0
	low := -g.Kerf.FarUncut
	left, right := -reach-0.3*r, stop+0.9*t
	d.Add(drawing.Path{Layer: drawing.Thin, Fill: 0.1, Path: geom.Closed(geom.Pt(low, -t), geom.Pt(right, -t), geom.Pt(right, 0), geom.Pt(0, 0))})
	d.Line(drawing.Outline, geom.Pt(left, 0), geom.Pt(right, 0))
	d.Line(drawing.Outline, geom.Pt(left, -t), geom.Pt(right, -t))
	start := math.Pi + 0.35
	d.Add(drawing.Path{Layer: drawing.Cut, Path: geom.Path{Edges: []geom.Edge{geom.Arc(arbor, r, start, 2*math.Pi-0.35-start+0.45)}}})
	d.Line(drawing.Mark, geom.Pt(0, -0.12*t), geom.Pt(0, 0.12*t))
	d.Line(drawing.Hidden, geom.Pt(stop, -1.15*t), geom.Pt(stop, 0.5*t))
	d.Text(geom.Pt(stop, 0.6*t), drawing.Small, drawing.Left, "root")
	d.Text(geom.Pt(arbor.X, 0.45*t), drawing.Small, drawing.Middle, "blade")
	d.Text(geom.Pt(left, 0.1*t), drawing.Small, drawing.Left, "near face")
	d.Text(geom.Pt(left, -t-0.35*t), drawing.Small, drawing.Left, "far face")
	d.Dim(drawing.Horizontal, geom.Pt(low, -t), geom.Pt(stop, -t), -dimRow, "by hand "+st.InchesMM(stop+g.Kerf.FarUncut))
}

// landingLevel draws a landing over the lower floor from the side.
func landingLevel(d *drawing.Drawing, s *layout.Stairway, l *layout.Landing, st measure.Style) {
	long := math.Max(l.Up, l.Level)
	finish, under := l.FramingLevel, underside(l)
	d.Line(drawing.Outline, geom.Pt(-0.8*long, 0), geom.Pt(1.1*long, 0))
	d.Polygon(drawing.Cut, geom.Pt(0, finish), geom.Pt(l.Up, finish), geom.Pt(l.Up, l.Level), geom.Pt(0, l.Level))
	d.Polygon(drawing.Thin, geom.Pt(0, under), geom.Pt(l.Up, under), geom.Pt(l.Up, finish), geom.Pt(0, finish))
	rise, run := s.Level(l.Risers)-s.Level(l.Risers-1), 0.0
	for _, f := range s.Flights() {
		if f.Head == layout.Turn(l) {
			run = f.UnitRun.MM()
		}
	}
	at := geom.Pt(0, l.Level)
	for range 2 {
		if run == 0 || at.Y-rise < 0 {
			break
		}
		d.Polyline(drawing.Outline, at, geom.Pt(at.X, at.Y-rise), geom.Pt(at.X-run, at.Y-rise))
		at = geom.Pt(at.X-run, at.Y-rise)
	}
	d.Dim(drawing.Vertical, geom.Pt(l.Up, 0), geom.Pt(l.Up, l.Level), dimRow, "finished "+st.FormatMM(l.Level))
	if l.FramingLevel < l.Level {
		d.Dim(drawing.Vertical, geom.Pt(l.Up, 0), geom.Pt(l.Up, l.FramingLevel), 2*dimRow, "sheathing "+st.FormatMM(l.FramingLevel))
	}
}
