package pdfout

import (
	"errors"
	"fmt"
	"math"

	"stepoff/layout/drawing"
	"stepoff/spec/measure"
)

// check tells why a drawing cannot be printed: the PDF library writes numbers
// that are none without a word, and readers take them without one.
func check(d *drawing.Drawing) error {
	if d == nil {
		return errors.New("there is no drawing")
	}
	for _, it := range d.Items {
		var err error
		switch it := it.(type) {
		case drawing.Path:
			for _, e := range it.Edges {
				err = numbers(e.From.X, e.From.Y, e.To.X, e.To.Y, e.Centre.X, e.Centre.Y, e.Radius)
				if err == nil && !(math.Abs(e.Sweep) <= 2*math.Pi+rounding) {
					err = errors.New("an arc goes round more than once")
				}
				if err != nil {
					break
				}
			}
			if err == nil && !(it.Fill >= 0 && it.Fill <= 1) {
				err = fmt.Errorf("a filling is %g dark; right is 0 to 1", it.Fill)
			}
		case drawing.Text:
			err = numbers(it.At.X, it.At.Y, it.Angle)
			if err == nil && !(it.Height >= drawing.Small && it.Height <= 100) {
				err = fmt.Errorf("a text's letters are %g mm high; right is %g to 100", it.Height, drawing.Small)
			}
		case drawing.Dim:
			err = numbers(it.A.X, it.A.Y, it.B.X, it.B.Y, it.Offset)
		}
		if err != nil {
			return fmt.Errorf("drawing %s: %w", d.Name, err)
		}
	}
	return nil
}

var errNumber = errors.New("a line or text stands at no place: one of its numbers is no number, or beyond a kilometre")

func numbers(vs ...float64) error {
	for _, v := range vs {
		if !(math.Abs(v) <= measure.Max.MM()) { // false for not-a-number too
			return errNumber
		}
	}
	return nil
}
