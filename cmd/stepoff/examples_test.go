package main

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

var update = flag.Bool("update", false, "rewrite the golden layouts; look at the difference before keeping it")

const goldenFolder = "testdata/golden"

// TestExamples runs every job a newcomer may begin with, those in examples and
// the shapes that new writes, through every command that takes a job. What
// layout prints is held against testdata/golden, as text and as JSON; a golden
// file that no job writes any more fails.
func TestExamples(t *testing.T) {
	jobs, err := filepath.Glob("../../examples/*.yaml")
	if err != nil || len(jobs) == 0 {
		t.Fatalf("no examples are found: %v", err)
	}
	for _, shape := range shapes {
		jobs = append(jobs, filepath.Join("shapes", shape+".yaml"))
	}
	written := map[string]bool{}
	for _, job := range jobs {
		name := strings.TrimSuffix(filepath.Base(job), ".yaml")
		if filepath.Dir(job) == "shapes" {
			name = "new-" + name // an example may have the same name
		}
		t.Run(name, func(t *testing.T) {
			golden(t, written, name+".txt", result(t, "layout", job))
			golden(t, written, name+".json", result(t, "layout", "--json", job))
			if page := result(t, "lesson", job, "-o", "-"); !strings.HasPrefix(page, "%PDF-") {
				t.Errorf("lesson writes %.20q", page)
			}
			if sheets := result(t, "templates", job, "-o", "-"); !strings.HasPrefix(sheets, "%PDF-") {
				t.Errorf("templates writes %.20q", sheets)
			}
		})
	}
	kept, err := os.ReadDir(goldenFolder)
	if err != nil {
		t.Fatal(err)
	}
	for _, file := range kept {
		if !written[file.Name()] {
			t.Errorf("%s/%s: no job writes this any more; remove it", goldenFolder, file.Name())
		}
	}
}

// result is what a command that must be right writes to standard output; it
// must have nothing to say beside it.
func result(t *testing.T, args ...string) string {
	t.Helper()
	var out, said bytes.Buffer
	status := run(append([]string{"stepoff"}, args...), streams{in: strings.NewReader(""), out: &out, err: &said})
	if status != statusDone || said.Len() > 0 {
		t.Fatalf("%v: status %d\n%s", args, status, said.String())
	}
	return out.String()
}

func golden(t *testing.T, written map[string]bool, name, got string) {
	t.Helper()
	written[name] = true
	file := filepath.Join(goldenFolder, name)
	if *update {
		if err := os.MkdirAll(goldenFolder, 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatalf("%v (go test ./cmd/stepoff -update makes it)", err)
	}
	if diff := cmp.Diff(strings.Split(string(want), "\n"), strings.Split(got, "\n")); diff != "" {
		t.Errorf("%s: want -, got +:\n%s", file, diff)
	}
}
