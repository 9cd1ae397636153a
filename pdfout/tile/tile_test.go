package tile_test

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	gocmp "github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"stepoff/layout/geom"
	"stepoff/pdfout/tile"
)

const in = 25.4

// board is what a saw follows on a board of a width with n notches of a rise
// and run cut into its upper edge, which lies on y = 0: a plumb and a level
// cut at the foot, the notches, a plumb cut at the head. The board's own edges
// are not in it.
func board(n int, rise, run, width float64) []geom.Edge {
	step := math.Hypot(rise, run)
	cos, sin := run/step, rise/step
	level := func(p geom.Point, d float64) geom.Point { return geom.Pt(p.X+d*cos, p.Y-d*sin) }
	plumb := func(p geom.Point, d float64) geom.Point { return geom.Pt(p.X+d*sin, p.Y+d*cos) }
	tip := geom.Pt(0, 0)
	foot := plumb(tip, -(rise - 1.5*in))
	seat := level(foot, (width+foot.Y)/sin)
	pts := []geom.Point{seat, foot, tip}
	for range n {
		root := level(tip, run)
		tip = plumb(root, rise)
		pts = append(pts, root, tip)
	}
	pts = pts[:len(pts)-1]
	root := pts[len(pts)-1]
	return geom.Polyline(append(pts, plumb(root, -(width+root.Y)/cos))...).Edges
}

// paper is a sheet's printable size, inside margins of 1/4 in, each way round.
type paper struct {
	name  string
	sizes []geom.Point
}

func sheet(name string, w, h float64) paper {
	w, h = w-in/2, h-in/2
	return paper{name, []geom.Point{{X: w, Y: h}, {X: h, Y: w}}}
}

var papers = []paper{
	sheet("letter", 8.5*in, 11*in), sheet("legal", 8.5*in, 14*in), sheet("tabloid", 11*in, 17*in),
	sheet("A4", 210, 297), sheet("A3", 297, 420),
}

const overlap = in / 2

// boards are forty boards of many kinds: rises of 5 1/2 to 8 1/4, runs of 9 to
// 14, two to seventeen notches, 2x10 and 2x12.
func boards() [][]geom.Edge {
	var all [][]geom.Edge
	for i := range 40 {
		n := 2 + (i*7)%16
		rise := 5.5 + 2.75*float64((i*11)%40)/39
		run := 9 + 5*float64((i*17)%40)/39
		all = append(all, board(n, rise*in, run*in, []float64{9.25, 11.25}[i%2]*in))
	}
	return all
}

// lay lays a drawing and fails on an error.
func lay(t testing.TB, edges []geom.Edge, sizes []geom.Point, overlap float64) tile.Layout {
	t.Helper()
	l, err := tile.Lay(edges, sizes, overlap)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// checkCovers samples the edges: every place is on some window.
func checkCovers(t rapid.TB, edges []geom.Edge, l tile.Layout) {
	t.Helper()
	for i, e := range edges {
		n := max(4, int(e.Length()))
		for k := range n + 1 {
			at := e.At(float64(k) / float64(n))
			covered := false
			for _, w := range l.Tiles {
				covered = covered || w.Window.Contains(at, 2*tile.Slack)
			}
			if !covered {
				t.Fatalf("edge %d at (%.4f, %.4f) is on no sheet", i, at.X, at.Y)
			}
		}
	}
}

// checkGrid: all windows have the size chosen and lie on one grid, and no two
// have one place.
func checkGrid(t rapid.TB, l tile.Layout, sizes []geom.Point, overlap float64) {
	t.Helper()
	size := sizes[l.Size]
	first := l.Tiles[0]
	seen := map[[2]int]bool{}
	for _, w := range l.Tiles {
		if seen[[2]int{w.Column, w.Row}] || w.Column < 0 || w.Row < 0 || w.Column >= l.Columns || w.Row >= l.Rows {
			t.Fatalf("column %d, row %d of %d x %d", w.Column, w.Row, l.Columns, l.Rows)
		}
		seen[[2]int{w.Column, w.Row}] = true
		if math.Abs(w.Window.Width()-size.X) > 1e-9 || math.Abs(w.Window.Height()-size.Y) > 1e-9 {
			t.Fatalf("a window of %g x %g for sheets of %v", w.Window.Width(), w.Window.Height(), size)
		}
		x := first.Window.Min.X + float64(w.Column-first.Column)*(size.X-overlap)
		y := first.Window.Min.Y - float64(w.Row-first.Row)*(size.Y-overlap)
		if math.Abs(w.Window.Min.X-x) > 1e-9 || math.Abs(w.Window.Min.Y-y) > 1e-9 {
			t.Fatalf("column %d, row %d is off the grid", w.Column, w.Row)
		}
	}
}

// plain is how many sheets the plain grid takes: rows and columns begun at a
// corner of the drawing, one way round, the sheets on which nothing falls left
// out; the best of the corners and ways.
func plain(edges []geom.Edge, sizes []geom.Point, overlap float64) int {
	b := geom.EmptyBox()
	for _, e := range edges {
		b = b.Union(e.Box())
	}
	best := math.MaxInt
	for _, size := range sizes {
		px, py := size.X-overlap, size.Y-overlap
		columns := max(1, int(math.Ceil((b.Width()-overlap)/px-1e-9)))
		rows := max(1, int(math.Ceil((b.Height()-overlap)/py-1e-9)))
		for corner := range 4 {
			used := 0
			for c := range columns {
				for r := range rows {
					x, y := b.Min.X+float64(c)*px, b.Min.Y+float64(r)*py
					if corner&1 != 0 {
						x = b.Max.X - size.X - float64(c)*px
					}
					if corner&2 != 0 {
						y = b.Max.Y - size.Y - float64(r)*py
					}
					if shows(edges, geom.Box{Min: geom.Pt(x, y), Max: geom.Pt(x+size.X, y+size.Y)}) {
						used++
					}
				}
			}
			best = min(best, used)
		}
	}
	return best
}

// shows tells whether anything falls on a window: more than touches it.
func shows(edges []geom.Edge, w geom.Box) bool {
	for _, e := range edges {
		for _, part := range tile.Edges([]geom.Edge{e}, w) {
			if part.Length() > 4*tile.Slack || e.Length() <= 4*tile.Slack {
				return true
			}
		}
	}
	return false
}

// bound is a number of sheets below which nothing can go, on a grid or not.
// For each way round it is the larger of two, and the way that needs fewer
// counts.
//
// Places: no sheet shows two places of the cuts that are further apart along x
// than it is wide, or along y than it is high. So any set of places of which
// that holds for every two needs a sheet each.
//
// Length: the cuts here hang together, from one end of the board to the other.
// Sheets that show all of it and share the overlap where they meet are, put end
// to end, as long as it and the overlaps: n*w >= l + (n-1)*o.
func bound(edges []geom.Edge, sizes []geom.Point, overlap float64) int {
	var places []geom.Point
	b := geom.EmptyBox()
	for _, e := range edges {
		b = b.Union(e.Box())
		n := max(2, int(e.Length()/2))
		for k := range n + 1 {
			places = append(places, e.At(float64(k)/float64(n)))
		}
	}
	best := math.MaxInt
	for _, size := range sizes {
		most := max(1, int(math.Ceil((b.Width()-overlap)/(size.X-overlap)-1e-9)), int(math.Ceil((b.Height()-overlap)/(size.Y-overlap)-1e-9)))
		// Sets are picked greedily, along x from either end. Whether the ends
		// of the cuts low on the board are picked first or not makes a
		// difference; the largest set counts.
		var ends []geom.Point
		for _, p := range places {
			if p.Y < b.Min.Y+1e-6 {
				ends = append(ends, p)
			}
		}
		for first := range len(ends) + 2 {
			for _, way := range []float64{1, -1} {
				picked := 0
				left := append([]geom.Point(nil), places...)
				pick := func(p geom.Point) {
					picked++
					var rest []geom.Point
					for _, q := range left {
						if math.Abs(q.X-p.X) > size.X || math.Abs(q.Y-p.Y) > size.Y {
							rest = append(rest, q)
						}
					}
					left = rest
				}
				chosen := ends
				if first < len(ends) {
					chosen = ends[first : first+1]
				} else if first == len(ends) {
					chosen = nil
				}
				for _, p := range chosen {
					if slices.Contains(left, p) {
						pick(p)
					}
				}
				for len(left) > 0 {
					pick(slices.MinFunc(left, func(p, q geom.Point) int {
						return cmp.Or(cmp.Compare(p.X*way, q.X*way), cmp.Compare(q.Y, p.Y))
					}))
				}
				most = max(most, picked)
			}
		}
		best = min(best, most)
	}
	return best
}

// TestBoards: forty boards on five papers, everything shown, on a grid, in no
// more sheets than the plain grid and no fewer than can be; together no more
// than a tenth above those below which nothing can go.
func TestBoards(t *testing.T) {
	used, least := 0, 0
	for _, p := range papers {
		for i, edges := range boards() {
			l := lay(t, edges, p.sizes, overlap)
			checkCovers(t, edges, l)
			checkGrid(t, l, p.sizes, overlap)
			if most := plain(edges, p.sizes, overlap); len(l.Tiles) > most {
				t.Errorf("%s, board %d: %d sheets, the plain grid takes %d", p.name, i, len(l.Tiles), most)
			}
			must := bound(edges, p.sizes, overlap)
			if len(l.Tiles) < must {
				t.Errorf("%s, board %d: %d sheets, fewer than the %d there must be", p.name, i, len(l.Tiles), must)
			}
			used, least = used+len(l.Tiles), least+must
		}
	}
	if ratio := float64(used) / float64(least); ratio > 1.10 {
		t.Errorf("%d sheets, the bound is %d: %.3f", used, least, ratio)
	}
}

// BenchmarkSheets is how long laying a board takes, with a table of the sheets
// used beside the plain grid's and the bound.
func BenchmarkSheets(b *testing.B) {
	var table strings.Builder
	fmt.Fprintf(&table, "forty boards\n%-8s %8s %8s %8s %8s\n", "paper", "sheets", "plain", "bound", "ratio")
	for _, p := range papers {
		used, grid, least := 0, 0, 0
		for _, edges := range boards() {
			used += len(lay(b, edges, p.sizes, overlap).Tiles)
			grid += plain(edges, p.sizes, overlap)
			least += bound(edges, p.sizes, overlap)
		}
		fmt.Fprintf(&table, "%-8s %8d %8d %8d %8.3f\n", p.name, used, grid, least, float64(used)/float64(least))
	}
	b.Log(table.String())
	all := boards()
	for i := 0; b.Loop(); i++ {
		lay(b, all[i%len(all)], papers[i%len(papers)].sizes, overlap)
	}
}

// TestAnyDrawing: lines and arcs anywhere are shown whole, in no more sheets
// than the plain grid.
func TestAnyDrawing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		num := rapid.Float64Range(-1500, 1500)
		var edges []geom.Edge
		for range rapid.IntRange(1, 12).Draw(t, "edges") {
			if rapid.Bool().Draw(t, "arc") {
				edges = append(edges, geom.Arc(geom.Pt(num.Draw(t, "x"), num.Draw(t, "y")), rapid.Float64Range(5, 3000).Draw(t, "r"),
					rapid.Float64Range(-4, 4).Draw(t, "start"), rapid.Float64Range(-6.2, 6.2).Draw(t, "sweep")))
				continue
			}
			edges = append(edges, geom.Line(geom.Pt(num.Draw(t, "x0"), num.Draw(t, "y0")), geom.Pt(num.Draw(t, "x1"), num.Draw(t, "y1"))))
		}
		sizes := rapid.SampledFrom(papers).Draw(t, "paper").sizes
		over := rapid.SampledFrom([]float64{0, overlap, 30}).Draw(t, "overlap")
		l, err := tile.Lay(edges, sizes, over)
		if err != nil {
			t.Fatal(err)
		}
		checkCovers(t, edges, l)
		checkGrid(t, l, sizes, over)
		if most := plain(edges, sizes, over); len(l.Tiles) > most {
			t.Fatalf("%d sheets, the plain grid takes %d", len(l.Tiles), most)
		}
		again, err := tile.Lay(edges, sizes, over)
		if err != nil {
			t.Fatal(err)
		}
		if diff := gocmp.Diff(l, again); diff != "" {
			t.Fatalf("laid twice, not the same: %s", diff)
		}
	})
}

// TestOnTheBorder: what reaches a window's very side, with whatever rounding
// made of it, needs no further sheet and is shown whole.
func TestOnTheBorder(t *testing.T) {
	size := []geom.Point{{X: 200, Y: 100}}
	for _, off := range []float64{0, 1e-9, -1e-9, tile.Slack / 2} {
		for _, c := range []struct {
			name  string
			box   geom.Point
			tiles int
		}{{"one sheet", geom.Pt(200+off, 100+off), 1}, {"two columns", geom.Pt(390+off, 100), 2}, {"two rows", geom.Pt(200, 190+off), 2}} {
			for _, at := range []geom.Point{{}, {X: 1234.5678, Y: -987.6543}} {
				edges := geom.Rect(geom.Box{Min: at, Max: geom.Pt(at.X+c.box.X, at.Y+c.box.Y)}).Edges
				l := lay(t, edges, size, 10)
				if len(l.Tiles) != c.tiles {
					t.Errorf("%s, %g over: %d sheets, want %d", c.name, off, len(l.Tiles), c.tiles)
				}
				total := 0.0
				for _, w := range l.Tiles {
					for _, e := range tile.Edges(edges, w.Window) {
						total += e.Length()
					}
				}
				if around := 2 * (c.box.X + c.box.Y); total < around-4*tile.Slack {
					t.Errorf("%s, %g over: %.6f mm of %.6f are shown", c.name, off, total, around)
				}
			}
		}
	}
}

// TestKnown holds small cases against what can be counted by hand.
func TestKnown(t *testing.T) {
	sizes := []geom.Point{{X: 200, Y: 100}, {X: 100, Y: 200}}
	line := func(x0, y0, x1, y1 float64) geom.Edge { return geom.Line(geom.Pt(x0, y0), geom.Pt(x1, y1)) }
	for _, c := range []struct {
		name  string
		edges []geom.Edge
		tiles int
		size  int
	}{
		{"a level line", []geom.Edge{line(0, 0, 200, 0)}, 1, 0},
		{"an upright line turns the sheet", []geom.Edge{line(0, 0, 0, 200)}, 1, 1},
		{"two sheets share 10", []geom.Edge{line(0, 0, 390, 0)}, 2, 0},
		{"a little longer takes three", []geom.Edge{line(0, 0, 391, 0)}, 3, 0},
		{"nothing between two ends", []geom.Edge{line(0, 0, 10, 0), line(1000, 0, 1010, 0)}, 2, 0},
		{"the grid slides to gather two marks", []geom.Edge{line(0, 0, 0, 10), line(195, 85, 195, 95)}, 1, 0},
		{"a dot", []geom.Edge{line(5, 5, 5, 5)}, 1, 0},
	} {
		l := lay(t, c.edges, sizes, 10)
		if len(l.Tiles) != c.tiles || l.Size != c.size {
			t.Errorf("%s: %d sheets of size %d, want %d of %d", c.name, len(l.Tiles), l.Size, c.tiles, c.size)
		}
	}
	// One sheet stands evenly about what it shows.
	w := lay(t, geom.Rect(geom.Box{Max: geom.Pt(150, 60)}).Edges, sizes[:1], 10).Tiles[0].Window
	if want := (geom.Box{Min: geom.Pt(-25, -20), Max: geom.Pt(175, 80)}); math.Abs(w.Min.X-want.Min.X) > 1e-9 || math.Abs(w.Min.Y-want.Min.Y) > 1e-9 {
		t.Errorf("the sheet stands at %v, want %v", w, want)
	}
}

// TestRowsCountDownward: the upper row is the first.
func TestRowsCountDownward(t *testing.T) {
	l := lay(t, []geom.Edge{geom.Line(geom.Pt(0, 0), geom.Pt(0, 190))}, []geom.Point{{X: 200, Y: 100}}, 10)
	if len(l.Tiles) != 2 || l.Tiles[0].Row != 0 || l.Tiles[0].Window.Min.Y < l.Tiles[1].Window.Min.Y {
		t.Errorf("%+v", l.Tiles)
	}
}

// TestRefused: what cannot be laid is refused in plain words.
func TestRefused(t *testing.T) {
	good := []geom.Edge{geom.Line(geom.Pt(0, 0), geom.Pt(1, 1))}
	for _, c := range []struct {
		name, want string
		edges      []geom.Edge
		size       geom.Point
		overlap    float64
	}{
		{"nothing", "nothing in the drawing", nil, geom.Pt(200, 100), 10},
		{"not a number", "no numbers", []geom.Edge{geom.Line(geom.Pt(math.NaN(), 0), geom.Pt(1, 1))}, geom.Pt(200, 100), 10},
		{"far", "more than 5000 sheets", []geom.Edge{geom.Line(geom.Pt(0, 0), geom.Pt(1e9, 1))}, geom.Pt(200, 100), 10},
		{"wide overlap", "leaves too little", good, geom.Pt(200, 100), 60},
		{"negative overlap", "leaves too little", good, geom.Pt(200, 100), -1},
		{"no size", "leaves too little", good, geom.Pt(0, 0), 0},
	} {
		_, err := tile.Lay(c.edges, []geom.Point{c.size}, c.overlap)
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v; want it to say %q", c.name, err, c.want)
		}
	}
}
