package dxf_test

import (
	"bytes"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"stepoff/layout/drawing"
	"stepoff/layout/drawing/dxf"
	"stepoff/layout/geom"
	"stepoff/spec/measure"
)

func write(t rapid.TB, units measure.Units, parts ...dxf.Part) string {
	t.Helper()
	var b bytes.Buffer
	if err := dxf.Write(&b, units, parts...); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// read is a DXF file taken apart as far as these tests need it.
type read struct {
	header  map[string][]string // values of each variable, in order
	layers  []string
	paths   []readPath
	texts   []readText
	vertice int // how many corners polylines have
}

type readPath struct {
	layer, kind string
	geom.Path
}

type readText struct {
	layer, text          string
	at                   geom.Point
	height, angle, align float64
}

type pair struct {
	code  int
	value string
}

// parse reads the file after the DXF reference of Release 12: group codes and
// values, sections, tables, entities; bulges become arcs.
func parse(t rapid.TB, file string) read {
	t.Helper()
	lines := strings.Split(strings.TrimSuffix(file, "\n"), "\n")
	if len(lines)%2 != 0 {
		t.Fatal("an odd number of lines")
	}
	var groups [][]pair // each begins with a pair of code 0, or 9 in the header
	for i := 0; i < len(lines); i += 2 {
		code, err := strconv.Atoi(strings.TrimSpace(lines[i]))
		if err != nil {
			t.Fatalf("line %d: %v", i+1, err)
		}
		for _, r := range lines[i+1] {
			if r < ' ' || r > '~' {
				t.Fatalf("line %d: %q", i+2, lines[i+1])
			}
		}
		p := pair{code, strings.TrimSpace(lines[i+1])}
		if code == 0 || code == 9 {
			groups = append(groups, nil)
		}
		groups[len(groups)-1] = append(groups[len(groups)-1], p)
	}
	if last := groups[len(groups)-1]; last[0].value != "EOF" {
		t.Fatalf("the file ends with %v", last)
	}
	r := read{header: map[string][]string{}}
	for i := 0; i < len(groups); i++ {
		g := groups[i]
		number := func(code int) float64 { return value(t, g, code) }
		at := func(code int) geom.Point { return geom.Pt(number(code), number(code+10)) }
		layer := word(g, 8)
		edge := func(e geom.Edge) {
			r.paths = append(r.paths, readPath{layer, g[0].value, geom.Path{Edges: []geom.Edge{e}}})
		}
		switch kind := g[0].value; kind {
		case "LAYER":
			r.layers = append(r.layers, word(g, 2))
		case "LINE":
			edge(geom.Line(at(10), at(11)))
		case "CIRCLE":
			edge(geom.Arc(at(10), number(40), 0, 2*math.Pi))
		case "ARC":
			from, to := number(50), number(51)
			if to < from {
				to += 360
			}
			edge(geom.Arc(at(10), number(40), from*math.Pi/180, (to-from)*math.Pi/180))
		case "TEXT":
			text := readText{layer: layer, text: word(g, 1), at: at(10), height: number(40), angle: number(50), align: number(72)}
			if text.align != 0 && at(11) != text.at {
				t.Fatal("a text is aligned at another place")
			}
			r.texts = append(r.texts, text)
		case "POLYLINE":
			p := readPath{layer: layer, kind: kind}
			p.Closed = number(70) == 1
			var corners []geom.Point
			var bulges []float64
			for i++; groups[i][0].value == "VERTEX"; i++ {
				if word(groups[i], 8) != layer {
					t.Fatal("a corner on another layer")
				}
				corners = append(corners, geom.Pt(value(t, groups[i], 10), value(t, groups[i], 20)))
				bulges = append(bulges, value(t, groups[i], 42))
			}
			if groups[i][0].value != "SEQEND" {
				t.Fatalf("a polyline ends with %v", groups[i])
			}
			r.vertice += len(corners)
			for k := range corners {
				next := (k + 1) % len(corners)
				if next == 0 && !p.Closed {
					break
				}
				if corners[k] == corners[next] {
					t.Fatal("two corners at one place")
				}
				p.Edges = append(p.Edges, bent(corners[k], corners[next], bulges[k]))
			}
			r.paths = append(r.paths, p)
		default:
			if g[0].code == 9 {
				for _, v := range g[1:] {
					r.header[kind] = append(r.header[kind], v.value)
				}
			}
		}
	}
	return r
}

func word(g []pair, code int) string {
	for _, p := range g {
		if p.code == code {
			return p.value
		}
	}
	return ""
}

func value(t rapid.TB, g []pair, code int) float64 {
	t.Helper()
	text := word(g, code)
	if text == "" {
		return 0
	}
	v, err := strconv.ParseFloat(text, 64)
	if err != nil || strings.HasPrefix(text, "-0.000000") && v == 0 {
		t.Fatalf("%q: %v", text, err)
	}
	return v
}

// bent is the edge between two corners with a bulge: the tangent of a quarter of
// the arc's angle.
func bent(from, to geom.Point, bulge float64) geom.Edge {
	if bulge == 0 {
		return geom.Line(from, to)
	}
	sweep := 4 * math.Atan(bulge)
	dx, dy := to.X-from.X, to.Y-from.Y
	h := 1 / math.Tan(sweep/2) / 2 // centre from the chord's middle, in chords, to the left
	c := geom.Pt(from.X+dx/2-h*dy, from.Y+dy/2+h*dx)
	return geom.Arc(c, math.Hypot(from.X-c.X, from.Y-c.Y), math.Atan2(from.Y-c.Y, from.X-c.X), sweep)
}

// near is how near what is read must be, in
// millimetres: the micrometre that is promised, and far less in fact.
const near = 1e-4

// TestTrueSize: every edge is in the file where it was, arcs as arcs, in either
// unit; a closed path is one closed polyline.
func TestTrueSize(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := &drawing.Drawing{Name: "any"}
		num := rapid.Float64Range(-5000, 5000)
		var p geom.Path
		here := geom.Pt(num.Draw(t, "x"), num.Draw(t, "y"))
		first := here
		for range rapid.IntRange(2, 6).Draw(t, "edges") {
			if rapid.Bool().Draw(t, "arc") {
				radius, start := rapid.Float64Range(5, 6000).Draw(t, "r"), rapid.Float64Range(-3, 3).Draw(t, "start")
				sweep := rapid.Float64Range(0.01, 6.28).Draw(t, "sweep") * rapid.SampledFrom([]float64{1, -1}).Draw(t, "way")
				e := geom.Arc(geom.Pt(here.X-radius*math.Cos(start), here.Y-radius*math.Sin(start)), radius, start, sweep)
				e.From = here
				p.Edges, here = append(p.Edges, e), e.To
				continue
			}
			to := geom.Pt(num.Draw(t, "x"), num.Draw(t, "y"))
			if apart(here, to) < 1 {
				to.X = here.X + 1 // edges of no length: TestBrokenPath
			}
			p.Edges, here = append(p.Edges, geom.Line(here, to)), to
		}
		if p.Closed = rapid.Bool().Draw(t, "closed") && apart(here, first) > 1; p.Closed {
			p.Edges = append(p.Edges, geom.Line(here, first))
		}
		d.Add(drawing.Path{Layer: drawing.Cut, Path: p})
		units, mm := measure.Metric, 1.0
		if rapid.Bool().Draw(t, "inches") {
			units, mm = measure.Imperial, 25.4
		}
		r := parse(t, write(t, units, dxf.Part{Drawing: d, Layers: dxf.Usual}))
		if len(r.paths) != 1 || r.paths[0].layer != "OUTLINE" || r.paths[0].kind != "POLYLINE" || r.paths[0].Closed != p.Closed {
			t.Fatalf("%+v", r.paths)
		}
		got := r.paths[0]
		straight, bends := 0, 0
		for _, e := range got.Edges {
			if e.IsArc() {
				bends++
			} else {
				straight++
			}
		}
		for _, e := range p.Edges {
			if !e.IsArc() {
				straight--
				continue
			}
			bends -= int(math.Ceil(math.Abs(e.Sweep)/math.Pi - 1e-9))
		}
		if straight != 0 || bends != 0 {
			t.Fatalf("%d straight edges and %d arcs too many", straight, bends)
		}
		for _, e := range p.Edges {
			for k := range 33 {
				at := e.At(float64(k) / 32)
				if off := distance(geom.Pt(at.X/mm, at.Y/mm), got.Edges) * mm; off > near {
					t.Fatalf("nothing is drawn at %v; the nearest edge is %g mm off", at, off)
				}
			}
		}
		if off := math.Abs(got.Length()*mm - p.Length()); off > near {
			t.Fatalf("a path of %g mm is %g mm longer or shorter", p.Length(), off)
		}
	})
}

func apart(a, b geom.Point) float64 { return math.Hypot(a.X-b.X, a.Y-b.Y) }

func distance(p geom.Point, edges []geom.Edge) float64 {
	least := math.Inf(1)
	for _, e := range edges {
		d, _ := e.Nearest(p)
		least = math.Min(least, d)
	}
	return least
}

// sample is a part as a router gets it: an outline with arcs, a housing with a
// round nosing as a part of its own, a stop, a mark, a hole, words.
func sample() []dxf.Part {
	d := &drawing.Drawing{Name: "string", Title: "String"}
	d.Add(drawing.Path{Layer: drawing.Lumber, Path: geom.Rect(geom.Box{Min: geom.Pt(-100, -50), Max: geom.Pt(2000, 300)})})
	d.Add(drawing.Path{Layer: drawing.Cut, Path: geom.Path{Closed: true, Edges: []geom.Edge{
		geom.Line(geom.Pt(0, 0), geom.Pt(1200.5, 0)),
		geom.Arc(geom.Pt(1200.5, 100), 100, -math.Pi/2, math.Pi/2),
		geom.Line(geom.Pt(1300.5, 100), geom.Pt(1300.5, 250.123456)),
		geom.Line(geom.Pt(1300.5, 250.123456), geom.Pt(0, 250.123456)),
		geom.Line(geom.Pt(0, 250.123456), geom.Pt(0, 0)),
	}}})
	d.Line(drawing.Mark, geom.Pt(100, 10), geom.Pt(200, 20))
	d.Add(drawing.Path{Layer: drawing.Mark, Path: geom.Path{Edges: []geom.Edge{geom.Arc(geom.Pt(500, 60), 40, math.Pi, -math.Pi/3)}}})
	d.Add(drawing.Path{Layer: drawing.Cut, Path: geom.Path{Closed: true, Edges: []geom.Edge{geom.Arc(geom.Pt(700, 60), 12.7, 0, 2*math.Pi)}}})
	d.Text(geom.Pt(300, 30), drawing.Normal, drawing.Middle, `left string, 7⅜″ at 35.5° – Ångström`)
	d.Dim(drawing.Horizontal, geom.Pt(0, 0), geom.Pt(1200.5, 0), -10, `47 1/4"+`)
	housing := &drawing.Drawing{Name: "housing"}
	housing.Add(drawing.Path{Layer: drawing.Cut, Path: geom.Path{Closed: true, Edges: []geom.Edge{
		geom.Line(geom.Pt(300, 100), geom.Pt(600, 100)),
		geom.Line(geom.Pt(600, 100), geom.Pt(600, 138)),
		geom.Line(geom.Pt(600, 138), geom.Pt(300, 138)),
		geom.Arc(geom.Pt(300, 119), 19, math.Pi/2, math.Pi),
	}}})
	stop := &drawing.Drawing{Name: "stop"}
	stop.Line(drawing.Mark, geom.Pt(610, 90), geom.Pt(610, 150))
	return []dxf.Part{
		{Drawing: d, Layers: dxf.Usual},
		{Drawing: housing, Layers: dxf.Layers{drawing.Cut: dxf.Housing}},
		{Drawing: stop, Layers: dxf.Layers{drawing.Mark: dxf.Stop}},
	}
}

// TestSample: layers, units, entities, words.
func TestSample(t *testing.T) {
	for _, c := range []struct {
		units         measure.Units
		insunits      string
		mm            float64
		extent, width string
	}{{measure.Metric, "4", 1, "1300.500000", "metric"}, {measure.Imperial, "1", 25.4, "51.200787402", "imperial"}} {
		file := write(t, c.units, sample()...)
		r := parse(t, file)
		if diff := cmp.Diff([]string{"OUTLINE", "HOUSING", "STOP", "MARK", "TEXT"}, r.layers); diff != "" {
			t.Errorf("layers (-want +got):\n%s", diff)
		}
		if v := r.header["$ACADVER"]; len(v) != 1 || v[0] != "AC1009" {
			t.Errorf("release %v", v)
		}
		if v := r.header["$INSUNITS"]; len(v) != 1 || v[0] != c.insunits {
			t.Errorf("%s: units %v", c.width, v)
		}
		if v := r.header["$EXTMAX"]; len(v) != 3 || v[0] != c.extent {
			t.Errorf("%s: reaches to %v", c.width, v)
		}
		got := map[string]int{}
		for _, p := range r.paths {
			got[p.layer+" "+p.kind]++
		}
		// A dimension is two extension lines, its line and two strokes.
		want := map[string]int{"OUTLINE POLYLINE": 1, "OUTLINE CIRCLE": 1, "HOUSING POLYLINE": 1, "MARK LINE": 1, "MARK ARC": 1, "STOP LINE": 1, "TEXT LINE": 5}
		if diff := cmp.Diff(want, got); diff != "" {
			t.Errorf("entities (-want +got):\n%s", diff)
		}
		i := slices.IndexFunc(r.texts, func(x readText) bool { return x.text == `left string, 7 3/8" at 35.5 deg - Angstrom` })
		if i < 0 {
			t.Fatalf("texts %v", r.texts)
		}
		if x := r.texts[i]; x.layer != "TEXT" || x.align != 1 || math.Abs(x.height*c.mm-drawing.Normal) > 1e-6 || math.Abs(x.at.X*c.mm-300) > 1e-6 {
			t.Errorf("%+v", x)
		}
		if write(t, c.units, sample()...) != file {
			t.Error("other bytes the second time")
		}
	}
}

// TestWords: what is not ASCII is spelled, and nothing a text holds can end its
// line or be taken for a code of DXF.
func TestWords(t *testing.T) {
	for text, want := range map[string]string{
		`8′ 11⅜″`: `8' 11 3/8"`, "⌀32": "dia 32", "Größe": "Grosse", "a\n  0\nEOF": "a 0 EOF", "50%%d %%%%": "50% %d % % % %",
		`\U+215C`: "/U+215C", "a^J": "a^ J", "图": "?", "½ in": "1/2 in", "\xff": "?",
	} {
		d := &drawing.Drawing{Name: "words"}
		d.Text(geom.Pt(1, 2), drawing.Normal, drawing.Left, text)
		if r := parse(t, write(t, measure.Metric, dxf.Part{Drawing: d, Layers: dxf.Usual})); len(r.texts) != 1 || r.texts[0].text != want {
			t.Errorf("%q: %+v; want %q", text, r.texts, want)
		}
	}
}

// TestBrokenPath: edges that do not hang together are entities of their own; an
// edge of no length is none.
func TestBrokenPath(t *testing.T) {
	d := &drawing.Drawing{Name: "broken"}
	d.Add(drawing.Path{Layer: drawing.Cut, Path: geom.Path{Closed: true, Edges: []geom.Edge{
		geom.Line(geom.Pt(0, 0), geom.Pt(10, 0)), geom.Line(geom.Pt(10, 0), geom.Pt(10, 0)), geom.Line(geom.Pt(10, 0), geom.Pt(10, 10)),
		geom.Line(geom.Pt(20, 0), geom.Pt(30, 0)),
	}}})
	r := parse(t, write(t, measure.Metric, dxf.Part{Drawing: d, Layers: dxf.Usual}))
	if len(r.paths) != 2 || r.paths[0].Closed || len(r.paths[0].Edges) != 2 || r.paths[1].kind != "LINE" {
		t.Errorf("%+v", r.paths)
	}
}

// TestRefused: what cannot be written is not.
func TestRefused(t *testing.T) {
	bad := &drawing.Drawing{Name: "bad"}
	bad.Line(drawing.Cut, geom.Pt(0, 0), geom.Pt(math.NaN(), 1))
	other := &drawing.Drawing{Name: "other"}
	other.Line(drawing.Lumber, geom.Pt(0, 0), geom.Pt(1, 1))
	for name, parts := range map[string][]dxf.Part{
		"no number": {{Drawing: bad, Layers: dxf.Usual}}, "no drawing": {{Layers: dxf.Usual}},
		"nothing for the file": {{Drawing: other, Layers: dxf.Usual}}, "no part": nil,
	} {
		var b bytes.Buffer
		if err := dxf.Write(&b, measure.Metric, parts...); err == nil || b.Len() > 0 {
			t.Errorf("%s: %v, %d bytes written", name, err, b.Len())
		}
	}
}

// TestLook: the entities of a small drawing, whole.
func TestLook(t *testing.T) {
	d := &drawing.Drawing{Name: "look"}
	d.Add(drawing.Path{Layer: drawing.Cut, Path: geom.Path{Closed: true, Edges: []geom.Edge{
		geom.Line(geom.Pt(0, 0), geom.Pt(25.4, 0)), geom.Arc(geom.Pt(12.7, 0), 12.7, 0, math.Pi),
	}}})
	_, body, _ := strings.Cut(write(t, measure.Imperial, dxf.Part{Drawing: d, Layers: dxf.Usual}), "ENTITIES\n")
	want := strings.Join([]string{
		"0 POLYLINE", "8 OUTLINE", "66 1", "10 0.000000000", "20 0.000000000", "30 0.000000000", "70 1",
		"0 VERTEX", "8 OUTLINE", "10 0.000000000", "20 0.000000000", "30 0.000000000",
		"0 VERTEX", "8 OUTLINE", "10 1.000000000", "20 0.000000000", "30 0.000000000", "42 1.000000000000",
		"0 SEQEND", "8 OUTLINE", "0 ENDSEC", "0 EOF",
	}, "\n")
	lines := strings.Split(strings.TrimSpace(body), "\n")
	var got []string
	for i := 0; i+1 < len(lines); i += 2 {
		got = append(got, fmt.Sprint(strings.TrimSpace(lines[i]), " ", strings.TrimSpace(lines[i+1])))
	}
	if diff := cmp.Diff(want, strings.Join(got, "\n")); diff != "" {
		t.Errorf("-want +got:\n%s", diff)
	}
}
