package lesson

import (
	"fmt"
	"math"
	"strings"

	"stepoff/layout"
	"stepoff/layout/stringer"
	"stepoff/spec"
	"stepoff/spec/measure"
)

// Step is one step of the work: what it is, and how it is done here.
type Step struct{ Title, Text string }

// CutSequence tells how to lay out and saw the stringers of a flight. Every
// figure comes from the layout; + and - say which way a printed one is rounded.
// A flight without stringers has no steps.
func CutSequence(s *layout.Stairway, f *layout.Flight, st measure.Style) []Step {
	if len(f.Strings) > 0 {
		return stringSequence(s, f, st)
	}
	if len(f.Stringers) == 0 {
		return nil
	}
	q := sequence{s: s, f: f, g: &f.Stringers[0], st: st}
	q.blank()
	q.lines()
	q.foot()
	q.head()
	q.saw()
	q.rest()
	return q.steps
}

type sequence struct {
	s     *layout.Stairway
	f     *layout.Flight
	g     *layout.Group // the first outline: what all have alike is read off it
	st    measure.Style
	steps []Step
}

func (q *sequence) say(mm float64) string { return q.st.InchesMM(mm) }

func (q *sequence) add(title, format string, args ...any) {
	q.steps = append(q.steps, Step{title, fmt.Sprintf(format, args...)})
}

// several tells whether the feet differ, so that there is more than one outline.
func (q *sequence) several() bool { return len(q.f.Stringers) > 1 }

// each lists a figure of every outline: left 5 1/8", right 5 7/8".
func (q *sequence) each(figure func(g *layout.Group) string) string {
	if !q.several() {
		return figure(q.g)
	}
	var all []string
	for i := range q.f.Stringers {
		g := &q.f.Stringers[i]
		all = append(all, g.Where(q.f.Spec.Stringer.Count)+" "+figure(g))
	}
	return strings.Join(all, "; ")
}

func (q *sequence) eachMM(figure func(g *layout.Group) float64) string {
	return q.each(func(g *layout.Group) string { return q.say(figure(g)) })
}

func (q *sequence) blank() {
	board := q.f.Spec.Stringer.Stock.Name
	if board == "" {
		board = "the board"
	}
	q.add("Pick and crown the blank", "Take %s: %s. Sight along it: the crown goes up, on the edge the steps are cut from. Keep knots and checks out of the inside corners. Measure its width: this layout is for %s; a narrower board loses the difference from its throat.",
		board, q.each(q.length), q.say(q.g.Width))
	q.add("Square the foot end", "Saw the foot end square, past any check: every distance is taped from it.")
}

// length says how long a board one outline takes.
func (q *sequence) length(g *layout.Group) string {
	least := "at least " + q.say(g.LeastBlank) + " once its ends are trimmed"
	if g.StockLength == 0 {
		return least + ", longer than any board sold: a splice at a prop, a landing or engineered stock is a matter for a professional"
	}
	return q.st.Format(g.StockLength) + ", " + least
}

func (q *sequence) lines() {
	g := q.g
	if last := len(g.Tips) - 1; last == 0 {
		q.add("Tape the tip", "Hook the tape on the foot end and mark the tip on the edge at %s.", q.eachMM(firstTip))
	} else {
		q.add("Tape the tips", "Hook the tape on the foot end and mark every tip on the edge in one pull: %s. Nothing gathers that way; do not step from one to the next.",
			q.each(func(g *layout.Group) string {
				return fmt.Sprintf("the first at %s, the last at %s", q.say(firstTip(g)), q.say(g.Tips[last].X))
			}))
	}
	q.square()
	plumb := ""
	if len(g.Roots) > 0 {
		plumb = fmt.Sprintf(" From each tip after the first draw the riser line plumb, %s down to the tread line below; they meet in the root, %s square in from the edge.",
			q.say(q.f.UnitRise), q.say(g.NotchDepth))
	}
	q.add("Mark the steps", "From each tip draw the tread line level, %s.%s With the sheets: lay the stock edge on the board's edge, each sheet's station on the tape, and prick through every tip and root.",
		q.st.Inches(q.f.UnitRun), plumb)
}

func firstTip(g *layout.Group) float64 { return g.Tips[0].X }

// longestTongue is the tongue of a framing square: 16 in (common practice).
const longestTongue = 16 * measure.Inch

// FitsSquare tells whether a framing square can be set to the stringer's rise.
func FitsSquare(g *layout.Group) bool { return g.Square.Tongue <= longestTongue.MM() }

func (q *sequence) square() {
	w := q.g.Square
	if !FitsSquare(q.g) {
		q.add("Set the square", "A rise of %s is more than a framing square's tongue: mark with the pitch board.", q.say(q.f.UnitRise))
		return
	}
	gauges := fmt.Sprintf("Gauges on the framing square: %s on the tongue, the unit rise; %s on the blade, the unit run", q.say(w.Tongue), q.say(w.Blade))
	if measure.SnapMM(w.Drift) == 0 && measure.SnapMM(w.DriftRise) == 0 {
		q.add("Set the square", "%s.", gauges)
		return
	}
	q.add("Set the square", "%s, to the square's nearest marks. Stepped %d times they would end %s along and %s in height from true, so let the taped tips rule and use the square for the angles only.",
		gauges, q.g.Notches, q.st.DecimalMM(math.Abs(w.Drift)), q.st.DecimalMM(math.Abs(w.DriftRise)))
}

func (q *sequence) foot() {
	title, what := "Drop the foot", "the bottom drop"
	if !q.several() && measure.SnapMM(q.g.BottomDrop) == 0 {
		q.add("Mark the foot", "Nothing comes off: %s. The first riser cut is %s. Mark the seat level from there, %s long.",
			q.why(q.g), q.say(q.g.FirstRiserCut), q.say(q.g.SeatCut))
	} else {
		if q.g.BottomDrop < 0 {
			title, what = "Lengthen the foot", "what the foot is longer by"
		}
		if q.several() {
			title, what = "Mark the foot", "the bottom drop"
		}
		q.add(title, "The first riser cut is not %s but %s. That is %s: %s. Mark the seat level from there: %s.",
			q.say(q.f.UnitRise), q.eachMM(func(g *layout.Group) float64 { return g.FirstRiserCut }), what,
			q.each(func(g *layout.Group) string { return q.say(math.Abs(g.BottomDrop)) + ", " + q.why(g) }),
			q.eachMM(func(g *layout.Group) float64 { return g.SeatCut }))
	}
	if g := q.g; g.Kicker != nil {
		q.add("Notch for the kicker", "At the front of the seat mark %s high and %s deep for the plate laid flat; its back face keeps the stringer from sliding. Saw this notch by hand.",
			q.say(g.Kicker.Height), q.say(g.Kicker.Depth))
	}
}

// why gives the reason of a bottom drop: the tread, flooring to come, and where
// this foot bears.
func (q *sequence) why(g *layout.Group) string {
	why := "one tread, " + q.st.Inches(q.s.Job.Tread.Thickness)
	if q.f.Flooring > 0 {
		why += fmt.Sprintf(", less the %s of %s to come round the foot", q.st.Inches(q.f.Flooring), laidLater(q.f.Foot))
	}
	switch {
	case g.FootLevel > 0:
		why += fmt.Sprintf(", and the %s it bears above where the rise was measured", q.st.Inches(g.FootLevel))
	case g.FootLevel < 0:
		why += fmt.Sprintf(", less the %s it bears below where the rise was measured", q.st.Inches(-g.FootLevel))
	}
	return why
}

func (q *sequence) head() {
	g, asked := q.g, q.f.Spec.Stringer
	top := fmt.Sprintf("The last tread cut is %s", q.say(g.LastTread))
	run := q.f.UnitRun.MM() - asked.BehindHead.MM()
	if measure.SnapMM(g.LastTread) != measure.SnapMM(q.f.UnitRun.MM()) {
		var why []string
		if asked.BehindHead > 0 {
			why = append(why, fmt.Sprintf("%s goes to what stands between head and header", q.st.Inches(asked.BehindHead)))
		}
		if measure.SnapMM(g.LastTread) != measure.SnapMM(run) {
			why = append(why, "the top run has to come out like the others under the floor's own nosing")
		}
		top += fmt.Sprintf(", not %s: %s", q.st.Inches(q.f.UnitRun), strings.Join(why, ", and "))
	}
	below := fmt.Sprintf("the top tread comes one rise, %s, below %s", q.say(q.f.UnitRise), q.upper())
	if !q.f.Hung() {
		below = "the top tread comes level with " + q.upper()
	}
	q.add("Mark the head", "%s. From its end mark plumb down, %s; %s.", top, q.headCuts(), below)
	if g.Ledger != nil {
		q.add("Notch for the ledger", "At the bottom of the plumb cut mark %s up and %s in for the ledger on edge. Saw this notch by hand.",
			q.say(g.Ledger.Height), q.say(g.Ledger.Depth))
	}
	if g.HeadContact != nil && *g.HeadContact < layout.LittleContact.MM() && g.Ledger == nil {
		q.add("See to the head's bearing", "Of the plumb cut %s stands against the header. Use a hanger board, a deeper header, a ledger or stringer hangers; do not trust nails into end grain.",
			q.little(*g.HeadContact))
	}
}

// laidLater is what is laid later on what a flight stands on or rises to.
func laidLater(on layout.Turn) string {
	if _, ok := on.(*layout.Winders); ok {
		return "tread"
	}
	return "flooring"
}

// upper is what the flight rises to.
func (q *sequence) upper() string {
	switch head := q.f.Head.(type) {
	case nil:
	case *layout.Winders:
		return "the first tread of " + head.Label()
	default:
		return "the finished " + head.Label()
	}
	return "the finished upper floor"
}

// headCuts gives the plumb cut once where all are alike.
func (q *sequence) headCuts() string {
	first := q.say(q.g.HeadCut)
	for _, g := range q.f.Stringers {
		if q.say(g.HeadCut) != first {
			return q.eachMM(func(g *layout.Group) float64 { return g.HeadCut })
		}
	}
	return first
}

func (q *sequence) little(contact float64) string {
	if measure.SnapMM(contact) == 0 {
		return "nothing"
	}
	return "only " + q.say(contact)
}

func (q *sequence) saw() {
	g := q.g
	q.add("Mark the waste", "Put an X on what falls away beside every line, and keep the kerf on that side.")
	if len(g.Roots) == 0 {
		q.add("Saw it out", "Blade %s, set %s deep, shoe flat on clamped stock. First riser, tread, seat and head run through from edge to edge: there is no inside corner.", q.say(g.Saw.Blade), q.say(g.Saw.Depth))
		return
	}
	end := "the root" // where a line ends that the saw may not run past
	if g.Saw.RootHole > 0 {
		end = "the hole"
		q.add("Drill the roots", "Drill %s through at every root, the bit's point in the corner: it takes %s off the throat, and the saw may end in it.", q.say(g.Saw.RootHole), q.say(g.Saw.RootHole/2))
	}
	q.add("Saw to the ticks", "Blade %s, set %s deep, shoe flat on clamped stock. Seat, head, first riser and last tread are sawn right through. On every other riser and tread line stop at the tick, %s short of %s.",
		q.say(g.Saw.Blade), q.say(g.Saw.Depth), q.say(g.Saw.StopShort), end)
	past := stringer.OvercutShown(q.st.Units)
	riser, tread := g.OvercutCost(past)
	q.add("Finish by handsaw", "The blade is round: at the tick %s of the line is still whole on the far face. Finish it plumb and level with a handsaw, to a clean corner. Never run the circular saw past: each %s over the root takes %s off the throat along a riser line, %s along a tread line.",
		q.say(g.Saw.StopShort+g.Kerf.FarUncut), q.say(past), q.say(riser), q.say(tread))
}

func (q *sequence) rest() {
	g, asked, job := q.g, q.f.Spec.Stringer, q.s.Job
	drop := q.f.EndLevel - q.f.StartLevel - float64(g.Notches)*q.f.UnitRise + g.Tread
	top := fmt.Sprintf("%s below %s", q.say(drop), q.upper())
	up, today := job.Levels.UpperFinish, "the floor as it is today"
	if l := q.f.Head; l != nil {
		up, today = l.Flooring(), "its sheathing"
	}
	if up > 0 {
		top += fmt.Sprintf(", which is %s from %s, %s of %s being still to come", q.belowToday(drop-up.MM()), today, q.st.Inches(up), laidLater(q.f.Head))
	}
	packing := ""
	if asked.BehindHead > 0 {
		packing = " against its " + q.st.Inches(asked.BehindHead) + " of packing"
	}
	q.add("Test the first", "Set it in place. Treads level along and across, first riser cut %s, top of the last tread cut %s, plumb cut tight%s, seat bearing its whole length.",
		q.eachMM(func(g *layout.Group) float64 { return g.FirstRiserCut }), top, packing)
	q.trace(asked.Count)
	seal := "Outdoors, or on concrete, soak every fresh cut with the preservative made for it before the boards go together."
	if job.Service == spec.Wet {
		seal = "Soak every fresh cut, roots and seat above all, with the preservative made for it, before the boards go together."
	}
	q.add("Seal the cut ends", "%s", seal)
}

// belowToday says how far a cut lies below today's floor, or above it.
func (q *sequence) belowToday(mm float64) string {
	if mm < 0 {
		return q.say(-mm) + " up"
	}
	return q.say(mm) + " down"
}

// mirrored is where one template serves both hands.
const mirrored = " Turn the template over where crown or good face ask for it: one serves both hands."

func (q *sequence) trace(count int) {
	switch {
	case q.several():
		q.add("Keep the outlines apart", "The feet differ: %s. Cut and test one of each, trace only its own from it, and write its place on every board before it leaves the horses.%s",
			q.each(func(g *layout.Group) string { return fmt.Sprintf("%s, %d off", g.Name, len(g.Positions)) }), mirrored)
	case count == 2:
		q.add("Trace the second", "Trace it from the first, crown up.%s", mirrored)
	case count > 2:
		q.add("Trace the rest", "Trace the other %d from the first, crown up, never one from the next.%s", count-1, mirrored)
	}
}
