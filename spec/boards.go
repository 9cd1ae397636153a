package spec

import (
	"regexp"
	"strconv"
	"strings"

	"stepoff/spec/lumber"
	"stepoff/spec/measure"
	"stepoff/spec/source"
)

var boardsForm = regexp.MustCompile(`^(?:([1-9]) )?([0-9/]+x[0-9]+)$`)

// boards reads what a tread is cut from: 2x12, 2 2x6, or {width, thickness}.
func (g group) boards() *Boards {
	n := g.node("boards")
	if n == nil {
		return nil
	}
	if n.IsMapping() {
		own, _ := g.sub("boards")
		return &Boards{Count: 1, Size: own.measured()}
	}
	text, ok := single(n, "boards", "a board such as 2x12, two such as 2 2x6, or "+asMeasured)
	if !ok {
		return nil
	}
	m := boardsForm.FindStringSubmatch(text)
	if m == nil {
		n.Mistake("boards: cannot read %s; write it like 2x12, 2 2x6 or %s", measure.Quote(text), asMeasured)
		return nil
	}
	dressed, ok := nominal(n, "boards", m[2], asMeasured)
	if !ok {
		return nil
	}
	count := 1
	if m[1] != "" {
		count, _ = strconv.Atoi(m[1])
	}
	return &Boards{Name: text, Count: count, Size: dressed}
}

const asMeasured = `{width: 11 1/4", thickness: 1 1/2"} as measured`

// nominal returns what a board of a nominal size measures. also is what else may
// be written, for the message.
func nominal(n *source.Node, name, text, also string) (lumber.Size, bool) {
	size, ok := lumber.Lookup(text)
	if !ok {
		near := ""
		if plain := strings.NewReplacer(" ", "", "X", "x", "×", "x").Replace(text); plain != text {
			if _, known := lumber.Lookup(plain); known {
				near = "; write it like " + plain
			}
		}
		n.Mistake("%s: %s is no size that is known: %s, or %s%s", name, measure.Quote(text), strings.Join(lumber.Names(), ", "), also, near)
	}
	return size, ok
}

// measured reads {width, thickness}.
func (g group) measured() lumber.Size {
	s := lumber.Size{Thickness: g.length("thickness"), Width: g.length("width")}
	if s.Thickness > s.Width && s.Width > 0 {
		g.get("thickness").Mistake("thickness: a board is thinner than it is wide; are the two exchanged?")
	}
	return s
}
