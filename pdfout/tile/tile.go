package tile

import (
	"fmt"
	"math"

	"stepoff/layout/geom"
)

// Slack is what an edge may reach over a window's side and still count as
// inside, in millimetres: far more than what rounding makes of a sum, far less
// than a line's width or a saw can follow. An edge on a window's very side
// needs no further sheet.
const Slack = 0.001

// MaxTiles bounds a layout; more sheets than this are a slip of the size, not
// a template.
const MaxTiles = 5000

// Tile is one window onto the drawing.
type Tile struct {
	Column, Row int // from 0; columns along x, rows from the top down
	Window      geom.Box
}

// Layout is where the windows lie.
type Layout struct {
	Size          int // which of the sizes offered was taken
	Columns, Rows int // of the grid; not every place in it need have a tile
	Tiles         []Tile
}

// Lay finds the fewest windows that show every one of the edges. All windows
// have one of the sizes offered (width and height in the drawing's axes; a
// sheet and the same sheet on its side are two) and lie on a grid in which
// neighbours overlap by overlap. Where two sizes need as many windows, the
// smaller is taken, then the first. Windows are centred on what they show as
// far as that costs none.
//
// The grid is slid along both axes. Along x the best place is found exactly
// (unless the drawing falls into very many pieces); along y the places tried
// are those where a row begins or ends at a corner of the drawing, and evenly
// spread ones between.
func Lay(edges []geom.Edge, sizes []geom.Point, overlap float64) (Layout, error) {
	bounds := geom.EmptyBox()
	for _, e := range edges {
		bounds = bounds.Union(e.Box())
	}
	if bounds.Empty() {
		return Layout{}, fmt.Errorf("nothing in the drawing is to be cut or marked")
	}
	if !finite(bounds) {
		return Layout{}, fmt.Errorf("a line of the drawing has no place: its numbers are no numbers")
	}
	var best *grid
	for i, size := range sizes {
		if !(overlap >= 0 && size.X > 2*overlap && size.Y > 2*overlap) {
			return Layout{}, fmt.Errorf("an overlap of %.1f mm leaves too little of a sheet that shows %.1f x %.1f mm", overlap, size.X, size.Y)
		}
		pitch := geom.Pt(size.X-overlap, size.Y-overlap)
		if bounds.Width()/pitch.X*(bounds.Height()/pitch.Y) > MaxTiles || bounds.Width()/pitch.X > MaxTiles || bounds.Height()/pitch.Y > MaxTiles {
			return Layout{}, fmt.Errorf("the drawing is %.0f x %.0f mm: more than %d sheets", bounds.Width(), bounds.Height(), MaxTiles)
		}
		if g := newSearch(edges, size, pitch).best(); best == nil || g.fewer(best) {
			g.choice = i
			best = g
		}
	}
	return best.layout(), nil
}

func finite(b geom.Box) bool {
	v := b.Width() + b.Height() + b.Min.X + b.Min.Y
	return !math.IsNaN(v) && !math.IsInf(v, 0)
}

// Edges returns what of the edges a window shows: those inside it, cut at its
// sides, each moved out by Slack.
func Edges(edges []geom.Edge, window geom.Box) []geom.Edge {
	var out []geom.Edge
	grown := window.Grow(Slack)
	for _, e := range edges {
		out = append(out, e.Clip(grown)...)
	}
	return out
}
