package check

import (
	"fmt"

	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

// comfort holds a rise and a run against each published rule of thumb of the
// rule being looked at. They disagree, so that each is told by itself; a stair
// that stands is judged by its mean. Winders are not stepped by such rules.
func (j *judge) comfort() {
	if len(j.Risers) == 0 || len(j.Runs) == 0 || j.Turn != nil && !j.Turn.Curve {
		return
	}
	rise, run := mean(j.Risers), mean(Wholes(j.Runs))
	for _, c := range rules.ComfortRules() {
		if c.Rule != j.rule.ID || j.isTheCodes(c) {
			continue
		}
		v := c.Figure(rise, run)
		q := mm
		said := j.exactly(v)
		if c.Area() {
			q = func(v float64) *Quantity { return &Quantity{v, MM2} }
			said = fmt.Sprintf("%.4g sq in", v/(measure.Inch.MM()*measure.Inch.MM()))
		}
		status, word, limit := Pass, "keeps", c.Most
		v = measure.SnapMM(v)
		switch {
		case v < measure.SnapMM(c.Least):
			status, word, limit = j.broken(), "below", c.Least
		case v > measure.SnapMM(c.Most):
			status, word = j.broken(), "above"
		}
		lead := c.Formula + j.onLine() + " = " + said
		by := rules.Limit{Text: c.Text, Section: c.Source, Basis: c.Basis}
		j.say(status, []rules.Limit{by}, q(limit), q(v), lead+fmt.Sprintf(": %s %s (%s)", word, c.Text, c.Source))
		j.found[len(j.found)-1].lead = lead
	}
}

// isTheCodes tells whether a rule of thumb is what the code in force asks: it
// has been told as such.
func (j *judge) isTheCodes(c rules.Comfort) bool {
	least, ok := j.limit(rules.TwoRisePlusRunMin)
	most, both := j.limit(rules.TwoRisePlusRunMax)
	return ok && both && c.Rule == rules.TwoRisePlusRun && least.Length.MM() == c.Least && most.Length.MM() == c.Most
}
