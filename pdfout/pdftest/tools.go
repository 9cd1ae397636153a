package pdftest

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"stepoff/layout/geom"
)

// RequireTools is the environment variable that makes a missing program a
// failure instead of a skipped test.
const RequireTools = "STEPOFF_REQUIRE_TOOLS"

// Tool returns the path of a program a test rests on. Where it is not
// installed the test is skipped, or fails if RequireTools is set.
func Tool(t testing.TB, name string) string {
	t.Helper()
	path, err := exec.LookPath(name)
	if err == nil {
		return path
	}
	if os.Getenv(RequireTools) != "" {
		t.Fatalf("%s is not installed, and %s is set", name, RequireTools)
	}
	t.Skipf("%s is not installed", name)
	return ""
}

// Ask runs a program on the file, its arguments before the file's name, and
// returns what it wrote. A program that is not happy fails the test.
func Ask(t testing.TB, pdf []byte, tool string, args ...string) string {
	t.Helper()
	path := Tool(t, tool)
	file := filepath.Join(t.TempDir(), "test.pdf")
	if err := os.WriteFile(file, pdf, 0o644); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command(path, append(args, file)...).CombinedOutput()
	if err != nil {
		t.Fatalf("%s: %v\n%s", tool, err, out)
	}
	return string(out)
}

// Convert runs a program that makes something else of the file and writes it to
// standard output: pdftoppm a picture. What it says besides fails the test.
func Convert(t testing.TB, pdf []byte, tool string, args ...string) []byte {
	t.Helper()
	path := Tool(t, tool)
	file := filepath.Join(t.TempDir(), "test.pdf")
	if err := os.WriteFile(file, pdf, 0o644); err != nil {
		t.Fatal(err)
	}
	var said bytes.Buffer
	cmd := exec.Command(path, append(args, file)...)
	cmd.Stderr = &said
	out, err := cmd.Output()
	if err != nil || said.Len() > 0 {
		t.Fatalf("%s: %v\n%s", tool, err, &said)
	}
	return out
}

// Trace asks mutool for the places of a file's lines: for each page those of
// every stroked path, in millimetres from its lower left corner.
func Trace(t testing.TB, pdf []byte) [][]geom.Point {
	t.Helper()
	d := xml.NewDecoder(strings.NewReader(Ask(t, pdf, "mutool", "trace")))
	d.Strict = false
	var pages [][]geom.Point
	var ctm [6]float64
	height := 0.0
	stroking := false
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return pages
		}
		if err != nil {
			t.Fatalf("mutool trace: %v", err)
		}
		if end, ok := token.(xml.EndElement); ok && end.Name.Local == "stroke_path" {
			stroking = false
		}
		e, ok := token.(xml.StartElement)
		if !ok {
			continue
		}
		number := func(name string) float64 {
			for _, a := range e.Attr {
				if a.Name.Local == name {
					v, err := strconv.ParseFloat(a.Value, 64)
					if err != nil {
						t.Fatalf("mutool trace: %v", err)
					}
					return v
				}
			}
			t.Fatalf("mutool trace: a %s without %s", e.Name.Local, name)
			return 0
		}
		add := func(x, y string) {
			px, py := number(x), number(y)
			// mutool's y runs down from the top of the page.
			at := geom.Pt((px*ctm[0]+py*ctm[2]+ctm[4])*mmPerPt, (height-(px*ctm[1]+py*ctm[3]+ctm[5]))*mmPerPt)
			pages[len(pages)-1] = append(pages[len(pages)-1], at)
		}
		switch e.Name.Local {
		case "page":
			pages = append(pages, nil)
			for _, a := range e.Attr {
				if a.Name.Local == "mediabox" {
					height, _ = strconv.ParseFloat(strings.Fields(a.Value)[3], 64)
				}
			}
		case "stroke_path":
			stroking = true
			for _, a := range e.Attr {
				if a.Name.Local == "transform" {
					for i, f := range strings.Fields(a.Value) {
						ctm[i], _ = strconv.ParseFloat(f, 64)
					}
				}
			}
		case "moveto", "lineto":
			if stroking {
				add("x", "y")
			}
		case "curveto":
			if stroking {
				add("x1", "y1")
				add("x2", "y2")
				add("x3", "y3")
			}
		}
	}
}
