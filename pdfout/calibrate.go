package pdfout

import (
	"errors"
	"fmt"

	"stepoff/spec/measure"
)

// Bars are the true lengths of the calibration page's two bars: the longest
// whole number of inches (imperial) or centimetres (metric) that fits across
// and along the paper.
func Bars(p Paper, u measure.Units) (across, along measure.Length) {
	step := measure.Inch
	if u == measure.Metric {
		step = measure.Centimetre
	}
	height := p.Height
	if p.Roll {
		height = p.Width
	}
	longest := func(side measure.Length) measure.Length { return (side - 2*p.Margin - 2*barInset) / step * step }
	return longest(p.Width), longest(height)
}

// barInset keeps a bar's end off the margin, so that its end mark is printed.
const barInset = 2 * measure.Millimetre

// Factor is what the printer makes of a true length: measured / drawn. A
// factor outside LeastScale to MostScale is an error: that is page scaling.
func Factor(measured, drawn measure.Length) (float64, error) {
	if drawn <= 0 || measured <= 0 {
		return 0, errors.New("a bar's length is more than 0")
	}
	f := float64(measured) / float64(drawn)
	if f < LeastScale || f > MostScale {
		return f, fmt.Errorf("the bar came out %.4f times as long as drawn; %g to %g can be the printer's own error, this is page scaling: print again at 100 %%, no fit to page", f, LeastScale, MostScale)
	}
	return f, nil
}
