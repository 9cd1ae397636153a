package pdfout

import (
	"fmt"
	"math"
	"strconv"

	"gonum.org/v1/gonum/spatial/r2"

	"stepoff/layout/drawing"
	"stepoff/layout/drawing/letter"
	"stepoff/layout/geom"
	"stepoff/spec/measure"
)

// ruler is a check ruler: inches on its left side, millimetres on its right,
// both from its start, as long as fits.
type ruler struct {
	start geom.Point
	along geom.Point // of length 1
	room  float64    // how long it may be, true millimetres
	units measure.Units
	words float64 // where along it the words begin, so that no cut crosses them
}

// A ruler's ticks, and how far it reaches to either side, millimetres.
const (
	longTick  = 3.0
	shortTick = 1.8
	rulerSide = longTick + 0.8 + drawing.Small + 0.4
	rulerEnd  = 3.0 // from a window's side to a ruler's end
)

// stop says what the ruler must measure: its whole inches, or in metric its
// whole centimetres, and what the other tape shows there.
func (r ruler) stop() string {
	if r.units == measure.Metric {
		cm := measure.Length(r.centimetres()) * measure.Centimetre
		return fmt.Sprintf("measure this: if it is not %d mm (%.2f in), stop", cm/measure.Millimetre, cm.In())
	}
	in := measure.Length(r.inches()) * measure.Inch
	mm := strconv.FormatFloat(measure.SnapMM(in.MM()), 'f', -1, 64)
	return fmt.Sprintf("measure this: if it is not %d in (%s mm), stop", in/measure.Inch, mm)
}

// stopShort says the same where there is little room.
func (r ruler) stopShort() string {
	if r.units == measure.Metric {
		return fmt.Sprintf("not %d mm: stop", 10*r.centimetres())
	}
	return fmt.Sprintf("not %d in: stop", r.inches())
}

// end is what stands at the last centimetre.
func (r ruler) end() string { return fmt.Sprintf("%d mm", 10*r.centimetres()) }

// fitting is what the ruler says before its end, and how far it may be moved
// along.
func (r ruler) fitting() (words string, play float64) {
	free := 10*float64(r.centimetres()) - letter.Width(r.end(), drawing.Small) - 2
	words = r.stop()
	if letter.Width(words, drawing.Small) > free {
		words = r.stopShort()
	}
	return words, math.Max(0, free-letter.Width(words, drawing.Small))
}

// wordsBox is what the words take when they begin at a place along the ruler.
func (r ruler) wordsBox(at float64) geom.Box {
	words, _ := r.fitting()
	left := geom.Pt(-r.along.Y, r.along.X)
	low := r2.Add(r.start, r2.Add(r2.Scale(at, r.along), r2.Scale(-rulerSide, left)))
	high := r2.Add(low, r2.Add(r2.Scale(letter.Width(words, drawing.Small), r.along), r2.Scale(drawing.Small, left)))
	return geom.EmptyBox().Include(low).Include(high)
}

// inches and centimetres are how many of them fit.
func (r ruler) inches() int      { return int(r.room/25.4 + rounding) }
func (r ruler) centimetres() int { return int(r.room/10 + rounding) }

// box is what the ruler takes.
func (r ruler) box() geom.Box {
	left := geom.Pt(-r.along.Y, r.along.X)
	end := r2.Add(r.start, r2.Scale(r.room, r.along))
	side := r2.Scale(rulerSide, left)
	return geom.EmptyBox().Include(r2.Add(r.start, side)).Include(r2.Sub(end, side))
}

// draw draws the ruler. It is placed like the drawing whose size it proves.
func (c *canvas) ruler(pl placing, r ruler) {
	left := geom.Pt(-r.along.Y, r.along.X)
	at := func(along, side float64) geom.Point {
		return r2.Add(r.start, r2.Add(r2.Scale(along, r.along), r2.Scale(side, left)))
	}
	angle := math.Atan2(r.along.Y, r.along.X)
	thin := drawing.Line{Width: drawing.NarrowLine}
	write := func(along, side float64, align drawing.Align, text string) {
		c.set(pl, at(along, side), angle, align, letter.Set(text, drawing.Small))
	}
	in, cm := r.inches(), r.centimetres()
	var ticks []geom.Edge
	tick := func(along, from, to float64) { ticks = append(ticks, geom.Line(at(along, from), at(along, to))) }
	c.artifact("Ruler", func() {
		ticks = append(ticks, geom.Line(at(0, 0), at(math.Max(float64(in)*25.4, float64(cm)*10), 0)))
		for i := range 2*in + 1 {
			long := longTick
			if i%2 == 1 {
				long = shortTick
			}
			tick(float64(i)*12.7, 0, long)
		}
		for i := range cm + 1 {
			long := longTick
			if i%5 != 0 {
				long = shortTick
			}
			tick(float64(i)*10, 0, -long)
		}
		c.stroke(pl, thin, ticks, false)
		for i := range in + 1 {
			text := fmt.Sprint(i)
			align := drawing.Middle
			switch i {
			case 0:
				align = drawing.Left
			case in:
				text, align = text+" in", drawing.Right
			}
			write(float64(i)*25.4, longTick+0.8, align, text)
		}
		below := -longTick - 0.8 - drawing.Small
		write(float64(cm)*10, below, drawing.Right, r.end())
		stop, _ := r.fitting()
		write(r.words, below, drawing.Left, stop)
	})
}
