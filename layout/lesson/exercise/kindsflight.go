package exercise

import (
	"fmt"
	"math"

	"stepoff/layout"
	"stepoff/spec/measure"
)

// mostRise is the greatest unit rise the count is asked for under.
func (m maker) mostRise() measure.Length {
	if m.metric() {
		return one[measure.Length](m.dice, 185, 190, 195, 200) * measure.Millimetre
	}
	return 7*measure.Inch + one[measure.Length](m.dice, 0, 1, 2, 3)*measure.Inch/4
}

func (m maker) countRisers() (Problem, error) {
	s, most := m.stair(false), m.mostRise()
	n := int((s.rise + most - 1) / most)
	s.risers = n
	laid, err := m.lay(s)
	ratio := s.rise.MM() / most.MM()
	left := "a part of a riser is a whole one more"
	if s.rise%most == 0 {
		left = "no part of a riser is left over"
	}
	return Problem{
		Title: "Count the risers", Stairway: laid,
		Ask:     "How many risers does this stair need, as few as the greatest rise allows?",
		Given:   []Given{m.given("total rise", s.rise), m.given("greatest rise of one step", most)},
		Answers: []Answer{{Name: "risers", Value: fmt.Sprint(n)}},
		Worked: []string{
			fmt.Sprintf("%s / %s = %.3f", m.tape(s.rise), m.tape(most), ratio),
			fmt.Sprintf("%s: %d", left, n),
			fmt.Sprintf("proof: %s / %d = %s each", m.tape(s.rise), n, m.exact(s.unitRise()))},
	}, err
}

func (m maker) unitRise() (Problem, error) {
	s := m.stair(false)
	laid, f, err := m.flight(s)
	if err != nil {
		return Problem{}, err
	}
	return Problem{
		Title: "Divide the rise", Stairway: laid,
		Ask:     "What is the unit rise?",
		Given:   []Given{m.given("total rise", s.rise), count("risers", s.risers)},
		Answers: []Answer{m.length("unit rise", f.UnitRise, m.read())},
		Worked: []string{
			fmt.Sprintf("%s / %d = %s", m.tape(s.rise), s.risers, m.exact(f.UnitRise)),
			"to the nearest mark of the tape: " + m.say(f.UnitRise)},
	}, nil
}

func (m maker) unitRun() (Problem, error) {
	s := m.stair(false)
	laid, f, err := m.flight(s)
	if err != nil {
		return Problem{}, err
	}
	total := s.run * measure.Length(s.treads())
	return Problem{
		Title: "Find the run", Stairway: laid,
		Ask:     "The head is hung: the top tread is one rise below the upper floor. What is the unit run?",
		Given:   []Given{m.given("total run, nosing to nosing", total), count("risers", s.risers)},
		Answers: []Answer{m.length("unit run", f.UnitRun.MM(), m.read())},
		Worked: []string{
			fmt.Sprintf("treads: %d - 1 = %d", s.risers, s.treads()),
			fmt.Sprintf("%s / %d = %s", m.tape(total), s.treads(), m.tape(s.run))},
	}, nil
}

func (m maker) totalRun() (Problem, error) {
	s := m.stair(false)
	laid, f, err := m.flight(s)
	if err != nil {
		return Problem{}, err
	}
	return Problem{
		Title: "Find the total run", Stairway: laid,
		Ask:     "The head is hung: the top tread is one rise below the upper floor. What is the total run, nosing to nosing?",
		Given:   []Given{count("risers", s.risers), m.given("unit run", s.run)},
		Answers: []Answer{m.length("total run", f.TotalRun, m.read())},
		Worked: []string{
			fmt.Sprintf("treads: %d - 1 = %d", s.risers, s.treads()),
			fmt.Sprintf("%d x %s = %s", s.treads(), m.tape(s.run), m.say(f.TotalRun))},
	}, nil
}

func (m maker) stringerLength() (Problem, error) {
	s := m.stair(true)
	laid, f, err := m.flight(s)
	if err != nil {
		return Problem{}, err
	}
	g := &f.Stringers[0]
	first, last := g.Tips[0].X, g.Tips[len(g.Tips)-1].X
	return Problem{
		Title: "Find the length of the stringer", Stairway: laid,
		Ask: "How long is one step along the edge, and how long must the board be, without trimming? The last tread cut is a whole run.",
		Given: []Given{
			m.given("unit rise", s.rise/measure.Length(s.risers)), m.given("unit run", s.run),
			count("treads sawn", g.Notches), m.given("first riser cut", s.firstCut())},
		Answers: []Answer{m.length("step", g.Step, m.rooted()), m.length("least board", g.LeastBlank, m.rooted())},
		Worked: []string{
			fmt.Sprintf("step: the square root of %s x %s + %s x %s = %s", m.exact(f.UnitRise), m.exact(f.UnitRise), m.exact(s.run.MM()), m.exact(s.run.MM()), m.exact(g.Step)),
			fmt.Sprintf("first tip: %s x rise / step = %s", m.tape(s.firstCut()), m.exact(first)),
			fmt.Sprintf("last tip: %d steps more = %s", g.Notches-1, m.exact(last)),
			fmt.Sprintf("to the head: run x run / step = %s more", m.exact(g.LeastBlank-last)),
			"together " + m.say(g.LeastBlank)},
	}, nil
}

// firstCut is the first riser cut of a stair whose unit rise a tape shows.
func (s stair) firstCut() measure.Length {
	return s.rise/measure.Length(s.risers) - s.tread + s.flooring
}

func (m maker) squareSettings() (Problem, error) {
	s := m.stair(false)
	laid, f, err := m.flight(s)
	if err != nil {
		return Problem{}, err
	}
	q := f.Stringers[0].Square
	mark := "sixteenth"
	if m.metric() {
		mark = "millimetre"
	}
	return Problem{
		Title: "Set the square", Stairway: laid,
		Ask:     "To which figures, to the nearest " + mark + ", are the gauges set?",
		Given:   []Given{m.given("total rise", s.rise), count("risers", s.risers), m.given("unit run", s.run)},
		Answers: []Answer{m.length("tongue", q.Tongue, m.read()/2), m.length("blade", q.Blade, m.read()/2)},
		Worked: []string{
			fmt.Sprintf("tongue, the rise: %s / %d = %s, set %s", m.tape(s.rise), s.risers, m.exact(f.UnitRise), m.say(q.Tongue)),
			"blade, the run: " + m.say(q.Blade)},
	}, nil
}

func (m maker) bottomDrop() (Problem, error) {
	s := m.stair(true)
	laid, f, err := m.flight(s)
	if err != nil {
		return Problem{}, err
	}
	g := &f.Stringers[0]
	worked := fmt.Sprintf("drop: %s", m.tape(s.tread))
	if s.flooring > 0 {
		worked = fmt.Sprintf("drop: %s of tread, less %s of flooring to come = %s", m.tape(s.tread), m.tape(s.flooring), m.say(g.BottomDrop))
	}
	return Problem{
		Title: "Drop the foot", Stairway: laid,
		Ask:     "How much comes off the foot, and how long is the first riser cut?",
		Given:   []Given{m.given("unit rise", s.rise/measure.Length(s.risers)), m.given("thickness of the treads", s.tread), m.given("flooring still to come round the foot", s.flooring)},
		Answers: []Answer{m.length("bottom drop", g.BottomDrop, m.read()/2), m.length("first riser cut", g.FirstRiserCut, m.read()/2)},
		Worked:  []string{worked, fmt.Sprintf("first riser cut: %s - %s = %s", m.say(f.UnitRise), m.say(g.BottomDrop), m.say(g.FirstRiserCut))},
	}, nil
}

func (m maker) throat() (Problem, error) {
	s := m.stair(true)
	laid, f, err := m.flight(s)
	if err != nil {
		return Problem{}, err
	}
	g := &f.Stringers[0]
	return Problem{
		Title: "Find the throat", Stairway: laid,
		Ask:     "How deep is a notch, square to the edge, and how much wood is left under it?",
		Given:   []Given{m.given("unit rise", s.rise/measure.Length(s.risers)), m.given("unit run", s.run), m.given("width of the board", s.width)},
		Answers: []Answer{m.length("notch depth", g.NotchDepth, m.read()), m.length("throat", g.Throat, m.read())},
		Worked: []string{
			"step: the square root of rise x rise + run x run = " + m.exact(g.Step),
			"notch depth: rise x run / step = " + m.exact(g.NotchDepth),
			fmt.Sprintf("throat: %s - %s = %s", m.tape(s.width), m.exact(g.NotchDepth), m.say(g.Throat))},
	}, nil
}

func (m maker) storyPole() (Problem, error) {
	s := m.stair(false)
	laid, err := m.lay(s)
	if err != nil {
		return Problem{}, err
	}
	low := 1 + m.n(s.risers/2)
	high := s.risers/2 + 1 + m.n(s.risers-s.risers/2-1)
	p := Problem{
		Title: "Mark the story pole", Stairway: laid,
		Ask:   fmt.Sprintf("How high over the lower finished floor are the finished treads of step %d and step %d?", low, high),
		Given: []Given{m.given("total rise", s.rise), count("risers", s.risers), count("lower step", low), count("higher step", high)},
	}
	for _, k := range [...]int{low, high} {
		p.Answers = append(p.Answers, m.length(fmt.Sprintf("step %d", k), laid.Level(k), m.read()))
		p.Worked = append(p.Worked, fmt.Sprintf("step %d: %s x %d / %d = %s", k, m.tape(s.rise), k, s.risers, m.exact(laid.Level(k))))
	}
	p.Worked = append(p.Worked, "from the whole rise, not by adding rounded rises")
	return p, nil
}

// sawnWrong draws a stringer with one of the mistakes commonly made.
func (m maker) sawnWrong() (Problem, error) {
	s := m.stair(true)
	s.risers = 4 + m.n(3)
	each := m.evenRise()
	s.rise = each * measure.Length(s.risers)
	laid, f, err := m.flight(s)
	if err != nil {
		return Problem{}, err
	}
	g := &f.Stringers[0]
	p := Problem{
		Title: "Find the mistake", Stairway: laid,
		Ask: "This stringer was marked and sawn with one mistake. What is it, and what would be right? The head is hung, and a riser board covers the header.",
		Given: []Given{m.given("unit rise", each), m.given("unit run", s.run), m.given("thickness of the treads", s.tread),
			m.given("flooring still to come round the foot", s.flooring)},
	}
	p.Drawn, p.Answers, p.Worked, err = m.spoil(g, s)
	if p.Drawn != nil {
		p.Given = append(p.Given, Given{"first riser cut, as sawn", m.say(p.Drawn.FirstRiserCut)}, Given{"last tread cut, as sawn", m.say(p.Drawn.LastTread)})
	}
	return p, err
}

func (m maker) evenRise() measure.Length {
	if m.metric() {
		return m.from(175*measure.Millimetre, 190*measure.Millimetre, measure.Millimetre)
	}
	return m.from(7*measure.Inch, 7*measure.Inch+measure.Inch/2, measure.Inch/16)
}

// The mistakes, as answers name them.
const (
	NotDropped = "the foot is not dropped"
	WrongHead  = "the last tread cut is too long"
	Overcut    = "the saw ran past a root"
)

// rightly names the answer that says what would be right, without telling what is
// wrong.
const rightly = "what would be right"

func (m maker) spoil(g *layout.Group, s stair) (*Drawn, []Answer, []string, error) {
	request := g.Request
	drawn := &Drawn{}
	var right Answer
	var worked string
	mistake := one(m.dice, NotDropped, WrongHead, Overcut)
	switch mistake {
	case NotDropped:
		request.Below = request.Tread // so that nothing comes off
		right = m.length(rightly, g.FirstRiserCut, m.read())
		worked = fmt.Sprintf("rise less tread and flooring to come put back: %s", m.say(g.FirstRiserCut))
	case WrongHead:
		request.LastTread += (s.board + s.nosing).MM()
		right = m.length(rightly, g.LastTread, m.read())
		worked = fmt.Sprintf("a whole run: %s", m.say(g.LastTread))
	case Overcut:
		drawn.Root = 1 + m.n(len(g.Roots))
		past := one[measure.Length](m.dice, 3, 4, 5, 6) * measure.Inch / 4
		if m.metric() {
			past = one[measure.Length](m.dice, 20, 25, 30, 35) * measure.Millimetre
		}
		drawn.Overcut = past.MM()
		right = Answer{Name: rightly, Value: fmt.Sprintf("the cut stops at root %d from the foot", drawn.Root)}
		worked = fmt.Sprintf("it costs the throat %s; the corner is finished with a handsaw", m.say(past.MM()*math.Cos(g.Pitch)))
	}
	sawn, refusals := request.Sawn()
	if len(refusals) > 0 {
		return nil, nil, nil, fmt.Errorf("%s", refusals[0].Message)
	}
	drawn.Sawn = sawn
	return drawn, []Answer{{Name: "what is wrong", Value: mistake}, right}, []string{mistake, worked}, nil
}
