package choose_test

import (
	"fmt"
	"strings"
	"testing"

	"stepoff/layout"
	"stepoff/layout/check"
	"stepoff/layout/choose"
	"stepoff/spec"
)

// carried is a 3-4-5 stair 36 in wide: risers, tread, stringer.
const carried = `
units: imperial
code: irc-2021
levels: {total_rise: %g"}
width: %s
stairway: [{flight: {risers: %d, run: 10"}}]
tread: %s
riser: {thickness: 3/4"}
stringer: %s
`

const (
	strongTread = `{nosing: 1", boards: 2x12, species: DF-L, grade: No.2}`
	thinTread   = `{thickness: 3/4", nosing: 1", values: {bending: 900 psi, shear: 70 psi, modulus: 1.2e6 psi}}`
)

func carriedJob(t *testing.T, width string, risers int, tread, stringer string) *spec.Job {
	t.Helper()
	job, err := spec.Load("job.yaml", []byte(fmt.Sprintf(carried, 7.5*float64(risers), width, risers, tread, stringer)))
	if err != nil {
		t.Fatal(err)
	}
	return job
}

// `count: auto` takes the fewest that hold. By hand, DF-L No.2, throat 5 1/4: M =
// 6201.6 in lb, so w L2 / 8 may be that. Seven risers, 60 in: 13.78 lb/in, 39.7 in
// of width at 50 psf; eight, 70 in: 29.2 in; ten, 90 in: 17.6 in; deflection, by
// sag = L / 360 under 40 psf: at 90 in 24.3 in of width.
func TestCountAuto(t *testing.T) {
	for _, c := range []struct {
		risers       int
		width, tread string
		wood         string
		count        int
		by           string
	}{
		{7, `36"`, strongTread, "species: DF-L, grade: No.2", 2, "the fewest that hold"},           // 18 in each
		{9, `36"`, strongTread, "species: DF-L, grade: No.2", 2, "the fewest that hold"},           // 80 in may have 22.3
		{10, `40"`, strongTread, "species: DF-L, grade: No.2", 4, "the fewest that hold"},          // two 20 in, three 25 in, four 13.33 x 1.1
		{14, `36"`, strongTread, "species: DF-L, grade: No.2", 3, "no count holds by itself"},      // 130 in may have 8.4
		{7, `36"`, `{thickness: 1 1/2"}`, "species: DF-L, grade: No.2", 3, "the fewest that hold"}, // treads unknown: 18 in apart
		{7, `36"`, thinTread, "species: DF-L, grade: No.2", 4, "the fewest that hold"},             // treads that reach 13 in
		{7, `40"`, strongTread, "species: Oak, grade: No.2", 4, "by spacing: no design values"},
	} {
		job := carriedJob(t, c.width, c.risers, c.tread, "{stock: 2x12, count: auto, "+c.wood+"}")
		f := choose.Counts(job, code(t, "irc-2021")).Stairway[0].Flight
		if f.Stringer.Count != c.count || !strings.Contains(f.CountBy, c.by) {
			t.Errorf("%d risers, %s, %s, %s: %d stringers, %s; want %d, %s", c.risers, c.width, c.tread, c.wood, f.Stringer.Count, f.CountBy, c.count, c.by)
		}
		if job.Stairway[0].Flight.CountBy != "" {
			t.Error("the job itself was changed")
		}
	}
	given := carriedJob(t, `36"`, 7, strongTread, "{stock: 2x12, count: 3, species: DF-L, grade: No.2}")
	if choose.Counts(given, code(t, "irc-2021")) != given {
		t.Error("a count that is given was looked at")
	}
	dca := choose.Counts(carriedJob(t, `36"`, 7, strongTread, "{stock: 2x12, count: auto, species: DF-L, grade: No.2}"), code(t, "dca-6"))
	if n := dca.Stairway[0].Flight.Stringer.Count; n != 3 { // which asks for three, 18 in apart
		t.Errorf("under dca-6 %d stringers", n)
	}
}

// Each change that is said to hold is made, and the stair then holds; the least
// of its kind: one step less does not.
func TestChangesHold(t *testing.T) {
	changes := func(risers int, tread, stringer string) map[string]check.Change {
		s, err := layout.Compute(carriedJob(t, `36"`, risers, tread, stringer))
		if err != nil {
			t.Fatal(err)
		}
		all := map[string]check.Change{}
		for _, c := range choose.Changes(s, code(t, "irc-2021")) {
			all[c.Kind] = c
		}
		return all
	}
	holds := func(risers int, stringer string) bool {
		s, err := layout.Compute(carriedJob(t, `36"`, risers, strongTread, stringer))
		if err != nil {
			t.Fatal(err)
		}
		return s.Strength(s.Flights()[0], code(t, "irc-2021")).Holds()
	}
	const wood = "stock: 2x12, species: DF-L, grade: No.2"
	// Ten risers: the middle stringer of three carries 22.5 in, of which 17.6 holds.
	got := changes(10, strongTread, "{"+wood+", count: 3}")
	for kind, want := range map[string]string{
		"grade":      "DF-L SS", // No.1 holds at 1000 psi 19.5 in
		"stringers":  `4, 12" apart`,
		"strongback": "2x6 glued and nailed",
		"props":      `a post under each stringer that spans, 45" from`,
		"landing":    "8 risers and a span of 70\"",
	} {
		if c := got[kind]; !c.Holds || !strings.Contains(c.Text, want) {
			t.Errorf("%s: %+v, want it to hold by %q", kind, c, want)
		}
	}
	for stringer, want := range map[string]bool{
		"{" + wood + ", count: 3}":                            false,
		"{stock: 2x12, species: DF-L, grade: No.1, count: 3}": false,
		"{stock: 2x12, species: DF-L, grade: SS, count: 3}":   true,
		"{" + wood + ", count: 4}":                            true,
		"{" + wood + ", count: 3, strongback: 2x4}":           false,
		"{" + wood + ", count: 3, strongback: 2x6}":           true,
		"{" + wood + ", count: 3, props: [45]}":               true,
	} {
		if holds(10, stringer) != want {
			t.Errorf("%s holds: %v", stringer, !want)
		}
	}
	if holds(9, "{"+wood+", count: 3}") || !holds(8, "{"+wood+", count: 3}") {
		t.Error("the longest flight that holds is not one of 8 risers")
	}
	// Fourteen risers: no grade, no number of stringers.
	got = changes(14, strongTread, "{"+wood+", count: 3}")
	if got["grade"].Holds || got["stringers"].Holds || !got["props"].Holds || !got["landing"].Holds {
		t.Errorf("14 risers: %+v", got)
	}
	// Treads that need more stringers: everything else comes on top.
	got = changes(14, thinTread, "{"+wood+", count: 3}")
	if c := got["props"]; !c.Holds || !strings.Contains(c.Text, "4 stringers, for the treads, and a post") {
		t.Errorf("thin treads: %+v", c)
	}
	if got = changes(7, thinTread, "{"+wood+", count: 3}"); len(got) != 1 || got["stringers"].Text != "4 stringers, for the treads" {
		t.Errorf("thin treads alone: %+v", got)
	}
	if got = changes(7, strongTread, "{"+wood+", count: 3}"); len(got) != 0 {
		t.Errorf("changes to a stair that holds: %+v", got)
	}
	// No strongback is wider than the stringer's own board.
	if got = changes(14, strongTread, "{stock: 2x8, species: DF-L, grade: No.2, count: 3, strongback: 2x8}"); got["strongback"].Holds {
		t.Errorf("a 2x8's strongback: %+v", got["strongback"])
	}
	if got = changes(14, strongTread, "{stock: 2x12, count: 3}"); len(got) != 0 {
		t.Errorf("changes without a verdict: %+v", got)
	}
}

// What would hold keeps the code's own span too: by DCA 6 a cut stringer spans 6 ft
// (figure 28, secondary). At 1500 psi the middle of three under 30 in, 18.75 in
// wide, reaches 112.7 in, which would make a landing of 12 risers.
func TestChangesKeepTheCodesSpan(t *testing.T) {
	dca := code(t, "dca-6")
	s, err := layout.Compute(carriedJob(t, `30"`, 14, strongTread, "{stock: 2x12, species: DF-L, grade: SS, count: 3}"))
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range choose.Changes(s, dca) {
		want, holds := "dca-6 has sawn stringers span 72\" at most", false
		switch c.Kind {
		case "props":
			want, holds = `a post under each stringer that spans, 65"`, true
		case "landing":
			want, holds = `8 risers and a span of 70" at the most`, true
		}
		if c.Holds != holds || !strings.Contains(c.Text, want) {
			t.Errorf("%+v, want %v: %q", c, holds, want)
		}
	}
}
