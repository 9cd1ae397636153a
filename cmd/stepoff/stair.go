package main

import (
	"errors"
	"path/filepath"
	"strings"

	"github.com/urfave/cli/v2"

	"stepoff/layout"
	"stepoff/layout/check"
	"stepoff/layout/choose"
	"stepoff/spec"
	"stepoff/spec/measure"
	"stepoff/spec/rules"
	"stepoff/spec/source"
)

// A stair is a job read, its open choices made, laid out and held against its
// code.
type stair struct {
	*layout.Stairway
	code     *rules.Code
	style    measure.Style
	findings []check.Finding
}

func readStair(std streams, name string, style style) (*stair, error) {
	job, err := load(std, name)
	if err != nil {
		return nil, err
	}
	return layStair(std, name, job, style.of(job))
}

func layStair(std streams, name string, job *spec.Job, style measure.Style) (*stair, error) {
	code, err := codeOf(std, name, job)
	if err != nil {
		return nil, err
	}
	if job, err = choose.Fill(job, code); err != nil {
		return nil, err
	}
	job = choose.Counts(job, code)
	stairway, err := layout.Compute(job)
	if err != nil {
		return nil, err
	}
	return &stair{stairway, code, style, check.Stairway(stairway, code, style)}, nil
}

// codeOf finds the job's code. A file is looked for beside the job.
func codeOf(std streams, jobFile string, job *spec.Job) (*rules.Code, error) {
	name := job.Code.Name
	if rules.IsFile(name) && !filepath.IsAbs(name) && jobFile != "-" {
		name = filepath.Join(filepath.Dir(jobFile), name)
	}
	code, err := codeNamed(std, name)
	if unknown := (unknownCode("")); errors.As(err, &unknown) {
		return nil, source.Mistakes{job.Mistake("code", "code: %s", unknown.Error())}
	}
	return code, err
}

// unknownCode is a name that no code has.
type unknownCode string

func (u unknownCode) Error() string { return rules.Unknown(string(u)) }

// codeNamed returns a code that is built in, or reads a file.
func codeNamed(std streams, name string) (*rules.Code, error) {
	if !rules.IsFile(name) {
		code, ok := rules.Lookup(name)
		if !ok {
			return nil, unknownCode(name)
		}
		return code, nil
	}
	text, name, err := read(std, name)
	if err != nil {
		return nil, cannotRead(name, err)
	}
	return rules.Read(name, text)
}

func acceptOption() cli.Flag {
	return &cli.BoolFlag{Name: "accept-failures", Usage: "print a stair that breaks its code, every sheet stamped with what it fails", DisableDefaultText: true}
}

// accepted refuses a stair that breaks a limit of its code, unless that was
// accepted: then it returns what every sheet is stamped with.
func (s *stair) accepted(l *line) (stamp []string, err error) {
	var fails, reasons []string
	for _, f := range check.Of(s.findings, check.Fail) {
		fails = append(fails, f.ID+" ("+f.Section+")")
		reasons = append(reasons, f.ID+": "+f.Text)
	}
	switch {
	case len(fails) == 0:
		return nil, nil
	case l.Bool("accept-failures"):
		return []string{"FAILS " + s.code.Name + ": " + strings.Join(fails, ", ")}, nil
	}
	return nil, checkFails("the stair breaks "+s.code.Name+": nothing is printed",
		append(reasons, "--accept-failures prints it all the same, every sheet stamped with what it fails")...)
}
