package spec

import (
	"flag"
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

var updateReadme = flag.Bool("update", false, "rewrite the README's table of the job file's keys")

const (
	readme       = "../README.md"
	tableHeading = "| key | what it is | left out |\n|---|---|---|\n"
)

// The README's tables say of every key what the readers do.
func TestReadmeTables(t *testing.T) {
	for _, table := range []struct {
		opens, closes string
		keys          []Key
	}{
		{"<!-- keys: written by go test ./spec -update -->\n", "<!-- end of keys -->\n", keys},
		{"<!-- as-built keys: written by go test ./spec -update -->\n", "<!-- end of as-built keys -->\n", asBuiltKeys},
	} {
		text, err := os.ReadFile(readme)
		if err != nil {
			t.Fatal(err)
		}
		before, rest, ok := strings.Cut(string(text), table.opens)
		have, after, ok2 := strings.Cut(rest, table.closes)
		if !ok || !ok2 {
			t.Fatalf("%s has no table between %q and %q", readme, table.opens, table.closes)
		}
		want := "\n" + tableHeading
		for _, k := range table.keys {
			want += readmeRow(k)
		}
		want += "\n"
		if *updateReadme {
			if err := os.WriteFile(readme, []byte(before+table.opens+want+table.closes+after), 0o644); err != nil {
				t.Fatal(err)
			}
			continue
		}
		if diff := cmp.Diff(strings.Split(have, "\n"), strings.Split(want, "\n")); diff != "" {
			t.Errorf("the README's table differs from the reader's (-README +reader); go test ./spec -update rewrites it:\n%s", diff)
		}
	}
}

func readmeRow(k Key) string {
	out := k.LeftOut
	switch {
	case k.Default != "":
		out = "`" + k.Default + "`"
		if k.LeftOut != "" {
			out += ", " + k.LeftOut
		}
	case k.required:
		out = "**required**: `" + k.example + "`"
	}
	what := k.Doc
	if len(k.words) == len(pieces()) {
		what += ": `none`, or a nominal size such as `2x4`"
	} else if len(k.words) > 0 {
		what += ": `" + strings.Join(k.words, "` `") + "`"
	}
	return fmt.Sprintf("| `%s` | %s | %s |\n", k.Path, strings.ReplaceAll(what, "|", "\\|"), strings.ReplaceAll(out, "|", "\\|"))
}
