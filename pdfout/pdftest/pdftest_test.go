package pdftest_test

import (
	"bytes"
	"fmt"
	"math"
	"testing"

	"stepoff/layout/geom"
	"stepoff/pdfout/pdftest"
)

// file is a PDF file of one page written by hand: 720 x 1440 pt, 254 x 508 mm.
func file(page, contents string) []byte {
	var b bytes.Buffer
	b.WriteString("%PDF-1.7\n")
	var offsets []int
	for i, body := range []string{
		"<</Type /Catalog /Pages 2 0 R>>",
		"<</Type /Pages /Kids [3 0 R] /Count 1>>",
		"<</Type /Page /Parent 2 0 R /Contents 4 0 R " + page + ">>",
		fmt.Sprintf("<</Length %d>>\nstream\n%s\nendstream", len(contents), contents),
	} {
		offsets = append(offsets, b.Len())
		fmt.Fprintf(&b, "%d 0 obj\n%s\nendobj\n", i+1, body)
	}
	table := b.Len()
	fmt.Fprintf(&b, "xref\n0 %d\n0000000000 65535 f \n", len(offsets)+1)
	for _, at := range offsets {
		fmt.Fprintf(&b, "%010d 00000 n \n", at)
	}
	fmt.Fprintf(&b, "trailer\n<</Size %d /Root 1 0 R>>\nstartxref\n%d\n%%%%EOF\n", len(offsets)+1, table)
	return b.Bytes()
}

const box = "/MediaBox [0 0 720 1440]"

func near(a, b float64) bool { return math.Abs(a-b) < 1e-9 }

// TestRead: lines and words of a page written by hand, in millimetres.
func TestRead(t *testing.T) {
	f := pdftest.MustRead(t, file(box, `/Artifact BMC /Cut BMC 2 w [12 3] 0 d 72 144 m 144 144 l S EMC EMC
q 2 0 0 2 72 72 cm 0 0 m 0 36 l h S Q
0 0 m 0 72 72 72 72 0 c f
BT /F 20.48 Tf 36 72 Td (\000T\000o\000\() Tj ET`))
	p := f.Pages[0]
	if !near(p.Width, 254) || !near(p.Height, 508) || len(p.Paths) != 3 {
		t.Fatalf("%g x %g mm, %d paths", p.Width, p.Height, len(p.Paths))
	}
	cut := p.Paths[0]
	if cut.Layer != "Cut" || len(cut.Tags) != 2 || !cut.Stroked || !near(cut.Pieces[0].From.X, 25.4) || !near(cut.Pieces[0].From.Y, 50.8) || !near(cut.Pieces[0].To.X, 50.8) {
		t.Errorf("%+v", cut)
	}
	if !near(cut.Width, 2*25.4/72) || len(cut.Dash) != 2 {
		t.Errorf("width %g, dash %v", cut.Width, cut.Dash)
	}
	if q := p.Paths[1].Pieces; len(q) != 2 || !near(q[0].To.Y, 50.8) || q[1].To != q[0].From {
		t.Errorf("under a transformation, closed: %+v", q)
	}
	if at := p.Paths[2].Pieces[0].At(0.5); !near(at.Y, 0.75*25.4) || !p.Paths[2].Filled {
		t.Errorf("the curve's middle is at %v", at)
	}
	// Go Regular: capitals 1480 high on an em of 2048.
	if w := p.Writing[0]; w.Text != "To(" || !near(w.Runs[0].Height, 14.8*25.4/72) {
		t.Errorf("%+v", w)
	}
}

// TestRefuses: what a test could not judge is an error, not passed over.
func TestRefuses(t *testing.T) {
	for name, b := range map[string][]byte{
		"an operator it does not know": file(box, "0 0 10 10 re f"),
		"q without Q":                  file(box, "q"),
		"Q without q":                  file(box, "Q"),
		"a mark left open":             file(box, "/Cut BMC"),
		"a mark closed twice":          file(box, "EMC"),
		"too few numbers":              file(box, "1 m"),
		"words outside a text":         file(box, `(\000a) Tj`),
		"a page of no size":            file("", ""),
		"a page that is turned":        file(box+" /Rotate 90", ""),
		"a unit of its own":            file(box+" /UserUnit 2", ""),
		"a key twice":                  file(box+" "+box, ""),
		"half a file":                  file(box, "0 0 m 1 1 l S")[:200],
		"no file":                      nil,
	} {
		if _, err := pdftest.Read(b); err == nil {
			t.Errorf("%s is passed over", name)
		}
	}
}

// TestMissingAndExtra: a line that is short, off or not wanted is found.
func TestMissingAndExtra(t *testing.T) {
	want := []geom.Edge{geom.Line(geom.Pt(0, 0), geom.Pt(100, 0)), geom.Arc(geom.Pt(0, 0), 50, 0, 1)}
	path := func(pts ...geom.Point) pdftest.Path {
		p := pdftest.Path{Layer: "Cut", Stroked: true}
		for i := range len(pts) - 1 {
			p.Pieces = append(p.Pieces, pdftest.Piece{From: pts[i], To: pts[i+1]})
		}
		return p
	}
	arc := pdftest.Path{Layer: "Cut", Stroked: true}
	for _, c := range want[1].Cubics() {
		arc.Pieces = append(arc.Pieces, pdftest.Piece{From: c.From, C1: c.C1, C2: c.C2, To: c.To, Curve: true})
	}
	line := path(geom.Pt(0, 0), geom.Pt(40, 0), geom.Pt(100, 0))
	if err := pdftest.Missing(want, []pdftest.Path{line, arc}, 0.01); err != nil {
		t.Error(err)
	}
	if err := pdftest.Extra([]pdftest.Path{line, arc}, want, 0.01); err != nil {
		t.Error(err)
	}
	for name, got := range map[string][]pdftest.Path{
		"no arc":      {line},
		"short":       {path(geom.Pt(0, 0), geom.Pt(99.98, 0)), arc},
		"off":         {path(geom.Pt(0, 0.011), geom.Pt(100, 0.011)), arc},
		"a gap":       {path(geom.Pt(0, 0), geom.Pt(40, 0)), path(geom.Pt(44, 0), geom.Pt(100, 0)), arc},
		"a chord":     {line, path(want[1].From, want[1].To)},
		"nothing":     nil,
		"long by one": {path(geom.Pt(0, 0), geom.Pt(101, 0)), arc},
	} {
		missing, extra := pdftest.Missing(want, got, 0.01), pdftest.Extra(got, want, 0.01)
		if missing == nil && extra == nil {
			t.Errorf("%s: nothing is found", name)
		}
	}
}

// TestUnplace undoes a quarter turn to the left, the margin and the factors:
// by hand, 10 mm from the foot and 20 from the right side of a page 254 wide.
func TestUnplace(t *testing.T) {
	f := pdftest.MustRead(t, file(box, fmt.Sprintf("/Cut BMC %.6f %.6f m 144 144 l S EMC", (254-20)*72/25.4, 10*72/25.4)))
	at := f.Pages[0].Unplace(pdftest.Laid{Window: geom.Box{Min: geom.Pt(1000, -300)}, Turned: true, Margin: 5, ScaleX: 0.98, ScaleY: 1.01})[0].Pieces[0].From
	if want := geom.Pt(1000+5*1.01, -300+15*0.98); math.Hypot(at.X-want.X, at.Y-want.Y) > 1e-5 {
		t.Errorf("at %v, want %v", at, want)
	}
}

// outcome keeps what is said to a test.
type outcome struct {
	testing.TB
	skipped, failed bool
}

func (o *outcome) Helper()               {}
func (o *outcome) Skipf(string, ...any)  { o.skipped = true }
func (o *outcome) Fatalf(string, ...any) { o.failed = true }

// TestTool: a missing program skips a test, and fails it where it must not.
func TestTool(t *testing.T) {
	t.Setenv(pdftest.RequireTools, "")
	var o outcome
	if pdftest.Tool(&o, "no-such-program-anywhere"); !o.skipped || o.failed {
		t.Errorf("without its program the test: %+v", o)
	}
	t.Setenv(pdftest.RequireTools, "1")
	o = outcome{}
	if pdftest.Tool(&o, "no-such-program-anywhere"); !o.failed {
		t.Errorf("without its program, required, the test: %+v", o)
	}
	o = outcome{}
	if path := pdftest.Tool(&o, "go"); path == "" || o.skipped || o.failed {
		t.Errorf("go: %q, %+v", path, o)
	}
}
