package choose

import (
	"fmt"
	"math"
	"strings"

	"stepoff/layout"
	"stepoff/layout/check"
	"stepoff/layout/turn"
	"stepoff/spec"
	"stepoff/spec/measure"
	"stepoff/spec/rules"
	"stepoff/spec/source"
)

// turns fills in where the code measures winders and the treads of curves, how
// deep they have to be there, and the set-backs that are left open. It says what
// cannot be: walklines beyond the stair's width, winders that no set-back makes
// deep enough, curves whose narrow ends are not. A set-back that is given is for
// check to judge.
func turns(job *spec.Job, code *rules.Code) (bad source.Mistakes) {
	if job.Width == nil {
		return nil
	}
	for i, e := range job.Stairway {
		switch {
		case e.Winders != nil:
			w, key := e.Winders, fmt.Sprintf("stairway[%d].winders", i)
			w.Depths = taken(job, code, w.Walkline, w.Depths.Arc, false)
			if w.Narrow != nil {
				w.Depths.LeastNarrow = *w.Narrow
			}
			wrong := withinWidth(job, code, "winders", w.Walkline, w.Depths, false)
			if len(wrong) == 0 && w.Setback == nil {
				wrong = setback(job, code, key, w)
			}
			bad = append(bad, wrong...)
		case e.Curve != nil && e.Curve.Risers != nil:
			c, key := e.Curve, fmt.Sprintf("stairway[%d].curve", i)
			c.Depths = taken(job, code, c.Walkline, c.Depths.Arc, true)
			wrong := withinWidth(job, code, "a curve", c.Walkline, c.Depths, true)
			if len(wrong) == 0 {
				wrong = radius(job, code, key, c)
			}
			bad = append(bad, wrong...)
		}
	}
	return bad
}

// taken is where a turn is measured and how deep it has to be there: by the code,
// but for the walkline that the job names.
func taken(job *spec.Job, code *rules.Code, own *measure.Length, arc, curve bool) spec.Depths {
	d := check.Depths(job, code, curve)
	d.Arc = arc
	if own != nil {
		d.Walklines = []measure.Length{*own}
	}
	return d
}

// withinWidth says where the code measures beyond a narrow stair. It does so where
// the job names a walkline too, unless the code leaves it to the job.
func withinWidth(job *spec.Job, code *rules.Code, what string, own *measure.Length, d spec.Depths, curve bool) source.Mistakes {
	if own != nil && !check.ByOwnWalkline(code) {
		d.Walklines = check.Depths(job, code, curve).Walklines
	}
	for _, c := range []struct {
		name string
		at   []measure.Length
	}{{"the walkline", d.Walklines}, {"the narrow end", []measure.Length{d.NarrowAt}}} {
		for _, l := range c.at {
			if l < 0 || l >= *job.Width {
				say := measure.Style{Units: job.Units}.Format
				return source.Mistakes{job.Mistake("width", "width: with %s %s measures %s %s from the inside edge, which does not lie within a clear width of %s; make the stair wider",
					what, code.Name, c.name, say(max(l, *job.Width-l)), say(*job.Width))}
			}
		}
	}
	return nil
}

// setback chooses the least set-back that is deep enough.
func setback(job *spec.Job, code *rules.Code, key string, w *spec.Winders) source.Mistakes {
	plan := layout.PlanOf(w, job)
	if least, ok := plan.LeastSetback(); ok {
		w.Setback, w.SetbackChosen = &least, true
		return nil
	}
	st := measure.Style{Units: job.Units}
	var short []string
	at := plan.At(turn.Start, turn.MostSetback.MM())
	for _, c := range []struct {
		where string
		least measure.Length
		depth func(turn.Tapered) float64
		limit func(*rules.Code, bool) (rules.Limit, bool)
	}{
		{"on the walkline", w.Depths.LeastWalkline, func(t turn.Tapered) float64 { return t.Walkline }, check.WalklineLimit},
		{"at its narrow end", w.Depths.LeastNarrow, narrow, check.NarrowLimit},
	} {
		got := shallow(at, c.depth)
		if got >= c.least.MM() {
			continue
		}
		by := "the job"
		if l, ok := c.limit(code, false); ok && (c.least == l.Length || l.Of == rules.UnitRun) {
			by = code.Name + ", " + l.Section
		}
		short = append(short, fmt.Sprintf("%s deep %s (%s), and with %s of set-back there are %s: %s too little", st.Inches(c.least), c.where, by,
			st.Inches(turn.MostSetback), st.InchesMM(got), st.InchesMM(c.least.MM()-got)))
	}
	does := check.Instead(plan, nil, st)
	if w.Narrow != nil {
		does = append(does, "less for narrow")
	}
	if len(does) == 0 {
		does = []string{"a landing in their place"}
	}
	return source.Mistakes{job.Mistake(key, "winders: no set-back makes every tread %s; what would do: %s", strings.Join(short, ", nor "), strings.Join(does, ", or "))}
}

func narrow(t turn.Tapered) float64 { return t.Narrow }

// shallow is the least of the treads' depths.
func shallow(l *turn.Laid, depth func(turn.Tapered) float64) float64 {
	least := math.Inf(1)
	for _, t := range l.Treads {
		least = min(least, depth(t))
	}
	return least
}

// shallowest is the least depth at the inside edge that is a tread at all.
const shallowest = measure.Nanometre

// radius says where the treads of a curve are not deep enough at their narrow
// ends: nothing but its inside radius is to blame for that, where angle and
// risers are given. It says too where the radius is so large that this is no curve.
func radius(job *spec.Job, code *rules.Code, key string, c *spec.Curve) source.Mistakes {
	st := measure.Style{Units: job.Units}
	if c.InsideRadius > turn.MostInside {
		return source.Mistakes{job.Mistake(key+".inside_radius", "inside_radius: a curve with more than %s is as good as straight; write a smaller radius, or a flight", st.Format(turn.MostInside))}
	}
	plan := layout.RoundOf(c, job)
	plan.Depths.LeastWalkline = 0 // for check to judge
	plan.Depths.LeastNarrow = max(plan.Depths.LeastNarrow, shallowest.MM())
	if plan.Meets() {
		return nil
	}
	if each := c.Angle / float64(plan.Treads); each >= 90 {
		return source.Mistakes{job.Mistake(key+".angle", "angle: each of the %d treads turns %.4g degrees, and at 90 or more the next nosing does not face the one before; write more risers, or a smaller angle", plan.Treads, each)}
	}
	got := shallow(plan.At(turn.Start), narrow)
	why := fmt.Sprintf("at the inside the nosings, %s before their riser lines, meet: nothing is left of the treads there", st.InchesMM(plan.Overhang))
	if l, ok := check.NarrowLimit(code, true); ok && got > 0 {
		why = fmt.Sprintf("the treads are %s deep at their narrow ends, and %s asks for %s there (%s): %s too little",
			st.InchesMM(got), code.Name, st.Inches(l.Length), l.Section, st.InchesMM(l.Length.MM()-got))
	} else if ok {
		why += fmt.Sprintf(", and %s asks for %s (%s)", code.Name, st.Inches(l.Length), l.Section)
	}
	return source.Mistakes{job.Mistake(key+".inside_radius", "inside_radius: %s; what would do: %s", why, check.DeeperCurve(plan, st))}
}

// deepEnough tells whether the treads of a curve of so many risers are as deep as
// the code asks, on the walkline and at their narrow ends.
func deepEnough(job *spec.Job, code *rules.Code, c spec.Curve, risers int) bool {
	c.Risers = &risers
	c.Depths = check.MeasuredAs(job, code, c.Walkline, true)
	c.Depths.LeastNarrow = max(c.Depths.LeastNarrow, shallowest)
	return layout.RoundOf(&c, job).Meets()
}
