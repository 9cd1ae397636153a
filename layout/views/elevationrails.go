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
	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

// overBand is how far the words stand over the topmost line, in millimetres of
// the stair: one to two on the sheet at the scales a flight is drawn at.
const overBand = 45.0

// rails draws the heights that the code sets over a nosing line: the band for the
// top of a handrail, and the least height of a guard. Whether either is asked for is
// what check finds of the member.
func rails(d *drawing.Drawing, s *layout.Stairway, of layout.Element, code *rules.Code, st measure.Style, nosings []geom.Point) {
	if code == nil || len(nosings) < 2 {
		return
	}
	heights, words := railHeights(s, of, code, st)
	if len(heights) == 0 {
		return
	}
	over := func(h float64) (line []geom.Point) {
		for _, p := range nosings {
			line = append(line, r2.Add(p, geom.Pt(0, h)))
		}
		return line
	}
	for _, h := range heights {
		d.Polyline(drawing.Thin, over(h)...)
	}
	top := over(heights[len(heights)-1])
	d.Line(drawing.Thin, nosings[0], top[0]) // measured plumb, not square to the slope

	along := r2.Sub(top[len(top)-1], top[0])
	// From the foot up: longer than a short flight, they run out over the floor.
	square := r2.Scale(overBand/r2.Norm(along), geom.Pt(-along.Y, along.X))
	d.Add(drawing.Text{Layer: drawing.Note, At: r2.Add(top[0], square), Height: drawing.Small,
		Angle: math.Atan2(along.Y, along.X), Text: strings.Join(words, "; ")})
}

// railHeights are the heights plumb over the nosing line, the lowest first, and what
// they are.
func railHeights(s *layout.Stairway, of layout.Element, code *rules.Code, st measure.Style) (heights []float64, words []string) {
	all := check.FactsOf(s, code, st)
	at := slices.IndexFunc(all, func(f check.Facts) bool { return f.Of == of })
	if at < 0 {
		return nil, nil
	}
	for _, found := range check.Of(check.Judge(all[at], code), check.Info) {
		switch found.ID {
		case "handrail-needed":
			lo, low := railLimit(s, code, rules.HandrailHeightMin)
			hi, high := railLimit(s, code, rules.HandrailHeightMax)
			if !low || !high {
				continue
			}
			what := "handrail "
			if found.Limit == nil { // nobody knows from how many risers one is needed
				what = "any handrail "
			}
			heights = append(heights, lo.Length.MM(), hi.Length.MM())
			words = append(words, what+st.Inches(lo.Length)+" to "+st.Inches(hi.Length)+verify(lo, hi))
		case "guard-needed":
			if l, ok := railLimit(s, code, rules.GuardStairHeightMin); ok {
				heights = append(heights, l.Length.MM())
				words = append(words, "guard, at least "+st.Inches(l.Length)+verify(l))
			}
		}
	}
	slices.Sort(heights)
	return slices.Compact(heights), words
}

// railLimit returns a limit of the code, where it is for such a stair.
func railLimit(s *layout.Stairway, code *rules.Code, key rules.Key) (rules.Limit, bool) {
	l, ok := code.Limit(key)
	return l, ok && (l.When == rules.Always || (l.When == rules.OpenRisers) == s.Job.Riser.Open)
}

// verify marks what rests on a limit known from memory only.
func verify(limits ...rules.Limit) string {
	if slices.ContainsFunc(limits, func(l rules.Limit) bool { return l.Basis == rules.FromMemory }) {
		return " (verify)"
	}
	return ""
}
