package exercise

import (
	"fmt"
	"strconv"

	"stepoff/layout"
	"stepoff/layout/choose"
	"stepoff/spec"
	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

// stair is the stair behind a problem, every size one a tape shows.
type stair struct {
	rise, run            measure.Length
	risers               int
	tread, nosing, board measure.Length // board: the riser board's thickness
	flooring             measure.Length // to come round the foot
	width                measure.Length // of the stringer's stock
	members              string         // other than one flight
	clear                measure.Length // width of the stairway
	floorDepth           measure.Length // of the upper floor; 0: not stated
}

// stair draws one. With even, the unit rise itself is one that a tape shows. The
// bounds keep within what codes commonly allow for dwellings; a test holds what
// comes out against one.
func (m maker) stair(even bool) stair { return m.stairOf(8, even) }

// mostRisers is as many as a stair here has.
const mostRisers = 17

// stairOf draws one of so many risers at least.
func (m maker) stairOf(risers int, even bool) stair {
	risers += m.n(mostRisers - risers + 1)
	if m.metric() {
		return m.metricStair(risers, even)
	}
	in, eighth, sixteenth := measure.Inch, measure.Inch/8, measure.Inch/16
	s := stair{risers: risers, width: 11*in + in/4, clear: 36 * in}
	n := measure.Length(s.risers)
	each := m.from(7*in, 7*in+in/2, sixteenth)
	s.rise = n * each
	if !even {
		s.rise = s.rise / eighth * eighth // to the eighth below
		s.rise += m.from(0, in, eighth)
	}
	s.run = m.from(10*in, 11*in, eighth)
	s.tread = one(m.dice, in, in+in/8, in+in/4, in+in/2)
	s.nosing = one(m.dice, 3*in/4, in, in+in/8, in+in/4)
	s.board = one(m.dice, in/2, 5*in/8, 3*in/4)
	s.flooring = one(m.dice, 0, 0, in/2, 5*in/8, 3*in/4)
	return s
}

func (m maker) metricStair(risers int, even bool) stair {
	mm := measure.Millimetre
	s := stair{risers: risers, width: m.from(275*mm, 295*mm, 5*mm), clear: 900 * mm}
	n := measure.Length(s.risers)
	s.rise = n * m.from(175*mm, 190*mm, mm)
	if !even {
		s.rise += m.from(0, 25*mm, mm)
	}
	s.run = m.from(255*mm, 280*mm, mm)
	s.tread = one(m.dice, 25*mm, 28*mm, 32*mm, 38*mm)
	s.nosing = one(m.dice, 20*mm, 25*mm, 30*mm)
	s.board = one(m.dice, 12*mm, 15*mm, 18*mm)
	s.flooring = one(m.dice, 0, 0, 10*mm, 15*mm, 20*mm)
	return s
}

// treads of one flight with a hung head.
func (s stair) treads() int { return s.risers - 1 }

func (s stair) unitRise() float64 { return s.rise.PartMM(1, s.risers) }

// code is the one that exercises are set under.
func (m maker) code() string {
	if m.metric() {
		return "uk-adk"
	}
	return "irc-2021"
}

// lay lays the stair out as any job is.
func (m maker) lay(s stair) (*layout.Stairway, error) {
	members := s.members
	if members == "" {
		members = fmt.Sprintf("[flight: {risers: %d, run: %s}]", s.risers, text(s.run))
	}
	thick := text(measure.Inch + measure.Inch/2)
	job := fmt.Sprintf(`
units: %s
code: %s
levels: {total_rise: %s, lower_finish: %s%s}
width: %s
stairway: %s
tread: {thickness: %s, nosing: %s}
riser: {thickness: %s}
stringer: {stock: {width: %s, thickness: %s}, count: 3}
`, m.units(), m.code(), text(s.rise), text(s.flooring), s.over(), text(s.clear), members, text(s.tread), text(s.nosing), text(s.board), text(s.width), thick)
	read, err := spec.Load("exercise.yaml", []byte(job))
	if err != nil {
		return nil, err
	}
	code, _ := rules.Lookup(m.code())
	if read, err = choose.Fill(read, code); err != nil { // nothing is left to choose but where winders are measured
		return nil, err
	}
	return layout.Compute(read)
}

func (s stair) over() string {
	if s.floorDepth == 0 {
		return ""
	}
	return ", floor_depth: " + text(s.floorDepth)
}

func (m maker) units() string {
	if m.metric() {
		return "metric"
	}
	return "imperial"
}

// text writes a length as a job takes it, exactly.
func text(l measure.Length) string { return strconv.FormatFloat(l.MM(), 'f', -1, 64) + "mm" }

// flight lays out a stair of one flight.
func (m maker) flight(s stair) (*layout.Stairway, *layout.Flight, error) {
	laid, err := m.lay(s)
	if err != nil {
		return nil, nil, err
	}
	return laid, laid.Flights()[0], nil
}
