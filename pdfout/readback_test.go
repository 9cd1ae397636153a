package pdfout_test

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"stepoff/layout/drawing"
	"stepoff/layout/geom"
	"stepoff/pdfout"
	"stepoff/pdfout/pdftest"
	"stepoff/spec/measure"
)

// trueSize is how far a line on paper may be from where it belongs: a
// hundredth of a millimetre, less than any printer keeps.
const trueSize = 0.01

// TestTrueSize reads sheets back: laid where they belong they show every cut
// and mark at true size, and nothing else as a cut or mark.
func TestTrueSize(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		part := drawPart(t)
		p := drawPaper(t)
		units := rapid.SampledFrom([]measure.Units{measure.Imperial, measure.Metric}).Draw(t, "units")
		tl, err := pdfout.Plan(part, p, units)
		if err != nil {
			t.Fatal(err)
		}
		checkTrue(t, tl)
	})
}

func checkTrue(t rapid.TB, tl *pdfout.Tiling) {
	t.Helper()
	var b writer
	if err := pdfout.Write(&b, document(tl.Paper, tl.Units, tl)); err != nil {
		t.Fatal(err)
	}
	f, err := pdftest.Read(b)
	if err != nil {
		t.Fatal(err)
	}
	if len(f.Pages) != len(tl.Sheets) {
		t.Fatalf("%d pages for %d sheets", len(f.Pages), len(tl.Sheets))
	}
	for _, layer := range [...]drawing.Layer{drawing.Cut, drawing.Mark} {
		want, got := edges(tl.Part.Drawing, layer), pieced(tl, f, 0, inFile(layer))
		if err := pdftest.Missing(want, got, trueSize); err != nil {
			t.Fatalf("%s: %v", layer, err)
		}
		if err := pdftest.Extra(got, want, trueSize); err != nil {
			t.Fatalf("%s: %v", layer, err)
		}
	}
	for i, page := range f.Pages {
		checkSheet(t, tl, i, page)
	}
}

// checkSheet holds one sheet against what every sheet must keep to.
func checkSheet(t rapid.TB, tl *pdfout.Tiling, i int, page pdftest.Page) {
	t.Helper()
	name := tl.Sheets[i].Name
	if page.Width > page.Height {
		t.Fatalf("%s: the page lies on its side", name)
	}
	m := tl.Paper.Margin.MM() - trueSize
	window := geom.Box{Min: geom.Pt(m, m), Max: geom.Pt(page.Width-m, page.Height-m)}
	for _, path := range page.Paths {
		if path.Clipped {
			continue // the clipping path itself is held to the window
		}
		for _, q := range path.Pieces {
			for _, at := range [...]geom.Point{q.From, q.To, q.At(0.5)} {
				if !window.Contains(at, 0) {
					t.Fatalf("%s: a line of %s at (%.3f, %.3f) mm is outside the printable window", name, path.Layer, at.X, at.Y)
				}
			}
		}
	}
	for _, w := range page.Writing {
		for _, r := range w.Runs {
			if r.Height < drawing.Small-1e-9 {
				t.Fatalf("%s: %q is %.3f mm high", name, r.Text, r.Height)
			}
		}
	}
	// Where two sheets overlap both show the same of the part.
	mine := pdftest.Layer(page.Unplace(laid(tl, i)), "Cut")
	for j, other := range tl.Sheets {
		shared := geom.Box{
			Min: geom.Pt(math.Max(tl.Sheets[i].Window.Min.X, other.Window.Min.X), math.Max(tl.Sheets[i].Window.Min.Y, other.Window.Min.Y)),
			Max: geom.Pt(math.Min(tl.Sheets[i].Window.Max.X, other.Window.Max.X), math.Min(tl.Sheets[i].Window.Max.Y, other.Window.Max.Y)),
		}
		if i == j || shared.Empty() {
			continue
		}
		var inBoth []geom.Edge
		for _, e := range edges(tl.Part.Drawing, drawing.Cut) {
			inBoth = append(inBoth, e.Clip(shared)...)
		}
		if err := pdftest.Missing(inBoth, mine, trueSize); err != nil {
			t.Fatalf("%s lacks what it shares with %s: %v", name, other.Name, err)
		}
	}
}

type writer []byte

func (w *writer) Write(b []byte) (int, error) {
	*w = append(*w, b...)
	return len(b), nil
}

// drawPart draws a saw-tooth board of a usual size, or a few lines and arcs
// anywhere, some of a large radius.
func drawPart(t *rapid.T) pdfout.Part {
	if rapid.Bool().Draw(t, "board") {
		return sawTooth(rapid.IntRange(1, 17).Draw(t, "notches"), rapid.Float64Range(5.5, 8.25).Draw(t, "rise")*in,
			rapid.Float64Range(9, 14).Draw(t, "run")*in, rapid.SampledFrom([]float64{9.25, 11.25}).Draw(t, "width")*in)
	}
	place := func(name string) geom.Point {
		return geom.Pt(rapid.Float64Range(-900, 900).Draw(t, name+" x"), rapid.Float64Range(-500, 500).Draw(t, name+" y"))
	}
	d := &drawing.Drawing{Name: "any"}
	for i := range rapid.IntRange(1, 5).Draw(t, "lines") {
		layer := rapid.SampledFrom([]drawing.Layer{drawing.Cut, drawing.Mark, drawing.Lumber}).Draw(t, "layer")
		if i == 0 {
			layer = drawing.Cut
		}
		if rapid.Bool().Draw(t, "arc") {
			radius := rapid.SampledFrom([]float64{3, 250, 1500, 6000}).Draw(t, "radius")
			sweep := rapid.Float64Range(0.05, math.Min(2*math.Pi, 900/radius)).Draw(t, "sweep") * rapid.SampledFrom([]float64{-1, 1}).Draw(t, "way")
			start := rapid.Float64Range(-math.Pi, math.Pi).Draw(t, "start")
			on := place("arc")
			centre := geom.Pt(on.X-radius*math.Cos(start), on.Y-radius*math.Sin(start))
			d.Add(drawing.Path{Layer: layer, Path: geom.Path{Edges: []geom.Edge{geom.Arc(centre, radius, start, sweep)}}})
			continue
		}
		d.Line(layer, place("from"), place("to"))
	}
	return pdfout.Part{Name: "any", Title: "Any", Drawing: d}
}

func drawPaper(t *rapid.T) pdfout.Paper {
	mm := measure.Millimetre
	p := rapid.SampledFrom([]pdfout.Paper{
		letterPaper, paper("legal", inches(8.5), inches(14)), paper("tabloid", inches(11), inches(17)),
		paper("A4", 210*mm, 297*mm), paper("A3", 297*mm, 420*mm), paper("A6", 105*mm, 148*mm), paper("Arch E", inches(36), inches(48)),
		{Name: "roll 12 in", Width: inches(12), Roll: true, Margin: inches(0.25), Overlap: inches(0.5)},
		{Name: "roll 36 in", Width: inches(36), Roll: true, Margin: 0, Overlap: inches(0.5)},
	}).Draw(t, "paper")
	p.Overlap = rapid.SampledFrom([]measure.Length{p.Overlap, 0, 20 * mm}).Draw(t, "overlap")
	p.ScaleX = rapid.SampledFrom([]float64{0, 1, 0.9962, 1.03}).Draw(t, "across")
	p.ScaleY = rapid.SampledFrom([]float64{0, 1, 1.0031, 0.97}).Draw(t, "along")
	return p
}

// TestArcsKeepTheirRadius holds drawn arcs against the radius itself, up to 6
// metres: 0.01 mm everywhere along them.
func TestArcsKeepTheirRadius(t *testing.T) {
	for _, radius := range []float64{20, 300, 1500, 6000} {
		t.Run(fmt.Sprint(radius), func(t *testing.T) {
			arc := geom.Arc(geom.Pt(0, 0), radius, 0.3, math.Min(2, 1200/radius))
			d := &drawing.Drawing{Name: "arc"}
			d.Add(drawing.Path{Layer: drawing.Cut, Path: geom.Path{Edges: []geom.Edge{arc}}})
			tl := plan(t, pdfout.Part{Name: "arc", Drawing: d}, letterPaper, measure.Imperial)
			f := pdftest.MustRead(t, write(t, document(letterPaper, measure.Imperial, tl)))
			n := 0
			for _, path := range pieced(tl, f, 0, "Cut") {
				for _, q := range path.Pieces {
					for k := range 101 {
						at := q.At(float64(k) / 100)
						if off := math.Abs(math.Hypot(at.X, at.Y) - radius); off > trueSize {
							t.Fatalf("at (%.3f, %.3f) the arc is %.4f mm off its radius", at.X, at.Y, off)
						}
						n++
					}
				}
			}
			if n == 0 {
				t.Fatal("no arc was drawn")
			}
		})
	}
}

// TestFactorsPerAxis: with the printer's factors a true length l is drawn
// l/scale_x across and l/scale_y along the paper, whichever way the drawing
// lies on it.
func TestFactorsPerAxis(t *testing.T) {
	const scaleX, scaleY = 0.9962, 1.0031
	p := letterPaper
	p.ScaleX, p.ScaleY = scaleX, scaleY
	for _, long := range []geom.Point{{X: 240, Y: 150}, {X: 150, Y: 240}} { // on its side, upright
		d := &drawing.Drawing{Name: "square"}
		d.Line(drawing.Cut, geom.Pt(0, 0), geom.Pt(long.X, 0))
		d.Line(drawing.Cut, geom.Pt(0, 0), geom.Pt(0, long.Y))
		tl := plan(t, pdfout.Part{Name: "square", Drawing: d}, p, measure.Imperial)
		if turned := long.X > long.Y; tl.Turned != turned || len(tl.Sheets) != 1 {
			t.Fatalf("%v: turned %v on %d sheets", long, tl.Turned, len(tl.Sheets))
		}
		page := pdftest.MustRead(t, write(t, document(p, measure.Imperial, tl))).Pages[0]
		for i, path := range pdftest.Layer(page.Paths, "Cut") {
			q := path.Pieces[0]
			dx, dy := math.Abs(q.To.X-q.From.X), math.Abs(q.To.Y-q.From.Y)
			l := []float64{long.X, long.Y}[i]
			want := geom.Pt(l/scaleX, 0)
			if (i == 0) == tl.Turned {
				want = geom.Pt(0, l/scaleY)
			}
			if math.Abs(dx-want.X) > trueSize || math.Abs(dy-want.Y) > trueSize {
				t.Errorf("turned %v: a true %.0f mm is drawn %.4f x %.4f mm, want %.4f x %.4f", tl.Turned, l, dx, dy, want.X, want.Y)
			}
		}
		if !page.Has("printer factors 0.9962 across the paper, 1.0031 along it") {
			t.Errorf("the factors are not on the sheet: %q", page.Lines())
		}
	}
}

// TestIndependentReader: mutool finds the same lines in the same places.
func TestIndependentReader(t *testing.T) {
	tl := plan(t, stringer(), letterPaper, measure.Imperial)
	b := write(t, document(letterPaper, measure.Imperial, tl))
	theirs := pdftest.Trace(t, b)
	ours := pdftest.MustRead(t, b)
	if len(theirs) != len(ours.Pages) {
		t.Fatalf("mutool sees %d pages, we %d", len(theirs), len(ours.Pages))
	}
	for i, page := range ours.Pages {
		var mine []geom.Point
		for _, p := range page.Paths {
			if !p.Stroked {
				continue
			}
			for k, q := range p.Pieces {
				if k == 0 || p.Pieces[k-1].To != q.From {
					mine = append(mine, q.From)
				}
				if q.Curve {
					mine = append(mine, q.C1, q.C2)
				}
				mine = append(mine, q.To)
			}
		}
		for _, at := range theirs[i] {
			near := math.Inf(1)
			for _, m := range mine {
				near = math.Min(near, math.Hypot(m.X-at.X, m.Y-at.Y))
			}
			if near > trueSize {
				t.Fatalf("page %d: mutool draws at (%.4f, %.4f), %.4f mm from any place we read", i+1, at.X, at.Y, near)
			}
		}
		if len(theirs[i]) < 40 {
			t.Fatalf("page %d: mutool sees only %d places", i+1, len(theirs[i]))
		}
	}
}
