package tile

import (
	"cmp"
	"math"
	"slices"

	"stepoff/layout/geom"
)

// grid is a grid in its place, with the cells that are needed.
type grid struct {
	choice int
	origin geom.Point // lower left corner of the window of cell 0, 0
	size   geom.Point
	pitch  geom.Point
	cells  []cell
	offMid float64 // how far the rows are from lying evenly about the drawing
}

// cell is a place in a grid: rows count upward here.
type cell struct{ column, row int }

// fewer tells whether g is the better grid of the two.
func (g *grid) fewer(h *grid) bool {
	return cmp.Or(
		cmp.Compare(len(g.cells), len(h.cells)),
		cmp.Compare(g.size.X*g.size.Y, h.size.X*h.size.Y),
		cmp.Compare(g.offMid, h.offMid),
	) < 0
}

// window is what a cell shows.
func (g *grid) window(c cell) geom.Box {
	min := geom.Pt(g.origin.X+float64(c.column)*g.pitch.X, g.origin.Y+float64(c.row)*g.pitch.Y)
	return geom.Box{Min: min, Max: geom.Pt(min.X+g.size.X, min.Y+g.size.Y)}
}

// prune drops cells all of whose edges are shown by their neighbours.
func (g *grid) prune(edges []geom.Edge, boxes []geom.Box) {
	kept := map[cell]bool{}
	for _, c := range g.cells {
		kept[c] = true
	}
	g.cells = slices.DeleteFunc(g.cells, func(c cell) bool {
		var near []geom.Box
		for column := c.column - 1; column <= c.column+1; column++ {
			for row := c.row - 1; row <= c.row+1; row++ {
				if o := (cell{column, row}); o != c && kept[o] {
					near = append(near, g.window(o).Grow(Slack))
				}
			}
		}
		kept[c] = !shown(edges, boxes, g.window(c), near)
		return !kept[c]
	})
}

// shown tells whether the windows show everything of the edges inside a
// window.
func shown(edges []geom.Edge, boxes []geom.Box, window geom.Box, windows []geom.Box) bool {
	window = window.Grow(Slack)
	for i, edge := range edges {
		if !boxes[i].Meets(window) {
			continue
		}
		for _, e := range edge.Clip(window) {
			var parts [][2]float64
			for _, w := range windows {
				parts = append(parts, e.Within(w)...)
			}
			slices.SortFunc(parts, func(a, b [2]float64) int { return cmp.Compare(a[0], b[0]) })
			slack := Slack / math.Max(e.Length(), Slack)
			reached := 0.0
			for _, p := range parts {
				if p[0] > reached+slack {
					break
				}
				reached = math.Max(reached, p[1])
			}
			if reached < 1-slack || len(parts) == 0 {
				return false
			}
		}
	}
	return true
}

// layout names the cells the way sheets are named, row by row from the top.
func (g *grid) layout() Layout {
	left, right, low, high := math.MaxInt, math.MinInt, math.MaxInt, math.MinInt
	for _, c := range g.cells {
		left, right = min(left, c.column), max(right, c.column)
		low, high = min(low, c.row), max(high, c.row)
	}
	l := Layout{Size: g.choice, Columns: right - left + 1, Rows: high - low + 1}
	for _, c := range g.cells {
		l.Tiles = append(l.Tiles, Tile{Column: c.column - left, Row: high - c.row, Window: g.window(c)})
	}
	slices.SortFunc(l.Tiles, func(a, b Tile) int {
		return cmp.Or(cmp.Compare(a.Row, b.Row), cmp.Compare(a.Column, b.Column))
	})
	return l
}
