package check

import (
	"fmt"

	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

func (j *judge) headroom() {
	l, ok := j.limit(rules.HeadroomMin)
	switch {
	case j.Together != nil:
		j.passings(l, ok)
	case !ok:
	case j.Headroom != nil:
		j.atLeast(compareMM(j.Headroom.MM(), l.Length), bound{limit: l, actual: length(*j.Headroom), found: "headroom " + j.exactly(j.Headroom.MM())})
	case j.Overhead != nil && j.Opening != nil:
		least, at := j.Overhead.Least(j.Opening.MM())
		right := "the ceiling is too low over the lower floor itself"
		if needed, can := j.Overhead.OpeningFor(l.Length.MM()); can {
			right = fmt.Sprintf("an opening of %s, %s longer, or a thinner floor at its edge", j.atLeastTape(needed), j.atLeastTape(needed-j.Opening.MM()))
		}
		j.atLeast(compareMM(least, l.Length), bound{limit: l, actual: mm(least), right: right,
			found: fmt.Sprintf("headroom, least under the far edge of the opening %s the first riser cut, %s", j.beyond(at), j.exactly(least))})
	}
}

// beyond says how far past the first riser cut a place is, or how far before.
func (j *judge) beyond(x float64) string {
	if x < 0 {
		return j.tape(-x) + " before"
	}
	return j.tape(x) + " past"
}

// opening tells how long the opening has to be for the code's headroom.
func (j *judge) opening() {
	l, ok := j.limit(rules.HeadroomMin)
	if ok && j.Together != nil {
		j.openFloor(l)
	}
	if !ok || j.Overhead == nil {
		return
	}
	needed, can := j.Overhead.OpeningFor(l.Length.MM())
	if !can {
		j.say(j.broken(), []rules.Limit{l}, nil, nil, "no opening gives "+j.limitText(l)+" of headroom: the ceiling is lower than that over the lower floor")
		return
	}
	text := fmt.Sprintf("an opening of %s from the head plumb cut gives %s of headroom", j.exactly(needed), j.limitText(l))
	if j.Opening == nil {
		j.say(j.broken(), []rules.Limit{l}, mm(needed), nil, text+"; none is stated")
		return
	}
	status := Pass
	if compareMM(needed, *j.Opening) > 0 {
		status = j.broken()
	}
	j.say(status, []rules.Limit{l}, mm(needed), length(*j.Opening), text+"; it is "+j.Style.Inches(*j.Opening))
}

// flight is the risers of a flight as codes count it; nil where the facts are of
// a member of one.
func (f *Facts) flight() []Share {
	switch {
	case f.Member:
		return nil
	case f.Flight != nil:
		return f.Flight
	}
	return f.Risers
}

func (j *judge) flightRise() {
	total, ok := sum(j.flight())
	l, has := j.limit(rules.FlightRiseMax)
	if ok && has {
		j.atMost(total.Compare(l.Length), bound{limit: l, actual: mm(total.MM()), found: "the flight rises " + j.exactly(total.MM()), right: "a landing in between"})
	}
}

func (j *judge) flightRisers() {
	n := len(j.flight())
	if n == 0 {
		return
	}
	b := bound{actual: count(n), found: "the flight has " + several(n, "riser")}
	if l, ok := j.limit(rules.FlightRisersMin); ok {
		b.limit, b.to, b.right = l, count(l.Count), "more risers, or a ramp"
		j.atLeast(n-l.Count, b)
	}
	if l, ok := j.limit(rules.FlightRisersMax); ok {
		b.limit, b.to, b.right = l, count(l.Count), "a landing in between"
		j.atMost(n-l.Count, b)
	}
}

func (j *judge) risersInLine() {
	if l, ok := j.limit(rules.RisersInLineMax); ok && j.RisersInLine != nil {
		n := *j.RisersInLine
		j.atMost(n-l.Count, bound{limit: l, to: count(l.Count), actual: count(n), found: several(n, "riser") + " without a landing that turns", right: "a landing that turns"})
	}
}

func (j *judge) width() {
	if l, ok := j.limit(rules.WidthMin); ok && j.Width != nil {
		j.atLeast(compareMM(j.Width.MM(), l.Length), bound{limit: l, actual: length(*j.Width), found: "clear width " + j.exactly(j.Width.MM())})
	}
}

func (j *judge) availableRun() {
	if j.Together != nil {
		j.room()
	}
	if j.AvailableRun == nil || j.UsedRun == nil {
		return
	}
	used, there := *j.UsedRun, *j.AvailableRun
	status, text := Pass, fmt.Sprintf("first nosing to head plumb cut takes %s of the %s there are", j.exactly(used), j.Style.Inches(there))
	if compareMM(used, there) > 0 {
		status = j.broken()
		text = fmt.Sprintf("first nosing to head plumb cut takes %s, and there are %s: %s too much; fewer risers, a shorter run or a turn",
			j.exactly(used), j.Style.Inches(there), j.atLeastTape(used-there.MM()))
	}
	j.say(status, nil, length(there), mm(used), text)
}

// padSlope holds the steepest part of the pad against the code: fall x run of
// the slope at most, over x rise of it at least, exactly.
func (j *judge) padSlope() {
	l, ok := j.limit(rules.PadSlopeMax)
	if !ok || j.Pad == nil || j.Pad.Over <= 0 {
		return
	}
	p := *j.Pad
	found := "the pad is level across the stair"
	if p.Fall > 0 {
		found = fmt.Sprintf("the pad falls 1:%.4g across the stair", p.Over.MM()/p.Fall.MM())
	}
	most := p.Over * measure.Length(l.Slope.Rise)
	j.hold(p.Fall*measure.Length(l.Slope.Run) <= most, "at most", "more than", bound{
		limit:  l,
		to:     &Quantity{float64(l.Slope.Rise) / float64(l.Slope.Run), Ratio},
		actual: &Quantity{p.Fall.MM() / p.Over.MM(), Ratio},
		found:  found,
		right:  fmt.Sprintf("no more than %s over those %s", j.atMostTape(most.MM()/float64(l.Slope.Run)), j.tape(p.Over.MM())),
	})
}
