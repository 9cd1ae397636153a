package spec

import "stepoff/spec/measure"

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
	if left := p.Size.Width - 2*p.Margin - p.Overlap; left < leastSheet {
		style := measure.Style{Units: top.units}
		g.blame("margin", "overlap", "size").Mistake("paper: two margins and an overlap leave %s of %s; leave at least %s", style.Inches(left), style.Inches(p.Size.Width), style.Inches(leastSheet))
	}
	return p
}

// leastSheet is what a sheet must show of a drawing besides what it shares with
// its neighbour: room for the marks and the figures that place it.
const leastSheet = 2 * measure.Inch
