package turn_test

import (
	"math"
	"testing"

	sf "github.com/peterstace/simplefeatures/geom"
	"pgregory.net/rapid"

	"stepoff/layout/geom"
	"stepoff/layout/turn"
)

// arcPieces is how many chords an arc of a tread is broken into for the library,
// which knows straight edges only.
const arcPieces = 64

// tile is an outline as the library has it, arcs broken into chords.
func tile(t *rapid.T, p geom.Path) sf.Polygon {
	var xy []float64
	for _, e := range p.Edges {
		n := 1
		if e.IsArc() {
			n = arcPieces
		}
		for k := range n {
			at := e.At(float64(k) / float64(n))
			xy = append(xy, at.X, at.Y)
		}
	}
	xy = append(xy, xy[0], xy[1])
	poly := sf.NewPolygon([]sf.LineString{sf.NewLineString(sf.NewSequence(xy, sf.DimXY))})
	if err := poly.Validate(); err != nil {
		t.Fatalf("no outline: %v", err)
	}
	return poly
}

// tiling is how near areas have to come, as a share of them.
const tiling = 1e-9

// testTiles holds treads against the whole they have to fill: their areas add up,
// no two overlap, and together they are the whole, neither more nor less.
func testTiles(t *rapid.T, l *turn.Laid, whole float64) {
	sum := 0.0
	var tiles []sf.Geometry
	for _, tread := range l.Treads {
		one := tile(t, tread.Outline)
		sum += one.Area()
		tiles = append(tiles, one.AsGeometry())
	}
	if math.Abs(sum-whole) > tiling*whole {
		t.Errorf("the treads add up to %g of %g", sum, whole)
	}
	for k := range tiles {
		for j := range k {
			both, err := sf.Intersection(tiles[k], tiles[j])
			if err != nil {
				t.Fatal(err)
			}
			if over := both.Area(); over > tiling*whole {
				t.Errorf("treads %d and %d overlap by %g", j+1, k+1, over)
			}
		}
	}
}

// The treads of a turn of winders tile it, held against an independent library of
// plane geometry: whatever its width, angle, hand, lines, count and set-back. Its
// area is that of the wedge, w^2 tan(angle/2), and of two strips.
func TestWindersTile(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := winders(rapid.Float64Range(20, 80).Draw(t, "width"), rapid.IntRange(2, 5).Draw(t, "treads"),
			rapid.Float64Range(0, 2).Draw(t, "overhang"), rapid.Bool().Draw(t, "even"))
		w.Angle = rapid.OneOf(rapid.Float64Range(45, 90), rapid.SampledFrom([]float64{45, 60, 90})).Draw(t, "angle")
		w.Hand = rapid.SampledFrom([]turn.Hand{turn.Left, turn.Right}).Draw(t, "hand")
		setback := rapid.OneOf(rapid.Float64Range(0, 600), rapid.Just(0.0)).Draw(t, "setback")
		l := w.At(turn.Start, setback)
		whole := w.Width*w.Width*math.Tan(w.Angle*math.Pi/360) + 2*setback*w.Width
		testTiles(t, l, whole)
		if area := tile(t, l.Outline()).Area(); math.Abs(area-whole) > tiling*whole {
			t.Errorf("the turn's outline encloses %g of %g", area, whole)
		}
	})
}

// The treads of a curve tile it likewise. Broken into n chords, an arc of the
// angle f encloses with its centre n r^2 sin(f/n) / 2.
func TestCurveTiles(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := turn.Curve{
			Hand: rapid.SampledFrom([]turn.Hand{turn.Left, turn.Right}).Draw(t, "hand"), Angle: rapid.Float64Range(10, 350).Draw(t, "angle"),
			Treads: rapid.IntRange(2, 12).Draw(t, "treads"), Inside: rapid.Float64Range(300, 6000).Draw(t, "inside"),
			Width: rapid.Float64Range(600, 1800).Draw(t, "width"), Overhang: rapid.Float64Range(0, 50).Draw(t, "overhang"),
			Depths: turn.Depths{Walklines: []float64{304.8}},
		}
		outside := v.Inside + v.Width
		chord := v.Angle * math.Pi / 180 / float64(v.Treads*arcPieces)
		whole := float64(v.Treads*arcPieces) / 2 * (outside*outside - v.Inside*v.Inside) * math.Sin(chord)
		testTiles(t, v.At(turn.Start), whole)
	})
}
