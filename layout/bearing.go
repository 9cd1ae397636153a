package layout

import (
	"fmt"
	"math"

	"stepoff/layout/stringer"
	"stepoff/spec"
	"stepoff/spec/measure"
)

// bearing works out how much of the head plumb cut has header behind it, and
// refuses a ledger that would hang below its header. Nothing is said where the
// header was not measured.
func (f *Flight) bearing(g *Group, job *spec.Job) stringer.Refusals {
	headerTop, headerDepth, floor := job.Levels.HeaderTop, job.Levels.HeaderDepth, "finished upper floor"
	if f.Head != nil {
		headerTop, headerDepth = f.Head.Header()
		floor = "finished " + f.Head.Label()
	}
	if headerDepth == nil {
		return nil
	}
	_, topCut := g.Tip(g.Notches)
	top := f.EndLevel - f.StartLevel - topCut // finished upper floor down to the top of the plumb cut
	bottom := top + g.HeadCut
	if g.Ledger != nil {
		bottom -= g.Ledger.Height // the notch takes that much of the plumb cut away
	}
	contact := math.Max(0, math.Min(bottom, headerDepth.MM())-math.Max(top, headerTop.MM()))
	g.HeadContact = &contact
	if g.Ledger == nil {
		return nil
	}
	if bottom < headerDepth.MM() {
		return nil // the ledger's top is where the plumb cut now ends
	}
	say := measure.Style{Units: job.Units}.FormatMM
	return stringer.Refusals{{Key: "stringer.ledger", Message: fmt.Sprintf(
		"the ledger's top would lie %s below the %s, under the header, whose underside is %s below it; leave the ledger out or frame a deeper header",
		say(bottom), floor, say(headerDepth.MM()))}}
}

// LittleContact is the bearing below which a head is said to bear little: the
// 1 1/2 in that joists are commonly given on wood (common practice).
const LittleContact = measure.Inch + measure.Inch/2
