package svg_test

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"stepoff/layout/drawing"
	"stepoff/layout/drawing/svg"
	"stepoff/layout/geom"
)

func write(t rapid.TB, d *drawing.Drawing, o svg.Options) string {
	t.Helper()
	var b bytes.Buffer
	if err := svg.Write(&b, d, o); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// read is an SVG file taken apart as far as these tests need it.
type read struct {
	width, height float64 // millimetres
	viewBox       string
	edges         map[string][]geom.Edge // by layer; y down, as in the file
	labels        []string
	texts         []string
}

func parse(t rapid.TB, file string) read {
	t.Helper()
	r := read{edges: map[string][]geom.Edge{}}
	d := xml.NewDecoder(strings.NewReader(file))
	layer := ""
	var inText bool
	for {
		token, err := d.Token()
		if err == io.EOF {
			return r
		}
		if err != nil {
			t.Fatalf("the file is not well formed: %v", err)
		}
		switch e := token.(type) {
		case xml.CharData:
			if inText {
				r.texts = append(r.texts, string(e))
			}
		case xml.EndElement:
			inText = false
		case xml.StartElement:
			at := map[string]string{}
			for _, a := range e.Attr {
				at[a.Name.Local] = a.Value
			}
			switch e.Name.Local {
			case "svg":
				fmt.Sscanf(at["width"], "%fmm", &r.width)
				fmt.Sscanf(at["height"], "%fmm", &r.height)
				r.viewBox = at["viewBox"]
			case "g":
				if at["groupmode"] == "layer" {
					layer = at["class"]
				}
				if at["aria-label"] != "" {
					r.labels = append(r.labels, at["aria-label"])
				}
			case "text":
				inText = true
			case "path":
				if at["class"] != "bar" {
					r.edges[layer] = append(r.edges[layer], edges(t, at["d"])...)
				}
			}
		}
	}
}

// edges reads path data of M, L, A and Z.
func edges(t rapid.TB, data string) []geom.Edge {
	t.Helper()
	var out []geom.Edge
	var here, start geom.Point
	fields := strings.Fields(data)
	number := func(s string) float64 {
		v, err := strconv.ParseFloat(s, 64)
		if err != nil {
			t.Fatalf("path data %q: %v", data, err)
		}
		if _, frac, ok := strings.Cut(s, "."); ok && len(frac) > 6 {
			t.Fatalf("path data %q: finer than a nanometre", data)
		}
		return v
	}
	for i := 0; i < len(fields); {
		switch f := fields[i]; f[0] {
		case 'M':
			here = geom.Pt(number(f[1:]), number(fields[i+1]))
			start = here
			i += 2
		case 'L':
			to := geom.Pt(number(f[1:]), number(fields[i+1]))
			out = append(out, geom.Line(here, to))
			here = to
			i += 2
		case 'A':
			r, r2 := number(f[1:]), number(fields[i+1])
			if r != r2 || fields[i+2] != "0" || fields[i+3] != "0" {
				t.Fatalf("path data %q: no circular arc of a quarter circle or less", data)
			}
			to := geom.Pt(number(fields[i+5]), number(fields[i+6]))
			out = append(out, arc(here, to, r, fields[i+4] == "1"))
			here = to
			i += 7
		case 'Z':
			if here != start {
				out = append(out, geom.Line(here, start))
			}
			i++
		default:
			t.Fatalf("path data %q: %q", data, f)
		}
	}
	return out
}

// arc is the arc of half a circle or less between two points, as the SVG
// specification (9.5.1, elliptical arcs) has it; sweep 1 runs toward +y from
// +x, clockwise as seen.
func arc(from, to geom.Point, r float64, sweep bool) geom.Edge {
	dx, dy := (to.X-from.X)/2, (to.Y-from.Y)/2
	half := math.Hypot(dx, dy)
	h := math.Sqrt(math.Max(0, r*r-half*half))
	if sweep {
		h = -h
	}
	c := geom.Pt(from.X+dx+h*dy/half, from.Y+dy-h*dx/half)
	a0, a1 := math.Atan2(from.Y-c.Y, from.X-c.X), math.Atan2(to.Y-c.Y, to.X-c.X)
	turn := math.Mod(a1-a0, 2*math.Pi)
	if sweep && turn < 0 {
		turn += 2 * math.Pi
	}
	if !sweep && turn > 0 {
		turn -= 2 * math.Pi
	}
	return geom.Arc(c, r, a0, turn)
}

// TestTrueSize: at full size every edge is in the file where it was, to a
// hundred-thousandth of a millimetre, arcs as arcs.
func TestTrueSize(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := &drawing.Drawing{Name: "any", Title: "Any"}
		num := rapid.Float64Range(-5000, 5000)
		for range rapid.IntRange(1, 6).Draw(t, "edges") {
			if rapid.Bool().Draw(t, "arc") {
				e := geom.Arc(geom.Pt(num.Draw(t, "x"), num.Draw(t, "y")), rapid.Float64Range(5, 6000).Draw(t, "r"),
					rapid.Float64Range(-3, 3).Draw(t, "start"), rapid.Float64Range(0.2, 6.28).Draw(t, "sweep")*rapid.SampledFrom([]float64{1, -1}).Draw(t, "way"))
				d.Add(drawing.Path{Layer: drawing.Cut, Path: geom.Path{Edges: []geom.Edge{e}}})
				continue
			}
			d.Line(drawing.Cut, geom.Pt(num.Draw(t, "x0"), num.Draw(t, "y0")), geom.Pt(num.Draw(t, "x1"), num.Draw(t, "y1")))
		}
		margin := rapid.SampledFrom([]float64{0, 5}).Draw(t, "margin")
		r := parse(t, write(t, d, svg.Options{Margin: margin}))
		box := d.Bounds()
		if math.Abs(r.width-box.Width()-2*margin) > 1e-5 || math.Abs(r.height-box.Height()-2*margin) > 1e-5 {
			t.Fatalf("%g x %g mm for a drawing of %g x %g", r.width, r.height, box.Width(), box.Height())
		}
		if want := fmt.Sprintf("0 0 %s %s", trim(r.width), trim(r.height)); r.viewBox != want {
			t.Fatalf("viewBox %q, size %q", r.viewBox, want)
		}
		for _, it := range d.Items {
			for _, e := range it.(drawing.Path).Edges {
				for k := range 33 {
					at := e.At(float64(k) / 32)
					inFile := geom.Pt(at.X-box.Min.X+margin, box.Max.Y-at.Y+margin)
					near := math.Inf(1)
					for _, g := range r.edges["cut"] {
						near = math.Min(near, off(inFile, g))
					}
					if near > 1e-4 {
						t.Fatalf("nothing is drawn at %v; the nearest edge is %g mm off", at, near)
					}
				}
			}
		}
	})
}

func trim(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// off is how far a point is from an edge, nearly: of an arc, from its circle
// while within the arc's box.
func off(p geom.Point, e geom.Edge) float64 {
	if e.IsArc() {
		if !e.Box().Contains(p, 1e-4) {
			return math.Inf(1)
		}
		return math.Abs(math.Hypot(p.X-e.Centre.X, p.Y-e.Centre.Y) - e.Radius)
	}
	dx, dy := e.To.X-e.From.X, e.To.Y-e.From.Y
	f := math.Max(0, math.Min(1, ((p.X-e.From.X)*dx+(p.Y-e.From.Y)*dy)/math.Max(dx*dx+dy*dy, 1e-30)))
	return math.Hypot(p.X-e.From.X-f*dx, p.Y-e.From.Y-f*dy)
}

// TestScale: at 1:20 lines are a twentieth, letters keep their size.
func TestScale(t *testing.T) {
	d := &drawing.Drawing{Name: "bar", Title: "Bar"}
	d.Line(drawing.Outline, geom.Pt(0, 0), geom.Pt(2000, 0))
	d.Text(geom.Pt(1000, 200), drawing.Large, drawing.Middle, "HIGH")
	file := write(t, d, svg.Options{Scale: 0.05})
	if e := parse(t, file).edges["outline"]; len(e) != 1 || math.Abs(e[0].Length()-100) > 1e-6 {
		t.Errorf("2000 mm at 1:20: %v", e)
	}
	// Go Regular's capitals are 1480 units high on an em of 2048 (the font's
	// OS/2 table).
	if want := fmt.Sprintf(`font-size="%s"`, trim(math.Round(5*2048.0/1480*1e6)/1e6)); !strings.Contains(file, want) {
		t.Errorf("no %s in %s", want, file)
	}
}

// TestWords: words from a job are escaped, fractions are set and named.
func TestWords(t *testing.T) {
	d := &drawing.Drawing{Name: "words", Title: `<a> & "b"`}
	d.Text(geom.Pt(0, 0), drawing.Normal, drawing.Left, `</text><script>&"7 5/8"`)
	d.Text(geom.Pt(0, 50), drawing.Normal, drawing.Right, "\x00\x01\xff")
	d.Dim(drawing.Horizontal, geom.Pt(0, 0), geom.Pt(300, 0), 10, `10 3/4"`)
	r := parse(t, write(t, d, svg.Options{}))
	want := []string{`10 3/4"`, `</text><script>&"7 5/8"`, "\uFFFD\uFFFD\uFFFD"}
	if diff := cmp.Diff(want, r.labels); diff != "" {
		t.Errorf("labels (-want +got):\n%s", diff)
	}
	if diff := cmp.Diff([]string{"10", "3", "4", `"`, `</text><script>&"`, "7", "5", "8", `"`, "\uFFFD\uFFFD\uFFFD"}, r.texts); diff != "" {
		t.Errorf("texts (-want +got):\n%s", diff)
	}
	// A dimension is an extension line at either end, the line and two strokes.
	if n := len(r.edges["dimension"]); n != 5 {
		t.Errorf("the dimension is %d lines", n)
	}
}

// TestRefused: what cannot be written is not.
func TestRefused(t *testing.T) {
	bad := &drawing.Drawing{Name: "bad"}
	bad.Line(drawing.Cut, geom.Pt(0, 0), geom.Pt(math.NaN(), 1))
	good := &drawing.Drawing{Name: "good"}
	good.Line(drawing.Cut, geom.Pt(0, 0), geom.Pt(1, 1))
	for name, c := range map[string]struct {
		d *drawing.Drawing
		o svg.Options
	}{
		"not a number": {bad, svg.Options{}}, "nothing": {&drawing.Drawing{Name: "empty"}, svg.Options{}},
		"scale": {good, svg.Options{Scale: math.NaN()}}, "margin": {good, svg.Options{Margin: -1}},
	} {
		var b bytes.Buffer
		if err := svg.Write(&b, c.d, c.o); err == nil || b.Len() > 0 {
			t.Errorf("%s: %v, %d bytes written", name, err, b.Len())
		}
	}
}

// TestLook: the file of a small drawing, whole.
func TestLook(t *testing.T) {
	d := &drawing.Drawing{Name: "look", Title: "Look"}
	d.Add(drawing.Path{Layer: drawing.Outline, Path: geom.Rect(geom.Box{Max: geom.Pt(40, 20)}), Fill: 0.1})
	d.Add(drawing.Path{Layer: drawing.Cut, Path: geom.Path{Edges: []geom.Edge{geom.Arc(geom.Pt(20, 10), 8, 0, math.Pi/2)}}})
	_, body, _ := strings.Cut(write(t, d, svg.Options{Margin: 2, Paper: true}), "</style>\n")
	want := `<rect class="paper" width="44" height="24"/>
<g id="outline" class="outline" inkscape:groupmode="layer" inkscape:label="outline">
<path d="M2 22 L42 22 L42 2 L2 2 Z" style="fill: #e6e6e6"/>
</g>
<g id="cut" class="cut" inkscape:groupmode="layer" inkscape:label="cut">
<path d="M30 12 A8 8 0 0 0 22 4 "/>
</g>
</svg>
`
	if diff := cmp.Diff(want, body); diff != "" {
		t.Errorf("-want +got:\n%s", diff)
	}
}
