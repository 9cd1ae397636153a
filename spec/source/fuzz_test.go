package source_test

import (
	"strings"
	"testing"

	"stepoff/spec/source"
)

// Whatever the bytes, reading them as YAML and walking what comes of it ends,
// never panics, and every mistake has a place in the text.
func FuzzYAML(f *testing.F) {
	for _, text := range []string{
		"levels: {total_rise: 8' 9\", x: [1, {y: 2}]}\n", "a: &a [*a]\n", "a: 1\n<<: {b: 2}\n", "? [k]\n: v\n", "- 1\n- - 2\n",
		"a: \"6\nb", "\ufeffa: 1\r\nb:\rc: \t|\n", "a: !!binary x\n", "%TAG ! x\n---\na\n", "a: 'x'y", "{a: b: c", "a\n---\nb", "[",
	} {
		f.Add([]byte(text))
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		m := &source.Mistakes{}
		file := &source.File{Name: "f", Text: text}
		root := file.YAML(m)
		if root == nil && len(*m) == 0 {
			t.Fatal("nothing was read and nothing said")
		}
		if root != nil {
			root.Places()
			walk(root)
		}
		lines := strings.Count(strings.NewReplacer("\r\n", "\n", "\r", "\n").Replace(string(text)), "\n") + 1
		for _, mistake := range *m {
			if mistake.At.Line < 1 || mistake.At.Line > lines || mistake.At.Column < 1 {
				t.Errorf("%q: the mistake at %s is not in a text of %d lines: %s", text, mistake.At, lines, mistake.Message)
			}
		}
		if err := m.Err(); err != nil && err.Error() == "" {
			t.Error("mistakes that say nothing")
		}
	})
}

// walk reads every value as everything it may be.
func walk(n *source.Node) {
	n.Text()
	if items, ok := n.List(); ok {
		for _, item := range items {
			walk(item)
		}
	}
	if m, ok := n.Open(); ok {
		for _, key := range m.Keys() {
			if value := m.Get(key); value != nil {
				walk(value)
			}
		}
	}
	n.Mapping([]string{"levels", "a"}, nil)
}
