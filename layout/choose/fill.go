package choose

import (
	"stepoff/spec"
	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

// Fill gives a job what it leaves open: the riser count, the unit run or both,
// the best choice under the code. A job that leaves nothing open comes back as
// it is; the job itself is never changed. Where the code sets no limits the
// count is the one nearest to a rise of 7 1/2 in.
func Fill(job *spec.Job, code *rules.Code) *spec.Job {
	if len(job.Stairway) != 1 || job.Stairway[0].Flight == nil {
		return job
	}
	f := *job.Stairway[0].Flight
	if f.Risers != nil && f.Run != nil {
		return job
	}
	best, ok := pick(OfJob(job, code), code)
	if !ok {
		return job
	}
	f.RisersChosen, f.RunChosen = f.Risers == nil, f.Run == nil
	f.Risers, f.Run = &best.Risers, &best.Run
	filled := *job
	filled.Stairway = []spec.Element{{Flight: &f}}
	return &filled
}

// usualRise is what the rise of a stair under no code is brought nearest to.
const usualRise = 7*measure.Inch + measure.Inch/2

// pick is the choice a job gets: the best, but with the run its tread boards
// give wherever that is as good by the code and the room.
func pick(q Request, code *rules.Code) (Choice, bool) {
	if q.Risers == nil && len(code.Limits) == 0 {
		n := max(1, int((q.Rise+usualRise/2)/usualRise))
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

// OfJob is what a job says before its risers and run are chosen.
func OfJob(job *spec.Job, code *rules.Code) Request {
	f := job.Stairway[0].Flight
	q := Request{
		Rise: job.Levels.Finished(), Risers: f.Risers, Run: f.Run, Available: job.AvailableRun,
		Flush: f.Stringer.Head == spec.Flush, Nosing: &job.Tread.Nosing, RiserBoard: job.Riser.Thickness,
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
