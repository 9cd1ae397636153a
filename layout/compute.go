package layout

import (
	"fmt"
	"math"

	"stepoff/layout/stringer"
	"stepoff/spec"
	"stepoff/spec/measure"
	"stepoff/spec/source"
)

// EndTrim is what each end of a bought board may lose to checks and to
// squaring before the stringer begins: common practice.
const EndTrim = measure.Inch

// Compute lays the job out. The error is source.Mistakes, with the place in the
// job file of every value that makes the stair impossible to build.
func Compute(job *spec.Job) (*Stairway, error) {
	s := &Stairway{Job: job, TotalRise: job.Levels.Finished()}
	var bad source.Mistakes
	for i, e := range job.Stairway {
		if e.Flight.Risers == nil {
			bad = append(bad, job.Mistake(flightKey(i, "risers"), "risers is missing: say how many risers this flight has"))
		} else {
			s.Risers += *e.Flight.Risers
		}
		if e.Flight.Run == nil {
			bad = append(bad, job.Mistake(flightKey(i, "run"), `run is missing: say the unit run, such as run: 10"`))
		}
	}
	if b := job.Stringer.Build; b != spec.Sawn {
		bad = append(bad, job.Mistake("stringer.build", "%s stringers are not laid out by this version, only sawn ones; write build: sawn", b))
	}
	if len(bad) > 0 {
		return nil, bad.Err()
	}
	s.UnitRise = s.Level(1)
	below := 0 // risers so far
	for i, e := range job.Stairway {
		f, mistakes := s.flight(i, below, e.Flight)
		bad = append(bad, mistakes...)
		s.Elements = append(s.Elements, f)
		below += f.Risers
	}
	if err := bad.Err(); err != nil {
		return nil, err
	}
	return s, nil
}

func flightKey(i int, key string) string { return fmt.Sprintf("stairway[%d].flight.%s", i, key) }

func (s *Stairway) flight(i, below int, asked *spec.Flight) (*Flight, source.Mistakes) {
	f := &Flight{
		Name:       fmt.Sprintf("flight-%d", i+1),
		Spec:       asked,
		Risers:     *asked.Risers,
		Treads:     *asked.Risers,
		UnitRise:   s.UnitRise,
		UnitRun:    *asked.Run,
		StartLevel: s.Level(below),
		EndLevel:   s.Level(below + *asked.Risers),
		Heading:    90,
	}
	if f.Hung() {
		f.Treads--
	}
	f.TotalRun = f.UnitRun.MM() * float64(f.Treads)
	f.Pitch = math.Atan2(f.UnitRise, f.UnitRun.MM())
	for k := 1; k <= f.Treads; k++ {
		f.TreadLevels = append(f.TreadLevels, s.Level(below+k))
	}
	if asked.Stringer.FootOn == spec.Rough {
		f.Flooring = s.Job.Levels.LowerFinish
	}
	f.boards(s.Job)
	if f.Treads == 0 {
		return f, nil // one riser and no tread: nothing to cut
	}
	return f, f.stringers(s.Job)
}

// stringers groups the flight's stringers by their foot levels and lays each
// outline out.
func (f *Flight) stringers(job *spec.Job) source.Mistakes {
	asked := &f.Spec.Stringer
	if job.Width != nil && asked.Count > 1 {
		f.Spacing = job.Width.MM() / float64(asked.Count-1)
	}
	var bad source.Mistakes
	blamed := map[string]bool{} // a value is blamed once, however many outlines it spoils
	refuse := func(refusals stringer.Refusals) {
		for _, r := range refusals {
			if !blamed[r.Key] {
				blamed[r.Key] = true
				bad = append(bad, job.Mistake(r.Key, "%s", r.Message))
			}
		}
	}
	for at := range asked.Count {
		var foot measure.Length
		if len(asked.FootLevels) > 0 {
			foot = asked.FootLevels[at]
		}
		if g := f.groupAt(foot); g != nil {
			g.Positions = append(g.Positions, at)
			continue
		}
		sawn, refusals := f.request(job, foot).Sawn()
		refuse(refusals)
		if sawn != nil {
			f.Stringers = append(f.Stringers, Group{Positions: []int{at}, Sawn: sawn, FootLevel: foot})
		}
	}
	for k := range f.Stringers {
		g := &f.Stringers[k]
		g.Name = "stringer"
		if len(f.Stringers) > 1 {
			g.Name = fmt.Sprintf("stringer-%d", k+1)
		}
		g.StockLength = stockLength(g.LeastBlank, job.Units)
		refuse(f.bearing(g, job))
	}
	return bad
}

func (f *Flight) groupAt(foot measure.Length) *Group {
	for k := range f.Stringers {
		if f.Stringers[k].FootLevel == foot {
			return &f.Stringers[k]
		}
	}
	return nil
}

// request gathers what one stringer of the flight is laid out from.
func (f *Flight) request(job *spec.Job, foot measure.Length) stringer.Request {
	asked := &f.Spec.Stringer
	r := stringer.Request{
		Rise: f.UnitRise, Run: f.UnitRun.MM(), Risers: f.Risers,
		Flush:      !f.Hung(),
		Tread:      job.Tread.Thickness.MM(),
		LastTread:  f.lastTread(job),
		Below:      (f.Flooring - foot).MM(),
		Width:      asked.Stock.Width.MM(),
		Thickness:  asked.Stock.Thickness.MM(),
		Saw:        saw(job.Saw, asked.Stock.Thickness),
		SquareStep: squareStep(job.Units).MM(),
		Style:      measure.Style{Units: job.Units},
	}
	if k := asked.Kicker; k != nil { // laid flat
		r.Kicker = &stringer.Block{Height: k.Thickness.MM(), Depth: k.Width.MM()}
	}
	if l := asked.Ledger; l != nil { // on edge
		r.Ledger = &stringer.Block{Height: l.Width.MM(), Depth: l.Thickness.MM()}
	}
	return r
}

func (f *Flight) lastTread(job *spec.Job) float64 {
	return stringer.LastTread(stringer.Head{
		Flush:       !f.Hung(),
		Run:         f.UnitRun.MM(),
		RiserBoard:  job.Riser.Thickness.MM(),
		Covered:     f.Spec.Stringer.TopRiser,
		Nosing:      job.Tread.Nosing.MM(),
		FloorNosing: f.floorNosing(job).MM(),
		Behind:      f.Spec.Stringer.BehindHead.MM(),
	})
}

// floorNosing is the upper floor's own nosing: as the treads' where the job
// does not say.
func (f *Flight) floorNosing(job *spec.Job) measure.Length {
	if n := f.Spec.Stringer.TopNosing; n != nil {
		return *n
	}
	return job.Tread.Nosing
}
