package layout

import (
	"fmt"

	"stepoff/layout/turn"
	"stepoff/spec"
	"stepoff/spec/measure"
	"stepoff/spec/source"
)

const (
	// boxSpacing is joist to joist in a box, centre to centre: common practice under
	// sheathing 3/4 in thick.
	boxSpacing = 16 * measure.Inch
	// housedMargin is wood left above the nosings of a housed string, square to its
	// edge: 50 mm and more (Goring), here 2 in.
	housedMargin = 2 * measure.Inch
)

// frame works out what the winders are built from, between the flights below and
// above; nil stands for one that is not straight.
func (w *Winders) frame(i int, lower, upper *Flight, job *spec.Job) source.Mistakes {
	heights := turn.WinderHeights{
		Level: w.Levels[0], Rise: w.UnitRise, Tread: job.Tread.Thickness.MM(), Flooring: job.Levels.LowerFinish.MM(),
	}
	w.WallMarks, w.NosingMarks = w.Laid.WallMarks(heights), w.Laid.NosingMarks(heights)
	w.WallStrings = w.Laid.WallStrings(heights)
	w.HousedStrings = w.Laid.HousedStrings(heights, turn.WallHousing{
		RunBelow: runOf(lower), RunAbove: runOf(upper), Over: housedMargin.MM(), Width: job.Stringer.Stock.Width.MM(),
	})
	if !w.Spec.Boxes {
		return nil
	}
	stock := nominal(twoByStocks[0]) // all are equally thick
	framing := turn.BoxFraming{
		WinderHeights: heights, Sheathing: w.Spec.Sheathing.MM(), Stock: stock.Thickness.MM(), Spacing: boxSpacing.MM(),
	}
	if upper != nil {
		w.Seat = upper.seat()
		framing.Seat = w.Seat
	}
	boxes := w.Laid.Boxes(framing)
	say := measure.Style{Units: job.Units}
	for _, b := range boxes {
		if b.Height < stock.Thickness.MM()-touching {
			return source.Mistakes{job.Mistake(fmt.Sprintf("stairway[%d].winders.sheathing", i),
				"sheathing: of a unit rise of %s, treads %s and sheathing %s thick leave a box %s high, and lumber laid flat is %s; take thinner ones, or write framing: none",
				say.FormatMM(w.UnitRise), say.Format(job.Tread.Thickness), say.Format(w.Spec.Sheathing), say.FormatMM(b.Height), say.Format(stock.Thickness))}
		}
	}
	w.Boxes = boxes
	high := 0.0
	for _, b := range boxes {
		high = max(high, b.Height)
	}
	w.BoxStock = narrowest(high)
	if boxes[0].Leg > 0 {
		w.Legs = len(boxes[0].Outline.Edges)
	}
	w.Pieces = w.pieces()
	return nil
}

// runOf is the unit run of a flight that has a tread.
func runOf(f *Flight) float64 {
	if f == nil || f.Treads == 0 {
		return 0
	}
	return f.UnitRun.MM()
}
