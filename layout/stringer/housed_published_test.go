package stringer

import (
	"math"
	"testing"
)

// An open-riser stair of five risers between closed strings: 850 mm of rise at
// 170, goings of 275, 40 mm above the nosings. Source: TAFE Randwick slides,
// slideplayer.com/slide/4242855: 850 mm, assume 160, 5 x 170; 4 x 275 = 1100; the
// string to order is reckoned over the going and one more, 1375, for over 1100
// alone it comes out short. sqrt(850^2 + 1375^2) = 1616.5, sqrt(850^2 + 1100^2) =
// 1390.1, both derived from those figures.
func TestPublishedStringToOrder(t *testing.T) {
	s := mustHoused(t, HousedRequest{
		SolidRequest: SolidRequest{
			Request: Request{Rise: 170, Run: 275, Risers: 5, Tread: 40, LastTread: 275, Width: 285, Thickness: 40},
			Nosing:  25, Margin: 40, FootPlumb: 40, HeadLevel: 100,
		},
		HousingSizes: HousingSizes{Depth: 12, Round: 20, Cutter: 16, Bush: 20},
	})
	short, order := math.Hypot(850, 1100), math.Hypot(850, 1375)
	if math.Abs(short-1390.1) > 0.05 || math.Abs(order-1616.5) > 0.05 {
		t.Fatalf("the published figures come to %.1f and %.1f", short, order)
	}
	if s.LeastBlank <= short || s.LeastBlank >= order {
		t.Errorf("the string is %.1f mm long: want more than %.1f, which is too short, and no more than the %.1f ordered", s.LeastBlank, short, order)
	}
	for k, h := range s.Housings {
		if got := s.Elevation(h.Nosing).Y; math.Abs(got-170*float64(k+1)) > 1e-9 {
			t.Errorf("tread %d stands at %.6f, want %d", k+1, got, 170*(k+1))
		}
		if len(h.Wedges) > 0 {
			t.Errorf("tread %d of an open-riser stair has wedges", k+1)
		}
	}
}

// GTZ, Carpentry for Vocational Schools, chapter 23: usual steps of 175/250 with a
// nosing of 20, the string's edge 40 above the nosing line, the bottom plumb cut 40
// before the nosing, the top level cut 100.
//
// Derived from those: the plumb cut is 175 - 40 x 175/250 + 40 / cos high; the
// level cut lies 40 / cos - (100 - 20) x 175/250 above the upper floor, a hair
// below it, which is what the 100 are for.
func TestPublishedEnds(t *testing.T) {
	s := mustHoused(t, HousedRequest{
		SolidRequest: SolidRequest{
			Request: Request{Rise: 175, Run: 250, Risers: 16, Tread: 40, LastTread: 250, Width: 280, Thickness: 40},
			Nosing:  20, RiserBoard: 18, TopRiser: 15 * 250, Margin: 40, FootPlumb: 40, HeadLevel: 100,
		},
		HousingSizes: HousingSizes{Depth: 12, WedgeTaper: 1. / 20, Round: 20, Cutter: 12, Bush: 16},
	})
	cos := 250 / math.Hypot(175, 250)
	if want := 175 - 40*0.7 + 40/cos; math.Abs(s.FootCut-want) > 1e-9 {
		t.Errorf("the plumb cut at the foot is %.3f high, want %.3f", s.FootCut, want)
	}
	if got := s.Elevation(s.Outline[0]).X; math.Abs(got+20+18+40) > 1e-9 {
		t.Errorf("the plumb cut at the foot stands at %.3f, want 40 before the first nosing, at %d", got, -20-18-40)
	}
	level := s.Elevation(s.Outline[2]).Y - 16*175
	if want := 40/cos - (100-20-18)*0.7; math.Abs(level-want) > 1e-9 || math.Abs(s.HeadTop-100) > 1e-9 {
		t.Errorf("the level cut is %.3f long and lies %.3f over the floor, want 100 and %.3f", s.HeadTop, level, want)
	}
	for k, h := range s.Housings[:15] {
		if math.Abs(h.Nosing.Y-40) > 1e-9 {
			t.Errorf("nosing %d lies %.3f below the edge, want 40", k+1, h.Nosing.Y)
		}
	}
}

// IBE 8.5: string 290 x 50, tread 35, riser 15, tread overhanging 30, rise 180,
// going 270. The string has to hold its housings: with 40 above the nosing line
// (GTZ) and wedges of any taper up to 1 in 12 it does; with 70 it does not.
func TestPublishedStringIsWideEnough(t *testing.T) {
	ibe := HousedRequest{
		SolidRequest: SolidRequest{
			Request: Request{Rise: 180, Run: 270, Risers: 15, Tread: 35, LastTread: 270, Width: 290, Thickness: 50},
			Nosing:  30, RiserBoard: 15, TopRiser: 14 * 270, Margin: 40, FootPlumb: 40, HeadLevel: 100,
		},
		HousingSizes: HousingSizes{Depth: 12, WedgeTaper: 1. / 16, Round: 17.5, Cutter: 12.7, Bush: 15.875},
	}
	for _, taper := range []float64{24, 20, 16, 12} {
		r := ibe
		r.WedgeTaper = 1 / taper
		s := mustHoused(t, r)
		// Derived: the heel's distance below the nosing line, as in the 3-4-5 case.
		x := (270 + 180/taper) / (1 - 1/taper/taper)
		want := 40 + (180+35+x/taper+(x-270+45)*180/270)*270/math.Hypot(180, 270)
		if math.Abs(s.Deepest-want) > 1e-9 {
			t.Errorf("wedges of 1:%g: housings reach %.3f in, want %.3f", taper, s.Deepest, want)
		}
	}
	ibe.Margin = 70
	if _, bad := ibe.Housed(); len(bad) != 1 || bad[0].Key != "stringer.stock" {
		t.Errorf("70 above the nosings: refusals %v, want the string too narrow", bad)
	}
}
