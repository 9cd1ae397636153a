package views

import (
	"fmt"
	"strings"

	"stepoff/layout/asbuilt"
	"stepoff/layout/drawing"
	"stepoff/layout/geom"
	"stepoff/spec/measure"
)

// Inspection draws a flight from the side as it was measured, each step with its
// number, and marks what is wrong: a grey box with a cross, and in words. Pads
// are drawn on their treads.
func Inspection(in *asbuilt.Inspection, st measure.Style) *drawing.Drawing {
	v := inspection{d: &drawing.Drawing{Name: "inspection", Title: "The flight as measured"}, in: in, st: st, box: markDepth * in.MeanRise}
	v.measure()
	v.steps()
	for k, s := range in.Steps {
		v.mark(k, s)
		v.say(k, s)
	}
	v.dimensions()
	return v.d
}

// Parts of the drawing, as shares of the mean riser.
const (
	markDepth   = 0.25 // of a mark's box
	leaderAt    = 0.75 // up the riser: over the number of the step below
	leaderReach = 0.5  // of a leader, past the nosing of the step below
	labelDrop   = 0.8  // of a label under a tread
	floorReach  = 1.0  // of the floors, beyond the flight
	aside       = 0.08 // of words from what they stand beside
)

// shortFlight is a flight of so few risers that no words fit under it.
const shortFlight = 6

// fault is how grey a mark is: seen on a poor printer, and its cross as well.
const fault = 0.25

type inspection struct {
	d   *drawing.Drawing
	in  *asbuilt.Inspection
	st  measure.Style
	box float64 // depth of a mark

	nosings []geom.Point // of every step, the upper floor's last
	faces   []float64    // of every riser
}

// measure places the nosings and the faces of the risers: a riser stands as far
// behind the nosing over it as that overhangs.
func (v *inspection) measure() {
	x, level := 0.0, measure.Length(0)
	for _, s := range v.in.Steps {
		level += s.Riser
		v.nosings = append(v.nosings, geom.Pt(x, level.MM()))
		overhang := 0.0
		if s.Nosing != nil {
			overhang = s.Nosing.MM()
		}
		v.faces = append(v.faces, x+overhang)
		if s.Tread != nil {
			x += s.Tread.MM()
		}
	}
}

// foot is the level a riser stands on.
func (v *inspection) foot(k int) float64 {
	if k == 0 {
		return 0
	}
	return v.nosings[k-1].Y
}

// end is where the tread on top of a riser ends: at the next riser.
func (v *inspection) end(k int) float64 {
	if k+1 < len(v.faces) {
		return v.faces[k+1]
	}
	return v.nosings[k].X + floorReach*v.in.MeanRise
}

func (v *inspection) steps() {
	v.d.Line(drawing.Outline, geom.Pt(-floorReach*v.in.MeanRise, 0), geom.Pt(v.faces[0], 0))
	for k, at := range v.nosings {
		v.d.Line(drawing.Outline, geom.Pt(v.faces[k], v.foot(k)), geom.Pt(v.faces[k], at.Y))
		v.d.Line(drawing.Outline, at, geom.Pt(v.end(k), at.Y))
		if pad := v.in.Steps[k].Pad.MM(); pad > 0 {
			v.d.Add(drawing.Path{Layer: drawing.Thin, Path: geom.Rect(geom.Box{Min: at, Max: geom.Pt(v.end(k), at.Y+pad)}), Fill: fault})
		}
	}
}

// mark draws a grey box with a cross on each part of a step that is at fault:
// behind the riser, under the tread, under the nosing.
func (v *inspection) mark(k int, s asbuilt.Step) {
	at := v.nosings[k]
	boxes := [...]geom.Box{
		asbuilt.Riser:  {Min: geom.Pt(v.faces[k], v.foot(k)), Max: geom.Pt(v.faces[k]+v.box, at.Y)},
		asbuilt.Tread:  {Min: geom.Pt(at.X, at.Y-v.box), Max: geom.Pt(v.end(k), at.Y)},
		asbuilt.Nosing: {Min: geom.Pt(at.X-v.box, at.Y-v.box), Max: at},
	}
	for _, part := range asbuilt.Parts {
		if !s.AtFault(part) {
			continue
		}
		box := boxes[part]
		v.d.Add(drawing.Path{Layer: drawing.Mark, Path: geom.Rect(box), Fill: fault})
		v.d.Line(drawing.Mark, box.Min, box.Max)
		v.d.Line(drawing.Mark, geom.Pt(box.Min.X, box.Max.Y), geom.Pt(box.Max.X, box.Min.Y))
	}
}

// say numbers a step on its tread, and tells in words what is wrong with it and
// what pad it gets: where there is room, under the lower half of the flight and
// over the upper.
func (v *inspection) say(k int, s asbuilt.Step) {
	at, rise := v.nosings[k], v.in.MeanRise
	v.d.Text(geom.Pt((at.X+v.end(k))/2, at.Y+aside*rise+s.Pad.MM()), drawing.Small, drawing.Middle, fmt.Sprint(s.Number))
	words := wrong(s)
	if s.Pad > 0 {
		words = append(words, "pad "+v.st.Inches(s.Pad))
	}
	if len(words) == 0 {
		return
	}
	said := fmt.Sprintf("%d: %s", s.Number, strings.Join(words, ", "))
	if n := len(v.nosings); n > shortFlight && k < n/2 {
		v.d.Text(geom.Pt(v.faces[k]+v.box+2*aside*rise, at.Y-labelDrop*rise), drawing.Small, drawing.Left, said)
		return
	}
	y := v.foot(k) + leaderAt*s.Riser.MM()
	to := at.X - leaderReach*rise
	if k > 0 {
		to = v.nosings[k-1].X - leaderReach*rise
	}
	v.d.Line(drawing.Thin, geom.Pt(v.faces[k], y), geom.Pt(to, y))
	v.d.Text(geom.Pt(to-aside*rise, y-aside*rise), drawing.Small, drawing.Right, said)
}

// wrong says what is wrong with a step: its one fault, or which parts have some,
// since the drawing has no room for more.
func wrong(s asbuilt.Step) (words []string) {
	if len(s.Faults) == 1 {
		return []string{s.Faults[0].Text}
	}
	for _, part := range asbuilt.Parts {
		if s.AtFault(part) {
			words = append(words, part.String())
		}
	}
	return words
}

func (v *inspection) dimensions() {
	last := v.nosings[len(v.nosings)-1]
	right := geom.Pt(v.end(len(v.nosings)-1), last.Y)
	v.d.Dim(drawing.Vertical, geom.Pt(right.X, 0), right, dimRow, "total rise "+v.st.Format(v.in.TotalRise))
	if last.X > 0 {
		total := measure.Length(0)
		for _, t := range v.in.Stair.Treads {
			total += t
		}
		v.d.Dim(drawing.Horizontal, geom.Pt(0, 0), geom.Pt(last.X, 0), -dimRow, "nosing to nosing "+v.st.Format(total))
	}
}
