package exercise_test

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"stepoff/layout/lesson"
	"stepoff/layout/lesson/exercise"
	"stepoff/spec/measure"
)

// told writes a set out.
func told(problems []exercise.Problem) string {
	var b strings.Builder
	for i, p := range problems {
		fmt.Fprintf(&b, "%d. %s (%s)\n%s\n", i+1, p.Title, p.Kind, p.Ask)
		for _, g := range p.Given {
			fmt.Fprintf(&b, "  %s: %s\n", g.Name, g.Value)
		}
		for _, a := range p.Answers {
			fmt.Fprintf(&b, "  > %s: %s", a.Name, a.Value)
			if a.Tolerance > 0 {
				fmt.Fprintf(&b, " (%.6f mm, within %.6f)", a.MM, a.Tolerance.MM())
			}
			b.WriteByte('\n')
		}
		for _, w := range p.Worked {
			fmt.Fprintf(&b, "  = %s\n", w)
		}
	}
	return b.String()
}

// A seed's set is the same for ever: teachers hand out seeds and keep the answers.
// These files are never written again. A change that moves them needs a way to
// go on making the old sets.
func TestSetsStayTheSame(t *testing.T) {
	for _, c := range []struct {
		seed  uint64
		count int
		level lesson.Level
		units measure.Units
	}{
		{1, 32, lesson.Full, measure.Imperial},
		{7, 16, lesson.First, measure.Imperial},
		{18446744073709551615, 32, lesson.Full, measure.Metric},
	} {
		problems, err := exercise.Set(c.seed, c.count, c.level, c.units)
		if err != nil {
			t.Fatal(err)
		}
		file := filepath.Join("testdata", fmt.Sprintf("seed-%d-%d.txt", c.seed, c.count))
		want, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(strings.Split(string(want), "\n"), strings.Split(told(problems), "\n")); diff != "" {
			t.Errorf("%s: want -, got +:\n%s", file, diff)
		}
	}
}

// Sets differ by seed, and a longer set begins as a shorter one does, so that a
// teacher can ask for more.
func TestSeedsDiffer(t *testing.T) {
	set := func(seed uint64, count int) string {
		problems, err := exercise.Set(seed, count, lesson.Full, measure.Imperial)
		if err != nil {
			t.Fatal(err)
		}
		return told(problems)
	}
	seen := map[string]uint64{}
	for seed := range uint64(100) {
		s := set(seed, 6)
		if other, ok := seen[s]; ok {
			t.Errorf("seeds %d and %d give the same set", seed, other)
		}
		seen[s] = seed
	}
	if !strings.HasPrefix(set(3, 40), set(3, 20)) {
		t.Error("a set of 40 does not begin as the set of 20")
	}
}

// The first level has the kinds that need neither roots nor turns.
func TestLevels(t *testing.T) {
	problems, err := exercise.Set(2, 60, lesson.First, measure.Imperial)
	if err != nil {
		t.Fatal(err)
	}
	var kinds []string
	for _, p := range problems {
		kinds = append(kinds, p.Kind)
	}
	slices.Sort(kinds)
	want := []string{"count-risers", "drop", "parts", "square", "story-pole", "throat", "total-run", "unit-rise", "unit-run"}
	if diff := cmp.Diff(want, slices.Compact(kinds)); diff != "" {
		t.Errorf("want -, got +:\n%s", diff)
	}
}

// The most that the command prints is to be had of every seed and level.
func TestLargeSets(t *testing.T) {
	for _, level := range []lesson.Level{lesson.First, lesson.Full} {
		for _, units := range []measure.Units{measure.Imperial, measure.Metric} {
			if _, err := exercise.Set(9, 500, level, units); err != nil {
				t.Error(err)
			}
		}
	}
}
