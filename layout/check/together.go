package check

import (
	"fmt"
	"slices"
	"strings"

	"stepoff/layout"
	"stepoff/layout/turn"
	"stepoff/spec"
	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

// Together is what is known of a stairway of several members as a whole: how its
// parts compare, where it passes over itself, what room it takes.
type Together struct {
	Rises    []Stage // the unit rise of each part between levels that are fixed, where there is more than one
	Built    []Built
	Runs     []Stage // the unit run of each flight that has a tread
	Passings []Passing
	Floors   []Floor // the floor it takes, where the room is stated
	// Open says what the upper floor has to be open over for a headroom; nil where
	// the floor's depth is not known.
	Open func(headroom measure.Length) []string
	// As stated: they belong to one straight flight.
	Opening, AvailableRun *measure.Length
}

// Built is a landing that exists, and where it would stand were the total rise
// shared evenly. Millimetres.
type Built struct {
	Name        string
	Level, Even float64
}

// Passing is where one member of a stairway passes over another, and the
// headroom in between: 0 or less where they cut through each other.
type Passing struct {
	Upper, Lower string
	Headroom     float64
}

// Floor is how much floor the stairway takes one way, and how much there is.
type Floor struct {
	Way   string
	Takes float64
	There measure.Length
}

// through is a flight as codes count it that is made of several members:
// flights, curves and the winders that join them, between landings or floors.
type through struct {
	members []layout.Element
	risers  []Share
}

func (t through) name() string {
	return t.members[0].Label() + " to " + t.members[len(t.members)-1].Label()
}

func (t through) has(e layout.Element) bool { return slices.Contains(t.members, e) }

// joined are the flights that winders join of several members. Winders are no
// landing under any code here: IRC, IBC and NCC count them to the flight, and the
// others tell a flight from landing to landing.
func joined(s *layout.Stairway) []through {
	var all []through
	var t through
	end := func() {
		if len(t.members) > 1 {
			all = append(all, t)
		}
		t = through{}
	}
	for _, e := range s.Elements {
		switch e := e.(type) {
		case *layout.Landing:
			end()
			continue
		case *layout.Flight:
			t.risers = append(t.risers, Even(e.Part.Rise(), e.Part.Risers, e.Risers)...)
		case *layout.Curve:
			t.risers = append(t.risers, Even(e.Part.Rise(), e.Part.Risers, e.Risers)...)
		case *layout.Winders:
			t.risers = append(t.risers, Even(e.Part.Rise(), e.Part.Risers, e.Spec.Treads-1)...)
		}
		t.members = append(t.members, e)
	}
	end()
	return all
}

// risersInLine counts the risers of all flights that follow each other without a
// landing that turns, that of the given member with them. Winders and curves turn
// within a flight, not between two.
func risersInLine(s *layout.Stairway, of layout.Element) int {
	n, with := 0, false
	for _, e := range s.Elements {
		with = with || e == of
		switch e := e.(type) {
		case *layout.Flight:
			n += e.Risers
		case *layout.Curve:
			n += e.Risers
		case *layout.Winders:
			n += e.Spec.Treads - 1
		case *layout.Landing:
			if e.Spec.Turn != spec.Straight {
				if with {
					return n
				}
				n = 0
			}
		}
	}
	return n
}

// landingFacts gathers what is known of a landing.
func landingFacts(s *layout.Stairway, l *layout.Landing, st measure.Style) Facts {
	facts := Facts{
		Style: st, Of: l,
		Landings:    []Landing{{l.Name, l.Spec.Length.MM(), l.Spec.Width.MM()}},
		FlightWidth: s.Job.Width,
	}
	for _, f := range s.Flights() {
		if f.Head == l {
			facts.FlightRun = &f.UnitRun
		}
	}
	return facts
}

// wholeFacts gathers what is known of all flights together.
func wholeFacts(s *layout.Stairway, st measure.Style) Facts {
	w := &Together{}
	if !oneFlight(s) {
		w.Opening, w.AvailableRun = s.Job.Opening, s.Job.AvailableRun
	}
	for _, f := range s.Flights() {
		if f.Treads > 0 {
			w.Runs = append(w.Runs, Stage{f.Name, Share{f.UnitRun, 1}})
		}
	}
	if len(s.Parts) > 1 {
		for _, p := range s.Parts {
			w.Rises = append(w.Rises, Stage{partName(s, p), Share{p.Rise(), p.Risers}})
		}
	}
	for _, l := range s.Landings() {
		if l.Spec.BuiltLevel != nil {
			w.Built = append(w.Built, Built{l.Name, l.Level, s.TotalRise.PartMM(l.Risers, s.Risers)})
		}
	}
	for _, p := range s.Passings() {
		w.Passings = append(w.Passings, Passing{p.Upper.Label(), p.Lower.Label(), p.Headroom})
	}
	if box, ok := s.Footprint(); ok {
		if there := s.Job.Room.Along; there != nil {
			w.Floors = append(w.Floors, Floor{"along the first flight", box.Height(), *there})
		}
		if there := s.Job.Room.Across; there != nil {
			w.Floors = append(w.Floors, Floor{"across it", box.Width(), *there})
		}
	}
	if s.Job.Levels.FloorDepth != nil && s.Job.Width != nil && !oneFlight(s) {
		w.Open = func(headroom measure.Length) []string { return openOver(s, headroom, st) }
	}
	facts := Facts{Style: st, Together: w}
	if n := len(s.Winders()); n > 0 {
		facts.WinderSets = &n
	}
	return facts
}

// openOver says over which members the upper floor has to be open, and how far.
func openOver(s *layout.Stairway, headroom measure.Length, st measure.Style) []string {
	var all []string
	for _, o := range s.OpeningInPlan(headroom.MM()) {
		said := o.Over.Label()
		if measure.SnapMM(o.Long) < measure.SnapMM(travel(o.Over)) {
			said = "the upper " + st.InchesMM(o.Long) + " of " + said
		}
		all = append(all, said)
	}
	return all
}

// travel is how long a member is that climbs or turns by steps: along the run, on
// tapered treads along the walkline. A landing has no part.
func travel(e layout.Element) float64 {
	switch e := e.(type) {
	case *layout.Flight:
		return e.TotalRun
	case *layout.Curve:
		return alongWalkline(e.Laid)
	case *layout.Winders:
		return alongWalkline(e.Laid)
	}
	return 0
}

func alongWalkline(l *turn.Laid) (sum float64) {
	for _, t := range l.Treads {
		sum += t.Walkline
	}
	return sum
}

// partName names the members of a part that climb.
func partName(s *layout.Stairway, p layout.Part) string {
	var names []string
	for _, e := range s.Elements {
		switch e := e.(type) {
		case *layout.Flight:
			if e.Part == p {
				names = append(names, e.Name)
			}
		case *layout.Curve:
			if e.Part == p {
				names = append(names, e.Name)
			}
		}
	}
	if len(names) > 1 {
		return names[0] + " to " + names[len(names)-1]
	}
	return strings.Join(names, "")
}

// builtLandings holds the unit rises below and above a landing that exists
// against each other, and says how far the landing is from where one unit rise
// would have it.
func (j *judge) builtLandings() {
	var right []string
	for _, b := range j.Together.Built {
		how := "raise"
		off := b.Even - b.Level
		if off < 0 {
			how, off = "lower", -off
		}
		if measure.SnapMM(off) != 0 {
			right = append(right, fmt.Sprintf("%s %s by %s, to %s, and all risers are alike", how, b.Name, j.exactly(off), j.exactly(b.Even)))
		}
	}
	put := strings.Join(right, "; ")
	j.between("unit rise", j.Together.Rises, rules.RiserVariation, put, "; "+put)
}

// between holds the least and the greatest of the flights' rises or runs against
// what the code lets one flight's differ.
func (j *judge) between(what string, all []Stage, key rules.Key, right, after string) {
	l, ok := j.limit(key)
	if !ok || len(all) < 2 {
		return
	}
	named := make([]at, len(all))
	for i, s := range all {
		named[i] = at{s.Name, s.Riser}
	}
	lo, hi := least(named), most(named)
	apart := hi.apart(lo.Share)
	if apart.Total == 0 {
		return // nothing to say: each flight is judged by itself
	}
	if after == "; " {
		after = ""
	}
	j.atMost(apart.Compare(l.Length), bound{limit: l, actual: mm(apart.MM()), after: after, right: right,
		found: fmt.Sprintf("the %ss differ: %s of %s, %s of %s, by %s", what, j.exactly(hi.MM()), hi.where, j.exactly(lo.MM()), lo.where, j.exactly(apart.MM()))})
}

// passings holds the headroom where the stairway passes over itself. That it
// cuts through itself is said under any code.
func (j *judge) passings(l rules.Limit, limited bool) {
	for _, p := range j.Together.Passings {
		b := bound{limit: l, actual: mm(p.Headroom), right: "more risers below " + p.Upper + ", another turn, or flights farther apart",
			found: fmt.Sprintf("%s passes over %s: headroom %s", p.Upper, p.Lower, j.exactly(p.Headroom))}
		if p.Headroom <= 0 {
			b.found = fmt.Sprintf("%s and %s cut through each other, by %s", p.Upper, p.Lower, j.exactly(-p.Headroom))
		}
		if limited {
			j.atLeast(compareMM(p.Headroom, l.Length), b)
		} else if p.Headroom <= 0 {
			j.sayOf("the job", Warn, nil, b.actual, b.found+"; "+b.right)
		}
	}
}

// openFloor says what the upper floor has to be open over.
func (j *judge) openFloor(l rules.Limit) {
	if j.Together.Open == nil {
		return
	}
	over := j.Together.Open(l.Length)
	text := "no floor has to be open for " + j.limitText(l) + " of headroom: the ceiling is high enough all the way up"
	if len(over) > 0 {
		text = fmt.Sprintf("%s of headroom needs the upper floor open over %s, all the width", j.limitText(l), strings.Join(over, ", "))
	}
	if o := j.Together.Opening; o != nil {
		text += fmt.Sprintf("; the opening stated, %s, is taken for one straight flight's and not held against it", j.Style.Inches(*o))
	}
	j.say(Info, []rules.Limit{l}, nil, nil, text)
}

// room holds the floor that the stairway takes against what there is.
func (j *judge) room() {
	if a := j.Together.AvailableRun; a != nil {
		j.say(Info, nil, length(*a), nil, fmt.Sprintf("the available run stated, %s, is taken for one straight flight's and not held against these; `room` is what the whole has", j.Style.Inches(*a)))
	}
	for _, f := range j.Together.Floors {
		status, text := Pass, fmt.Sprintf("%s the stairway takes %s of the %s there are", f.Way, j.exactly(f.Takes), j.Style.Inches(f.There))
		if compareMM(f.Takes, f.There) > 0 {
			status = j.broken()
			text = fmt.Sprintf("%s the stairway takes %s, and there are %s: %s too much", f.Way, j.exactly(f.Takes), j.Style.Inches(f.There), j.atLeastTape(f.Takes-f.There.MM()))
		}
		j.say(status, nil, length(f.There), mm(f.Takes), text)
	}
}
