package pdftest

import (
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"stepoff/layout/geom"
)

// Laid is how a sheet was laid on its page: which window of the drawing it
// shows, turned a quarter to the left or not, inside what margin, and the
// printer's factors. ScaleX and ScaleY of 0 count as 1.
type Laid struct {
	Window         geom.Box
	Turned         bool
	Margin         float64
	ScaleX, ScaleY float64
}

// Unplace returns the page's paths in the millimetres of the drawing: what a
// printer with those factors puts on paper, moved back to where it belongs.
func (p Page) Unplace(l Laid) []Path {
	if l.ScaleX == 0 {
		l.ScaleX = 1
	}
	if l.ScaleY == 0 {
		l.ScaleY = 1
	}
	back := func(q geom.Point) geom.Point {
		across, along := (q.X-l.Margin)*l.ScaleX, (q.Y-l.Margin)*l.ScaleY
		if l.Turned {
			// x runs up the page from its foot, y to the left from its
			// right side.
			return geom.Pt(l.Window.Min.X+along, l.Window.Min.Y+(p.Width-l.Margin-q.X)*l.ScaleX)
		}
		return geom.Pt(l.Window.Min.X+across, l.Window.Min.Y+along)
	}
	out := slices.Clone(p.Paths)
	for i := range out {
		out[i].Pieces = slices.Clone(out[i].Pieces)
		for j, q := range out[i].Pieces {
			out[i].Pieces[j] = Piece{back(q.From), back(q.C1), back(q.C2), back(q.To), q.Curve}
		}
	}
	return out
}

// Layer keeps the stroked paths of one layer.
func Layer(paths []Path, layer string) []Path {
	var out []Path
	for _, p := range paths {
		if p.Stroked && p.Layer == layer {
			out = append(out, p)
		}
	}
	return out
}

// sampling is how far apart the places are at which lines are compared, in
// millimetres, and least how many on a piece.
const (
	sampling = 2.0
	samples  = 4
)

// Missing compares edges with what was drawn and returns an error for the
// first place of an edge that no path passes within tolerance millimetres.
func Missing(want []geom.Edge, got []Path, tolerance float64) error {
	lines := flatten(got)
	for i, e := range want {
		n := max(samples, int(e.Length()/sampling))
		for k := range n + 1 {
			at := e.At(float64(k) / float64(n))
			if d := distance(at, lines); d > tolerance {
				return fmt.Errorf("edge %d, from (%.4f, %.4f) to (%.4f, %.4f): nothing is drawn at (%.4f, %.4f); the nearest line is %.4f mm off",
					i, e.From.X, e.From.Y, e.To.X, e.To.Y, at.X, at.Y, d)
			}
		}
	}
	return nil
}

// Extra is the other way round: an error for the first place of a path that
// lies on none of the edges.
func Extra(got []Path, want []geom.Edge, tolerance float64) error {
	for _, p := range got {
		for _, q := range p.Pieces {
			n := max(samples, int(r2.Norm(r2.Sub(q.To, q.From))/sampling))
			for k := range n + 1 {
				at := q.At(float64(k) / float64(n))
				least := math.Inf(1)
				for _, e := range want {
					least = math.Min(least, fromEdge(at, e))
				}
				if least > tolerance {
					return fmt.Errorf("a line of layer %s is drawn at (%.4f, %.4f), %.4f mm from where any should be", p.Layer, at.X, at.Y, least)
				}
			}
		}
	}
	return nil
}

// flatten turns curves into chords, fine enough to leave them by less than
// 1e-5 mm at any radius a drawing has.
func flatten(paths []Path) []geom.Edge {
	var out []geom.Edge
	for _, p := range paths {
		for _, q := range p.Pieces {
			n := 1
			if q.Curve {
				n = 512
			}
			for k := range n {
				out = append(out, geom.Line(q.At(float64(k)/float64(n)), q.At(float64(k+1)/float64(n))))
			}
		}
	}
	return out
}

func distance(at geom.Point, lines []geom.Edge) float64 {
	least := math.Inf(1)
	for _, l := range lines {
		least = math.Min(least, fromEdge(at, l))
	}
	return least
}

// fromEdge is how far a point is from an edge.
func fromEdge(at geom.Point, e geom.Edge) float64 {
	if !e.IsArc() {
		d := r2.Sub(e.To, e.From)
		f := 0.0
		if n := r2.Norm2(d); n > 0 {
			f = math.Max(0, math.Min(1, r2.Dot(r2.Sub(at, e.From), d)/n))
		}
		return r2.Norm(r2.Sub(at, r2.Add(e.From, r2.Scale(f, d))))
	}
	ends := math.Min(r2.Norm(r2.Sub(at, e.From)), r2.Norm(r2.Sub(at, e.To)))
	turn := math.Mod(math.Atan2(at.Y-e.Centre.Y, at.X-e.Centre.X)-e.Start(), 2*math.Pi)
	if turn*e.Sweep < 0 {
		turn += math.Copysign(2*math.Pi, e.Sweep)
	}
	if math.Abs(turn) > math.Abs(e.Sweep) {
		return ends
	}
	return math.Abs(r2.Norm(r2.Sub(at, e.Centre)) - e.Radius)
}
