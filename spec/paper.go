package spec

import (
	"fmt"

	"stepoff/spec/measure"
)

// readPaper reads what the sheets are printed on.
func readPaper(top group) Paper {
	g, _ := top.sub("paper")
	p := Paper{Margin: g.length("margin"), Overlap: g.length("overlap"), ScaleX: g.scale("scale_x"), ScaleY: g.scale("scale_y")}
	text, at := g.key("size").Default, g.get("size")
	if at != nil {
		given, ok := single(at, "size", "a paper size")
		if !ok {
			return p
		}
		text = given
	}
	size, err := ParsePaperSize(text, top.units)
	if err != nil {
		at.Mistake("size: %s", err)
		return p
	}
	p.Size = size
	if err := p.Check(top.units); err != nil {
		g.blame("margin", "overlap", "size").Mistake("paper: %s", err)
		return p
	}
	return p
}

// DefaultPaper is the paper of a job that does not name any.
func DefaultPaper() Paper {
	length := func(name string) measure.Length {
		l, _ := measure.Parse(table["paper."+name].Default, measure.Undeclared) // held by a test
		return l
	}
	size, _ := ParsePaperSize(table["paper.size"].Default, measure.Undeclared)
	return Paper{Size: size, Margin: length("margin"), Overlap: length("overlap"), ScaleX: 1, ScaleY: 1}
}

// leastPrintable is what must be left of the paper inside its margins, both
// ways: room for the rulers and the title block besides the drawing.
const leastPrintable = 90 * measure.Millimetre

// Check tells why nothing can be printed on the paper, or nil. Lengths are
// printed in the given units.
func (p Paper) Check(units measure.Units) error {
	say := measure.Style{Units: units}.Inches
	short := p.Size.Width - 2*p.Margin
	switch {
	case short < leastPrintable:
		return fmt.Errorf("two margins of %s leave %s of %s; leave at least %s", say(p.Margin), say(short), say(p.Size.Width), say(leastPrintable))
	case 3*p.Overlap > short:
		return fmt.Errorf("an overlap of %s takes more than a third of the %s inside the margins; take a smaller one", say(p.Overlap), say(short))
	}
	return nil
}
