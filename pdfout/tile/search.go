package tile

import (
	"cmp"
	"math"
	"slices"

	"stepoff/layout/geom"
)

// search slides a grid of windows of one size over the edges.
type search struct {
	edges       []geom.Edge
	boxes       []geom.Box // round the edges
	bounds      geom.Box   // round all
	size, pitch geom.Point
	cut         [][]span // where rows puts its answer
}

// Places tried for the rows: those that begin or end at corners of the
// drawing, thinned out where there are very many, and some evenly spread.
// Every place costs a look at every edge; drawings of very many edges get
// fewer places, so that no drawing takes long.
const (
	evenPlaces       = 24
	leastCorners     = 8
	mostCorners      = 160
	edgesTimesPlaces = 40_000
)

func newSearch(edges []geom.Edge, size, pitch geom.Point) *search {
	s := &search{edges: edges, bounds: geom.EmptyBox(), size: size, pitch: pitch}
	for _, e := range edges {
		s.boxes = append(s.boxes, e.Box())
		s.bounds = s.bounds.Union(e.Box())
	}
	return s
}

// best is the grid with the fewest cells. What lies where two rows overlap is
// given to the upper one, and then, with the drawing turned upside down, to
// the lower one.
func (s *search) best() *grid {
	up := s.slide()
	down := s.flip().slide()
	if down.fewer(up) {
		down.unflip()
		up = down
	}
	up.prune(s.edges, s.boxes)
	return up
}

// flip turns the search upside down.
func (s *search) flip() *search {
	edges := make([]geom.Edge, len(s.edges))
	for i, e := range s.edges {
		e.From.Y, e.To.Y, e.Centre.Y, e.Sweep = -e.From.Y, -e.To.Y, -e.Centre.Y, -e.Sweep
		edges[i] = e
	}
	return newSearch(edges, s.size, s.pitch)
}

// unflip turns a grid found upside down the right way up.
func (g *grid) unflip() {
	g.origin.Y = -g.origin.Y - g.size.Y
	for i := range g.cells {
		g.cells[i].row = -g.cells[i].row
	}
}

// slide tries the places of the rows.
func (s *search) slide() *grid {
	var best *grid
	for _, y := range s.rowPlaces() {
		if g := s.columns(y, s.rows(y)); best == nil || g.fewer(best) {
			best = g
		}
	}
	return best
}

// rowPlaces lists where the lowest row's window may begin: no lower than what
// still shows the lowest edge, no higher than that edge.
func (s *search) rowPlaces() []float64 {
	top := s.bounds.Min.Y
	// Down to one pitch lower the rows fall differently; below that they
	// repeat, one row on.
	reduce := func(y float64) float64 {
		return top - math.Mod(math.Mod(top-y, s.pitch.Y)+s.pitch.Y, s.pitch.Y)
	}
	var corners []float64
	for _, e := range s.edges {
		for _, y := range [...]float64{e.From.Y, e.To.Y} {
			corners = append(corners, reduce(y), reduce(y-s.size.Y))
		}
	}
	slices.Sort(corners)
	corners = slices.CompactFunc(corners, func(a, b float64) bool { return math.Abs(a-b) < Slack })
	corners = thin(corners, min(mostCorners, max(leastCorners, edgesTimesPlaces/len(s.edges))))
	// The plain grids: first row at the bottom, last row at the top.
	n := s.rowCount(top)
	slack := float64(n-1)*s.pitch.Y + s.size.Y - s.bounds.Height()
	places := append([]float64{top, top - slack, top - slack/2}, corners...)
	for i := range evenPlaces {
		places = append(places, top-s.pitch.Y*float64(i)/evenPlaces)
	}
	return places
}

// thin keeps at most so many of the values, evenly chosen.
func thin(values []float64, most int) []float64 {
	n := len(values)
	if n <= most {
		return values
	}
	for i := range most {
		values[i] = values[i*n/most]
	}
	return values[:most]
}

// rowCount is how many rows reach the top of the drawing from y.
func (s *search) rowCount(y float64) int {
	over := s.bounds.Max.Y - y - s.size.Y
	return max(1, 1+int(math.Ceil((over-Slack)/s.pitch.Y)))
}

// span is a stretch along x.
type span struct{ from, to float64 }

// rows cuts the drawing into rows beginning at y and returns what each must
// show along x, merged where stretches meet. The answer is good until the next.
func (s *search) rows(y float64) [][]span {
	n := s.rowCount(y)
	for len(s.cut) < n {
		s.cut = append(s.cut, nil)
	}
	rows := s.cut[:n]
	for j := range rows {
		rows[j] = rows[j][:0]
	}
	for i, b := range s.boxes {
		// An edge that only touches the row above does not need it; one that
		// lies along the line between two belongs to the upper.
		low := int(math.Floor((b.Min.Y - y + Slack) / s.pitch.Y))
		high := int(math.Floor((b.Max.Y - y - Slack) / s.pitch.Y))
		low = min(max(low, 0), n-1)
		high = min(max(high, low), n-1)
		if low == high {
			rows[low] = append(rows[low], span{b.Min.X, b.Max.X})
			continue
		}
		for j := low; j <= high; j++ {
			from, to := y+float64(j)*s.pitch.Y, y+float64(j+1)*s.pitch.Y
			if j == 0 {
				from = math.Inf(-1)
			}
			if j == n-1 {
				to = math.Inf(1)
			}
			rows[j] = within(s.edges[i], from, to, rows[j])
		}
	}
	for j := range rows {
		rows[j] = merge(rows[j])
	}
	return rows
}

// within appends the stretches along x of what of an edge lies between two
// heights.
func within(e geom.Edge, from, to float64, spans []span) []span {
	if e.IsArc() {
		for _, part := range e.Clip(geom.Box{Min: geom.Pt(math.Inf(-1), from), Max: geom.Pt(math.Inf(1), to)}) {
			b := part.Box()
			spans = append(spans, span{b.Min.X, b.Max.X})
		}
		return spans
	}
	// A straight edge that reaches over several rows is not level.
	x := func(y float64) float64 {
		f := (y - e.From.Y) / (e.To.Y - e.From.Y)
		return e.From.X + math.Max(0, math.Min(1, f))*(e.To.X-e.From.X)
	}
	a, b := x(from), x(to)
	return append(spans, span{math.Min(a, b), math.Max(a, b)})
}

// merge joins stretches that meet, in place.
func merge(spans []span) []span {
	slices.SortFunc(spans, func(a, b span) int { return cmp.Compare(a.from, b.from) })
	out := spans[:0]
	for _, s := range spans {
		if n := len(out); n > 0 && s.from <= out[n-1].to+Slack {
			out[n-1].to = math.Max(out[n-1].to, s.to)
			continue
		}
		out = append(out, s)
	}
	return out
}

// mostColumnPlaces bounds the places tried for the columns of one set of rows;
// few drawings fall into so many stretches.
const mostColumnPlaces = 64

// reduceX moves a place by whole columns to the left end of the drawing: the
// grid there is the same.
func (s *search) reduceX(x float64) float64 {
	return x - math.Floor((x-s.bounds.Min.X)/s.pitch.X)*s.pitch.X
}

// columns slides the columns. A best place is one where some window begins at
// the beginning of a stretch, or ends at the end of one: anywhere else the
// grid can be slid on until one does, showing the same.
func (s *search) columns(y float64, rows [][]span) *grid {
	var places []float64
	for _, row := range rows {
		for _, sp := range row {
			places = append(places, s.reduceX(sp.from), s.reduceX(sp.to-s.size.X))
		}
	}
	slices.Sort(places)
	places = slices.CompactFunc(places, func(a, b float64) bool { return math.Abs(a-b) < Slack/2 })
	best := &grid{size: s.size, pitch: s.pitch}
	fewest := math.MaxInt
	for _, x := range thin(places, mostColumnPlaces) {
		if n := s.count(x, rows); n < fewest {
			fewest, best.origin.X = n, x
		}
	}
	best.origin.Y = y
	for j, row := range rows {
		s.cover(best.origin.X, row, func(i int) { best.cells = append(best.cells, cell{i, j}) })
	}
	n := float64(len(rows))
	best.offMid = math.Abs(y + ((n-1)*s.pitch.Y+s.size.Y)/2 - (s.bounds.Min.Y+s.bounds.Max.Y)/2)
	best.origin.X += s.play(best, rows)
	return best
}

// count is how many windows the rows need with columns beginning at x.
func (s *search) count(x float64, rows [][]span) int {
	n := 0
	for _, row := range rows {
		s.cover(x, row, func(int) { n++ })
	}
	return n
}

// cover calls use for every column needed to show a row: from the left, each
// time the window that begins last and still shows what is not yet shown.
func (s *search) cover(x float64, row []span, use func(column int)) {
	reached := math.Inf(-1)
	last := math.MinInt
	for _, sp := range row {
		from := math.Max(sp.from, reached)
		for sp.to > reached+Slack {
			i := max(int(math.Floor((from-x+Slack)/s.pitch.X)), last+1)
			use(i)
			last, reached = i, x+float64(i)*s.pitch.X+s.size.X
			from = reached
		}
	}
}

// play is how far the columns may be moved with the same windows still
// showing everything; half of the way between the limits is returned.
func (s *search) play(g *grid, rows [][]span) float64 {
	low, high := math.Inf(-1), math.Inf(1)
	for j, row := range rows {
		var used []int
		for _, c := range g.cells {
			if c.row == j {
				used = append(used, c.column)
			}
		}
		// Runs of neighbouring windows each show some of the stretches.
		for a := 0; a < len(used); {
			b := a
			for b+1 < len(used) && used[b+1] == used[b]+1 {
				b++
			}
			from := g.origin.X + float64(used[a])*s.pitch.X
			to := g.origin.X + float64(used[b])*s.pitch.X + s.size.X
			for _, sp := range row {
				if sp.to < from-Slack || sp.from > to+Slack {
					continue
				}
				high = math.Min(high, math.Max(sp.from, from)-from)
				low = math.Max(low, math.Min(sp.to, to)-to)
			}
			a = b + 1
		}
	}
	if low > high || math.IsInf(low, 0) || math.IsInf(high, 0) {
		return 0
	}
	return (low + high) / 2
}
