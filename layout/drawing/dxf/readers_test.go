package dxf_test

import (
	"encoding/json"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"stepoff/layout/drawing"
	"stepoff/layout/drawing/dxf"
	"stepoff/layout/geom"
	"stepoff/pdfout/pdftest"
	"stepoff/spec/measure"
)

// told is what an independent program says it read, as the scripts in testdata
// print it.
type told struct {
	Mistakes []string
	Release  string
	Units    int
	Layers   []string
	Entities []toldEntity
}

type toldEntity struct {
	Kind, Layer string
	Closed      bool
	Vertices    [][3]float64 // x, y, bulge
	Centre      *[2]float64
	Radius      float64
	From, To    float64
	Text        string
	Height      float64
}

// TestReaders: three programs that we have not written read what we meant:
// ezdxf (Debian's python3-ezdxf), and dxf-parser and dxf of npm, which node finds
// by NODE_PATH.
func TestReaders(t *testing.T) {
	for _, reader := range []struct {
		name    string
		command []string
		ready   []string // succeeds when the library is installed
	}{
		{"ezdxf", []string{"/usr/bin/python3", "testdata/ezdxf_read.py"}, []string{"/usr/bin/python3", "-c", "import ezdxf"}},
		{"dxf-parser", []string{"node", "testdata/npm_read.js", "dxf-parser"}, []string{"node", "-e", "require('dxf-parser')"}},
		{"dxf", []string{"node", "testdata/npm_read.js", "dxf"}, []string{"node", "-e", "require('dxf')"}},
	} {
		t.Run(reader.name, func(t *testing.T) {
			pdftest.Tool(t, reader.command[0])
			if err := exec.Command(reader.ready[0], reader.ready[1:]...).Run(); err != nil {
				if os.Getenv(pdftest.RequireTools) != "" {
					t.Fatalf("%s is not installed, and %s is set", reader.name, pdftest.RequireTools)
				}
				t.Skipf("%s is not installed", reader.name)
			}
			for _, units := range []measure.Units{measure.Metric, measure.Imperial} {
				file := filepath.Join(t.TempDir(), "part.dxf")
				if err := os.WriteFile(file, []byte(write(t, units, all()...)), 0o644); err != nil {
					t.Fatal(err)
				}
				out, err := exec.Command(reader.command[0], append(reader.command[1:], file)...).Output()
				if err != nil {
					t.Fatalf("%s: %v", reader.name, err)
				}
				var got told
				if err := json.Unmarshal(out, &got); err != nil {
					t.Fatalf("%s: %v\n%s", reader.name, err, out)
				}
				understood(t, units, got)
			}
		})
	}
}

// all is the sample and a sawn string of 14 notches on its slope, whose corners
// are at no round numbers.
func all() []dxf.Part {
	const rise, run, n = 190.5, 254.0, 14
	along := math.Atan2(rise, run)
	var p []geom.Point
	for k := range n {
		p = append(p, geom.Pt(float64(k)*run, float64(k)*rise), geom.Pt(float64(k)*run, float64(k+1)*rise))
	}
	p = append(p, geom.Pt(n*run, n*rise), geom.Pt(n*run, n*rise-300), geom.Pt(300, 0))
	d := &drawing.Drawing{Name: "sawn"}
	d.Add(drawing.Path{Layer: drawing.Cut, Path: geom.Closed(p...).Turned(-along)})
	return append(sample(), dxf.Part{Drawing: d, Layers: dxf.Usual})
}

// understood holds what a program read against what was drawn: it is within a
// micrometre of it.
func understood(t *testing.T, units measure.Units, got told) {
	t.Helper()
	mm, unit := 1.0, 4
	if units == measure.Imperial {
		mm, unit = 25.4, 1
	}
	if len(got.Mistakes) > 0 || got.Units != unit || got.Release != "" && got.Release != "AC1009" {
		t.Errorf("release %s, units %d, mistakes %v", got.Release, got.Units, got.Mistakes)
	}
	for _, l := range []string{"OUTLINE", "HOUSING", "STOP", "MARK", "TEXT"} {
		found := false
		for _, have := range got.Layers {
			found = found || have == l
		}
		if !found {
			t.Errorf("no layer %s in %v", l, got.Layers)
		}
	}
	var want []toldEntity
	for _, part := range all() {
		want = append(want, meant(part)...)
	}
	// Back to millimetres, and the drawing of dimensions aside, which are TEXT.
	var have []toldEntity
	for _, e := range got.Entities {
		if e.Layer == "TEXT" && e.Kind == "LINE" {
			continue
		}
		for i := range e.Vertices {
			e.Vertices[i][0] *= mm
			e.Vertices[i][1] *= mm
		}
		if e.Centre != nil {
			e.Centre[0] *= mm
			e.Centre[1] *= mm
		}
		e.Radius, e.Height = e.Radius*mm, e.Height*mm
		have = append(have, e)
	}
	if diff := cmp.Diff(want, have, cmpopts.EquateApprox(0, 0.001), cmpopts.EquateEmpty()); diff != "" {
		t.Errorf("(-drawn +read):\n%s", diff)
	}
}

// meant is what a part of the sample is to be read as, worked out from the
// drawing, not from the file.
func meant(part dxf.Part) []toldEntity {
	var out []toldEntity
	for _, it := range part.Drawing.Resolve(1) {
		switch it := it.(type) {
		case drawing.Text:
			text := it.Text
			if it.Layer == drawing.Note {
				text = `left string, 7 3/8" at 35.5 deg - Angstrom`
			}
			out = append(out, toldEntity{Kind: "TEXT", Layer: "TEXT", Text: text, Height: it.Height})
		case drawing.Path:
			layer := string(part.Layers[it.Layer])
			e := toldEntity{Layer: layer, Closed: it.Closed && len(it.Edges) > 1}
			one := it.Edges[0]
			switch {
			case layer == "" || layer == "TEXT":
				continue
			case len(it.Edges) > 1:
				e.Kind = "POLYLINE"
				for _, edge := range it.Edges {
					// The tangent of a quarter of the arc is its height over half its
					// chord.
					middle, bulge := edge.At(0.5), 0.0
					if edge.IsArc() {
						dx, dy := edge.To.X-edge.From.X, edge.To.Y-edge.From.Y
						chord := math.Hypot(dx, dy)
						bulge = 2 * ((middle.X-edge.From.X)*dy - (middle.Y-edge.From.Y)*dx) / chord / chord
					}
					e.Vertices = append(e.Vertices, [3]float64{edge.From.X, edge.From.Y, bulge})
				}
			case !one.IsArc():
				e.Kind = "LINE"
				e.Vertices = [][3]float64{{one.From.X, one.From.Y}, {one.To.X, one.To.Y}}
			default:
				e.Kind, e.Centre, e.Radius = "CIRCLE", &[2]float64{one.Centre.X, one.Centre.Y}, one.Radius
				if math.Abs(one.Sweep) < 6 {
					e.Kind, e.From, e.To = "ARC", 120, 180
				}
			}
			out = append(out, e)
		}
	}
	return out
}
