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
	_, headerDepth := f.header(job)
	floor := "finished upper floor"
	if f.Head != nil {
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
	g.HeadContact = f.contact(job, top, bottom)
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

// header is what the head bears on: from the finished level it rises to down to its
// top, and to its underside, which is nil where that was not measured.
func (f *Flight) header(job *spec.Job) (top measure.Length, depth *measure.Length) {
	if f.Head != nil {
		return f.Head.Header()
	}
	return job.Levels.HeaderTop, job.Levels.HeaderDepth
}

// contact is how much of a plumb cut has header behind it, both measured down from
// the finished level; nil where the header was not measured.
func (f *Flight) contact(job *spec.Job, top, bottom float64) *float64 {
	headerTop, depth := f.header(job)
	if depth == nil {
		return nil
	}
	c := math.Max(0, math.Min(bottom, depth.MM())-math.Max(top, headerTop.MM()))
	return &c
}

// LittleContact is the bearing below which a head is said to bear little: the
// 1 1/2 in that joists are commonly given on wood (common practice).
const LittleContact = measure.Inch + measure.Inch/2
