package pdfout

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"stepoff/layout/drawing"
	"stepoff/layout/geom"
	"stepoff/pdfout/tile"
	"stepoff/spec/measure"
)

// rollEnd is what a roll's page is left longer than what must be shown, at
// either end, in true millimetres: cuts end clear of the paper's edge.
const rollEnd = 15.0

// Plan spreads a part over sheets of the paper: as few as possible, whichever
// way they are turned. u is how stations are printed.
func Plan(part Part, paper Paper, u measure.Units) (*Tiling, error) {
	if err := paper.Check(); err != nil {
		return nil, fmt.Errorf("part %s: %w", part.Name, err)
	}
	if err := part.Drawing.Check(); err != nil {
		return nil, fmt.Errorf("part %s: %w", part.Name, err)
	}
	paper = paper.filled()
	var edges []geom.Edge
	bounds := geom.EmptyBox()
	for _, it := range part.Drawing.Items {
		if p, ok := it.(drawing.Path); ok && p.Layer.GuidesCut() {
			edges = append(edges, p.Edges...)
			bounds = bounds.Union(p.Box())
		}
	}
	// Upright, and on its side.
	p := paper.printable()
	sizes := []geom.Point{p, {X: p.Y, Y: p.X}}
	overlap := paper.Overlap.MM()
	if paper.Roll && !bounds.Empty() {
		least := paper.Width.MM()*paper.ScaleY - 2*paper.Margin.MM()*paper.ScaleY
		sizes[0].Y = rollLength(bounds.Height(), least, p.Y, overlap)
		sizes[1].X = rollLength(bounds.Width(), least, p.Y, overlap)
	}
	l, err := tile.Lay(edges, sizes, overlap)
	if err != nil {
		return nil, fmt.Errorf("part %s: %w", part.Name, err)
	}

	t := &Tiling{Part: part, Paper: paper, Units: u, Turned: l.Size == 1, at: map[cell]int{}}
	size := sizes[l.Size]
	along := size.Y
	if t.Turned {
		along = size.X
	}
	t.height = along/paper.ScaleY + 2*paper.Margin.MM()
	for i, w := range l.Tiles {
		t.at[cell{w.Column, w.Row}] = i
		t.Sheets = append(t.Sheets, Sheet{Name: sheetName(w.Column, w.Row), Column: w.Column, Row: w.Row, Window: w.Window})
	}
	first := l.Tiles[0]
	for c := range l.Columns - 1 {
		end := first.Window.Max.X + float64(c-first.Column)*(size.X-overlap)
		t.seamsX = append(t.seamsX, seam(end-overlap, end, u))
	}
	for r := range l.Rows - 1 {
		end := first.Window.Min.Y - float64(r-first.Row)*(size.Y-overlap)
		t.seamsY = append(t.seamsY, seam(end, end+overlap, u))
	}
	return t, nil
}

// rollLength is how much of a drawing that is length long goes on one page of
// a roll: all of it, or an even share.
func rollLength(length, least, most, overlap float64) float64 {
	n := math.Max(1, math.Ceil((length-overlap)/(most-overlap)-1e-9))
	return math.Min(most, math.Max(least, (length+(n-1)*overlap)/n+2*rollEnd))
}

// seam is where two sheets that share the band from a to b meet: the round
// station nearest its middle, so that the line can be found with a tape.
func seam(a, b float64, u measure.Units) float64 {
	steps := []measure.Length{measure.Inch / 4, measure.Inch / 8, measure.Inch / 16}
	if u == measure.Metric {
		steps = []measure.Length{5 * measure.Millimetre, measure.Millimetre}
	}
	mid := (a + b) / 2
	// Far enough from the band's sides that words fit beside the seam.
	off := math.Max((b-a)/2-seamRoom, (b-a)/8)
	for _, s := range steps {
		if at := math.Round(mid/s.MM()) * s.MM(); math.Abs(at-mid) <= off {
			return at
		}
	}
	return mid
}

// sheetName is the column letter (A to Z, then AA) and the row number from 1.
func sheetName(column, row int) string {
	name := ""
	for c := column; c >= 0; c = c/26 - 1 {
		name = string(rune('A'+c%26)) + name
	}
	return fmt.Sprintf("%s%d", name, row+1)
}

// pageSize is the size of the sheets' pages, in millimetres as drawn.
func (t *Tiling) pageSize() geom.Point { return geom.Pt(t.Paper.Width.MM(), t.height) }

// placing lays a sheet's window on its page.
func (t *Tiling) placing(s Sheet) fullSize {
	m := t.Paper.Margin.MM()
	return fullSize{
		window: s.Window, turned: t.Turned, margin: geom.Pt(m, m), width: t.Paper.Width.MM(),
		scaleX: t.Paper.ScaleX, scaleY: t.Paper.ScaleY,
	}
}

// neighbour returns the sheet so many columns to the right and rows down.
func (t *Tiling) neighbour(s Sheet, columns, rows int) (Sheet, bool) {
	i, ok := t.at[cell{s.Column + columns, s.Row + rows}]
	if !ok {
		return Sheet{}, false
	}
	return t.Sheets[i], true
}

// cell is a place in the grid of sheets.
type cell struct{ column, row int }

// own is the part of a sheet's window that is its own once the sheets are
// joined: from seam to seam.
func (t *Tiling) own(s Sheet) geom.Box {
	b := s.Window
	if s.Column > 0 {
		b.Min.X = t.seamsX[s.Column-1]
	}
	if s.Column < len(t.seamsX) {
		b.Max.X = t.seamsX[s.Column]
	}
	if s.Row > 0 {
		b.Max.Y = t.seamsY[s.Row-1]
	}
	if s.Row < len(t.seamsY) {
		b.Min.Y = t.seamsY[s.Row]
	}
	return b
}

// Map is the assembly map: the part's lines with the sheets drawn and named
// as they lie.
func (t *Tiling) Map() *drawing.Drawing {
	d := &drawing.Drawing{Name: t.Part.Name + "-map", Title: t.Part.Title + ": how the sheets lie"}
	var cuts []geom.Edge
	for _, it := range t.Part.Drawing.Items {
		p, ok := it.(drawing.Path)
		if !ok || p.Layer != drawing.Cut && p.Layer != drawing.Lumber {
			continue
		}
		p.Fill = 0
		if p.Layer == drawing.Cut {
			cuts = append(cuts, p.Edges...)
			p.Layer = drawing.Mark // narrow: the names are to be read
		}
		d.Add(p)
	}
	for _, s := range t.Sheets {
		own := t.own(s)
		d.Add(drawing.Path{Layer: drawing.Thin, Path: geom.Rect(own)})
		d.Text(clearest(own, cuts), drawing.Small, drawing.Middle, s.Name)
	}
	return d
}

// clearest is the place in a box, of a few, that is farthest from the lines.
func clearest(b geom.Box, lines []geom.Edge) geom.Point {
	var near []geom.Edge
	for _, e := range lines {
		near = append(near, e.Clip(b)...)
	}
	best, farthest := geom.Point{}, -1.0
	for _, fy := range [...]float64{0.5, 0.3, 0.7, 0.12, 0.8} {
		for _, fx := range [...]float64{0.5, 0.35, 0.65} {
			at := geom.Pt(b.Min.X+fx*b.Width(), b.Min.Y+fy*b.Height())
			far := math.Inf(1)
			for _, e := range near {
				for i := range 21 {
					far = math.Min(far, r2.Norm(r2.Sub(e.At(float64(i)/20), at)))
				}
			}
			if far > farthest {
				best, farthest = at, far
			}
		}
	}
	return best
}
