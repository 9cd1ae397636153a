package packet

import (
	"fmt"
	"strings"

	"stepoff/layout"
	"stepoff/layout/check"
	"stepoff/layout/drawing"
	"stepoff/layout/report"
	"stepoff/layout/views"
	"stepoff/pdfout"
	"stepoff/spec/lumber"
	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

// Heights of the loaded stringer and of the chart on their pages, millimetres,
// captions included.
const (
	loadedHeight = 175
	chartHeight  = 165
)

// noApproval stands at the head of every strength page.
const noApproval = "Advice, and no approval: local code and the building official decide, and a licensed professional checks structure. " +
	"A sawn stringer is reckoned as a beam of its net section, thickness by throat, the teeth ignored. Notches for steps lie outside what the NDS allows (3.2.3, 4.4.3); " +
	"tables such as DCA 6 (cut 2x12: 6 ft 0 in) rule where they are adopted. Of each ratio 1 is all that may be."

// judged tells whether anything has a verdict on its strength.
func judged(s *layout.Stairway, code *rules.Code) bool {
	for _, f := range s.Flights() {
		if w := s.Strength(f, code); w != nil && (w.Unknown == "" || w.Treads != nil) {
			return true
		}
	}
	return false
}

// strength is the page that tells how stringers and treads carry, with the
// working.
func strength(s *layout.Stairway, code *rules.Code, st measure.Style) pdfout.Flow {
	blocks := []pdfout.Block{pdfout.Heading{Level: 1, Text: "Strength"}, pdfout.Paragraph{Text: noApproval}}
	findings := check.Stairway(s, code, st)
	several := len(s.Flights()) > 1
	told := map[string]bool{} // factors are those of the job's wood: once is enough
	for _, f := range s.Flights() {
		w := s.Strength(f, code)
		if w == nil {
			continue
		}
		of := ""
		if several {
			of = ", " + f.Name
		}
		blocks = append(blocks, pdfout.Heading{Level: 2, Text: "Stringers and treads" + of})
		if w.Unknown == "" {
			blocks = append(blocks, carriers(w, st))
		}
		// Factors before the picture: they fill the page that it does not fit on.
		if w.Unknown == "" && !told["stringers"] {
			told["stringers"] = true
			blocks = append(blocks, pdfout.Heading{Level: 3, Text: "Factors on the stringers' design values"}, factors(w.Wood, true, st))
		}
		if t := w.Treads; t != nil && !told["treads"] {
			told["treads"] = true
			blocks = append(blocks, pdfout.Heading{Level: 3, Text: "Factors on the treads' design values"}, factors(t.Wood, w.Unknown != "", st))
		}
		if d := views.Strength(f, w, st); d != nil {
			blocks = append(blocks, pdfout.Figure{Drawing: d, MaxHeight: loadedHeight})
		}
		blocks = append(blocks, pdfout.Heading{Level: 3, Text: "Working"}, working(findings, f, several))
		if d := views.SpanChart(f, w, st); d != nil {
			blocks = append(blocks, pdfout.Figure{Drawing: d, MaxHeight: chartHeight, NoScale: true})
		}
	}
	return pdfout.Flow{Title: "Strength", Blocks: blocks}
}

// carriers is a row for every stringer.
func carriers(w *layout.Strength, st measure.Style) pdfout.Table {
	t := pdfout.Table{Header: []string{"stringer", "held", "longest span", "width carried", "bending", "shear", "deflection", "at the foot", "foot and head", "reaches"},
		Align: []drawing.Align{2: drawing.Right, 3: drawing.Right, 4: drawing.Right, 5: drawing.Right, 6: drawing.Right, 7: drawing.Right, 8: drawing.Right, 9: drawing.Right}}
	for i := range w.Stringers {
		c := &w.Stringers[i]
		row := []string{check.Places([]int{c.Position}, len(w.Stringers)), "along a wall", "", st.InchesMM(c.Tributary)}
		if c.Spans() {
			row = []string{row[0], "at its ends", st.InchesMM(c.LongestSpan()), row[3], check.Hundredths(c.BendingRatio), check.Hundredths(c.ShearRatio), check.Hundredths(c.DeflectionRatio),
				check.Hundredths(c.FootBearing / c.Allowed), st.Force(c.Foot()) + ", " + st.Force(c.Head()), report.AtMost(c.Limit.Least(), st)}
			if len(c.Reactions) > 2 {
				row[1] = fmt.Sprintf("ends and %d %s", len(c.Reactions)-2, plural(len(c.Reactions)-2, "post"))
			}
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

// factors is a row for every factor: what it puts on each design value, why, and
// its source. Not all are told where they stand in another table already: those
// that leave everything as it is are left out.
func factors(wood layout.Lumber, all bool, st measure.Style) pdfout.Table {
	t := pdfout.Table{Header: []string{"", "factor", "Fb", "Fv", "Fc-perp", "E", "here", "source"},
		Align: []drawing.Align{2: drawing.Right, 3: drawing.Right, 4: drawing.Right, 5: drawing.Right}}
	unit := "psi"
	values := func(v lumber.Values) []string {
		return []string{fmt.Sprintf("%.0f", v.Fb/measure.PSI), fmt.Sprintf("%.0f", v.Fv/measure.PSI), fmt.Sprintf("%.0f", v.FcPerp/measure.PSI), fmt.Sprintf("%.3g million", v.E/measure.PSI/1e6)}
	}
	if st.Units == measure.Metric {
		unit = "MPa"
		values = func(v lumber.Values) []string {
			return []string{fmt.Sprintf("%.2f", v.Fb/1e6), fmt.Sprintf("%.2f", v.Fv/1e6), fmt.Sprintf("%.2f", v.FcPerp/1e6), fmt.Sprintf("%.0f", v.E/1e6)}
		}
	}
	row := func(head []string, middle []string, tail ...string) {
		t.Rows = append(t.Rows, append(append(head, middle...), tail...))
	}
	row([]string{"", "reference, " + unit}, values(wood.Reference), wood.Name, sourced(wood.Source, wood.Basis))
	for _, f := range wood.Factors {
		if !all && f.Fb == 1 && f.Fv == 1 && f.FcPerp == 1 && f.E == 1 {
			continue
		}
		row([]string{f.Symbol, f.Name}, []string{fmt.Sprintf("%.3g", f.Fb), fmt.Sprintf("%.3g", f.Fv), fmt.Sprintf("%.3g", f.FcPerp), fmt.Sprintf("%.3g", f.E)}, f.Why, sourced(f.Source, f.Basis))
	}
	row([]string{"", "adjusted, " + unit}, values(wood.Values), "", "")
	return t
}

// sourced is a source with how it came to be known.
func sourced(source, basis string) string { return source + " (" + basis + ")" }

// working is what the checks say of a flight's strength.
func working(findings []check.Finding, f *layout.Flight, several bool) pdfout.List {
	var list pdfout.List
	for _, found := range findings {
		if !strings.HasPrefix(found.ID, "strength-") && found.ID != "kicker-notch" && found.ID != "ledger-notch" {
			continue
		}
		text, own := found.Text, true
		if several {
			text, own = strings.CutPrefix(text, f.Name+": ")
		}
		if own {
			list.Items = append(list.Items, fmt.Sprintf("%s (%s). %s [%s]", found.ID, found.Status, text, found.Section))
		}
	}
	return list
}
