package spec

import (
	"stepoff/spec/measure"
	"stepoff/spec/source"
)

// readStairway reads the members from the bottom up. Left out, it is one flight
// with everything to be chosen.
func readStairway(top group, inherited stringers, width *measure.Length) []Element {
	if top.node("stairway") == nil {
		return []Element{{Flight: &Flight{Stringer: inherited.settle(group{}, width)}}}
	}
	var elements []Element
	items := top.items("stairway", "a list of members, like - flight: {risers: 14}")
	flights := 0
	for _, item := range items {
		e, ok := readElement(top, item, inherited, width)
		if !ok {
			continue
		}
		if flights++; flights == 2 {
			item.Mistake("stairway: this version lays out a single flight; take out those after the first")
		}
		elements = append(elements, e)
	}
	return elements
}

// later are the members of a stairway that are not laid out yet.
var later = []string{"landing", "winders", "curve"}

// readElement reads one member.
func readElement(top group, item *source.Node, inherited stringers, width *measure.Length) (Element, bool) {
	g := group{units: top.units, path: "stairway[]"}
	known, hint := keysBelow(g.path)
	m, ok := item.Mapping(append(known, later...), hint)
	if !ok {
		return Element{}, false
	}
	g.at = m
	for _, name := range later {
		if m.Has(name) {
			m.Missing(name, "%s: this version lays out a single flight, without %s", name, name)
			return Element{}, false
		}
	}
	if !m.Has("flight") {
		item.Mistake("stairway: a member is a flight, like flight: {risers: 14, run: 10\"}")
		return Element{}, false
	}
	f, _ := g.sub("flight")
	flight := &Flight{Run: f.lengthIf("run")}
	flight.Risers, _ = f.wholeIf("risers")
	flight.Stringer = f.override(inherited).settle(f, width)
	return Element{Flight: flight}, true
}
