package check

import (
	"stepoff/layout"
	"stepoff/spec"
	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

// Stairway holds a stairway that was laid out against a code, member by member.
// The style prints the lengths in the findings' texts.
func Stairway(s *layout.Stairway, code *rules.Code, st measure.Style) []Finding {
	var all []Finding
	said := map[string]bool{} // why there is no verdict is said once
	for _, facts := range FactsOf(s, code, st) {
		if f, ok := facts.Of.(*layout.Flight); ok {
			facts.Strength = s.Strength(f, code)
		}
		if w := facts.Strength; w != nil && w.Unknown != "" {
			if said[w.Unknown] {
				facts.Strength = nil
			}
			said[w.Unknown] = true
		}
		all = append(all, Judge(facts, code)...)
	}
	return all
}

// FactsOf gathers what is known of each member of a stairway, from the bottom up,
// of the flights as codes count them where winders join members, and of the
// whole. Where tapered treads are measured is the code's to say.
func FactsOf(s *layout.Stairway, code *rules.Code, st measure.Style) []Facts {
	var all, landings []Facts
	through := joined(s)
	for _, e := range s.Elements {
		facts := Facts{Style: st, Of: e, Part: e.Label()}
		if len(s.Elements) == 1 {
			facts.Part = ""
		}
		switch e := e.(type) {
		case *layout.Flight:
			g := gatherer{s, s.Job, e, &facts}
			g.steps()
			g.foot()
			g.head()
			g.sides()
			g.wood()
		case *layout.Curve:
			curveFacts(&facts, s, e, code)
		case *layout.Winders:
			windersFacts(&facts, s, e, code)
		case *layout.Landing:
			landings = append(landings, landingFacts(s, e, st))
			continue
		}
		for _, j := range through {
			if j.has(e) {
				facts.Flight, facts.Member = j.risers, true
			}
		}
		if !facts.Member {
			inLine := risersInLine(s, e)
			facts.RisersInLine = &inLine
		}
		all = append(all, facts)
	}
	for _, j := range through {
		inLine := risersInLine(s, j.members[0])
		all = append(all, Facts{Style: st, Part: j.name(), Flight: j.risers, RisersInLine: &inLine})
	}
	all = append(all, landings...)
	if !oneFlight(s) || s.Job.Room != (spec.Room{}) {
		all = append(all, wholeFacts(s, st))
	}
	return all
}

// oneFlight tells whether the stairway is one straight flight: some of what a job
// states is that of such a stair.
func oneFlight(s *layout.Stairway) bool { return len(s.Elements) == 1 && len(s.Flights()) == 1 }

// gatherer fills the facts of one flight.
type gatherer struct {
	s   *layout.Stairway
	job *spec.Job
	f   *layout.Flight
	*Facts
}

// unit is the unit rise, exactly.
func (g gatherer) unit() Share { return unitOf(g.f) }

func unitOf(f *layout.Flight) Share { return Share{f.Part.Rise(), f.Part.Risers} }

func (g gatherer) steps() {
	f, job := g.f, g.job
	g.Plan = &Plan{f.Part.Rise(), f.Part.Risers}
	g.Risers = Even(f.Part.Rise(), f.Part.Risers, f.Risers)
	g.TotalRise = &g.s.TotalRise
	for range f.Risers - 1 {
		g.Runs = append(g.Runs, f.UnitRun)
		g.Nosings = append(g.Nosings, job.Tread.Nosing)
	}
	g.OpenRisers = &job.Riser.Open
	g.HungHead = f.Hung()
	if f.Treads == 0 {
		return
	}
	g.TreadThickness = &job.Tread.Thickness
	top := f.TreadLevels[len(f.TreadLevels)-1]
	g.Drop = &top
	if job.Riser.Open {
		g.Gap = &Gap{g.unit().Plus(-job.Tread.Thickness), top - job.Tread.Thickness.MM()}
	}
	if b := job.Tread.Boards; b != nil {
		deepest := 0.0
		for _, board := range f.Boards {
			if board.Kind == layout.TreadBoard {
				deepest = max(deepest, board.Depth)
			}
		}
		width := b.Width * measure.Length(b.Count)
		g.TreadDepth, g.TreadBoards = &deepest, &width
	}
}

// foot gathers what stands on the lower floor or on a landing: the first riser at each stage of
// the work and, where the pad slopes, at both edges.
func (g gatherer) foot() {
	f, job := g.f, g.job
	if f.Treads == 0 {
		return
	}
	below := f.Flooring // down to today's floor, while the stair goes in
	later := below
	if _, ok := f.Foot.(*layout.Winders); ok {
		later = 0 // what is laid on winders are their treads: with the stair's own
	}
	g.First = stages(g.unit(), g.unit().Plus(below-job.Tread.Thickness), g.unit().Plus(later))

	levels := f.Spec.Stringer.FootLevels
	if len(levels) < 2 {
		return
	}
	last := len(levels) - 1
	steepest := measure.Length(0)
	for i := range last {
		steepest = max(steepest, (levels[i+1] - levels[i]).Abs())
	}
	if levels[0] != 0 || levels[last] != 0 {
		g.Foot = []Edge{{"left", g.unit().Plus(-levels[0])}, {"right", g.unit().Plus(-levels[last])}}
	}
	if job.Width != nil {
		// The stringers stand evenly over the width: the fall between two of
		// them, as many times as there are spaces, over the whole width.
		g.Pad = &Fall{steepest * measure.Length(last), *job.Width}
	}
}

// stages names a riser while the stair goes in, once its treads are on, and
// once the floor is laid; a stage that changes nothing is left out.
func stages(finished, rough, treads Share) []Stage {
	var all []Stage
	if rough.apart(treads).Total != 0 {
		all = append(all, Stage{"rough, before the treads", rough})
	}
	if treads.apart(finished).Total != 0 {
		all = append(all, Stage{treadsOn, treads})
	}
	return append(all, Stage{"finished", finished})
}

// head gathers what meets the upper floor or a landing.
func (g gatherer) head() {
	f, job := g.f, g.job
	st := &f.Spec.Stringer
	floor := job.Tread.Nosing
	above := job.Levels.UpperFinish
	if f.Head != nil {
		above = f.Head.Flooring()
	} else if st.TopNosing != nil {
		floor, g.FloorNosing = *st.TopNosing, true
	}
	g.Nosings = append(g.Nosings, floor)
	if f.Foot == nil && f.Head == nil { // they are those of one straight flight
		g.Opening, g.AvailableRun = job.Opening, job.AvailableRun
	}
	if f.Treads == 0 || !f.HasStringers() {
		return
	}
	step := job.Tread.Thickness // of the last riser before the treads are on: the floor stands, the tread does not
	if !f.Hung() {
		step = 0 // both its treads are the stair's own
	}
	if !f.Hung() {
		above = 0
	}
	later := above
	if _, ok := f.Head.(*layout.Winders); ok {
		later = 0 // what is laid on winders are their treads: with the stair's own
	}
	g.Last = stages(g.unit(), g.unit().Plus(step-above), g.unit().Plus(-later))

	overhang := (job.Riser.Thickness + job.Tread.Nosing).MM()
	headX := f.HeadX()
	used := headX + overhang
	g.UsedRun = &used
	if f.Hung() {
		face := headX + st.BehindHead.MM() // what faces the stair above the last tread
		if st.TopRiser {
			face -= job.Riser.Thickness.MM()
		}
		lastNosing := float64(f.Treads-1)*f.UnitRun.MM() - overhang
		g.TopRun = &TopRun{Run: face - floor.MM() - lastNosing, LastCut: f.LastTread(), Covered: st.TopRiser && !job.Riser.Open, Floor: floor}
	}
	if f.Foot == nil && f.Head == nil {
		g.Overhead = g.s.Overhead()
	}
	bears := func(c *float64) {
		if c != nil && (g.HeadContact == nil || *c < *g.HeadContact) {
			g.HeadContact = c
		}
	}
	for i := range f.Strings {
		bears(f.Strings[i].HeadContact)
	}
	for i := range f.Stringers {
		group := &f.Stringers[i]
		bears(group.HeadContact)
		if l := group.Ledger; l != nil {
			g.Ledger = &Ledger{Height: l.Height, HeadCut: group.HeadCut}
		}
	}
}

func (g gatherer) sides() {
	g.Width, g.OpenSides = g.job.Width, openSides(g.job)
}

func openSides(job *spec.Job) *[]string {
	if len(job.Sides) == 0 {
		return nil
	}
	open := []string{}
	for i, side := range job.Sides {
		if side == spec.Open {
			open = append(open, [...]string{"left", "right"}[i])
		}
	}
	return &open
}

// wood gathers the stringers: those held at their ends and those fastened along
// a wall. Whatever their feet stand on, they are alike otherwise.
func (g gatherer) wood() {
	st := &g.f.Spec.Stringer
	g.LiveLoad = g.job.Loads.Live
	if !g.f.HasStringers() {
		return
	}
	g.StringerCount = &st.Count
	if g.f.Spacing > 0 {
		g.Spacing = &g.f.Spacing
	}
	var at []float64
	var throat *float64 // of what is sawn
	if len(g.f.Strings) > 0 {
		at = g.f.Strings[0].Supports(st.Props)
	} else {
		at, throat = layout.Supports(&g.f.Stringers[0], st.Props), &g.f.Stringers[0].Throat
	}
	span := longestSpan(at)
	for _, held := range []spec.Support{spec.Span, spec.AlongWall} {
		var these layout.Group
		for p := range st.Count {
			if layout.SupportAt(st, p) == held {
				these.Positions = append(these.Positions, p)
			}
		}
		if len(these.Positions) == 0 {
			continue
		}
		s := Stringer{Where: these.Where(st.Count), AlongWall: held == spec.AlongWall, Solid: st.Build != spec.Sawn,
			Width: st.Stock.Width, Thickness: st.Stock.Thickness, Span: &span, Throat: throat}
		g.Stringers = append(g.Stringers, s)
	}
}

// longestSpan is the longest level distance between neighbouring supports.
func longestSpan(at []float64) float64 {
	longest := 0.0
	for i := 1; i < len(at); i++ {
		longest = max(longest, at[i]-at[i-1])
	}
	return longest
}
