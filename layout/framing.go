package layout

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"stepoff/layout/geom"
	"stepoff/layout/turn"
	"stepoff/spec"
	"stepoff/spec/measure"
	"stepoff/spec/source"
)

// Frame is the framing of a landing: joists along the lower flight's travel
// between two rims, sheathing on top, and what carries it. Millimetres; levels
// above the lower finished floor.
type Frame struct {
	Top, Bottom float64      // of the joists
	Outline     []geom.Point // in plan, counter-clockwise: the walking area, and on under the upper flight's seat
	Seat        float64      // how far it runs on there
	Pieces      []FramePiece
}

// FramePiece is one row of the cut list of a landing's frame, of boxes, of a
// curve's walls. Millimetres.
type FramePiece struct {
	Part      string
	Count     int
	Stock     string  // 2x8; empty for what is cut from sheets, or ripped from no board sold
	Length    float64 // long point to long point
	Width     float64 // of what is cut from sheets; what a board is ripped to; 0: the board's own
	Thickness float64 // of what is cut from sheets
	// Bevels of both ends, in degrees off square, see turn.BoxEnd: where both have the
	// same sign the long points are on the same face.
	Bevels [2]float64
}

// The stock of posts and of the plates and studs of walls: common practice.
const (
	postStock = "4x4"
	wallStock = "2x4"
	// platesHigh is a bottom plate and a double top plate of 2x stock.
	platesHigh = 3 * (measure.Inch + measure.Inch/2)
	wallPlates = 3
)

// frame works out the landing's framing. Nothing is worked out where the job
// states no joists.
func (l *Landing) frame(i int, upper *Flight, job *spec.Job) source.Mistakes {
	joists := l.Spec.Joists
	if joists == nil {
		return nil
	}
	w := &Frame{Top: l.FramingLevel - l.Spec.Sheathing.MM()}
	w.Bottom = w.Top - joists.Width.MM()
	if upper != nil { // not a curve
		w.Seat = upper.seat()
	}
	say := measure.Style{Units: job.Units}
	high := w.Bottom + job.Levels.LowerFinish.MM() // over the floor as it is today
	if measure.SnapMM(high) < 0 && l.Spec.BuiltLevel == nil {
		return source.Mistakes{job.Mistake(fmt.Sprintf("stairway[%d].landing.joists", i),
			"joists: %s of joists, sheathing and finish do not fit under a landing %s over the lower floor; take lower joists",
			say.FormatMM(l.Level-w.Bottom), say.FormatMM(l.Level))}
	}
	if l.Spec.On == spec.OnWalls && high < platesHigh.MM()-touching && l.Spec.BuiltLevel == nil {
		return source.Mistakes{job.Mistake(fmt.Sprintf("stairway[%d].landing.on", i),
			"on: the plates of a wall are %s high, and %s is left under the joists; write on: legs, or take lower joists",
			say.Format(platesHigh), say.FormatMM(high))}
	}
	l.outline(w, job)
	l.pieces(w, high, job)
	l.Frame = w
	return nil
}

// outline grows the walking area under the seat of the upper flight: along the
// whole edge that it stands on, but at a half turn only in its own lane, since
// the lower flight comes up beside it.
func (l *Landing) outline(w *Frame, job *spec.Job) {
	ps := append([]geom.Point(nil), l.Outline...)
	on := l.Exit.Point(w.Seat, 0)
	step := r2.Sub(on, l.Exit.At)
	if w.Seat > 0 && l.Spec.Angle == 180 {
		w.Outline = lane(ps, l.Exit, step, job.Width.MM()/2)
		return
	}
	for k, p := range ps {
		if w.Seat > 0 && math.Abs(r2.Dot(r2.Sub(p, l.Exit.At), step)) <= touching*w.Seat { // on the upper flight's riser line
			ps[k] = r2.Add(p, step)
		}
	}
	w.Outline = ps
}

// touching is how near to a line a corner counts as on it, in millimetres: far
// less than any landing is deep.
const touching = 1e-3

// lane adds to the outline the strip under the seat of a half turn's upper
// flight. The outline's last and first points are the ends of the edge both
// flights meet.
func lane(ps []geom.Point, exit turn.Place, step geom.Point, half float64) []geom.Point {
	right, left := exit.Point(0, -half), exit.Point(0, half) // of the upper flight; it heads back, so its left is the lower's right
	strip := []geom.Point{right, r2.Add(right, step), r2.Add(left, step), left}
	all := append([]geom.Point(nil), ps...)
	var kept []geom.Point
	for _, p := range append(all, strip...) {
		if n := len(kept); n > 0 && r2.Norm(r2.Sub(p, kept[n-1])) < touching {
			kept = kept[:n-1] // the strip begins in the outline's corner: the corner is none any more
			continue
		}
		kept = append(kept, p)
	}
	if n := len(kept); r2.Norm(r2.Sub(kept[0], kept[n-1])) < touching {
		kept = kept[1 : n-1]
	}
	return kept
}

// pieces lists what the frame is cut from. high is its underside over the lower
// floor as it is today.
func (l *Landing) pieces(w *Frame, high float64, job *spec.Job) {
	asked, t := l.Spec, l.Spec.Joists.Thickness.MM()
	long, wide := l.Up, l.Across // along the lower flight's travel, and across it
	switch asked.Angle {
	case 90:
		wide += w.Seat
	case 0:
		long += w.Seat
	}
	add := func(part string, count int, stock string, length, width float64) {
		if count > 0 && length > 0 {
			p := FramePiece{Part: part, Count: count, Stock: stock, Length: length, Width: width}
			if stock == "" {
				p.Thickness = asked.Sheathing.MM()
			}
			w.Pieces = append(w.Pieces, p)
		}
	}
	stock := asked.Joists.Name
	count := func(over float64) int { return int(math.Ceil((over-t)/asked.Spacing.MM()-1e-9)) + 1 }
	if flight := job.Width.MM(); asked.Angle == 180 && w.Seat > 0 {
		// In the upper flight's lane the joists run on under its seat, and the rim
		// stands farther out.
		inLane := count(flight)
		add("rim", 1, stock, wide, 0)
		add("rim at the lower flight", 1, stock, wide-flight, 0)
		add("rim at the upper flight", 1, stock, flight, 0)
		add("joist", max(count(wide-flight), 2), stock, long-2*t, 0)
		add("joist under the upper flight", inLane, stock, long+w.Seat-2*t, 0)
		add("sheathing", 1, "", wide, long)
		add("sheathing at the upper flight", 1, "", flight, w.Seat)
	} else {
		add("rim", 2, stock, wide, 0)
		add("joist", count(wide), stock, long-2*t, 0)
		add("sheathing", 1, "", wide, long)
	}
	l.carry(add, long, wide, high)
}

// carry lists what the frame stands or hangs on.
func (l *Landing) carry(add func(part string, count int, stock string, length, width float64), long, wide, high float64) {
	switch l.Spec.On {
	case spec.OnLegs:
		legs := 4
		if l.Spec.Angle == 180 {
			legs = 6 // two more where the rim steps out under the upper flight
		}
		add("leg", legs, postStock, high, 0)
	case spec.OnWalls:
		add("wall plate", 2*wallPlates, wallStock, wide, 0)
		studs := 2 * (int(math.Ceil(wide/l.Spec.Spacing.MM()-1e-9)) + 1)
		add("wall stud", studs, wallStock, high-platesHigh.MM(), 0)
	case spec.OnLedgers:
		stock := l.Spec.Joists.Name
		switch l.Spec.Angle {
		case 90:
			add("ledger along the far wall", 1, stock, wide, 0)
			add("ledger along the side wall", 1, stock, long, 0)
			add("leg at the inner corner", 1, postStock, high, 0)
		case 180:
			add("ledger along the far wall", 1, stock, wide, 0)
			add("ledger along a side wall", 2, stock, long, 0)
		default:
			add("ledger along a side wall", 2, stock, long, 0)
		}
	}
}
