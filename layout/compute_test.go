package layout_test

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"stepoff/layout"
	"stepoff/spec"
	"stepoff/spec/measure"
	"stepoff/spec/source"
)

const in = 25.4 // millimetres

// stair is a job with the given changes: whole top-level lines by key.
func stair(edits map[string]string) string {
	lines := []struct{ key, value string }{
		{"units", "imperial"},
		{"code", "none"},
		{"levels", `{total_rise: 105"}`},
		{"width", `36"`},
		{"stairway", `[{flight: {risers: 14, run: 10"}}]`},
		{"tread", `{thickness: 1 1/2", nosing: 1"}`},
		{"riser", `{thickness: 3/4"}`},
		{"stringer", `{stock: 2x12}`},
		{"sides", `[wall, wall]`},
		{"saw", `{blade: 7 1/4"}`},
	}
	var b strings.Builder
	for _, l := range lines {
		v := l.value
		if e, ok := edits[l.key]; ok {
			v = e
		}
		fmt.Fprintf(&b, "%s: %s\n", l.key, v)
	}
	return b.String()
}

func near(t *testing.T, what string, got, wantInches float64) {
	t.Helper()
	if math.Abs(got-wantInches*in) > exact {
		t.Errorf("%s = %.5f in, want %.5f", what, got/in, wantInches)
	}
}

// A rise measured between rough floors: finished = rough + above - below, and
// the foot on the rough floor drops by what is laid round it.
func TestRoughRise(t *testing.T) {
	s := compute(t, stair(map[string]string{"levels": `{total_rise: 105", measured: rough, lower_finish: 3/4", upper_finish: 1/4"}`}))
	near(t, "total rise", s.TotalRise.MM(), 104.5)
	g := s.Flights()[0].Stringers[0]
	near(t, "bottom drop", g.BottomDrop, 0.75)
	// The same on the finished surface: nothing comes round the foot.
	s = compute(t, stair(map[string]string{
		"levels":   `{total_rise: 105", measured: rough, lower_finish: 3/4", upper_finish: 1/4"}`,
		"stringer": `{stock: 2x12, foot: finished}`,
	}))
	near(t, "bottom drop on the finished floor", s.Flights()[0].Stringers[0].BottomDrop, 1.5)
}

// Riser and tread boards of the two joints, worked by hand for 7 1/2 by 10,
// tread 1 1/2, nosing 1, riser board 3/4.
func TestBoards(t *testing.T) {
	type row struct {
		kind  string
		count int
		depth float64
	}
	for _, c := range []struct {
		name            string
		riser, stringer string
		want            []row
	}{
		{"behind, board above", `{thickness: 3/4", joint: behind}`, `{stock: 2x12}`,
			[]row{{"tread", 13, 11}, {"riser", 1, 6}, {"riser", 13, 7.5}}},
		{"on, board above", `{thickness: 3/4", joint: on}`, `{stock: 2x12}`,
			[]row{{"tread", 13, 11.75}, {"riser", 14, 6}}},
		{"behind, header bare", `{thickness: 3/4", joint: behind}`, `{stock: 2x12, top_riser: none}`,
			[]row{{"tread", 13, 11}, {"riser", 1, 6}, {"riser", 12, 7.5}}},
		{"on, header bare: nothing stands on the top tread", `{thickness: 3/4", joint: on}`, `{stock: 2x12, top_riser: none}`,
			[]row{{"tread", 12, 11.75}, {"tread", 1, 11}, {"riser", 13, 6}}},
		{"behind, flush: the top tread reaches the header", `{thickness: 3/4", joint: behind}`, `{stock: 2x12, head: flush}`,
			[]row{{"tread", 13, 11}, {"tread", 1, 11.75}, {"riser", 1, 6}, {"riser", 13, 7.5}}},
		{"open", `open`, `{stock: 2x12, head: flush}`, []row{{"tread", 14, 11}}},
	} {
		f := compute(t, stair(map[string]string{"riser": c.riser, "stringer": c.stringer})).Flights()[0]
		if len(f.Boards) != len(c.want) {
			t.Errorf("%s: %d rows, want %d: %+v", c.name, len(f.Boards), len(c.want), f.Boards)
			continue
		}
		for i, b := range f.Boards {
			w := c.want[i]
			if b.Kind.String() != w.kind || b.Count != w.count {
				t.Errorf("%s: row %d is %d of %s, want %d of %s", c.name, i+1, b.Count, b.Kind, w.count, w.kind)
			}
			near(t, c.name, b.Depth, w.depth)
		}
	}
}

// On a pad that slopes the first riser board is ripped for the lowest foot.
func TestFirstRiserBoardOnASlope(t *testing.T) {
	f := compute(t, stair(map[string]string{"stringer": `{stock: 2x12, foot_levels: [1/2", 0, -1/2"]}`})).Flights()[0]
	for _, b := range f.Boards {
		if b.Kind == layout.RiserBoard && b.Steps[0] == 1 {
			near(t, "first riser board", b.Depth, 6.5)
			return
		}
	}
	t.Error("no first riser board")
}

// Stringers so short that the seat runs through to the head: the plumb cut
// differs with the foot, and the text gives each its own.
func TestShortStringersOnASlope(t *testing.T) {
	s := compute(t, stair(map[string]string{"levels": `{total_rise: 15"}`, "stairway": `[{flight: {risers: 2, run: 10"}}]`,
		"stringer": `{stock: 2x12, foot_levels: [1/2", 0, -1/2"]}`}))
	for i, want := range []float64{5.5, 6, 6.5} {
		near(t, "head cut", s.Flights()[0].Stringers[i].HeadCut, want)
	}
}

// No riser board over the header: the header comes forward by the board's
// thickness, and so does the plumb cut.
func TestTopRiserNone(t *testing.T) {
	f := compute(t, stair(map[string]string{"stringer": `{stock: 2x12, top_riser: none}`})).Flights()[0]
	g := f.Stringers[0]
	near(t, "last tread cut", g.LastTread, 9.25)
	near(t, "head plumb cut from the first riser cut", g.HeadX(), 129.25)
	near(t, "head cut", g.HeadCut, 6.5625+0.75*0.75) // the board runs down 3/4 in 1
	near(t, "least blank", g.LeastBlank, 161.6-0.75*0.8)
}

// A pad that slopes across the stair: one outline for each level of the foot,
// all heads alike.
func TestFootLevels(t *testing.T) {
	f := compute(t, stair(map[string]string{"stringer": `{stock: 2x12, foot_levels: [3/8", 0, -3/8"]}`})).Flights()[0]
	if len(f.Stringers) != 3 {
		t.Fatalf("%d outlines, want 3", len(f.Stringers))
	}
	for i, want := range []float64{6 - 0.375, 6, 6 + 0.375} {
		g := f.Stringers[i]
		near(t, g.Name+" first riser cut", g.FirstRiserCut, want)
		near(t, g.Name+" head cut", g.HeadCut, 6.5625)
		near(t, g.Name+" seat", g.SeatCut, (14.0625-want)*10/7.5)
	}
	same := compute(t, stair(map[string]string{"stringer": `{stock: 2x12, foot_levels: [1/4", 0, 1/4"]}`})).Flights()[0]
	if len(same.Stringers) != 2 || len(same.Stringers[0].Positions) != 2 {
		t.Errorf("left and right alike make %d outlines, want 2, the first for two", len(same.Stringers))
	}
}

// Contact: the plumb cut of the 3-4-5 stair runs from r + t = 9 down to
// 15 9/16 below the floor when hung, from 1 1/2 to 8 1/16 when flush.
func TestHeadContact(t *testing.T) {
	for _, c := range []struct {
		stringer string
		want     float64
	}{
		{`{stock: 2x12}`, 2.25},
		{`{stock: 2x12, head: flush}`, 6.5625},
		// A ledger notch takes 3 1/2 off the bottom of the plumb cut.
		{`{stock: 2x12, head: flush, ledger: 2x4}`, 3.0625},
	} {
		s := compute(t, stair(map[string]string{
			"levels":   `{total_rise: 105", header_top: 1 1/2", header_depth: 11 1/4"}`,
			"stringer": c.stringer,
		}))
		near(t, c.stringer, *s.Flights()[0].Stringers[0].HeadContact, c.want)
	}
	if g := compute(t, stair(nil)).Flights()[0].Stringers[0]; g.HeadContact != nil {
		t.Error("no header was measured, yet a contact is given")
	}
}

// What cannot be built is refused with the place of the value to change.
func TestRefusedWithItsPlace(t *testing.T) {
	for _, c := range []struct {
		name, line, want string
		edits            map[string]string
	}{
		{"throat gone", "stringer: {stock: 2x6}", "cut through", map[string]string{"stringer": "{stock: 2x6}"}},
		{"kicker under a housed string", `stringer: {stock: 2x12, build: housed, kicker: 2x4}`, "for sawn stringers", map[string]string{"stringer": `{stock: 2x12, build: housed, kicker: 2x4}`}},
		{"blade too shallow", `saw: {blade: 7 1/4", depth: 1 1/4"}`, "does not reach through", map[string]string{"saw": `{blade: 7 1/4", depth: 1 1/4"}`}},
		{"stock too thick for the usual depth", "stringer: {stock: 4x12}", "does not reach through", map[string]string{"stringer": "{stock: 4x12}"}},
		{"landing too low for its joists", "joists: 2x12", "do not fit under a landing", map[string]string{
			"stairway": `[{flight: {risers: 1, run: 10"}}, {landing: {turn: left, joists: 2x12}}, {flight: {risers: 13, run: 10"}}]`}},
		{"landing too low for walls", "on: walls", "the plates of a wall are 4 1/2", map[string]string{
			"stairway": `[{flight: {risers: 1, run: 10"}}, {landing: {turn: left, joists: 2x4, on: walls}}, {flight: {risers: 13, run: 10"}}]`}},
		{"landing built above the upper floor", `built_level: 104 1/2"`, "does not lie between", map[string]string{
			"levels":   `{total_rise: 105", measured: rough, lower_finish: 3/4"}`,
			"stairway": `[{flight: {risers: 7, run: 10"}}, {landing: {turn: left, finish: 2", built_level: 104 1/2"}}, {flight: {risers: 7, run: 10"}}]`}},
		{"upper landing built below the lower one", `built_level: 40"`, "does not lie between", map[string]string{
			"stairway": `[{flight: {risers: 7, run: 10"}}, {landing: {turn: left, built_level: 50"}}, {flight: {risers: 3, run: 10"}}, {landing: {turn: left, built_level: 40"}}, {flight: {risers: 4, run: 10"}}]`}},
		{"ledger below its header", `stringer: {stock: 2x12, ledger: 2x4}`, "under the header", map[string]string{
			"levels": `{total_rise: 105", header_top: 1 1/2", header_depth: 11 1/4"}`, "stringer": `{stock: 2x12, ledger: 2x4}`}},
	} {
		text := stair(c.edits)
		job, err := spec.Load("job.yaml", []byte(text))
		if err != nil {
			t.Fatal(err)
		}
		_, err = layout.Compute(job)
		var bad source.Mistakes
		if !errors.As(err, &bad) || !strings.Contains(err.Error(), c.want) || !strings.Contains(err.Error(), c.line) {
			t.Errorf("%s: got %v; want a mistake that says %q and shows %q", c.name, err, c.want, c.line)
		}
	}
}

// Properties over random whole jobs: the levels end on the total rise, treads
// and risers alternate, boards cover every step once.
func TestLevelsProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		risers := rapid.IntRange(2, 24).Draw(t, "risers")
		rise := measure.Length(rapid.Int64Range(int64(risers)*100e6, int64(risers)*230e6).Draw(t, "total rise, nm"))
		head := rapid.SampledFrom([]string{"hung", "flush"}).Draw(t, "head")
		job, err := spec.Load("job.yaml", []byte(stair(map[string]string{
			"levels":   fmt.Sprintf("{total_rise: %d.%06dmm}", rise/measure.Millimetre, rise%measure.Millimetre),
			"stairway": fmt.Sprintf(`[{flight: {risers: %d, run: 11"}}]`, risers),
			"stringer": fmt.Sprintf(`{stock: {width: 14", thickness: 1 1/2"}, head: %s}`, head),
		})))
		if err != nil {
			t.Fatal(err)
		}
		s, err := layout.Compute(job)
		if err != nil {
			t.Fatal(err)
		}
		if s.TotalRise != rise || s.Level(risers) != rise.MM() {
			t.Fatalf("the top level is %v, the total rise %v", s.Level(risers), rise.MM())
		}
		f := s.Flights()[0]
		for k, level := range f.TreadLevels {
			if want := rise.MM() * float64(k+1) / float64(risers); math.Abs(level-want) > 1e-9 {
				t.Fatalf("tread %d stands at %v, want H*k/n = %v", k+1, level, want)
			}
		}
		treads, boards := 0, 0
		for _, b := range f.Boards {
			if b.Kind == layout.TreadBoard {
				treads += b.Count
			} else {
				boards += b.Count
			}
		}
		if treads != f.Treads || boards != risers {
			t.Fatalf("%d tread boards for %d treads, %d riser boards for %d risers", treads, f.Treads, boards, risers)
		}
	})
}
