package source_test

import (
	"fmt"
	"strings"
	"testing"

	"stepoff/spec/source"
)

// read opens a text and reads it as YAML.
func read(text string) (*source.Node, source.Mistakes) {
	var m source.Mistakes
	f := &source.File{Name: "job.yaml", Text: []byte(text)}
	return f.YAML(&m), m
}

// What cannot be read as YAML is one mistake, where one would look for it, and
// in words that say what to do.
func TestBrokenYAML(t *testing.T) {
	for _, c := range []struct{ text, at, says string }{
		{"", "1:1", "empty"},
		{"# only a comment\n", "1:1", "empty"},
		{"---\n...\n", "1:1", "empty"},
		{"~\n", "1:1", "empty"},
		{"a: 1\n---\nb: 2\n", "2:1", "second document"},
		{"a: \"6\nb: 2\n", "1:4", "never closed"},
		{"a: 1\nb: '6\"\n", "2:4", "never closed"},
		{"a: \"6\"\"\n", "1:7", "never closed"},
		{"a: '6'9\n", "1:7", "closing quote"},
		{"a: b: c\n", "1:5", "a colon does not fit"},
		{"a: x\n  b: 1\n", "2:4", "a colon does not fit"},
		{"a:\n\tb: 1\n", "2:1", "tab"},
		{"a: %x\n", "1:4", "cannot begin with %"},
		{"a: @x\n", "1:4", "cannot begin with @"},
		{"a: `x`\n", "1:4", "cannot begin with `"},
		{"a: [1, 2\nb: 2\n", "1:4", "list is not closed"},
		{"a: {b: 2\nc: 2\n", "1:4", "mapping is not closed"},
		{"a: 1\n   - b\n  c: 2\n", "3:4", "a colon does not fit"},
		{"a:\n  b: 1\n c: 2\n", "3:2", "does not fit the lines above"},
		{"a:\n  - 1\n  b: 2\n", "3:3", "does not fit the list above"},
		{"run:10\nrisers: 14\n", "2:7", "a colon does not fit"},
		{"risers: 14\nrun:10\n", "2:1", "a space belongs after the colon: run: 10"},
		{"risers: 14\nrun\n", "2:1", "has no key"},
		{"a: *x\n", "1:4", "cannot begin with *"},
		{"a: \"\\q\"\n", "1:5", "backslash"},
		{"%YAML 1.2\n---\na: 1\n", "1:1", "remove the %YAML line"},
		{"a: " + strings.Repeat("[", 10_001), "1:10004", "too deep"},
		{"a: " + strings.Repeat("[", 40) + strings.Repeat("]", 40), "1:35", "more than 32 deep"},
		{"a: \x01b\nc: \x7f\n", "1:4", "control character"},
		{"a: b\u2028c\n", "1:5", "control character"},
		{"a: b\u0085c\n", "1:5", "control character"},
		{"a: b\nc: \xff\n", "2:4", "UTF-8"},
		{"\xff\xfea\x00", "1:1", "UTF-8"},
		{strings.Repeat("# long\n", source.MaxSize/7+1), "1:1", "bytes"},
	} {
		name := c.text[:min(len(c.text), 30)]
		node, m := read(c.text)
		if node != nil {
			t.Errorf("%q was read", name)
		}
		if len(m) == 0 || m[0].At.String() != c.at || !strings.Contains(m[0].Message, c.says) {
			t.Errorf("%q: %v; want %s: %s", name, m, c.at, c.says)
		}
	}
}

// What a YAML reader could follow but a person could not is refused, and the
// rest of the file is still read.
func TestAliasesMergesAndTagsAreRefused(t *testing.T) {
	root, m := read("a: &x {b: 1}\nc: *x\nd: {<<: *x}\ne: !own 5\nf: !!str 5\n? [k]\n: 1\ng: \"tab\\tin\"\nh: |\n  two\n  lines\nwrong: 1\n")
	if root == nil {
		t.Fatal(m)
	}
	mapping, ok := root.Mapping([]string{"a", "c", "d", "e", "f", "g", "h"}, nil)
	if !ok {
		t.Fatal(m)
	}
	for _, key := range []string{"c", "e", "f", "g", "h"} {
		if _, ok := mapping.Get(key).Text(); ok {
			t.Errorf("%s was read", key)
		}
	}
	d, ok := mapping.Get("d").Mapping(nil, nil)
	if !ok || len(d.Keys()) != 0 {
		t.Error("the merge was read")
	}
	compare(t, m, // the mistakes collected so far, in root's list
		"2:4 aliases (*x)", "3:5 merges (<<)", "4:4 tags (!own)", "5:4 tags (!!str)", "6:3 a key is one word, not a list",
		"8:4 a value is one line", "9:4 a value is one line")
}

// compare holds mistakes against "line:column the words it begins with".
func compare(t *testing.T, m source.Mistakes, want ...string) {
	t.Helper()
	for i := range max(len(m), len(want)) {
		got, wanted := "nothing", "nothing"
		if i < len(m) {
			got = fmt.Sprintf("%s %s", m[i].At, m[i].Message)
		}
		if i < len(want) {
			wanted = want[i]
		}
		if !strings.HasPrefix(got, wanted) {
			t.Errorf("mistake %d is %s; want %s", i+1, got, wanted)
		}
	}
}
