package lesson

import (
	"stepoff/spec"
	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

// measuring teaches what is done before a board is picked up.
func (t *teacher) measuring() {
	t.part = t.s.Parts[0]
	levels := t.job().Levels
	rough := levels.Measured == spec.Rough
	t.stage(FigureRise, "Measure the total rise",
		joined("Measure plumb from floor to floor where the stair will stand, with the [total rise] carried across by a level: {total rise} between the [finished floors].",
			when(rough, "It was taken between the floors as they are today, so the flooring still to come is put in.")),
		[]string{when(rough, "{measured rise}, and {upper finish} more upstairs, less {lower finish} downstairs: {total rise}")},
		"The tape is held along the slope, or the flooring to come is forgotten.",
		"Measure twice, in two places, and ask at both floors what is still to be laid.")
	for k, p := range t.s.Parts {
		t.part = p
		t.dividing(k)
	}
	t.part = t.s.Parts[0]
}

// dividing teaches how one part between two fixed levels is shared.
func (t *teacher) dividing(k int) {
	title, whole := "Divide the rise", "{total rise}"
	if len(t.s.Parts) > 1 {
		whole = "{part from} to {part to}"
		if k > 0 {
			title = "Divide the next rise"
		}
	}
	sums := []string{"{part rise} / {risers} = {unit rise exactly}, on the tape {unit rise}"}
	text := "Share the rise, " + whole + ", by {risers} [risers]: each [unit rise] is {unit rise}. Mark the [story pole] from the whole rise and not one step from the last."
	switch err := t.roundedError(); {
	case err < 0:
		sums = append(sums, "the trap: {risers} x {rounded rise} = {rounded total}, {rounded error} short")
	case err > 0:
		sums = append(sums, "the trap: {risers} x {rounded rise} = {rounded total}, {rounded error} too much")
	}
	if t.part.Risers > 1 {
		sums = append(sums, "level {middle riser}: "+when(t.part.From > 0, "{part from} + ")+"{part rise} x {middle riser} / {risers} = {middle level}")
	}
	sums = append(sums, when(t.full() && t.has(rules.RiserMax), "{code} allows {most rise} at most"))
	t.stage(FigurePole, title, text, sums,
		"The rounded rise is stepped up the pole, and its error gathers.",
		"The last mark has to fall on the upper level of itself.")
	t.stages[len(t.stages)-1].Part = t.part
}

// stringer teaches the first flight's stringer from the run to the boards.
func (t *teacher) stringer() {
	t.part = t.f.Part
	t.run()
	if h := t.headroomOf(); t.full() && t.isTop() && h != nil && h.OpeningNeeded != nil {
		t.stage(FigureHeadroom, "Leave the headroom",
			"Carry the line through the [nosings] up the flight: the ceiling over it must leave the [headroom], so the floor has to be open as far as {opening needed} from the [head].",
			[]string{"{code} asks for {least headroom} plumb over the nosings, under a floor {floor depth} deep",
				"from the last nosing: headroom and floor together x run / rise"},
			"The opening is framed for the stair alone, and the head meets the ceiling.",
			"Hold a pole as long as the headroom upright on each nosing of the drawing.")
		t.stages[len(t.stages)-1].Opening = *h.OpeningNeeded
	}
	t.blank()
	t.square()
	t.throat()
	t.foot()
	t.head()
	t.sawing()
	t.after()
}

func (t *teacher) isTop() bool {
	flights := t.s.Flights()
	return t.f == flights[len(flights)-1]
}

func (t *teacher) run() {
	sums := []string{"{treads} x {unit run} = {total run}, the [total run]",
		when(t.full(), "two rises and a run: {two rises and a run}"),
		when(t.full() && t.has(rules.RunMin), "{code} allows {least run} at least"),
		when(t.full(), "[pitch]: {pitch} degrees")}
	t.stage(FigureStep, "Choose the run",
		"The [unit run] is {unit run}, from [nosing] to nosing. A stair walks well when two rises and a run together are about a pace, and every step must be alike.",
		sums,
		"The [tread] board's depth is taken for the run.",
		"The board is deeper than the run by what stands over the step below: measure nosing to nosing.")
}

func (t *teacher) blank() {
	size := "take one of {board length}"
	if t.g.StockLength == 0 {
		size = "no board sold is so long: ask a professional how to splice it"
	}
	sums := []string{
		"first [tip]: first riser cut x rise / step = {first tip exactly}",
		when(t.g.Notches > 1, "to the last tip: {steps between} x {step exactly} more = {last tip exactly}"),
		"to the end of the head: last tread cut x run / step = {head end exactly}",
		"together {least blank}, and {end trim} at each end for trimming: " + size}
	t.stage(FigureBlank, "Pick the blank",
		"The [blank] for a [stringer] is {stock}, {width} wide, with {least blank} of sound wood. The [crown] goes up, knots and splits stay out of the inside corners, and the foot end is sawn square.",
		sums,
		"The board is narrower than its name says, or its crown hangs down.",
		"Measure its width at both ends, and sight along its edge.")
}

func (t *teacher) square() {
	if FitsSquare(t.g) {
		text := "Set the [framing square] to {tongue} on the tongue, the rise, and {blade arm} on the blade, the run, and screw a [gauge] on each arm at that figure."
		sums := []string{"tongue {flight rise exactly}, set {tongue}"}
		if measure.SnapMM(t.g.Square.Drift) != 0 || measure.SnapMM(t.g.Square.DriftRise) != 0 {
			sums = append(sums, when(t.full(), "{notches} steps with it end {drift} along and {height drift} in height from true"))
		}
		t.stage(FigureSquare, "Set the square", text, sums,
			"Rise and run are set on the wrong arms.",
			"The short arm is the tongue: it stands upright in the stair.")
	} else {
		t.stage(FigurePitchBoard, "Use a pitch board",
			"The rise, {flight rise}, is more than the tongue of a [framing square]: mark with a [pitch board] of {flight rise} by {unit run}.", nil,
			"The board is laid on with the wrong side along the edge.", "Its long side slides on the blank's edge.")
	}
	laid := "Lay both gauges on the crowned edge with the tongue toward the head, and draw along the blade: "
	if !FitsSquare(t.g) {
		laid = "Lay the pitch board's long side on the crowned edge with the rise toward the head, and draw along the run: "
	}
	first := laid + "the first tread line runs {unit run} level from the first [tip]."
	if t.g.Notches == 1 {
		first = laid + "the tread line runs {last tread cut} level from the [tip]."
	}
	t.stage(FigureFirstStep, "Draw the first step", first,
		[]string{"the first tip lies {first tip} from the foot end"},
		"It is turned end for end, and the tread slopes.",
		"Stand the stringer on its foot in your mind: treads level, risers plumb.")
	if t.g.Notches > 1 {
		t.stage(FigureTips, "Tape the tips",
			"Mark all {notches} tips with the tape hooked on the foot end and never moved, from {first tip} to {last tip}. Then lay the square on each pair of marks and draw tread and [riser].",
			[]string{"[step]: the square root of rise x rise + run x run = {step exactly}", "the last tip: first + {steps between} steps = {last tip}"},
			"The square is stepped from mark to mark, and a hair's breadth gathers at each.",
			"Tape from the foot end to the last tip before any sawing.")
	}
}

func (t *teacher) throat() {
	if t.g.Notches < 2 {
		return
	}
	t.stage(FigureThroat, "Look at the throat",
		"Each [notch] goes {notch depth} into the board, square from its edge to the [root]. What is left under it, the [throat], is {throat} and carries everything.",
		[]string{"rise x run / step = {notch exactly}", "{width}, less {notch depth}: {throat}"},
		"The notch is measured along the riser line and not square to the edge.",
		"Lay the square on the board's edge, not on the line.")
}
