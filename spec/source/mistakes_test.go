package source_test

import (
	"errors"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"stepoff/spec/source"
)

func TestAMistakePrintsItsLineAndACaret(t *testing.T) {
	long := strings.Repeat("a", 150) + "X" + strings.Repeat("b", 150)
	for _, c := range []struct {
		name, text string
		at         source.Pos
		want       string
	}{
		{"plain", "a: 1\nbc: x\n", source.Pos{Line: 2, Column: 5}, "f:2:5: no\nbc: x\n    ^"},
		{"tabs stay tabs", "\ta:\tx\n", source.Pos{Line: 1, Column: 5}, "f:1:5: no\n\ta:\tx\n\t  \t^"},
		{"characters, not bytes", "é: ½x\n", source.Pos{Line: 1, Column: 5}, "f:1:5: no\né: ½x\n    ^"},
		{"past the end of the line", "ab\n", source.Pos{Line: 1, Column: 9}, "f:1:9: no\nab\n  ^"},
		{"past the end of the file", "ab\n", source.Pos{Line: 7, Column: 1}, "f:7:1: no"},
		{"on an empty line", "a: 1\n\nb: 2\n", source.Pos{Line: 2, Column: 1}, "f:2:1: no"},
		{"CR LF", "a: 1\r\nb: 2\r\n", source.Pos{Line: 2, Column: 4}, "f:2:4: no\nb: 2\n   ^"},
		{"CR alone", "a: 1\rb: 2", source.Pos{Line: 2, Column: 4}, "f:2:4: no\nb: 2\n   ^"},
		{"byte order mark", "\ufeffa: 1\n", source.Pos{Line: 1, Column: 4}, "f:1:4: no\na: 1\n   ^"},
		{"nothing a terminal acts on", "a: \x1b[31mx\xff\n", source.Pos{Line: 1, Column: 1}, "f:1:1: no\na: \ufffd[31mx\ufffd\n^"},
		{"long lines are cut", long, source.Pos{Line: 1, Column: 151}, "f:1:151: no\n..." + strings.Repeat("a", 50) + "X" + strings.Repeat("b", 49) + "\n" + strings.Repeat(" ", 53) + "^"},
		{"at their end", long, source.Pos{Line: 1, Column: 301}, "f:1:301: no\n..." + strings.Repeat("b", 100) + "\n" + strings.Repeat(" ", 102) + "^"},
		{"at their beginning", long, source.Pos{Line: 1, Column: 1}, "f:1:1: no\n" + strings.Repeat("a", 100) + "\n^"},
	} {
		m := source.Mistake{File: &source.File{Name: "f", Text: []byte(c.text)}, At: c.at, Message: "no"}
		if diff := cmp.Diff(c.want, m.Error()); diff != "" {
			t.Errorf("%s (-want +got):\n%s", c.name, diff)
		}
	}
}

func TestMistakesComeInReadingOrderEachOnce(t *testing.T) {
	var none source.Mistakes
	if none.Err() != nil {
		t.Error("no mistakes are an error")
	}
	a, b := &source.File{Name: "a"}, &source.File{Name: "b"}
	var m source.Mistakes
	m.Add(b, source.Pos{Line: 1, Column: 1}, "4")
	m.Add(a, source.Pos{Line: 2, Column: 2}, "3")
	m.Add(a, source.Pos{Line: 1, Column: 9}, "1")
	m.Add(a, source.Pos{Line: 2, Column: 1}, "%d", 2)
	m.Add(a, source.Pos{Line: 1, Column: 9}, "1")
	err := m.Err()
	if diff := cmp.Diff("a:1:9: 1\na:2:1: 2\na:2:2: 3\nb:1:1: 4", err.Error()); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
	var mistakes source.Mistakes
	if !errors.As(err, &mistakes) || len(mistakes) != 4 {
		t.Errorf("the error is %d mistakes, want 4", len(mistakes))
	}
}

func TestVeryManyMistakesAreCounted(t *testing.T) {
	f := &source.File{Name: "f"}
	var m source.Mistakes
	for i := range 250 {
		m.Add(f, source.Pos{Line: i + 1, Column: 1}, "no")
	}
	said := m.Err().Error()
	if lines := strings.Split(said, "\n"); len(lines) != 101 || lines[100] != "and 150 mistakes more" {
		t.Errorf("%d lines, the last %q", len(lines), lines[len(lines)-1])
	}
}

func TestPos(t *testing.T) {
	f := &source.File{Text: []byte("\ufeffaé\r\nb\rc\n\nd")}
	for offset, want := range map[int]string{3: "1:1", 4: "1:2", 6: "1:3", 8: "2:1", 10: "3:1", 12: "4:1", 13: "5:1", 14: "5:2"} {
		if got := f.Pos(offset).String(); got != want {
			t.Errorf("byte %d is at %s, want %s", offset, got, want)
		}
	}
}
