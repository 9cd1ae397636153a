// Package layouttest lays jobs out for the tests of what comes after the layout,
// as the commands do: what a job leaves open is chosen under its own code.
package layouttest

import (
	"os"

	"stepoff/layout"
	"stepoff/layout/choose"
	"stepoff/spec"
	"stepoff/spec/rules"
)

// TB is what is asked of a test: testing's and rapid's both have it.
type TB interface {
	Helper()
	Fatal(...any)
}

// Example lays out the job in a file.
func Example(t TB, path string) (*layout.Stairway, *rules.Code) {
	t.Helper()
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return Stairway(t, path, string(text))
}

// Stairway lays out a job; its mistakes are told under the name.
func Stairway(t TB, name, text string) (*layout.Stairway, *rules.Code) {
	t.Helper()
	job, err := spec.Load(name, []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	code, ok := rules.Lookup(job.Code.Name)
	if !ok {
		t.Fatal("there is no code ", job.Code.Name)
	}
	if job, err = choose.Fill(job, code); err != nil {
		t.Fatal(err)
	}
	s, err := layout.Compute(job)
	if err != nil {
		t.Fatal(err)
	}
	return s, code
}
