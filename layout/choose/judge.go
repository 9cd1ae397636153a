package choose

import (
	"cmp"
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
	used := c.TotalRun + q.Front.MM()
	if q.Available != nil {
		c.TooLong = math.Max(0, measure.SnapMM(used-q.Available.MM()))
	}
	c.Fits = c.TooLong == 0

	stretches := max(1, cmp.Or(q.Stretches, q.Flights))
	longest := (risers + stretches - 1) / stretches // the flight with the most risers
	facts := check.Facts{
		Style:     q.Style,
		Plan:      &check.Plan{TotalRise: q.Rise, Risers: risers},
		Risers:    check.Even(q.Rise, risers, longest),
		TotalRise: &q.Rise,
	}
	if c.Treads > 0 { // a single riser has no stringer
		facts.Stringers = []check.Stringer{{Where: "all", Width: q.Stock.Width, Thickness: q.Stock.Thickness, Throat: &c.Throat}}
		c.NeedsPosts = needsPosts(c.TotalRun/float64(max(1, q.Flights)), code)
	}
	for range longest - 1 {
		facts.Runs = append(facts.Runs, run)
		if q.Nosing != nil {
			facts.Nosings = append(facts.Nosings, *q.Nosing)
		}
	}
	facts.OpenRisers, facts.HungHead = q.Open, !q.Flush
	facts.AvailableRun, facts.UsedRun = q.Available, &used
	q.overhead(&c, &facts, code)
	c.Findings = check.Judge(facts, code)
	return c
}

// needsPosts tells whether a sawn stringer of that span is longer than the code
// lets it be. It is told beside the verdict: a post or a wall under it puts it
// right, which is the carpenter's choice and no other riser count.
func needsPosts(span float64, code *rules.Code) bool {
	found := check.Judge(check.Facts{Stringers: []check.Stringer{{Where: "all", Span: &span}}}, code)
	return check.Fails(found)
}

// overhead works out the opening a choice needs, and the headroom it leaves.
func (q Request) overhead(c *Choice, facts *check.Facts, code *rules.Code) {
	if q.FloorDepth == nil {
		return
	}
	over := layout.Overhead{
		Rise: c.UnitRise, Run: c.Run.MM(), TotalRise: q.Rise.MM(), FloorDepth: q.FloorDepth.MM(),
		FirstNosing: -q.Front.MM(), Head: c.TotalRun,
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
