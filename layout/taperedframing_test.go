package layout_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"stepoff/layout"
	"stepoff/layout/choose"
	"stepoff/spec"
	"stepoff/spec/rules"
	"stepoff/spec/source"
)

// Boxes of winders 4 and 1 risers up, worked by hand: rise 7 1/2, treads 1 1/2,
// sheathing 3/4, so that boxes are 6 3/4 high, ripped from 2x8; on the floor the
// first is 5 1/4 and 3/4 of flooring to come makes it 6. The first of four risers up
// has 30 - 1 1/2 - 3/4 - 6 3/4 = 21 under it, and six corners to stand on.
func TestBoxesOfWinders(t *testing.T) {
	for _, c := range []struct {
		below, above string
		finish       string
		first, leg   float64 // in
		legs         int
	}{
		{"4", "8", "0", 6.75, 21, 6},
		{"4", "8", `3/4"`, 6.75, 21.75, 6},
		{"1", "11", "0", 5.25, 0, 0},
		{"1", "11", `3/4"`, 6, 0, 0},
	} {
		s := filled(t, stair(map[string]string{
			"levels":   `{total_rise: 105", lower_finish: ` + c.finish + `}`,
			"stairway": `[{flight: {risers: ` + c.below + `, run: 10"}}, {winders: {turn: left, treads: 3, setback: 11"}}, {flight: {risers: ` + c.above + `, run: 10"}}]`,
		}))
		w := s.Winders()[0]
		if len(w.Boxes) != 3 || w.Legs != c.legs || w.BoxStock.Name != "2x8" {
			t.Fatalf("%+v: %d boxes on %d legs, from %s", c, len(w.Boxes), w.Legs, w.BoxStock.Name)
		}
		if high, leg := w.Boxes[0].Height/in, w.Boxes[0].Leg/in; math.Abs(high-c.first) > 1e-9 || math.Abs(leg-c.leg) > 1e-9 {
			t.Errorf("%+v: the first box is %g high on legs of %g", c, high, leg)
		}
		if high := w.Boxes[1].Height / in; math.Abs(high-6.75) > 1e-9 {
			t.Errorf("%+v: the second box is %g high", c, high)
		}
	}
}

// The cut list holds every part once, whatever it is joined with.
func TestTaperedPiecesAreComplete(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		treads := rapid.SampledFrom([]string{"2", "3", "4", "5"}).Draw(t, "treads")
		lines := rapid.SampledFrom([]string{"radial", "even"}).Draw(t, "lines")
		hand := rapid.SampledFrom([]string{"left", "right"}).Draw(t, "hand")
		s := filled(t, stair(map[string]string{"stairway": `[{flight: {risers: 4, run: 10"}}, {winders: {turn: ` + hand + `, treads: ` + treads + `, lines: ` + lines + `}},
  {flight: {risers: 4, run: 10"}}, {landing: {turn: none, length: 36"}}, {curve: {turn: ` + hand + `, risers: 6, inside_radius: 5', angle: 60}}]`}))
		w, c := s.Winders()[0], s.Curves()[0]
		count, long := 0, 0.0
		for _, b := range w.Boxes {
			count++ // its sheathing
			for _, p := range b.Parts {
				count++
				long += p.Length
			}
		}
		holdsPieces(t, w.Pieces, "box ", count+w.Legs, long)
		count, long = len(c.Framing.Studs)+len(c.Framing.Bearers), 0
		for _, p := range c.Framing.Plates {
			for _, layer := range p.Layers {
				count += len(layer)
			}
		}
		for _, st := range c.Framing.Studs {
			long += st.Height
		}
		holdsPieces(t, c.Pieces, "stud", count, long)
	})
}

// holdsPieces holds the number of pieces, and the length of those of one kind.
func holdsPieces(t *rapid.T, all []layout.FramePiece, kind string, count int, long float64) {
	n, sum := 0, 0.0
	for _, p := range all {
		n += p.Count
		if strings.HasPrefix(p.Part, kind) {
			sum += float64(p.Count) * p.Length
		}
	}
	// Alike within a hundred-thousandth of a millimetre is joined.
	if n != count || math.Abs(sum-long) > 1e-5*float64(count) {
		t.Errorf("%d pieces, %g of %s; the parts are %d and %g", n, sum, kind, count, long)
	}
}

// A curve's strings, from the job on: their runs add up to radius x angle, their
// heights to risers x unit rise, at the edges of the clear width.
func TestCurveStringsFromTheJob(t *testing.T) {
	s := filled(t, stair(map[string]string{"stairway": `[{curve: {turn: right, risers: 14, inside_radius: 5', angle: 110}}]`}))
	c := s.Curves()[0]
	if len(c.Strings) != 2 {
		t.Fatalf("%d strings: %s", len(c.Strings), c.NoStrings)
	}
	for k, radius := range []float64{60, 96} {
		g := c.Strings[k]
		if run, want := g.UnitRun*13/in, radius*110*math.Pi/180; math.Abs(g.Radius/in-radius) > 1e-9 || math.Abs(run-want) > 1e-9 {
			t.Errorf("%s string at a radius of %g runs %g, want %g", g.Name, g.Radius/in, run, want)
		}
		if math.Abs(g.Height/in-105) > 1e-9 || math.Abs(14*g.UnitRise/in-105) > 1e-9 {
			t.Errorf("%s string rises %g, 14 times %g", g.Name, g.Height/in, g.UnitRise/in)
		}
		// Eight or four layers of 3/8 are 1 1/2, and the outside string bends inside its
		// own radius.
		if b := g.Bend; b == nil || b.Layers != 4 || math.Abs(b.FormRadius/in-[]float64{60, 94.5}[k]) > 1e-9 {
			t.Errorf("%s string is bent %+v", g.Name, b)
		}
	}
}

// The sheets hold the plates' segments as rectangles, and no sheet more is taken
// than by one row a segment.
func TestPlateSheets(t *testing.T) {
	s := filled(t, stair(map[string]string{"stairway": `[{curve: {turn: left, risers: 14, inside_radius: 5', angle: 110, layers: 4}}]`}))
	c := s.Curves()[0]
	area, rows := 0.0, 0.0
	for _, p := range c.Pieces {
		if strings.HasSuffix(p.Part, "segment") {
			area += float64(p.Count) * p.Length * p.Width
			rows += float64(p.Count) * (p.Width + in/8)
		}
	}
	least, most := int(math.Ceil(area/(48*96*in*in))), int(math.Ceil(rows/(40*in)))
	if c.Sheets < least || c.Sheets > most || least < 1 {
		t.Errorf("%d sheets, between %d and %d would do", c.Sheets, least, most)
	}
}

// What cannot be framed is refused, at its place in the job.
func TestTaperedFramingRefused(t *testing.T) {
	for _, c := range []struct{ width, stairway, at, want string }{
		{`36"`, `[{flight: {risers: 4, run: 10"}}, {winders: {turn: left, treads: 3, sheathing: 6 1/4"}}, {flight: {risers: 8, run: 10"}}]`, `6 1/4"}}, {flight`,
			`sheathing: of a unit rise of 7 1/2", treads 1 1/2" and sheathing 6 1/4" thick leave a box 1 1/4" high`},
		{`36"`, `[{curve: {turn: left, risers: 14, inside_radius: 5', angle: 110, sheet: {width: 3"}}}]`, `{width: 3"}`, "cannot be cut from sheets"},
		{`36"`, `[{curve: {turn: left, risers: 14, inside_radius: 4", angle: 110}}]`, `4", angle`, "riser lines come so near each other"},
		{`6"`, `[{curve: {turn: left, risers: 14, inside_radius: 5', angle: 110, walkline: 2"}}]`, `6"`, "leave nothing between them"},
	} {
		text := stair(map[string]string{"width": c.width, "stairway": c.stairway})
		job, err := spec.Load("job.yaml", []byte(text))
		if err != nil {
			t.Fatal(err)
		}
		if job, err = choose.Fill(job, &rules.Code{Name: rules.None}); err != nil {
			t.Fatal(err)
		}
		_, err = layout.Compute(job)
		var bad source.Mistakes
		if !errors.As(err, &bad) {
			t.Errorf("%s: %v", c.stairway, err)
			continue
		}
		if !strings.Contains(bad[0].Message, c.want) {
			t.Errorf("nothing says %q: %v", c.want, err)
		}
		if line := strings.Split(text, "\n")[bad[0].At.Line-1]; !strings.HasPrefix(line[bad[0].At.Column-1:], c.at) {
			t.Errorf("%v: it should be at %s", err, c.at)
		}
	}
}

// Rise 7 1/2, treads 1 1/2: behind the last winder the upper flight's first riser board
// runs down to the box, a whole rise high; on it, it is a tread's thickness less. A
// hung head of the lower flight ends 7 1/2 + 1 1/2 below the first winder, where the
// front of the box does: nothing of it bears.
func TestFlightsAtWinders(t *testing.T) {
	for joint, first := range map[string]float64{"behind": 7.5, "on": 6} {
		s := filled(t, stair(map[string]string{
			"riser":    `{thickness: 3/4", joint: ` + joint + `}`,
			"stairway": `[{flight: {risers: 4, run: 10"}}, {winders: {turn: left, treads: 3, setback: 11"}}, {flight: {risers: 8, run: 10"}}]`,
		}))
		lower, upper := s.Flights()[0], s.Flights()[1]
		for _, b := range upper.Boards {
			if b.Kind == layout.RiserBoard && b.Steps[0] == 1 && math.Abs(b.Depth/in-first) > 1e-9 {
				t.Errorf("%s: the first riser board on the winders is %g high, want %g", joint, b.Depth/in, first)
			}
		}
		if c := lower.Stringers[0].HeadContact; c == nil || *c != 0 {
			t.Errorf("%s: the lower flight's head bears %v on the first box", joint, c)
		}
	}
}

// A curve that begins at winders: its first riser board is as high as the others.
func TestCurveOnWinders(t *testing.T) {
	s := filled(t, stair(map[string]string{"stairway": `[{flight: {risers: 4, run: 10"}}, {winders: {turn: left, treads: 3, setback: 11"}},
  {curve: {turn: left, risers: 8, inside_radius: 5', angle: 60}}]`}))
	for _, b := range s.Curves()[0].CutList {
		if b.Kind == layout.RiserBoard && (b.Steps != [2]int{1, 8} || math.Abs(b.Depth/in-7.5) > 1e-9) {
			t.Errorf("riser boards %v are %g high", b.Steps, b.Depth/in)
		}
	}
}
