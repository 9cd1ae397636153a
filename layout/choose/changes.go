package choose

import (
	"fmt"
	"math"

	"stepoff/layout"
	"stepoff/layout/check"
	"stepoff/spec"
	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

// Changes tries, for every flight that does not hold, the least of each kind of
// change by itself, in the order of how much of the stair they change: a better
// grade, more stringers, a strongback, posts, a landing. Where the treads ask
// for more stringers, each is tried with those. Empty: everything holds, or has
// no verdict.
func Changes(s *layout.Stairway, code *rules.Code) []check.Change {
	var all []check.Change
	for i, f := range s.Flights() {
		w := s.Strength(f, code)
		if w == nil || w.Holds() {
			continue
		}
		t := trial{job: s.Job, at: i, code: code, style: measure.Style{Units: s.Job.Units}}
		if len(s.Flights()) > 1 {
			t.flight = f.Name + ": "
		}
		all = append(all, t.changes(f, w)...)
	}
	return all
}

// trial changes one flight of a job and looks whether it holds.
type trial struct {
	job    *spec.Job
	at     int // of the flight among the flights
	code   *rules.Code
	style  measure.Style
	flight string // begins every text
	base   int    // stringers the treads ask for; 0: as many as there are
	with   string // says so
	rule   string // says what of the code a flight as long as this breaks; empty: nothing
}

// try changes a copy and tells how it carries.
func (t trial) try(edit func(st *spec.Stringer)) (*layout.Flight, *layout.Strength) {
	job := clone(t.job)
	n := 0
	for _, e := range job.Stairway {
		if e.Flight == nil {
			continue
		}
		if n == t.at {
			st := &e.Flight.Stringer
			if t.base > 0 {
				recount(st, t.base)
			}
			edit(st)
		}
		n++
	}
	return strengthOf(job, t.at, t.code)
}

func (t trial) holds(edit func(st *spec.Stringer)) bool {
	_, w := t.try(edit)
	return w != nil && w.Unknown == "" && w.Holds() && longest(w) <= t.mostSpan()+touching
}

// touching is what a span may be over the code's limit by rounding, mm.
const touching = 1e-6

// mostSpan is the code's longest span of a sawn stringer: no change is worth its
// lumber that leaves it broken.
func (t trial) mostSpan() float64 {
	if l, ok := t.code.Limit(rules.StringerCutSpanMax); ok {
		return l.Length.MM()
	}
	return math.Inf(1)
}

// longest is the longest span of the stringers that span.
func longest(w *layout.Strength) float64 {
	most := 0.0
	for i := range w.Stringers {
		if c := &w.Stringers[i]; c.Spans() {
			most = math.Max(most, c.LongestSpan())
		}
	}
	return most
}

// recount changes the number of stringers: the outer ones stay as they are held,
// those between are held as the inner ones were, free if there was none. Where
// feet differ in level the new ones are taken to stand as the job's rise was
// measured.
func recount(st *spec.Stringer, n int) {
	old := *st
	st.Support = make([]spec.Support, n)
	for i := range st.Support {
		switch {
		case i == 0:
			st.Support[i] = layout.SupportAt(&old, 0)
		case i == n-1:
			st.Support[i] = layout.SupportAt(&old, old.Count-1)
		case len(old.Support) == 1:
			st.Support[i] = old.Support[0]
		default:
			st.Support[i] = spec.Span
		}
	}
	st.Count, st.FootLevels = n, nil
}

func (t trial) changes(f *layout.Flight, w *layout.Strength) []check.Change {
	st := &f.Spec.Stringer
	if longest(w) > t.mostSpan()+touching {
		t.rule = fmt.Sprintf("; %s has sawn stringers span %s at most", t.code.Name, t.style.InchesMM(t.mostSpan()))
	}
	if !w.TreadsHold() {
		for n := st.Count + 1; t.roomFor(n); n++ {
			if _, more := t.try(func(st *spec.Stringer) { recount(st, n) }); more != nil && more.TreadsHold() {
				t.base, t.with = n, fmt.Sprintf("%d stringers, for the treads, and ", n)
				break
			}
		}
		if t.base == 0 {
			return []check.Change{{Kind: "treads", Text: t.flight + "no number of stringers holds these treads: take thicker or stronger ones"}}
		}
		if t.holds(func(*spec.Stringer) {}) {
			return []check.Change{{Kind: "stringers", Text: t.flight + fmt.Sprintf("%d stringers, for the treads", t.base), Holds: true}}
		}
	}
	return []check.Change{t.grade(st), t.stringers(st), t.strongback(st), t.props(f, st), t.landing(f, st)}
}

// roomFor tells whether so many stringers leave room between them.
func (t trial) roomFor(n int) bool {
	return *t.job.Width/measure.Length(n-1) >= leastSpacing
}

// say makes the change: what to do where it holds, what does not where not.
func (t trial) say(kind string, holds bool, does, doesNot string) check.Change {
	if !holds {
		return check.Change{Kind: kind, Text: t.flight + doesNot + t.rule}
	}
	return check.Change{Kind: kind, Text: t.flight + t.with + does, Holds: true}
}

func (t trial) grade(st *spec.Stringer) check.Change {
	if st.Wood.Values != nil {
		return t.say("grade", false, "", "a better grade: the job states its own values")
	}
	better, species := betterGrades(st.Wood, st.Stock.Size)
	for _, g := range better {
		if t.holds(func(st *spec.Stringer) { st.Wood.Grade = g }) {
			return t.say("grade", true, fmt.Sprintf("a better grade: %s %s", species, g), "")
		}
	}
	return t.say("grade", false, "", "a better grade: none of "+species+" holds by itself")
}

func (t trial) stringers(st *spec.Stringer) check.Change {
	for n := max(st.Count, t.base) + 1; t.roomFor(n); n++ {
		if t.holds(func(st *spec.Stringer) { recount(st, n) }) {
			t.with = ""
			return t.say("stringers", true, fmt.Sprintf("more stringers: %d, %s apart", n, t.style.InchesMM(t.job.Width.MM()/float64(n-1))), "")
		}
	}
	return t.say("stringers", false, "", fmt.Sprintf("more stringers: no number of them holds by itself, down to %s apart", t.style.Inches(leastSpacing)))
}

func (t trial) strongback(st *spec.Stringer) check.Change {
	widest := ""
	for _, p := range stiffeners(st) {
		if t.holds(func(st *spec.Stringer) { st.Strongback = &p }) {
			return t.say("strongback", true, fmt.Sprintf("a strongback: %s glued and nailed along each stringer that spans", p.Name), "")
		}
		widest = p.Name
	}
	if widest == "" {
		return t.say("strongback", false, "", "a strongback: none is wider than the one there is")
	}
	return t.say("strongback", false, "", "a strongback: even "+widest+" does not hold by itself")
}

// mostPosts is how many posts are tried: with more, it is another stair.
const mostPosts = 4

func (t trial) props(f *layout.Flight, st *spec.Stringer) check.Change {
	for n := len(st.Props) + 1; n <= mostPosts; n++ {
		at := evenly(f.Stringers[0].HeadX(), n, t.style)
		if t.holds(func(st *spec.Stringer) { st.Props = at }) {
			words := ""
			for i, p := range at {
				if i > 0 {
					words += ", "
				}
				words += t.style.Inches(p)
			}
			posts := "a post"
			if n > 1 {
				posts = fmt.Sprintf("%d posts", n)
			}
			return t.say("props", true, fmt.Sprintf("%s under each stringer that spans, %s from the foot's front", posts, words), "")
		}
	}
	return t.say("props", false, "", fmt.Sprintf("posts: up to %d do not hold by themselves", mostPosts))
}

// evenly are places of so many posts, to what a tape shows at a glance.
func evenly(headX float64, n int, st measure.Style) []measure.Length {
	step := measure.Inch / 2
	if st.Units == measure.Metric {
		step = 5 * measure.Millimetre
	}
	var at []measure.Length
	for i := 1; i <= n; i++ {
		x, _ := measure.FromMM(headX * float64(i) / float64(n+1))
		at = append(at, (x+step/2)/step*step)
	}
	return at
}

// landing says how long a flight of these steps holds, so that a landing may
// part it. Loads and what each stringer carries stay as they are.
func (t trial) landing(f *layout.Flight, st *spec.Stringer) check.Change {
	_, w := t.try(func(st *spec.Stringer) { st.Props = nil })
	reach := t.mostSpan()
	if w != nil {
		for i := range w.Stringers {
			if c := &w.Stringers[i]; c.Spans() {
				reach = math.Min(reach, c.Limit.Least())
			}
		}
	}
	g := f.Stringers[0]
	notches := int(math.Floor((reach-g.LastTread+touching)/g.Run)) + 1
	risers := notches
	if f.Hung() {
		risers++
	}
	span := float64(notches-1)*g.Run + g.LastTread
	holds := w != nil && notches >= 1 && risers < f.Risers
	return t.say("landing", holds, fmt.Sprintf("shorter flights, with a landing between: %d risers and a span of %s at the most", risers, t.style.InchesMM(span)),
		"shorter flights: not even one tread holds")
}
