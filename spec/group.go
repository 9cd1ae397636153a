package spec

import (
	"strings"
	"time"
	"unicode/utf8"

	"stepoff/spec/lumber"
	"stepoff/spec/measure"
	"stepoff/spec/source"
)

// group is a mapping of the job file, read by the table of keys: a key left
// out gives its default, a mistake is added to those of the file. A group
// without a mapping is one that is not there.
type group struct {
	units measure.Units // of bare numbers
	path  string        // as in the table: stairway[].flight
	at    *source.Mapping
	// over holds values that stand in place of the file's, by the paths of their
	// keys.
	over map[string]*source.Node
}

// sub returns the mapping of a key. Where it is not there, or something else
// stands in its place, the keys below it are all left out, and the second
// result is false.
func (g group) sub(name string) (group, bool) {
	below := group{units: g.units, path: join(g.path, name), over: g.over}
	n := g.node(name)
	if n == nil {
		return below, false
	}
	m, ok := n.Mapping(keysBelow(below.path))
	below.at = m
	return below, ok
}

func join(path, name string) string {
	if path == "" {
		return name
	}
	return path + "." + name
}

func (g group) key(name string) Key { return table[join(g.path, name)] }

// node returns the value of a key; nil when it is left out, which is a mistake
// for one that is required.
func (g group) node(name string) *source.Node {
	n := g.get(name)
	if k := g.key(name); n == nil && k.required && g.at != nil {
		g.at.Missing(name, "%s is missing (%s); write it like %s: %s", strings.TrimPrefix(k.Path, "stairway[]."), k.Doc, name, k.example)
	}
	return n
}

// get returns the value of a key; nil when it is left out.
func (g group) get(name string) *source.Node {
	if n := g.over[join(g.path, name)]; n != nil {
		return n
	}
	if g.at == nil {
		return nil
	}
	return g.at.Get(name)
}

// blame returns the first of several keys that is given.
func (g group) blame(names ...string) *source.Node {
	for _, name := range names {
		if n := g.get(name); n != nil {
			return n
		}
	}
	return nil
}

// single returns the text of a value that is no list or mapping.
func single(n *source.Node, name, wanted string) (string, bool) {
	if n.IsList() || n.IsMapping() {
		n.Mistake("%s: %s belongs here, not %s", name, wanted, n.What())
		return "", false
	}
	return n.Text()
}

// text returns a line of text; its default, or nothing, where it is left out or
// is none.
func (g group) text(name string) string {
	n := g.node(name)
	if n == nil {
		return g.key(name).Default
	}
	text, ok := single(n, name, "a text")
	if !ok {
		return g.key(name).Default
	}
	if utf8.RuneCountInString(text) > longestText {
		n.Mistake("%s: the text has more than %d characters", name, longestText)
	}
	return strings.TrimSpace(text)
}

// longestText bounds names and the like: more does not fit a title block in
// any size of letter.
const longestText = 200

// word returns which of the key's words stands there. fallback is taken where
// the key is left out and has no default.
func (g group) word(name string, fallback int) int {
	k := g.key(name)
	n := g.node(name)
	if n == nil {
		if i := index(k.words, k.Default); i >= 0 {
			return i
		}
		return fallback
	}
	i, _ := oneOf(n, name, k.words)
	return i
}

func index(words []string, word string) int {
	for i, w := range words {
		if w == word {
			return i
		}
	}
	return -1
}

// oneOf reads one of the words; 0 and a mistake when it is none of them.
func oneOf(n *source.Node, name string, words []string) (int, bool) {
	text, ok := single(n, name, "one of "+strings.Join(words, ", "))
	if !ok {
		return 0, false
	}
	i := index(words, text)
	if i < 0 {
		n.Mistake("%s: %s is not one of %s%s", name, measure.Quote(text), strings.Join(words, ", "), source.DidYouMean(text, words))
		return 0, false
	}
	return i, true
}

// length returns a length; its default, or 0, where it is left out.
func (g group) length(name string) measure.Length {
	if l := g.lengthIf(name); l != nil {
		return *l
	}
	return 0
}

// lengthIf returns a length; its default, or nil, where it is left out.
func (g group) lengthIf(name string) *measure.Length {
	k := g.key(name)
	n := g.node(name)
	if n == nil {
		if k.Default == "" {
			return nil
		}
		l, _ := measure.Parse(k.Default, measure.Undeclared)
		return &l
	}
	if l, ok := g.lengthAt(n, name, k.kind); ok {
		return &l
	}
	return nil
}

// lengthAt reads a length whose sign the kind allows.
func (g group) lengthAt(n *source.Node, name string, k kind) (measure.Length, bool) {
	text, ok := single(n, name, "a length")
	if !ok {
		return 0, false
	}
	l, err := measure.Parse(text, g.units)
	switch {
	case err != nil:
		n.Mistake("%s: %s", name, err)
	case l <= 0 && k == positive:
		n.Mistake("%s: it must be more than 0, not %s", name, measure.Quote(text))
	case l < 0 && k == size:
		n.Mistake("%s: it must be 0 or more, not %s", name, measure.Quote(text))
	default:
		return l, true
	}
	return 0, false
}

func (g group) truth(name string) bool {
	n := g.node(name)
	if n == nil {
		return false
	}
	text, ok := single(n, name, "true or false")
	if !ok {
		return false
	}
	switch text {
	case "true", "false":
		return text == "true"
	}
	right := "true or false"
	switch strings.ToLower(text) {
	case "yes", "y", "on", "true":
		right = "true"
	case "no", "n", "off", "false":
		right = "false"
	}
	n.Mistake("%s: write %s, not %s", name, right, measure.Quote(text))
	return false
}

func (g group) date(name string) string {
	n := g.node(name)
	if n == nil {
		return ""
	}
	text, ok := single(n, name, "a date")
	if !ok {
		return ""
	}
	if _, err := time.Parse(time.DateOnly, text); err != nil {
		n.Mistake("%s: %s is no date; write year-month-day, like 2026-03-02", name, measure.Quote(text))
		return ""
	}
	return text
}

// loadIf returns a load in pascals; nil where it is left out.
func (g group) loadIf(name string) *float64 {
	n := g.node(name)
	if n == nil {
		return nil
	}
	text, ok := single(n, name, "a load")
	if !ok {
		return nil
	}
	pascals, err := measure.ParsePressure(text)
	switch {
	case err != nil:
		n.Mistake("%s: %s", name, err)
	case pascals == 0:
		n.Mistake("%s: a stair always bears something; write it like 40 psf or 1.9 kPa, or leave the key out", name)
	default:
		return &pascals
	}
	return nil
}

// items returns the values of a list with one or more of them; nil where it is
// left out or wrong.
func (g group) items(name, wanted string) []*source.Node {
	n := g.node(name)
	if n == nil {
		return nil
	}
	if !n.IsList() {
		if _, ok := single(n, name, wanted); ok {
			n.Mistake("%s: %s belongs here, not %s", name, wanted, n.What())
		}
		return nil
	}
	list, _ := n.List()
	if len(list) == 0 {
		n.Mistake("%s: the list is empty; leave the key out, or write %s", name, wanted)
	}
	return list
}

func (g group) lengths(name, wanted string) []measure.Length {
	var lengths []measure.Length
	for _, item := range g.items(name, wanted) {
		l, _ := g.lengthAt(item, name, g.key(name).kind)
		lengths = append(lengths, l) // one for each, right or wrong: the number of them is checked too
	}
	return lengths
}

// piece returns a board by its nominal size; nil where there is none, and
// whether the key was given at all.
func (g group) piece(name string) (piece *Piece, given bool) {
	n := g.node(name)
	if n == nil {
		return nil, false
	}
	text, ok := single(n, name, "a board such as 2x4, or none")
	if !ok || text == "none" {
		return nil, true
	}
	dressed, ok := nominal(n, name, text, "none")
	if !ok {
		return nil, true
	}
	return &Piece{Name: text, Size: dressed}, true
}

// pieceOr returns a board by its nominal size; its default where it is left out.
func (g group) pieceOr(name string) *Piece {
	if p, _ := g.piece(name); p != nil {
		return p
	}
	name = g.key(name).Default
	dressed, _ := lumber.Lookup(name)
	return &Piece{Name: name, Size: dressed}
}
