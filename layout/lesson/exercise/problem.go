package exercise

import (
	"fmt"
	"math"

	"stepoff/layout"
	"stepoff/layout/lesson"
	"stepoff/layout/stringer"
	"stepoff/spec/measure"
)

// Problem is one exercise.
type Problem struct {
	Kind  string
	Title string
	Ask   string
	Given []Given

	// Names are the parts that are lettered on the drawing, in the order of their
	// letters. Drawn is a stringer to be looked at. Both are drawings beside the
	// problem; where there is none, it has none.
	Names []string
	Drawn *Drawn

	Answers []Answer
	Worked  []string

	// Stairway is the stair behind the problem; nil where it is about no whole
	// stair.
	Stairway *layout.Stairway
}

// Given is a measurement the problem states, exactly as a tape shows it, or a
// word or a number.
type Given struct{ Name, Value string }

// Answer is one of a problem's answers. A length is right within Tolerance of MM;
// a count or a word only as it is written.
type Answer struct {
	Name      string
	Value     string // as printed
	MM        float64
	Tolerance measure.Length // 0: not a length
}

// Drawn is a stringer as somebody has marked and sawn it. Overcut is how far the
// saw ran past a root, 0 where it did not; Root is that root's number.
type Drawn struct {
	*stringer.Sawn
	Overcut float64
	Root    int
}

// Tolerances of answers, by how they are found: taken from whole and added, as a
// tape is read; through a division or a root.
func (m maker) read() measure.Length {
	if m.st.Units == measure.Metric {
		return measure.Millimetre
	}
	return measure.Inch / 16
}

func (m maker) rooted() measure.Length { return 2 * m.read() }

// Set makes a set of problems, no two of them alike. The same seed, count, level
// and units give the same set for ever.
func Set(seed uint64, count int, level lesson.Level, units measure.Units) ([]Problem, error) {
	var kinds []kind
	for _, k := range allKinds {
		if level == lesson.Full || k.first {
			kinds = append(kinds, k)
		}
	}
	seen := map[string]bool{}
	var all []Problem
	var round []kind
	for i := range count {
		if len(round) == 0 {
			round = some(newDice(seed, i, 1<<15), len(kinds), kinds)
		}
		k := round[0]
		round = round[1:]
		p, err := fresh(k, seed, i, level, units, seen)
		if err != nil {
			return nil, err
		}
		all = append(all, p)
	}
	return all, nil
}

// tries is how often another problem of a kind is drawn where it was in the set
// already.
const tries = 1000

func fresh(k kind, seed uint64, i int, level lesson.Level, units measure.Units, seen map[string]bool) (Problem, error) {
	for try := range tries {
		m := maker{dice: newDice(seed, i, try), level: level, st: measure.Style{Units: units}}
		p, err := k.make(m)
		if err != nil {
			return p, fmt.Errorf("exercise %d of seed %d (%s): %w", i+1, seed, k.name, err)
		}
		p.Kind = k.name
		if key := p.key(); !seen[key] {
			seen[key] = true
			return p, nil
		}
	}
	return Problem{}, fmt.Errorf("there are not so many different exercises of the kind %s; ask for fewer", k.name)
}

// key is what makes two problems alike.
func (p Problem) key() string { return fmt.Sprint(p.Kind, p.Given, p.Names) }

// kind is one kind of problem; first: on the first level too.
type kind struct {
	name  string
	first bool
	make  func(maker) (Problem, error)
}

// allKinds in an order that must stay: sets are drawn from it. New kinds would
// change every set, and need a new rule for old seeds.
var allKinds = []kind{
	{"count-risers", true, maker.countRisers},
	{"unit-rise", true, maker.unitRise},
	{"unit-run", true, maker.unitRun},
	{"total-run", true, maker.totalRun},
	{"stringer-length", false, maker.stringerLength},
	{"square", true, maker.squareSettings},
	{"drop", true, maker.bottomDrop},
	{"throat", true, maker.throat},
	{"opening", false, maker.opening},
	{"headroom", false, maker.headroom},
	{"story-pole", true, maker.storyPole},
	{"landing", false, maker.landing},
	{"winders", false, maker.winders},
	{"code-fault", false, maker.codeFault},
	{"parts", true, maker.parts},
	{"sawn-wrong", false, maker.sawnWrong},
}

// Kinds are the names of all kinds of problems.
func Kinds() []string {
	var all []string
	for _, k := range allKinds {
		all = append(all, k.name)
	}
	return all
}

// maker makes one problem.
type maker struct {
	dice
	level lesson.Level
	st    measure.Style
}

func (m maker) metric() bool { return m.st.Units == measure.Metric }

func (m maker) say(mm float64) string        { return m.st.InchesMM(mm) }
func (m maker) exact(mm float64) string      { return m.st.DecimalMM(mm) }
func (m maker) tape(l measure.Length) string { return m.st.Inches(l) }

func (m maker) given(name string, l measure.Length) Given { return Given{name, m.tape(l)} }

func count(name string, n int) Given { return Given{name, fmt.Sprint(n)} }

// length is an answer that is a length.
func (m maker) length(name string, mm float64, within measure.Length) Answer {
	return Answer{Name: name, Value: m.say(mm), MM: mm, Tolerance: within}
}

// Right tells whether a length answers well enough.
func (a Answer) Right(mm float64) bool {
	return a.Tolerance > 0 && math.Abs(mm-a.MM) <= a.Tolerance.MM()
}
