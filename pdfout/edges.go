package pdfout

import (
	"math"

	"stepoff/layout/drawing"
	"stepoff/layout/geom"
	"stepoff/spec/measure"
)

// Parts of a sheet's edges, millimetres.
const (
	crossArm    = 5.0 // half a cross
	stationTick = 6.0
	labelOff    = 0.5 // a seam to the words beside it
	seamRoom    = 4.0 // what the words beyond a seam need
	stationRoom = 8.0 // inside a seam, for its station, written upward
)

// seamLine is the line along which sheets are joined: a chain, so that it is
// not taken for a mark.
var seamLine = drawing.Centre.Line()

// stations are the lines at a sheet's left and right whose distance along the
// part is printed: the seam where there is a neighbour, else the first round
// station inside the window.
func (p *sheetPage) stations() (left, right float64) {
	step := p.roundStation()
	w := p.sheet.Window
	left = math.Ceil((w.Min.X+1)/step) * step
	right = math.Floor((w.Max.X-1)/step) * step
	if _, ok := p.neighbour(p.sheet, -1, 0); ok {
		left = p.seamsX[p.sheet.Column-1]
	}
	if _, ok := p.neighbour(p.sheet, 1, 0); ok {
		right = p.seamsX[p.sheet.Column]
	}
	return left, right
}

// between are the stations marked inside a long sheet: so far apart that a
// tape finds at once how the paper lies.
func (p *sheetPage) between(left, right float64) []float64 {
	every := 24 * measure.Inch.MM()
	if p.Units == measure.Metric {
		every = 500
	}
	var at []float64
	for x := math.Ceil((left+every/2)/every) * every; x < right-every/2; x += every {
		at = append(at, x)
	}
	if right-left < 2*every {
		return nil // the stations at its sides do
	}
	return at
}

// roundStation is how far apart round stations are, millimetres.
func (t *Tiling) roundStation() float64 {
	if t.Units == measure.Metric {
		return 10
	}
	return measure.Inch.MM() / 2
}

// edges draws what joins the sheet to its neighbours: the lines along which it
// is trimmed or laid, crosses that both sheets carry at the same stations, and
// the neighbours' names.
func (p *sheetPage) edges() {
	w := p.sheet.Window
	col, row := p.sheet.Column, p.sheet.Row
	if left, ok := p.neighbour(p.sheet, -1, 0); ok {
		p.seam(true, p.seamsX[col-1], w.Min.X, "trim here and lay on "+left.Name)
	}
	if right, ok := p.neighbour(p.sheet, 1, 0); ok {
		p.seam(true, p.seamsX[col], w.Max.X, right.Name+" is laid to this line")
	}
	if above, ok := p.neighbour(p.sheet, 0, -1); ok {
		p.seam(false, p.seamsY[row-1], w.Max.Y, "trim here and lay on "+above.Name)
	}
	if below, ok := p.neighbour(p.sheet, 0, 1); ok {
		p.seam(false, p.seamsY[row], w.Min.Y, below.Name+" is laid to this line")
	}
}

// seam draws the line along which two sheets are joined, upright at x = at or
// level at y = at; side is the window's side beyond it.
func (p *sheetPage) seam(upright bool, at, side float64, words string) {
	w := p.sheet.Window
	from, to := w.Min.X, w.Max.X
	place := func(along, across float64) geom.Point { return geom.Pt(along, across) }
	angle := 0.0
	if upright {
		from, to = w.Min.Y, w.Max.Y
		place = func(along, across float64) geom.Point { return geom.Pt(across, along) }
		angle = math.Pi / 2
	}
	p.artifact("Seam", func() { p.lines(p.pl, seamLine, place(from, at), place(to, at)) })
	for _, along := range p.crossings(from, to) {
		p.cross(place(along, at))
	}

	// The words go beyond the seam where there is room, else inside. Written
	// upward, their upper side is to the left.
	set := p.letters(words, drawing.Small)
	high := side > at == (math.Abs(side-at) >= seamRoom)
	low := at - labelOff - set.Up - set.Down
	if high {
		low = at + labelOff
	}
	baseline := low + set.Down
	if upright {
		baseline = low + set.Up
	}
	start := p.lightest(from, to, set.Width, func(along float64) geom.Box {
		return geom.EmptyBox().Include(place(along, low)).Include(place(along+set.Width, low+set.Up+set.Down))
	})
	p.artifact("Seam", func() { p.set(p.pl, place(start, baseline), angle, drawing.Left, set) })
	p.field.area(geom.EmptyBox().Include(place(from, math.Min(at, side)-1)).Include(place(to, math.Max(at, side)+1)), weighsNote)
}

// lightest finds the place between from and to at which a box of that length
// hides least, the middle if it can be.
func (p *sheetPage) lightest(from, to, long float64, box func(along float64) geom.Box) float64 {
	mid := (from + to - long) / 2
	best, least := mid, p.field.weight(box(mid))
	for off := square; off <= (to-from-long)/2-square && least > 0; off += square {
		for _, at := range [...]float64{mid + off, mid - off} {
			if hides := p.field.weight(box(at)); hides < least {
				best, least = at, hides
			}
		}
	}
	return best
}

// crossings are where the crosses stand along a seam from a to b: at a
// quarter and three quarters, on round stations.
func (t *Tiling) crossings(a, b float64) [2]float64 {
	round := func(v float64) float64 { return math.Round(v/t.roundStation()) * t.roundStation() }
	return [2]float64{round(a + (b-a)/4), round(b - (b-a)/4)}
}

// cross draws a cross.
func (p *sheetPage) cross(at geom.Point) {
	arms := []geom.Edge{
		geom.Line(geom.Pt(at.X-crossArm, at.Y), geom.Pt(at.X+crossArm, at.Y)),
		geom.Line(geom.Pt(at.X, at.Y-crossArm), geom.Pt(at.X, at.Y+crossArm)),
	}
	for i := range arms { // a narrow band may be narrower than a cross
		if inside := arms[i].Clip(p.sheet.Window); len(inside) > 0 {
			arms[i] = inside[0]
		}
	}
	p.artifact("Cross", func() { p.stroke(p.pl, drawing.Line{Width: drawing.NarrowLine}, arms, false) })
	p.field.area(geom.Box{Min: at, Max: at}.Grow(crossArm), weighsNote)
}

// station prints how far along the part the line at x is, written upward
// beside it, to its right or left, where it hides least. A line that is no
// seam is shown by ticks at the window's top and bottom.
func (p *sheetPage) station(x float64, right, seam bool) {
	w := p.sheet.Window
	set := p.letters(p.style().InchesMM(x), drawing.Normal)
	low := x - labelOff - set.Up - set.Down
	if right {
		low = x + labelOff
	}
	start := p.lightest(w.Min.Y+stationTick, w.Max.Y-stationTick, set.Width, func(along float64) geom.Box {
		return geom.Box{Min: geom.Pt(low, along), Max: geom.Pt(low+set.Up+set.Down, along+set.Width)}
	})
	p.artifact("Station", func() {
		if !seam {
			thin := drawing.Line{Width: drawing.NarrowLine}
			for _, y := range [...]float64{w.Min.Y, start - stationTick - 1, start + set.Width + 1, w.Max.Y - stationTick} {
				p.lines(p.pl, thin, geom.Pt(x, y), geom.Pt(x, y+stationTick))
			}
		}
		p.bold(p.pl, geom.Pt(low+set.Up, start), math.Pi/2, drawing.Left, drawing.Normal, set)
	})
	p.field.area(geom.Box{Min: geom.Pt(math.Min(low, x), start), Max: geom.Pt(math.Max(low+set.Up+set.Down, x), start+set.Width)}.Grow(1), weighsNote)
}
