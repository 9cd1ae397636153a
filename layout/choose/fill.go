package choose

import (
	"fmt"
	"slices"

	"stepoff/layout"
	"stepoff/spec"
	"stepoff/spec/measure"
	"stepoff/spec/rules"
	"stepoff/spec/source"
)

// Fill gives a job what it leaves open: riser counts, unit runs or both, the
// best choice under the code. A job that leaves nothing open comes back as it
// is; the job itself is never changed. Where the code sets no limits the count
// is the one nearest to a rise of 7 1/2 in.
//
// Flights that name no riser count share what is left as evenly as they can,
// the longer ones below; those that name no run take that of the others. The
// error is source.Mistakes, where nothing is left to share.
func Fill(job *spec.Job, code *rules.Code) (*spec.Job, error) {
	if !open(job) {
		return job, nil
	}
	filled := *job
	filled.Stairway = nil
	for _, e := range job.Stairway {
		switch {
		case e.Flight != nil:
			f := *e.Flight
			e.Flight = &f
		case e.Curve != nil:
			c := *e.Curve
			e.Curve = &c
		case e.Winders != nil:
			w := *e.Winders
			e.Winders = &w
		}
		filled.Stairway = append(filled.Stairway, e)
	}
	run := namedRun(job)
	var bad source.Mistakes
	for _, s := range sections(&filled) {
		bad = append(bad, s.fill(&filled, run, code)...)
		if run == nil { // what the lowest flights got is taken for those above
			run = namedRun(&filled)
		}
	}
	bad = append(bad, turns(&filled, code)...)
	if err := bad.Err(); err != nil {
		return nil, err
	}
	return &filled, nil
}

// open tells whether a member leaves something to be chosen, or to the code.
func open(job *spec.Job) bool {
	return slices.ContainsFunc(job.Stairway, func(e spec.Element) bool {
		return e.Flight != nil && (e.Flight.Risers == nil || e.Flight.Run == nil) || e.Winders != nil || e.Curve != nil
	})
}

// namedRun is the run of the lowest flight that names one: the others are to be
// like it.
func namedRun(job *spec.Job) *measure.Length {
	for _, e := range job.Stairway {
		if e.Flight != nil && e.Flight.Run != nil {
			return e.Flight.Run
		}
	}
	return nil
}

// section is what lies between two levels that are fixed.
type section struct {
	rise      measure.Length
	winders   int // risers that winders add
	stretches int // flights as codes count them: winders part none
	climbs    []climb
}

// climb is a member that climbs: its riser count, which may be left open.
type climb struct {
	key    string // of the member in the job
	risers **int
	chosen *bool
	flight *spec.Flight // or
	curve  *spec.Curve
}

func climbOf(i int, e spec.Element) climb {
	if c := e.Curve; c != nil {
		return climb{fmt.Sprintf("stairway[%d].curve", i), &c.Risers, &c.RisersChosen, nil, c}
	}
	f := e.Flight
	return climb{fmt.Sprintf("stairway[%d].flight", i), &f.Risers, &f.RisersChosen, f, nil}
}

func sections(job *spec.Job) []section {
	var all []section
	s := section{stretches: 1}
	from := measure.Length(0)
	for i, e := range job.Stairway {
		switch {
		case e.Winders != nil:
			s.winders += e.Winders.Treads - 1
		case e.Landing == nil:
			s.climbs = append(s.climbs, climbOf(i, e))
		default:
			if built, ok := layout.BuiltLevel(job, e.Landing); ok {
				s.rise = built - from
				all, s, from = append(all, s), section{stretches: 1}, built
			} else {
				s.stretches++
			}
		}
	}
	s.rise = job.Levels.Finished() - from
	return append(all, s)
}

// fill chooses what the section's flights and curves leave open.
func (s section) fill(job *spec.Job, run *measure.Length, code *rules.Code) (bad source.Mistakes) {
	if s.rise <= 0 {
		return nil // a landing built where none can be: said when it is laid out
	}
	named := s.winders
	var unnamed []climb
	for _, c := range s.climbs {
		if *c.risers != nil {
			named += **c.risers
		} else {
			unnamed = append(unnamed, c)
		}
	}
	q := OfJob(job, code)
	q.Rise, q.Run, q.Flights, q.Risers = s.rise, run, len(s.climbs), nil
	if len(unnamed) == 0 {
		q.Risers = &named
	}
	if len(job.Stairway) > 1 {
		q.Available, q.FloorDepth, q.Opening = nil, nil, nil // they are those of one straight flight
	}
	q.Stretches = s.stretches
	best, ok := pick(q, code)
	if n, other := s.curvedCount(job, q, code, best, named, unnamed); other {
		q.Risers = &n
		best, ok = pick(q, code)
	}
	if !ok && q.Risers != nil {
		best = Choice{Risers: named, Run: q.usualRun()} // no tread that needs a run
	}
	least := 0 // risers that those that name none need
	for _, c := range unnamed {
		least += leastRisers(c)
	}
	left := best.Risers - named
	if left < least {
		for _, c := range unnamed {
			bad = append(bad, job.Mistake(c.key,
				"risers: the best count under %s for a rise of %s is %d, and %s %d: too few are left for this one; write its risers, or fewer for the others",
				code.Name, q.Style.Format(s.rise), best.Risers, s.takers(), named))
		}
		return bad
	}
	for k, c := range unnamed {
		n := part(left, len(unnamed), k)
		*c.risers, *c.chosen = &n, true
	}
	for _, c := range s.climbs {
		if f := c.flight; f != nil && f.Run == nil {
			f.Run, f.RunChosen = &best.Run, run == nil
		}
	}
	return nil
}

// part is the k-th of so many parts of a number of risers, as even as can be, the
// greater ones first.
func part(risers, parts, k int) int {
	n := risers / parts
	if k < risers%parts {
		n++
	}
	return n
}

// curvedCount is the best count of risers with which the curves that name none are
// as deep as the code asks, where the best choice is not: their run is not to be
// chosen, it follows from angle, radius and risers. other is false where there is
// no such curve, and where no count will do.
func (s section) curvedCount(job *spec.Job, q Request, code *rules.Code, best Choice, named int, unnamed []climb) (risers int, other bool) {
	if job.Width == nil || !slices.ContainsFunc(unnamed, func(c climb) bool { return c.curve != nil }) {
		return 0, false
	}
	deep := func(risers int) bool {
		left := risers - named
		for k, c := range unnamed {
			if n := part(left, len(unnamed), k); n < leastRisers(c) || c.curve != nil && !deepEnough(job, code, *c.curve, n) {
				return false
			}
		}
		return true
	}
	if deep(best.Risers) {
		return 0, false
	}
	for _, choice := range Choices(q) {
		if choice.Meets() && deep(choice.Risers) {
			return choice.Risers, true
		}
	}
	return 0, false
}

// takers are the members whose risers are not left open.
func (s section) takers() string {
	curved := slices.ContainsFunc(s.climbs, func(c climb) bool { return c.curve != nil })
	switch {
	case s.winders > 0 && curved:
		return "the winders and the members that name theirs take"
	case s.winders > 0:
		return "the winders and the flights that name theirs take"
	case curved:
		return "the members that name theirs take"
	}
	return "the flights that name theirs take"
}

// leastRisers is how many risers a member needs: a curve has two treads or more.
func leastRisers(c climb) int {
	if c.curve != nil {
		return 3
	}
	return 1
}

// usualRun is the run of flights that have no tread: it is nowhere to be seen.
func (q Request) usualRun() measure.Length {
	if q.Run != nil {
		return *q.Run
	}
	least, _ := q.runLimits()
	return least
}

// usualRise is what the rise of a stair under no code is brought nearest to.
const usualRise = 7*measure.Inch + measure.Inch/2

// pick is the choice a job gets: the best, but with the run its tread boards
// give wherever that is as good by the code and the room.
func pick(q Request, code *rules.Code) (Choice, bool) {
	if q.Risers == nil && len(code.Limits) == 0 {
		n := max(1, q.Flights, int((q.Rise+usualRise/2)/usualRise))
		q.Risers = &n
	}
	all := Choices(q)
	if len(all) == 0 {
		return Choice{}, false
	}
	best := all[0]
	if q.BoardRun != nil && q.Run == nil {
		least, most := q.runLimits()
		c := q.choice(best.Risers, min(max(*q.BoardRun, least), most), code)
		if c.Meets() == best.Meets() && c.Fits == best.Fits {
			best = c
		}
	}
	return best, true
}

// OfJob is what a job says before its risers and run are chosen, as far as its
// first flight goes.
func OfJob(job *spec.Job, code *rules.Code) Request {
	q := Request{
		Rise: job.Levels.Finished(), Available: job.AvailableRun,
		Nosing: &job.Tread.Nosing, Front: job.Tread.Nosing + job.Riser.Thickness,
		Open: &job.Riser.Open, Stock: job.Stringer.Stock.Size,
		FloorDepth: job.Levels.FloorDepth, Opening: job.Opening,
		Code: code, Style: measure.Style{Units: job.Units},
	}
	if f := job.Stairway[0].Flight; f != nil {
		q.Risers, q.Run, q.Flush, q.Stock = f.Risers, f.Run, f.Stringer.Head == spec.Flush, f.Stringer.Stock.Size
	}
	if b := job.Tread.Boards; b != nil {
		run := b.Width*measure.Length(b.Count) - job.Tread.Nosing
		q.BoardRun = &run
	}
	return q
}
