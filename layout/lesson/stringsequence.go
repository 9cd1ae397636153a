package lesson

import (
	"fmt"

	"stepoff/layout"
	"stepoff/spec"
	"stepoff/spec/measure"
)

// stringSequence tells how to lay out and cut the two strings of a flight whose
// treads stand between them. The order is common practice.
func stringSequence(s *layout.Stairway, f *layout.Flight, st measure.Style) []Step {
	q := strungSequence{sequence: sequence{s: s, f: f, st: st}, one: &f.Strings[0], two: &f.Strings[1]}
	q.blanks()
	if h := q.one.Housed; h != nil {
		q.rout()
	} else {
		q.fasten()
	}
	q.saw()
	if q.one.Housed != nil {
		q.assemble()
	}
	q.test()
	return q.steps
}

type strungSequence struct {
	sequence
	one, two *layout.String // left and right
}

// both tells a figure of the two strings: once where they are alike.
func (q *strungSequence) both(figure func(s *layout.String) float64) string {
	l, r := q.say(figure(q.one)), q.say(figure(q.two))
	if l == r {
		return l
	}
	return "left " + l + ", right " + r
}

func (q *strungSequence) blanks() {
	q.add("Pick and crown the blanks", "Two boards, each at least %s once its ends are trimmed and %s wide. The crown goes up, on the edge the nosings are taped along; the better faces turn inward, toward each other.",
		q.both(func(s *layout.String) float64 { return s.LeastBlank }), q.say(q.one.Width))
	q.add("Square the foot ends", "Saw both foot ends square: every distance is taped from them. Write left and right on the boards, and foot and head, before anything is marked.")
	n := len(q.one.Marks) - 1
	if n == 0 {
		q.add("Tape the nosing", "Mark the nosing on the top edge at %s.", q.both(func(s *layout.String) float64 { return s.Marks[0] }))
	} else {
		q.add("Tape the nosings", "Hook the tape on the foot end and mark every nosing on the top edge in one pull: the first at %s, the last at %s. Stand the two boards top edge to top edge and square the marks over where they are alike.",
			q.both(func(s *layout.String) float64 { return s.Marks[0] }), q.both(func(s *layout.String) float64 { return s.Marks[n] }))
	}
}

func (q *strungSequence) rout() {
	h := q.one.Housed
	q.add("Make the template", "Saw and file its opening to the sheet, screw the fence under its edge. Cutter %s, bush %s: the opening lies %s outside the housing all round.",
		q.st.FineMM(h.Cutter), q.st.FineMM(h.Bush), q.st.FineMM(h.Router.Offset))
	q.add("Try it", "Rout one housing %s deep in scrap; a tread, a riser board and a wedge of the taper must go home in it. Set right what does not before a string is touched.", q.say(h.Depth))
	q.add("Rout the housings", "Lay the template's mark on each nosing's mark, the fence on the top edge, and rout to depth in several passes: %d on the left string, then turn the template over for the right one. Clean out the corners the cutter left round.",
		len(h.Marks))
}

func (q *strungSequence) fasten() {
	c := q.one.Cleated
	what := "cleat"
	if q.s.Job.Cleats.Kind == spec.SteelBracket {
		what = "bracket"
	}
	q.add("Mark the cleats", "From the sheets, or with the pitch board, strike under each tread the level line its %ss hang from: their tops lie %s under the tread's top, square down from its nosing.",
		what, q.say(c.Tread))
	screws := fmt.Sprintf("Pre-drill, then %d screws through each %s on its middle line, the outer ones %s from its ends", c.Screws, what, q.say(c.EdgeDistance()))
	q.add("Fasten them", "%s: %d %ss on each stringer, its face inward.", screws, len(c.Cleats), what)
}

func (q *strungSequence) saw() {
	q.add("Saw the feet", "Plumb cut %s, level cut %s. The plumb cut stands %s before the first nosing.",
		q.both(func(s *layout.String) float64 { return s.FootCut }), q.both(func(s *layout.String) float64 { return s.SeatCut }), q.say(q.one.FootPlumb))
	head := fmt.Sprintf("Plumb cut %s", q.both(func(s *layout.String) float64 { return s.HeadCut }))
	if q.one.HeadTop > 0 {
		head = fmt.Sprintf("Level cut %s, plumb cut %s", q.both(func(s *layout.String) float64 { return s.HeadTop }), q.both(func(s *layout.String) float64 { return s.HeadCut }))
	}
	q.add("Saw the heads", "%s.", head)
}

func (q *strungSequence) assemble() {
	h := q.one.Housed
	depths := ""
	if w := q.s.Job.Width; w != nil {
		depths = fmt.Sprintf(" Treads and riser boards are %s long: %s between the strings and a housing %s deep at either end.", q.st.Inches(*w+2*q.s.Job.Housing.Depth), q.st.Inches(*w), q.say(h.Depth))
	}
	if len(h.Wedges) == 0 {
		q.add("Put it together", "Lay one string down, housings up, stand the treads in it, set the other on, and draw the two together with clamps; fasten as the treads ask.%s", depths)
		return
	}
	q.add("Cut the wedges", "All from one taper, 1:%.4g, %s at the thin end: see the cut list.", 1/h.WedgeTaper, q.say(h.Wedges[0].Tip))
	q.add("Put it together", "Upside down on blocks: treads into both strings, drawn tight with clamps and square; glue and drive the wedges under the treads, saw them off flush, then riser boards and theirs.%s", depths)
}

func (q *strungSequence) test() {
	first := q.f.UnitRise
	q.add("Test it", "Dry, in its place: treads level along and across, the first one's top %s above the finished floor, plumb cuts tight, feet bearing their whole length.", q.say(first))
	seal := "Outdoors, or on concrete, soak every fresh cut with the preservative made for it before it is set."
	if q.s.Job.Service == spec.Wet {
		seal = "Soak every fresh cut, feet above all, with the preservative made for it before it is set."
	}
	q.add("Seal the cut ends", "%s", seal)
}
