package spec

import (
	"fmt"

	"stepoff/spec/measure"
	"stepoff/spec/source"
)

// readStairway reads the members from the bottom up. Left out, it is one flight
// with everything to be chosen.
func readStairway(top group, inherited stringers, job *Job) []Element {
	if top.node("stairway") == nil {
		return []Element{{Flight: &Flight{Stringer: inherited.settle(group{}, job.Width)}}}
	}
	var elements []Element
	var list order
	for _, item := range top.items("stairway", "a list of members, like - flight: {risers: 14}") {
		e, name, ok := readElement(top, item, inherited, job)
		if !ok {
			list.unknown = true
			continue
		}
		list.next(item, name)
		elements = append(elements, e)
		inherited = inherited.aboveFloor()
	}
	list.end()
	if job.Width == nil && top.get("width") == nil && list.needsWidth != "" {
		top.at.Missing("width", `width is missing: with %s the plan needs the clear width; write it like width: 36"`, named[list.needsWidth])
	}
	return elements
}

// order holds the members against the order a stairway has: what climbs (flights
// and curves) and what turns (landings and winders) alternate, and it begins and
// ends with what climbs.
type order struct {
	last     *source.Node
	lastName string
	turn     bool // the last was one
	unknown  bool // one that could not be read stands before: what follows it is not judged

	needsWidth string // the first member that cannot be laid out in plan without the stair's width
}

const oneRiser = "a flight of one riser, - flight: {risers: 1},"

// named is a member with its article.
var named = map[string]string{"flight": "a flight", "curve": "a curve", "landing": "a landing", "winders": "winders"}

func (o *order) next(item *source.Node, name string) {
	turn := name == "landing" || name == "winders"
	follows := fmt.Sprintf("stairway: %s right after %s", named[name], named[o.lastName])
	switch {
	case o.unknown:
		o.unknown = false
	case o.last == nil && turn:
		item.Mistake("stairway: it begins with %s, and that stands a riser above the lower floor: put %s before it", named[name], oneRiser)
	case o.last == nil:
	case name == "landing" && o.lastName == "landing":
		item.Mistake("stairway: two landings follow each other: put %s between them, or make them one landing", oneRiser)
	case turn && o.turn:
		item.Mistake("%s: put %s between them", follows, oneRiser)
	case name == "flight" && o.lastName == "flight":
		item.Mistake("stairway: two flights follow each other: put a landing between them, like - landing: {turn: none}, or make them one flight")
	case !turn && !o.turn:
		item.Mistake("%s: put a landing between them, like - landing: {turn: none}", follows)
	}
	o.last, o.lastName, o.turn = item, name, turn
	if name != "flight" && o.needsWidth == "" {
		o.needsWidth = name
	}
}

func (o *order) end() {
	if o.last != nil && o.turn && !o.unknown {
		o.last.Mistake("stairway: it ends with %s, and the upper floor is a riser above: put %s after it", named[o.lastName], oneRiser)
	}
}

// members are the kinds of member, in the order of the documentation.
var members = []string{"flight", "landing", "winders", "curve"}

// needs shows the members that say nothing without keys of their own.
var needs = map[string]string{
	"landing": "landing: {turn: left}",
	"winders": "winders: {turn: left, treads: 3}",
	"curve":   "curve: {turn: left, inside_radius: 5', angle: 90}",
}

// readElement reads one member and says which kind it is.
func readElement(top group, item *source.Node, inherited stringers, job *Job) (e Element, name string, ok bool) {
	g := group{units: top.units, path: "stairway[]"}
	m, ok := item.Mapping(keysBelow(g.path))
	if !ok {
		return Element{}, "", false
	}
	g.at = m
	for _, kind := range members {
		switch {
		case m.Has(kind) && name != "":
			item.Mistake("stairway: a member is one thing: write the %s and the %s as two, each with its own dash", name, kind)
			return Element{}, "", false
		case m.Has(kind):
			name = kind
		}
	}
	if name == "" {
		item.Mistake("stairway: a member is a flight, like flight: {risers: 14, run: 10\"}, a curve, a landing, like landing: {turn: left}, or winders, like winders: {turn: left, treads: 3}")
		return Element{}, "", false
	}
	if example, ok := needs[name]; ok && m.Get(name) == nil {
		m.Missing(name, "%s: nothing follows; write it like %s", name, example)
		return Element{}, "", false
	}
	at, _ := g.sub(name)
	switch name {
	case "flight":
		flight := &Flight{Run: at.lengthIf("run")}
		flight.Risers, _ = at.wholeIf("risers")
		flight.Stringer = at.override(inherited).settle(at, job.Width)
		e.Flight = flight
	case "landing":
		e.Landing = readLanding(at, top, job)
	case "winders":
		e.Winders = readWinders(at, job)
	case "curve":
		e.Curve = readCurve(at, job)
	}
	return e, name, true
}

// readLanding reads a landing. What it leaves out follows from the stair's own
// width and finish.
func readLanding(g, top group, job *Job) *Landing {
	l := &Landing{
		Turn:       Turn(g.word("turn", 0)),
		Angle:      90 * (1 + g.word("angle", 0)),
		Gap:        g.length("gap"),
		Finish:     job.Levels.UpperFinish,
		Sheathing:  g.length("sheathing"),
		Spacing:    g.length("spacing"),
		On:         Bearing(g.word("on", 0)),
		BuiltLevel: g.lengthIf("built_level"),
	}
	if finish := g.lengthIf("finish"); finish != nil {
		l.Finish = *finish
	}
	l.Joists, _ = g.piece("joists")
	if l.Turn == Straight {
		if n := g.get("angle"); n != nil && g.get("turn") != nil {
			n.Mistake("angle: a landing with turn: none goes straight on; leave the angle out, or write turn: left or turn: right")
		}
		l.Angle = 0
	}
	if n := g.get("gap"); n != nil && l.Angle != 180 && l.Gap > 0 {
		n.Mistake("gap: only a half turn has a gap between its flights; write angle: 180, or leave the gap out")
	}
	if n := g.blame("spacing", "joists"); n != nil && l.Joists != nil && l.Spacing <= l.Joists.Thickness && l.Spacing > 0 {
		n.Mistake("spacing: joists %s thick stand farther apart than that, on centre", measure.Style{Units: job.Units}.Format(l.Joists.Thickness))
	}
	l.Side = readSide(g, l.Turn)
	l.sizes(g, top, job.Width)
	if n := g.get("built_level"); n != nil && l.BuiltLevel != nil && job.Levels.TotalRise > 0 && *l.BuiltLevel >= job.Levels.TotalRise {
		n.Mistake("built_level: a landing lies below the upper floor, and the total rise is %s; both are measured up from the lower floor", measure.Style{Units: job.Units}.Format(job.Levels.TotalRise))
	}
	return l
}

// readSide reads where the flights stand. Only a turn has an inside and an
// outside; its left and right are one of them each.
func readSide(g group, turn Turn) Place {
	side := Inside
	if turn == Straight {
		side = Middle
	}
	n := g.get("side")
	if n == nil {
		return side
	}
	side = Place(g.word("side", int(side)))
	switch {
	case turn == Straight && (side == Inside || side == Outside):
		n.Mistake("side: a landing with turn: none has no inside and no outside; write left, middle or right, going up")
	case turn == Straight || side < LeftSide:
	case (turn == Left) == (side == LeftSide):
		side = Inside
	default:
		side = Outside
	}
	return side
}

// sizes fills in the clear sizes and holds them against the flights that stand
// on the landing.
func (l *Landing) sizes(g, top group, width *measure.Length) {
	if width == nil {
		return // said of the stairway
	}
	across := *width
	what := "the flights"
	if l.Angle == 180 {
		across, what = 2**width+l.Gap, "two flights and their gap"
	}
	size := func(name string, least measure.Length, of string) measure.Length {
		given := g.lengthIf(name)
		if given == nil {
			return least
		}
		if *given < least && name == "width" || *given < least && l.Angle == 90 {
			g.get(name).Mistake("%s: %s do not fit on it: it must be %s or more", name, of, measure.Style{Units: top.units}.Format(least))
		}
		return *given
	}
	l.Length = size("length", *width, "the flights")
	l.Width = size("width", across, what)
}
