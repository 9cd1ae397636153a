package lesson

import (
	"fmt"

	"stepoff/layout"
	"stepoff/spec"
	"stepoff/spec/measure"
)

// Step is one step of the work: what it is, and how it is done here.
type Step struct{ Title, Text string }

// CutSequence tells how to lay out and saw the stringers of one outline. Every
// figure comes from the layout; + and - say which way a printed one is rounded.
func CutSequence(s *layout.Stairway, f *layout.Flight, g *layout.Group, st measure.Style) []Step {
	q := sequence{s: s, f: f, g: g, st: st}
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
	g     *layout.Group
	st    measure.Style
	steps []Step
}

func (q *sequence) say(mm float64) string { return q.st.InchesMM(mm) }

func (q *sequence) add(title, format string, args ...any) {
	q.steps = append(q.steps, Step{title, fmt.Sprintf(format, args...)})
}

func (q *sequence) blank() {
	g := q.g
	board := q.f.Spec.Stringer.Stock.Name
	if board == "" {
		board = "the board"
	}
	long := "at least " + q.say(g.LeastBlank) + " after trimming"
	if g.StockLength > 0 {
		long = q.st.Format(g.StockLength) + " long, " + long
	}
	q.add("Pick and crown the blank", "Take %s, %s. Sight along it: the crown goes up, on the edge the steps are cut from. Keep knots and checks out of the inside corners. Measure its width: this layout is for %s; a narrower board loses the difference from its throat.",
		board, long, q.say(g.Width))
	q.add("Square the foot end", "Square a line across near the foot end, past any check: every distance is taped from it.")
}

func (q *sequence) lines() {
	g := q.g
	last := g.Tips[len(g.Tips)-1].X
	q.add("Tape the tips", "Hook the tape on that line and mark every tip on the edge in one pull, from %s for the first to %s for the last. Nothing gathers that way: do not step from one to the next.",
		q.say(g.Tips[0].X), q.say(last))
	if measure.SnapMM(g.Square.Drift) == 0 && measure.SnapMM(g.Square.DriftRise) == 0 {
		q.add("Set the square", "Gauges on the framing square: %s on the tongue, the unit rise; %s on the blade, the unit run.", q.say(g.Square.Tongue), q.say(g.Square.Blade))
	} else {
		q.add("Set the square", "Gauges on the framing square: %s on the tongue, %s on the blade, its nearest marks. Stepped %d times they would end %s along and %s in height from true, so let the taped tips rule and use the square for the angles only.",
			q.say(g.Square.Tongue), q.say(g.Square.Blade), g.Notches, apart(q.st, g.Square.Drift), apart(q.st, g.Square.DriftRise))
	}
	q.add("Mark the steps", "From each tip draw the tread line, %s level, and the riser line down to the tread line below, %s plumb. With the sheets: lay the stock edge on the board's edge, each sheet's station on the tape, and prick through every tip and root. Roots lie %s square in from the edge.",
		q.st.Inches(q.f.UnitRun), q.say(q.f.UnitRise), q.say(g.NotchDepth))
}

// apart prints a drift without its sign.
func apart(st measure.Style, v float64) string {
	if v < 0 {
		v = -v
	}
	return st.DecimalMM(v)
}

func (q *sequence) foot() {
	g, t := q.g, q.s.Job.Tread.Thickness
	why := fmt.Sprintf("one tread, %s", q.st.Inches(t))
	if q.f.Flooring > 0 {
		why += fmt.Sprintf(", less the %s of flooring to come round the foot", q.st.Inches(q.f.Flooring))
	}
	if g.FootLevel != 0 {
		side := "above"
		if g.FootLevel < 0 {
			side = "below"
		}
		why += fmt.Sprintf(", with its bearing %s %s where the rise was measured", q.st.Inches(g.FootLevel.Abs()), side)
	}
	if g.BottomDrop < 0 {
		q.add("Lengthen the foot", "The first riser cut is %s, not %s: the flooring to come round the foot is thicker than the tread by %s. Mark the seat level from there, %s long.",
			q.say(g.FirstRiserCut), q.say(q.f.UnitRise), q.say(-g.BottomDrop), q.say(g.SeatCut))
	} else {
		q.add("Drop the foot", "The first riser cut is %s, not %s: the bottom drop of %s is %s. Mark the seat level from there, %s long.",
			q.say(g.FirstRiserCut), q.say(q.f.UnitRise), q.say(g.BottomDrop), why, q.say(g.SeatCut))
	}
	if g.Kicker != nil {
		q.add("Notch for the kicker", "At the front of the seat mark %s high and %s deep for the plate laid flat; its back face keeps the stringer from sliding. Saw this notch by hand.",
			q.say(g.Kicker.Height), q.say(g.Kicker.Depth))
	}
}

func (q *sequence) head() {
	g := q.g
	top := fmt.Sprintf("The last tread cut is %s", q.say(g.LastTread))
	run := q.f.UnitRun.MM()
	if measure.SnapMM(g.LastTread) != measure.SnapMM(run) {
		top += fmt.Sprintf(", not %s, so that the top run comes out like the others", q.st.Inches(q.f.UnitRun))
	}
	below := fmt.Sprintf("the top tread comes one rise, %s, below the finished upper floor", q.say(q.f.UnitRise))
	if !q.f.Hung() {
		below = "the top tread comes level with the finished upper floor"
	}
	q.add("Mark the head", "%s; from its end mark plumb down, %s: %s.", top, q.say(g.HeadCut), below)
	if g.Ledger != nil {
		q.add("Notch for the ledger", "At the bottom of the plumb cut mark %s up and %s in for the ledger on edge. Saw this notch by hand.",
			q.say(g.Ledger.Height), q.say(g.Ledger.Depth))
	}
	if g.HeadContact != nil && *g.HeadContact < layout.LittleContact.MM() {
		q.add("See to the head's bearing", "Only %s of the plumb cut stands against the header. Use a hanger board, a deeper header, a ledger or stringer hangers; do not trust nails into end grain.",
			q.say(*g.HeadContact))
	}
}

func (q *sequence) saw() {
	g := q.g
	left := g.Saw.StopShort + g.Kerf.FarUncut
	q.add("Saw to the ticks", "Blade %s, set %s deep, shoe flat on clamped stock. On every riser and tread line stop at the tick, %s short of the root.",
		q.say(g.Saw.Blade), q.say(g.Saw.Depth), q.say(g.Saw.StopShort))
	riser, tread := g.OvercutCost(measure.Inch.MM() / 4)
	q.add("Finish by handsaw", "The blade is round: at the tick %s of the line is still whole on the far face. Finish it plumb and level with a handsaw, to a clean corner. Never run the circular saw past: each %s over the root takes %s off the throat along a riser line, %s along a tread line.",
		q.say(left), q.st.Inches(measure.Inch/4), q.say(riser), q.say(tread))
}

func (q *sequence) rest() {
	asked := q.f.Spec.Stringer
	q.add("Test the first", "Set it in place. Treads level along and across, first riser cut %s, top of the last tread cut %s below the finished upper floor, plumb cut tight, seat bearing its whole length.",
		q.say(q.g.FirstRiserCut), q.say(q.f.EndLevel-q.f.StartLevel-float64(q.g.Notches)*q.f.UnitRise+q.g.Tread))
	if n := len(q.g.Positions); n > 1 {
		q.add("Trace the rest", "Trace the other %d of this outline from the first, crown up, never one from the next. Turn the template over for a left-hand board whose good face or crown asks for it: one template serves both hands.", n-1)
	}
	if others := len(q.f.Stringers) - 1; others > 0 {
		q.add("Keep them apart", "This outline is for: %s. The foot is not the same for all %d stringers: write the place on each before it leaves the horses.", q.g.Where(asked.Count), asked.Count)
	}
	seal := "Outdoors, or on concrete, soak every fresh cut with the preservative made for it before the boards go together."
	if q.s.Job.Service == spec.Wet {
		seal = "Soak every fresh cut, roots and seat above all, with the preservative made for it, before the boards go together."
	}
	q.add("Seal the cut ends", "%s", seal)
}
