package pdfout_test

import (
	"bytes"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"stepoff/pdfout/pdftest"
	"stepoff/spec/measure"
)

var update = flag.Bool("update", false, "rewrite the golden files")

// pictures are the pages kept as small pictures, in letters.
var pictures = []struct {
	name string
	page int // from 1
}{
	{"cover", 1},       // text, a table, the map, rulers
	{"sheet-a1", 2},    // the board's lower end: neighbours to the right and below
	{"sheet-d1", 5},    // a sheet in the middle
	{"calibration", 0}, // the last page
}

const pictureFolder = "testdata/pictures"

// How dark a spot is, from paper to ink, and what a spot and the whole picture
// may differ by: renderers do not agree on the edge of a line.
const (
	shades     = " .:-=+*#%@"
	sameShade  = 3
	sameSpots  = 0.02
	resolution = 25 // dots an inch
	spotWide   = 2  // dots a spot
	spotHigh   = 4
)

// TestPictures renders pages and compares them, spot by spot, with pictures
// that were looked at. On a difference both are printed.
func TestPictures(t *testing.T) {
	b := write(t, set(t, letterPaper, measure.Imperial))
	pages := len(pdftest.MustRead(t, b).Pages)
	want := map[string]bool{}
	for _, p := range pictures {
		path := filepath.Join(pictureFolder, p.name+".txt")
		want[path] = true
		page := p.page
		if page == 0 {
			page = pages
		}
		got := picture(t, b, page)
		if *update {
			if err := os.MkdirAll(pictureFolder, 0o755); err != nil {
				t.Fatal(err)
			}
			if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
				t.Fatal(err)
			}
			continue
		}
		golden, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if off := differs(string(golden), got); off > sameSpots {
			t.Errorf("%s: %.1f %% of the spots differ (-want +got):\n%s", p.name, 100*off, cmp.Diff(strings.Split(string(golden), "\n"), strings.Split(got, "\n")))
		}
	}
	found, err := filepath.Glob(filepath.Join(pictureFolder, "*"))
	if err != nil {
		t.Fatal(err)
	}
	for _, path := range found {
		if !want[path] {
			t.Errorf("%s is compared with nothing", path)
		}
	}
}

// picture renders a page as lines of shades.
func picture(t *testing.T, pdf []byte, page int) string {
	t.Helper()
	n := fmt.Sprint(page)
	raw := pdftest.Convert(t, pdf, "pdftoppm", "-gray", "-r", fmt.Sprint(resolution), "-f", n, "-l", n)
	var width, height, most int
	if _, err := fmt.Sscanf(string(raw[:min(len(raw), 40)]), "P5\n%d %d\n%d\n", &width, &height, &most); err != nil {
		t.Fatalf("pdftoppm's picture: %v", err)
	}
	dots := raw[len(raw)-width*height:]
	var out bytes.Buffer
	for y := 0; y+spotHigh <= height; y += spotHigh {
		line := make([]byte, 0, width/spotWide)
		for x := 0; x+spotWide <= width; x += spotWide {
			sum := 0
			for dy := range spotHigh {
				for dx := range spotWide {
					sum += most - int(dots[(y+dy)*width+x+dx])
				}
			}
			line = append(line, shades[sum*(len(shades)-1)/(most*spotWide*spotHigh)])
		}
		out.Write(bytes.TrimRight(line, " "))
		out.WriteByte('\n')
	}
	return out.String()
}

// differs is the share of spots, of those with any ink, that are not nearly
// the same.
func differs(a, b string) float64 {
	la, lb := strings.Split(a, "\n"), strings.Split(b, "\n")
	off, all := 0, 0
	for y := range max(len(la), len(lb)) {
		for x := range resolution * 9 / spotWide {
			sa, sb := shade(la, x, y), shade(lb, x, y)
			if sa > 0 || sb > 0 {
				all++
			}
			if sa-sb > sameShade || sb-sa > sameShade {
				off++
			}
		}
	}
	return float64(off) / float64(max(all, 1))
}

func shade(lines []string, x, y int) int {
	if y >= len(lines) || x >= len(lines[y]) {
		return 0
	}
	return strings.IndexByte(shades, lines[y][x])
}
