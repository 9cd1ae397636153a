package layout

import (
	"fmt"
	"math"

	"stepoff/layout/stringer"
	"stepoff/layout/turn"
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
	bad := s.missing()
	if len(bad) == 0 {
		bad = s.share()
	}
	if err := bad.Err(); err != nil {
		return nil, err
	}
	s.place()
	for _, f := range s.Flights() {
		bad = append(bad, f.build(job)...)
	}
	if len(bad) == 0 {
		bad = append(s.posts(), s.stringsApart()...)
	}
	for i, e := range s.Elements {
		switch e := e.(type) {
		case *Landing:
			upper, _ := s.Elements[i+1].(*Flight)
			bad = append(bad, e.frame(i, upper, job)...)
		case *Winders:
			lower, _ := s.Elements[i-1].(*Flight)
			upper, _ := s.Elements[i+1].(*Flight)
			bad = append(bad, e.frame(i, lower, upper, job)...)
		case *Curve:
			bad = append(bad, e.frame(i, s)...)
		}
	}
	if err := bad.Err(); err != nil {
		return nil, err
	}
	return s, nil
}

// missing says what has to be known before anything can be laid out.
func (s *Stairway) missing() (bad source.Mistakes) {
	for i, e := range s.Job.Stairway {
		switch {
		case e.Flight != nil:
			if e.Flight.Risers == nil {
				bad = append(bad, s.Job.Mistake(flightKey(i, "risers"), "risers is missing: say how many risers this flight has"))
			}
			if e.Flight.Run == nil {
				bad = append(bad, s.Job.Mistake(flightKey(i, "run"), `run is missing: say the unit run, such as run: 10"`))
			}
		case e.Curve != nil && e.Curve.Risers == nil:
			bad = append(bad, s.Job.Mistake(fmt.Sprintf("stairway[%d].curve.risers", i), "risers is missing: say how many risers this curve has"))
		case e.Winders != nil && e.Winders.Setback == nil:
			bad = append(bad, s.Job.Mistake(fmt.Sprintf("stairway[%d].winders.setback", i),
				"setback is missing: say how far before the inside corner the first riser line stands"))
		}
	}
	return bad
}

func flightKey(i int, key string) string { return fmt.Sprintf("stairway[%d].flight.%s", i, key) }

// share parts the stairway at the landings that are built, so that each part's
// risers share its rise.
func (s *Stairway) share() (bad source.Mistakes) {
	part := Part{}
	for i, e := range s.Job.Stairway {
		part.Risers += risersOf(e)
		if e.Landing == nil {
			continue
		}
		built, ok := BuiltLevel(s.Job, e.Landing)
		if !ok {
			continue
		}
		if built <= part.From || built >= s.TotalRise {
			bad = append(bad, s.Job.Mistake(fmt.Sprintf("stairway[%d].landing.built_level", i),
				"built_level: the landing's finished level comes to %s, which does not lie between what is fixed below it, %s, and the upper floor, %s",
				s.say(built), s.say(part.From), s.say(s.TotalRise)))
			continue
		}
		part.To = built
		s.Parts = append(s.Parts, part)
		part = Part{From: built, Below: part.Below + part.Risers}
	}
	part.To = s.TotalRise
	s.Parts = append(s.Parts, part)
	s.Risers = part.Below + part.Risers
	return bad
}

// risersOf is how many risers a member adds: each winder after the first, whose
// riser is the lower flight's last, has one.
func risersOf(e spec.Element) int {
	switch {
	case e.Flight != nil:
		return *e.Flight.Risers
	case e.Curve != nil:
		return *e.Curve.Risers
	case e.Winders != nil:
		return e.Winders.Treads - 1
	}
	return 0
}

func (s *Stairway) say(l measure.Length) string { return measure.Style{Units: s.Job.Units}.Format(l) }

// BuiltLevel is the finished level of a landing that exists, above the lower
// finished floor; ok is false where it is still to be built. It is measured
// between the same surfaces as the total rise.
func BuiltLevel(job *spec.Job, l *spec.Landing) (level measure.Length, ok bool) {
	switch {
	case l.BuiltLevel == nil:
		return 0, false
	case job.Levels.Measured == spec.Rough:
		return *l.BuiltLevel + l.Finish - job.Levels.LowerFinish, true
	}
	return *l.BuiltLevel, true
}

// place lays every member out in height and in plan, each where the one below it
// ends.
func (s *Stairway) place() {
	at := turn.Start
	below := 0                // risers so far
	named := map[string]int{} // members of each kind so far
	name := func(kind string) string {
		named[kind]++
		return fmt.Sprintf("%s-%d", kind, named[kind])
	}
	var under Turn        // what the next member that climbs stands on
	rise := func(Turn) {} // tells the last one what it rises to
	for _, e := range s.Job.Stairway {
		switch {
		case e.Flight != nil:
			f := s.flight(below, e.Flight)
			f.Name, f.Foot = name(f.Kind()), under
			f.stand(at, s.Job)
			at = at.On(f.TotalRun, 0, 0)
			rise = func(t Turn) { f.Head = t }
			s.Elements = append(s.Elements, f)
		case e.Curve != nil:
			c := s.curve(below, at, under, e.Curve)
			c.Name = name(c.Kind())
			at = c.Exit
			rise = func(t Turn) { c.Head = t }
			s.Elements = append(s.Elements, c)
		case e.Winders != nil:
			w := s.winders(below, at, e.Winders)
			w.Name = name(w.Kind())
			at, under = w.Exit, w
			rise(w)
			s.Elements = append(s.Elements, w)
		default:
			l := &Landing{Name: name("landing"), Spec: e.Landing, Risers: below, Level: s.Level(below)}
			l.FramingLevel = l.Level - e.Landing.Finish.MM()
			l.lie(at, s.Job)
			at, under = l.Exit, l
			rise(l)
			s.Elements = append(s.Elements, l)
		}
		below += risersOf(e)
	}
}

// flight works out a flight's levels.
func (s *Stairway) flight(below int, asked *spec.Flight) *Flight {
	f := &Flight{
		Spec:       asked,
		Below:      below,
		Risers:     *asked.Risers,
		Treads:     *asked.Risers,
		UnitRun:    *asked.Run,
		StartLevel: s.Level(below),
		EndLevel:   s.Level(below + *asked.Risers),
	}
	f.Part = s.partAt(below + 1)
	f.UnitRise = f.Part.UnitRise()
	if f.Hung() {
		f.Treads--
	}
	f.TotalRun = f.UnitRun.MM() * float64(f.Treads)
	f.Pitch = math.Atan2(f.UnitRise, f.UnitRun.MM())
	for k := 1; k <= f.Treads; k++ {
		f.TreadLevels = append(f.TreadLevels, s.Level(below+k))
	}
	return f
}

// stand puts the flight in its place in plan.
func (f *Flight) stand(at turn.Place, job *spec.Job) {
	f.X, f.Y, f.Heading = at.At.X, at.At.Y, at.Heading
	if job.Width != nil {
		f.Outline = at.Flight(f.TotalRun, job.Width.MM())
	}
}

// build works out what the flight is made of.
func (f *Flight) build(job *spec.Job) source.Mistakes {
	if f.Spec.Stringer.FootOn == spec.Rough {
		f.Flooring = job.Levels.LowerFinish
		if f.Foot != nil {
			f.Flooring = f.Foot.Flooring()
		}
	}
	f.boards(job)
	if f.Treads == 0 {
		return nil // one riser and no tread: nothing to cut
	}
	if f.Spec.Stringer.Build != spec.Sawn {
		return f.solid(job)
	}
	return f.stringers(job)
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
			if r.Key == "saw.depth" && job.Saw.Depth == nil {
				r.Key = "stringer.stock" // too thick for the depth that is usual
			}
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
// does not say, and at a landing.
func (f *Flight) floorNosing(job *spec.Job) measure.Length {
	if n := f.Spec.Stringer.TopNosing; n != nil && f.Head == nil {
		return *n
	}
	return job.Tread.Nosing
}
