package pdfout

import (
	"math"

	"stepoff/layout/geom"
)

// field is a sheet's window in squares, each as heavy as what is drawn in it:
// where notes are to go, it tells which place hides least.
type field struct {
	box    geom.Box
	nx, ny int
	cells  []int32
	sums   []int32 // of all cells below and left; nil: to be added up again
}

// square is the side of a square, millimetres.
const square = 2.5

// Weights of what may lie under a note. A cut or a mark must not be written
// over, and notes never over one another.
const (
	weighsLine = 3
	weighsText = 60
	weighsMark = 40
	weighsCut  = 80
	weighsNote = 10_000
)

func newField(b geom.Box) *field {
	f := &field{box: b, nx: int(math.Ceil(b.Width() / square)), ny: int(math.Ceil(b.Height() / square))}
	f.cells = make([]int32, f.nx*f.ny)
	return f
}

// line weighs an edge down.
func (f *field) line(e geom.Edge, weight int32) {
	n := max(1, int(math.Ceil(e.Length()/(square/2))))
	last := -1
	for i := range n + 1 {
		p := e.At(float64(i) / float64(n))
		x, y := int((p.X-f.box.Min.X)/square), int((p.Y-f.box.Min.Y)/square)
		if x < 0 || y < 0 || x >= f.nx || y >= f.ny || y*f.nx+x == last {
			continue
		}
		last = y*f.nx + x
		f.cells[last] += weight
	}
	f.sums = nil
}

// area weighs a box down.
func (f *field) area(b geom.Box, weight int32) {
	x0, y0, x1, y1 := f.squares(b)
	for y := y0; y < y1; y++ {
		for x := x0; x < x1; x++ {
			f.cells[y*f.nx+x] += weight
		}
	}
	f.sums = nil
}

// squares are the squares a box touches, from and up to.
func (f *field) squares(b geom.Box) (x0, y0, x1, y1 int) {
	x0 = max(0, int(math.Floor((b.Min.X-f.box.Min.X)/square)))
	y0 = max(0, int(math.Floor((b.Min.Y-f.box.Min.Y)/square)))
	x1 = min(f.nx, int(math.Ceil((b.Max.X-f.box.Min.X)/square)))
	y1 = min(f.ny, int(math.Ceil((b.Max.Y-f.box.Min.Y)/square)))
	return x0, y0, x1, y1
}

// weight is how much lies in a box.
func (f *field) weight(b geom.Box) int {
	x0, y0, x1, y1 := f.squares(b)
	if x0 >= x1 || y0 >= y1 {
		return 0
	}
	f.addUp()
	return f.between(x0, y0, x1, y1)
}

func (f *field) between(x0, y0, x1, y1 int) int {
	w := f.nx + 1
	return int(f.sums[y1*w+x1] - f.sums[y0*w+x1] - f.sums[y1*w+x0] + f.sums[y0*w+x0])
}

func (f *field) addUp() {
	if f.sums != nil {
		return
	}
	w := f.nx + 1
	f.sums = make([]int32, w*(f.ny+1))
	for y := range f.ny {
		row := int32(0)
		for x := range f.nx {
			row += f.cells[y*f.nx+x]
			f.sums[(y+1)*w+x+1] = f.sums[y*w+x+1] + row
		}
	}
}

// emptiest finds where a box of a size hides least, nearest to a preferred
// place where several do, and how much it hides.
func (f *field) emptiest(size geom.Point, preferred geom.Point) (geom.Box, int) {
	f.addUp()
	nx, ny := int(math.Ceil(size.X/square))+1, int(math.Ceil(size.Y/square))+1
	best, least, nearest := geom.Box{Min: f.box.Min}, math.MaxInt, math.Inf(1)
	for y := 0; y+ny <= f.ny; y += 2 {
		for x := 0; x+nx <= f.nx; x += 2 {
			hides := f.between(x, y, x+nx, y+ny)
			if hides > least {
				continue
			}
			at := geom.Pt(f.box.Min.X+(float64(x)+0.5)*square, f.box.Min.Y+(float64(y)+0.5)*square)
			far := math.Hypot(at.X-preferred.X, at.Y-preferred.Y)
			if hides < least || far < nearest {
				least, nearest, best.Min = hides, far, at
			}
		}
	}
	best.Max = geom.Pt(best.Min.X+size.X, best.Min.Y+size.Y)
	return best, least
}
