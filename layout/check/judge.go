package check

import (
	"cmp"
	"fmt"
	"strings"

	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

// judge is the facts, the code, and the rule that is being looked at.
type judge struct {
	*Facts
	code  *rules.Code
	rule  rules.Rule
	found []Finding
}

// judges say what each rule finds.
var judges = map[string]func(*judge){
	"riser-max":       (*judge).riserMax,
	"riser-min":       (*judge).riserMin,
	"riser-variation": (*judge).riserVariation,
	"first-riser":     (*judge).firstRiser,
	"last-riser":      (*judge).lastRiser,

	"run-min":           (*judge).runMin,
	"run-max":           (*judge).runMax,
	"run-variation":     (*judge).runVariation,
	"top-run":           (*judge).topRun,
	"nosing":            (*judge).nosing,
	"nosing-variation":  (*judge).nosingVariation,
	"two-rise-plus-run": (*judge).twoRisePlusRun,
	"pitch":             (*judge).pitch,

	"headroom":       (*judge).headroom,
	"opening":        (*judge).opening,
	"flight-rise":    (*judge).flightRise,
	"flight-risers":  (*judge).flightRisers,
	"risers-in-line": (*judge).risersInLine,
	"width":          (*judge).width,
	"available-run":  (*judge).availableRun,
	"pad-slope":      (*judge).padSlope,

	"landing-size":     (*judge).landingSize,
	"winder-walkline":  (*judge).winderWalkline,
	"winder-narrow":    (*judge).winderNarrow,
	"winder-variation": (*judge).winderVariation,
	"winder-angle":     (*judge).winderAngle,
	"winder-count":     (*judge).winderCount,
	"winder-use":       (*judge).winderUse,
	"curve-radius":     (*judge).curveRadius,

	"open-riser":      (*judge).openRiser,
	"handrail-needed": (*judge).handrailNeeded,
	"handrail-height": (*judge).handrailHeight,
	"guard-needed":    (*judge).guardNeeded,

	"stringer-throat":    (*judge).stringerThroat,
	"stringer-depth":     (*judge).stringerDepth,
	"stringer-thickness": (*judge).stringerThickness,
	"stringer-span":      (*judge).stringerSpan,
	"stringer-spacing":   (*judge).stringerSpacing,
	"stringer-count":     (*judge).stringerCount,
	"tread-thickness":    (*judge).treadThickness,
	"live-load":          (*judge).liveLoad,
	"tread-board":        (*judge).treadBoard,
	"head-bearing":       (*judge).headBearing,
	"ledger-notch":       (*judge).ledgerNotch,
	"kicker-notch":       (*judge).kickerNotch,

	"strength-basis":      (*judge).strengthBasis,
	"strength-bending":    (*judge).strengthBending,
	"strength-shear":      (*judge).strengthShear,
	"strength-deflection": (*judge).strengthDeflection,
	"strength-bearing":    (*judge).strengthBearing,
	"strength-point":      (*judge).strengthPoint,
	"strength-head":       (*judge).strengthHead,
	"strength-strongback": (*judge).strengthStrongback,
	"strength-overcut":    (*judge).strengthOvercut,
	"strength-tread":      (*judge).strengthTread,

	rules.TwoRisePlusRun: (*judge).comfort,
	rules.RisePlusRun:    (*judge).comfort,
	rules.RiseTimesRun:   (*judge).comfort,
	rules.RunLessRise:    (*judge).comfort,
}

// Judge holds the facts against every rule of the code, and against those that
// stand in no code, in the order of rules.Rules. A rule that the code does not
// have, or whose facts are not known, finds nothing.
func Judge(facts Facts, code *rules.Code) []Finding {
	j := &judge{Facts: &facts, code: code}
	for _, j.rule = range rules.Rules() {
		judges[j.rule.ID](j)
	}
	return j.found
}

// limit returns the code's limit, where it has one for such a stair.
func (j *judge) limit(key rules.Key) (rules.Limit, bool) {
	l, ok := j.code.Limit(key)
	if !ok || l.When == rules.Always {
		return l, ok
	}
	return l, j.OpenRisers != nil && *j.OpenRisers == (l.When == rules.OpenRisers)
}

// broken is what a finding amounts to where the rule is broken.
func (j *judge) broken() Status {
	return map[rules.Severity]Status{rules.Fail: Fail, rules.Warn: Warn, rules.Note: Info}[j.rule.Severity]
}

// say adds a finding. The first of the limits it rests on gives the section;
// the weakest known says whether it is to be verified.
func (j *judge) say(status Status, by []rules.Limit, limit, actual *Quantity, text string) {
	f := Finding{ID: j.rule.ID, Section: j.rule.Reference, Limit: limit, Actual: actual, Status: status, Text: text}
	var verify []string
	weakest := rules.OwnFile
	for i, l := range by {
		if i == 0 {
			f.Section, f.key = l.Section, l.Key
		}
		weakest = max(weakest, l.Basis)
		switch {
		case l.Basis != rules.FromMemory:
		case i == 0:
			verify = append(verify, l.Text)
		default:
			verify = append(verify, fmt.Sprintf("%s in %s", l.Text, l.Section))
		}
	}
	if len(by) > 0 {
		f.Basis = weakest.String()
	}
	if len(verify) > 0 {
		f.Text += "; verify " + strings.Join(verify, ", ") + ": from memory"
	}
	if j.Part != "" {
		f.Text = j.Part + ": " + f.Text
	}
	j.found = append(j.found, f)
}

// sayOf adds a finding that rests on no limit of the rule it belongs to.
func (j *judge) sayOf(section string, status Status, limit, actual *Quantity, text string) {
	j.say(status, nil, limit, actual, text)
	j.found[len(j.found)-1].Section = section
}

// bound is a limit and a figure held against it. found says what the figure is;
// right what would put it right, where there is more to say than by how much it
// is off; by is what the verdict rests on besides.
type bound struct {
	limit  rules.Limit
	to     *Quantity
	actual *Quantity
	found  string
	after  string // follows the limit in the text
	right  string
	by     []rules.Limit
}

// atMost and atLeast say whether a figure keeps its limit. cmp is how the
// figure stands to it: less than, equal to or more than 0.
func (j *judge) atMost(cmp int, b bound)  { j.hold(cmp <= 0, "at most", "more than", b) }
func (j *judge) atLeast(cmp int, b bound) { j.hold(cmp >= 0, "at least", "less than", b) }

func (j *judge) hold(kept bool, within, beyond string, b bound) {
	status, text := Pass, b.found+", "+within+" "
	if !kept {
		status, text = j.broken(), b.found+", "+beyond+" "
	}
	if b.to == nil {
		b.to = length(b.limit.Length)
	}
	text += j.limitText(b.limit) + b.after
	if !kept {
		text += "; " + j.putRight(b)
	}
	j.say(status, append([]rules.Limit{b.limit}, b.by...), b.to, b.actual, text)
}

// putRight says what would put a broken limit right: at the least, by how much
// the figure has to change.
func (j *judge) putRight(b bound) string {
	switch off := b.actual.Value - b.to.Value; {
	case b.right != "":
		return b.right
	case b.actual.Unit == MM && off < 0:
		return j.atLeastTape(-off) + " more"
	case b.actual.Unit == MM:
		return j.atLeastTape(off) + " less"
	case b.actual.Unit == KPa: // a load is only ever too little
		return fmt.Sprintf("%.4g psf (%.4g kPa) more", -off*1000/measure.PSF, -off)
	case b.actual.Unit == Degrees && off < 0:
		return fmt.Sprintf("%.4g degrees more", -off)
	case b.actual.Unit == Degrees:
		return fmt.Sprintf("%.4g degrees less", off)
	case off < 0:
		return fmt.Sprintf("%.4g more", -off)
	default:
		return fmt.Sprintf("%.4g less", off)
	}
}

// limitText is a limit as its code prints it and, where that is in the other
// units, in those of the texts.
func (j *judge) limitText(l rules.Limit) string {
	if units := measure.UnitsOf(l.Text); l.Length > 0 && units != measure.Undeclared && units != j.Style.Units {
		return l.Text + " = " + j.Style.Inches(l.Length)
	}
	return l.Text
}

// exactly prints a length in millimetres as a tape shows it and, where that is
// not the whole truth, in decimals.
func (j *judge) exactly(v float64) string {
	text := j.Style.InchesMM(v)
	if strings.HasSuffix(text, "+") || strings.HasSuffix(text, "-") {
		text += " (" + j.Style.DecimalMM(v) + ")"
	}
	return text
}

// tape prints a length in millimetres as a tape shows it.
func (j *judge) tape(v float64) string { return j.Style.InchesMM(v) }

// atLeastTape prints what something must at least be: rounded up, so that what
// is cut to the printed figure keeps the limit.
func (j *judge) atLeastTape(v float64) string { return j.roundedTape(v, j.Style.Fineness()-1) }

// atMostTape prints what something may at most be: rounded down.
func (j *judge) atMostTape(v float64) string { return j.roundedTape(v, 0) }

// roundedTape adds before it rounds a length of 0 or more down.
func (j *judge) roundedTape(v float64, add measure.Length) string {
	exact, ok := measure.FromMM(v)
	if !ok {
		return measure.Unknown
	}
	step := j.Style.Fineness()
	return j.Style.Inches((exact + add) / step * step)
}

// compareMM tells how a computed length stands to a limit, to the nanometre.
func compareMM(v float64, l measure.Length) int {
	exact, _ := measure.FromMM(v)
	return cmp.Compare(exact, l)
}

// several says how many there are of something.
func several(n int, one string) string {
	if n == 1 {
		return "one " + one
	}
	return fmt.Sprintf("%d %ss", n, one)
}
