package source

import (
	"fmt"
	"strconv"

	"go.yaml.in/yaml/v4"

	"stepoff/spec/measure"
)

// Node is one value of a YAML file: a single value, a list or a mapping.
// Reading one as what it is not adds a mistake and returns ok false.
type Node struct {
	in   *document
	yaml *yaml.Node
	at   Pos
}

// Pos is where the value begins; for a list or mapping on the lines below its
// key, where the key stands.
func (n *Node) Pos() Pos { return n.at }

// Mistake adds a mistake at the value.
func (n *Node) Mistake(format string, args ...any) {
	n.in.mistakes.Add(n.in.file, n.at, format, args...)
}

// IsList tells whether the value is a list.
func (n *Node) IsList() bool { return n.yaml.Kind == yaml.SequenceNode }

// IsMapping tells whether the value is a mapping.
func (n *Node) IsMapping() bool { return n.yaml.Kind == yaml.MappingNode }

// IsNull tells whether nothing is written where the value should be.
func (n *Node) IsNull() bool { return isNull(n.yaml) }

// What names the value in a message: a list, a mapping, nothing, or the text
// itself in quotes.
func (n *Node) What() string {
	if n.yaml.Kind == yaml.ScalarNode && !isNull(n.yaml) {
		return measure.Quote(n.yaml.Value)
	}
	return kindOf(n.yaml)
}

// Text returns a single value as it is written, without quotes.
func (n *Node) Text() (text string, ok bool) {
	if n.in.reported[n.yaml] {
		return "", false
	}
	if n.yaml.Kind != yaml.ScalarNode {
		n.Mistake("a single value belongs here, not %s", n.What())
		return "", false
	}
	return n.yaml.Value, true
}

// List returns the values of a list.
func (n *Node) List() (items []*Node, ok bool) {
	if n.in.reported[n.yaml] {
		return nil, false
	}
	if !n.IsList() {
		n.Mistake("a list belongs here, like [a, b], not %s", n.What())
		return nil, false
	}
	for _, item := range n.yaml.Content {
		items = append(items, &Node{n.in, item, pos(item)})
	}
	return items, true
}

// child is the value of a key.
func (n *Node) child(key, value *yaml.Node) *Node {
	if isBlock(value) || isNull(value) {
		return &Node{n.in, value, pos(key)}
	}
	return &Node{n.in, value, pos(value)}
}

// Places returns where every value below this one stands, by its path:
// "levels.total_rise", "stairway[0].flight.run".
func (n *Node) Places() map[string]Pos {
	places := map[string]Pos{}
	n.places("", places)
	return places
}

func (n *Node) places(path string, into map[string]Pos) {
	if _, double := into[path]; double {
		return // the second of two equal keys
	}
	into[path] = n.at
	switch n.yaml.Kind {
	case yaml.MappingNode:
		for i := 0; i+1 < len(n.yaml.Content); i += 2 {
			key := n.yaml.Content[i]
			below := key.Value
			if path != "" {
				below = path + "." + key.Value
			}
			n.child(key, n.yaml.Content[i+1]).places(below, into)
		}
	case yaml.SequenceNode:
		for i, item := range n.yaml.Content {
			(&Node{n.in, item, pos(item)}).places(fmt.Sprintf("%s[%s]", path, strconv.Itoa(i)), into)
		}
	}
}
