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
		if e.Flight != nil {
			f := *e.Flight
			e.Flight = &f
		}
		filled.Stairway = append(filled.Stairway, e)
	}
	run := namedRun(job)
	var bad source.Mistakes
	for _, s := range sections(&filled) {
		bad = append(bad, s.fill(&filled, run, code)...)
		if run == nil { // what the lowest flights got is taken for those above
			run = filled.Stairway[s.flights[0]].Flight.Run
		}
	}
	if err := bad.Err(); err != nil {
		return nil, err
	}
	return &filled, nil
}

// open tells whether a flight leaves something to be chosen.
func open(job *spec.Job) bool {
	return slices.ContainsFunc(job.Stairway, func(e spec.Element) bool {
		return e.Flight != nil && (e.Flight.Risers == nil || e.Flight.Run == nil)
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

// section is the flights between two levels that are fixed.
type section struct {
	rise    measure.Length
	flights []int // which members of the stairway
}

func sections(job *spec.Job) []section {
	var all []section
	var s section
	from := measure.Length(0)
	for i, e := range job.Stairway {
		if e.Flight != nil {
			s.flights = append(s.flights, i)
		} else if built, ok := layout.BuiltLevel(job, e.Landing); ok {
			s.rise = built - from
			all, s, from = append(all, s), section{}, built
		}
	}
	s.rise = job.Levels.Finished() - from
	return append(all, s)
}

// fill chooses what the section's flights leave open.
func (s section) fill(job *spec.Job, run *measure.Length, code *rules.Code) (bad source.Mistakes) {
	if s.rise <= 0 {
		return nil // a landing built where none can be: said when it is laid out
	}
	named := 0
	var unnamed []*spec.Flight
	for _, i := range s.flights {
		if f := job.Stairway[i].Flight; f.Risers != nil {
			named += *f.Risers
		} else {
			unnamed = append(unnamed, f)
		}
	}
	q := OfJob(job, code)
	q.Rise, q.Run, q.Flights, q.Risers = s.rise, run, len(s.flights), nil
	if len(unnamed) == 0 {
		q.Risers = &named
	}
	if len(job.Stairway) > 1 {
		q.Available, q.FloorDepth, q.Opening = nil, nil, nil // they are those of one straight flight
	}
	best, ok := pick(q, code)
	if !ok && q.Risers != nil {
		best = Choice{Risers: named, Run: q.usualRun()} // no tread that needs a run
	}
	left := best.Risers - named
	if left < len(unnamed) {
		for _, i := range s.flights {
			if f := job.Stairway[i].Flight; f.Risers == nil {
				bad = append(bad, job.Mistake(fmt.Sprintf("stairway[%d].flight", i),
					"risers: the best count under %s for a rise of %s is %d, and the flights that name theirs take %d: too few are left for this one; write its risers, or fewer for the others",
					code.Name, q.Style.Format(s.rise), best.Risers, named))
			}
		}
		return bad
	}
	for k, f := range unnamed {
		n := left / len(unnamed)
		if k < left%len(unnamed) {
			n++
		}
		f.Risers, f.RisersChosen = &n, true
	}
	for _, i := range s.flights {
		f := job.Stairway[i].Flight
		if f.Run == nil {
			f.Run, f.RunChosen = &best.Run, run == nil
		}
	}
	return nil
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
	f := job.Stairway[0].Flight
	q := Request{
		Rise: job.Levels.Finished(), Risers: f.Risers, Run: f.Run, Available: job.AvailableRun,
		Flush: f.Stringer.Head == spec.Flush, Nosing: &job.Tread.Nosing, Front: job.Tread.Nosing + job.Riser.Thickness,
		Open: &job.Riser.Open, Stock: f.Stringer.Stock.Size,
		FloorDepth: job.Levels.FloorDepth, Opening: job.Opening,
		Code: code, Style: measure.Style{Units: job.Units},
	}
	if b := job.Tread.Boards; b != nil {
		run := b.Width*measure.Length(b.Count) - job.Tread.Nosing
		q.BoardRun = &run
	}
	return q
}
