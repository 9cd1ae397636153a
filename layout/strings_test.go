package layout_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"stepoff/spec/rules"
)

// housedStair is the 3-4-5 stair on closed strings, wide enough for any margin
// here.
func housedStair(edits map[string]string) string {
	all := map[string]string{
		"tread":    `{thickness: 1", nosing: 1"}`,
		"stringer": `{stock: {width: 16", thickness: 1 1/2"}, build: housed}`,
	}
	for k, v := range edits {
		all[k] = v
	}
	return stair(all)
}

// A tread is as long as it is clear between the strings and two housings more, and
// so is a riser board: Wood, 1894 (between string faces, and 1/2 in at each end).
// On cleats it is as long as it is clear.
func TestTreadsBetweenStrings(t *testing.T) {
	s := compute(t, housedStair(nil))
	for _, b := range s.Flights()[0].Boards {
		near(t, "a housed "+b.Kind.String(), b.Length.MM(), 37)
	}
	s = compute(t, housedStair(map[string]string{"riser": "open", "stringer": "{stock: 2x12, build: cleated}", "levels": `{total_rise: 35"}`, "stairway": `[{flight: {risers: 5, run: 10"}}]`}))
	for _, b := range s.Flights()[0].Boards {
		near(t, "a "+b.Kind.String()+" on cleats", b.Length.MM(), 36)
	}
}

// Housings and cleats stand at k*H/n of the whole rise, to the last digit, whatever
// the rise, and both strings alike; each foot stands as deep as its flooring and
// its own level say.
func TestHousingsStandAtSharesOfTheTotalRise(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(2, 16).Draw(t, "risers")
		total := rapid.IntRange(n*6*64, n*8*64).Draw(t, "total rise in 64ths")
		build := rapid.SampledFrom([]string{"housed", "cleated"}).Draw(t, "build")
		edits := map[string]string{
			"levels":   fmt.Sprintf(`{total_rise: %.6fin, lower_finish: 1/2", measured: finished}`, float64(total)/64),
			"stairway": fmt.Sprintf(`[{flight: {risers: %d, run: 10"}}]`, n),
			"stringer": fmt.Sprintf(`{stock: {width: 16", thickness: 1 1/2"}, build: %s, foot_levels: [0, -1/4"]}`, build),
		}
		s := compute(t, housedStair(edits))
		f := s.Flights()[0]
		if len(f.Strings) != 2 || len(f.Stringers) != 0 {
			t.Fatalf("%d strings and %d sawn stringers", len(f.Strings), len(f.Stringers))
		}
		for i := range f.Strings {
			c := &f.Strings[i]
			lowest := math.Inf(1)
			for _, p := range c.Outline {
				lowest = math.Min(lowest, c.Elevation(p).Y)
			}
			if want := -(0.5 + 0.25*float64(i)) * in; math.Abs(lowest-want) > exact {
				t.Fatalf("string %d stands at %.6f, want %.6f", i, lowest, want)
			}
			for k := 1; k <= n-1; k++ {
				want := float64(total) / 64 * in * float64(k) / float64(n)
				var got float64
				if c.Housed != nil {
					got = c.Elevation(c.Housed.Housings[k-1].Nosing).Y
				} else {
					got = c.Elevation(c.Cleated.Cleats[k-1].Tread[0]).Y
				}
				if math.Abs(got-want) > 1e-9 {
					t.Fatalf("tread %d of string %d stands at %.12f mm, want %.12f", k, i, got, want)
				}
			}
		}
	})
}

// No verdict is given on strings that are not sawn, whatever is known of the wood,
// and it is said why.
func TestOnlySawnStringersAreJudged(t *testing.T) {
	code, _ := rules.Lookup("irc-2021")
	for _, build := range []string{"housed", "cleated"} {
		s := compute(t, housedStair(map[string]string{"stringer": `{stock: 2x12, build: ` + build + `, species: DF-L, grade: No.2}`,
			"levels": `{total_rise: 35"}`, "stairway": `[{flight: {risers: 5, run: 10"}}]`, "housing": `{margin: 1"}`}))
		w := s.Strength(s.Flights()[0], code)
		if w == nil || len(w.Stringers) != 0 || !strings.Contains(w.Unknown, "only sawn stringers are judged") {
			t.Errorf("%s: %+v", build, w)
		}
	}
}

// Props stand between the plumb cuts of a string, measured from that at its foot;
// worked by hand: 130 to the head, 1 3/4 of nosing and riser board before the first
// riser line, 40 mm before that.
func TestSupportsOfStrings(t *testing.T) {
	s := compute(t, housedStair(map[string]string{"stringer": `{stock: {width: 16", thickness: 1 1/2"}, build: housed, props: [6']}`}))
	at := s.Flights()[0].Strings[0].Supports(s.Job.Stringer.Props)
	if len(at) != 3 {
		t.Fatalf("supports %v", at)
	}
	near(t, "the post", at[1], 72)
	near(t, "the head", at[2], 130+1.75+40/25.4)
}
