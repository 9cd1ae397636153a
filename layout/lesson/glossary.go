package lesson

import "strings"

// Term is a word of the trade and what it means.
type Term struct{ Word, Meaning string }

// Glossary is every term a lesson uses, in the order of the alphabet.
var Glossary = []Term{
	{"blank", "the board a stringer is cut from"},
	{"bottom drop", "what comes off the foot, so that the first rise is like the others once the treads are on"},
	{"bullnose", "a rounded front edge of a tread"},
	{"cleat", "a block fastened to a solid stringer to carry a tread"},
	{"crown", "the high edge of a board that is bent along its length"},
	{"finished floor", "the surface people will walk on, with all its flooring laid"},
	{"flight", "the steps between two floors or landings"},
	{"framing square", "the flat steel square of a framer: its long arm is the blade, its short arm the tongue"},
	{"gauge", "a small brass stop, screwed on the square, that rests on the board's edge"},
	{"guard", "what keeps people from falling off an open side"},
	{"handrail", "the rail the hand holds, over the nosings"},
	{"head", "the upper end of a stringer"},
	{"header", "the beam at the edge of the floor opening, that the head stands against"},
	{"headroom", "the height that is free over the nosings, plumb"},
	{"housed", "let into grooves in the stringer's face"},
	{"kerf", "the slot a saw leaves"},
	{"kicker", "a plate on the floor that keeps the foot from sliding"},
	{"landing", "a level platform between flights"},
	{"ledger", "a strip on the header that carries the head"},
	{"level cut", "a cut that is level once the stringer stands"},
	{"narrow end", "the inner end of a winder, where it is least deep"},
	{"nosing", "the front edge of a tread, past the riser board below it"},
	{"notch", "what is sawn out for one step: a riser cut and a tread cut"},
	{"overcut", "a cut that runs past its corner into the wood that is left"},
	{"pitch", "how steep the flight is, as an angle"},
	{"pitch board", "a board cut to one step, to mark all of them with"},
	{"plumb cut", "a cut that is upright once the stringer stands"},
	{"riser", "the upright part of a step"},
	{"root", "the inside corner of a notch"},
	{"seat", "the level cut at the foot, that the stringer stands on"},
	{"setback", "how far before the inside corner the first winder's riser line stands"},
	{"step", "the way from tip to tip along the edge: the long side of rise and run"},
	{"story pole", "a straight pole on which every level is marked"},
	{"stringer", "the sloping board that carries the treads"},
	{"throat", "the wood left under a notch, square across the board"},
	{"tip", "the outside corner of a notch, on the edge of the board"},
	{"total rise", "finished floor to finished floor, plumb"},
	{"total run", "the length of a flight on the level, nosing to nosing"},
	{"tread", "the board that is stepped on"},
	{"unit rise", "the height of one step: total rise shared by the risers"},
	{"unit run", "the depth of one step, nosing to nosing"},
	{"walkline", "the line on which people walk round a turn, where winders are measured"},
	{"winder", "a tread that is wider at one end than at the other, and turns the stair"},
}

// Explain finds a term, in the singular or the plural.
func Explain(word string) (Term, bool) {
	word = strings.ToLower(word)
	for _, t := range Glossary {
		if word == t.Word || word == t.Word+"s" || word == t.Word+"es" {
			return t, true
		}
	}
	return Term{}, false
}

// PartNames are the parts of a stair that its drawing has a leader to.
var PartNames = []string{
	"nosing", "tread", "riser board", "handrail", "root", "throat", "stringer", "plumb cut at the head", "header",
	"seat", "kicker", "lower finished floor", "upper finished floor",
}

// PartLetter is the letter of the k-th part of a drawing, 0 the first.
func PartLetter(k int) string { return string(rune('A' + k)) }
