package spec_test

import (
	"errors"
	"math"
	"os"
	"path/filepath"
	"testing"

	"stepoff/spec"
	"stepoff/spec/measure"
	"stepoff/spec/source"
)

// Whatever the bytes: no panic; either a job that can be trusted to hold
// nothing impossible, or mistakes that all have a place.
func FuzzLoad(f *testing.F) {
	for _, pattern := range []string{"testdata/jobs/*.yaml", "../testdata/bad/*.yaml"} {
		names, _ := filepath.Glob(pattern)
		for _, name := range names {
			text, err := os.ReadFile(name)
			if err != nil {
				f.Fatal(err)
			}
			f.Add(text)
		}
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		job, err := spec.Load("job.yaml", text)
		var mistakes source.Mistakes
		switch {
		case (job == nil) != (err != nil):
			t.Fatalf("%q: job %v, %v", text, job, err)
		case err != nil && !errors.As(err, &mistakes):
			t.Fatalf("%q: an error without a place: %v", text, err)
		case err != nil:
			for _, m := range mistakes {
				if m.At.Line < 1 || m.At.Column < 1 || m.Message == "" {
					t.Errorf("%q: a mistake without a place or words: %+v", text, m)
				}
			}
			if err.Error() == "" {
				t.Errorf("%q: mistakes that say nothing", text)
			}
			return
		}
		sane(t, job)
	})
}

// sane holds what everything downstream rests on.
func sane(t *testing.T, j *spec.Job) {
	t.Helper()
	if len(j.Stairway) == 0 || j.Stairway[0].Flight == nil && j.Stairway[0].Curve == nil {
		t.Fatal("a job that does not begin with what climbs")
	}
	for what, l := range map[string]measure.Length{
		"total rise": j.Levels.TotalRise, "finished rise": j.Levels.Finished(), "tread": j.Tread.Thickness,
		"stock width": j.Stringer.Stock.Width, "stock thickness": j.Stringer.Stock.Thickness, "blade": j.Saw.Blade, "paper": j.Paper.Size.Width,
	} {
		if l <= 0 {
			t.Errorf("%s is %d nm", what, l)
		}
	}
	if j.Riser.Open != (j.Riser.Thickness == 0) {
		t.Errorf("riser %+v", j.Riser)
	}
	for _, load := range []*float64{j.Loads.Live, j.Loads.Dead} {
		if load != nil && !(*load >= 0 && *load <= measure.MaxPressure) {
			t.Errorf("a load of %v Pa", *load)
		}
	}
	for _, scale := range []float64{j.Paper.ScaleX, j.Paper.ScaleY} {
		if math.Abs(scale-1) > 0.03+1e-12 {
			t.Errorf("a scale of %v", scale)
		}
	}
	for _, e := range j.Stairway {
		if w := e.Winders; w != nil && (w.Treads < 2 || w.Angle < 45 || j.Width == nil) {
			t.Errorf("winders %+v", *w)
		}
		if c := e.Curve; c != nil && (c.InsideRadius <= 0 || c.Angle < 1 || c.Sheet.Width <= 0 || c.Layers < 1 || j.Width == nil) {
			t.Errorf("a curve %+v", *c)
		}
		if e.Flight == nil {
			continue
		}
		s := e.Flight.Stringer
		if s.Count < 2 || len(s.FootLevels) > 0 && len(s.FootLevels) != s.Count || len(s.Support) != 1 && len(s.Support) != s.Count {
			t.Errorf("%d stringers, %d foot levels, %d supports", s.Count, len(s.FootLevels), len(s.Support))
		}
	}
}
