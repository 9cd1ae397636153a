package spec

import (
	"stepoff/spec/measure"
	"stepoff/spec/rules"
	"stepoff/spec/source"
)

// AsBuilt is one flight that stands, as measured. A nil pointer and an empty
// list are something nobody measured: what needs it is left out.
type AsBuilt struct {
	Name   string
	Number string
	Date   string // YYYY-MM-DD as written, or empty
	Units  measure.Units
	Code   Code

	// Risers are plumb, from one walking surface to the next, from the lower
	// floor up; never empty. Treads are level, nosing to nosing, the first from
	// the first nosing: one fewer than the risers.
	Risers []measure.Length
	Treads []measure.Length
	// Nosings are the overhangs of the treads from the bottom up, and of the
	// upper floor after them where it was measured.
	Nosings []measure.Length

	Width          *measure.Length // clear
	Headroom       *measure.Length // the least over the nosing line
	HandrailHeight *measure.Length // over the nosing line
	Stringer       *AsBuiltStringer

	// Source is the file as it was read.
	Source []byte

	file   *source.File
	places map[string]source.Pos
}

// AsBuiltStringer is what was measured of a sawn stringer.
type AsBuiltStringer struct {
	Width     *measure.Length // of the board
	Thickness *measure.Length
	Throat    *measure.Length // wood left square across under a notch, whatever the saw did to it
	Overcuts  *Overcuts       // nil: not looked for. Never with Throat
	// UnitRise and UnitRun are those of the notches; nil: the mean of the
	// risers and of the treads.
	UnitRise *measure.Length
	UnitRun  *measure.Length
}

// Overcuts are how far the saw ran past the roots, the longest of each kind.
type Overcuts struct {
	Riser measure.Length // on along the riser cut
	Tread measure.Length // on along the tread cut
}

// Mistake is something wrong with a measured stair that shows only when it is
// worked out; path names the key it comes from, as in Job.Mistake.
func (a *AsBuilt) Mistake(path, format string, args ...any) source.Mistake {
	return (&Job{file: a.file, places: a.places}).Mistake(path, format, args...)
}

// LoadAsBuilt reads a file of `kind: as-built`. name is what the file is called
// in messages. The error is a source.Mistakes with everything that is wrong in
// the file; the stair is nil then.
func LoadAsBuilt(name string, text []byte) (*AsBuilt, error) {
	var mistakes source.Mistakes
	file := &source.File{Name: name, Text: text}
	root := file.YAML(&mistakes)
	if root == nil {
		return nil, mistakes.Err()
	}
	a := &AsBuilt{Source: text, file: file, places: root.Places()}
	if isJob(a.places) {
		root.Mistake("this is a job file, a stair to be built: stepoff check takes it; a stair as measured says kind: %s and lists its risers and treads", asBuiltKind)
	} else if m, ok := root.Mapping(asBuiltBelow("")); ok {
		readAsBuilt(group{units: measure.Undeclared, path: asBuiltRoot, at: m}, a)
	}
	if err := mistakes.Err(); err != nil {
		return nil, err
	}
	return a, nil
}

// asBuiltKind is the word a measured stair's file is told by.
const asBuiltKind = "as-built"

// isJob tells a job file from the file of a measured stair that lacks its kind.
func isJob(places map[string]source.Pos) bool {
	has := func(key string) bool { _, ok := places[key]; return ok }
	return has("levels") && !has("kind") && !has("risers") && !has("treads")
}

// readAsBuilt reads the whole file.
func readAsBuilt(top group, a *AsBuilt) {
	if top.get("units") != nil {
		top.units = measure.Units(top.word("units", 0))
	}
	top.word("kind", 0)
	a.Name = top.text("name")
	a.Number = top.text("number")
	a.Date = top.date("date")
	a.Code = top.code()

	a.Risers = top.lengthsWithin("risers", "the risers from the bottom up, like [7 1/2, 7 1/2, 7 9/16]", highestRiser)
	a.Treads = top.lengthsWithin("treads", "the treads nosing to nosing from the bottom up, like [10, 10 1/16]", longestTread)
	a.Nosings = top.lengths("nosings", "the nosings from the bottom up, like [1, 1]")
	top.oneFewer(a)

	a.Width = top.lengthIf("width")
	a.Headroom = top.lengthIf("headroom")
	a.HandrailHeight = top.lengthIf("handrail_height")
	a.Stringer = top.measuredStringer(a)

	a.Units = top.units
	if a.Units == measure.Undeclared {
		a.Units = unitsOf(top.get("risers"))
	}
}

// unitsOf returns the units a list's first value is written in; imperial where
// it has none.
func unitsOf(list *source.Node) measure.Units {
	if list != nil && list.IsList() {
		if items, _ := list.List(); len(items) > 0 {
			if text, ok := items[0].Text(); ok && measure.UnitsOf(text) == measure.Metric {
				return measure.Metric
			}
		}
	}
	return measure.Imperial
}

// code reads which code is in force. A name that no code has is a mistake; a
// file is for others to open.
func (g group) code() Code {
	n := g.get("code")
	c := Code{Name: g.text("code"), Given: n != nil}
	if c.Given && c.Name == "" {
		n.Mistake("code: name a code, a file, or none")
	} else if _, known := rules.Lookup(c.Name); !known && !rules.IsFile(c.Name) {
		n.Mistake("code: %s", rules.Unknown(c.Name))
	}
	return c
}

// What is beyond these is no riser and no tread of a stair but a slip of the
// unit, a number in millimetres read as inches. They lie far outside every
// code's limits (riser 9 1/2 in, run 16 in), and far below the slip (7 in is
// 178 mm).
const (
	highestRiser = 36 * measure.Inch
	longestTread = 120 * measure.Inch
)

// mostRisers bounds the list: no flight has as many, and what is worked out
// from it stays quick.
const mostRisers = 99

// lengthsWithin reads a list of lengths, none longer than the longest.
func (g group) lengthsWithin(name, wanted string, longest measure.Length) []measure.Length {
	all := g.lengths(name, wanted)
	if len(all) == 0 {
		return nil
	}
	items, _ := g.get(name).List()
	style := measure.Style{Units: g.units}
	for i, l := range all {
		if l > longest {
			items[i].Mistake("%s: %s is longer than %s, as no stair has it; is the unit right?", name, items[i].What(), style.Format(longest))
		}
	}
	if len(all) > mostRisers {
		g.get(name).Mistake("%s: the list has %d values; up to %d are read, one flight", name, len(all), mostRisers)
	}
	return all
}

// oneFewer holds the lists' lengths against each other.
func (g group) oneFewer(a *AsBuilt) {
	risers, treads := len(a.Risers), len(a.Treads)
	if n := g.get("treads"); n != nil && n.IsList() && risers > 0 && treads > 0 && treads != risers-1 {
		n.Mistake("treads: %d risers have %d %s between them, one fewer, but the list has %d: a riser or a tread was left out, or the upper floor counted as a tread",
			risers, risers-1, plural(risers-1, "tread"), treads)
	}
	if n := g.get("treads"); n == nil && risers > 1 && g.at != nil {
		g.at.Missing("treads", "treads is missing (%s); %d risers have %d between them", g.key("treads").Doc, risers, risers-1)
	}
	if nosings := len(a.Nosings); nosings > 0 && risers > 0 && nosings != risers-1 && nosings != risers {
		g.get("nosings").Mistake("nosings: %d risers have %d %s, %d with the upper floor's, but the list has %d",
			risers, risers-1, plural(risers-1, "nosing"), risers, nosings)
	}
}

func plural(n int, word string) string {
	if n == 1 {
		return word
	}
	return word + "s"
}

func (g group) measuredStringer(a *AsBuilt) *AsBuiltStringer {
	own, ok := g.asBuiltSub("stringer")
	if !ok {
		return nil
	}
	s := &AsBuiltStringer{
		Width: own.lengthIf("width"), Thickness: own.lengthIf("thickness"), Throat: own.lengthIf("throat"),
		UnitRise: own.lengthIf("unit_rise"), UnitRun: own.lengthIf("unit_run"),
	}
	if cuts, ok := own.asBuiltSub("overcuts"); ok {
		s.Overcuts = &Overcuts{Riser: cuts.length("riser"), Tread: cuts.length("tread")}
	}
	switch throat, overcuts := own.get("throat"), own.get("overcuts"); {
	case throat != nil && overcuts != nil:
		overcuts.Mistake("overcuts: the throat is measured (line %d), and that is what the overcuts have left of it; write one or the other", throat.Pos().Line)
	case overcuts != nil && own.get("width") == nil:
		overcuts.Mistake("overcuts: the throat they leave is worked out from the board's width; write that too, like width: 11 1/4\"")
	}
	if s.Throat != nil && s.Width != nil && *s.Throat >= *s.Width {
		own.get("throat").Mistake("throat: %s is not less than the board's width of %s", own.get("throat").What(), own.get("width").What())
	}
	return s
}
