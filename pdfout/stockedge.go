package pdfout

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"stepoff/layout/drawing"
	"stepoff/layout/geom"
)

// stockOff is how far the words STOCK EDGE stand off it, and stockEvery how
// often they are repeated on a long sheet, millimetres.
const (
	stockOff   = 1.8
	stockEvery = 600.0
)

// stockEdge names the lumber edge where it crosses the sheet.
func (p *sheetPage) stockEdge() {
	set := p.letters("STOCK EDGE", drawing.Normal)
	var pieces []geom.Edge
	for _, e := range p.Part.Stock.Clip(p.sheet.Window) {
		n := math.Max(1, math.Round(e.Length()/stockEvery))
		for i := 0.0; i < n; i++ {
			pieces = append(pieces, e.Part(i/n, (i+1)/n))
		}
	}
	for _, e := range pieces {
		long := e.Length()
		if e.IsArc() || long < set.Width {
			continue
		}
		u := r2.Scale(1/long, r2.Sub(e.To, e.From))
		if u.X < 0 {
			u, e.From = r2.Scale(-1, u), e.To
		}
		n := geom.Pt(-u.Y, u.X)
		best, least := geom.Point{}, math.MaxInt
		for _, off := range [...]float64{stockOff, -stockOff - set.Up} {
			for f := 0.0; f <= long-set.Width; f += 2 * square {
				at := r2.Add(e.From, r2.Add(r2.Scale(f, u), r2.Scale(off, n)))
				b := geom.EmptyBox().Include(at).Include(r2.Add(at, r2.Add(r2.Scale(set.Width, u), r2.Scale(set.Up, n))))
				if !inside(b, p.sheet.Window) {
					continue
				}
				if hides := p.field.weight(b); hides < least {
					best, least = at, hides
				}
			}
		}
		if least == math.MaxInt {
			continue
		}
		p.artifact("Stock", func() {
			p.bold(p.pl, best, math.Atan2(u.Y, u.X), drawing.Left, drawing.Normal, set)
		})
		p.field.area(geom.EmptyBox().Include(best).Include(r2.Add(best, r2.Add(r2.Scale(set.Width, u), r2.Scale(set.Up, n)))), weighsNote)
	}
}
