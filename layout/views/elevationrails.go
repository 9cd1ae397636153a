package views

import (
	"math"
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r2"

	"stepoff/layout"
	"stepoff/layout/check"
	"stepoff/layout/drawing"
	"stepoff/layout/geom"
	"stepoff/spec/rules"
)

// overBand is how far the words stand over the topmost line, in millimetres of
// the stair: one to two on the sheet at the scales a flight is drawn at.
const overBand = 45.0

// rails draws the heights that the code sets over the nosing line: the band for
// the top of a handrail, and the least height of a guard. Whether either is
// asked for is what check finds of the flight.
func (e elevation) rails(code *rules.Code) {
	if code == nil || e.f.Risers < 2 {
		return
	}
	var heights []float64 // plumb over the nosing line
	var words []string
	all := check.FactsOf(e.s, code, e.st)
	facts := all[slices.IndexFunc(all, func(f check.Facts) bool { return f.Of == layout.Element(e.f) })]
	for _, found := range check.Of(check.Judge(facts, code), check.Info) {
		switch found.ID {
		case "handrail-needed":
			lo, low := e.limit(code, rules.HandrailHeightMin)
			hi, high := e.limit(code, rules.HandrailHeightMax)
			if !low || !high {
				continue
			}
			what := "handrail "
			if found.Limit == nil { // nobody knows from how many risers one is needed
				what = "any handrail "
			}
			heights = append(heights, lo.Length.MM(), hi.Length.MM())
			words = append(words, what+e.st.Inches(lo.Length)+" to "+e.st.Inches(hi.Length)+verify(lo, hi))
		case "guard-needed":
			if l, ok := e.limit(code, rules.GuardStairHeightMin); ok {
				heights = append(heights, l.Length.MM())
				words = append(words, "guard, at least "+e.st.Inches(l.Length)+verify(l))
			}
		}
	}
	if len(heights) == 0 {
		return
	}
	slices.Sort(heights)
	heights = slices.Compact(heights)
	first, last := e.nosing(1), e.nosing(e.f.Risers)
	over := func(p geom.Point, h float64) geom.Point { return r2.Add(p, geom.Pt(0, h)) }
	for _, h := range heights {
		e.d.Line(drawing.Thin, over(first, h), over(last, h))
	}
	top := heights[len(heights)-1]
	e.d.Line(drawing.Thin, first, over(first, top)) // measured plumb, not square to the slope

	along := r2.Sub(last, first)
	// From the foot up: longer than a short flight, they run out over the floor.
	square := r2.Scale(overBand/r2.Norm(along), geom.Pt(-along.Y, along.X))
	e.d.Add(drawing.Text{Layer: drawing.Note, At: r2.Add(over(first, top), square), Height: drawing.Small,
		Angle: math.Atan2(along.Y, along.X), Text: strings.Join(words, "; ")})
}

// limit returns a limit of the code, where it is for such a stair.
func (e elevation) limit(code *rules.Code, key rules.Key) (rules.Limit, bool) {
	l, ok := code.Limit(key)
	return l, ok && (l.When == rules.Always || (l.When == rules.OpenRisers) == e.s.Job.Riser.Open)
}

// verify marks what rests on a limit known from memory only.
func verify(limits ...rules.Limit) string {
	if slices.ContainsFunc(limits, func(l rules.Limit) bool { return l.Basis == rules.FromMemory }) {
		return " (verify)"
	}
	return ""
}
