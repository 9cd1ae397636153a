package rules

import (
	"slices"
	"strings"

	"stepoff/spec/measure"
	"stepoff/spec/source"
)

// reader reads one code file. Files that are built in have to say more than a
// user's own: every limit its section, how it is measured and its basis.
type reader struct {
	file     *source.File
	mistakes source.Mistakes
	units    measure.Units // of bare numbers
	builtIn  bool
	base     func(name string) (*Code, bool)
	at       map[Key]*source.Node // the limits that this file sets
}

var (
	fileKeys  = []string{"title", "base", "units", "sources", "limits"}
	limitKeys = []string{"value", "when", "section", "measured", "basis", "source", "note"}
)

func (r *reader) read() (*Code, error) {
	root := r.file.YAML(&r.mistakes)
	if root == nil {
		return nil, r.mistakes.Err()
	}
	c := &Code{}
	if m, ok := root.Mapping(fileKeys, nil); ok {
		r.code(c, m)
	}
	if err := r.mistakes.Err(); err != nil {
		return nil, err
	}
	return c, nil
}

func (r *reader) code(c *Code, m *source.Mapping) {
	r.units = measure.Undeclared
	if n := m.Get("units"); n != nil {
		if text, ok := n.Text(); ok {
			u, err := measure.ParseUnits(text)
			if err != nil {
				n.Mistake("units: %s", err)
			}
			r.units = u
		}
	}
	if n := m.Get("base"); n != nil {
		if text, ok := n.Text(); ok {
			if base, known := r.base(text); known {
				*c = Code{Title: "after " + base.Title, Base: text, Limits: slices.Clone(base.Limits), Sources: slices.Clone(base.Sources)}
			} else {
				n.Mistake("base: %s", Unknown(text))
			}
		}
	}
	if n := m.Get("title"); n != nil {
		c.Title, _ = n.Text()
	} else if r.builtIn {
		m.Missing("title", "title is missing")
	}
	if n := m.Get("sources"); n != nil {
		if s, ok := n.Open(); ok {
			for _, key := range s.Keys() {
				if v := s.Get(key); v != nil {
					text, _ := v.Text()
					c.Sources = append(c.Sources, Source{key, text})
				}
			}
		}
	}
	r.at = map[Key]*source.Node{}
	if n := m.Get("limits"); n != nil {
		r.limits(c, n)
	}
	r.against(c)
}

// limits reads the limits this file sets, over those of its base.
func (r *reader) limits(c *Code, n *source.Node) {
	known := make([]string, len(infos))
	for i, info := range infos {
		known[i] = string(info.Key)
	}
	m, ok := n.Mapping(known, func(key string) string {
		if source.DidYouMean(key, known) != "" {
			return "" // the near one is named
		}
		return "`stepoff codes irc-2021` shows what limits are called"
	})
	if !ok {
		return
	}
	var all []Limit
	for _, info := range infos { // the order of the table, whatever the file's
		l, set := c.Limit(info.Key)
		if v := m.Get(string(info.Key)); v != nil {
			r.at[info.Key] = v
			set = r.limit(c, v, info, &l)
		} else if m.Has(string(info.Key)) {
			m.Missing(string(info.Key), "%s: a value is missing; write none to set no limit", info.Key)
		}
		if set {
			all = append(all, l)
		}
	}
	c.Limits = all
}

// limit reads one limit over what the base says of it: a value alone, or a
// mapping. It tells whether there is such a limit: none takes the base's away.
func (r *reader) limit(c *Code, n *source.Node, info Info, l *Limit) bool {
	hadValue := l.Key != ""
	l.Key = info.Key
	if !n.IsMapping() {
		text, ok := n.Text()
		if !ok || text == "none" {
			return false
		}
		r.value(n, info, text, l)
		return true
	}
	m, ok := n.Mapping(limitKeys, nil)
	if !ok {
		return false
	}
	text := func(key string, into *string) {
		if v := m.Get(key); v != nil {
			*into, _ = v.Text()
		} else if m.Has(key) {
			m.Missing(key, "%s: nothing is written here; write it, or leave the key out", key)
		}
	}
	if v := m.Get("value"); v != nil {
		if value, ok := v.Text(); ok {
			r.value(v, info, value, l)
		}
	} else if !hadValue {
		m.Missing("value", "%s: a value is missing", info.Key)
	}
	text("section", &l.Section)
	text("measured", &l.Measured)
	text("note", &l.Note)
	if v := m.Get("when"); v != nil {
		l.When = When(r.oneOf(v, "when", whenWords))
	}
	if v := m.Get("basis"); v != nil {
		l.Basis = Basis(r.oneOf(v, "basis", basisWords))
	} else if r.builtIn && !hadValue {
		m.Missing("basis", "%s: its basis is missing", info.Key)
	}
	if v := m.Get("source"); v != nil {
		r.sources(c, v, l)
	}
	if r.builtIn && (l.Section == "" || l.Measured == "") {
		m.Missing("section", "%s: section and measured belong here", info.Key)
	}
	return true
}

// own says of a value that a user's file sets whose it is. Section and measure
// stay the base's: it is that section which is amended.
func (r *reader) own(l *Limit) {
	if r.builtIn {
		return
	}
	l.Basis, l.Sources = OwnFile, nil
	if l.Section == "" {
		l.Section = r.file.Name
	}
}

func (r *reader) sources(c *Code, n *source.Node, l *Limit) {
	text, ok := n.Text()
	if !ok {
		return
	}
	l.Sources = nil
	for _, key := range strings.Split(text, ", ") {
		if !slices.ContainsFunc(c.Sources, func(s Source) bool { return s.Key == key }) {
			n.Mistake("source: %s does not stand under sources", measure.Quote(key))
		}
		l.Sources = append(l.Sources, key)
	}
}

func (r *reader) oneOf(n *source.Node, name string, words []string) int {
	text, ok := n.Text()
	if !ok {
		return 0
	}
	i := slices.Index(words, text)
	if i < 0 {
		n.Mistake("%s: %s is not one of %s%s", name, measure.Quote(text), strings.Join(words, ", "), source.DidYouMean(text, words))
		return 0
	}
	return i
}

// against holds the limits of one thing against each other: no least above its
// most. The mistake stands at whichever this file sets.
func (r *reader) against(c *Code) {
	for _, most := range infos {
		root, isMost := strings.CutSuffix(string(most.Key), "-max")
		if !isMost {
			continue
		}
		least := Key(root + "-min")
		lo, ok := c.Limit(least)
		hi, both := c.Limit(most.Key)
		if !ok || !both || lo.Length <= hi.Length && lo.Degrees <= hi.Degrees && lo.Count <= hi.Count {
			continue
		}
		if n := r.at[most.Key]; n != nil {
			n.Mistake("%s: %s is less than %s, which is %s", most.Key, hi.Text, least, lo.Text)
		} else if n := r.at[least]; n != nil {
			n.Mistake("%s: %s is more than %s, which is %s", least, lo.Text, most.Key, hi.Text)
		}
	}
}
