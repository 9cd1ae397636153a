package source

import (
	"errors"
	"strings"

	"go.yaml.in/yaml/v4"
)

// MaxDepth bounds how deep lists and mappings may stand inside each other. A
// job has six levels; the bound keeps a hostile file from exhausting the stack.
const MaxDepth = 32

// YAML reads the text as one YAML document. What cannot be read at all is one
// mistake, and nil is returned. Anchors' aliases (*), merges (<<) and tags (!)
// are mistakes too: a value stands where it is used, or a place in the file
// would mean two values.
func (f *File) YAML(m *Mistakes) *Node {
	if !f.Readable(m) {
		return nil
	}
	var documents []yaml.Node // by value: pointers come back empty
	if err := yaml.Load(f.Text, &documents, yaml.WithAllDocuments()); err != nil {
		at, message := syntax(f, err)
		m.Add(f, at, "%s", message)
		return nil
	}
	if len(documents) == 0 || len(documents[0].Content) == 0 || isNull(documents[0].Content[0]) {
		m.Add(f, Pos{1, 1}, "the file is empty")
		return nil
	}
	if len(documents) > 1 {
		m.Add(f, pos(&documents[1]), "a second document begins here; a file holds one (take out the ---)")
		return nil
	}
	root := documents[0].Content[0]
	d := &document{file: f, mistakes: m, reported: map[*yaml.Node]bool{}}
	if !d.inspect(root, 1) {
		return nil
	}
	return &Node{d, root, pos(root)}
}

// document is what the nodes of a file share.
type document struct {
	file     *File
	mistakes *Mistakes
	reported map[*yaml.Node]bool // mistakes already: whoever reads them says nothing more
}

func (d *document) report(n *yaml.Node, format string, args ...any) {
	d.reported[n] = true
	d.mistakes.Add(d.file, pos(n), format, args...)
}

// inspect reports what no reader of the tree accepts, and tells whether the
// tree can be walked.
func (d *document) inspect(n *yaml.Node, depth int) bool {
	if depth > MaxDepth {
		d.report(n, "lists and mappings stand more than %d deep inside each other here", MaxDepth)
		return false
	}
	if n.Style&yaml.TaggedStyle != 0 {
		d.report(n, "tags (%s) are not read; write the value alone", n.Tag)
	}
	switch n.Kind {
	case yaml.AliasNode:
		d.report(n, "aliases (*%s) are not read; write the value out here", n.Value)
	case yaml.ScalarNode:
		if i := strings.IndexFunc(n.Value, Unprintable); i >= 0 {
			d.report(n, "a value is one line of text, with no line break or control character in it")
		}
	case yaml.MappingNode:
		for i := 0; i < len(n.Content); i += 2 {
			key := n.Content[i]
			if key.Kind != yaml.ScalarNode {
				d.report(key, "a key is one word, not %s", kindOf(key))
				continue
			}
			if key.Tag == "!!merge" {
				d.report(key, "merges (<<) are not read; write the values out here")
				continue
			}
			if !d.inspect(key, depth) || !d.inspect(n.Content[i+1], depth+1) {
				return false
			}
		}
	case yaml.SequenceNode:
		for _, item := range n.Content {
			if !d.inspect(item, depth+1) {
				return false
			}
		}
	}
	return true
}

func pos(n *yaml.Node) Pos { return Pos{n.Line, n.Column} }

func isBlock(n *yaml.Node) bool {
	return (n.Kind == yaml.MappingNode || n.Kind == yaml.SequenceNode) && n.Style&yaml.FlowStyle == 0
}

func isNull(n *yaml.Node) bool { return n.Kind == yaml.ScalarNode && n.Tag == "!!null" }

// kindOf says in plain words what a node is.
func kindOf(n *yaml.Node) string {
	switch {
	case n.Kind == yaml.MappingNode:
		return "a mapping"
	case n.Kind == yaml.SequenceNode:
		return "a list"
	case isNull(n):
		return "nothing"
	}
	return "a single value"
}

// syntax turns what the YAML reader says into a place and plain words.
func syntax(f *File, err error) (Pos, string) {
	var e *yaml.LoadError
	if many := (*yaml.LoadErrors)(nil); errors.As(err, &many) && len(many.Errors) > 0 {
		e = many.Errors[0]
	} else if !errors.As(err, &e) {
		return Pos{1, 1}, "this is not YAML that can be read"
	}
	at := Pos{e.Mark.Line, e.Mark.Column}
	opened := Pos{e.ContextMark.Line, e.ContextMark.Column}
	if at.Line < 1 {
		at = Pos{1, 1}
	}
	if opened.Line < 1 {
		opened = at
	}
	if end := f.Pos(len(f.Text)); end.before(at) {
		at = end // what is missing at the end is found on the line after it
	}
	for _, s := range syntaxWords {
		if strings.Contains(e.Message, s.says) {
			if s.opened {
				at = opened
			}
			return at, s.words(f, at)
		}
	}
	return at, "this is not YAML that can be read: " + e.Message
}

// syntaxWords holds the mistakes in YAML's own grammar that people make, each
// with a hint. opened means that the place to look at is where the text that
// does not end began.
var syntaxWords = []struct {
	says   string
	opened bool
	words  func(f *File, at Pos) string
}{
	{"found unexpected end of stream", true, always(`this quote is never closed; a length begins with its number (6", not "6), and a text in quotes ends with the same quote`)},
	{"mapping values are not allowed", false, always("a colon does not fit here: one key to a line, the keys of one group under each other, and a text that holds a colon and a space in quotes")},
	{"could not find expected ':'", true, noColon},
	{"found character that cannot start any token", false, badStart},
	{"did not find expected ',' or ']'", true, always("this list is not closed; it ends with ] and has commas between its values")},
	{"did not find expected ',' or '}'", true, always("this mapping is not closed; it ends with } and has commas between its keys")},
	{"did not find expected key", false, always("this line does not fit the lines above it: the keys of one group stand under each other, and nothing follows a closing quote")},
	{"did not find expected '-' indicator", false, always("this line does not fit the list above it: every value of the list begins with - in the same column")},
	{"did not find expected node content", false, always("a value is missing here")},
	{"found unknown escape character", false, always(`a backslash means something else between double quotes; write the text in single quotes`)},
	{"did not find expected alphabetic or numeric character", true, always("a value cannot begin with & or *; write the text in quotes")},
	{"found incompatible YAML document", false, always("remove the %YAML line: it is not needed")},
	{"unknown anchor", false, always("a value cannot begin with *: aliases are not read, and a text is written in quotes")},
	{"exceeded max depth", false, always("lists and mappings stand too deep inside each other here")},
}

func always(words string) func(*File, Pos) string {
	return func(*File, Pos) string { return words }
}

func noColon(f *File, at Pos) string {
	return colonHint(f.line(at.Line), "this line has no key: a key, a colon, a space and the value")
}

func badStart(f *File, at Pos) string {
	line := []rune(f.line(at.Line))
	if at.Column <= len(line) && line[at.Column-1] != '\t' {
		return "a value cannot begin with " + string(line[at.Column-1]) + "; write the text in quotes"
	}
	return "a tab cannot indent a line here; use spaces"
}
