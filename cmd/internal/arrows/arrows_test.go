// Package arrows holds the walls of the house: which package may import which.
// Data flows one way, file to job to stairway to drawing to paper, and imports
// run the other way only.
package arrows

import (
	"errors"
	"fmt"
	"go/build"
	"io/fs"
	"path/filepath"
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
	"layout/geom":           {"spec/measure"},
	"layout/drawing":        {"spec/measure", "layout/geom", "layout/drawing/letter"},
	"layout/drawing/letter": {},
	"layout/drawing/svg":    {"spec/measure", "layout/geom", "layout/drawing", "layout/drawing/letter"},
	"layout/drawing/dxf":    {"spec/measure", "layout/geom", "layout/drawing", "layout/drawing/letter"},
	"layout/stringer":       leaves,
	"layout/turn":           leaves,
	"layout/strength":       leaves,
	"layout/stock":          leaves,

	"layout":                 {"spec/...", "layout/geom", "layout/stringer", "layout/turn", "layout/strength", "layout/stock"},
	"layout/choose":          above,
	"layout/check":           above,
	"layout/asbuilt":         above,
	"layout/lesson":          above,
	"layout/lesson/exercise": above,
	"layout/report":          above,
	"layout/views":           {"spec/...", "layout/..."},
	"layout/layouttest":      {"spec/...", "layout", "layout/choose"},

	// No stairs on paper: only packet knows what a set holds.
	"pdfout":         {"spec/measure", "layout/geom", "layout/drawing", "layout/drawing/letter", "pdfout/tile"},
	"pdfout/tile":    {"spec/measure", "layout/geom", "layout/drawing"},
	"pdfout/pdftest": {"spec/measure", "layout/geom", "layout/drawing/letter"},
	"pdfout/packet":  {"spec/...", "layout/...", "pdfout", "pdfout/tile"},
	"pdfout/booklet": {"spec/...", "layout/...", "pdfout"},
	"pdfout/html":    {"spec/measure", "layout/geom", "layout/drawing", "layout/drawing/svg", "pdfout"},

	"cmd/stepoff":         {"spec/...", "layout/...", "pdfout", "pdfout/packet", "pdfout/booklet", "pdfout/html", "cmd/internal/batch"},
	"cmd/internal/batch":  {},
	"cmd/internal/arrows": {},
	"examples":            {},
}

// above are the packages that judge, choose, teach and print a stairway.
var above = []string{
	"spec/...", "layout", "layout/geom", "layout/stringer", "layout/turn", "layout/strength", "layout/stock",
	"layout/choose", "layout/check", "layout/asbuilt", "layout/lesson",
}

// imports is what a package imports, tests aside. Our own packages go by the
// name of their folder.
type imports struct {
	name    string
	imports []string
}

// TestArrows holds the import graph against the table, and the table against
// the packages there are.
func TestArrows(t *testing.T) {
	packages := list(t)
	if len(packages) == 0 {
		t.Fatal("no package is found")
	}
	for _, wrong := range against(may, packages) {
		t.Error(wrong)
	}
}

// TestAgainst shows that the check can fail.
func TestAgainst(t *testing.T) {
	got := against(may, []imports{
		{"layout/geom", []string{"math", "stepoff/spec/measure", "stepoff/layout"}},
		{"layout/views", []string{"stepoff/layout/drawing/svg", "stepoff/spec", "stepoff/pdfout"}},
		{"pdfout", []string{"stepoff/spec"}},
		{"specious", nil},
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
		allowed, known := table[p.name]
		if !known {
			wrong = append(wrong, p.name+" has no row in the table: say what it may import")
		}
		for _, imported := range p.imports {
			other, ours := strings.CutPrefix(imported, module)
			if ours && known && !slices.ContainsFunc(allowed, func(pattern string) bool { return matches(pattern, other) }) {
				wrong = append(wrong, fmt.Sprintf("%s imports %s: the arrow runs back", p.name, other))
			}
		}
	}
	return wrong
}

func matches(pattern, name string) bool {
	folder, below := strings.CutSuffix(pattern, "/...")
	return name == folder || below && strings.HasPrefix(name, folder+"/")
}

// list reads the imports from the files themselves, which go test sees: a
// result it has kept is then thrown away when one of them changes.
func list(t *testing.T) (packages []imports) {
	t.Helper()
	const root = "../../.."
	err := filepath.WalkDir(root, func(path string, entry fs.DirEntry, err error) error {
		if err != nil || !entry.IsDir() {
			return err
		}
		if name := entry.Name(); path != root && (name == "testdata" || strings.HasPrefix(name, ".") || strings.HasPrefix(name, "_")) {
			return fs.SkipDir
		}
		p, err := build.ImportDir(path, 0)
		if none := (*build.NoGoError)(nil); errors.As(err, &none) {
			return nil
		}
		if err != nil {
			return err
		}
		name, err := filepath.Rel(root, path)
		packages = append(packages, imports{filepath.ToSlash(name), p.Imports})
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return packages
}
