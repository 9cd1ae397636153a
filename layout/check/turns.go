package check

import (
	"cmp"
	"fmt"
	"math"

	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

func (j *judge) landingSize() {
	for _, g := range j.Landings {
		for _, c := range []struct {
			key  rules.Key
			what string
			size float64
		}{{rules.LandingLengthMin, "long", g.Length}, {rules.LandingWidthMin, "wide", g.Width}} {
			l, ok := j.limit(c.key)
			if !ok {
				continue
			}
			if least, known := j.relative(l); known {
				j.atLeast(compareMM(c.size, least), bound{limit: l, to: length(least), actual: mm(c.size),
					found: fmt.Sprintf("%s is %s %s", g.Name, j.exactly(c.size), c.what)})
			}
		}
	}
}

// relative returns the length a limit comes to: its own, or the stair's width
// or run. ok is false where that is not known.
func (j *judge) relative(l rules.Limit) (least measure.Length, ok bool) {
	width := j.Width
	if width == nil {
		width = j.FlightWidth
	}
	switch {
	case l.Of == rules.Itself:
		return l.Length, true
	case l.Of == rules.StairWidth && width != nil:
		if l.Length > 0 {
			return min(*width, l.Length), true
		}
		return *width, true
	case l.Of == rules.UnitRun && len(j.Runs) > 0:
		return j.Runs[0], true
	case l.Of == rules.UnitRun && j.FlightRun != nil:
		return *j.FlightRun, true
	case l.Of == rules.UnitRun:
		least, ok := j.limit(rules.RunMin)
		return least.Length, ok
	}
	return 0, false
}

// tapered returns the limit for winders or, in a curve, that for tapered treads
// where the code tells the two apart.
func (j *judge) tapered(t Turn, winder, tapered rules.Key) (rules.Limit, bool) {
	if l, ok := j.limit(tapered); ok && t.Curve {
		return l, true
	}
	return j.limit(winder)
}

// treadName names the k-th tread of a turn.
func (t Turn) treadName(k int) string {
	if t.Curve {
		return fmt.Sprintf("%s: tread %d", t.Name, k+1)
	}
	return fmt.Sprintf("%s: winder %d", t.Name, k+1)
}

// leastOf returns the tread whose depth, as told, is least.
func (t Turn) leastOf(depth func(Tapered) float64) (k int, v float64) {
	v = math.Inf(1)
	for i, tread := range t.Treads {
		if d := depth(tread); d < v {
			k, v = i, d
		}
	}
	return k, v
}

func (j *judge) winderWalkline() {
	j.depth("deep on the walkline", rules.WinderWalklineMin, rules.TaperedWalklineMin, func(t Tapered) float64 { return t.Walkline })
}

func (j *judge) winderNarrow() {
	j.depth("deep at the narrow end", rules.WinderNarrowMin, rules.TaperedNarrowMin, func(t Tapered) float64 { return t.Narrow })
}

func (j *judge) depth(where string, winder, tapered rules.Key, of func(Tapered) float64) {
	for _, t := range j.Turns {
		l, ok := j.tapered(t, winder, tapered)
		if !ok || len(t.Treads) == 0 {
			continue
		}
		if least, known := j.relative(l); known {
			k, v := t.leastOf(of)
			j.atLeast(compareMM(v, least), bound{limit: l, to: length(least), actual: mm(v), by: j.datum(),
				found: fmt.Sprintf("%s is %s %s", t.treadName(k), j.exactly(v), where), right: "a greater set-back, or fewer treads in the turn"})
		}
	}
}

// datum is what says where the code measures a winder.
func (j *judge) datum() (by []rules.Limit) {
	keys := []rules.Key{rules.WalklineFrom, rules.WalklineDatum}
	if j.rule.ID == "winder-narrow" {
		keys = []rules.Key{rules.WinderNarrowDatum}
	}
	for _, key := range keys {
		if l, ok := j.limit(key); ok {
			by = append(by, l)
		}
	}
	return by
}

func (j *judge) winderVariation() {
	l, ok := j.limit(rules.WinderVariation)
	if !ok {
		return
	}
	for _, t := range j.Turns {
		if len(t.Treads) == 0 {
			continue
		}
		lo, least := t.leastOf(func(d Tapered) float64 { return d.Walkline })
		hi, most := t.leastOf(func(d Tapered) float64 { return -d.Walkline })
		apart := -most - least
		j.atMost(compareMM(apart, l.Length), bound{limit: l, actual: mm(apart), by: j.datum(),
			found: fmt.Sprintf("%s and %d differ by %s on the walkline", t.treadName(hi), lo+1, j.exactly(apart))})
	}
}

func (j *judge) winderAngle() {
	for _, t := range j.Turns {
		if t.Curve || len(t.Treads) == 0 {
			continue
		}
		hold := func(key rules.Key, is func(int, bound), v float64, what string) {
			if l, ok := j.limit(key); ok {
				v = measure.SnapDegrees(v)
				is(cmp.Compare(v, l.Degrees), bound{limit: l, to: degrees(l.Degrees), actual: degrees(v), found: fmt.Sprintf("%s turns %.4g degrees", what, v)})
			}
		}
		lo, least := t.leastOf(func(d Tapered) float64 { return d.Angle })
		hi, most := t.leastOf(func(d Tapered) float64 { return -d.Angle })
		hold(rules.WinderAngleMin, j.atLeast, least, t.treadName(lo))
		hold(rules.WinderAngleMax, j.atMost, -most, t.treadName(hi))
		hold(rules.WinderSetAngleMax, j.atMost, t.Angle, t.Name)
	}
}

func (j *judge) winderCount() {
	l, ok := j.limit(rules.WinderPerQuarterMax)
	if !ok {
		return
	}
	for _, t := range j.Turns {
		if t.Curve {
			continue
		}
		n, most := len(t.Treads), l.Count*int(math.Ceil(t.Angle/90))
		j.atMost(n-most, bound{limit: l, to: count(most), actual: count(n), found: fmt.Sprintf("%s has %s in %.4g degrees", t.Name, several(n, "winder"), t.Angle)})
	}
}
