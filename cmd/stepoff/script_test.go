package main

import (
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/rogpeppe/go-internal/testscript"
)

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"stepoff": main})
}

// TestScripts runs the command line as people do: testdata/script/*.txtar. Two
// words are added to testscript's own:
//
//	status N stepoff ...   runs a command that must end with status N
//	folder DIR FILE...     DIR must hold exactly these, hidden files too
func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir:                 "testdata/script",
		RequireExplicitExec: true,
		RequireUniqueNames:  true,
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			"status": status,
			"folder": folder,
		},
	})
}

func status(ts *testscript.TestScript, _ bool, args []string) {
	if len(args) < 2 {
		ts.Fatalf("usage: status N command ...")
	}
	want, err := strconv.Atoi(args[0])
	ts.Check(err)
	got := 0
	if err := ts.Exec(args[1], args[2:]...); err != nil {
		var exit *exec.ExitError
		if !errors.As(err, &exit) {
			ts.Check(err)
		}
		got = exit.ExitCode()
	}
	if got != want {
		ts.Fatalf("status is %d, want %d", got, want)
	}
}

func folder(ts *testscript.TestScript, _ bool, args []string) {
	if len(args) < 1 {
		ts.Fatalf("usage: folder DIR FILE...")
	}
	entries, err := os.ReadDir(ts.MkAbs(args[0]))
	ts.Check(err)
	got := []string{}
	for _, entry := range entries {
		if entry.Name() != ".tmp" { // testscript's own
			got = append(got, entry.Name())
		}
	}
	want := append([]string{}, args[1:]...)
	slices.Sort(want)
	if diff := cmp.Diff(want, got); diff != "" {
		ts.Fatalf("%s: want -, got +:\n%s", filepath.Base(args[0]), diff)
	}
}
