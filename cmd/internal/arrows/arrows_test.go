// Package arrows holds the walls of the house: which package may import which.
// Data flows one way, file to job to stairway to drawing to paper, and imports
// run the other way only.
package arrows

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os/exec"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

const module = "stepoff/"

// leaves are what the packages that take plain values may import.
var leaves = []string{"spec/measure", "spec/rules", "layout/geom"}

// may lists, for every package, which of the module's own packages it may
// import; a name that ends in /... stands for a package and all below it. Tests
// may import more: the compiler keeps them out of circles.
var may = map[string][]string{
	"spec/measure": {},
	"spec/source":  {"spec/measure"},
	"spec/rules":   {"spec/measure", "spec/source"},
	"spec/lumber":  {"spec/measure", "spec/source"},
	"spec":         {"spec/..."},

	// No stairs in geom and drawing; no job in what takes plain values.
	"layout/geom":        {"spec/measure"},
	"layout/drawing":     {"spec/measure", "layout/geom"},
	"layout/drawing/svg": {"spec/measure", "layout/geom", "layout/drawing"},
	"layout/drawing/dxf": {"spec/measure", "layout/geom", "layout/drawing"},
	"layout/stringer":    leaves,
	"layout/turn":        leaves,
	"layout/strength":    leaves,
	"layout/stock":       leaves,

	"layout":        {"spec/...", "layout/geom", "layout/stringer", "layout/turn", "layout/strength", "layout/stock"},
	"layout/choose": above,
	"layout/check":  above,
	"layout/lesson": above,
	"layout/report": above,
	"layout/views":  {"spec/...", "layout/..."},

	// No stairs on paper: only packet knows what a set holds.
	"pdfout":         {"spec/measure", "layout/geom", "layout/drawing", "pdfout/tile"},
	"pdfout/tile":    {"spec/measure", "layout/geom", "layout/drawing"},
	"pdfout/pdftest": {"spec/measure", "layout/geom"},
	"pdfout/packet":  {"spec/...", "layout/...", "pdfout", "pdfout/tile"},

	"cmd/stepoff":         {"spec/...", "layout/...", "pdfout", "pdfout/packet", "cmd/internal/batch"},
	"cmd/internal/batch":  {},
	"cmd/internal/arrows": {},
	"examples":            {},
}

// above are the packages that judge, choose, teach and print a stairway.
var above = []string{
	"spec/...", "layout", "layout/geom", "layout/stringer", "layout/turn", "layout/strength", "layout/stock",
	"layout/choose", "layout/check", "layout/lesson",
}

// imports is what `go list` tells of a package.
type imports struct {
	ImportPath string
	Imports    []string
}

// TestArrows holds the import graph against the table, and the table against
// the packages there are.
func TestArrows(t *testing.T) {
	packages := list(t)
	if len(packages) == 0 {
		t.Fatal("go list names no package")
	}
	for _, wrong := range against(may, packages) {
		t.Error(wrong)
	}
}

// TestAgainst shows that the check can fail.
func TestAgainst(t *testing.T) {
	got := against(may, []imports{
		{"stepoff/layout/geom", []string{"math", "stepoff/spec/measure", "stepoff/layout"}},
		{"stepoff/layout/views", []string{"stepoff/layout/drawing/svg", "stepoff/spec", "stepoff/pdfout"}},
		{"stepoff/pdfout", []string{"stepoff/spec"}},
		{"stepoff/specious", nil},
	})
	want := []string{
		"layout/geom imports layout: the arrow runs back",
		"layout/views imports pdfout: the arrow runs back",
		"pdfout imports spec: the arrow runs back",
		"specious has no row in the table: say what it may import",
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("want -, got +:\n%s", diff)
	}
}

// against says which imports the table does not allow, and which packages it
// does not know.
func against(table map[string][]string, packages []imports) (wrong []string) {
	for _, p := range packages {
		name := strings.TrimPrefix(p.ImportPath, module)
		allowed, known := table[name]
		if !known {
			wrong = append(wrong, name+" has no row in the table: say what it may import")
		}
		for _, imported := range p.Imports {
			other, ours := strings.CutPrefix(imported, module)
			if ours && known && !slices.ContainsFunc(allowed, func(pattern string) bool { return matches(pattern, other) }) {
				wrong = append(wrong, fmt.Sprintf("%s imports %s: the arrow runs back", name, other))
			}
		}
	}
	return wrong
}

func matches(pattern, name string) bool {
	folder, below := strings.CutSuffix(pattern, "/...")
	return name == folder || below && strings.HasPrefix(name, folder+"/")
}

func list(t *testing.T) (packages []imports) {
	t.Helper()
	command := exec.Command("go", "list", "-e", "-json=ImportPath,Imports", "stepoff/...")
	out, err := command.Output()
	if err != nil {
		t.Fatalf("go list: %v", err)
	}
	for d := json.NewDecoder(strings.NewReader(string(out))); ; {
		var p imports
		switch err := d.Decode(&p); {
		case errors.Is(err, io.EOF):
			return packages
		case err != nil:
			t.Fatal(err)
		}
		packages = append(packages, p)
	}
}
