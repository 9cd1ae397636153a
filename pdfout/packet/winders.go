package packet

import (
	"fmt"

	"stepoff/layout"
	"stepoff/layout/drawing"
	"stepoff/layout/turn"
	"stepoff/layout/views"
	"stepoff/pdfout"
	"stepoff/spec/measure"
)

// Heights of the figures on a turn's pages, millimetres, captions included: a box
// and the list of its parts share a page.
const (
	turnPlanHeight    = 200
	boxHeight         = 115
	stepsHeight       = 110
	wallsHeight       = 90
	newelHeight       = 110
	wallStringsHeight = 70
)

// winders are the pages a turn of winders is built by: its boxes with their parts,
// the marks on walls and newel, the strings along them.
func winders(s *layout.Stairway, w *layout.Winders, st measure.Style) pdfout.Flow {
	p := windersPages{s: s, w: w, st: st}
	p.add(pdfout.Heading{Level: 1, Text: "Framing of " + w.Name})
	if d := views.TurnPlan(s, w, st); d != nil {
		p.add(pdfout.Figure{Drawing: d, MaxHeight: turnPlanHeight},
			pdfout.Paragraph{Text: fmt.Sprintf("The plan numbers risers and treads through the stairway. On the pages that follow they are counted from this turn's first: riser line 1 is the stairway's riser %d.", w.Risers)}, pdfout.PageBreak{})
	}
	if len(w.Boxes) > 0 {
		p.order()
		for k := range w.Boxes {
			p.box(k)
		}
	}
	p.marks()
	p.strings()
	p.add(pdfout.List{Items: framingCautions})
	return pdfout.Flow{Title: "Framing of " + w.Name, Blocks: p.blocks}
}

type windersPages struct {
	s      *layout.Stairway
	w      *layout.Winders
	st     measure.Style
	blocks []pdfout.Block
}

func (p *windersPages) add(blocks ...pdfout.Block) { p.blocks = append(p.blocks, blocks...) }

// order tells the order the boxes are built and stacked in, and how high they are.
func (p *windersPages) order() {
	st, all := p.st, p.w.Boxes
	t := pdfout.Table{Header: []string{"box", "under winders", "stands at", "rims and joists", "top of the sheathing", "finished tread"}}
	for k, b := range all {
		t.Rows = append(t.Rows, []string{fmt.Sprint(k + 1), under(k, len(all)), st.FormatMM(b.Bottom), st.InchesMM(b.Height), st.FormatMM(b.Top), st.FormatMM(p.w.Levels[k])})
	}
	first := "Set box 1 on the floor, its front's outer face on riser line 1; shim it level."
	if leg := all[0].Leg; leg > 0 {
		first = fmt.Sprintf("Set box 1 on %d legs, or on frame walls, that make up %s from the floor as it is today, its front's outer face on riser line 1; level it.", p.w.Legs, st.InchesMM(leg))
	}
	stock := ""
	if p.w.BoxStock.Name != "" {
		stock = " from " + p.w.BoxStock.Name
	}
	steps := []string{
		"Strike the riser lines on both walls and at the newel by the marks that follow; check the heights from the floor up and from the upper floor down.",
		"Rip rims and joists" + stock + " to their heights. Of each box nail front and back to the rims, then the joists, square and flat on the floor.",
		first + fmt.Sprintf(" Sheathe it with %s, glued and nailed, flush with its outer faces.", st.Inches(p.w.Spec.Sheathing)),
	}
	for k := 1; k < len(all); k++ {
		steps = append(steps, fmt.Sprintf("Set box %d on that, its front's outer face on riser line %d; nail it down through the sheathing into the rims below, and sheathe it. The top stands at %s.", k+1, k+1, st.FormatMM(all[k].Top)))
	}
	if lower := p.flight(-1); lower != nil && len(lower.Stringers) > 0 && *lower.Stringers[0].HeadContact < layout.LittleContact.MM() {
		steps = append(steps, "The lower flight's heads stand against what carries box 1, not against its front: a frame wall, or a hanger board from the front down, takes them.")
	}
	last := "Riser boards and treads go on from the bottom up."
	if p.flight(1) != nil {
		cuts := "riser cuts on the last riser line"
		if len(p.flight(1).Strings) > 0 {
			cuts = "first risers on the last riser line"
		}
		last = "The upper flight's stringers stand on the last box's sheathing, their " + cuts + ". " + last
	}
	steps = append(steps, last)
	p.add(pdfout.Figure{Drawing: views.WindersElevation(p.s, p.w, nil, st), MaxHeight: stepsHeight},
		pdfout.Paragraph{Text: "Levels are above the lower finished floor."}, t,
		pdfout.Heading{Level: 2, Text: "Order of assembly"}, pdfout.List{Numbered: true, Items: steps})
}

// flight is the flight so many members up from the winders; nil where none with
// stringers stands there.
func (p *windersPages) flight(up int) *layout.Flight {
	for i, e := range p.s.Elements {
		if e == layout.Element(p.w) {
			if f, ok := p.s.Elements[i+up].(*layout.Flight); ok && f.HasStringers() {
				return f
			}
		}
	}
	return nil
}

func under(k, n int) string {
	if k == n-1 {
		return fmt.Sprint(n)
	}
	return fmt.Sprintf("%d to %d", k+1, n)
}

// box draws a box and lists its parts.
func (p *windersPages) box(k int) {
	b := &p.w.Boxes[k]
	t := pdfout.Table{Header: []string{"no.", "part", "longest", "lower or inner end", "upper or outer end"}, Align: []drawing.Align{drawing.Right}}
	for i, part := range b.Parts {
		t.Rows = append(t.Rows, []string{fmt.Sprint(i + 1), part.Kind.String(), p.st.FormatMM(part.Length), endWords(part.Ends[0]), endWords(part.Ends[1])})
	}
	text := fmt.Sprintf("All parts are %s high, on edge. Bevels are degrees off square, cut plumb; the long point is on the outer face, of a joist on the one toward the outside of the turn, or on the inner one. The sheathing is the box's outline.", p.st.InchesMM(b.Height))
	if down, up, ok := views.InnerSides(b); ok {
		text += fmt.Sprintf(" From the inside corner it reaches %s down the stair and %s up.", p.st.FormatMM(down), p.st.FormatMM(up))
	}
	p.add(pdfout.PageBreak{}, pdfout.Heading{Level: 2, Text: fmt.Sprintf("Box %d of %s", k+1, p.w.Name)},
		pdfout.Figure{Drawing: views.BoxPlan(p.w.Name, k+1, b, p.st), MaxHeight: boxHeight},
		pdfout.Paragraph{Text: text}, t)
}

// endWords says how the end of a part is cut, and where its long point is.
func endWords(e turn.BoxEnd) string {
	tilt, onEnd := e.Saw()
	if tilt == 0 && !onEnd {
		return "square"
	}
	words := degrees(max(e.Bevel, -e.Bevel))
	if onEnd {
		words += " (the saw on the squared end, at " + degrees(tilt) + ")"
	}
	if e.Bevel < 0 {
		return words + ", long inside"
	}
	return words + ", long outside"
}

// degrees prints an angle to a tenth: finer than a saw is set.
func degrees(d float64) string { return fmt.Sprintf("%.1f°", d) }

// marks shows what is struck on the walls and the newel.
func (p *windersPages) marks() {
	p.add(pdfout.PageBreak{}, pdfout.Heading{Level: 2, Text: "Marks on the walls and the newel of " + p.w.Name},
		pdfout.Paragraph{Text: "Strike each riser line plumb at its distance from the corner, measured on the finished face; on it the finished tread's height above the lower finished floor. The cut under a tread is its thickness lower."})
	for _, side := range [...]struct {
		inside bool
		height float64
	}{{false, wallsHeight}, {true, newelHeight}} {
		d := views.WallMarks(p.w.Name, p.w.Hand(), side.inside, p.w.WallMarks, p.w.UnitRise, p.st)
		if d == nil {
			continue
		}
		t := pdfout.Table{Header: []string{"riser line", "on the", "from the corner", "finished tread above it"}}
		for _, m := range p.w.WallMarks {
			if inside := m.Wall == turn.LowerNewel || m.Wall == turn.UpperNewel; inside == side.inside {
				t.Rows = append(t.Rows, []string{fmt.Sprint(m.Riser), m.Wall.String(), p.st.FormatMM(m.FromCorner), p.st.FormatMM(m.Height)})
			}
		}
		p.add(pdfout.Figure{Drawing: d, MaxHeight: side.height}, t)
	}
}

// strings shows the strings along the walls and the newel, unrolled.
func (p *windersPages) strings() {
	notched, housed := p.w.WallStrings, p.w.HousedStrings
	if len(notched) == 0 {
		return
	}
	p.add(pdfout.Heading{Level: 2, Text: "Strings of " + p.w.Name})
	for _, inside := range [...]bool{false, true} {
		if d := views.WallStrings(p.w.Name, p.w.Hand(), inside, notched, housed); d != nil {
			p.add(pdfout.Figure{Drawing: d, MaxHeight: wallStringsHeight})
		}
	}
	t := pdfout.Table{Header: []string{"string", "winder", "run on it", "whole run", "pitch", "along the slope"}}
	for _, w := range notched {
		for _, step := range w.Steps {
			t.Rows = append(t.Rows, []string{w.Wall.String(), fmt.Sprint(step.Tread), p.st.FormatMM(step.Run), p.st.FormatMM(step.Whole), degrees(step.Pitch), p.st.FormatMM(step.Length)})
		}
	}
	p.add(t)
	for i := 0; i+1 < len(housed); i += 2 {
		p.add(pdfout.Paragraph{Text: p.housed(housed[i], housed[i+1])})
	}
}

// housed says how the edges of the housed strings of one side run.
func (p *windersPages) housed(lower, upper turn.HousedString) string {
	words := fmt.Sprintf("Housed along the %s and the %s: edges at %s past the winders", lower.Wall, upper.Wall, degrees(lower.Pitch))
	for _, end := range [...]struct {
		s  turn.HousedString
		at string
	}{{lower, "below"}, {upper, "above"}} {
		if end.s.FlightPitch > 0 {
			words += fmt.Sprintf(", at %s by the flight %s", degrees(end.s.FlightPitch), end.at)
		}
		if end.s.Radius > 0 {
			words += fmt.Sprintf(" with a radius of %s between", p.st.InchesMM(end.s.Radius))
		}
	}
	return words + fmt.Sprintf("; %s over the nosings at least.", p.st.InchesMM(min(lower.Clear, upper.Clear)))
}
