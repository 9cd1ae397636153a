package main

// How stepoff speaks when something is wrong:
//
//   - on stderr, never on stdout, and without colour;
//   - a mistake in a file stands with its place, as file:line:col: says it,
//     followed by the line and a caret; everything else starts "stepoff: ";
//   - no capital at the start, no full stop at the end, no Go words;
//   - first what is wrong, then, on a line of its own and indented, what would
//     be right;
//   - everything that is wrong at once, not the first of it.

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"strings"
	"syscall"

	"github.com/urfave/cli/v2"

	"stepoff/spec/source"
)

// The exit statuses other people's scripts rest on.
const (
	statusDone       = 0
	statusReadWrite  = 1 // a file could not be read or written
	statusMistake    = 2 // the command line or the job is wrong
	statusCheckFails = 3 // the stair breaks a limit of the code in force
)

// A failure ends the run with its status. Hints say what would be right, one
// a line.
type failure struct {
	status int
	text   string
	hints  []string
}

func (f *failure) Error() string { return f.text }

// mistake is something wrong on the command line or a job that cannot be.
func mistake(text string, hints ...string) *failure {
	return &failure{status: statusMistake, text: text, hints: hints}
}

// checkFails is a stair that breaks a limit of the code in force.
func checkFails(text string, hints ...string) *failure {
	return &failure{status: statusCheckFails, text: text, hints: hints}
}

// A misuse is everything wrong with one command's options and names; its usage
// is printed after it.
type misuse struct {
	command *cli.Command
	wrong   []*failure
}

func (m *misuse) Error() string { return m.wrong[0].Error() }

// nearest is the hint for a word that is not among the known ones: which one
// was probably meant, or else what there is.
func nearest(word string, known []string, otherwise string) []string {
	if near := source.DidYouMean(word, known); near != "" {
		return []string{strings.TrimPrefix(near, "; ")}
	}
	return []string{otherwise}
}

func cannotRead(name string, err error) *failure {
	return &failure{status: statusReadWrite, text: fmt.Sprintf("cannot read %s: %s", name, plainly(err))}
}

func cannotWrite(name string, err error, hints ...string) *failure {
	return &failure{status: statusReadWrite, text: fmt.Sprintf("cannot write %s: %s", name, plainly(err)), hints: hints}
}

// A reason is an error of reading or writing already in plain words.
type reason string

func (r reason) Error() string { return string(r) }

// plainly says what the operating system refused, without the call and the
// path that Go puts before it.
func plainly(err error) string {
	var r reason
	switch {
	case errors.As(err, &r):
		return string(r)
	case errors.Is(err, fs.ErrNotExist):
		return "no such file or folder"
	case errors.Is(err, fs.ErrPermission):
		return "permission denied"
	case errors.Is(err, syscall.EISDIR):
		return "it is a folder"
	case errors.Is(err, syscall.ENOTDIR):
		return "part of the path is a file, not a folder"
	}
	var number syscall.Errno
	if errors.As(err, &number) {
		return number.Error()
	}
	return err.Error()
}

// tell prints an error, and whatever errors are joined in it, and returns
// the exit status: that of the first.
func tell(w io.Writer, err error) int {
	var (
		placed source.Mistakes
		wrong  *misuse
		failed *failure
	)
	switch joined, isJoined := err.(interface{ Unwrap() []error }); {
	case err == nil:
		return statusDone
	case isJoined:
		status := statusDone
		for _, each := range joined.Unwrap() {
			if s := tell(w, each); status == statusDone {
				status = s
			}
		}
		return status
	case errors.As(err, &placed):
		fmt.Fprintln(w, strings.TrimRight(placed.Error(), "\n"))
		return statusMistake
	case errors.As(err, &wrong):
		for _, each := range wrong.wrong {
			each.print(w)
		}
		fmt.Fprintf(w, "usage: %s\n", usage(wrong.command))
		return statusMistake
	case !errors.As(err, &failed):
		failed = &failure{status: statusReadWrite, text: err.Error()} // nothing the job or the line could help
	}
	failed.print(w)
	return failed.status
}

// print says nothing of a failure without a text: the result has said it all.
func (f *failure) print(w io.Writer) {
	if f.text == "" {
		return
	}
	fmt.Fprintf(w, "stepoff: %s\n", f.text)
	for _, hint := range f.hints {
		fmt.Fprintf(w, "  %s\n", hint)
	}
}
