package report

import (
	"fmt"
	"math"
	"strings"

	"stepoff/layout"
	"stepoff/layout/turn"
	"stepoff/spec"
	"stepoff/spec/measure"
)

// WindersCutList lists winders' treads, their riser boards and the boxes' parts, with
// what must be known besides.
func WindersCutList(job *spec.Job, w *layout.Winders, st measure.Style) (rows []CutRow, notes []string) {
	return append(boardRows(job, w.CutList, st), pieceRows(w.Pieces, st)...), winderNotes(w)
}

// CurveCutList lists a curve's treads, its riser boards and its walls' parts, with
// what must be known besides.
func CurveCutList(job *spec.Job, c *layout.Curve, st measure.Style) (rows []CutRow, notes []string) {
	return append(boardRows(job, c.CutList, st), pieceRows(c.Pieces, st)...), append(curveNotes(job, c, st), wallNotes(c, st)...)
}

// pieceRows lists what boxes and a curve's walls are cut from.
func pieceRows(all []layout.FramePiece, st measure.Style) []CutRow {
	const studs = "stud"
	var rows []CutRow
	var low, high float64 // of studs
	for _, p := range all {
		if n := len(rows) - 1; n >= 0 && p.Part == studs && rows[n].Part == studs { // the schedule gives each height
			rows[n].Count += p.Count
			low, high = min(low, p.Length), max(high, p.Length)
			rows[n].Length = st.InchesMM(low) + " to " + st.InchesMM(high) + " (schedule)"
			continue
		}
		low, high = p.Length, p.Length
		row := CutRow{Count: p.Count, Part: p.Part, Stock: p.Stock, Length: st.InchesMM(p.Length) + " long", Steps: bevels(p.Bevels)}
		switch {
		case p.Thickness > 0:
			row.Stock = st.InchesMM(p.Thickness) + " thick"
			row.Length = st.InchesMM(p.Length) + " x " + st.InchesMM(p.Width)
		case p.Width > 0:
			row.Ripped = st.InchesMM(p.Width) + " wide"
		}
		rows = append(rows, row)
	}
	return rows
}

// bevels says how the ends of a piece are cut, the greater bevel first.
func bevels(b [2]float64) string {
	first, second := measure.SnapDegrees(b[0]), measure.SnapDegrees(b[1])
	switch {
	case nearly(first, 0):
		return ""
	case nearly(second, 0):
		return "one end " + strings.TrimSuffix(bevel(first), ",")
	case nearly(first, second):
		return "both ends " + bevel(first) + ", long points on one face"
	case nearly(first, -second):
		return "both ends " + bevel(first) + ", parallel"
	}
	across := "long points on one face"
	if second < 0 {
		across = "on opposite faces"
	}
	return bevel(first) + " and " + bevel(math.Abs(second)) + ", " + across
}

// nearly tells whether two bevels are one setting of the saw.
func nearly(a, b float64) bool { return angle(a) == angle(b) }

// bevel says what is left of an angle that no saw tilts to.
func bevel(off float64) string {
	if tilt, onEnd := (turn.BoxEnd{Bevel: off}).Saw(); onEnd {
		return fmt.Sprintf("%s, the saw at %s on the end,", angle(off), strings.TrimSuffix(angle(tilt), " degrees"))
	}
	return angle(off)
}

// curveNotes are what must be known besides before a curve's riser boards are
// ripped.
func curveNotes(job *spec.Job, c *layout.Curve, st measure.Style) []string {
	if _, toWinder := c.Head.(*layout.Winders); toWinder || job.Riser.Open || !job.Stringer.TopRiser {
		return nil
	}
	nosing := "the floor's nosing"
	if c.Head != nil {
		nosing = "the landing's nosing"
	}
	whole := c.UnitRise
	if job.Riser.Joint == spec.Behind {
		whole += job.Tread.Thickness.MM()
	}
	return []string{fmt.Sprintf("riser no. %d goes up to %s: %s less its thickness", c.Risers, nosing, st.InchesMM(whole))}
}

// winderNotes are what must be known besides before winders are framed.
func winderNotes(w *layout.Winders) []string {
	switch {
	case w.Boxes == nil:
		return []string{"framing: none is asked for, and none is listed"}
	case w.BoxStock.Name == "":
		return []string{"the boxes are higher than any board sold: build their rims up, or frame them as walls"}
	}
	return nil
}

// wallNotes are what must be known besides before a curve's walls are framed.
func wallNotes(c *layout.Curve, st measure.Style) []string {
	sheet := c.Spec.Sheet
	return []string{fmt.Sprintf("plate segments: %s of %s x %s, fewer where they nest",
		counted(c.Sheets, "sheet"), st.Inches(sheet.Width), st.Inches(sheet.Length))}
}
