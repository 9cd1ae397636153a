package layout

import (
	"fmt"
	"strings"

	"stepoff/layout/turn"
	"stepoff/spec"
	"stepoff/spec/lumber"
	"stepoff/spec/measure"
	"stepoff/spec/source"
)

// CurvedString is a string unrolled, and how it is bent.
type CurvedString struct {
	*turn.CurveString
	Bend *turn.CurveBend // nil where NoBend says why not
	// NoBend says why the layers do not bend so tightly.
	NoBend string
}

const (
	// studSpacing is stud to stud in a curved wall, at most: common practice.
	studSpacing = 16 * measure.Inch
	// stringThroat is the wood left under the notches of a curved string: what DCA 6,
	// fig 28, asks of sawn stringers at least.
	stringThroat = 5 * measure.Inch
	// What carries treads between two walls a stair's width apart: common practice.
	bearerStock = "2x6"
	ledgerStock = "2x4"
)

// curveKeys are where the job states what a refusal is about.
// %s is the curve.
var curveKeys = map[string]string{
	"width": "width", "tread": "tread.thickness",
	"inside_radius": "%s.inside_radius", "angle": "%s.angle", "sheet": "%s.sheet", "plate": "%s.plate",
}

// frame works out what the curve is built from.
func (c *Curve) frame(i int, s *Stairway) (bad source.Mistakes) {
	job := s.Job
	steps := turn.CurveSteps{
		Angle: c.Spec.Angle, Inside: c.Inside, Width: job.Width.MM(), Levels: append([]float64{c.StartLevel}, c.Levels...),
		Tread: job.Tread.Thickness.MM(), Floor: c.StartLevel, Style: measure.Style{Units: job.Units},
	}
	steps.Levels = append(steps.Levels, c.EndLevel)
	if job.Stringer.FootOn == spec.Rough {
		flooring := job.Levels.LowerFinish
		if c.Foot != nil {
			flooring = c.Foot.Flooring()
		}
		steps.Floor -= flooring.MM()
	}
	c.PlateStock, c.BearerStock, c.LedgerStock = *c.Spec.Plate, nominal(bearerStock), nominal(ledgerStock)
	walls := turn.CurveWalls{
		Plates: turn.PlateStock{
			SheetLength: c.Spec.Sheet.Length.MM(), SheetWidth: c.Spec.Sheet.Width.MM(), Thickness: c.Spec.Sheet.Thickness.MM(),
			Width: c.PlateStock.Width.MM(), Layers: c.Spec.Layers, RunOff: turn.PlateRunOff,
		},
		Stud: c.PlateStock.Thickness.MM(), Spacing: studSpacing.MM(),
		Bearer: turn.BearerStock{Thickness: c.BearerStock.Thickness.MM(), Depth: c.BearerStock.Width.MM()},
		Ledger: turn.BearerStock{Thickness: c.LedgerStock.Thickness.MM(), Depth: c.LedgerStock.Width.MM()},
	}
	framing, refused := steps.Framing(walls)
	for _, r := range refused {
		key, ok := curveKeys[r.Key]
		if !ok {
			key = "%s"
		}
		key = strings.ReplaceAll(key, "%s", fmt.Sprintf("stairway[%d].curve", i))
		bad = append(bad, job.Mistake(key, "%s", r.Message))
	}
	if len(bad) > 0 {
		return bad
	}
	c.Framing = framing
	c.Pieces, c.Sheets = c.pieces(), c.sheets()
	c.unroll(steps, job)
	return nil
}

// unroll unrolls the strings, as thick as the stringers' stock.
func (c *Curve) unroll(steps turn.CurveSteps, job *spec.Job) {
	all, refused := steps.Strings(stringThroat.MM())
	if len(refused) > 0 {
		c.NoStrings = refused[0].Message
		return
	}
	for _, one := range all {
		out := CurvedString{CurveString: one}
		bend, refused := one.Bend(steps, job.Stringer.Stock.Thickness.MM(), c.Spec.Lamination.MM(), turn.BendSoftwood)
		if len(refused) > 0 {
			out.NoBend = refused[0].Message
		} else {
			out.Bend = bend
		}
		c.Strings = append(c.Strings, out)
	}
}

// nominal is a board by its name, which is known.
func nominal(name string) spec.Piece {
	size, _ := lumber.Lookup(name)
	return spec.Piece{Name: name, Size: size}
}
