package check

import (
	"fmt"
	"math"

	"stepoff/layout"
	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

// throatCodes are the two publications that put a number to the throat. Where
// the code in force has none, theirs are told as advice.
var throatCodes = []string{"dca-6", "nbc-2020"}

func (j *judge) stringerThroat() {
	if l, ok := j.limit(rules.StringerThroatMin); ok {
		for _, s := range j.Stringers {
			if s.Throat != nil {
				j.atLeast(compareMM(*s.Throat, l.Length), j.throat(s, l))
			}
		}
		return
	}
	j.rule.Severity = rules.Warn
	instead := ""
	if j.code.Name != rules.None {
		instead = ", as " + j.code.Name + " sets none"
	}
	for _, name := range throatCodes {
		other, _ := rules.Lookup(name)
		l, ok := other.Limit(rules.StringerThroatMin)
		if !ok {
			continue
		}
		for _, s := range j.Stringers {
			if s.Throat == nil || s.AlongWall {
				continue
			}
			b := j.throat(s, l)
			b.after = " by " + other.Name + instead
			j.atLeast(compareMM(*s.Throat, l.Length), b)
		}
	}
}

func (j *judge) throat(s Stringer, l rules.Limit) bound {
	right := "stiffen the stringer or replace it" // what stands gets no other board
	if j.Plan != nil {
		right = fmt.Sprintf("a board at least %s wide, or smaller steps", j.atLeastTape(s.Width.MM()-*s.Throat+l.Length.MM()))
	}
	return bound{limit: l, actual: mm(*s.Throat), found: "throat " + j.exactly(*s.Throat) + j.which(s), right: right}
}

// which names a stringer where not all are alike.
func (j *judge) which(s Stringer) string {
	if len(j.Stringers) < 2 || s.Where == "" {
		return ""
	}
	return " (" + s.Where + ")"
}

func (j *judge) stringerDepth() {
	l, ok := j.limit(rules.StringerDepthMin)
	if !ok {
		return
	}
	for _, s := range j.Stringers {
		if s.Width > 0 {
			j.atLeast(compareMM(s.Width.MM(), l.Length), bound{limit: l, actual: length(s.Width), found: "stringer board " + j.exactly(s.Width.MM()) + " wide" + j.which(s)})
		}
	}
}

func (j *judge) stringerThickness() {
	for _, s := range j.Stringers {
		held := "held at its ends"
		l, ok := j.limit(rules.StringerThicknessMin)
		if supported, has := j.limit(rules.StringerSupportedMin); has && s.AlongWall {
			l, ok, held = supported, true, "fastened along its length"
		}
		if ok && s.Thickness > 0 {
			j.atLeast(compareMM(s.Thickness.MM(), l.Length), bound{limit: l, actual: length(s.Thickness),
				found: "stringer " + j.exactly(s.Thickness.MM()) + " thick, " + held + j.which(s)})
		}
	}
}

// posts says how many supports in between bring a span within the limit.
func posts(span float64, l rules.Limit) string {
	n := 1
	if most := l.Length.MM(); most > 0 {
		n = max(1, int(math.Ceil(span/most-1e-9))-1) // a hair over the limit is rounding
	}
	if n == 1 {
		return "a post under them in between, or a landing"
	}
	return fmt.Sprintf("%d posts under them, evenly spaced, or a landing", n)
}

// stringerSpan holds the spans of those stringers that are not fastened along
// their length.
func (j *judge) stringerSpan() {
	cut, hasCut := j.limit(rules.StringerCutSpanMax)
	solid, hasSolid := j.limit(rules.StringerSolidSpanMax)
	for _, s := range j.Stringers {
		if s.Span == nil || s.AlongWall {
			continue
		}
		b := bound{limit: cut, actual: mm(*s.Span), found: "sawn stringers span " + j.exactly(*s.Span) + j.which(s), right: posts(*s.Span, cut)}
		has := hasCut
		if s.Solid {
			b.limit, b.found, has = solid, "solid stringers span "+j.exactly(*s.Span)+j.which(s), hasSolid
		} else if hasSolid && compareMM(*s.Span, solid.Length) <= 0 {
			b.right += ", or solid stringers, which may span " + j.limitText(solid)
		}
		if has {
			j.atMost(compareMM(*s.Span, b.limit.Length), b)
		}
	}
}

func (j *judge) stringerSpacing() {
	if j.Spacing == nil || len(j.Stringers) == 0 {
		return
	}
	spacing, s := *j.Spacing, j.Stringers[0]
	found := "stringers stand " + j.exactly(spacing) + " apart"
	l, ok := j.limit(rules.StringerSpacingMax)
	if solid, has := j.limit(rules.StringerSolidSpacing); has && s.Solid {
		l, ok = solid, true
	}
	// Riser boards hold up the fronts of the treads.
	if clear, has := j.limit(rules.StringerClearMax); has && j.OpenRisers != nil && !*j.OpenRisers {
		l, ok = clear, true
		spacing -= s.Thickness.MM()
		found = "stringers stand " + j.exactly(spacing) + " apart, clear"
	}
	if ok {
		right := "more stringers"
		if clear := *j.Spacing - spacing; j.StringerCount != nil && *j.StringerCount > 1 {
			whole := *j.Spacing * float64(*j.StringerCount-1)
			needed := int(math.Ceil(whole/(l.Length.MM()+clear)-1e-9)) + 1 // a hair over the limit is rounding
			right = several(needed, "stringer") + " stand close enough"
		}
		j.atMost(compareMM(spacing, l.Length), bound{limit: l, actual: mm(spacing), found: found, right: right})
	}
}

func (j *judge) stringerCount() {
	l, ok := j.limit(rules.StringerCountMin)
	if !ok || j.StringerCount == nil {
		return
	}
	for _, s := range j.Stringers {
		if s.Solid {
			return
		}
	}
	n := *j.StringerCount
	j.atLeast(n-l.Count, bound{limit: l, to: count(l.Count), actual: count(n), found: several(n, "sawn stringer")})
}

func (j *judge) treadThickness() {
	if j.TreadThickness == nil {
		return
	}
	l, ok := j.limit(rules.TreadThicknessMin)
	open, hasOpen := j.limit(rules.TreadThicknessOpen)
	beyond, hasBeyond := j.limit(rules.TreadThicknessBeyond)
	var by []rules.Limit
	if hasOpen && hasBeyond && j.OpenRisers != nil && *j.OpenRisers && j.Spacing != nil && compareMM(*j.Spacing, beyond.Length) > 0 {
		l, ok, by = open, true, []rules.Limit{beyond}
	}
	if ok {
		j.atLeast(compareMM(j.TreadThickness.MM(), l.Length), bound{limit: l, actual: length(*j.TreadThickness), found: "treads " + j.exactly(j.TreadThickness.MM()) + " thick", by: by})
	}
}

func (j *judge) liveLoad() {
	l, ok := j.limit(rules.LiveLoadMin)
	if !ok || j.LiveLoad == nil {
		return
	}
	kpa := func(pascals float64) *Quantity { return &Quantity{pascals / 1000, KPa} }
	j.hold(*j.LiveLoad >= l.Pascals, "at least", "less than", bound{limit: l, to: kpa(l.Pascals), actual: kpa(*j.LiveLoad),
		found: fmt.Sprintf("a live load of %.4g psf (%.4g kPa)", *j.LiveLoad/measure.PSF, *j.LiveLoad/1000)})
}

func (j *judge) treadBoard() {
	if j.TreadDepth == nil || j.TreadBoards == nil {
		return
	}
	depth, boards := *j.TreadDepth, *j.TreadBoards
	if j.Turn != nil {
		j.gluedUp(depth, boards)
		return
	}
	status, text := Pass, fmt.Sprintf("treads %s deep from boards of %s", j.exactly(depth), j.Style.Inches(boards))
	if compareMM(depth, boards) > 0 {
		status = j.broken()
		text = fmt.Sprintf("treads are %s deep, and their boards only %s: %s short; wider boards, a strip more, a smaller nosing or run",
			j.exactly(depth), j.Style.Inches(boards), j.atLeastTape(depth-boards.MM()))
	}
	j.say(status, nil, length(boards), mm(depth), text)
}

// gluedUp tells of how many boards a tapered tread is made up: one board is
// seldom as wide.
func (j *judge) gluedUp(depth float64, boards measure.Length) {
	n := int(math.Ceil(depth/boards.MM() - 1e-9)) // a hair over is rounding
	text := fmt.Sprintf("tapered treads are up to %s deep, square to their nosings: %s of %s edge to edge", j.exactly(depth), several(n, "board"), j.Style.Inches(boards))
	if n == 1 {
		text = fmt.Sprintf("tapered treads up to %s deep from boards of %s", j.exactly(depth), j.Style.Inches(boards))
	}
	status := Info
	if n == 1 {
		status = Pass
	}
	j.say(status, nil, length(boards), mm(depth), text)
}

// headBearing tells how much of the head plumb cut bears, and what framers do
// where it is little.
func (j *judge) headBearing() {
	if j.HeadContact == nil {
		return
	}
	contact := *j.HeadContact
	status, text := Pass, j.exactly(contact)+" of the head plumb cut bears on the header"
	if compareMM(contact, layout.LittleContact) < 0 {
		status = j.broken()
		if measure.SnapMM(contact) == 0 {
			text = "nothing of the head plumb cut bears on the header"
		}
		text += fmt.Sprintf(", less than %s", j.Style.Inches(layout.LittleContact))
		if j.HungHead {
			text += ", as is common with a hung head"
		}
		text += "; a hanger board behind the heads, a deeper header, a ledger, or hangers"
	}
	j.say(status, nil, length(layout.LittleContact), mm(contact), text)
}

// ledgerNotch says what a notch at the end of the tension face costs in shear:
// (left / whole)^2.
func (j *judge) ledgerNotch() {
	if j.Ledger == nil {
		return
	}
	left := j.Ledger.HeadCut - j.Ledger.Height
	part := left / j.Ledger.HeadCut
	j.say(j.broken(), nil, mm(j.Ledger.HeadCut), mm(left), fmt.Sprintf(
		"the ledger's notch leaves %s of the %s plumb cut, and of its strength in shear about %.2f ((%.2f)^2); hangers or a hanger board leave it whole; verify: the rule is from memory",
		j.exactly(left), j.exactly(j.Ledger.HeadCut), part*part, part))
}
