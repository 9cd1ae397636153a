package check

import (
	"fmt"
	"strings"

	"stepoff/layout/turn"
	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

// deeper says what would make the treads of a turn as deep as the code asks, on
// the walkline and at their narrow ends alike; it begins where a sentence goes
// on.
func (j *judge) deeper() string {
	switch t := j.Turn; {
	case t.Winders != nil:
		return ": " + strings.Join(Deeper(*t.Winders, t.Setback, j.Style), ", or ")
	case t.Round != nil:
		return ": " + DeeperCurve(*t.Round, j.Style)
	}
	return ""
}

// Deeper lists what would make winders that stand at a set-back as deep as their
// depths ask: another set-back, a winder fewer, the other kind of lines. Lengths
// are told so that what is built to them is enough.
func Deeper(plan turn.Winders, setback measure.Length, st measure.Style) []string {
	var all []string
	if least, ok := plan.LeastSetback(); ok {
		all = append(all, fmt.Sprintf("a set-back of %s in place of %s", up(least, st), st.Inches(setback)))
	}
	all = append(all, Instead(plan, &setback, st)...)
	if len(all) == 0 {
		all = append(all, "no set-back does; a landing in their place")
	}
	return all
}

// Instead lists what would make other winders in the same place as deep as their
// depths ask: one fewer, or the other kind of lines; at the set-back given, or at
// the least of their own.
func Instead(plan turn.Winders, setback *measure.Length, st measure.Style) (all []string) {
	if plan.Treads > 2 {
		fewer := plan
		fewer.Treads--
		all = append(all, instead(fewer, setback, several(fewer.Treads, "winder"), st)...)
	}
	other := plan
	other.Even = !plan.Even
	return append(all, instead(other, setback, linesOf(other)+" lines", st)...)
}

// instead says what another turn would do at a set-back, or needs instead.
func instead(plan turn.Winders, setback *measure.Length, what string, st measure.Style) []string {
	if setback != nil && plan.Meets(*setback) {
		return []string{what + " at this set-back"}
	}
	if least, ok := plan.LeastSetback(); ok {
		return []string{fmt.Sprintf("%s at a set-back of %s", what, up(least, st))}
	}
	return nil
}

func linesOf(w turn.Winders) string {
	if w.Even {
		return "even"
	}
	return "radial"
}

// DeeperCurve says what would make the treads of a curve as deep as its depths
// ask.
func DeeperCurve(plan turn.Curve, st measure.Style) string {
	if least, ok := plan.LeastInside(); ok {
		return fmt.Sprintf("an inside radius of at least %s, or a greater angle, or fewer risers", up(least, st))
	}
	return "a greater angle, or fewer risers"
}

// up is a length rounded up to what a tape shows.
func up(l measure.Length, st measure.Style) string {
	return st.Inches(st.Up(l))
}

// otherTreads says what number of winders turns as much each as the code asks;
// nothing where none does.
func (j *judge) otherTreads(key rules.Key) string {
	least, low := j.limit(rules.WinderAngleMin)
	most, high := j.limit(rules.WinderAngleMax)
	if key == rules.WinderSetAngleMax || !low || !high {
		return ""
	}
	for n := 2; n <= len(j.Turn.Treads)+1; n++ {
		if each := j.Turn.Angle / float64(n); each >= least.Degrees && each <= most.Degrees {
			return fmt.Sprintf("radial lines and %s of %.4g degrees", several(n, "winder"), each)
		}
	}
	return "another angle of the turn"
}

// noteBetween says, with the least angle, what the code's note has on winders that
// turn neither its least nor its most.
func (j *judge) noteBetween(key rules.Key, v float64) string {
	least, low := j.limit(rules.WinderAngleMin)
	most, high := j.limit(rules.WinderAngleMax)
	if key != rules.WinderAngleMin || !low || !high || least.Note == "" || v <= least.Degrees || v >= most.Degrees {
		return ""
	}
	return "; " + least.Note
}
