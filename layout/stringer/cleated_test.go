package stringer

import (
	"testing"

	"pgregory.net/rapid"
)

// cleated345 is the 3-4-5 stair on solid stringers: open risers, treads 1 1/2 in
// thick on 2x2 cleats.
func cleated345() CleatedRequest {
	r := stair345()
	return CleatedRequest{
		SolidRequest: SolidRequest{Request: r, Nosing: 1 * in, Margin: 1.5 * in, FootPlumb: 1.5 * in, HeadLevel: 4 * in},
		CleatSizes:   CleatSizes{Height: 1.5 * in, Out: 1.5 * in, Setback: 0.5 * in, Screws: 3},
	}
}

// Worked by hand: a tread is 11 in deep, so its cleat 10 long, its top 1 1/2 below
// the tread's; the outer screws stand 1 1/2 from its ends, 3 1/2 apart, 3/4 below
// its top. Its lower back corner lies 1/2 before the riser line above, where the
// nosing line is 7 1/2 + 3/8 above the tread; the corner 3 below it.
func TestCleatedThreeFourFive(t *testing.T) {
	s, bad := cleated345().Cleated()
	if len(bad) > 0 {
		t.Fatal(bad)
	}
	for k, c := range s.Cleats {
		check(t, "cleat's length", c.Length, 10)
		for _, p := range c.Corners[:2] {
			check(t, "top of a cleat", s.Elevation(p).Y, 7.5*float64(k+1)-1.5)
		}
		front := s.Elevation(c.Corners[0]).X
		for i, p := range c.Screws {
			at := s.Elevation(p)
			check(t, "a screw from the cleat's front", at.X-front, 1.5+3.5*float64(i))
			check(t, "a screw's level", at.Y, 7.5*float64(k+1)-2.25)
		}
	}
	check(t, "depth of the cleats", s.Deepest, 1.5+0.8*(7.5+0.75*(1-0.5)+3))
	check(t, "wood left", s.Left, 11.25-1.5-0.8*(7.5+0.375+3))
}

// Cleats lie in the stringer, under their treads, clear of each other.
func TestCleatsLieInTheStringer(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h := anyHoused(t)
		r := CleatedRequest{SolidRequest: h.SolidRequest, CleatSizes: cleated345().CleatSizes}
		s, bad := r.Cleated()
		if len(bad) > 0 {
			t.Skip("not built: ", bad)
		}
		for i, c := range s.Cleats {
			for _, p := range append(c.Corners, c.Screws...) {
				if !within(s.Outline, p) {
					t.Fatalf("cleat %d leaves the stringer at %v", i+1, p)
				}
			}
			for _, p := range c.Screws {
				if !within(c.Corners, p) {
					t.Fatalf("a screw of cleat %d misses it at %v", i+1, p)
				}
			}
			if i > 0 && s.Elevation(c.Corners[2]).Y < s.Elevation(s.Cleats[i-1].Tread[0]).Y {
				t.Fatalf("cleat %d reaches down into the tread below", i+1)
			}
		}
	})
}

func TestCleatedRefusals(t *testing.T) {
	for _, c := range []struct {
		name, key string
		edit      func(*CleatedRequest)
	}{
		{"stringer too narrow", "stringer.stock", func(r *CleatedRequest) { r.Width = 9.25 * in }},
		{"nothing left of the cleat", "cleats.setback", func(r *CleatedRequest) { r.Setback = 5 * in }},
		{"cleat into the floor", "cleats.height", func(r *CleatedRequest) { r.Height, r.Width = 6.5*in, 20*in; r.Run, r.LastTread = 16*in, 16*in }},
	} {
		r := cleated345()
		c.edit(&r)
		s, bad := r.Cleated()
		if s != nil || len(bad) != 1 || bad[0].Key != c.key {
			t.Errorf("%s: refusals %v, want one of %s", c.name, bad, c.key)
		}
	}
}
