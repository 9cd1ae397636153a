package views

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"stepoff/layout"
	"stepoff/layout/drawing"
	"stepoff/layout/geom"
	"stepoff/layout/turn"
	"stepoff/spec/measure"
)

// PlateTemplate draws a whole segment of a curved plate at full size: two true arcs
// and its joints, the middle, where halves end and the joints of the next layer
// stand, and the marks of the riser lines and studs from the first riser line on.
// Laid on the plate again from the last riser line marked, it marks the rest.
func PlateTemplate(c *layout.Curve, p *turn.Plate) *drawing.Drawing {
	hand, g := c.Hand(), p.Layers[0][0]
	d := &drawing.Drawing{Name: c.Name + "-" + p.Name + "-plate", Title: "Segment of the " + p.Name + " plate, full size"}
	d.Add(drawing.Path{Layer: drawing.Lumber, Path: geom.Rect(geom.Box{Max: g.Blank})})
	w := plateTemplate{d: d, g: g, hand: hand}
	if p.Segments > 1 && len(p.Layers) > 1 {
		if s, ok := g.Mark(hand, (g.From+g.To)/2); ok {
			d.Line(drawing.Mark, s.In, s.Out)
			w.beside(s, true, "half; joint of the next layer")
		}
	}
	for _, s := range c.Framing.Studs {
		if on := s.Angle < g.To-sameTread || s.Before && s.Angle < g.To+sameTread; on && s.Plate == p.Name {
			w.stud(s)
		}
	}
	w.ends()
	d.Add(drawing.Path{Layer: drawing.Cut, Path: g.Outline})
	return d
}

type plateTemplate struct {
	d    *drawing.Drawing
	g    turn.PlateSegment
	hand turn.Hand
}

// stud draws a stud where it stands, its mark right across the plate.
func (w *plateTemplate) stud(s turn.Stud) {
	mark, ok := w.g.Mark(w.hand, math.Min(s.Angle, w.g.To))
	if !ok {
		return
	}
	across := r2.Unit(r2.Sub(mark.Out, mark.In))
	ahead := r2.Scale(float64(w.hand), geom.Pt(-across.Y, across.X)) // up the stair: to the left of the way outward in a turn to the left
	if s.Before {
		ahead = r2.Scale(-1, ahead)
	}
	at := func(radius, on float64) geom.Point {
		return r2.Add(mark.In, r2.Add(r2.Scale(radius-w.g.Inner, across), r2.Scale(on, ahead)))
	}
	w.d.Polyline(drawing.Mark, at(s.Inner, 0), at(s.Inner, s.Thickness), at(s.Outer, s.Thickness), at(s.Outer, 0))
	w.d.Line(drawing.Mark, mark.In, mark.Out)
	words := "stud"
	if s.Riser > 0 {
		words = fmt.Sprintf("riser line %d", s.Riser)
	}
	w.beside(mark, s.Before != (w.hand == turn.Right), words)
}

// beside writes along a mark, on the side of what stands at it or on the other.
func (w *plateTemplate) beside(s turn.Segment, left bool, text string) {
	along := r2.Sub(s.Out, s.In)
	angle := readable(along)
	sin, cos := math.Sincos(angle)
	off := labelGap
	if !left {
		off = -labelGap - drawing.Small
	}
	at := r2.Add(r2.Scale(0.5, r2.Add(s.In, s.Out)), r2.Scale(off, geom.Pt(-sin, cos)))
	w.d.Add(drawing.Text{Layer: drawing.Note, At: at, Height: drawing.Small, Angle: angle, Align: drawing.Middle, Text: text})
}

// ends names the joints.
func (w *plateTemplate) ends() {
	lo, _ := w.g.Mark(w.hand, w.g.From)
	hi, _ := w.g.Mark(w.hand, w.g.To)
	w.beside(lo, w.hand == turn.Right, "lower end: riser line 1, then on")
	w.beside(hi, w.hand != turn.Right, "upper end")
}

// CurveFraming draws the framing of a curve from above: plates with the joints of
// their layers, studs, bearers and ledgers, riser lines with their numbers.
func CurveFraming(c *layout.Curve) *drawing.Drawing {
	f := c.Framing
	d := &drawing.Drawing{Name: c.Name + "-framing", Title: "Framing of " + c.Name + " from above: plates with studs, a bearer under each tread's front and a ledger under its back"}
	for _, p := range f.Plates {
		d.Add(drawing.Path{Layer: drawing.Outline, Path: c.Ring(p.Inner, p.Outer, 0, p.Angle)})
		for k := range p.Layers {
			for _, at := range p.Joints(k) {
				layer := drawing.Outline
				if k < len(p.Layers)-1 {
					layer = drawing.Hidden // under the layer above
				}
				out := outward(c.Laid, at)
				d.Line(layer, r2.Add(c.Laid.Centre, r2.Scale(p.Inner, out)), r2.Add(c.Laid.Centre, r2.Scale(p.Outer, out)))
			}
		}
	}
	for _, b := range f.Bearers {
		d.Add(drawing.Path{Layer: drawing.Thin, Path: b.In(c.Laid)})
	}
	for _, s := range f.Studs {
		d.Add(drawing.Path{Layer: drawing.Thin, Path: s.In(c.Laid), Fill: studGrey})
	}
	outer := f.Plates[len(f.Plates)-1].Outer
	for k := range c.Laid.Risers {
		r := c.Laid.Risers[k]
		out := r2.Unit(r2.Sub(r.Out, r.In))
		beyond(d, r2.Add(c.Laid.Centre, r2.Scale(outer+numberBeyond, out)), out, drawing.Small, fmt.Sprint(k+1))
	}
	return d
}

// outward is the way from a curve's centre to the outside, so many degrees past its
// first riser line.
func outward(l *turn.Laid, degrees float64) geom.Point {
	out := r2.Unit(r2.Sub(l.Risers[0].Out, l.Centre))
	sin, cos := math.Sincos(float64(l.Hand()) * degrees * math.Pi / 180)
	return geom.Pt(out.X*cos-out.Y*sin, out.X*sin+out.Y*cos)
}

// studGrey is how dark a stud is from above, and numberBeyond how far outside the
// plates a riser line's number stands, in millimetres of the house.
const (
	studGrey     = 0.3
	numberBeyond = 90.0
)

// CurveString draws a string of a curve unrolled, on its blank: x along the blank's
// upper edge.
func CurveString(member string, s *turn.CurveString, st measure.Style) *drawing.Drawing {
	d := &drawing.Drawing{Name: member + "-" + s.Name + "-string",
		Title: fmt.Sprintf("The %s string of %s, unrolled on its blank: laid out flat, before it is bent", s.Name, member)}
	pitch := s.Pitch * math.Pi / 180
	lie := lying{angle: -pitch}
	lie.shift = r2.Scale(-1, s.Outline.Turned(-pitch).Box().Min)
	outline := lie.path(s.Outline)
	b := outline.Box()
	d.Add(drawing.Path{Layer: drawing.Lumber, Path: geom.Rect(b)})
	d.Add(drawing.Path{Layer: drawing.Outline, Path: outline})
	first, second := lie.at(s.Tips[0]), lie.at(s.Tips[min(1, len(s.Tips)-1)])
	if len(s.Tips) > 1 {
		d.Dim(drawing.Aligned, first, second, dimRow, "step "+st.InchesMM(second.X-first.X))
	}
	d.Dim(drawing.Horizontal, geom.Pt(0, 0), geom.Pt(first.X, 0), -dimRow, "first tip "+st.InchesMM(first.X))
	d.Dim(drawing.Horizontal, geom.Pt(0, 0), geom.Pt(b.Max.X, 0), -2*dimRow, "least blank "+st.FormatMM(b.Max.X))
	d.Dim(drawing.Vertical, geom.Pt(b.Max.X, 0), b.Max, dimRow, "wide "+st.InchesMM(b.Max.Y))
	return d
}
