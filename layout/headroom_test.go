package layout_test

import (
	"testing"

	"pgregory.net/rapid"

	"stepoff/layout"
	"stepoff/spec/measure"
)

// The opening by the rule (headroom + floor) / rise x run, + nosing + riser
// board: 91 x 10/7.5 + 1 3/4 = 123.083.
// Source of the rule: 98905.com, 126809 (O4 of the published cases).
func TestOpeningNeeded(t *testing.T) {
	asked := 80 * measure.Inch
	for _, c := range []struct {
		stringer string
		want     float64
	}{
		{"{stock: 2x12}", 91*10/7.5 + 1.75},
		{"{stock: 2x12, head: flush}", 91*10/7.5 + 1.75 + 10}, // a flush head adds a run
		{"{stock: 2x12, top_riser: none}", 91*10/7.5 + 1},     // the plumb cut comes forward by the board
		{`{stock: 2x12, behind_head: 1/2"}`, 91*10/7.5 + 1.25},
		{`{stock: 2x12, top_nosing: 1 1/4"}`, 91*10/7.5 + 2},
	} {
		s := compute(t, stair(map[string]string{"levels": `{total_rise: 105", floor_depth: 11"}`, "stringer": c.stringer}))
		h := s.Headroom(&asked)
		near(t, c.stringer, *h.OpeningNeeded, c.want)
		if h.Least != nil {
			t.Error("no opening is stated, yet a headroom is given")
		}
		// Through that opening the headroom is what was asked for.
		least, _ := s.Overhead().Least(*h.OpeningNeeded)
		near(t, "headroom through the opening needed", least, 80)
	}
	if compute(t, stair(nil)).Headroom(&asked) != nil {
		t.Error("the floor's depth is not stated, yet a headroom is given")
	}
}

// A floor cut back from 10 to 6 in deep at its edge gives 4 in more: 6 ft 8 in
// becomes 7 ft. Source: Architecture and Building Construction, vol 3, sections
// 26 and 27 (O3 of the published cases).
func TestThinnerFloorGivesHeadroom(t *testing.T) {
	o := layout.Overhead{Rise: 7.5 * in, Run: 10 * in, TotalRise: 105 * in, FloorDepth: 10 * in, FirstNosing: -1.75 * in, Head: 130 * in}
	opening, ok := o.OpeningFor(80 * in)
	if !ok {
		t.Fatal("no opening gives 6 ft 8 in")
	}
	o.FloorDepth = 6 * in
	least, _ := o.Least(opening)
	near(t, "headroom", least, 84)
}

// A ceiling lower than the headroom asked for over the lower floor: no opening
// helps. And where the opening ends before the stair, the floor is what there
// is to measure from.
func TestHeadroomBeforeTheStair(t *testing.T) {
	o := layout.Overhead{Rise: 7 * in, Run: 11 * in, TotalRise: 90 * in, FloorDepth: 12 * in, FirstNosing: -1 * in, Head: 100 * in}
	if _, ok := o.OpeningFor(79 * in); ok {
		t.Error("78 in under the ceiling gives no 79")
	}
	least, at := o.Least(200 * in)
	near(t, "headroom", least, 78)
	near(t, "at", at, -100)
}

// The least is the least: nowhere under the floor is there less.
func TestLeastIsLeast(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := layout.Overhead{
			Rise: rapid.Float64Range(100, 240).Draw(t, "rise"), Run: rapid.Float64Range(200, 400).Draw(t, "run"),
			TotalRise: rapid.Float64Range(500, 4000).Draw(t, "total rise"), FloorDepth: rapid.Float64Range(50, 500).Draw(t, "floor"),
			FirstNosing: -rapid.Float64Range(0, 60).Draw(t, "nosing"), Head: rapid.Float64Range(200, 6000).Draw(t, "head"),
		}
		opening := rapid.Float64Range(0, 8000).Draw(t, "opening")
		least, at := o.Least(opening)
		for back := 0.0; back < 4000; back += 37 { // what the floor covers lies behind the edge
			if there, x := o.Least(opening + back); there < least-1e-9 {
				t.Fatalf("at %g there is %g, less than %g at %g", x, there, least, at)
			}
		}
	})
}
