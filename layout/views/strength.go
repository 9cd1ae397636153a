package views

import (
	"fmt"
	"math"

	"stepoff/layout"
	"stepoff/layout/check"
	"stepoff/layout/drawing"
	"stepoff/layout/geom"
	"stepoff/layout/stringer"
	"stepoff/spec/measure"
)

// Sizes of the picture of a loaded stringer, as parts of its level length: it is
// drawn to scale and printed small, so that letters and arrows have to follow it.
const (
	loadAbove  = 0.06  // the load's lower edge over the highest tip
	loadHeight = 0.035 // of the load
	loadArrows = 24    // arrows of the load
	postHead   = 0.02  // half the width of the wedge a support is drawn as
	momentLow  = 0.38  // the moment's base line under the floor
	momentTall = 0.15  // its greatest figure
	momentBits = 24    // straight bits of a span's curve
	wordsBelow = 0.05  // a line of words under what it belongs to
)

// Strength draws the stringer that is worst off under its load, from the side:
// its net section, what holds it up and with how much, and the moment along it.
// nil where none spans.
func Strength(f *layout.Flight, w *layout.Strength, st measure.Style) *drawing.Drawing {
	c := w.Worst()
	if c == nil {
		return nil
	}
	d := &drawing.Drawing{Name: f.Name + "-strength", Title: "Stringer " + check.Places([]int{c.Position}, len(w.Stringers)) + " under its load, and the moment along it"}
	p := loaded{d: d, f: f, w: w, c: c, g: c.Group, st: st, long: c.Group.HeadX()}
	p.stringer()
	p.load()
	p.supports()
	p.moment()
	return d
}

type loaded struct {
	d    *drawing.Drawing
	f    *layout.Flight
	w    *layout.Strength
	c    *layout.Carrier
	g    *layout.Group
	st   measure.Style
	long float64
}

// floor is where the foot stands, in elevation.
func (p loaded) floor() float64 { return -p.g.Below }

func (p loaded) stringer() {
	g := p.g
	var net []geom.Point
	for _, q := range below(g.Outline, g.Width-g.Throat) {
		net = append(net, g.Elevation(q))
	}
	p.d.Add(drawing.Path{Layer: drawing.Thin, Path: geom.Closed(net...), Fill: 0.12})
	var pts []geom.Point
	for _, q := range g.Outline {
		pts = append(pts, g.Elevation(q))
	}
	p.d.Polygon(drawing.Outline, pts...)
	if sb := p.c.Stiffener; sb != nil {
		for _, below := range [...]float64{sb.Top, sb.Top + sb.Depth} { // the roots
			up := (g.Throat - below) / math.Cos(g.Pitch)
			from := math.Max(0, g.SeatCut-up/math.Tan(g.Pitch)) // where it comes up from the floor
			p.d.Line(drawing.Hidden, geom.Pt(from, p.lowerEdge(from)+up), geom.Pt(p.long, p.lowerEdge(p.long)+up))
		}
	}
}

// below is what of an outline in the blank frame lies deeper than the roots: all
// of a stringer that counts.
func below(outline []geom.Point, depth float64) []geom.Point {
	var in []geom.Point
	for i, p := range outline {
		q := outline[(i+1)%len(outline)]
		if p.Y >= depth {
			in = append(in, p)
		}
		if (p.Y >= depth) != (q.Y >= depth) {
			k := (depth - p.Y) / (q.Y - p.Y)
			in = append(in, geom.Pt(p.X+k*(q.X-p.X), depth))
		}
	}
	return in
}

// load draws the uniform load over the level projection.
func (p loaded) load() {
	g := p.g
	_, top := g.Tip(g.Notches)
	low := top + loadAbove*p.long
	high := low + loadHeight*p.long
	p.d.Polygon(drawing.Thin, geom.Pt(0, low), geom.Pt(p.long, low), geom.Pt(p.long, high), geom.Pt(0, high))
	for i := range loadArrows + 1 {
		x := p.long * float64(i) / loadArrows
		p.d.Line(drawing.Thin, geom.Pt(x, high), geom.Pt(x, low))
		tick := loadHeight * p.long / 5
		p.d.Polyline(drawing.Thin, geom.Pt(x-tick/2, low+tick), geom.Pt(x, low), geom.Pt(x+tick/2, low+tick))
	}
	p.d.Text(geom.Pt(p.long/2, high+wordsBelow*p.long*0.7), drawing.Small, drawing.Middle,
		fmt.Sprintf("%s live and %s dead on %s of width: %s", p.st.Pressure(p.w.Loads.Live), p.st.Pressure(p.w.Loads.Dead),
			p.st.InchesMM(p.c.Tributary), p.st.LineLoad(p.c.Live+p.c.Dead)))
}

// supports draws what holds the stringer up, the spans between, and with how much
// each stands.
func (p loaded) supports() {
	g, floor, half := p.g, p.floor(), postHead*p.long
	at := p.c.Beam.At
	for i, x := range at {
		foot := geom.Pt(x, floor)
		switch {
		case i == 0:
		case i == len(at)-1:
			foot.Y = g.Elevation(g.Cuts[p.headCut()].To).Y
		default: // a post up to the lower edge
			under := p.lowerEdge(x)
			for _, side := range [...]float64{-half / 2, half / 2} {
				p.d.Line(drawing.Outline, geom.Pt(x+side, floor), geom.Pt(x+side, under+side*math.Tan(g.Pitch)))
			}
		}
		tip := foot
		p.d.Polygon(drawing.Outline, tip, geom.Pt(tip.X-half, tip.Y-1.6*half), geom.Pt(tip.X+half, tip.Y-1.6*half))
		p.d.Text(geom.Pt(tip.X, tip.Y-1.6*half-wordsBelow*p.long), drawing.Small, drawing.Middle, p.st.Force(p.c.Reactions[i]))
		if i > 0 {
			p.d.Dim(drawing.Horizontal, geom.Pt(at[i-1], floor-0.16*p.long), geom.Pt(x, floor-0.16*p.long), 0, p.st.InchesMM(x-at[i-1]))
		}
	}
	p.d.Line(drawing.Thin, geom.Pt(-0.06*p.long, floor), geom.Pt(p.long*1.06, floor))
}

// headCut is which of the cuts is the head's.
func (p loaded) headCut() int {
	for i, c := range p.g.Cuts {
		if c.Kind == stringer.HeadCut {
			return i
		}
	}
	return 0
}

// lowerEdge is the board's lower edge at a level place.
func (p loaded) lowerEdge(x float64) float64 {
	on := p.g.Elevation(geom.Pt(0, p.g.Width))
	return on.Y + (x-on.X)*math.Tan(p.g.Pitch)
}

// moment draws the moment as it runs through over the supports.
func (p loaded) moment() {
	base := p.floor() - momentLow*p.long
	forces := p.c.Beam.Through(p.c.Live + p.c.Dead)
	scale := momentTall * p.long / p.c.Moment
	at := p.c.Beam.At
	pts := []geom.Point{geom.Pt(0, base)}
	most, low := 0.0, base
	for i := range len(at) - 1 {
		for k := range momentBits + 1 {
			x := at[i] + (at[i+1]-at[i])*float64(k)/momentBits
			m := forces.MomentAt(x)
			pts = append(pts, geom.Pt(x, base-m*scale))
			most, low = math.Max(most, math.Abs(m)), math.Min(low, base-m*scale)
		}
	}
	p.d.Polygon(drawing.Thin, append(pts, geom.Pt(p.long, base))...)
	p.d.Line(drawing.Outline, geom.Pt(0, base), geom.Pt(p.long, base))
	words := "moment up to " + p.st.Moment(most)
	if len(at) > 2 {
		words += " running through; as single spans up to " + p.st.Moment(p.c.Moment)
	}
	p.d.Text(geom.Pt(p.long/2, low-wordsBelow*p.long), drawing.Small, drawing.Middle, words)
}
