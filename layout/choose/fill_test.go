package choose_test

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"stepoff/layout"
	"stepoff/layout/choose"
	"stepoff/spec"
	"stepoff/spec/source"
)

// Flights share risers: evenly, the longer ones below; what some name is taken
// from the best count for the whole rise; a landing that is built parts what
// they share. A run that one flight names is that of all.
func TestFlightsShareRisers(t *testing.T) {
	for _, c := range []struct {
		stairway string
		risers   []int
		run      string
	}{
		{`[{flight: {}}, {landing: {turn: left}}, {flight: {}}]`, []int{8, 7}, `10 1/4"`},
		{`[{flight: {risers: 4}}, {landing: {turn: left}}, {flight: {}}]`, []int{4, 11}, `10 1/4"`},
		{`[{flight: {}}, {landing: {turn: left}}, {flight: {risers: 2}}, {landing: {turn: left}}, {flight: {}}]`, []int{7, 2, 6}, `10 1/4"`},
		{`[{flight: {risers: 8}}, {landing: {turn: left}}, {flight: {risers: 7, run: 11"}}]`, []int{8, 7}, `11"`},
		{`[{flight: {}}, {landing: {turn: left, built_level: 43"}}, {flight: {}}]`, []int{6, 9}, `10 1/4"`},
		{`[{flight: {risers: 1}}, {landing: {turn: left}}, {flight: {}}]`, []int{1, 14}, `10 1/4"`},
	} {
		job, err := spec.Load("job.yaml", []byte(fmt.Sprintf(openJob, "irc-2021", `107"`, "stairway: "+c.stairway)))
		if err != nil {
			t.Fatal(err)
		}
		filled, err := choose.Fill(job, code(t, "irc-2021"))
		if err != nil {
			t.Errorf("%s: %v", c.stairway, err)
			continue
		}
		s, err := layout.Compute(filled)
		if err != nil {
			t.Errorf("%s: %v", c.stairway, err)
			continue
		}
		var risers []int
		for _, f := range s.Flights() {
			risers = append(risers, f.Risers)
			if f.UnitRun != length(t, c.run) {
				t.Errorf("%s: %s has a run of %g in, want %s", c.stairway, f.Name, f.UnitRun.In(), c.run)
			}
		}
		if !slices.Equal(risers, c.risers) {
			t.Errorf("%s: %v risers, want %v", c.stairway, risers, c.risers)
		}
	}
}

// Where the flights that name their risers leave none, that is said at each of
// the others.
func TestRisersThatDoNotAddUp(t *testing.T) {
	job, err := spec.Load("job.yaml", []byte(fmt.Sprintf(openJob, "irc-2021", `107"`, `stairway: [{flight: {risers: 15}}, {landing: {turn: left}}, {flight: {}}]`)))
	if err != nil {
		t.Fatal(err)
	}
	_, err = choose.Fill(job, code(t, "irc-2021"))
	var mistakes source.Mistakes
	if !errors.As(err, &mistakes) || len(mistakes) != 1 || !strings.Contains(err.Error(), `is 15, and the flights that name theirs take 15: too few are left`) {
		t.Errorf("%v", err)
	}
}

// A curve that names no risers gets the best count with which its treads are as
// deep as the code asks: more risers turn less each.
func TestCurveGetsRisers(t *testing.T) {
	for _, c := range []struct {
		code, curve string
		risers      int
	}{
		// 107 in: 14 risers are 7.643, 15 are 7.133. 15 are best by the rules of thumb
		// with their runs of 10 and more; at 72 in from the centre 14 treads of 105
		// degrees are 9.41 deep, 13 are 10.13.
		{"irc-2021", `turn: left, inside_radius: 60", angle: 105`, 14},
		{"irc-2021", `turn: left, inside_radius: 60", angle: 125`, 15}, // 11.20
		{"none", `turn: left, inside_radius: 60", angle: 105`, 14},     // nearest to 7 1/2
	} {
		job, err := spec.Load("job.yaml", []byte(fmt.Sprintf(openJob, c.code, `107"`, "stairway: [{curve: {"+c.curve+"}}]")))
		if err != nil {
			t.Fatal(err)
		}
		filled, err := choose.Fill(job, code(t, c.code))
		if err != nil {
			t.Errorf("%s: %v", c.curve, err)
			continue
		}
		if got := filled.Stairway[0].Curve; *got.Risers != c.risers || !got.RisersChosen {
			t.Errorf("%s, %s: %d risers, chosen %v; want %d", c.code, c.curve, *got.Risers, got.RisersChosen, c.risers)
		}
		if job.Stairway[0].Curve.Risers != nil {
			t.Error("the job itself was changed")
		}
	}
}

// Winders in a stairway with everything left open take their risers from the best
// count, and the least set-back that is deep enough; one that is given stays.
// 36 in, 3 winders, nosing and riser board 1 3/4: 10.86 in, by the design's own
// figures.
func TestWindersGetASetback(t *testing.T) {
	fill := func(winders string) *spec.Job {
		t.Helper()
		job, err := spec.Load("job.yaml", []byte(fmt.Sprintf(openJob, "irc-2021", `107"`, "stairway: [{flight: {}}, {winders: {"+winders+"}}, {flight: {}}]")))
		if err != nil {
			t.Fatal(err)
		}
		filled, err := choose.Fill(job, code(t, "irc-2021"))
		if err != nil {
			t.Fatal(err)
		}
		return filled
	}
	open := fill("turn: left, treads: 3")
	if lower, upper := *open.Stairway[0].Flight.Risers, *open.Stairway[2].Flight.Risers; lower+upper+2 != 15 || lower != 7 || upper != 6 {
		t.Errorf("%d and %d risers beside winders that add 2; want 15 in all", lower, upper)
	}
	if w := open.Stairway[1].Winders; !w.SetbackChosen || math.Abs(w.Setback.In()-10.86) > 0.005 {
		t.Errorf("a set-back of %v in, want 10.86", w.Setback.In())
	}
	if w := fill(`turn: left, treads: 3, setback: 4"`).Stairway[1].Winders; w.SetbackChosen || w.Setback.In() != 4 {
		t.Errorf("a set-back of 4 in became %v", w.Setback.In())
	}
}
