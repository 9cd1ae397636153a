package views_test

import (
	"fmt"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"stepoff/layout/drawing"
	"stepoff/layout/geom"
	"stepoff/layout/lesson"
	"stepoff/layout/views"
	"stepoff/spec/measure"
)

// The leader of every part ends on that part: in the board, on the line, inside
// the stringer's outline.
func TestPartsAreWhatTheyAreCalled(t *testing.T) {
	kinds, err := lesson.Kinds()
	if err != nil {
		t.Fatal(err)
	}
	s := kinds[0].Stairway
	f := s.Flights()[0]
	g := &f.Stringers[0]
	_, parts := views.Parts(s, f, lesson.PartNames)
	if len(parts) != len(lesson.PartNames) {
		t.Fatalf("%d of %d parts are drawn", len(parts), len(lesson.PartNames))
	}
	tread, board, nosing := s.Job.Tread.Thickness.MM(), s.Job.Riser.Thickness.MM(), s.Job.Tread.Nosing.MM()
	rise, run := f.UnitRise, f.UnitRun.MM()
	front := board + nosing
	inside := func(p geom.Point) bool {
		odd := false
		var ps []geom.Point
		for _, q := range g.Outline {
			ps = append(ps, g.Elevation(q))
		}
		for i, a := range ps {
			b := ps[(i+1)%len(ps)]
			if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(p.Y-a.Y)/(b.Y-a.Y)*(b.X-a.X) {
				odd = !odd
			}
		}
		return odd
	}
	// below is how far a place lies square under the line through the tips.
	below := func(p geom.Point) float64 {
		sin, cos := math.Sincos(g.Pitch)
		_, tip := g.Tip(1)
		return p.X*sin - (p.Y-tip)*cos
	}
	step := func(p geom.Point) (k float64, into float64) { // the step whose tread is next above
		k = math.Ceil((p.Y - 1e-9) / rise)
		return k, k*rise - p.Y
	}
	is := map[string]func(p geom.Point) bool{
		"tread": func(p geom.Point) bool {
			k, into := step(p)
			return into < tread && p.X > (k-1)*run-front && p.X < k*run-board
		},
		"nosing": func(p geom.Point) bool {
			k, into := step(p)
			return into < tread && p.X >= (k-1)*run-front && p.X <= (k-1)*run-board
		},
		"riser board": func(p geom.Point) bool {
			k, into := step(p)
			return into > tread && p.X > (k-1)*run-board && p.X < (k-1)*run
		},
		"handrail": func(p geom.Point) bool { // between 34 and 38 in over the nosing line, plumb
			over := p.Y - (rise + (p.X+front)*rise/run)
			return over > 34*25.4 && over < 38*25.4
		},
		"root": func(p geom.Point) bool {
			for _, r := range g.Roots {
				if r2.Norm(r2.Sub(g.Elevation(r), p)) < 10 {
					return true
				}
			}
			return false
		},
		"throat":   func(p geom.Point) bool { return inside(p) && below(p) > g.NotchDepth && below(p) < g.Width },
		"stringer": inside,
		"plumb cut at the head": func(p geom.Point) bool {
			_, top := g.Tip(g.Notches)
			return math.Abs(p.X-g.HeadX()) < 1e-6 && p.Y < top && p.Y > top-g.HeadCut
		},
		"header": func(p geom.Point) bool {
			top, deep := s.Job.Levels.HeaderTop.MM(), s.Job.Levels.HeaderDepth.MM()
			down := s.TotalRise.MM() - p.Y
			return p.X > g.HeadX() && down > top && down < deep
		},
		"seat":                 func(p geom.Point) bool { return math.Abs(p.Y) < 1e-6 && p.X > 0 && p.X < g.SeatCut },
		"kicker":               func(p geom.Point) bool { return p.X > 0 && p.X < g.Kicker.Depth && p.Y > 0 && p.Y < g.Kicker.Height },
		"lower finished floor": func(p geom.Point) bool { return math.Abs(p.Y) < 1e-6 && p.X < -front },
		"upper finished floor": func(p geom.Point) bool { return math.Abs(p.Y-s.TotalRise.MM()) < 1e-6 && p.X > g.HeadX()-front },
	}
	for _, p := range parts {
		if check := is[p.Name]; check == nil || !check(p.At) {
			t.Errorf("the leader of %q ends at %.0f, %.0f, which is none", p.Name, p.At.X, p.At.Y)
		}
	}
}

// A model is the stringer made smaller in every measure: half or a quarter of each
// corner's place, and marked all along.
func TestModels(t *testing.T) {
	s := example(t, "../../examples/loft.yaml")
	g := &s.Flights()[0].Stringers[0]
	st := measure.Style{Units: measure.Imperial}
	full := views.Template(g, st)
	for _, one := range []int{2, 4} {
		d, err := views.Model(g, one, st)
		if err != nil {
			t.Fatal(err)
		}
		cuts := func(d *drawing.Drawing) (ps []geom.Point) {
			for _, it := range d.Items {
				if p, ok := it.(drawing.Path); ok && p.Layer == drawing.Cut {
					ps = append(ps, p.Edges[0].From, p.Edges[0].To)
				}
			}
			return ps
		}
		large, small := cuts(full), cuts(d)
		if len(large) != len(small) || len(large) == 0 {
			t.Fatalf("1:%d has %d ends of cuts, the stringer %d", one, len(small), len(large))
		}
		for i := range large {
			if off := r2.Norm(r2.Sub(r2.Scale(1/float64(one), large[i]), small[i])); off > 1e-6 {
				t.Errorf("1:%d: a cut ends %.6f mm from where it should", one, off)
			}
		}
		warned := 0
		for _, it := range d.Items {
			if text, ok := it.(drawing.Text); ok && text.Text == fmt.Sprintf("1:%d NOT FOR LUMBER", one) {
				warned++
			}
		}
		if warned < 3 {
			t.Errorf("1:%d says %d times that it is not for lumber", one, warned)
		}
	}
}
