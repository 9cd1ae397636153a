package packet

import (
	"fmt"
	"math"

	"stepoff/layout"
	"stepoff/layout/drawing"
	"stepoff/layout/geom"
	"stepoff/layout/turn"
	"stepoff/layout/views"
	"stepoff/pdfout"
	"stepoff/spec/measure"
)

// Heights of the figures on a curve's pages, millimetres, captions included.
const (
	curveFramingHeight = 170
	curveStringHeight  = 100
)

// curve are the pages a curved flight is built by: its framing from above, the
// stud schedule, its strings unrolled.
func curve(s *layout.Stairway, c *layout.Curve, st measure.Style) pdfout.Flow {
	blocks := []pdfout.Block{pdfout.Heading{Level: 1, Text: "Framing of " + c.Name}}
	if d := views.TurnPlan(s, c, st); d != nil {
		blocks = append(blocks, pdfout.Figure{Drawing: d, MaxHeight: curveFramingHeight}, pdfout.PageBreak{})
	}
	if f := c.Framing; f != nil {
		blocks = append(blocks, pdfout.Figure{Drawing: views.CurveFraming(c), MaxHeight: curveFramingHeight},
			plateTable(f, st), bearerTable(c, st), pdfout.List{Items: framingCautions}, pdfout.PageBreak{}, pdfout.Heading{Level: 2, Text: "Stud schedule of " + c.Name},
			pdfout.Paragraph{Text: "Studs stand square on the plates, their tops cut square. A stud's mark is its face on the riser line, or on a radius between two; it stands behind it, going up, the last one of each wall before it. Along is the distance along the plate's outer edge, from the first riser line."})
		var walls [2][]pdfout.Block
		for i := range f.Plates {
			p := &f.Plates[i]
			walls[i] = []pdfout.Block{pdfout.Heading{Level: 3, Text: "The " + p.Name + " wall"}, studTable(p, f.Studs, st)}
		}
		blocks = append(blocks, pdfout.Columns{Left: walls[0], Right: walls[1]})
	}
	if c.NoStrings != "" {
		blocks = append(blocks, pdfout.Paragraph{Text: "No strings are drawn: " + c.NoStrings + "."})
	}
	if strings := c.Strings; len(strings) > 0 {
		blocks = append(blocks, pdfout.PageBreak{}, pdfout.Heading{Level: 2, Text: "Strings of " + c.Name + ", unrolled"})
		for _, str := range strings {
			blocks = append(blocks, pdfout.Figure{Drawing: views.CurveString(c.Name, str.CurveString, st), MaxHeight: curveStringHeight})
		}
		blocks = append(blocks, stringTable(strings, st), pdfout.List{Items: bends(strings, st)})
	}
	return pdfout.Flow{Title: "Framing of " + c.Name, Blocks: blocks}
}

func plateTable(f *turn.CurveFraming, st measure.Style) pdfout.Table {
	t := pdfout.Table{Header: []string{"plate", "radii, inner and outer", "layer", "pieces", "joints, from the first riser line"}}
	for _, p := range f.Plates {
		for k, row := range p.Layers {
			joints := ""
			for i, at := range p.Joints(k) {
				if i > 0 {
					joints += ", "
				}
				joints += st.FormatMM(p.Outer * at * math.Pi / 180)
			}
			t.Rows = append(t.Rows, []string{p.Name, st.FormatMM(p.Inner) + ", " + st.FormatMM(p.Outer), fmt.Sprint(k + 1), pieces(&p, row), joints})
		}
	}
	return t
}

// bearerTable lists the boards that carry the treads, those alike in one row.
func bearerTable(c *layout.Curve, st measure.Style) pdfout.Table {
	t := pdfout.Table{Header: []string{"", "part", "stock", "high", "length", "at riser lines"}, Align: []drawing.Align{drawing.Right}}
	for _, ledger := range [...]bool{false, true} {
		part, stock := "bearer, behind the riser line", c.BearerStock.Name
		if ledger {
			part, stock = "ledger, before it", c.LedgerStock.Name
		}
		var of []turn.Bearer
		row := func() {
			if len(of) == 0 {
				return
			}
			lines := fmt.Sprint(of[0].Riser)
			if len(of) > 1 {
				lines += fmt.Sprintf(" to %d", of[len(of)-1].Riser)
			}
			t.Rows = append(t.Rows, []string{fmt.Sprint(len(of)), part, stock, st.InchesMM(of[0].Depth), st.FormatMM(of[0].Length), lines})
		}
		for _, b := range c.Framing.Bearers {
			if b.Ledger != ledger {
				continue
			}
			if len(of) > 0 && !(same(of[0].Depth, b.Depth) && same(of[0].Length, b.Length)) {
				row()
				of = nil
			}
			of = append(of, b)
		}
		row()
	}
	return t
}

// pieces counts a layer's: 2 whole, 2 halves.
func pieces(p *turn.Plate, row []turn.PlateSegment) string {
	whole, half := 0, 0
	for _, g := range row {
		if g.Angle < p.Layers[0][0].Angle-1e-9 {
			half++
		} else {
			whole++
		}
	}
	if half == 0 {
		return fmt.Sprintf("%d whole", whole)
	}
	return fmt.Sprintf("%d whole, %d halves", whole, half)
}

// studTable is the schedule of one wall, from the bottom up.
func studTable(p *turn.Plate, studs []turn.Stud, st measure.Style) pdfout.Table {
	t := pdfout.Table{Header: []string{"no.", "riser line", "turned", "along", "height"}, Align: []drawing.Align{drawing.Right}}
	n := 0
	for _, s := range studs {
		if s.Plate != p.Name {
			continue
		}
		n++
		at := "between"
		if s.Riser > 0 {
			at = fmt.Sprint(s.Riser)
		}
		if s.Before {
			at += ", before"
		}
		t.Rows = append(t.Rows, []string{fmt.Sprint(n), at, degrees2(s.Angle), st.FormatMM(p.Outer * s.Angle * math.Pi / 180), st.FormatMM(s.Height)})
	}
	return t
}

// degrees2 prints an angle to a hundredth.
func degrees2(d float64) string { return fmt.Sprintf("%.2f°", d) }

func stringTable(strings []layout.CurvedString, st measure.Style) pdfout.Table {
	t := pdfout.Table{Header: []string{"string", "radius", "unit run", "pitch", "along the pitch", "least blank", "board as wide as"}}
	for _, s := range strings {
		t.Rows = append(t.Rows, []string{s.Name, st.FormatMM(s.Radius), st.InchesMM(s.UnitRun), degrees2(s.Pitch), st.FormatMM(s.Length), st.FormatMM(s.LeastBlank), st.InchesMM(s.BoardWidth)})
	}
	return t
}

// bends say how the strings are bent from thin layers, or why not.
func bends(strings []layout.CurvedString, st measure.Style) (items []string) {
	for _, s := range strings {
		if s.Bend == nil {
			items = append(items, fmt.Sprintf("The %s string is not bent from such layers: %s.", s.Name, s.NoBend))
			continue
		}
		b := s.Bend
		items = append(items, fmt.Sprintf("The %s string, bent: %d layers %s thick, %s in all, round an upright form with a radius of %s; round the turn the first face measures %s and the last %s.",
			s.Name, b.Layers, st.InchesMM(b.Layer), st.InchesMM(b.Thickness), st.FormatMM(b.FormRadius), st.FormatMM(b.InnerRun), st.FormatMM(b.OuterRun)))
	}
	return items
}

// plateParts are the sheets that a curve's plates are cut to.
func plateParts(s *layout.Stairway, c *layout.Curve, st measure.Style) []part {
	f := c.Framing
	if f == nil {
		return nil
	}
	var all []part
	for i := range f.Plates {
		p := &f.Plates[i]
		name := memberPart(s, c.Name, partPlates)
		all = append(all, part{names: []string{name}, sheet: func() pdfout.Part {
			g := p.Layers[0][0]
			count := ""
			for k, row := range p.Layers {
				if k > 0 {
					count += "; "
				}
				count += fmt.Sprintf("layer %d: %s", k+1, pieces(p, row))
			}
			return pdfout.Part{
				Name: name, Title: fmt.Sprintf("The %s plate of %s", p.Name, c.Name),
				Drawing: views.PlateTemplate(c, p),
				Station: "the left end of the sheet it is cut from",
				Lay: fmt.Sprintf("cut from sheet %s along the grain by %s: %s. Nailed together, lay it on the first riser line and mark riser lines and studs, then on the last one marked, and so on",
					st.InchesMM(g.Blank.X), st.InchesMM(g.Blank.Y), count),
				Stock: geom.Line(geom.Pt(0, 0), geom.Pt(g.Blank.X, 0)),
			}
		}})
	}
	for _, str := range c.Strings {
		name := memberPart(s, c.Name, partPitchBoard)
		board := func(angle float64) pdfout.Part {
			return pdfout.Part{
				Name: name, Title: fmt.Sprintf("Pitch board, %s string of %s", str.Name, c.Name),
				Drawing: views.StepBoard(str.UnitRun, str.UnitRise, angle, st),
				Station: "the lower tip",
				Lay:     "on the string laid flat, before it is bent; screw a straight fence on the strip beyond the long side",
			}
		}
		all = append(all, part{names: []string{name}, sheet: func() pdfout.Part { return board(0) }, turned: board})
	}
	return all
}
