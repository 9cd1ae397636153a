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
	if f := curveFraming(s, c); f != nil {
		blocks = append(blocks, pdfout.Figure{Drawing: views.CurveFraming(c, f, st), MaxHeight: curveFramingHeight},
			plateTable(c, f, st), pdfout.PageBreak{}, pdfout.Heading{Level: 2, Text: "Stud schedule of " + c.Name},
			pdfout.Paragraph{Text: "Studs stand square on the plates, their tops cut square. A stud's mark is its face on the riser line, or on a radius between two; it stands behind it, going up, the last one of each wall before it. Distances run along the plate's outer edge, from the first riser line."})
		for _, p := range f.Plates {
			blocks = append(blocks, pdfout.Heading{Level: 3, Text: "The " + p.Name + " wall"}, studTable(&p, f.Studs, st))
		}
	}
	if strings := curveStrings(s, c); len(strings) > 0 {
		blocks = append(blocks, pdfout.PageBreak{}, pdfout.Heading{Level: 2, Text: "Strings of " + c.Name + ", unrolled"})
		for _, str := range strings {
			blocks = append(blocks, pdfout.Figure{Drawing: views.CurveString(c.Name, str, st), MaxHeight: curveStringHeight})
		}
		blocks = append(blocks, stringTable(strings, st))
	}
	return pdfout.Flow{Title: "Framing of " + c.Name, Blocks: append(blocks, pdfout.List{Items: framingCautions})}
}

func plateTable(c *layout.Curve, f *turn.CurveFraming, st measure.Style) pdfout.Table {
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
	t := pdfout.Table{Header: []string{"stud", "at riser line", "turned", "along the plate", "height"}, Align: []drawing.Align{drawing.Right}}
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
			at += ", before it"
		}
		t.Rows = append(t.Rows, []string{fmt.Sprint(n), at, degrees2(s.Angle), st.FormatMM(p.Outer * s.Angle * math.Pi / 180), st.FormatMM(s.Height)})
	}
	return t
}

// degrees2 prints an angle to a hundredth.
func degrees2(d float64) string { return fmt.Sprintf("%.2f°", d) }

func stringTable(strings []*turn.CurveString, st measure.Style) pdfout.Table {
	t := pdfout.Table{Header: []string{"string", "radius", "unit run", "pitch", "along the pitch", "least blank", "board as wide as"}}
	for _, s := range strings {
		t.Rows = append(t.Rows, []string{s.Name, st.FormatMM(s.Radius), st.InchesMM(s.UnitRun), degrees2(s.Pitch), st.FormatMM(s.Length), st.FormatMM(s.LeastBlank), st.InchesMM(s.BoardWidth)})
	}
	return t
}

// plateParts are the sheets that a curve's plates are cut to.
func plateParts(s *layout.Stairway, c *layout.Curve, st measure.Style) []part {
	f := curveFraming(s, c)
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
				Drawing: views.PlateTemplate(c.Hand(), p, f.Studs, st),
				Station: "the left end of the sheet it is cut from",
				Lay: fmt.Sprintf("cut from sheet %s along the grain by %s: %s. Nailed together, lay it on the first riser line and mark riser lines and studs, then on the last one marked, and so on",
					st.InchesMM(g.Blank.X), st.InchesMM(g.Blank.Y), count),
				Stock: geom.Line(geom.Pt(0, 0), geom.Pt(g.Blank.X, 0)),
			}
		}})
	}
	for _, str := range curveStrings(s, c) {
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
