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
	t.stage(FigureWinders, "Draw the winders: "+w.Name, text, sums,
		"All riser lines are run into the inside corner, and the steps end in a point.",
		"Walk round with the rule: the same depth at each nosing on the walkline.")
	if t.full() {
		t.stage(FigureWalls, "Strike the winders on the floor",
			"Snap the riser lines on the floor at full size and plumb them up the walls: the corner is measured from, never one line from the next.", nil,
			"The lines are taken from a corner that is not square.",
			"Measure both diagonals of the turn before snapping.")
	}
	t.taperedTreads("winders", "[narrow end]: {narrow depth}",
		when(t.full() && t.has(rules.WinderWalklineMin), "{code} asks for {least walkline} on the walkline"+when(t.has(rules.WinderNarrowMin), " and {least narrow end} at the narrow end")))
}

// taperedTreads teaches how the treads of a turn or a curve are cut.
func (t *teacher) taperedTreads(of string, sums ...string) {
	t.stage(FigureTapered, "Cut the "+of,
		"Lay the full-size template on the board with its [nosing] along the grain. The lowest tread is cut from a piece {tapered along} along by {tapered deep} deep, and each is tried in its place before the next.", sums,
		"The grain runs across the narrow end, and it breaks off.",
		"The grain follows the nosing, where people tread.")
}

// curve teaches a curved flight.
func (t *teacher) curve() {
	c := t.aCurve()
	t.part = c.Part
	t.stage(FigureCurve, "Divide the curve: "+c.Name,
		"Swing the inside edge with a radius of {inside radius} and the outside with {outside radius}, and divide {curve angle} into {curve treads} equal [treads]. On the [walkline] each is {curve walkline depth} deep.",
		[]string{
			"{curve angle} / {curve treads} = {curve each} to a tread",
			"at the [narrow end] {curve narrow}"},
		"The run is stepped along the inside edge with a straight rule.",
		"Divide the angle, then prove the last line against the end.")
	t.taperedTreads("curved flight's treads")
	t.stage(FigureStrings, "Unroll the strings",
		"Bent straight, each [stringer] is an ordinary one with its own run: {inside run} along the inside edge and {outside run} along the outside. The rise, {unit rise}, is the same for both.",
		[]string{"inside: rise over run {unit rise exactly} / {inside run}, [pitch] {inside pitch} degrees",
			"outside: rise over run {unit rise exactly} / {outside run}, pitch {outside pitch} degrees"},
		"Both strings are laid out with the run of the walkline.",
		"Measure each run along its own edge on the floor.")
}
