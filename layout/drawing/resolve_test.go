package drawing_test

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"stepoff/layout/drawing"
	"stepoff/layout/drawing/letter"
	"stepoff/layout/geom"
)

// parts takes a resolved dimension apart: extension lines, the dimension line,
// the two strokes, the figure.
func parts(t rapid.TB, dim drawing.Dim, scale float64) (extensions []geom.Edge, line geom.Edge, strokes []geom.Edge, figure drawing.Text) {
	t.Helper()
	d := &drawing.Drawing{}
	d.Add(dim)
	var lines []geom.Edge
	for _, it := range d.Resolve(scale) {
		switch it := it.(type) {
		case drawing.Path:
			if it.Layer != drawing.Dimension || len(it.Edges) != 1 {
				t.Fatalf("a dimension gave %+v", it)
			}
			lines = append(lines, it.Edges[0])
		case drawing.Text:
			figure = it
		default:
			t.Fatalf("left unresolved: %+v", it)
		}
	}
	n := len(lines) - 3
	if n < 0 {
		t.Fatalf("%d lines", len(lines))
	}
	return lines[:n], lines[n], lines[n+1:], figure
}

// TestDim: by hand, at full size. From (0, 0) to (100, 0), 10 up: the line is
// at y = 10, extensions from 1 off the points to 2 past the line, the figure
// above the middle.
func TestDim(t *testing.T) {
	ext, line, strokes, figure := parts(t, drawing.Dim{A: geom.Pt(0, 0), B: geom.Pt(100, 0), Offset: 10, Text: "100"}, 1)
	if len(ext) != 2 || ext[0] != geom.Line(geom.Pt(0, 1), geom.Pt(0, 12)) || ext[1] != geom.Line(geom.Pt(100, 1), geom.Pt(100, 12)) {
		t.Errorf("extension lines %v", ext)
	}
	if line != geom.Line(geom.Pt(0, 10), geom.Pt(100, 10)) {
		t.Errorf("dimension line %v", line)
	}
	if len(strokes) != 2 || strokes[0] != geom.Line(geom.Pt(-1.5, 8.5), geom.Pt(1.5, 11.5)) {
		t.Errorf("strokes %v", strokes)
	}
	if figure.At.X != 50 || figure.At.Y <= 10 || figure.Align != drawing.Middle || figure.Angle != 0 || figure.Text != "100" {
		t.Errorf("figure %+v", figure)
	}
}

// TestDimDirections: which side a dimension stands on, as Dim documents it.
func TestDimDirections(t *testing.T) {
	a, b := geom.Pt(0, 0), geom.Pt(300, 400)
	for _, c := range []struct {
		dir      drawing.Direction
		offset   float64
		from, to geom.Point
		angle    float64
	}{
		{drawing.Horizontal, 10, geom.Pt(0, 410), geom.Pt(300, 410), 0},
		{drawing.Horizontal, -10, geom.Pt(0, -10), geom.Pt(300, -10), 0},
		{drawing.Vertical, 10, geom.Pt(310, 0), geom.Pt(310, 400), math.Pi / 2},
		{drawing.Vertical, -10, geom.Pt(-10, 0), geom.Pt(-10, 400), math.Pi / 2},
		{drawing.Aligned, 10, geom.Pt(-8, 6), geom.Pt(292, 406), math.Atan2(4, 3)},
		{drawing.Aligned, -10, geom.Pt(8, -6), geom.Pt(308, 394), math.Atan2(4, 3)},
	} {
		for _, swapped := range []bool{false, true} {
			dim := drawing.Dim{A: a, B: b, Direction: c.dir, Offset: c.offset, Text: "x"}
			if swapped && c.dir == drawing.Aligned {
				dim.A, dim.B, dim.Offset = b, a, -c.offset // the left turns with the direction
			} else if swapped {
				dim.A, dim.B = b, a
			}
			_, line, _, figure := parts(t, dim, 1)
			near := func(p, q geom.Point) bool { return math.Hypot(p.X-q.X, p.Y-q.Y) < 1e-9 }
			if !near(line.From, c.from) || !near(line.To, c.to) {
				t.Errorf("%+v: line from %v to %v, want %v to %v", dim, line.From, line.To, c.from, c.to)
			}
			if math.Abs(figure.Angle-c.angle) > 1e-9 {
				t.Errorf("%+v: written at %g, want %g", dim, figure.Angle, c.angle)
			}
		}
	}
}

// TestDimReads: at any scale the figure stands clear above its line, reads from
// below or from the right, and where the room is too short, outside.
func TestDimReads(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		num := rapid.Float64Range(-3000, 3000)
		dim := drawing.Dim{
			A: geom.Pt(num.Draw(t, "ax"), num.Draw(t, "ay")), B: geom.Pt(num.Draw(t, "bx"), num.Draw(t, "by")),
			Direction: drawing.Direction(rapid.IntRange(0, 2).Draw(t, "direction")),
			Offset:    rapid.Float64Range(-30, 30).Draw(t, "offset"), Text: rapid.SampledFrom([]string{`7 5/8"`, `8' 11 3/8"+`, "250"}).Draw(t, "text"),
		}
		scale := rapid.SampledFrom([]float64{1, 0.5, 1.0 / 24, 0.01}).Draw(t, "scale")
		d := &drawing.Drawing{}
		d.Add(dim)
		items := d.Resolve(scale)
		if len(items) == 1 {
			return // the points coincide
		}
		_, line, strokes, figure := parts(t, dim, scale)
		const upright = 1.01e-3 // radians either side of the vertical are read from the right
		if figure.Angle < -math.Pi/2+0.99e-3 || figure.Angle > math.Pi/2+upright {
			t.Fatalf("written at %g radians", figure.Angle)
		}
		// In the line's own frame, in millimetres on the sheet.
		sin, cos := math.Sincos(figure.Angle)
		local := func(p geom.Point) geom.Point {
			x, y := (p.X-line.From.X)*scale, (p.Y-line.From.Y)*scale
			return geom.Pt(x*cos+y*sin, y*cos-x*sin)
		}
		set := letter.Set(dim.Text, drawing.DimHeight)
		at, end := local(figure.At), local(line.To)
		if bottom := at.Y - set.Down; bottom < drawing.NarrowLine/2 || bottom > 2 {
			t.Fatalf("the figure's foot is %g above its line", bottom)
		}
		// Between the strokes with room to spare, or past the outer of them.
		last := 0.0
		for _, s := range strokes {
			mid := local(geom.Pt((s.From.X+s.To.X)/2, (s.From.Y+s.To.Y)/2))
			last = math.Max(last, mid.X)
		}
		left, right := at.X-set.Width/2, at.X+set.Width/2
		if between := left >= 0.99 && right <= last-0.99; !between && left < last {
			t.Fatalf("the figure spans %g to %g, the strokes 0 to %g", left, right, last)
		}
		if right > end.X+1e-6 {
			t.Fatalf("the figure ends at %g, its line at %g", right, end.X)
		}
	})
}

// TestDimOfNothing: two points in one place have a figure and no line.
func TestDimOfNothing(t *testing.T) {
	d := &drawing.Drawing{}
	d.Add(drawing.Dim{A: geom.Pt(5, 5), B: geom.Pt(5, 5), Offset: 10, Text: "0"}, drawing.Dim{A: geom.Pt(5, 5), B: geom.Pt(5, 9), Direction: drawing.Horizontal, Text: "0"})
	items := d.Resolve(1)
	for _, it := range items {
		if _, ok := it.(drawing.Text); !ok {
			t.Errorf("%+v", it)
		}
	}
	if len(items) != 2 {
		t.Errorf("%d items", len(items))
	}
}

// TestOrder: what matters most is drawn last, items of one layer in the order
// they were added.
func TestOrder(t *testing.T) {
	d := &drawing.Drawing{}
	d.Line(drawing.Cut, geom.Pt(0, 0), geom.Pt(1, 0))
	d.Dim(drawing.Aligned, geom.Pt(0, 0), geom.Pt(100, 0), 5, "x")
	d.Text(geom.Pt(0, 0), drawing.Normal, drawing.Left, "first")
	d.Line(drawing.Lumber, geom.Pt(0, 0), geom.Pt(2, 0))
	d.Text(geom.Pt(0, 0), drawing.Normal, drawing.Left, "second")
	last := drawing.Lumber
	var words []string
	for _, it := range d.Resolve(1) {
		layer := drawing.Layer(0)
		switch it := it.(type) {
		case drawing.Path:
			layer = it.Layer
		case drawing.Text:
			layer = it.Layer
			if layer == drawing.Note {
				words = append(words, it.Text)
			}
		}
		if layer < last {
			t.Errorf("%v is drawn after %v", layer, last)
		}
		last = layer
	}
	if strings.Join(words, " ") != "first second" {
		t.Errorf("words in order %q", words)
	}
}

// TestExtent: the box holds the writing at its size on the sheet.
func TestExtent(t *testing.T) {
	d := &drawing.Drawing{}
	d.Line(drawing.Cut, geom.Pt(0, 0), geom.Pt(1000, 0))
	d.Text(geom.Pt(1000, 0), drawing.Large, drawing.Left, "HIGH")
	wide := letter.Width("HIGH", drawing.Large)
	for _, scale := range []float64{1, 0.1} {
		b := d.Extent(scale)
		if want := 1000 + wide/scale; math.Abs(b.Max.X-want) > 1e-9 {
			t.Errorf("at %g the extent ends at %g, want %g", scale, b.Max.X, want)
		}
		if want := 5 / scale; math.Abs(b.Max.Y-want) > 1e-9 {
			t.Errorf("at %g the extent is %g high, want %g", scale, b.Max.Y, want)
		}
	}
}

// TestLines: a cut is the widest line, and no two kinds of narrow broken line
// are the same.
func TestLines(t *testing.T) {
	for l := drawing.Layer(0); int(l) < drawing.LayerCount; l++ {
		if w := l.Line().Width; l != drawing.Cut && w >= drawing.Cut.Line().Width || w < drawing.NarrowLine {
			t.Errorf("%v is %g wide", l, w)
		}
	}
	for _, pair := range [][2]drawing.Layer{{drawing.Hidden, drawing.Centre}, {drawing.Centre, drawing.Lumber}, {drawing.Lumber, drawing.Hidden}} {
		if len(pair[0].Line().Dash) == len(pair[1].Line().Dash) {
			t.Errorf("%v and %v look alike", pair[0], pair[1])
		}
	}
}
