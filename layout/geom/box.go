package geom

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// Box is an upright rectangle. Box{} is the point at the origin; the empty
// box, which holds nothing, is EmptyBox.
type Box struct{ Min, Max Point }

// EmptyBox returns the box that holds no point.
func EmptyBox() Box {
	return Box{Pt(math.Inf(1), math.Inf(1)), Pt(math.Inf(-1), math.Inf(-1))}
}

// Empty tells whether the box holds nothing.
func (b Box) Empty() bool { return b.Min.X > b.Max.X || b.Min.Y > b.Max.Y }

// Width is the box's extent along x.
func (b Box) Width() float64 { return b.Max.X - b.Min.X }

// Height is the box's extent along y.
func (b Box) Height() float64 { return b.Max.Y - b.Min.Y }

// Include returns the box grown to hold p.
func (b Box) Include(p Point) Box {
	return Box{Pt(math.Min(b.Min.X, p.X), math.Min(b.Min.Y, p.Y)),
		Pt(math.Max(b.Max.X, p.X), math.Max(b.Max.Y, p.Y))}
}

// Union returns the smallest box that holds both.
func (b Box) Union(c Box) Box {
	if c.Empty() {
		return b
	}
	return b.Include(c.Min).Include(c.Max)
}

// Grow returns the box with every side moved out by d.
func (b Box) Grow(d float64) Box {
	return Box{Pt(b.Min.X-d, b.Min.Y-d), Pt(b.Max.X+d, b.Max.Y+d)}
}

// Contains tells whether p lies in the box, its sides included, each moved
// out by slack.
func (b Box) Contains(p Point, slack float64) bool {
	return p.X >= b.Min.X-slack && p.X <= b.Max.X+slack && p.Y >= b.Min.Y-slack && p.Y <= b.Max.Y+slack
}

// Meets tells whether the two boxes share a point.
func (b Box) Meets(c Box) bool {
	return b.Min.X <= c.Max.X && b.Max.X >= c.Min.X && b.Min.Y <= c.Max.Y && b.Max.Y >= c.Min.Y
}

// Shift moves the box by d.
func (b Box) Shift(d Point) Box { return Box{Min: r2.Add(b.Min, d), Max: r2.Add(b.Max, d)} }
