package check

import (
	"cmp"
	"fmt"
	"math"
	"strings"

	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

func (j *judge) landingSize() {
	for _, g := range j.Landings {
		_, long := j.limit(rules.LandingLengthMin)
		if _, wide := j.limit(rules.LandingWidthMin); !long && !wide && j.code.Name != rules.None {
			j.notKnown(nil, fmt.Sprintf("%s is %s long and %s wide: how large %s asks for is not known here; ask the building official",
				g.Name, j.exactly(g.Length), j.exactly(g.Width), j.code.Name))
		}
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
// or the run of its straight treads. ok is false where that is not known.
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
	case l.Of == rules.UnitRun && j.FlightRun != nil:
		return *j.FlightRun, true
	case l.Of == rules.UnitRun && len(j.Runs) > 0 && !j.OnWalkline:
		return j.Runs[0], true
	case l.Of == rules.UnitRun:
		least, ok := j.limit(rules.RunMin)
		return least.Length, ok
	}
	return 0, false
}

// taperedLimit returns the limit for the turn's treads.
func (j *judge) taperedLimit(winder, tapered rules.Key) (rules.Limit, bool) {
	return taperedLimit(j.limit, j.Turn.Curve, winder, tapered)
}

// tapers tells whether there are tapered treads to be judged.
func (j *judge) tapers() bool { return j.Turn != nil && len(j.Turn.Treads) > 0 }

// treadName names the k-th tread of a turn.
func (t *Turn) treadName(k int) string {
	if t.Curve {
		return fmt.Sprintf("tread %d", k+1)
	}
	return fmt.Sprintf("winder %d", k+1)
}

// leastOf returns the tread whose depth, as told, is least: the lowest of those
// that are alike to the nanometre.
func (t *Turn) leastOf(depth func(Tapered) float64) (k int, v float64) {
	v = math.Inf(1)
	for i, tread := range t.Treads {
		if d := depth(tread); measure.SnapMM(d) < measure.SnapMM(v) {
			k, v = i, d
		}
	}
	return k, v
}

// extremes returns the least and the greatest of the treads' depths.
func (t *Turn) extremes(depth func(Tapered) float64) (least, most float64) {
	_, least = t.leastOf(depth)
	_, most = t.leastOf(func(d Tapered) float64 { return -depth(d) })
	return least, -most
}

// named says which tread has the least depth; all of them where they are alike.
func (t *Turn) named(depth func(Tapered) float64) (name string, least float64) {
	k, least := t.leastOf(depth)
	if _, most := t.extremes(depth); measure.SnapMM(most-least) != 0 || len(t.Treads) == 1 {
		return t.treadName(k) + " is", least
	}
	if t.Curve {
		return "every tread is", least
	}
	return "every winder is", least
}

func onWalkline(t Tapered) float64  { return t.Walkline }
func atNarrowEnd(t Tapered) float64 { return t.Narrow }
func turned(t Tapered) float64      { return t.Angle }

func (j *judge) winderWalkline() {
	if !j.tapers() {
		return
	}
	l, ok := j.taperedLimit(rules.WinderWalklineMin, rules.TaperedWalklineMin)
	if !ok {
		j.winderDepthNotKnown()
		return
	}
	j.depth("deep on the walkline"+j.from(j.Turn.Lines...), l, onWalkline)
}

func (j *judge) winderNarrow() {
	if !j.tapers() {
		return
	}
	j.ownNarrow()
	l, ok := j.taperedLimit(rules.WinderNarrowMin, rules.TaperedNarrowMin)
	if !ok {
		return
	}
	where := "deep at the narrow end"
	if at, ok := j.limit(rules.WinderNarrowDatum); ok {
		where += j.from(at.Length)
	}
	j.depth(where, l, atNarrowEnd)
}

// from says how far from the inside a line lies.
func (j *judge) from(lines ...measure.Length) string {
	if len(lines) == 0 {
		return ""
	}
	var said []string
	for _, l := range lines {
		said = append(said, j.Style.Inches(l))
	}
	return " (" + strings.Join(said, " and ") + " from the inside)"
}

func (j *judge) depth(where string, l rules.Limit, of func(Tapered) float64) {
	least, known := j.relative(l)
	if !known {
		return
	}
	name, v := j.Turn.named(of)
	b := bound{limit: l, to: length(least), actual: mm(v), by: j.datum(), found: fmt.Sprintf("%s %s %s", name, j.exactly(v), where)}
	if l.Of != rules.Itself {
		b.after = ", " + j.exactly(least.MM())
	}
	if compareMM(v, least) < 0 {
		b.right = j.atLeastTape(least.MM()-v) + " more" + j.deeper()
	}
	j.atLeast(compareMM(v, least), b)
}

// winderDepthNotKnown tells that the data has no depth for winders under a code,
// so that silence is not taken for permission. A curve's treads are judged as
// runs then.
func (j *judge) winderDepthNotKnown() {
	_, narrow := j.limit(rules.WinderNarrowMin)
	_, angle := j.limit(rules.WinderAngleMin)
	if j.Turn.Curve || narrow || angle || j.code.Name == rules.None {
		return
	}
	least, most := j.Turn.extremes(onWalkline)
	_, end := j.Turn.leastOf(atNarrowEnd)
	deep := j.exactly(least)
	if measure.SnapMM(most-least) != 0 {
		deep += " to " + j.exactly(most)
	}
	j.notKnown(mm(least), fmt.Sprintf("the winders are %s deep on the walkline%s and %s at the narrow end: how deep %s asks for is not known here; ask the building official",
		deep, j.from(j.Turn.Lines...), j.exactly(end), j.code.Name))
}

// ownNarrow holds winders against the least depth the job itself asks for: with a
// set-back that is given they may not reach it.
func (j *judge) ownNarrow() {
	t := j.Turn
	if t.Narrow == nil {
		return
	}
	name, v := t.named(atNarrowEnd)
	if compareMM(v, *t.Narrow) < 0 {
		j.sayOf("the job", Warn, length(*t.Narrow), mm(v), fmt.Sprintf("%s %s deep at the narrow end, and the job asks for %s", name, j.exactly(v), j.Style.Inches(*t.Narrow)))
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

// winderVariation holds the winders of a turn against each other and, where the
// code asks, against the straight runs beside them.
func (j *judge) winderVariation() {
	if !j.tapers() {
		return
	}
	t := j.Turn
	hold := func(key rules.Key, apart float64, found, same, right string) {
		l, ok := j.limit(key)
		if !ok {
			return
		}
		if measure.SnapMM(apart) == 0 {
			found = same
		}
		j.atMost(compareMM(apart, l.Length), bound{limit: l, actual: mm(apart), by: j.datum(), found: found, right: right})
	}
	alike := ""
	if t.Winders != nil && t.Winders.Even {
		alike = "radial lines make them alike"
	}
	lo, least := t.leastOf(onWalkline)
	hi, most := t.leastOf(func(d Tapered) float64 { return -d.Walkline })
	apart := -most - least
	hold(rules.WinderVariation, apart, fmt.Sprintf("%s and %d differ by %s on the walkline", t.treadName(hi), lo+1, j.exactly(apart)), "all alike on the walkline", alike)
	at, apart := 0, 0.0
	for k := range len(t.Treads) - 1 {
		if d := math.Abs(t.Treads[k+1].Walkline - t.Treads[k].Walkline); d > apart {
			at, apart = k, d
		}
	}
	hold(rules.WinderAdjacent, apart, fmt.Sprintf("%s and %d differ by %s on the walkline", t.treadName(at), at+2, j.exactly(apart)), "neighbours alike on the walkline", alike)
	for _, beside := range t.Beside {
		k := 0
		if beside.Above {
			k = len(t.Treads) - 1
		}
		apart := math.Abs(t.Treads[k].Walkline - beside.Run.MM())
		hold(rules.WinderRunVariation, apart,
			fmt.Sprintf("%s, %s on the walkline, and the run of %s, %s, differ by %s", t.treadName(k), j.exactly(t.Treads[k].Walkline), beside.Name, j.exactly(beside.Run.MM()), j.exactly(apart)),
			fmt.Sprintf("%s is as deep on the walkline as the run of %s", t.treadName(k), beside.Name),
			fmt.Sprintf("a run of about %s for %s, or winders nearer to its own", j.tape(t.Treads[k].Walkline), beside.Name))
	}
}

func (j *judge) winderAngle() {
	if !j.tapers() || j.Turn.Curve {
		return
	}
	t := j.Turn
	hold := func(key rules.Key, is func(int, bound), v float64, what string) {
		if l, ok := j.limit(key); ok {
			v = measure.SnapDegrees(v)
			is(cmp.Compare(v, l.Degrees), bound{limit: l, to: degrees(l.Degrees), actual: degrees(v), found: fmt.Sprintf("%s %.4g degrees", what, v), right: j.otherTreads(key), after: j.noteBetween(key, v)})
		}
	}
	lo, least := t.leastOf(turned)
	hi, most := t.leastOf(func(d Tapered) float64 { return -d.Angle })
	first, last := t.treadName(lo)+" turns", t.treadName(hi)+" turns"
	if measure.SnapDegrees(-most-least) == 0 && len(t.Treads) > 1 {
		first, last = "every winder turns", "every winder turns"
	}
	hold(rules.WinderAngleMin, j.atLeast, least, first)
	hold(rules.WinderAngleMax, j.atMost, -most, last)
	hold(rules.WinderSetAngleMax, j.atMost, t.Angle, "the turn is")
}

func (j *judge) winderCount() {
	if n := j.WinderSets; n != nil {
		if l, ok := j.limit(rules.WinderSetsMax); ok {
			j.atMost(*n-l.Count, bound{limit: l, to: count(l.Count), actual: count(*n), found: several(*n, "turn") + " of winders between the floors", right: "landings in place of the others"})
		}
	}
	l, ok := j.limit(rules.WinderPerQuarterMax)
	if !ok || j.Turn == nil || j.Turn.Curve {
		return
	}
	t := j.Turn
	n, most := len(t.Treads), l.Count*int(math.Ceil(t.Angle/90))
	j.atMost(n-most, bound{limit: l, to: count(most), actual: count(n), found: fmt.Sprintf("%s in %.4g degrees", several(n, "winder"), t.Angle)})
}

func (j *judge) winderUse() {
	l, ok := j.limit(rules.WinderUse)
	switch {
	case !ok || l.Word == rules.Anywhere || j.Turn == nil:
	case j.Turn.Curve:
		j.say(Pass, []rules.Limit{l}, nil, nil, "winders: "+l.Word+"; the tapered treads of a curve may be")
	default:
		j.say(j.broken(), []rules.Limit{l}, nil, nil, "winders: "+l.Word+"; a landing in their place, unless this stair is no means of egress")
	}
}

// curveRadius holds the inside radius against the code's multiple of the least
// width. A stair whose required capacity asks for more than that needs more.
func (j *judge) curveRadius() {
	l, ok := j.limit(rules.CurveRadiusWidths)
	if !ok || j.Turn == nil || j.Turn.Radius == nil {
		return
	}
	width, told := j.limit(rules.WidthMin)
	if !told && j.Width != nil {
		width.Length = *j.Width
	} else if !told {
		return
	}
	times := measure.Length(l.Count)
	least, radius := times*width.Length, *j.Turn.Radius
	b := bound{limit: l, to: length(least), actual: length(radius), found: "inside radius " + j.exactly(radius.MM()),
		after: fmt.Sprintf(" times the least width of %s, %s", j.exactly(width.Length.MM()), j.exactly(least.MM()))}
	if told {
		b.by = []rules.Limit{width}
	}
	if w := j.Width; w != nil && *w > width.Length && radius >= least && radius < times**w {
		b.after += fmt.Sprintf("; where the required capacity asks for all the width of %s, %s", j.exactly(w.MM()), j.exactly((times * *w).MM()))
	}
	j.atLeast(cmp.Compare(radius, least), b)
}
