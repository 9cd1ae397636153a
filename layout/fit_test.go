package layout_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"stepoff/layout"
	"stepoff/layout/geom"
	"stepoff/layout/layouttest"
	"stepoff/spec/measure"
)

// filled computes a job after what it leaves open has been chosen.
func filled(t layouttest.TB, text string) *layout.Stairway {
	t.Helper()
	s, _ := layouttest.Stairway(t, "job.yaml", text)
	return s
}

func turning(stairway, hand string) string {
	return stair(map[string]string{"code": "irc-2021", "levels": `{total_rise: 105", floor_depth: 11"}`,
		"stairway": "[" + strings.ReplaceAll(stairway, "turn: L", "turn: "+hand) + "]"})
}

// Winder and curved stairs as houses have them do not lie over themselves: an L,
// a U of two quarters, winders at the very foot and the very top, half a right
// angle, even lines, a curve, a curve between landings; either hand.
func TestTaperedStairsDoNotOverlap(t *testing.T) {
	for _, c := range []string{
		`{flight: {risers: 4, run: 10"}}, {winders: {turn: L, treads: 3}}, {flight: {risers: 8, run: 10"}}`,
		`{flight: {risers: 4, run: 10"}}, {winders: {turn: L, treads: 3}}, {flight: {risers: 1, run: 10"}}, {winders: {turn: L, treads: 3}}, {flight: {risers: 5, run: 10"}}`,
		`{flight: {risers: 1, run: 10"}}, {winders: {turn: L, treads: 3}}, {flight: {risers: 11, run: 10"}}`,
		`{flight: {risers: 11, run: 10"}}, {winders: {turn: L, treads: 3}}, {flight: {risers: 1, run: 10"}}`,
		`{flight: {risers: 6, run: 10"}}, {winders: {turn: L, treads: 2, angle: 45}}, {flight: {risers: 7, run: 10"}}`,
		`{flight: {risers: 4, run: 10"}}, {winders: {turn: L, treads: 3, lines: even}}, {flight: {risers: 8, run: 10"}}`,
		`{curve: {turn: L, risers: 14, inside_radius: 5', angle: 125}}`,
		`{curve: {turn: L, risers: 7, inside_radius: 5', angle: 60}}, {landing: {turn: L}}, {curve: {turn: L, risers: 7, inside_radius: 5', angle: 60}}`,
	} {
		for _, hand := range []string{"left", "right"} {
			s := filled(t, turning(c, hand))
			for _, p := range s.Passings() {
				t.Errorf("%s, %s: %s lies over %s: %+v", c, hand, p.Upper.Label(), p.Lower.Label(), p)
			}
		}
	}
}

// Four quarters of winders, a flight of one riser between them, come round onto
// the stair's own start: the last turn lies over the first flight. By hand, 3
// risers below, 7 1/2 by 10, tread 1 1/2, riser board and nosing 1 3/4: a round
// climbs 12 risers, the last turn's first tread is 9 above the first turn's, and
// its lowest box reaches a riser and a tread lower. The nosing line of flight-1 is
// at its last riser line 3 risers and 1 3/4 x 3/4 high.
func TestWindersOverThemselves(t *testing.T) {
	quarter := `{winders: {turn: L, treads: 3}}`
	round := strings.Join([]string{quarter, quarter, quarter, quarter}, `, {flight: {risers: 1, run: 10"}}, `)
	for _, hand := range []string{"left", "right"} {
		s := filled(t, strings.Replace(turning(`{flight: {risers: 3, run: 10"}}, `+round+`, {flight: {risers: 4, run: 10"}}`, hand), `total_rise: 105"`, `total_rise: 135"`, 1))
		found := map[string]float64{}
		for _, p := range s.Passings() {
			found[p.Upper.Label()+" over "+p.Lower.Label()] = p.Headroom
		}
		near(t, "winders-4 over flight-1", found["winders-4 over flight-1"], 9*7.5-7.5-1.5-1.75*0.75)
		if _, ok := found["flight-5 over winders-1"]; !ok {
			t.Errorf("flight-5 does not lie over winders-1: %v", found)
		}
		if _, ok := found["winders-3 over winders-2"]; ok {
			t.Errorf("turns that meet in a line lie over each other: %v", found)
		}
	}
}

// Two curves about nearly the same centre: by sampling, the least headroom is
// nowhere less than what is said; and where it is said to be, the treads there
// leave no more than that and a few rises (a place only knows what treads it is
// between).
func TestCurvesOverThemselves(t *testing.T) {
	shares := []float64{0.01, 0.2, 0.4, 0.6, 0.8, 0.99}
	rapid.Check(t, func(t *rapid.T) {
		num := func(what string, lo, hi int) int { return rapid.IntRange(lo, hi).Draw(t, what) }
		risers, radius, angle := num("risers", 12, 20), num("radius", 48, 90), num("angle", 200, 340)
		s := filled(t, strings.Replace(turning(fmt.Sprintf(`{curve: {turn: L, risers: %d, inside_radius: %d, angle: %d}}, {landing: {turn: none, length: 36"}}, {curve: {turn: L, risers: %d, inside_radius: %d, angle: %d}}`,
			risers, radius, angle, risers, radius, num("upper angle", 200, 340)), rapid.SampledFrom([]string{"left", "right"}).Draw(t, "hand")),
			`total_rise: 105"`, fmt.Sprintf(`total_rise: %d"`, 15*risers), 1))
		low, high := s.Curves()[0], s.Curves()[1]
		var said *layout.Passing
		for _, p := range s.Passings() {
			if p.Lower == low && p.Upper == high {
				said = &p
			}
		}
		overs, unders := broken(high), broken(low)
		// Underside, at most: a string's width under the tips there.
		gap := func(k, j int) float64 {
			return high.Levels[j] + high.UnitRise - s.Job.Tread.Thickness.MM() - s.Job.Stringer.Stock.Width.MM() - low.Levels[k]
		}
		for k := range low.Treads {
			front, back := low.Nosings[k], low.Nosings[k+1]
			for _, out := range shares {
				for _, on := range shares {
					p := mix(mix(front.In, front.Out, out), mix(back.In, back.Out, out), on)
					if !contains(unders[k], p) {
						continue
					}
					for j := range overs {
						switch {
						case !contains(overs[j], p):
						case said == nil:
							t.Fatal("no passing is found, yet a sample lies under the upper curve")
						case said.Headroom > gap(k, j):
							t.Fatalf("a sample has %.1f in of headroom or less, said is %.1f", gap(k, j)/in, said.Headroom/in)
						}
					}
				}
			}
		}
		if said == nil {
			return
		}
		// The place is a corner of what both share: looked for all round it.
		least := math.Inf(1)
		for turn := range 360 {
			sin, cos := math.Sincos(float64(turn) * math.Pi / 180)
			p := geom.Pt(said.At.X+cos, said.At.Y+sin)
			for k := range unders {
				for j := range overs {
					if contains(unders[k], p) && contains(overs[j], p) {
						least = min(least, gap(k, j))
					}
				}
			}
		}
		if most := 4 * low.UnitRise; !math.IsInf(least, 1) && said.Headroom < least-most {
			t.Fatalf("said are %.1f in, round that place the treads leave %.1f", said.Headroom/in, least/in)
		}
	})
}

// broken are the outlines of a curve's goings as polygons.
func broken(c *layout.Curve) (all [][]geom.Point) {
	for _, tread := range c.Treads {
		all = append(all, tread.Outline.Points(0.5))
	}
	return all
}

func mix(a, b geom.Point, f float64) geom.Point { return geom.Pt(a.X+f*(b.X-a.X), a.Y+f*(b.Y-a.Y)) }

// contains tells whether a place lies within a polygon.
func contains(ps []geom.Point, at geom.Point) bool {
	in := false
	for i, a := range ps {
		b := ps[(i+1)%len(ps)]
		if (a.Y > at.Y) != (b.Y > at.Y) && at.X < a.X+(at.Y-a.Y)/(b.Y-a.Y)*(b.X-a.X) {
			in = !in
		}
	}
	return in
}

// The floor opening over a curve of open risers without nosing is a piece of its
// ring: as long along the walkline as the opening's length says, and through that
// opening the headroom is what was asked for.
func TestOpeningOverACurve(t *testing.T) {
	asked := 80 * measure.Inch
	text := stair(map[string]string{"code": "irc-2021", "levels": `{total_rise: 105", floor_depth: 11"}`, "riser": "open", "tread": `{thickness: 1 1/2", nosing: 0}`,
		"stairway": `[{curve: {turn: right, risers: 14, inside_radius: 5', angle: 125}}]`})
	s := filled(t, text)
	c, h := s.Curves()[0], s.Headroom(&asked)
	open := s.OpeningInPlan(asked.MM())
	if len(open) != 1 || h == nil || h.OpeningNeeded == nil {
		t.Fatalf("open over %d members, headroom %+v", len(open), h)
	}
	// 105 - 11 - 80 = 14 in is as high as the nosing line may be: 14 - 7 1/2 past the
	// first nosing, of 13 treads on an arc of 72 in.
	long := 72 * 125 * math.Pi / 180 * (1 - 6.5/7.5/13)
	near(t, "opening", *h.OpeningNeeded, long)
	turned := long * in / (72 * in)
	if got, want := open[0].Outline.Area(), turned/2*(c.Outside*c.Outside-c.Inside*c.Inside); math.Abs(got-want) > 0.003*want {
		t.Errorf("it encloses %g, want %g", got, want)
	}
	arcs := 0
	for _, e := range open[0].Outline.Edges {
		if e.IsArc() {
			arcs++
		}
	}
	if arcs != 2 {
		t.Errorf("%d arcs in its outline", arcs)
	}
}

// Over winders the opening begins where the surface through the nosings is as
// high as may be: at a headroom that a nosing's level just leaves, at the riser
// line's nosing; and what is open grows with the headroom.
func TestOpeningOverWinders(t *testing.T) {
	s := filled(t, turning(`{flight: {risers: 4, run: 10"}}, {winders: {turn: L, treads: 3}}, {flight: {risers: 8, run: 10"}}`, "left"))
	w := s.Winders()[0]
	under := s.TotalRise.MM() - s.Job.Levels.FloorDepth.MM()
	before := 0.0
	for k := range w.Treads {
		for _, o := range s.OpeningInPlan(under - w.Levels[k] - 1e-3) {
			if o.Over != w {
				continue
			}
			rest := 0.0
			for _, tread := range w.Treads[k:] {
				rest += tread.Outline.Area()
			}
			// The nosing stands 1 3/4 before its riser line, the first in the flight below.
			most := rest + 1.75*in*2*w.Treads[0].Wide
			if got := o.Outline.Area(); got < rest*(1-1e-3) || got > most {
				t.Errorf("from nosing %d on %g is open, want %g to %g", k+1, got, rest, most)
			}
		}
	}
	for h := under - w.Levels[2] - w.UnitRise + 1; h < under; h += 10 {
		for _, o := range s.OpeningInPlan(h) {
			if a := o.Outline.Area(); o.Over == w {
				// The strip under the first nosing is the flight's too.
				if strip := 1.75 * in * 36 * in; a < before-strip {
					t.Fatalf("at a headroom of %g %g is open, at less %g", h, a, before)
				}
				before = a
			}
		}
	}
	if whole := w.Outline().Area(); math.Abs(before-whole) > 1e-6*whole {
		t.Errorf("in the end %g of %g is open", before, whole)
	}
}

// The footprint of a curve reaches as far as its arc bulges, not as its riser
// lines: a half turn of 8 ft outside radius takes 8 ft along and 16 across.
func TestFootprintOfACurve(t *testing.T) {
	s := filled(t, turning(`{curve: {turn: L, risers: 14, inside_radius: 5', angle: 180}}`, "left"))
	box, _ := s.Footprint()
	near(t, "along", box.Max.Y, 96)
	near(t, "across", box.Width(), 192)
}
