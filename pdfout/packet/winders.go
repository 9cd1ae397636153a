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
	boxHeight         = 125
	marksHeight       = 110
	wallStringsHeight = 120
)

// winders are the pages a turn of winders is built by: its boxes with their parts,
// the marks on walls and newel, the strings along them.
func winders(s *layout.Stairway, w *layout.Winders, st measure.Style) pdfout.Flow {
	p := windersPages{s: s, w: w, st: st}
	p.add(pdfout.Heading{Level: 1, Text: "Framing of " + w.Name})
	if w.Spec.Boxes {
		p.order()
		for k := range p.boxes() {
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

func (p *windersPages) boxes() []turn.Box { return boxes(p.s, p.w) }

// order tells the order the boxes are built and stacked in, and how high they are.
func (p *windersPages) order() {
	st, all := p.st, p.boxes()
	t := pdfout.Table{Header: []string{"box", "under winders", "stands at", "rims and joists", "top of the sheathing", "finished tread"}}
	for k, b := range all {
		t.Rows = append(t.Rows, []string{fmt.Sprint(k + 1), under(k, len(all)), st.FormatMM(b.Bottom), st.InchesMM(b.Height), st.FormatMM(b.Top), st.FormatMM(p.w.Levels[k])})
	}
	first := "Set box 1 on the floor, its front's outer face on the first riser line; shim it level."
	if leg := all[0].Leg; leg > 0 {
		first = fmt.Sprintf("Set box 1 on a frame wall or legs that make up %s from the floor as it is today, its front's outer face on the first riser line; level it.", st.InchesMM(leg))
	}
	steps := []string{
		"Strike the riser lines on both walls and at the newel by the marks that follow; check the heights from the floor up and from the upper floor down.",
		"Rip rims and joists to their heights. Of each box nail front and back to the rims, then the joists, square and flat on the floor.",
		first + fmt.Sprintf(" Sheathe it with %s, glued and nailed, flush with its outer faces.", st.Inches(p.w.Spec.Sheathing)),
	}
	for k := 1; k < len(all); k++ {
		steps = append(steps, fmt.Sprintf("Set box %d on that, its front's outer face on riser line %d; nail it down through the sheathing into the rims below, and sheathe it. The top stands at %s.", k+1, k+1, st.FormatMM(all[k].Top)))
	}
	steps = append(steps, "The upper flight's stringers stand on the last box's sheathing, their riser cuts on the last riser line. Riser boards and treads go on from the bottom up.")
	p.add(pdfout.Figure{Drawing: views.WindersElevation(p.s, p.w, st), MaxHeight: marksHeight},
		pdfout.Paragraph{Text: "Levels are above the lower finished floor."}, t,
		pdfout.Heading{Level: 2, Text: "Order of assembly"}, pdfout.List{Numbered: true, Items: steps})
}

func under(k, n int) string {
	if k == n-1 {
		return fmt.Sprint(n)
	}
	return fmt.Sprintf("%d to %d", k+1, n)
}

// box draws a box and lists its parts.
func (p *windersPages) box(k int) {
	b := &p.boxes()[k]
	t := pdfout.Table{Header: []string{"no.", "part", "length, long point to long point", "one end", "other end"}, Align: []drawing.Align{drawing.Right}}
	for i, part := range b.Parts {
		t.Rows = append(t.Rows, []string{fmt.Sprint(i + 1), part.Kind.String(), p.st.FormatMM(part.Length), endWords(part, 0), endWords(part, 1)})
	}
	p.add(pdfout.PageBreak{}, pdfout.Heading{Level: 2, Text: fmt.Sprintf("Box %d of %s", k+1, p.w.Name)},
		pdfout.Figure{Drawing: views.BoxPlan(p.w.Name, k+1, b, p.st), MaxHeight: boxHeight},
		pdfout.Paragraph{Text: fmt.Sprintf("All parts are %s high, on edge. Bevels are degrees off square, cut plumb. The sheathing is the box's outline.", p.st.InchesMM(b.Height))}, t)
}

// endWords says how the end of a part is cut, and where its long point is.
func endWords(part turn.BoxPart, end int) string {
	which := [2]string{"lower", "upper"}
	if part.Kind == turn.BoxFront || part.Kind == turn.BoxBack {
		which = [2]string{"inner", "outer"}
	}
	e := part.Ends[end]
	tilt, onEnd := e.Saw()
	if tilt == 0 && !onEnd {
		return which[end] + ": square"
	}
	long := "outer"
	if e.Bevel < 0 {
		long = "inner"
	}
	words := fmt.Sprintf("%s: %s, long on the %s face", which[end], degrees(max(e.Bevel, -e.Bevel)), long)
	if onEnd {
		words += fmt.Sprintf("; saw on the squared end, tilted %s", degrees(tilt))
	}
	return words
}

// degrees prints an angle to a tenth: finer than a saw is set.
func degrees(d float64) string { return fmt.Sprintf("%.1f°", d) }

// marks shows what is struck on the walls and the newel.
func (p *windersPages) marks() {
	all := marks(p.s, p.w)
	p.add(pdfout.PageBreak{}, pdfout.Heading{Level: 2, Text: "Marks on the walls and the newel of " + p.w.Name})
	for _, inside := range [...]bool{false, true} {
		if d := views.WallMarks(p.w.Name, p.w.Hand(), inside, all, p.w.UnitRise, p.st); d != nil {
			p.add(pdfout.Figure{Drawing: d, MaxHeight: marksHeight})
		}
	}
	t := pdfout.Table{Header: []string{"riser line", "on the", "from the corner", "finished tread above it"}}
	for _, m := range all {
		t.Rows = append(t.Rows, []string{fmt.Sprint(m.Riser), m.Wall.String(), p.st.FormatMM(m.FromCorner), p.st.FormatMM(m.Height)})
	}
	p.add(pdfout.Paragraph{Text: "Strike each riser line plumb at its distance from the corner, measured on the finished face; on it the finished tread's height above the lower finished floor. The cut under a tread is its thickness lower."}, t)
}

// strings shows the strings along the walls and the newel, unrolled.
func (p *windersPages) strings() {
	notched, housed := wallStrings(p.s, p.w)
	if len(notched) == 0 {
		return
	}
	p.add(pdfout.PageBreak{}, pdfout.Heading{Level: 2, Text: "Strings of " + p.w.Name})
	for _, inside := range [...]bool{false, true} {
		if d := views.WallStrings(p.w.Name, p.w.Hand(), inside, notched, housed, p.st); d != nil {
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
	if len(housed) == 0 {
		return
	}
	t = pdfout.Table{Header: []string{"housed string", "pitch at the winders", "of the flight", "radius between", "least over a nosing"}}
	for _, h := range housed {
		row := []string{h.Wall.String(), degrees(h.Pitch), "", "", p.st.InchesMM(h.Clear)}
		if h.FlightPitch > 0 {
			row[2] = degrees(h.FlightPitch)
		}
		if h.Radius > 0 {
			row[3] = p.st.FormatMM(h.Radius)
		}
		t.Rows = append(t.Rows, row)
	}
	p.add(t)
}
