package spec

import (
	"slices"

	"stepoff/spec/source"
)

// asBuiltRoot is the path under which the keys of a measured stair stand in the
// table, beside those of a job.
const asBuiltRoot = "as-built"

// asBuiltKeys is every key of the file of a measured stair, in the order of the
// documentation.
var asBuiltKeys = []Key{
	{Path: "kind", kind: word, words: []string{asBuiltKind}, required: true, example: asBuiltKind, Doc: "what tells this file from a job"},
	{Path: "name", kind: text, Doc: "what the stair is called", LeftOut: "no name"},
	{Path: "number", kind: text, Doc: "identification number on the inspection sheet", LeftOut: "no number"},
	{Path: "date", kind: date, Doc: "day it was measured, year-month-day", LeftOut: "no date"},
	{Path: "units", kind: word, words: []string{"imperial", "metric"}, Doc: "what bare numbers mean (inches or millimetres) and how lengths are printed",
		LeftOut: "bare numbers are refused; printed as the first riser is written"},
	{Path: "code", kind: text, Doc: "the building code in force: a name from `stepoff codes`, a file, or none", Default: "irc-2021"},
	{Path: "risers", kind: positive, many: aList, required: true, example: `[7 1/2", 7 1/2", 7 9/16"]`, Doc: "every riser, plumb, from the bottom up"},
	{Path: "treads", kind: positive, many: aList, Doc: "every tread, level, nosing to nosing, from the bottom up", LeftOut: "a flight of one riser"},
	{Path: "nosings", kind: size, many: aList, Doc: "overhang of every tread's nosing from the bottom up, and the upper floor's last where it was measured", LeftOut: "nosings are not checked"},
	{Path: "width", kind: positive, Doc: "clear width", LeftOut: "the width is not checked"},
	{Path: "headroom", kind: positive, Doc: "least headroom, plumb over the line through the nosings", LeftOut: "headroom is not checked"},
	{Path: "handrail_height", kind: positive, Doc: "top of the handrail, plumb over the line through the nosings", LeftOut: "the handrail's height is not checked"},
	{Path: "stringer", Doc: "a sawn stringer", LeftOut: "stringers are not checked"},
	{Path: "stringer.width", kind: positive, Doc: "width of the board", LeftOut: "the board is not checked"},
	{Path: "stringer.thickness", kind: positive, Doc: "thickness of the board", LeftOut: "the thickness is not checked"},
	{Path: "stringer.throat", kind: positive, Doc: "wood left under a notch, square across, after any overcut", LeftOut: "worked out from width, unit rise, unit run and overcuts"},
	{Path: "stringer.overcuts", Doc: "how far the saw ran past the roots, the longest of each kind", LeftOut: "none were looked for"},
	{Path: "stringer.overcuts.riser", kind: size, Doc: "past the root along the riser cut", Default: "0"},
	{Path: "stringer.overcuts.tread", kind: size, Doc: "past the root along the tread cut", Default: "0"},
	{Path: "stringer.unit_rise", kind: positive, Doc: "unit rise of the notches", LeftOut: "the mean of the risers"},
	{Path: "stringer.unit_run", kind: positive, Doc: "unit run of the notches", LeftOut: "the mean of the treads"},
}

func init() {
	for _, k := range asBuiltKeys {
		table[join(asBuiltRoot, k.Path)] = k
	}
}

// asBuiltBelow returns the names of the keys directly below a path, and a hint
// for a key that stands at the wrong place.
func asBuiltBelow(path string) (names []string, hint func(key string) string) {
	for _, k := range asBuiltKeys {
		if parent, name := split(k.Path); parent == path {
			names = append(names, name)
		}
	}
	return names, func(key string) string {
		if slices.Contains(below(""), key) {
			return key + " belongs in a job file; this one holds a stair as measured"
		}
		for _, k := range asBuiltKeys {
			if parent, name := split(k.Path); name == key && parent != "" {
				return key + " belongs under " + parent
			} else if name == key {
				return key + " belongs at the left edge, under nothing"
			}
		}
		return ""
	}
}

// asBuiltSub is sub for a measured stair.
func (g group) asBuiltSub(name string) (group, bool) {
	under := group{units: g.units, path: join(g.path, name)}
	n := g.node(name)
	if n == nil {
		return under, false
	}
	m, ok := mappingOf(n, under.path)
	under.at = m
	return under, ok
}

func mappingOf(n *source.Node, path string) (*source.Mapping, bool) {
	return n.Mapping(asBuiltBelow(path[len(asBuiltRoot)+1:]))
}
