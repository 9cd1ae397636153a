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

// prune drops cells all of whose edges are shown by others.
func (g *grid) prune(edges []geom.Edge) {
	for i := 0; i < len(g.cells); {
		others := slices.Delete(slices.Clone(g.cells), i, i+1)
		if g.shown(edges, g.window(g.cells[i]), g.near(others, g.cells[i])) {
			g.cells = others
			continue
		}
		i++
	}
}

// near keeps the cells whose windows meet that of c.
func (g *grid) near(cells []cell, c cell) []cell {
	return slices.DeleteFunc(slices.Clone(cells), func(o cell) bool {
		return o.column < c.column-1 || o.column > c.column+1 || o.row < c.row-1 || o.row > c.row+1
	})
}

// shown tells whether the cells show everything of the edges inside a window.
func (g *grid) shown(edges []geom.Edge, window geom.Box, cells []cell) bool {
	for _, e := range Edges(edges, window) {
		var parts [][2]float64
		for _, c := range cells {
			parts = append(parts, e.Within(g.window(c).Grow(Slack))...)
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
