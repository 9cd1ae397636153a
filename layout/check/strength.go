package check

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"stepoff/layout"
	"stepoff/layout/strength"
	"stepoff/layout/stringer"
	"stepoff/spec/lumber"
	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

// outsideNDS is what has to be known of every figure of a sawn stringer.
const outsideNDS = "net section of thickness x throat, the teeth ignored; notches for steps lie outside what the NDS allows (3.2.3, 4.4.3), " +
	"and tables such as DCA 6 (cut 2x12: 6 ft 0 in) rule where they are adopted; advice, no approval"

// suggest names what usually puts a stringer right.
const suggest = "a better grade, more stringers, a strongback, posts or a landing: stepoff check --suggest finds the least that holds"

// strengthBasis says what the strength findings rest on or, where there are
// none, why.
func (j *judge) strengthBasis() {
	w := j.Strength
	switch {
	case w == nil:
		return
	case w.Unknown != "":
		j.say(Info, nil, nil, nil, "no verdict on the stringers' strength: "+w.Unknown)
		j.found[len(j.found)-1].Section = "NDS 2018"
		return
	}
	text := fmt.Sprintf("%s, %s live (%s) and %s dead on the level; ", w.Wood.Name, j.Style.Pressure(w.Loads.Live), w.Loads.LiveFrom, j.Style.Pressure(w.Loads.Dead))
	if t := w.Loads.Times; t != nil {
		text += fmt.Sprintf("the live load is %s times the one expected (%s %s); ", t.Text, j.code.Name, t.Section)
	}
	text += fmt.Sprintf("Fb %s, Fv %s, Fc-perp %s, E %s with %s", j.Style.Stress(w.Wood.Fb), j.Style.Stress(w.Wood.Fv), j.Style.Stress(w.Wood.FcPerp), j.Style.Stress(w.Wood.E), Factors(w.Wood.Adjusted))
	text += " (" + w.Wood.Source
	switch w.Wood.Basis {
	case lumberOwn:
	case rules.FromMemory.String():
		text += ", verify: from memory"
	default:
		text += ", " + w.Wood.Basis
	}
	text += "); " + outsideNDS
	var by []rules.Limit
	if w.Loads.Limit != nil {
		by = []rules.Limit{*w.Loads.Limit}
	}
	j.say(Info, by, nil, nil, text)
	j.found[len(j.found)-1].Section = "NDS 2018"
	j.found[len(j.found)-1].Basis = w.Wood.Basis
	j.found[len(j.found)-1].key = "" // told, not judged by
}

const lumberOwn = "own values"

// Factors lists the adjustment factors that change something, and those that
// leave all as it is.
func Factors(a lumber.Adjusted) string {
	if len(a.Factors) == 1 { // own values: there is nothing to list
		return "no factor: " + a.Factors[0].Why
	}
	var changed, ones []string
	for _, f := range a.Factors {
		var on []string
		for _, one := range []struct {
			name  string
			value float64
		}{{"Fb", f.Fb}, {"Fv", f.Fv}, {"Fc-perp", f.FcPerp}, {"E", f.E}} {
			if one.value != 1 {
				on = append(on, fmt.Sprintf("%.3g on %s", one.value, one.name))
			}
		}
		if len(on) > 0 {
			why := f.Why
			if f.Basis == rules.FromMemory.String() {
				why += "; verify: from memory"
			}
			changed = append(changed, fmt.Sprintf("%s %s (%s)", f.Symbol, strings.Join(on, ", "), why))
		} else {
			ones = append(ones, f.Symbol)
		}
	}
	switch {
	case len(a.Factors) == 1:
		return strings.Join(ones, "") + " 1"
	case len(changed) == 0:
		return strings.Join(ones, ", ") + " all 1"
	}
	return strings.Join(append(changed, strings.Join(ones, ", ")+" 1"), "; ")
}

// carriers calls of for every set of spanning stringers that carry alike, with
// the one that is worst off for all.
func (j *judge) carriers(of func(c *layout.Carrier, where string)) {
	w := j.Strength
	if w == nil {
		return
	}
	for _, alike := range w.Alike() {
		if c := &w.Stringers[alike[0]]; c.Spans() {
			of(c, Places(slices.Sorted(slices.Values(alike)), len(w.Stringers)))
		}
	}
}

// Places names stringers shortly: left, right; no. 2, no. 3.
func Places(positions []int, count int) string {
	return strings.ReplaceAll(layout.Where(positions, count), " from the left", "")
}

// part holds a ratio of what is borne to what may be against 1.
func (j *judge) part(ratio float64, found, more string, by ...rules.Limit) {
	status, text := Pass, fmt.Sprintf("%s: %s of what it may be", found, Hundredths(ratio))
	if ratio > 1+ratioRounding {
		status, text = j.broken(), fmt.Sprintf("%s: %s times what it may be", found, Hundredths(ratio))
	}
	j.say(status, by, &Quantity{1, Number}, &Quantity{ratio, Number}, text+more)
	if len(by) == 0 {
		j.found[len(j.found)-1].Basis = j.Strength.Wood.Basis
	}
}

// ratioRounding is what a ratio may be over 1 where it was added up in another
// order.
const ratioRounding = 1e-9

// Hundredths prints a ratio of what is borne to what may be: rounded up, so that
// what is over 1 never reads as 1.00.
func Hundredths(v float64) string { return fmt.Sprintf("%.2f", math.Ceil(v*100-1e-7)/100) }

func (j *judge) strengthBending() {
	j.carriers(func(c *layout.Carrier, where string) {
		more := fmt.Sprintf("; as a simple span %s", j.reach(c.Limit.Bending))
		if !(c.BendingRatio <= 1+ratioRounding) {
			more += "; " + suggest
		}
		section := j.exactly(c.Group.Thickness) + " by " + j.exactly(c.Group.Throat)
		if sb := c.Stiffener; sb != nil {
			section += " and a strongback of " + j.exactly(sb.Thickness) + " by " + j.exactly(sb.Depth)
		}
		j.part(c.BendingRatio, fmt.Sprintf("stringers (%s) span %s and carry %s of width each: %s in bending over %s, of %s",
			where, j.exactly(c.LongestSpan()), j.exactly(c.Tributary), j.Style.Stress(c.Bending*1e6), section, j.Style.Stress(c.AllowedBending*1e6)), more)
	})
}

// reach says how far a stringer spans by one measure.
func (j *judge) reach(mm float64) string { return "it reaches " + j.atMostTape(mm) }

func (j *judge) strengthShear() {
	j.carriers(func(c *layout.Carrier, where string) {
		j.part(c.ShearRatio, fmt.Sprintf("stringers (%s): %s in shear, of %s", where, j.Style.Stress(c.Shear*1e6), j.Style.Stress(c.AllowedShear*1e6)), "; "+j.reach(c.Limit.Shear))
	})
}

func (j *judge) strengthDeflection() {
	expected := ""
	if j.Strength != nil && j.Strength.Loads.Times != nil {
		expected = " expected" // the code's times are for strength
	}
	j.carriers(func(c *layout.Carrier, where string) {
		j.part(c.DeflectionRatio, fmt.Sprintf("stringers (%s) sag %s under the live load%s, %s with the dead load, the first held against span / %.0f",
			where, j.Style.DecimalMM(c.Deflection), expected, j.Style.DecimalMM(c.TotalDeflection), c.Over), "; "+j.reach(c.Limit.Deflection)+"; no code has a row for stairs: span / 360, that of floors, is usual (verify: from memory)")
	})
}

func (j *judge) strengthBearing() {
	j.carriers(func(c *layout.Carrier, where string) {
		j.part(c.FootBearing/c.Allowed, fmt.Sprintf("stringers (%s) stand with %s on a seat of %s: %s across the grain, of %s",
			where, j.Style.Force(c.Foot()), j.exactly(c.Seat), j.Style.Stress(c.FootBearing*1e6), j.Style.Stress(c.Allowed*1e6)), "; the floor or plate under it is not judged")
	})
}

// strengthHead says what has to hold each head, by whatever means.
func (j *judge) strengthHead() {
	j.carriers(func(c *layout.Carrier, where string) {
		status := Info
		text := fmt.Sprintf("heads (%s): hanger, ledger or hanger board has to carry %s each", where, j.Style.Force(c.Head()))
		if g := c.Group; g.Ledger != nil {
			bearing := c.Head() / (g.Thickness * g.Ledger.Depth)
			text += fmt.Sprintf("; on the ledger, %s across the grain of %s", j.Style.Stress(bearing*1e6), j.Style.Stress(c.Allowed*1e6))
			if bearing > c.Allowed {
				status = Warn
				text += ", which is too much"
			}
			notch, enough := j.notchedEnd(c)
			if !enough {
				status = Warn
			}
			text += "; " + notch
		} else {
			text += fmt.Sprintf("; a hanger's seat has to be %s long", j.atLeastTape(c.HeadBearing))
			text += "; nails into end grain do not count"
		}
		for i, lift := range c.Uplift {
			if lift > 0 {
				status = Warn
				text += fmt.Sprintf("; where it runs through, it lifts off %s with %s: move the posts, or hold it down there", supportName(i, len(c.Uplift)), j.Style.Force(lift))
			}
		}
		for i, r := range c.Reactions[1 : len(c.Reactions)-1] {
			text += fmt.Sprintf("; prop %d carries %s", i+1, j.Style.Force(r))
		}
		if len(c.Reactions) > 2 {
			text += "; over a prop the roots are in tension: bear it on whole wood, with a cleat at the side"
		}
		j.say(status, nil, nil, nil, text)
		j.found[len(j.found)-1].Basis = j.Strength.Wood.Basis
	})
}

// supportName says which of the supports of a stringer is meant.
func supportName(i, count int) string {
	switch i {
	case 0:
		return "its foot"
	case count - 1:
		return "its head"
	}
	return fmt.Sprintf("prop %d", i)
}

// notchedEnd says what shear the head carries with a notch over a ledger in it,
// and whether that is enough.
func (j *judge) notchedEnd(c *layout.Carrier) (text string, enough bool) {
	g := c.Group
	least, _ := g.NotchSection(stringer.LedgerCut)
	may := strength.NotchedEnd(c.AllowedShear, g.Thickness, g.HeadCut, g.HeadCut-g.Ledger.Height)
	text = fmt.Sprintf("its notch leaves %s of wood to the nearest step, and the end bears %s in shear (verify: the rule is from memory)", j.exactly(least), j.Style.Force(may))
	if may < c.Head() {
		return text + ", less than it must", false
	}
	return text, true
}

func (j *judge) strengthPoint() {
	j.carriers(func(c *layout.Carrier, where string) {
		found := fmt.Sprintf("stringers (%s) with %s in mid-span and the dead load, on one stringer alone", where, j.Style.Force(j.Strength.Loads.Point))
		if l := j.Strength.Loads.PointLimit; l != nil {
			j.part(c.PointRatio, found+", in bending", "; "+j.reach(c.Limit.Spot), *l)
			return
		}
		j.say(Info, nil, &Quantity{1, Number}, &Quantity{c.PointRatio, Number},
			fmt.Sprintf("%s: bending %s of what it may be; the rule is one for treads, and DCA 6 does not put it on a stringer", found, Hundredths(c.PointRatio)))
		j.found[len(j.found)-1].Section = "IRC table R301.5"
		j.found[len(j.found)-1].Basis = j.Strength.Wood.Basis
	})
}

// strengthStrongback says what the fastening of a strongback has to carry.
func (j *judge) strengthStrongback() {
	j.carriers(func(c *layout.Carrier, where string) {
		if c.Stiffener == nil {
			return
		}
		along, across, both := c.Section.Connection(1, c.Force, c.Live+c.Dead)
		text := fmt.Sprintf("stringers (%s): the strongback bends with the stringer only if glue and nails carry %s of length at the supports, %s along it and %s across",
			where, j.Style.LineLoad(both), j.Style.LineLoad(along), j.Style.LineLoad(across))
		if hang := c.Stiffener.Top + c.Stiffener.Depth - c.Group.Throat; hang > 0 {
			text += fmt.Sprintf("; it hangs %s below the stringer", j.exactly(hang))
		}
		j.say(Info, nil, nil, nil, text+"; species and grade as the stringers'")
		j.found[len(j.found)-1].Basis = j.Strength.Wood.Basis
	})
}

// strengthOvercut says how far past a root the saw may run before the throat is
// down to the code's or to what the stringer needs.
func (j *judge) strengthOvercut() {
	w := j.Strength
	if w == nil {
		return
	}
	type told struct{ throat, least float64 }
	seen := map[told]bool{} // outlines that differ at the foot alone are told of once
	for i := range w.Stringers {
		g := w.Stringers[i].Group
		if len(g.Roots) == 0 {
			continue
		}
		least, from, ok := w.LeastThroat(g, j.code)
		one := told{measure.SnapMM(g.Throat), measure.SnapMM(least)}
		if !ok || seen[one] {
			continue
		}
		seen[one] = true
		riser, tread := g.OvercutLimit(least)
		past := stringer.OvercutShown(j.Style.Units) * 2
		lostR, lostT := section(g, past, 0), section(g, 0, past)
		text := fmt.Sprintf("an overcut of %s leaves a throat of %s along a riser line and %s along a tread line, and of the section's strength in bending %.2f and %.2f",
			j.tape(past), j.Style.DecimalMM(g.AfterOvercut(past, 0)), j.Style.DecimalMM(g.AfterOvercut(0, past)), lostR, lostT)
		if riser == 0 {
			text = "no overcut at all is allowed: the throat has nothing to spare; " + text
		} else {
			who := "code " + from
			switch {
			case from == "strength":
				who = "what the stringer needs"
			case from != j.code.Name:
				who = from + ", as " + j.code.Name + " sets none and the stringer needs less"
			}
			text = fmt.Sprintf("overcuts past a root of up to %s along a riser line and %s along a tread line keep the throat at %s, by %s; ",
				j.atMostTape(riser), j.atMostTape(tread), j.exactly(least), who) + text
		}
		j.say(Info, nil, mm(least), mm(g.Throat), text+"; the split that starts there is not in this")
	}
}

// section is what overcuts leave of the net section's modulus.
func section(g *layout.Group, riser, tread float64) float64 {
	left := math.Max(0, g.AfterOvercut(riser, tread)) / g.Throat
	return left * left
}

func (j *judge) strengthTread() {
	w := j.Strength
	if w == nil {
		return
	}
	t := w.Treads
	if t == nil {
		if w.Unknown == "" { // else strength is left out altogether, and that is said
			j.say(Info, nil, nil, nil, "no verdict on the treads' strength: "+w.TreadsUnknown)
		}
		return
	}
	board := "a tread"
	if t.Boards > 1 {
		board = fmt.Sprintf("one of %d boards of a tread", t.Boards)
	}
	by := j.Style.Pressure(w.Loads.Live)
	if t.ByPoint {
		by = j.Style.Force(w.Loads.Point) + " on " + j.Style.InchesMM(t.Tread.Patch) + " square"
		if t.Tread.Point > t.Tread.UsualPoint {
			by += " (deflection under " + j.Style.Force(t.Tread.UsualPoint) + ")"
		}
	} else if w.Loads.Times != nil {
		by += " (deflection under " + j.Style.Pressure(w.Loads.Usual) + ")"
	}
	found := fmt.Sprintf("%s of %s, %s by %s, over %s centre to centre, under %s: bending %s, shear %s, deflection %s of span / %.0f, the worst",
		board, t.Wood.Name, j.exactly(t.Tread.Depth), j.exactly(t.Tread.Thickness), j.exactly(t.Span), by, Hundredths(t.BendingRatio), Hundredths(t.ShearRatio), Hundredths(t.DeflectionRatio), t.Tread.Over)
	more := fmt.Sprintf("; stringers up to %s apart hold these treads", j.atMostTape(t.Longest))
	more += "; with " + Factors(t.Wood.Adjusted)
	status, text := Pass, fmt.Sprintf("%s %s of what it may be", found, Hundredths(t.Ratio()))
	if t.Ratio() > 1 {
		status, text = j.broken(), fmt.Sprintf("%s %s times what it may be", found, Hundredths(t.Ratio()))
	}
	j.say(status, nil, mm(t.Longest), mm(t.Span), text+more)
	j.found[len(j.found)-1].Basis = t.Wood.Basis
}

// kickerNotch says what the notch at the foot leaves, and how it splits.
func (j *judge) kickerNotch() {
	w := j.Strength
	if w == nil {
		return
	}
	seen := map[*layout.Group]bool{}
	for i := range w.Stringers {
		c := &w.Stringers[i]
		g := c.Group
		if seen[g] || g.Kicker == nil {
			continue
		}
		seen[g] = true
		least, _ := g.NotchSection(stringer.KickerCut)
		which := ""
		if len(g.Positions) < len(w.Stringers) {
			which = " (" + Places(g.Positions, len(w.Stringers)) + ")"
		}
		text := fmt.Sprintf("the kicker's notch%s leaves %s of wood beside it, from its inside corner to the nearest step; a split starts in that corner and runs up along the grain: bear the seat on its whole %s behind the kicker, not on the kicker alone",
			which, j.exactly(least), j.exactly(c.Seat))
		j.say(Info, nil, nil, mm(least), text)
	}
}
