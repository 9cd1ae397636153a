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
	tableOpens   = "<!-- keys: written by go test ./spec -update -->\n"
	tableCloses  = "<!-- end of keys -->\n"
	tableHeading = "| key | what it is | left out |\n|---|---|---|\n"
)

// The README's table says of every key what the loader does.
func TestReadmeTable(t *testing.T) {
	text, err := os.ReadFile(readme)
	if err != nil {
		t.Fatal(err)
	}
	before, rest, ok := strings.Cut(string(text), tableOpens)
	have, after, ok2 := strings.Cut(rest, tableCloses)
	if !ok || !ok2 {
		t.Fatalf("%s has no table between %q and %q", readme, tableOpens, tableCloses)
	}
	want := "\n" + tableHeading
	for _, k := range keys {
		want += readmeRow(k)
	}
	want += "\n"
	if *updateReadme {
		if err := os.WriteFile(readme, []byte(before+tableOpens+want+tableCloses+after), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	if diff := cmp.Diff(strings.Split(have, "\n"), strings.Split(want, "\n")); diff != "" {
		t.Errorf("the README's table differs from the loader's (-README +loader); go test ./spec -update rewrites it:\n%s", diff)
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
