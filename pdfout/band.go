package pdfout

import (
	"math"

	"stepoff/layout/drawing"
	"stepoff/layout/geom"
)

// Band is a piece of a page that stays together and takes an even share of it:
// one of two is half a page, less the space between. A figure in it that states
// no height gets what the text leaves. What does not fit its share takes more.
type Band struct {
	Of     int // shares a page has
	Blocks []Block
}

// Space is room to work in with a pencil, dotted every 5 mm. Height is in
// millimetres; 0: what is left of the band it stands in.
type Space struct{ Height float64 }

func (Band) block()  {}
func (Space) block() {}

// leastRoom is the least that a figure in a band gets, leastSpace that of a space,
// millimetres.
const (
	leastRoom  = 40.0
	leastSpace = 20.0
)

// band sets a band in one chunk: its text first, to see what is left.
func (s setter) band(b Band) (chunk, error) {
	of := max(1, b.Of)
	height := (s.tall-float64(of-1)*blockGap)/float64(of) - rounding
	open := 0
	var text []Block
	for _, block := range b.Blocks {
		if !fills(block) {
			text = append(text, block)
			continue
		}
		open++
	}
	trial := s
	trial.parent = &element{tag: "Sect"} // its tags are thrown away
	set, err := trial.blocks(text)
	if err != nil {
		return chunk{}, err
	}
	room := 0.0
	if open > 0 {
		used := total(set) + float64(open)*figureAbove + blockGap
		room = (height - used) / float64(open)
	}
	blocks := append([]Block(nil), b.Blocks...)
	for i, block := range blocks {
		if fills(block) {
			blocks[i] = sized(block, room)
		}
	}
	own := s
	own.parent = s.parent.add("Sect")
	all, err := own.blocks(blocks)
	if err != nil {
		return chunk{}, err
	}
	return chunk{height: math.Max(height, total(all)), draw: func(c *canvas, x, top float64) { pile(c, all, x, top) }}, nil
}

// fills tells whether a block takes what is left of its band.
func fills(b Block) bool {
	switch b := b.(type) {
	case Figure:
		return b.MaxHeight == 0
	case Space:
		return b.Height == 0
	}
	return false
}

func sized(b Block, height float64) Block {
	switch b := b.(type) {
	case Figure:
		b.MaxHeight = math.Max(leastRoom, height)
		return b
	case Space:
		b.Height = math.Max(leastSpace, height)
		return b
	}
	return b
}

// pile draws chunks one below the other.
func pile(c *canvas, chunks []chunk, x, top float64) {
	for i, k := range chunks {
		if i > 0 {
			top -= k.above
		}
		k.draw(c, x, top)
		top -= k.height
	}
}

// dots is how far the dots of a space stand apart, and how long each is drawn,
// in millimetres: seen under a pencil line, and not in its way.
const (
	dots    = 5.0
	dotLong = 0.3
)

// space draws the room to work in.
func (s setter) space(b Space) chunk {
	height := b.Height
	if height == 0 {
		height = leastSpace
	}
	height = math.Min(height, s.tall-rounding)
	return chunk{height: height, above: figureAbove, draw: func(c *canvas, x, top float64) {
		c.artifact("Space", func() {
			for y := dots; y < height; y += dots {
				c.lines(onPaper, drawing.Line{Width: dotLong, Dash: []float64{dotLong, dots - dotLong}}, geom.Pt(x+dots, top-y), geom.Pt(x+s.width, top-y))
			}
			c.stroke(onPaper, drawing.Line{Width: guide}, geom.Rect(geom.Box{Min: geom.Pt(x, top-height), Max: geom.Pt(x+s.width, top)}).Edges, true)
		})
	}}
}
