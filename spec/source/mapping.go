package source

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"github.com/xrash/smetrics"
	"go.yaml.in/yaml/v4"

	"stepoff/spec/measure"
)

// Mapping is a node's keys and values, checked: every key known, each once.
type Mapping struct {
	node   *Node
	values map[string]*Node
	keys   map[string]Pos
}

// Mapping returns the keys and values of a mapping. A key that is not among the
// known ones, or stands twice, is a mistake. hint may say more about an unknown
// key than which known one is near; it may be nil.
func (n *Node) Mapping(known []string, hint func(key string) string) (m *Mapping, ok bool) {
	return n.mapping(", with the keys "+list(known), func(i int) string {
		if slices.Contains(known, n.yaml.Content[i].Value) {
			return ""
		}
		return unknown(n.yaml, i, known, hint)
	})
}

// Open returns a mapping whose keys are not known beforehand; each once.
func (n *Node) Open() (m *Mapping, ok bool) {
	return n.mapping("", func(int) string { return "" })
}

// mapping reads the keys and values. wrong says what is wrong with the key at a
// place of the node's content; nothing when it may stand there.
func (n *Node) mapping(keys string, wrong func(i int) string) (m *Mapping, ok bool) {
	if n.in.reported[n.yaml] {
		return nil, false
	}
	if !n.IsMapping() {
		n.Mistake("a mapping belongs here%s, not %s", keys, n.What())
		return nil, false
	}
	m = &Mapping{node: n, values: map[string]*Node{}, keys: map[string]Pos{}}
	for i := 0; i+1 < len(n.yaml.Content); i += 2 {
		key, value := n.yaml.Content[i], n.yaml.Content[i+1]
		if n.in.reported[key] {
			continue
		}
		if at, double := m.keys[key.Value]; double {
			n.in.report(key, "%s stands twice: first on line %d", measure.Quote(key.Value), at.Line)
		} else if why := wrong(i); why != "" {
			n.in.report(key, "%s", why)
		} else {
			m.keys[key.Value] = pos(key)
			m.values[key.Value] = n.child(key, value)
		}
	}
	return m, true
}

// Get returns the value of a key; nil when the key is missing or nothing is
// written after it.
func (m *Mapping) Get(key string) *Node {
	if value := m.values[key]; value != nil && !value.IsNull() {
		return value
	}
	return nil
}

// Has tells whether the key is there, be it with nothing after it.
func (m *Mapping) Has(key string) bool { return m.values[key] != nil }

// Keys returns the keys in the order of the file.
func (m *Mapping) Keys() []string {
	keys := make([]string, 0, len(m.keys))
	for key := range m.keys {
		keys = append(keys, key)
	}
	slices.SortFunc(keys, func(a, b string) int {
		if m.keys[a].before(m.keys[b]) {
			return -1
		}
		return 1
	})
	return keys
}

// Missing adds a mistake about a key without a value, at the key, or at the
// mapping when the key is not there.
func (m *Mapping) Missing(key, format string, args ...any) {
	at, there := m.keys[key]
	if !there {
		at = m.node.at
	}
	m.node.in.mistakes.Add(m.node.in.file, at, format, args...)
}

// unknown says what is wrong with the key at n.Content[i].
func unknown(n *yaml.Node, i int, known []string, hint func(string) string) string {
	key := n.Content[i].Value
	said := "unknown key " + measure.Quote(key)
	if hinted := colonHint(key, said); hinted != said {
		return hinted
	}
	if n.Style&yaml.FlowStyle != 0 && i > 0 && isNull(n.Content[i+1]) && digits.MatchString(key) && digits.MatchString(n.Content[i-1].Value) {
		return fmt.Sprintf("a decimal takes a point, not a comma: %s.%s", n.Content[i-1].Value, key)
	}
	if hint != nil {
		if more := hint(key); more != "" {
			return said + "; " + more
		}
	}
	if meant := DidYouMean(key, known); meant != "" {
		return said + meant
	}
	return fmt.Sprintf("%s; the keys here are %s", said, list(known))
}

var (
	digits = regexp.MustCompile(`^[0-9]+$`)
	glued  = regexp.MustCompile(`^\s*([A-Za-z_]+):([^\s:]+)`)
)

// colonHint adds to a message how a colon is written, when a text shows that
// the space after it was forgotten.
func colonHint(text, message string) string {
	if m := glued.FindStringSubmatch(text); m != nil {
		return fmt.Sprintf("%s; a space belongs after the colon: %s: %s", message, m[1], m[2])
	}
	return message
}

// DidYouMean ends a message with the word that was probably meant: the one with
// the fewest letters to put right, at most a third of its length; a slip of two
// letters or more seldom begins at the first. It is empty when none is near.
func DidYouMean(word string, known []string) string {
	const longest = 40 // no key is that long
	if len(word) > longest {
		return ""
	}
	word = strings.ToLower(word)
	best, fewest := "", len(word)+1
	for _, k := range known {
		// One word grown from the other: flushed, ris.
		if short, long := min(k, word), max(k, word); len(short) >= 3 && len(short) >= len(long)-2 && strings.HasPrefix(long, short) && len(long)-len(short) < fewest {
			best, fewest = k, len(long)-len(short)
		}
		if wrong := smetrics.WagnerFischer(word, k, 1, 1, 1); wrong < fewest && 3*wrong <= len(k) && (wrong < 2 || k[0] == word[0]) {
			best, fewest = k, wrong
		}
	}
	if best == "" {
		return ""
	}
	return "; did you mean " + best + "?"
}

// list names words in a sentence: a, b and c.
func list(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	last := len(words) - 1
	return strings.Join(words[:last], ", ") + " and " + words[last]
}
