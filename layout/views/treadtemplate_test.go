package views_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"pgregory.net/rapid"

	"stepoff/layout/drawing"
	"stepoff/layout/geom"
	"stepoff/layout/views"
	"stepoff/spec/measure"
)

// taperedJob draws a stairway with a turn of winders or a curve.
func taperedJob(t *rapid.T) string {
	hand := rapid.SampledFrom([]string{"left", "right"}).Draw(t, "hand")
	members := fmt.Sprintf("  - flight: {risers: 5, run: 10\"}\n  - winders: {turn: %s, treads: %d, angle: %d, lines: %s, setback: %d\"}\n  - flight: {risers: 6, run: 10\"}",
		hand, rapid.IntRange(2, 4).Draw(t, "treads"), rapid.IntRange(45, 90).Draw(t, "angle"),
		rapid.SampledFrom([]string{"radial", "even"}).Draw(t, "lines"), rapid.IntRange(4, 20).Draw(t, "setback"))
	if rapid.Bool().Draw(t, "curve") {
		members = fmt.Sprintf("  - curve: {turn: %s, risers: 14, inside_radius: %d\", angle: %d, plate: 2x4}",
			hand, rapid.IntRange(40, 200).Draw(t, "radius"), rapid.IntRange(60, 180).Draw(t, "angle"))
	}
	return fmt.Sprintf(`
units: imperial
code: none
levels: {total_rise: 104"}
width: 36"
sides: [open, wall]
stairway:
%s
tread: {thickness: 1", nosing: 1", overhang: 3/4"}
riser: {thickness: 3/4", joint: %s}
stringer: {stock: 2x12}
`, members, rapid.SampledFrom([]string{"behind", "on"}).Draw(t, "joint"))
}

// A tapered tread's template is its board as cut: as large as in plan, its nosing
// along the front edge of the rectangle it is cut from, its riser line an overhang
// behind that; and every depth that is written is as long as it says.
func TestTreadTemplate(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := compute(t, taperedJob(t))
		st := measure.Style{Units: s.Job.Units}
		front := s.Job.Riser.Thickness.MM() + s.Job.Tread.Nosing.MM()
		for _, tread := range views.Treads(s) {
			d := views.TreadTemplate(tread, "a tread", st)
			if err := d.Check(); err != nil {
				t.Fatal(err)
			}
			b := tread.Outline().Box()
			if math.Abs(b.Min.X)+math.Abs(b.Min.Y) > 1e-6 || math.Abs(b.Max.X-tread.Board.Along) > 1e-6 || math.Abs(b.Max.Y-tread.Board.Deep) > 1e-6 {
				t.Errorf("tread %d: %v, of a board %g by %g", tread.Number, b, tread.Board.Along, tread.Board.Deep)
			}
			if a, want := tread.Outline().Area(), tread.Board.Outline.Area(); math.Abs(a-want) > 1e-6*want {
				t.Errorf("tread %d: %g mm2, in plan %g", tread.Number, a, want)
			}
			level := func(y float64) bool { // is there a line across at this height
				for _, it := range d.Items {
					p, ok := it.(drawing.Path)
					if !ok {
						continue
					}
					for _, e := range p.Edges {
						if !e.IsArc() && math.Abs(e.From.Y-y) < 1e-6 && math.Abs(e.To.Y-y) < 1e-6 && e.Length() > 300 {
							return true
						}
					}
				}
				return false
			}
			if !level(0) || !level(front) {
				t.Errorf("tread %d: no nosing at 0 or no riser line at %g", tread.Number, front)
			}
			for _, it := range d.Items {
				if dim, ok := it.(drawing.Dim); ok {
					_, figure, _ := strings.Cut(dim.Text, " ")
					if want := st.InchesMM(r2.Norm(r2.Sub(dim.B, dim.A))); figure != want {
						t.Errorf("tread %d: %q over %s", tread.Number, dim.Text, want)
					}
				}
			}
			if alike, over := tread.Alike(tread); !alike || over {
				t.Errorf("tread %d is not like itself", tread.Number)
			}
		}
	})
}

// Marks on a plate's template stand at the studs' own angles from the end where the
// plate begins, right across it, whichever hand the curve turns to: laid on the plate
// in plan, they fall on the riser lines.
func TestPlateTemplate(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := compute(t, taperedJob(t))
		for _, c := range s.Curves() {
			for i := range c.Framing.Plates {
				p := &c.Framing.Plates[i]
				g := p.Layers[0][0]
				d := views.PlateTemplate(c, p)
				place := lay(g.Outline, g.In(c.Laid), g.Centre, c.Laid.Centre)
				marked := map[int]bool{}
				for _, it := range d.Items {
					path, ok := it.(drawing.Path)
					if !ok || path.Layer != drawing.Mark || len(path.Edges) != 1 {
						continue
					}
					for k, r := range c.Laid.Risers {
						if e := path.Edges[0]; geom.Distance(place(e.From), r.In, r.Out) < 1e-6 && geom.Distance(place(e.To), r.In, r.Out) < 1e-6 {
							marked[k+1] = true
						}
					}
				}
				for _, stud := range c.Framing.Studs {
					if stud.Plate == p.Name && stud.Riser > 0 && stud.Angle < g.To-1e-6 && !marked[stud.Riser] {
						t.Errorf("%s plate: no mark falls on riser line %d", p.Name, stud.Riser)
					}
				}
			}
		}
	})
}

// lay returns how a template is laid on its place in plan: its centre on the centre,
// the middle of its outer arc on that of the piece there.
func lay(template, there geom.Path, from, to geom.Point) func(geom.Point) geom.Point {
	angle := func(p geom.Path, centre geom.Point) float64 {
		var outer geom.Edge
		for _, e := range p.Edges {
			if e.Radius > outer.Radius {
				outer = e
			}
		}
		v := r2.Sub(outer.At(0.5), centre)
		return math.Atan2(v.Y, v.X)
	}
	sin, cos := math.Sincos(angle(there, to) - angle(template, from))
	return func(p geom.Point) geom.Point {
		v := r2.Sub(p, from)
		return r2.Add(to, geom.Pt(v.X*cos-v.Y*sin, v.X*sin+v.Y*cos))
	}
}

// Every part of a box that is listed has its number in the drawing, and its outline.
func TestBoxPlan(t *testing.T) {
	s := example(t, "../../examples/winder-l.yaml")
	w := s.Winders()[0]
	for k := range w.Boxes {
		b := &w.Boxes[k]
		numbers, paths := map[string]bool{}, 0
		for _, it := range views.BoxPlan(w.Name, k+1, b, measure.Style{}).Items {
			switch it := it.(type) {
			case drawing.Text:
				numbers[it.Text] = true
			case drawing.Path:
				paths++
			}
		}
		if paths != len(b.Parts) || len(numbers) != len(b.Parts) {
			t.Errorf("box %d: %d outlines, numbers %v, for %d parts", k+1, paths, numbers, len(b.Parts))
		}
	}
}

// The marks on a wall are seen by who faces it: on the outside of a turn to the left
// the stair climbs to the left.
func TestWallMarksFaceTheWall(t *testing.T) {
	s := example(t, "../../examples/winder-l.yaml") // turns to the left
	w := s.Winders()[0]
	for _, c := range []struct {
		inside bool
		climbs float64
	}{{false, -1}, {true, 1}} {
		d := views.WallMarks(w.Name, w.Hand(), c.inside, w.WallMarks, w.UnitRise, measure.Style{})
		var first, last float64
		for _, it := range d.Items {
			if p, ok := it.(drawing.Path); ok && p.Layer == drawing.Outline && p.Edges[0].From.X == p.Edges[0].To.X { // plumb
				if first == 0 {
					first = p.Edges[0].From.X
				}
				last = p.Edges[0].From.X
			}
		}
		if (last-first)*c.climbs <= 0 {
			t.Errorf("inside %v: climbs from %g to %g", c.inside, first, last)
		}
	}
}
