package drawing

import (
	"errors"
	"fmt"
	"math"

	"stepoff/spec/measure"
)

// MaxHeight is the tallest letter, millimetres on the sheet.
const MaxHeight = 100

// fullTurn is one turn, and what rounding may add to it.
const fullTurn = 2*math.Pi + 1e-9

// Check tells why the drawing cannot be written, or nil. Writers ask first: a
// number that is none would pass through PDF libraries and readers without a
// word, and end as a line that is not there.
func (d *Drawing) Check() error {
	if d == nil {
		return errors.New("there is no drawing")
	}
	for _, it := range d.Items {
		var err error
		switch it := it.(type) {
		case Path:
			for _, e := range it.Edges {
				err = numbers(e.From.X, e.From.Y, e.To.X, e.To.Y, e.Centre.X, e.Centre.Y, e.Radius)
				if err == nil && !(math.Abs(e.Sweep) <= fullTurn) {
					err = errors.New("an arc goes round more than once")
				}
				if err != nil {
					break
				}
			}
			if err == nil && !(it.Fill >= 0 && it.Fill <= 1) {
				err = fmt.Errorf("a filling is %g dark; right is 0 to 1", it.Fill)
			}
		case Text:
			err = numbers(it.At.X, it.At.Y, it.Angle)
			if err == nil && !(it.Height >= Small && it.Height <= MaxHeight) {
				err = fmt.Errorf("a text's letters are %g mm high; right is %g to %d", it.Height, Small, MaxHeight)
			}
		case Dim:
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
