package choose_test

import (
	"errors"
	"fmt"
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
