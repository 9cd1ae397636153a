package exercise

import (
	"fmt"
	"math"

	"stepoff/layout/lesson"
	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

// floors are the sizes of the upper floor that openings are asked for under.
func (m maker) floor(s *stair) (headroom measure.Length) {
	if m.metric() {
		s.floorDepth = m.from(260*measure.Millimetre, 340*measure.Millimetre, 5*measure.Millimetre)
		return m.from(2000*measure.Millimetre, 2100*measure.Millimetre, 10*measure.Millimetre)
	}
	s.floorDepth = m.from(10*measure.Inch, 13*measure.Inch, measure.Inch/4)
	return m.from(80*measure.Inch, 84*measure.Inch, measure.Inch/2)
}

// tall draws a stair high enough that headroom is a question.
func (m maker) tall() stair { return m.stairOf(14, true) }

func (m maker) openingGiven(s stair) []Given {
	return []Given{m.given("unit rise", s.rise/measure.Length(s.risers)), m.given("unit run", s.run),
		m.given("thickness of the upper floor", s.floorDepth), m.given("nosing", s.nosing), m.given("riser board", s.board)}
}

func (m maker) opening() (Problem, error) {
	s := m.tall()
	headroom := m.floor(&s)
	laid, err := m.lay(s)
	if err != nil {
		return Problem{}, err
	}
	need, ok := laid.Overhead().OpeningFor(headroom.MM())
	if !ok {
		return Problem{}, fmt.Errorf("no opening gives a headroom of %s", m.tape(headroom))
	}
	return Problem{
		Title: "Find the floor opening", Stairway: laid,
		Ask:     "How far from the head plumb cut must the floor be open, level, for this headroom?",
		Given:   append([]Given{m.given("headroom", headroom)}, m.openingGiven(s)...),
		Answers: []Answer{m.length("opening", need, m.rooted())},
		Worked: []string{
			fmt.Sprintf("height to climb: %s + %s = %s", m.tape(headroom), m.tape(s.floorDepth), m.tape(headroom+s.floorDepth)),
			"level: height x run / rise = " + m.exact((headroom+s.floorDepth).MM()*s.run.MM()/s.unitRise()),
			fmt.Sprintf("nosing and riser board stand before the plumb cut: %s more", m.tape(s.nosing+s.board)),
			"opening " + m.say(need)},
	}, nil
}

func (m maker) headroom() (Problem, error) {
	s := m.tall()
	headroom := m.floor(&s)
	step := measure.Inch / 4
	if m.metric() {
		step = 5 * measure.Millimetre
	}
	// An opening a tape shows, a little larger than the headroom needs.
	need := (headroom+s.floorDepth).MM()*s.run.MM()/s.unitRise() + (s.nosing + s.board).MM()
	opening := step*measure.Length(math.Ceil(need/step.MM())) + m.from(0, 8*step, step)
	laid, err := m.lay(s)
	if err != nil {
		return Problem{}, err
	}
	least, _ := laid.Overhead().Least(opening.MM())
	back := opening - s.nosing - s.board
	return Problem{
		Title: "Find the headroom", Stairway: laid,
		Ask:     "The floor is open so far from the head plumb cut. What headroom is left?",
		Given:   append([]Given{m.given("opening", opening)}, m.openingGiven(s)...),
		Answers: []Answer{m.length("headroom", least, m.rooted())},
		Worked: []string{
			fmt.Sprintf("from the last nosing: %s - %s = %s", m.tape(opening), m.tape(s.nosing+s.board), m.tape(back)),
			"height climbed there: run of it x rise / run = " + m.exact(back.MM()*s.unitRise()/s.run.MM()),
			fmt.Sprintf("less the floor, %s: %s", m.tape(s.floorDepth), m.say(least))},
	}, nil
}

func (m maker) landing() (Problem, error) {
	s := m.stair(false)
	below := 3 + m.n(s.risers-6)
	finish := one(m.dice, 0, measure.Inch/2, 5*measure.Inch/8, 3*measure.Inch/4)
	if m.metric() {
		finish = one[measure.Length](m.dice, 0, 10, 15, 20) * measure.Millimetre
	}
	s.members = fmt.Sprintf("[flight: {risers: %d, run: %s}, landing: {turn: %s, finish: %s}, flight: {risers: %d, run: %s}]",
		below, text(s.run), one(m.dice, "left", "right"), text(finish), s.risers-below, text(s.run))
	laid, err := m.lay(s)
	if err != nil {
		return Problem{}, err
	}
	l := laid.Landings()[0]
	return Problem{
		Title: "Set the landing", Stairway: laid,
		Ask:   "How high over the lower finished floor is the landing, finished, and how high is the top of its sheathing?",
		Given: []Given{m.given("total rise", s.rise), count("risers in all", s.risers), count("risers below the landing", below), m.given("flooring on the landing", finish)},
		Answers: []Answer{m.length("finished landing", l.Level, m.read()),
			m.length("top of the sheathing", l.FramingLevel, m.read())},
		Worked: []string{
			fmt.Sprintf("%s x %d / %d = %s", m.tape(s.rise), below, s.risers, m.exact(l.Level)),
			fmt.Sprintf("less %s of flooring: %s", m.tape(finish), m.say(l.FramingLevel))},
	}, nil
}

// deepestMetric is how deep a metric winder is at most: what
// uk-adk allows a run in a dwelling.
const deepestMetric = 300 * measure.Millimetre

// winders asks for the depth at the walkline of a quarter turn whose riser lines
// meet in one point, the setback before and after the corner. The nosings stand
// equally far before their riser lines and are turned by equal angles, so that
// straight across from nosing to nosing is the chord of one angle.
func (m maker) winders() (Problem, error) {
	s := m.stairOf(12, false)
	treads := one(m.dice, 3, 4)
	half := 90 / float64(treads) / 2
	walkline, low, step := 12*measure.Inch, 12*measure.Inch, measure.Inch/8
	s.clear = one[measure.Length](m.dice, 36, 37, 38, 40) * measure.Inch
	if treads == 4 {
		low += walkline / 3
	}
	high := low + 24*step
	if m.metric() { // measured in the middle; there no less deep than the flights' treads
		s.clear = one[measure.Length](m.dice, 800, 820, 840, 850, 860, 880, 900) * measure.Millimetre
		walkline, step = s.clear/2, 5*measure.Millimetre
		from := func(depth measure.Length) measure.Length { // the set-back that makes winders so deep
			return measure.Length(float64(depth)/(2*math.Sin(half*math.Pi/180))) - walkline
		}
		low = max(from(s.run), (110+40*measure.Length(treads-3))*measure.Millimetre) // 50 mm at the narrow end
		low = (low + step) / step * step
		high = low + max(0, from(deepestMetric)-low)/step*step
	}
	setback := m.from(low, high, step)
	below := 3 + m.n(4)
	above := s.risers - below - treads + 1
	s.members = fmt.Sprintf("[flight: {risers: %d, run: %s}, winders: {turn: %s, treads: %d, setback: %s, walkline: %s, narrow: %s}, flight: {risers: %d, run: %s}]",
		below, text(s.run), one(m.dice, "left", "right"), treads, text(setback), text(walkline), text(measure.Inch), above, text(s.run))
	laid, err := m.lay(s)
	if err != nil {
		return Problem{}, err
	}
	sine := math.Round(math.Sin(half*math.Pi/180)*1e4) / 1e4
	radius := setback + walkline
	depth := laid.Winders()[0].Treads[0].Walkline
	return Problem{
		Title: "Measure the winders", Stairway: laid,
		Ask: "The riser lines of this quarter turn meet in one point, the pivot, that lies the setback in from the inside edge. How deep is each winder at the walkline, straight across?",
		Given: []Given{count("winders", treads), m.given("setback", setback), m.given("walkline, from the inside edge", walkline),
			{fmt.Sprintf("sine of %s degrees", trim(half)), fmt.Sprintf("%.4f", sine)}},
		Answers: []Answer{m.length("depth at the walkline", depth, m.rooted())},
		Worked: []string{
			fmt.Sprintf("each winder turns 90 / %d = %s degrees, half of it %s", treads, trim(2*half), trim(half)),
			fmt.Sprintf("walkline from the pivot: %s + %s = %s", m.tape(setback), m.tape(walkline), m.tape(radius)),
			fmt.Sprintf("2 x %s x %.4f = %s", m.tape(radius), sine, m.say(depth))},
	}, nil
}

// trim prints an angle without zeros at its end.
func trim(v float64) string { return fmt.Sprintf("%g", math.Round(v*1e4)/1e4) }

// parts asks for the names of parts in a drawing.
func (m maker) parts() (Problem, error) {
	kinds, err := lesson.Kinds()
	if err != nil {
		return Problem{}, err
	}
	p := Problem{
		Title: "Name the parts", Stairway: kinds[0].Stairway,
		Ask:    "Write the name of each part beside its letter.",
		Names:  some(m.dice, 6, lesson.PartNames),
		Worked: []string{"each name stands with its letter under the parts of a stair"},
	}
	for i, name := range p.Names {
		p.Answers = append(p.Answers, Answer{Name: lesson.PartLetter(i), Value: name})
	}
	return p, nil
}

// fault is one thing measured of a stair that stands, with its limit.
type fault struct {
	name       string
	limit      measure.Length
	most       bool // the limit is the most allowed, else the least
	good, step measure.Length
	spread     int // how many steps it may lie on the right side
}

// codeFault lists a stair as measured, one thing in it against its limit.
func (m maker) codeFault() (Problem, error) {
	in, mm := measure.Inch, measure.Millimetre
	faults := []fault{
		{faultRiser, 7*in + 3*in/4, true, 0, in / 16, 8},
		{"greatest difference between two risers", 3 * in / 8, true, 0, in / 16, 5},
		{faultRun, 10 * in, false, 0, in / 8, 8},
		{"nosing", in + in/4, true, 0, in / 16, 7},
		{"least headroom", 80 * in, false, 0, in / 4, 12},
		{"clear width", 36 * in, false, 0, in / 4, 12},
		{"height of the handrail", 34 * in, false, 0, in / 4, 12},
	}
	if m.metric() {
		faults = []fault{
			{faultRiser, 220 * mm, true, 0, mm, 30},
			{faultRun, 220 * mm, false, 0, mm, 40},
			{"least headroom", 2000 * mm, false, 0, 5 * mm, 30},
			{"height of the handrail", 900 * mm, false, 0, 5 * mm, 20},
		}
	}
	wrong, values := m.measuredWrong(faults)
	p := Problem{Title: "Find what breaks the code"}
	p.Ask = "A stair was measured. The limits of the code in force stand beside. Which measurement breaks the code, and by how much?"
	for i, f := range faults {
		word := "at least"
		if f.most {
			word = "at most"
		}
		p.Given = append(p.Given, Given{f.name, fmt.Sprintf("%s  (%s %s)", m.tape(values[i]), word, m.tape(f.limit))})
		if i == wrong {
			by := max(values[i]-f.limit, f.limit-values[i])
			p.Answers = []Answer{{Name: "what breaks the code", Value: f.name}, m.length("by", by.MM(), m.read()/2)}
			p.Worked = []string{fmt.Sprintf("%s: %s, and the code has %s %s: off by %s", f.name, m.tape(values[i]), word, m.tape(f.limit), m.tape(by))}
		}
	}
	return p, nil
}

// What the pitch is made of.
const (
	faultRiser = "greatest riser"
	faultRun   = "least run, nosing to nosing"
)

// measuredWrong draws which measurement is wrong and what each is. Where the code
// limits the pitch too, that of rise and run keeps it: one thing alone is wrong.
func (m maker) measuredWrong(faults []fault) (wrong int, values []measure.Length) {
	code, _ := rules.Lookup(m.code())
	steepest, limited := code.Limit(rules.PitchMax)
	wrong = m.n(len(faults))
	for {
		values = values[:0]
		of := map[string]float64{}
		for i, f := range faults {
			off := measure.Length(m.n(f.spread)) * f.step // on the right side
			if i == wrong {
				off = -measure.Length(1+m.n(6)) * f.step
			}
			if f.most {
				off = -off
			}
			values = append(values, f.limit+off)
			of[f.name] = values[i].MM()
		}
		if !limited || of[faultRiser] <= of[faultRun]*math.Tan(steepest.Degrees*math.Pi/180) {
			return wrong, values
		}
	}
}
