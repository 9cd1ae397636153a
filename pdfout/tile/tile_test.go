package tile_test

import (
	"fmt"
	"math"
	"testing"

	"stepoff/layout/geom"
	"stepoff/pdfout/tile"
)

// sawTooth is the outline of n notches of the given rise and run cut into a
// board, in the board's own frame with its upper edge along x, less the
// board's edges: what a saw follows.
func sawTooth(n int, rise, run, width float64) []geom.Edge {
	step := math.Hypot(rise, run)
	d := rise * run / step
	root := run * run / step // along the edge from a tip to the next root
	var pts []geom.Point
	start := 4.0 * 25.4
	pts = append(pts, geom.Pt(0, -start*rise/run))
	for k := range n {
		tip := start + float64(k)*step
		pts = append(pts, geom.Pt(tip, 0), geom.Pt(tip+root, -d))
	}
	end := start + float64(n)*step
	pts = append(pts, geom.Pt(end, 0))
	edges := geom.Polyline(pts...).Edges
	edges = append(edges, geom.Line(geom.Pt(0, -start*rise/run), geom.Pt(width*rise/run, -width)))
	edges = append(edges, geom.Line(geom.Pt(end-d, -d), geom.Pt(end-width*run/rise, -width)))
	return edges
}

func TestTry(t *testing.T) {
	in := 25.4
	edges := sawTooth(13, 7.5*in, 10*in, 11.25*in)
	for _, p := range []struct {
		n    string
		w, h float64
	}{{"letter", 8, 10.5}, {"legal", 8, 13.5}, {"tabloid", 10.5, 16.5}, {"a4", 197.3 / in, 284.3 / in}, {"a3", 284.3 / in, 407.3 / in}} {
		l, err := tile.Lay(edges, []geom.Point{{X: p.w * in, Y: p.h * in}, {X: p.h * in, Y: p.w * in}}, 0.5*in)
		fmt.Println(p.n, len(l.Tiles), l.Columns, l.Rows, l.Size, err)
		for _, q := range l.Tiles {
			fmt.Print(q.Column, " ", q.Row, "; ")
		}
		fmt.Println()
	}
}
func BenchmarkLay(b *testing.B) {
	in := 25.4
	edges := sawTooth(13, 7.5*in, 10*in, 11.25*in)
	for b.Loop() {
		tile.Lay(edges, []geom.Point{{X: 8 * in, Y: 10.5 * in}, {X: 10.5 * in, Y: 8 * in}}, 0.5*in)
	}
}
