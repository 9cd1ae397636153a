package packet

import (
	"fmt"

	"stepoff/layout"
	"stepoff/layout/drawing"
	"stepoff/layout/views"
	"stepoff/pdfout"
	"stepoff/spec/measure"
)

// framingHeight is how much of a page a landing's frame takes, millimetres,
// caption included.
const framingHeight = 115

// landing is the page a landing is framed by: its frame from above, its levels
// and its cut list.
func landing(s *layout.Stairway, l *layout.Landing, st measure.Style) pdfout.Flow {
	blocks := []pdfout.Block{pdfout.Heading{Level: 1, Text: "Framing of " + l.Name}}
	levels := fmt.Sprintf("Above the lower finished floor: finished level %s, top of the sheathing %s", st.FormatMM(l.Level), st.FormatMM(l.FramingLevel))
	w := l.Frame
	if w == nil {
		return pdfout.Flow{Title: l.Name, Blocks: append(blocks, pdfout.Paragraph{Text: levels + "."},
			pdfout.Paragraph{Text: "The job states no joists for this landing, so that no framing is worked out. Add joists: 2x8, or what you have, to the landing."})}
	}
	levels += fmt.Sprintf(", of the joists %s, their underside %s.", st.FormatMM(w.Top), st.FormatMM(w.Bottom))
	if d := views.Framing(s, l, st); d != nil {
		blocks = append(blocks, pdfout.Figure{Drawing: d, MaxHeight: framingHeight})
	}
	list := pdfout.Table{Header: []string{"", "part", "stock", "length", "width"}, Align: []drawing.Align{drawing.Right}}
	for _, p := range w.Pieces {
		row := []string{fmt.Sprint(p.Count), p.Part, p.Stock, st.FormatMM(p.Length), ""}
		if p.Stock == "" {
			row[2] = st.Inches(l.Spec.Sheathing) + " thick"
		}
		if p.Width > 0 {
			row[4] = st.FormatMM(p.Width)
		}
		list.Rows = append(list.Rows, row)
	}
	return pdfout.Flow{Title: "Framing of " + l.Name, Blocks: append(blocks, pdfout.Paragraph{Text: levels},
		pdfout.Heading{Level: 2, Text: "Cut list"}, list, pdfout.List{Items: framingCautions})}
}

// framingCautions stand on every landing's page.
var framingCautions = []string{
	"Measure the level from the lower finished floor up, and again from the upper finished floor down, before the frame is fastened.",
	"Fasteners, hangers, footings and bracing are not worked out here: local code decides, and structure is for a licensed professional to check.",
}
