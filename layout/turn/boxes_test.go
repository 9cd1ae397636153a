package turn_test

import (
	"fmt"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"pgregory.net/rapid"

	"stepoff/layout/geom"
	"stepoff/layout/turn"
)

const inch = 25.4

// boxFraming is in inches: 7 1/2 rise, 1 1/2 treads, 3/4 sheathing, 2x stock at 16.
func boxFraming(level float64) turn.BoxFraming {
	return turn.BoxFraming{
		WinderHeights: turn.WinderHeights{Level: level * inch, Rise: 7.5 * inch, Tread: 1.5 * inch},
		Sheathing:     0.75 * inch, Stock: 1.5 * inch, Spacing: 16 * inch,
	}
}

// The parts of three boxes of three radial winders in 36 in, set back 10.86 in,
// worked by hand. With the pivot at the origin the turn is the square to
// S = 36 + 10.86 less that to a = 10.86, and its riser lines stand at 0, 30, 60
// and 90 degrees. Those at 30 and 60 are 36/cos 30 = 41.569 long and meet the
// walls S tan 30 = 27.055 from the first and last lines; square across 1 1/2 stock
// a bevel of 30 degrees takes 1.5 tan 30 = 0.866, and along a wall the stock
// covers 1.5/cos 30 = 1.732.
func TestBoxPartsByHand(t *testing.T) {
	const a, s, front = 10.86, 46.86, 41.5692 + 0.8660
	const wall, inner = 27.0546, 6.2700 // where the lines meet wall and inside edge
	want := [][]string{
		{
			row("front", 36, 0, 0), row("back", 36, 0, 0),
			row("outer rim", s-1.5, 0, 0), row("outer rim", s-3, 0, 0),
			row("inner rim", a-1.5, 0, 0), row("inner rim", a, 0, 0),
			row("joist", s-3, 0, 0), row("joist", s-3, 0, 0),
		}, {
			row("front", front, 30, -30), row("back", 36, 0, 0),
			row("outer rim", s-wall-1.7321+0.8660, -30, 0), row("outer rim", s-3, 0, 0),
			row("inner rim", a-inner-1.7321, 30, 0), row("inner rim", a, 0, 0),
			// At 32 in from the wall the joist's higher face is at y = S - 31.25 = 15.61, and
			// meets the front's back at x = (y - 1.7321) / tan 30.
			row("joist", s-3, 0, 0), row("joist", (s-31.25-1.7321)/0.57735-1.5, 60, 0),
		}, {
			row("front", front, -30, 30), row("back", 36, 0, 0),
			row("outer rim", wall-1.7321-1.5, 30, 0),
			row("inner rim", inner-1.7321+0.8660-1.5, -30, 0),
			row("joist", (s-15.25)/1.73205-1.7321-1.5, 30, 0), row("joist", (s-31.25)/1.73205-1.7321-1.5, 30, 0),
		},
	}
	for _, hand := range []turn.Hand{turn.Left, turn.Right} {
		w := winders(36, 3, 1.75, false)
		w.Hand = hand
		for k, b := range w.At(turn.Start, a*inch).Boxes(boxFraming(7.5)) {
			var got []string
			for _, p := range b.Parts {
				got = append(got, row(p.Kind.String(), p.Length/inch, p.Ends[0].Bevel, p.Ends[1].Bevel))
			}
			if fmt.Sprint(got) != fmt.Sprint(want[k]) {
				t.Errorf("box %d\n got %q\nwant %q", k+1, got, want[k])
			}
		}
	}
}

func row(part string, long, lower, upper float64) string {
	return fmt.Sprintf("%s %.2f %.3g %.3g", part, long, lower, upper)
}

// Heights as the trade stacks them: on the floor the first box is a tread's
// thickness lower than the others, and flooring to come is added; above another
// flight it is as high as they are and stands on legs. Every box with its
// sheathing and tread ends at its tread's finished level.
func TestBoxHeights(t *testing.T) {
	l := winders(36, 3, 1.75, false).At(turn.Start, 10.86*inch)
	for _, c := range []struct {
		level, flooring, first, leg float64 // in
	}{
		{7.5, 0, 5.25, 0},
		{7.5, 0.75, 6, 0},
		{15, 0, 6.75, 6},          // 15 - 1 1/2 - 3/4 - 6 3/4
		{52.5, 0.75, 6.75, 44.25}, // and 3/4 down to the floor as it is
	} {
		f := boxFraming(c.level)
		f.Flooring = c.flooring * inch
		under := c.leg - c.flooring // level the first box stands at
		for k, b := range l.Boxes(f) {
			high, leg := 6.75, 0.0
			if k == 0 {
				high, leg = c.first, c.leg
			}
			top := under + high + 0.75
			for what, d := range map[string][2]float64{
				"height": {b.Height, high}, "leg": {b.Leg, leg}, "bottom": {b.Bottom, under}, "top": {b.Top, top},
				"tread": {b.Top + 1.5*inch, c.level + 7.5*float64(k)},
			} {
				if math.Abs(d[0]-d[1]*inch) > 1e-9 {
					t.Errorf("level %v, flooring %v, box %d: %s %v in, want %v", c.level, c.flooring, k+1, what, d[0]/inch, d[1])
				}
			}
			under = top
		}
	}
}

// drawWinders is any turn of winders, and a set-back, sometimes none.
func drawWinders(t *rapid.T) (turn.Winders, float64) {
	w := winders(rapid.Float64Range(24, 60).Draw(t, "width"), rapid.IntRange(2, 5).Draw(t, "treads"), 1.75, rapid.Bool().Draw(t, "even"))
	w.Angle = rapid.Float64Range(45, 90).Draw(t, "angle")
	if rapid.Bool().Draw(t, "square") {
		w.Angle = 90
	}
	w.Hand = rapid.SampledFrom([]turn.Hand{turn.Left, turn.Right}).Draw(t, "hand")
	return w, max(0, rapid.Float64Range(-200, 600).Draw(t, "setback"))
}

// A box reaches under its own going and all above it, and under the seat: their
// areas add up. Its parts are whole pieces within it, none over another, and they
// stand along its whole edge where none is left out.
func TestBoxesHoldTheTurn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, setback := drawWinders(t)
		l := w.At(turn.Start, setback)
		f := boxFraming(7.5)
		f.Seat = max(0, rapid.Float64Range(-100, 300).Draw(t, "seat"))
		above := f.Seat * w.Width
		boxes := l.Boxes(f)
		for k := len(boxes) - 1; k >= 0; k-- {
			b := boxes[k]
			above += l.Treads[k].Outline.Area()
			if area := b.Outline.Area(); math.Abs(area-above) > 1e-9*above {
				t.Errorf("box %d covers %g of %g", k+1, area, above)
			}
			holds(t, fmt.Sprintf("box %d", k+1), b, f)
		}
	})
}

func holds(t *rapid.T, name string, b turn.Box, f turn.BoxFraming) {
	outline := corners(b.Outline)
	rims, along := 0, 0.0
	for i, p := range b.Parts {
		ps := corners(p.Outline)
		what := fmt.Sprintf("%s, part %d, %s", name, i+1, p.Kind)
		if !geom.Simple(ps) || p.Outline.Area() <= 0 {
			t.Fatalf("%s is no piece: %v", what, ps)
		}
		middle := geom.Pt(0, 0)
		for _, q := range ps {
			middle = r2.Add(middle, r2.Scale(1/float64(len(ps)), q))
		}
		for k, q := range ps {
			for _, at := range []geom.Point{q, r2.Scale(0.5, r2.Add(q, ps[(k+1)%len(ps)]))} {
				if in := r2.Add(at, r2.Scale(1e-6, r2.Sub(middle, at))); !winds(outline, in) {
					t.Errorf("%s reaches out of the box at %v", what, at)
				}
			}
		}
		for j, other := range b.Parts[:i] {
			if over := overlap(ps, corners(other.Outline)); over > 1e-3 {
				t.Errorf("%s lies %g mm2 over part %d, %s", what, over, j+1, other.Kind)
			}
		}
		// The piece's area is its mean length by its thickness, the mean less than the
		// whole by half of each bevel's take.
		takes := math.Abs(math.Tan(p.Ends[0].Bevel*math.Pi/180)) + math.Abs(math.Tan(p.Ends[1].Bevel*math.Pi/180))
		if want := (p.Length - takes*f.Stock/2) * f.Stock; math.Abs(p.Outline.Area()-want) > 1e-5*want {
			t.Errorf("%s: area %g, from its length and bevels %g", what, p.Outline.Area(), want)
		}
		if p.Kind != turn.BoxJoist {
			rims++
			along += p.Outline.Area()
		}
	}
	if rims == len(outline) { // none left out: the rims fill the band along the edge
		if hole := geom.Area(shrunk(outline, f.Stock)); math.Abs(b.Outline.Area()-hole-along) > 1e-6*b.Outline.Area() {
			t.Errorf("%s: rims cover %g, the band along its edge is %g", name, along, b.Outline.Area()-hole)
		}
	}
}

// corners are the points of a closed path of straight edges.
func corners(p geom.Path) (ps []geom.Point) {
	for _, e := range p.Edges {
		ps = append(ps, e.From)
	}
	return ps
}

// shrunk moves every edge of a counter-clockwise outline inward.
func shrunk(ps []geom.Point, by float64) (out []geom.Point) {
	for k, p := range ps {
		before, after := r2.Unit(r2.Sub(p, ps[(k+len(ps)-1)%len(ps)])), r2.Unit(r2.Sub(ps[(k+1)%len(ps)], p))
		n1, n2 := geom.Pt(-before.Y, before.X), geom.Pt(-after.Y, after.X)
		out = append(out, r2.Add(p, r2.Scale(by/(1+r2.Dot(n1, n2)), r2.Add(n1, n2))))
	}
	return out
}

// winds tells whether the outline winds round the point.
func winds(ps []geom.Point, p geom.Point) bool {
	sum := 0.0
	for k, a := range ps {
		u, v := r2.Sub(a, p), r2.Sub(ps[(k+1)%len(ps)], p)
		sum += math.Atan2(r2.Cross(u, v), r2.Dot(u, v))
	}
	return math.Abs(sum) > math.Pi
}

// overlap is the area two convex counter-clockwise figures share.
func overlap(ps, by []geom.Point) float64 {
	for k, a := range by {
		along := r2.Sub(by[(k+1)%len(by)], a)
		var kept []geom.Point
		for i, p := range ps {
			q := ps[(i+1)%len(ps)]
			dp, dq := r2.Cross(along, r2.Sub(p, a)), r2.Cross(along, r2.Sub(q, a))
			if dp >= 0 {
				kept = append(kept, p)
			}
			if dp*dq < 0 {
				kept = append(kept, r2.Add(p, r2.Scale(dp/(dp-dq), r2.Sub(q, p))))
			}
		}
		ps = kept
	}
	return geom.Area(ps)
}

// Past 45 degrees off square the saw rides on the end.
func TestBoxEndSaw(t *testing.T) {
	for _, c := range []struct {
		bevel, tilt float64
		onEnd       bool
	}{{0, 0, false}, {-30, 30, false}, {45, 45, false}, {60, 30, true}, {-72, 18, true}} {
		if tilt, onEnd := (turn.BoxEnd{Bevel: c.bevel}).Saw(); tilt != c.tilt || onEnd != c.onEnd {
			t.Errorf("%v: tilt %v, on the end %v", c.bevel, tilt, onEnd)
		}
	}
}

// Of two or four radial winders in a square corner the middle riser line stands at
// 45 degrees: whatever rounding leaves of that, the saw rides on the face.
func TestMitresAreSawnOnTheFace(t *testing.T) {
	for _, treads := range []int{2, 4} {
		at45 := 0
		for _, b := range winders(36, treads, 1.75, false).At(turn.Start, 12*inch).Boxes(boxFraming(7.5)) {
			for _, p := range b.Parts {
				for _, e := range p.Ends {
					if math.Abs(math.Abs(e.Bevel)-45) > 1e-6 {
						continue
					}
					at45++
					if tilt, onEnd := e.Saw(); tilt != 45 || onEnd {
						t.Errorf("%d winders, %s, bevel %v: tilt %v, on the end %v", treads, p.Kind, e.Bevel, tilt, onEnd)
					}
				}
			}
		}
		if at45 == 0 {
			t.Errorf("%d winders have no mitre", treads)
		}
	}
}

func BenchmarkBoxes(b *testing.B) {
	l := winders(36, 5, 1.75, true).At(turn.Start, 10.86*inch)
	for b.Loop() {
		l.Boxes(boxFraming(7.5))
	}
}
