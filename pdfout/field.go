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
	sums   []int32 // of all cells below and left
	summed bool    // sums are those of the cells as they are
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

// clear makes the field that of an empty window.
func (f *field) clear(b geom.Box) {
	nx, ny := int(math.Ceil(b.Width()/square)), int(math.Ceil(b.Height()/square))
	f.box = b
	if nx*ny > cap(f.cells) || (nx+1)*(ny+1) > cap(f.sums) {
		f.cells, f.sums = make([]int32, nx*ny), make([]int32, (nx+1)*(ny+1))
	}
	f.nx, f.ny = nx, ny
	f.cells, f.sums = f.cells[:nx*ny], f.sums[:(nx+1)*(ny+1)]
	clear(f.cells)
	f.summed = false
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
	f.summed = false
}

// area weighs a box down.
func (f *field) area(b geom.Box, weight int32) {
	x0, y0, x1, y1 := f.squares(b)
	for y := y0; y < y1; y++ {
		for x := x0; x < x1; x++ {
			f.cells[y*f.nx+x] += weight
		}
	}
	f.summed = false
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
	sum := 0
	for y := y0; y < y1; y++ {
		for x := x0; x < x1; x++ {
			sum += int(f.cells[y*f.nx+x])
		}
	}
	return sum
}

// between is the weight of the squares from x0, y0 up to x1, y1, once added
// up.
func (f *field) between(x0, y0, x1, y1 int) int {
	w := f.nx + 1
	return int(f.sums[y1*w+x1] - f.sums[y0*w+x1] - f.sums[y1*w+x0] + f.sums[y0*w+x0])
}

func (f *field) addUp() {
	if f.summed {
		return
	}
	f.summed = true
	w := f.nx + 1
	clear(f.sums[:w])
	for y := range f.ny {
		row := int32(0)
		below, above := f.sums[y*w:(y+1)*w], f.sums[(y+1)*w:(y+2)*w]
		above[0] = 0
		for x, c := range f.cells[y*f.nx : (y+1)*f.nx] {
			row += c
			above[x+1] = below[x+1] + row
		}
	}
}

// emptiest finds where a box of a size hides least, nearest to a preferred
// place where several do, and how much it hides: math.MaxInt where it does not
// fit at all.
func (f *field) emptiest(size geom.Point, preferred geom.Point) (geom.Box, int) {
	f.addUp()
	nx, ny := int(math.Ceil(size.X/square))+1, int(math.Ceil(size.Y/square))+1
	lastX, lastY := int(f.box.Width()/square)-nx, int(f.box.Height()/square)-ny
	best, least, nearest := geom.Box{Min: f.box.Min}, math.MaxInt, math.Inf(1)
	for y := 0; y <= lastY; y += 2 {
		for x := 0; x <= lastX; x += 2 {
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
