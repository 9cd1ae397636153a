package pdfout

import (
	"math"
	"slices"

	"stepoff/layout/geom"
)

// rulers draws the two check rulers inside the stations at left and right:
// near the sides of the window, where they hide least. The one across the
// sheet is laid first; the other keeps clear of it.
func (p *sheetPage) rulers(left, right float64) {
	w := p.sheet.Window
	var across []ruler
	upright := map[ruler][2]float64{} // what each leaves the other, from and to
	for off := 0.0; off <= rulerPlay; off += 2 * square {
		low := ruler{start: geom.Pt(w.Min.X+rulerEnd, w.Min.Y+p.band(1)+rulerSide+off), along: geom.Pt(1, 0), room: w.Width() - 2*rulerEnd, units: p.Units}
		high := low
		high.start.Y = w.Max.Y - p.band(-1) - rulerSide - off
		across = append(across, low, high)
		upright[low] = [2]float64{low.box().Max.Y + 1, w.Max.Y - rulerEnd}
		upright[high] = [2]float64{w.Min.Y + rulerEnd, high.box().Min.Y - 1}
	}
	// Not at the price of an inch of the other.
	longest := 0
	inches := func(r ruler) int {
		span := upright[r]
		return ruler{room: span[1] - span[0]}.inches()
	}
	for _, r := range across {
		longest = max(longest, inches(r))
	}
	level := p.lightestRuler(slices.DeleteFunc(across, func(r ruler) bool { return inches(r) < longest }))
	span := upright[level]
	level = p.lay(level)

	var up []ruler
	for off := 0.0; off <= rulerPlay; off += 2 * square {
		first := ruler{start: geom.Pt(left+stationRoom+rulerSide+off, span[0]), along: geom.Pt(0, 1), room: span[1] - span[0], units: p.Units}
		last := first
		last.start.X = right - stationRoom - rulerSide - off
		up = append(up, first, last)
	}
	p.ruler(p.pl, level)
	p.ruler(p.pl, p.lay(p.lightestRuler(up)))
}

// rulerPlay is how far into the sheet a ruler may move to keep off what is
// drawn, millimetres.
const rulerPlay = 6 * square

// lightestRuler finds the ruler that hides least.
func (p *sheetPage) lightestRuler(rulers []ruler) ruler {
	best, least := rulers[0], math.MaxInt
	for _, r := range rulers {
		if hides := p.field.weight(r.box()); hides < least {
			best, least = r, hides
		}
	}
	return best
}

// lay puts the ruler's words where they hide least and takes its place.
func (p *sheetPage) lay(r ruler) ruler {
	_, play := r.fitting()
	least := math.MaxInt
	for at := 0.0; at <= play && least > 0; at += square {
		if hides := p.field.weight(r.wordsBox(at)); hides < least {
			r.words, least = at, hides
		}
	}
	p.field.area(r.box(), weighsNote)
	return r
}

// band is the width shared with the neighbour so many rows down; 0 where there
// is none.
func (p *sheetPage) band(rows int) float64 {
	if _, ok := p.neighbour(p.sheet, 0, rows); ok {
		return p.Paper.Overlap.MM()
	}
	return 0
}
