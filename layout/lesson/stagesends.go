package lesson

import (
	"stepoff/layout"
	"stepoff/spec"
	"stepoff/spec/measure"
)

// foot teaches the drop, the seat and the notch over a kicker.
func (t *teacher) foot() {
	drop := measure.SnapMM(t.g.BottomDrop)
	q := sequence{s: t.s, f: t.f, g: t.g, st: t.st}
	sums := []string{"{flight rise}, less {tread thickness} of tread" +
		when(t.f.Flooring > 0, ", and {flooring} more for the flooring to come") +
		when(t.g.FootLevel > 0, ", less {foot level} that it bears higher") +
		when(t.g.FootLevel < 0, ", and {foot level} more that it bears lower") + ": {first riser cut}"}
	switch {
	case drop > 0:
		t.stage(FigureDrop, "Drop the foot",
			"The treads raise every step but the floor: so {drop} comes off the foot, the [bottom drop], and the first riser cut is {first riser cut}.", sums,
			"The foot is not dropped: the first step is too high and the last too low.",
			"Lay a tread on the first cut: from the finished floor to its top it must be {flight rise}.")
	case drop < 0:
		t.stage(FigureDrop, "Lengthen the foot",
			"More comes under the foot than the treads put on it: so the foot is longer by {drop}, and the first riser cut is {first riser cut}.", sums,
			"The foot is cut like the other steps.",
			"Lay a tread on the first cut: from the finished floor to its top it must be {flight rise}.")
	default:
		t.stage(FigureDrop, "Leave the foot",
			"Treads and flooring raise floor and steps alike: nothing comes off, and the first riser cut is {first riser cut}.", sums,
			"The foot is dropped out of habit.", "Lay a tread on the first cut and measure from the finished floor: {flight rise}.")
	}
	if q.several() {
		last := &t.stages[len(t.stages)-1]
		last.Sums = append(last.Sums, "each stringer has its own: "+q.eachMM(func(g *layout.Group) float64 { return g.FirstRiserCut }))
	}
	t.stage(FigureFoot, "Mark the seat",
		"From the end of the first riser line draw the [seat], a [level cut] of {seat}, out to the bottom edge. The whole of it has to bear.",
		[]string{when(t.full() && q.several(), "each its own: "+q.eachMM(func(g *layout.Group) float64 { return g.SeatCut }))},
		"The seat is drawn square to the board's edge.",
		"It runs as the treads run: the same blade, the same gauges.")
	if t.g.Kicker != nil {
		t.stage(FigureKicker, "Notch for the kicker",
			"At the front of the seat mark {kicker height} up and {kicker depth} back for the [kicker], a plate laid flat on the floor.", nil,
			"The notch is sawn at the back of the seat.",
			"The plate stands before the stringer's foot and keeps it from sliding out.")
	}
}

// upper is what the flight in hand rises to.
func (t *teacher) upper() string {
	switch turn := t.f.Head.(type) {
	case nil:
		return "the finished upper floor"
	case *layout.Winders:
		return "the first finished [winder] of " + turn.Label()
	default:
		return "the finished [landing], " + turn.Label()
	}
}

// head teaches the plumb cut.
func (t *teacher) head() {
	below := "the top tread comes one rise, {flight rise}, below " + t.upper()
	if !t.f.Hung() {
		below = "the top tread comes level with " + t.upper()
	}
	sums := []string{
		when(t.f.Spec.Stringer.BehindHead > 0, "{behind head} of packing stands between head and header"),
		when(t.g.HeadContact != nil && t.full(), "{contact} of the plumb cut bears on the header")}
	t.stage(FigureHead, "Mark the head",
		"The last tread line is {last tread cut} long; from its end draw the [plumb cut], {plumb cut} down to the bottom edge. There the [head] meets the [header], and "+below+".",
		sums,
		"A whole step is left at the top, or a riser too few is cut.",
		"Count: {notches} treads on the board, {flight risers} rises in the flight.")
	if t.g.Ledger != nil {
		t.stage(FigureLedger, "Notch for the ledger",
			"At the lower end of the plumb cut mark {ledger height} up and {ledger depth} in for the [ledger].", nil,
			"The notch is cut deeper than the ledger is thick.",
			"The head must bear on the ledger and stand against the header, both at once.")
	}
}

// sawing teaches where the blade stops.
func (t *teacher) sawing() {
	if t.g.Notches < 2 {
		return
	}
	t.stage(FigureStops, "Stop the saw short",
		"Saw tread and riser lines on the waste side, the blade {blade depth} deep, and stop at the tick {stop short} short of each [root]. Head, seat, first riser and last tread run right through.",
		[]string{when(t.full(), "an [overcut] of {overcut} takes {riser overcut} off the throat along a riser line, {tread overcut} along a tread line")},
		"The saw is run past the corner to free the piece.",
		"A [kerf] that crosses a root is seen at once: look at each before the next cut.")
	t.stage(FigureKerf, "Finish the corner by hand",
		"The blade is round: when it reaches the tick on top, {by hand} of the line is still whole on the far face. Finish each corner with a handsaw, held plumb to the face.",
		[]string{when(t.full(), "with a {blade} blade the far face is behind by {far face}, and by {stop short} more at the tick")},
		"The corner is broken out, and splits into the throat.",
		"Turn the board over: both lines meet in a clean corner on the far face too.")
}

// after teaches test, tracing and boards.
func (t *teacher) after() {
	t.stage(FigureTest, "Test the first one",
		"Set the first stringer in its place: treads level both ways, plumb cut tight, seat bearing all along. Its first riser cut stands {first riser cut} high, its last tread cut {last tread level} below "+t.upper()+".", nil,
		"All are sawn before one is tried.", "One board can be spoiled cheaply: try it, and measure every rise from the story pole.")
	q := sequence{s: t.s, f: t.f, g: t.g, st: t.st}
	switch {
	case q.several():
		t.stage(FigureTrace, "Keep the outlines apart",
			"The feet of the {count} stringers differ. Cut and test one of each, trace only its own from it, and write its place on every board.", nil,
			"One is traced from the next, or the places are mixed up.", "Lay each on its pattern, crown up, edge to edge.")
	case t.f.Spec.Stringer.Count > 1:
		t.stage(FigureTrace, "Trace the rest",
			"Trace the other stringers from the first, {count} in all, crown up and edge on edge.", nil,
			"One is traced from the next, and the pencil's width gathers.", "The first one is the pattern for all: write so on it.")
	}
	t.boards()
}

func (t *teacher) boards() {
	text := "The treads are ripped to {tread depth}, the run and what stands over the step below."
	sums := []string{"{unit run} + {nosing} of nosing = {tread depth}"}
	if t.job().Riser.Joint == spec.On && !t.job().Riser.Open {
		sums[0] = "{unit run} + {nosing} of nosing + {riser thickness} under the riser board = {tread depth}"
	}
	if _, ok := t.boardOf(layout.TreadBoard, 1); !ok || t.f.Treads < 2 {
		sums[0] = "" // the top tread has a depth of its own
	}
	_, second := t.boardOf(layout.RiserBoard, 2)
	switch {
	case t.job().Riser.Open:
		text += " There are no riser boards: mind how wide the gaps may be."
	case t.job().Riser.Joint == spec.On:
		text += " Each riser board stands on the tread below it."
	default:
		text += " Each riser board runs down behind the tread below it."
	}
	if _, first := t.boardOf(layout.RiserBoard, 1); first {
		sums = append(sums, "first riser board {first board}"+when(second, ", the others {second board}"))
	}
	t.stage(FigureBoards, "Treads and risers", text, sums,
		"All riser boards are ripped alike, and the first sticks up.",
		"Fit the first and the last before ripping the rest.")
}

// again tells the figures of a flight that is laid out as the first was.
func (t *teacher) again() {
	t.part = t.f.Part
	t.stage(FigureAgain, "The same again: "+t.f.Name,
		"Lay {flight} out in the same way, from {flight from} up to {flight to}: {flight risers} risers of {flight rise}, unit run {unit run}.",
		[]string{
			"tips from {first tip}" + when(t.g.Notches > 1, " to {last tip}") + ", board at least {least blank}",
			"first riser cut {first riser cut}, seat {seat}, last tread cut {last tread cut}, plumb cut {plumb cut}"},
		"The lower flight's foot is copied.",
		"What a foot stands on decides its first riser cut: look at each flight's own.")
}
