package choose

import (
	"math"

	"stepoff/layout"
	"stepoff/layout/check"
	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

// choice works one pair of riser count and run out and judges it by the very
// rules that check holds a job against.
func (q Request) choice(risers int, run measure.Length, code *rules.Code) Choice {
	c := Choice{
		Risers: risers, Treads: q.treads(risers), UnitRise: q.Rise.PartMM(1, risers), Run: run,
	}
	c.TotalRun = run.MM() * float64(c.Treads)
	c.Pitch = math.Atan2(c.UnitRise, run.MM())
	c.Throat = q.Stock.Width.MM() - c.UnitRise*run.MM()/math.Hypot(c.UnitRise, run.MM())
	used := c.TotalRun + q.front()
	c.Fits = q.Available == nil || measure.SnapMM(used) <= q.Available.MM()

	longest := (risers + max(1, q.Flights) - 1) / max(1, q.Flights) // the flight with the most risers
	facts := check.Facts{
		Style:     q.Style,
		Plan:      &check.Plan{TotalRise: q.Rise, Risers: risers},
		Risers:    check.Even(q.Rise, risers, longest),
		TotalRise: &q.Rise,
		Stringers: []check.Stringer{{Where: "all", Width: q.Stock.Width, Thickness: q.Stock.Thickness, Throat: &c.Throat}},
	}
	for range longest - 1 {
		facts.Runs = append(facts.Runs, run)
		if q.Nosing != nil {
			facts.Nosings = append(facts.Nosings, *q.Nosing)
		}
	}
	facts.OpenRisers = q.Open
	facts.AvailableRun, facts.UsedRun = q.Available, &used
	q.overhead(&c, &facts, code)
	c.Findings = check.Judge(facts, code)
	return c
}

// front is how far the first nosing stands before the first riser cut, as far
// as it is known.
func (q Request) front() float64 {
	front := q.RiserBoard.MM()
	if q.Nosing != nil {
		front += q.Nosing.MM()
	}
	return front
}

// overhead works out the opening a choice needs, and the headroom it leaves.
func (q Request) overhead(c *Choice, facts *check.Facts, code *rules.Code) {
	if q.FloorDepth == nil {
		return
	}
	over := layout.Overhead{
		Rise: c.UnitRise, Run: c.Run.MM(), TotalRise: q.Rise.MM(), FloorDepth: q.FloorDepth.MM(),
		FirstNosing: -q.front(), Head: c.TotalRun,
	}
	if limit, ok := code.Limit(rules.HeadroomMin); ok {
		if needed, ok := over.OpeningFor(limit.Length.MM()); ok {
			c.Opening = &needed
		}
	}
	if q.Opening != nil {
		least, _ := over.Least(q.Opening.MM())
		c.Headroom = &least
	}
	facts.Overhead, facts.Opening = &over, q.Opening
}
