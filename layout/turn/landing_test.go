package turn_test

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"

	"stepoff/layout/geom"
	"stepoff/layout/turn"
)

// Landings worked by hand for flights 36 wide that end at (0, 100), heading up
// the page, and nosings 2 before their riser lines.
func TestLandingsByHand(t *testing.T) {
	entry := turn.Place{At: geom.Pt(0, 100), Heading: 90}
	for _, c := range []struct {
		name    string
		landing turn.Landing
		outline []geom.Point
		exit    turn.Place
	}{
		{"straight through: nosing to nosing is the length and the overhang",
			turn.Landing{Length: 40, Width: 36, Flight: 36, Overhang: 2},
			[]geom.Point{{X: 18, Y: 100}, {X: 18, Y: 142}, {X: -18, Y: 142}, {X: -18, Y: 100}},
			turn.Place{At: geom.Pt(0, 142), Heading: 90}},
		{"straight through, wider to the left",
			turn.Landing{Length: 40, Width: 46, Flight: 36, Overhang: 2, Aside: 1},
			[]geom.Point{{X: 18, Y: 100}, {X: 18, Y: 142}, {X: -28, Y: 142}, {X: -28, Y: 100}},
			turn.Place{At: geom.Pt(0, 142), Heading: 90}},
		{"quarter turn left: wider by the overhang on the side it turns to",
			turn.Landing{Hand: turn.Left, Angle: 90, Length: 36, Width: 36, Flight: 36, Overhang: 2},
			[]geom.Point{{X: 18, Y: 100}, {X: 18, Y: 136}, {X: -20, Y: 136}, {X: -20, Y: 100}},
			turn.Place{At: geom.Pt(-20, 118), Heading: 180}},
		{"quarter turn right",
			turn.Landing{Hand: turn.Right, Angle: 90, Length: 36, Width: 36, Flight: 36, Overhang: 2},
			[]geom.Point{{X: 20, Y: 100}, {X: 20, Y: 136}, {X: -18, Y: 136}, {X: -18, Y: 100}},
			turn.Place{At: geom.Pt(20, 118), Heading: 0}},
		{"quarter turn left, larger than its flights, which stand outside",
			turn.Landing{Hand: turn.Left, Angle: 90, Length: 46, Width: 50, Flight: 36, Overhang: 2, Aside: 1},
			[]geom.Point{{X: 18, Y: 100}, {X: 18, Y: 146}, {X: -34, Y: 146}, {X: -34, Y: 100}},
			turn.Place{At: geom.Pt(-34, 128), Heading: 180}},
		{"half turn right with a gap",
			turn.Landing{Hand: turn.Right, Angle: 180, Length: 40, Width: 76, Flight: 36, Gap: 4, Overhang: 2},
			[]geom.Point{{X: 58, Y: 100}, {X: 58, Y: 142}, {X: -18, Y: 142}, {X: -18, Y: 100}},
			turn.Place{At: geom.Pt(40, 100), Heading: 270}},
	} {
		lying := c.landing.At(entry)
		if diff := cmp.Diff(c.outline, lying.Outline); diff != "" {
			t.Errorf("%s: outline (-want +got):\n%s", c.name, diff)
		}
		if diff := cmp.Diff(c.exit, lying.Exit); diff != "" {
			t.Errorf("%s: exit (-want +got):\n%s", c.name, diff)
		}
	}
}

// Four quarter turns lead back to the heading, exactly; a heading off the axes
// is as long.
func TestHeadings(t *testing.T) {
	p := turn.Start
	for range 4 {
		p = p.On(10, 0, 90)
	}
	if p != turn.Start {
		t.Errorf("after four turns: %+v", p)
	}
	q := turn.Start.On(0, 0, -123).Point(1, 0)
	if got := math.Hypot(q.X, q.Y); math.Abs(got-1) > 1e-12 {
		t.Errorf("a step of 1 is %g long", got)
	}
	if turn.Start.Flight(0, 36) != nil {
		t.Error("a flight without a run has an outline")
	}
}
