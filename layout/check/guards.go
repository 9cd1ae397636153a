package check

import (
	"fmt"
	"strings"

	"stepoff/spec/rules"
)

// openRiser holds the gap between treads against the ball that must not pass:
// a gap of just its size lets it pass. Gaps near the floor may be exempt.
func (j *judge) openRiser() {
	l, ok := j.limit(rules.OpenRiserSphere)
	if !ok || j.OpenRisers == nil {
		return
	}
	if !*j.OpenRisers {
		j.say(Pass, []rules.Limit{l}, nil, nil, "no open risers")
		return
	}
	if j.Gap == nil {
		return
	}
	gap := j.Gap.Height.MM()
	found := "the gap between treads is " + j.exactly(gap)
	above, exempt := j.limit(rules.OpenRiserAbove)
	var by []rules.Limit
	if j.Gap.Height.Compare(l.Length) >= 0 && exempt {
		by = []rules.Limit{above}
		if compareMM(j.Gap.Top, above.Length) <= 0 {
			j.say(Pass, []rules.Limit{l, above}, length(l.Length), mm(gap),
				fmt.Sprintf("%s; none is more than %s over the floor, up to where it is not limited", found, j.limitText(above)))
			return
		}
	}
	j.hold(j.Gap.Height.Compare(l.Length) < 0, "less than", "not less than", bound{limit: l, actual: mm(gap), found: found, by: by,
		right: "riser boards, thicker treads, or a bar in each gap"})
}

// band is the height of a handrail's top as the code has it, and the limits it
// comes from.
func (j *judge) band() (text string, by []rules.Limit) {
	lo, low := j.limit(rules.HandrailHeightMin)
	hi, high := j.limit(rules.HandrailHeightMax)
	if !low || !high {
		return "", nil
	}
	return fmt.Sprintf("its top %s to %s plumb over the nosing line", j.limitText(lo), j.limitText(hi)), []rules.Limit{lo, hi}
}

func (j *judge) handrailNeeded() {
	n := len(j.Risers)
	if n == 0 { // of a flight made of several members, each of them says it
		return
	}
	if j.Flight != nil {
		n = len(j.Flight)
	}
	band, by := j.band()
	sides := "at one side at least"
	both, asks := j.limit(rules.HandrailBothSides)
	if asks = asks && j.Width != nil; asks {
		if compareMM(j.Width.MM(), both.Length) >= 0 {
			sides = "at both sides, as from " + j.limitText(both) + " of width"
		}
		by = append(by, both)
	}
	l, has := j.limit(rules.HandrailRisers)
	switch {
	case !has && band == "":
		if j.code.Name != rules.None {
			j.notKnown(nil, fmt.Sprintf("whether %s asks for a handrail with %s is not known here: ask the building official", j.code.Name, several(n, "riser")))
		}
	case !has:
		j.say(Info, by, nil, nil, fmt.Sprintf("where there is a handrail (%s): %s; from how many risers one is needed is not known here", sides, band))
	case n < l.Count:
		j.say(Pass, []rules.Limit{l}, count(l.Count), count(n), fmt.Sprintf("%s: no handrail is needed below %d", several(n, "riser"), l.Count))
	default:
		text := fmt.Sprintf("%s: a handrail is needed from %d, %s", several(n, "riser"), l.Count, sides)
		if band != "" {
			text += ", " + band
		}
		status := Info
		if j.Handrail != nil {
			status, text = Pass, text+"; there is one"
		}
		j.say(status, append([]rules.Limit{l}, by...), count(l.Count), count(n), text)
	}
}

func (j *judge) handrailHeight() {
	if j.Handrail == nil {
		return
	}
	b := bound{actual: length(*j.Handrail), found: "top of the handrail " + j.exactly(j.Handrail.MM()) + " over the nosing line"}
	if l, ok := j.limit(rules.HandrailHeightMin); ok {
		b.limit, b.right = l, "raise it "+j.atLeastTape((l.Length-*j.Handrail).MM())
		j.atLeast(compareMM(j.Handrail.MM(), l.Length), b)
	}
	if l, ok := j.limit(rules.HandrailHeightMax); ok {
		b.limit, b.right = l, "lower it "+j.atLeastTape((*j.Handrail-l.Length).MM())
		j.atMost(compareMM(j.Handrail.MM(), l.Length), b)
	}
}

// guardNeeded tells whether open sides need a guard: by the drop there, or by
// the stair's total rise. Nothing is said where the sides are not stated.
func (j *judge) guardNeeded() {
	if j.OpenSides == nil {
		return
	}
	drop, byDrop := j.limit(rules.GuardDrop)
	rise, byRise := j.limit(rules.GuardTotalRise)
	byDrop, byRise = byDrop && j.Drop != nil, byRise && j.TotalRise != nil
	if !byDrop && !byRise {
		if open := *j.OpenSides; len(open) > 0 && j.Drop != nil && j.code.Name != rules.None {
			j.notKnown(mm(*j.Drop), fmt.Sprintf("%sa drop of %s from the highest tread: from when %s asks for a guard is not known here; ask the building official",
				sidesOpen(open), j.exactly(*j.Drop), j.code.Name))
		}
		return
	}
	needed, by, text := false, []rules.Limit(nil), ""
	var limit, actual *Quantity
	if byDrop {
		needed = compareMM(*j.Drop, drop.Length) > 0
		by, limit, actual = []rules.Limit{drop}, length(drop.Length), mm(*j.Drop)
		text = fmt.Sprintf("a drop of %s from the highest tread, and a guard is needed beyond %s", j.exactly(*j.Drop), j.limitText(drop))
	}
	if byRise && !needed {
		needed = *j.TotalRise >= rise.Length
		by, limit, actual = append([]rules.Limit{rise}, by...), length(rise.Length), mm(j.TotalRise.MM())
		text = fmt.Sprintf("a total rise of %s, and a guard is needed from %s", j.exactly(j.TotalRise.MM()), j.limitText(rise))
	}
	open := *j.OpenSides
	switch {
	case len(open) == 0:
		j.say(Pass, by, nil, nil, "walls at both sides: no guard is needed")
	case !needed:
		j.say(Pass, by, limit, actual, text+": none is needed")
	default:
		heights, more := j.guardHeights()
		j.say(j.broken(), append(by, more...), limit, actual, sidesOpen(open)+text+heights)
	}
}

// sidesOpen begins a text with the sides that are open.
func sidesOpen(open []string) string {
	if len(open) > 1 {
		return strings.Join(open, " and ") + " sides are open: "
	}
	return open[0] + " side is open: "
}

func (j *judge) guardHeights() (text string, by []rules.Limit) {
	if l, ok := j.limit(rules.GuardStairHeightMin); ok {
		text += fmt.Sprintf("; at least %s plumb over the nosing line", j.limitText(l))
		by = append(by, l)
	}
	if l, ok := j.limit(rules.GuardHeightMin); ok {
		text += fmt.Sprintf(", %s along a floor or landing", j.limitText(l))
		by = append(by, l)
	}
	return text, by
}

// notKnown tells that the code's rule is not in the data, so that silence is not
// taken for permission. The code stands in place of a section.
func (j *judge) notKnown(actual *Quantity, text string) {
	j.sayOf(j.code.Name, Info, nil, actual, text)
}
