package lesson

import "stepoff/spec/rules"

// landing teaches a landing's height and size.
func (t *teacher) landing() {
	l := t.aLanding()
	t.part = t.s.Parts[0]
	for _, p := range t.s.Parts {
		if l.Risers > p.Below {
			t.part = p
		}
	}
	sums := []string{"{risers below} risers up: {landing level} finished",
		when(l.FramingLevel < l.Level, "less {landing finish} of flooring: the sheathing's top at {framing level}")}
	t.stage(FigureLanding, "Set the landing: "+l.Name,
		"A [landing] counts as one tread: its finished top stands {landing level} over the lower finished floor. It is {landing length} by {landing width} clear, between nosings and walls.",
		sums,
		"The landing is framed to the finished height.",
		"Put the flooring's thickness on the framing and measure again, from the story pole.")
}

// winders teaches how winders are drawn and where they are measured.
func (t *teacher) winders() {
	w := t.aTurn()
	t.part = w.Part
	sums := []string{"{turn angle} / {winders} = {each angle} to a [winder]"}
	text := "Strike the first riser line {setback} before the inside corner and the last as far after it, and divide the turn between. Depth is measured where people walk, on the [walkline] {walkline} from the inside edge."
	if !w.Spec.Even && w.Pivot != nil {
		sums = append(sums, "walkline: {walkline radius} from the pivot, straight across a step {walkline depth}")
	} else {
		sums = []string{"on the walkline each step is {walkline depth} deep"}
	}
	sums = append(sums, "[narrow end]: {narrow depth}",
		when(t.full() && t.has(rules.WinderWalklineMin), "{code} asks for {least walkline} on the walkline"+when(t.has(rules.WinderNarrowMin), " and {least narrow end} at the narrow end")))
	t.stage(FigureWinders, "Draw the winders: "+w.Name, text, sums,
		"All riser lines are run into the inside corner, and the steps end in a point.",
		"Walk round with the rule: the same depth at each nosing on the walkline.")
	if t.full() {
		t.stage(FigureWalls, "Strike the winders on the floor",
			"Snap the riser lines on the floor at full size and plumb them up the walls: the corner is measured from, never one line from the next.", nil,
			"The lines are taken from a corner that is not square.",
			"Measure both diagonals of the turn before snapping.")
	}
}

// curve teaches a curved flight.
func (t *teacher) curve() {
	c := t.aCurve()
	t.part = c.Part
	t.stage(FigureCurve, "Divide the curve: "+c.Name,
		"Swing the inside edge with a radius of {inside radius} and the outside with {outside radius}, and divide {curve angle} into {curve treads} equal treads. On the [walkline] each is {curve walkline depth} deep.",
		[]string{
			"{curve angle} / {curve treads} = {curve each} to a tread",
			"run along the inside edge {inside run}, along the outside {outside run}",
			"at the [narrow end] {curve narrow}"},
		"The run is stepped along the inside edge with a straight rule.",
		"Divide the angle, then prove the last line against the end.")
}
