package turn_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"pgregory.net/rapid"

	"stepoff/layout/geom"
	"stepoff/layout/turn"
)

// A curve of 125 degrees at an inside radius of 5 ft, 3 ft wide, worked by hand.
// The outside plate runs from 92 1/2 to 96 in: a piece on a sheet 96 long may take
// 2 asin(96/192) = 60 degrees, and as much by the grain; 125 degrees are 3 pieces
// of 41 2/3. The inside plate, 60 to 63 1/2: the sheet would give 2 asin(96/127) =
// 98.2, the grain 60. Half a piece is 20.8333 degrees: sine 0.355651, cosine 0.934619.
func TestPlatesByHand(t *testing.T) {
	s := curveSteps(125, 16, 60, 36, 120, 1)
	f := framed(t, s, walls())
	for k, want := range []struct {
		name                 string
		inner, outer, face   float64
		most                 float64
		blankLong, blankHigh float64 // of a whole segment: 2 b sin(f/2), b - a cos(f/2)
	}{
		{turn.CurveInside, 60, 63.5, 60, 60, 45.1676, 7.4229},
		{turn.CurveOutside, 92.5, 96, 96, 60, 68.2849, 9.5477},
	} {
		p := f.Plates[k]
		within(t, want.name+" inner radius", p.Inner/inch, want.inner, 1e-9)
		within(t, want.name+" outer radius", p.Outer/inch, want.outer, 1e-9)
		within(t, want.name+" face", p.Face/inch, want.face, 1e-9)
		within(t, "most", walls().Plates.MostAngle(p.Inner), want.most, 1e-9)
		if p.Name != want.name || p.Segments != 3 || len(p.Layers) != 2 || len(p.Layers[0]) != 3 || len(p.Layers[1]) != 4 {
			t.Errorf("%s: %d segments, layers %v", p.Name, p.Segments, p.Layers)
		}
		within(t, "blank's length", p.Layers[0][0].Blank.X/inch, want.blankLong, 1e-3)
		within(t, "blank's width", p.Layers[0][0].Blank.Y/inch, want.blankHigh, 1e-3)
	}
	long := walls().Plates
	long.RunOff = 0
	within(t, "by the sheet alone", long.MostAngle(60*inch), 98.2091, 1e-3)
	// A strip 8 in wide: 63.5 - 60 cos(f/2) = 8, f/2 = acos(55.5/60) = 22.332.
	long.SheetWidth = 8 * inch
	within(t, "by the sheet's width", long.MostAngle(60*inch), 44.663, 1e-3)
	long.SheetWidth = 3 * inch
	within(t, "on a sheet narrower than the plate", long.MostAngle(60*inch), 0, 0)
}

// Every layer fills the plate; every piece fits its blank and the sheet, keeps to
// the grain and has its corners on the true radii; joints of neighbouring layers
// keep half a segment apart; one segment fewer would not do.
func TestPlates(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, w := anyCurve(t), walls()
		w.Plates.Layers = rapid.IntRange(1, 4).Draw(t, "layers")
		w.Plates.SheetLength = rapid.Float64Range(24, 120).Draw(t, "sheet length") * inch
		w.Plates.SheetWidth = rapid.Float64Range(6, 60).Draw(t, "sheet width") * inch
		w.Plates.RunOff = rapid.SampledFrom([]float64{0, 15, 30}).Draw(t, "run-off")
		w.Plates.Thickness = 1.5 / float64(w.Plates.Layers) * inch
		for _, p := range framed(t, s, w).Plates {
			checkPlate(t, s, w.Plates, p)
		}
	})
}

func checkPlate(t *rapid.T, s turn.CurveSteps, w turn.PlateStock, p turn.Plate) {
	if fewer := p.Segments - 1; fewer > 0 {
		half := s.Angle / float64(fewer) * math.Pi / 360
		fits := half < math.Pi/2 && 2*p.Outer*math.Sin(half) <= w.SheetLength && p.Outer-p.Inner*math.Cos(half) <= w.SheetWidth
		if fits && (w.RunOff == 0 || half*180/math.Pi <= w.RunOff) {
			t.Errorf("%d segments would do, not %d", fewer, p.Segments)
		}
	}
	area := 0.0
	for layer, row := range p.Layers {
		at, sum := 0.0, 0.0
		for _, g := range row {
			if g.From != at {
				t.Errorf("a piece begins at %v, the one before ends at %v", g.From, at)
			}
			within(t, "angle", g.To-g.From, g.Angle, 1e-9)
			at = g.To
			sum += g.Angle
			area += g.Outline.Area()
			checkSegment(t, w, g)
		}
		if at != s.Angle {
			t.Errorf("layer %d ends at %v of %v", layer, at, s.Angle)
		}
		within(t, "sum of the segments' angles", sum, s.Angle, 1e-9)
		if layer > 0 && p.Segments > 1 {
			for _, a := range p.Joints(layer - 1) {
				for _, b := range p.Joints(layer) {
					if math.Abs(a-b) < s.Angle/float64(p.Segments)/2-1e-9 {
						t.Errorf("joints at %v and %v are nearer than half a segment", a, b)
					}
				}
			}
		}
	}
	ring := (p.Outer*p.Outer - p.Inner*p.Inner) / 2 * s.Angle * math.Pi / 180 * float64(w.Layers)
	within(t, "area of all pieces", area/ring, 1, 1e-9)
}

func checkSegment(t *rapid.T, w turn.PlateStock, g turn.PlateSegment) {
	if g.Blank.X > w.SheetLength+1e-6 || g.Blank.Y > w.SheetWidth+1e-6 {
		t.Errorf("a blank %v on a sheet %v by %v", g.Blank, w.SheetLength, w.SheetWidth)
	}
	if w.RunOff > 0 && g.Angle/2 > w.RunOff+1e-9 {
		t.Errorf("the grain runs off by %v", g.Angle/2)
	}
	least, most := geom.Pt(math.Inf(1), math.Inf(1)), geom.Pt(math.Inf(-1), math.Inf(-1))
	for k, e := range g.Outline.Edges {
		if e.From != g.Outline.Edges[(k+3)%4].To {
			t.Errorf("the outline is open at corner %d", k)
		}
		far := r2.Norm(r2.Sub(e.From, g.Centre))
		if near := min(math.Abs(far-g.Inner), math.Abs(far-g.Outer)); near > 1e-9 {
			t.Errorf("corner %d lies %g off its radius", k, near)
		}
		for i := range 201 { // sampled, not by the outline's own box
			p := e.At(float64(i) / 200)
			least = geom.Pt(min(least.X, p.X), min(least.Y, p.Y))
			most = geom.Pt(max(most.X, p.X), max(most.Y, p.Y))
		}
	}
	within(t, "left of the blank", least.X, 0, 1e-6)
	within(t, "bottom of the blank", least.Y, 0, 1e-6)
	within(t, "right of the blank", most.X, g.Blank.X, 1e-6)
	within(t, "top of the blank", most.Y, g.Blank.Y, 1e-6)
}

// A mark lies on the template's joints at its ends and on its middle between
// them, for either hand, and nowhere beyond.
func TestPlateMarks(t *testing.T) {
	g := framed(t, curveSteps(125, 16, 60, 36, 120, 1), walls()).Plates[1].Layers[0][1]
	for _, hand := range []turn.Hand{turn.Left, turn.Right} {
		first, ok := g.Mark(hand, g.From)
		last, ok2 := g.Mark(hand, g.To)
		middle, ok3 := g.Mark(hand, (g.From+g.To)/2)
		if !ok || !ok2 || !ok3 {
			t.Fatal("no mark within the piece")
		}
		joints := []geom.Edge{g.Outline.Edges[3], g.Outline.Edges[1]} // right, left
		if hand == turn.Right {
			joints[0], joints[1] = joints[1], joints[0]
		}
		for k, m := range []turn.Segment{first, last} {
			for _, p := range []geom.Point{m.In, m.Out} {
				if d, _ := joints[k].Nearest(p); d > 1e-9 {
					t.Errorf("hand %d: the mark at joint %d lies %g off it", hand, k, d)
				}
			}
		}
		within(t, "middle", middle.Out.X, g.Blank.X/2, 1e-9)
		within(t, "middle", middle.Out.Y, g.Blank.Y, 1e-9)
		if _, ok := g.Mark(hand, g.To+1e-6); ok {
			t.Error("a mark beyond the piece")
		}
	}
}
