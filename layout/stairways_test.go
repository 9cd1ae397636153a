package layout_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"stepoff/layout"
	"stepoff/layout/geom"
	"stepoff/spec"
	"stepoff/spec/measure"
)

// members draws the stairway of a job: flights and landings in turn. Turns are
// written L and R, to be put into words, or to be swapped first.
func members(t *rapid.T) string {
	word := func(name string, words ...string) string { return rapid.SampledFrom(words).Draw(t, name) }
	flight := func() string {
		return fmt.Sprintf("{flight: {risers: %d, run: %dmm}}", rapid.IntRange(1, 9).Draw(t, "risers"), rapid.IntRange(220, 330).Draw(t, "run"))
	}
	all := []string{flight()}
	for range rapid.IntRange(1, 4).Draw(t, "landings") {
		angle, more := word("angle", "0", "90", "180"), ""
		more += fmt.Sprintf(", length: %dmm", 900+rapid.IntRange(0, 400).Draw(t, "longer"))
		switch angle {
		case "0":
			more = fmt.Sprintf("turn: none, width: %dmm, side: %s, joists: 2x4", 900+rapid.IntRange(0, 400).Draw(t, "wider"), word("side", "L", "R", "middle")) + more
		case "90":
			more = fmt.Sprintf("turn: %s, width: %dmm, joists: 2x4, side: %s", word("hand", "L", "R"), 900+rapid.IntRange(0, 400).Draw(t, "wider"), word("side", "inside", "outside", "middle", "L", "R")) + more
		case "180":
			gap := rapid.IntRange(0, 600).Draw(t, "gap")
			more = fmt.Sprintf("turn: %s, angle: 180, gap: %dmm, width: %dmm, joists: 2x4, side: %s", word("hand", "L", "R"), gap, 1800+gap+rapid.IntRange(0, 300).Draw(t, "wider"), word("side", "inside", "outside", "middle")) + more
		}
		all = append(all, "{landing: {"+more+"}}", flight())
	}
	return "[" + strings.Join(all, ", ") + "]"
}

var (
	inWords  = strings.NewReplacer(" L,", " left,", " R,", " right,")
	mirrored = strings.NewReplacer(" L,", " right,", " R,", " left,")
)

const landingsJob = `
units: metric
code: none
levels: {total_rise: %dmm}
width: 900mm
stairway: %s
tread: {thickness: 30mm, nosing: %dmm}
riser: {thickness: 18mm}
stringer: {stock: {width: 400mm, thickness: 40mm}}
saw: {blade: 190mm}
`

// lay lays a job out. The stringers of a random stair may not be sawable; that
// is another test's business, and such a one is passed over.
func lay(t *rapid.T, text string) *layout.Stairway {
	job, err := spec.Load("job.yaml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	s, err := layout.Compute(job)
	if err != nil {
		t.Skip(err)
	}
	return s
}

// Of any list of flights and landings: the risers add up, the levels follow each
// other without a step and end at the total rise exactly, and in plan every
// member begins on the edge where the one below it ends; with one landing none
// lies over another.
func TestStairwaysHoldTogether(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := lay(t, fmt.Sprintf(landingsJob, rapid.IntRange(1500, 6000).Draw(t, "rise"), inWords.Replace(members(t)), rapid.IntRange(0, 40).Draw(t, "nosing")))
		risers, level := 0, 0.0
		for _, f := range s.Flights() {
			if f.StartLevel != level {
				t.Fatalf("%s begins at %g, and what is below it ends at %g", f.Name, f.StartLevel, level)
			}
			risers, level = risers+f.Risers, f.EndLevel
		}
		if risers != s.Risers || level != s.TotalRise.MM() {
			t.Fatalf("%d risers of %d, ending at %g of %g", risers, s.Risers, level, s.TotalRise.MM())
		}
		if over := s.Passings(); len(s.Landings()) == 1 && len(over) > 0 {
			t.Fatalf("with one landing %s lies over %s", over[0].Upper.Label(), over[0].Lower.Label())
		}
		for i, e := range s.Elements {
			l, ok := e.(*layout.Landing)
			if !ok {
				continue
			}
			lower, upper := s.Elements[i-1].(*layout.Flight), s.Elements[i+1].(*layout.Flight)
			if l.Level != lower.EndLevel || l.Level != upper.StartLevel {
				t.Fatalf("%s stands at %g, between %g and %g", l.Name, l.Level, lower.EndLevel, upper.StartLevel)
			}
			if area := geom.Area(l.Outline); math.Abs(area-l.Up*l.Across) > 1e-3 {
				t.Fatalf("%s has an area of %g, want %g counter-clockwise", l.Name, area, l.Up*l.Across)
			}
			half := s.Job.Width.MM() / 2
			for _, side := range []float64{-half, half} {
				onEdge(t, l, line(lower, lower.TotalRun, side))
				onEdge(t, l, line(upper, 0, side))
			}
			if !sameLine(l.Exit.Point(0, half), line(upper, 0, half)) || !sameLine(l.Entry.Point(0, half), line(lower, lower.TotalRun, half)) {
				t.Fatalf("%s: %+v to %+v", l.Name, l.Entry, l.Exit)
			}
		}
	})
}

// line is a point of a flight in plan: so far up, so far to the left.
func line(f *layout.Flight, up, left float64) geom.Point {
	sin, cos := math.Sincos(f.Heading * math.Pi / 180)
	return geom.Pt(f.X+up*cos-left*sin, f.Y+up*sin+left*cos)
}

// planExact is what two ways of reckoning a place in plan may differ by: sums of
// a dozen float64 of ten metres.
const planExact = 1e-8

func sameLine(p, q geom.Point) bool {
	return math.Abs(p.X-q.X) < planExact && math.Abs(p.Y-q.Y) < planExact
}

func onEdge(t *rapid.T, l *layout.Landing, p geom.Point) {
	for i, a := range l.Outline {
		if geom.Distance(p, a, l.Outline[(i+1)%len(l.Outline)]) < planExact {
			return
		}
	}
	t.Fatalf("%v is not on the edge of %s: %v", p, l.Name, l.Outline)
}

// Changing every left for right gives the mirror image, exactly, framing and
// all.
func TestTurnsMirrorTheStair(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		drawn, rise := members(t), rapid.IntRange(1500, 6000).Draw(t, "rise")
		s := lay(t, fmt.Sprintf(landingsJob, rise, inWords.Replace(drawn), 20))
		m := lay(t, fmt.Sprintf(landingsJob, rise, mirrored.Replace(drawn), 20))
		for i := range s.Elements {
			one, other := corners(s.Elements[i], 1), corners(m.Elements[i], -1)
			if !slices.Equal(one, other) {
				t.Fatalf("%s: %v\nmirrored: %v", s.Elements[i].Label(), one, other)
			}
		}
	})
}

// corners are the corners of a member's outline in a fixed order, x times sign.
func corners(e layout.Element, sign float64) []geom.Point {
	var outline []geom.Point
	switch e := e.(type) {
	case *layout.Flight:
		outline = append([]geom.Point{geom.Pt(e.X, e.Y)}, e.Outline...)
	case *layout.Landing:
		outline = e.Outline
		if e.Frame != nil {
			outline = append(outline[:len(outline):len(outline)], e.Frame.Outline...)
		}
	}
	var all []geom.Point
	for _, p := range outline {
		all = append(all, geom.Pt(sign*p.X+0, p.Y+0)) // + 0: no -0
	}
	slices.SortFunc(all, func(a, b geom.Point) int {
		if a.X != b.X {
			return map[bool]int{true: -1, false: 1}[a.X < b.X]
		}
		return map[bool]int{true: -1, false: 1}[a.Y < b.Y]
	})
	return all
}

// The stairs that houses have do not lie over themselves: an L with its landing
// after three risers, a U whose flights touch and one with them 18 in apart, a
// double L with a middle flight of two risers or of one; either hand.
func TestPlainStairsDoNotOverlap(t *testing.T) {
	for _, c := range []string{
		`[{flight: {risers: 3, run: 10"}}, {landing: {turn: L, joists: 2x8}}, {flight: {risers: 11, run: 10"}}]`,
		`[{flight: {risers: 7, run: 10"}}, {landing: {turn: L, angle: 180, joists: 2x8}}, {flight: {risers: 7, run: 10"}}]`,
		`[{flight: {risers: 7, run: 10"}}, {landing: {turn: L, angle: 180, gap: 18", joists: 2x8}}, {flight: {risers: 7, run: 10"}}]`,
		`[{flight: {risers: 6, run: 10"}}, {landing: {turn: L, joists: 2x8}}, {flight: {risers: 2, run: 10"}}, {landing: {turn: L, joists: 2x8}}, {flight: {risers: 6, run: 10"}}]`,
		`[{flight: {risers: 7, run: 10"}}, {landing: {turn: L, joists: 2x8}}, {flight: {risers: 1, run: 10"}}, {landing: {turn: L, joists: 2x8}}, {flight: {risers: 6, run: 10"}}]`,
		`[{flight: {risers: 7, run: 10"}}, {landing: {turn: none, joists: 2x8}}, {flight: {risers: 7, run: 10"}}]`,
	} {
		for _, hand := range []string{"left", "right"} {
			s := compute(t, stair(map[string]string{"stairway": strings.ReplaceAll(c, "turn: L", "turn: "+hand)}))
			if over := s.Passings(); len(over) > 0 {
				t.Errorf("%s: %s lies over %s: %+v", c, over[0].Upper.Label(), over[0].Lower.Label(), over[0])
			}
			for _, l := range s.Landings() {
				if l.Frame == nil || !geom.Simple(l.Frame.Outline) || geom.Area(l.Frame.Outline) < geom.Area(l.Outline)-exact {
					t.Errorf("%s: the framing of %s is no outline round it: %v", c, l.Name, l.Frame)
				}
			}
		}
	}
}

// A flight of one riser between two landings has no stringer and no outline, and
// is counted.
func TestFlightOfOneRiser(t *testing.T) {
	s := compute(t, stair(map[string]string{"stairway": `[{flight: {risers: 7, run: 10"}}, {landing: {turn: left}}, {flight: {risers: 1, run: 10"}}, {landing: {turn: left}}, {flight: {risers: 6, run: 10"}}]`}))
	f := s.Flights()[1]
	if len(f.Stringers) != 0 || f.Outline != nil || f.Risers != 1 || s.Risers != 14 {
		t.Errorf("flight-2: %d stringers, outline %v, %d risers of %d", len(f.Stringers), f.Outline, f.Risers, s.Risers)
	}
	near(t, "landing-2", s.Landings()[1].Level, 60)
}

// An L by hand: 4 risers of 7 1/2 by 10, 36 in wide, riser board 3/4, nosing 1,
// so that the upper flight's first riser line stands 1 3/4 past the lower
// flight's edge. Framing 3/4 under the finished level.
func TestLByHand(t *testing.T) {
	s := compute(t, stair(map[string]string{"stairway": `[{flight: {risers: 4, run: 10"}}, {landing: {turn: left, finish: 3/4", joists: 2x8, on: legs}}, {flight: {risers: 10, run: 10"}}]`}))
	l, f := s.Landings()[0], s.Flights()[1]
	near(t, "level", l.Level, 30)
	near(t, "framing level", l.FramingLevel, 29.25)
	for i, want := range []geom.Point{{X: 18, Y: 30}, {X: 18, Y: 66}, {X: -19.75, Y: 66}, {X: -19.75, Y: 30}} {
		near(t, "outline x", l.Outline[i].X, want.X)
		near(t, "outline y", l.Outline[i].Y, want.Y)
	}
	near(t, "flight-2 x", f.X, -19.75)
	near(t, "flight-2 y", f.Y, 48)
	if f.Heading != 180 {
		t.Errorf("flight-2 heads %g", f.Heading)
	}
	// Seat of flight-2: 11 1/4 / cos - 6, times 10 / 7 1/2, on its sheathing with
	// 3/4 of finish to come.
	g := f.Stringers[0]
	near(t, "first riser cut", g.FirstRiserCut, 7.5-1.5+0.75)
	seat := (11.25/0.8 - 6.75) * 10 / 7.5
	near(t, "seat", g.SeatCut, seat)
	near(t, "framed on", l.Frame.Seat, seat)
	// Joists 7 1/4 under sheathing of 3/4.
	near(t, "top of joists", l.Frame.Top, 28.5)
	near(t, "underside", l.Frame.Bottom, 21.25)
	for _, p := range l.Frame.Pieces {
		want, known := map[string]float64{"rim": 37.75 + seat, "joist": 33, "leg": 21.25, "sheathing": 37.75 + seat}[p.Part]
		if !known {
			t.Errorf("%s is not wanted", p.Part)
		}
		near(t, p.Part, p.Length, want)
	}
}

// The plumb cut of the flight below bears on the landing's rim: 9 to 15 9/16
// under the finished landing, and the rim from 1 1/2 to 10 3/4 with a 2x10.
func TestBearingOnALanding(t *testing.T) {
	s := compute(t, stair(map[string]string{"stairway": `[{flight: {risers: 7, run: 10"}}, {landing: {turn: left, finish: 3/4", joists: 2x10}}, {flight: {risers: 7, run: 10"}}]`}))
	near(t, "contact", *s.Flights()[0].Stringers[0].HeadContact, 10.75-9)
	if s.Flights()[1].Stringers[0].HeadContact != nil {
		t.Error("the upper floor's header is not stated, yet it bears")
	}
}

// A stair that winds round and over its own start: half turn after half turn.
// The third flight lies over the first, two flights of 7 risers higher: 105 in
// plumb from riser line to riser line, less what is under it.
func TestPassingOverItself(t *testing.T) {
	s := compute(t, stair(map[string]string{"levels": `{total_rise: 157 1/2"}`, "stairway": `[{flight: {risers: 7, run: 10"}}, {landing: {turn: left, angle: 180}}, {flight: {risers: 7, run: 10"}}, {landing: {turn: left, angle: 180}}, {flight: {risers: 7, run: 10"}}]`}))
	for _, p := range s.Passings() {
		if p.Upper.Label() == "flight-3" && p.Lower.Label() == "flight-1" {
			// The landing's sheathing, 3/4 under its level of 105, runs on under the
			// seat of flight-3, to where the nosing line of flight-1 is 7 1/2 and
			// (seat + 1 3/4) x 3/4 high. Past it the underside is 11 1/4 / cos under the
			// line through the tips, 1 1/2 and 1 3/4 x 3/4 under the nosing line: 3/4 higher.
			seat := (11.25/0.8 - 6) * 10 / 7.5
			near(t, "headroom", p.Headroom, 105-0.75-7.5-(seat+1.75)*0.75)
			return
		}
	}
	t.Errorf("flight-3 does not lie over flight-1: %+v", s.Passings())
}

// What of the upper floor is to be open over the last flight is, for a straight
// stair, what the opening's length says.
func TestOpeningInPlanIsThatOfAStraightFlight(t *testing.T) {
	asked := 80 * measure.Inch
	s := compute(t, stair(map[string]string{"levels": `{total_rise: 105", floor_depth: 11"}`}))
	open := s.OpeningInPlan(asked.MM())
	if len(open) != 1 {
		t.Fatalf("open over %d members", len(open))
	}
	near(t, "long", open[0].Long, *s.Headroom(&asked).OpeningNeeded/in)
}

// Where the ceiling is lower than the headroom over the lower floor itself, no
// opening is named: neither its length nor its outline.
func TestNoOpeningUnderALowCeiling(t *testing.T) {
	asked := 95 * measure.Inch
	s := compute(t, stair(map[string]string{"levels": `{total_rise: 105", floor_depth: 11"}`}))
	if open, h := s.OpeningInPlan(asked.MM()), s.Headroom(&asked); open != nil || h.OpeningNeeded != nil {
		t.Errorf("open %v, needed %v", open, h.OpeningNeeded)
	}
}

// A landing that is built parts the stair: each part shares its own rise, and
// the levels meet exactly.
func TestBuiltLanding(t *testing.T) {
	s := compute(t, stair(map[string]string{"stairway": `[{flight: {risers: 7, run: 10"}}, {landing: {turn: left, built_level: 50"}}, {flight: {risers: 7, run: 10"}}]`}))
	if _, one := s.UnitRise(); one || len(s.Parts) != 2 {
		t.Errorf("%d parts", len(s.Parts))
	}
	f := s.Flights()
	near(t, "below", f[0].UnitRise, 50.0/7)
	near(t, "above", f[1].UnitRise, 55.0/7)
	if f[0].EndLevel != (50*measure.Inch).MM() || s.Level(7) != (50*measure.Inch).MM() || s.Level(14) != (105*measure.Inch).MM() {
		t.Errorf("levels %g, %g, %g", f[0].EndLevel, s.Level(7), s.Level(14))
	}
}
