package check

import (
	"stepoff/layout"
	"stepoff/layout/turn"
	"stepoff/spec"
	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

// windersFacts gathers what is known of a turn of winders. Its risers are those
// at its treads: the first is the lower flight's last, the last the upper one's
// first.
func windersFacts(f *Facts, s *layout.Stairway, w *layout.Winders, code *rules.Code) {
	asked := *w.Spec
	asked.Depths = MeasuredAs(s.Job, code, w.Spec.Walkline, false)
	plan := layout.PlanOf(&asked, s.Job)
	laid := plan.At(turn.Start, w.Spec.Setback.MM())
	f.Turn = &Turn{
		Angle: w.Spec.Angle, Lines: asked.Depths.Walklines, Treads: tapered(laid), Beside: beside(s, w),
		Winders: &plan, Setback: *w.Spec.Setback, Narrow: w.Spec.Narrow,
	}
	if _, ok := WalklineLimit(code, false); ok { // elsewhere winders have no run
		f.onWalkline()
	}
	f.Risers = Even(w.Part.Rise(), w.Part.Risers, w.Spec.Treads+1)
	f.treads(s, w.Part, w.Levels, w.Boards)
	for range w.Spec.Treads {
		f.Nosings = append(f.Nosings, s.Job.Tread.Nosing)
	}
}

// curveFacts gathers what is known of a curved flight: a flight whose runs are
// those on the walkline.
func curveFacts(f *Facts, s *layout.Stairway, c *layout.Curve, code *rules.Code) {
	job := s.Job
	asked := *c.Spec
	asked.Depths = MeasuredAs(job, code, c.Spec.Walkline, true)
	plan := layout.RoundOf(&asked, job)
	f.Turn = &Turn{
		Curve: true, Angle: c.Spec.Angle, Lines: asked.Depths.Walklines, Treads: tapered(plan.At(turn.Start)),
		Radius: &c.Spec.InsideRadius, Round: &plan,
	}
	f.onWalkline()
	f.Risers = Even(c.Part.Rise(), c.Part.Risers, c.Risers)
	f.treads(s, c.Part, c.Levels, c.Boards)
	for range c.Risers - 1 {
		f.Nosings = append(f.Nosings, job.Tread.Nosing)
	}
	floor := job.Tread.Nosing
	if n := job.Stringer.TopNosing; n != nil && c.Head == nil {
		floor, f.FloorNosing = *n, true
	}
	f.Nosings = append(f.Nosings, floor)

	unit := Share{c.Part.Rise(), c.Part.Risers}
	below, above := measure.Length(0), job.Levels.UpperFinish // floors that come after the treads
	if l, ok := c.Foot.(*layout.Landing); ok {
		below = l.Flooring()
	} else if c.Foot == nil && job.Stringer.FootOn == spec.Rough {
		below = job.Levels.LowerFinish
	}
	if l, ok := c.Head.(*layout.Landing); ok {
		above = l.Flooring()
	} else if c.Head != nil {
		above = 0
	}
	f.First = stages(unit, unit.Plus(below-job.Tread.Thickness), unit.Plus(below))
	f.Last = stages(unit, unit.Plus(job.Tread.Thickness-above), unit.Plus(-above))
}

// treads gathers what winders and curves have in common: where their treads are
// and what is known of those.
func (f *Facts) treads(s *layout.Stairway, part layout.Part, levels []float64, boards []layout.TaperedBoard) {
	job := s.Job
	f.Plan, f.TotalRise = &Plan{part.Rise(), part.Risers}, &s.TotalRise
	f.Width, f.OpenSides, f.LiveLoad = job.Width, openSides(job), job.Loads.Live
	f.OpenRisers, f.TreadThickness = &job.Riser.Open, &job.Tread.Thickness
	if run, ok := longestRun(job); ok {
		f.FlightRun = &run
	}
	top := levels[len(levels)-1]
	f.Drop = &top
	if job.Riser.Open {
		f.Gap = &Gap{Share{part.Rise(), part.Risers}.Plus(-job.Tread.Thickness), top - job.Tread.Thickness.MM()}
	}
	if b := job.Tread.Boards; b != nil {
		deepest := 0.0
		for _, board := range boards {
			deepest = max(deepest, board.Deep)
		}
		width := b.Width * measure.Length(b.Count)
		f.TreadDepth, f.TreadBoards = &deepest, &width
	}
}

// onWalkline takes the depths on the walkline for runs.
func (f *Facts) onWalkline() {
	f.OnWalkline = true
	for _, t := range f.Turn.Treads {
		run, _ := measure.FromMM(t.Walkline)
		f.Runs = append(f.Runs, run)
	}
}

// beside are the flights right below and right above winders; one without a tread
// has no run.
func beside(s *layout.Stairway, w *layout.Winders) []Beside {
	var all []Beside
	for _, f := range s.Flights() {
		if below := f.Head == layout.Turn(w); f.Risers > 1 && (below || f.Foot == layout.Turn(w)) {
			all = append(all, Beside{f.Name, f.UnitRun, !below})
		}
	}
	return all
}

func tapered(laid *turn.Laid) []Tapered {
	var all []Tapered
	for _, t := range laid.Treads {
		all = append(all, Tapered{Walkline: t.Walkline, Narrow: t.Narrow, Angle: t.Angle})
	}
	return all
}
