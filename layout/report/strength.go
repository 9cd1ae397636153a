package report

import (
	"fmt"
	"strings"

	"stepoff/layout"
	"stepoff/layout/check"
	"stepoff/spec/measure"
)

// strength tells in a row how the stringer that is worst off carries, and the
// treads; what nothing is known of is left out. check tells the working.
func (t *text) strength(f *layout.Flight, w *layout.Strength) {
	if w == nil || !f.Spec.Stringer.Wood.Stated() && w.Treads == nil {
		return
	}
	var said []string
	if c := w.Worst(); c != nil {
		said = append(said, fmt.Sprintf("stringer %s: bending %s, shear %s, deflection %s of what it may be",
			strings.ReplaceAll(layout.Where([]int{c.Position}, len(w.Stringers)), " from the left", ""), check.Hundredths(c.BendingRatio), check.Hundredths(c.ShearRatio), check.Hundredths(c.DeflectionRatio)))
	} else if w.Unknown != "" {
		said = append(said, "no verdict on stringers: "+w.Unknown)
	} else {
		said = append(said, "stringers fastened along walls")
	}
	if w.Treads != nil {
		said = append(said, "treads "+check.Hundredths(w.Treads.Ratio()))
	}
	t.row("strength, advice only", "%s", strings.Join(said, "; "))
}

// AtMost prints what something may at most be, rounded down.
func AtMost(mm float64, st measure.Style) string {
	exact, ok := measure.FromMM(mm)
	if !ok {
		return measure.Unknown
	}
	return st.Inches(exact / st.Fineness() * st.Fineness())
}
