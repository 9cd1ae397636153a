package lesson

import (
	"fmt"
	"math"
	"strconv"

	"stepoff/layout"
	"stepoff/layout/stringer"
	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

// figures is every number a lesson may tell, by the name its texts have for it.
// The texts hold none of their own: a test reads them for digits.
var figures = map[string]func(*teacher) string{
	// The whole stairway.
	"total rise":       func(t *teacher) string { return t.st.Format(t.s.TotalRise) },
	"measured rise":    func(t *teacher) string { return t.st.Format(t.job().Levels.TotalRise) },
	"upper finish":     func(t *teacher) string { return t.st.Inches(t.job().Levels.UpperFinish) },
	"lower finish":     func(t *teacher) string { return t.st.Inches(t.job().Levels.LowerFinish) },
	"all risers":       func(t *teacher) string { return strconv.Itoa(t.s.Risers) },
	"clear width":      func(t *teacher) string { return t.st.Inches(*t.job().Width) },
	"tread thickness":  func(t *teacher) string { return t.st.Inches(t.job().Tread.Thickness) },
	"riser thickness":  func(t *teacher) string { return t.st.Inches(t.job().Riser.Thickness) },
	"nosing":           func(t *teacher) string { return t.st.Inches(t.job().Tread.Nosing) },
	"overhang":         func(t *teacher) string { return t.st.Inches(t.job().Tread.Nosing + t.job().Riser.Thickness) },
	"fineness":         func(t *teacher) string { return t.st.Inches(t.st.Fineness()) },
	"square fineness":  func(t *teacher) string { return t.say(t.g.SquareStep) },
	"code":             func(t *teacher) string { return t.code.Name },
	"most rise":        func(t *teacher) string { return t.limit(rules.RiserMax) },
	"least run":        func(t *teacher) string { return t.limit(rules.RunMin) },
	"least headroom":   func(t *teacher) string { return t.limit(rules.HeadroomMin) },
	"least walkline":   func(t *teacher) string { return t.limit(rules.WinderWalklineMin) },
	"least narrow end": func(t *teacher) string { return t.limit(rules.WinderNarrowMin) },

	// One part between two fixed levels.
	"part rise":         func(t *teacher) string { return t.st.Inches(t.part.Rise()) },
	"part from":         func(t *teacher) string { return t.st.Format(t.part.From) },
	"part to":           func(t *teacher) string { return t.st.Format(t.part.To) },
	"risers":            func(t *teacher) string { return strconv.Itoa(t.part.Risers) },
	"unit rise":         func(t *teacher) string { return t.say(t.part.UnitRise()) },
	"unit rise exactly": func(t *teacher) string { return t.st.DecimalMM(t.part.UnitRise()) },
	"rounded rise":      func(t *teacher) string { return t.st.Inches(t.rounded()) },
	"rounded total":     func(t *teacher) string { return t.st.Inches(t.rounded() * measure.Length(t.part.Risers)) },
	"rounded error":     func(t *teacher) string { return t.st.Inches(t.roundedError().Abs()) },
	"first level":       func(t *teacher) string { return t.say(t.s.Level(t.part.Below + 1)) },
	"middle riser":      func(t *teacher) string { return strconv.Itoa(t.middle()) },
	"middle level":      func(t *teacher) string { return t.say(t.s.Level(t.part.Below + t.middle())) },

	// The flight in hand.
	"flight":              func(t *teacher) string { return t.f.Name },
	"flight from":         func(t *teacher) string { return t.st.FormatMM(t.f.StartLevel) },
	"flight to":           func(t *teacher) string { return t.st.FormatMM(t.f.EndLevel) },
	"flight risers":       func(t *teacher) string { return strconv.Itoa(t.f.Risers) },
	"flight rise":         func(t *teacher) string { return t.say(t.f.UnitRise) },
	"flight rise exactly": func(t *teacher) string { return t.st.DecimalMM(t.f.UnitRise) },
	"unit run":            func(t *teacher) string { return t.st.Inches(t.f.UnitRun) },
	"treads":              func(t *teacher) string { return strconv.Itoa(t.f.Treads) },
	"total run":           func(t *teacher) string { return t.say(t.f.TotalRun) },
	"two rises and a run": func(t *teacher) string { return t.st.DecimalMM(2*t.f.UnitRise + t.f.UnitRun.MM()) },
	"pitch":               func(t *teacher) string { return fmt.Sprintf("%.2f", t.f.Pitch*180/math.Pi) },
	"flooring":            func(t *teacher) string { return t.st.Inches(t.f.Flooring) },
	"opening needed":      func(t *teacher) string { return t.say(*t.headroomOf().OpeningNeeded) },
	"floor depth":         func(t *teacher) string { return t.st.Inches(*t.job().Levels.FloorDepth) },

	// Its stringer.
	"stock":           func(t *teacher) string { return t.stock() },
	"width":           func(t *teacher) string { return t.say(t.g.Width) },
	"stock thickness": func(t *teacher) string { return t.say(t.g.Thickness) },
	"count":           func(t *teacher) string { return strconv.Itoa(t.f.Spec.Stringer.Count) },
	"others":          func(t *teacher) string { return strconv.Itoa(t.f.Spec.Stringer.Count - 1) },
	"least blank":     func(t *teacher) string { return t.say(t.g.LeastBlank) },
	"board length":    func(t *teacher) string { return t.st.Format(t.g.StockLength) },
	"end trim":        func(t *teacher) string { return t.st.Inches(layout.EndTrim) },
	"notches":         func(t *teacher) string { return strconv.Itoa(t.g.Notches) },
	"steps between":   func(t *teacher) string { return strconv.Itoa(t.g.Notches - 1) },
	"step":            func(t *teacher) string { return t.say(t.g.Step) },
	"step exactly":    func(t *teacher) string { return t.st.DecimalMM(t.g.Step) },
	"first tip":       func(t *teacher) string { return t.say(t.g.Tips[0].X) },
	"last tip":        func(t *teacher) string { return t.say(t.g.Tips[len(t.g.Tips)-1].X) },
	"first tip exactly": func(t *teacher) string {
		return t.st.DecimalMM(t.g.Tips[0].X)
	},
	"last tip exactly": func(t *teacher) string { return t.st.DecimalMM(t.g.Tips[len(t.g.Tips)-1].X) },
	"head end exactly": func(t *teacher) string { return t.st.DecimalMM(t.g.LeastBlank - t.g.Tips[len(t.g.Tips)-1].X) },
	"tongue":           func(t *teacher) string { return t.say(t.g.Square.Tongue) },
	"blade arm":        func(t *teacher) string { return t.say(t.g.Square.Blade) },
	"drift":            func(t *teacher) string { return t.st.DecimalMM(math.Abs(t.g.Square.Drift)) },
	"height drift":     func(t *teacher) string { return t.st.DecimalMM(math.Abs(t.g.Square.DriftRise)) },
	"notch depth":      func(t *teacher) string { return t.say(t.g.NotchDepth) },
	"notch exactly":    func(t *teacher) string { return t.st.DecimalMM(t.g.NotchDepth) },
	"throat":           func(t *teacher) string { return t.say(t.g.Throat) },
	"drop":             func(t *teacher) string { return t.say(math.Abs(t.g.BottomDrop)) },
	"foot level":       func(t *teacher) string { return t.st.Inches(t.g.FootLevel.Abs()) },
	"first riser cut":  func(t *teacher) string { return t.say(t.g.FirstRiserCut) },
	"seat":             func(t *teacher) string { return t.say(t.g.SeatCut) },
	"last tread cut":   func(t *teacher) string { return t.say(t.g.LastTread) },
	"behind head":      func(t *teacher) string { return t.st.Inches(t.f.Spec.Stringer.BehindHead) },
	"plumb cut":        func(t *teacher) string { return t.say(t.g.HeadCut) },
	"contact":          func(t *teacher) string { return t.say(*t.g.HeadContact) },
	"kicker height":    func(t *teacher) string { return t.say(t.g.Kicker.Height) },
	"kicker depth":     func(t *teacher) string { return t.say(t.g.Kicker.Depth) },
	"ledger height":    func(t *teacher) string { return t.say(t.g.Ledger.Height) },
	"ledger depth":     func(t *teacher) string { return t.say(t.g.Ledger.Depth) },
	"last tread level": func(t *teacher) string { return t.say(t.lastCut()) },

	// Its strings, housed or with cleats.
	"first nosing":   func(t *teacher) string { return t.say(t.f.Strings[0].Marks[0]) },
	"string step":    func(t *teacher) string { return t.say(t.f.Strings[0].Step) },
	"string margin":  func(t *teacher) string { return t.say(t.f.Strings[0].Margin) },
	"left of string": func(t *teacher) string { return t.say(t.f.Strings[0].Left()) },
	"housing depth":  func(t *teacher) string { return t.say(t.f.Strings[0].Housed.Depth) },

	// The saw.
	"blade":         func(t *teacher) string { return t.say(t.g.Saw.Blade) },
	"blade depth":   func(t *teacher) string { return t.say(t.g.Saw.Depth) },
	"stop short":    func(t *teacher) string { return t.say(t.g.Saw.StopShort) },
	"far face":      func(t *teacher) string { return t.say(t.g.Kerf.FarUncut) },
	"by hand":       func(t *teacher) string { return t.say(t.g.Saw.StopShort + t.g.Kerf.FarUncut) },
	"overcut":       func(t *teacher) string { return t.say(t.past()) },
	"riser overcut": func(t *teacher) string { r, _ := t.g.OvercutCost(t.past()); return t.say(r) },
	"tread overcut": func(t *teacher) string { _, r := t.g.OvercutCost(t.past()); return t.say(r) },

	// Its boards.
	"tread depth":  func(t *teacher) string { return t.board(layout.TreadBoard, 1) },
	"first board":  func(t *teacher) string { return t.board(layout.RiserBoard, 1) },
	"second board": func(t *teacher) string { return t.board(layout.RiserBoard, 2) },

	// The landing in hand.
	"landing":        func(t *teacher) string { return t.element.Label() },
	"risers below":   func(t *teacher) string { return strconv.Itoa(t.aLanding().Risers) },
	"landing level":  func(t *teacher) string { return t.st.FormatMM(t.aLanding().Level) },
	"framing level":  func(t *teacher) string { return t.st.FormatMM(t.aLanding().FramingLevel) },
	"landing finish": func(t *teacher) string { return t.st.Inches(t.aLanding().Spec.Finish) },
	"landing length": func(t *teacher) string { return t.st.Inches(t.aLanding().Spec.Length) },
	"landing width":  func(t *teacher) string { return t.st.Inches(t.aLanding().Spec.Width) },
	"sheathing":      func(t *teacher) string { return t.st.Inches(t.aLanding().Spec.Sheathing) },

	// The winders in hand.
	"winders":         func(t *teacher) string { return strconv.Itoa(len(t.aTurn().Treads)) },
	"turn angle":      func(t *teacher) string { return degrees(t.aTurn().Spec.Angle) },
	"each angle":      func(t *teacher) string { return degrees(t.aTurn().Treads[0].Angle) },
	"setback":         func(t *teacher) string { return t.st.Inches(*t.aTurn().Spec.Setback) },
	"walkline":        func(t *teacher) string { return t.st.Inches(t.aTurn().Spec.Depths.Walklines[0]) },
	"walkline depth":  func(t *teacher) string { return t.say(t.aTurn().Treads[0].Walkline) },
	"walkline radius": func(t *teacher) string { return t.st.DecimalMM(t.walkRadius()) },
	"narrow depth":    func(t *teacher) string { return t.say(t.aTurn().Treads[0].Narrow) },

	// The tapered treads of either.
	"tapered along": func(t *teacher) string { return t.say(t.tapered().Along) },
	"tapered deep":  func(t *teacher) string { return t.say(t.tapered().Deep) },

	// The curve in hand.
	"curve treads":         func(t *teacher) string { return strconv.Itoa(len(t.aCurve().Treads)) },
	"curve angle":          func(t *teacher) string { return degrees(t.aCurve().Spec.Angle) },
	"curve each":           func(t *teacher) string { return degrees(t.aCurve().Spec.Angle / float64(len(t.aCurve().Treads))) },
	"inside radius":        func(t *teacher) string { return t.st.FormatMM(t.aCurve().Inside) },
	"outside radius":       func(t *teacher) string { return t.st.FormatMM(t.aCurve().Outside) },
	"curve walkline":       func(t *teacher) string { return t.st.Inches(t.aCurve().Spec.Depths.Walklines[0]) },
	"curve walkline depth": func(t *teacher) string { return t.say(t.aCurve().Treads[0].Walkline) },
	"curve narrow":         func(t *teacher) string { return t.say(t.aCurve().Treads[0].Narrow) },
	"inside run":           func(t *teacher) string { return t.st.DecimalMM(t.aCurve().RunAt(t.aCurve().Inside)) },
	"outside run":          func(t *teacher) string { return t.st.DecimalMM(t.aCurve().RunAt(t.aCurve().Outside)) },
	"inside pitch":         func(t *teacher) string { return t.pitchAt(t.aCurve().Inside) },
	"outside pitch":        func(t *teacher) string { return t.pitchAt(t.aCurve().Outside) },
}

func (t *teacher) say(mm float64) string { return t.st.InchesMM(mm) }

// limit is a limit of the code as it prints it; lesson texts ask first whether it
// has one.
func (t *teacher) limit(key rules.Key) string {
	l, _ := t.limitOf(key)
	return l.Text
}

func (t *teacher) limitOf(key rules.Key) (rules.Limit, bool) {
	if t.code == nil {
		return rules.Limit{}, false
	}
	l, ok := t.code.Limit(key)
	return l, ok
}

func (t *teacher) has(key rules.Key) bool {
	_, ok := t.limitOf(key)
	return ok
}

// rounded is the part's unit rise to the nearest mark of a tape.
func (t *teacher) rounded() measure.Length {
	l, _ := measure.FromMM(t.part.UnitRise())
	l, _ = l.Round(t.st.Fineness())
	return l
}

// roundedError is how far the rounded rises miss the part's rise: short when
// less than 0.
func (t *teacher) roundedError() measure.Length {
	return t.rounded()*measure.Length(t.part.Risers) - t.part.Rise()
}

// middle is the number, in its part, of the riser that serves as the example.
func (t *teacher) middle() int { return max(1, t.part.Risers/2) }

func (t *teacher) headroomOf() *layout.Headroom {
	l, ok := t.limitOf(rules.HeadroomMin)
	if !ok {
		return nil
	}
	return t.s.Headroom(&l.Length)
}

func (t *teacher) stock() string {
	if name := t.f.Spec.Stringer.Stock.Name; name != "" {
		return "a " + name
	}
	return "a board"
}

func (t *teacher) past() float64 { return stringer.OvercutShown(t.st.Units) }

// lastCut is how far the last tread cut lies below what the flight rises to.
func (t *teacher) lastCut() float64 {
	return t.f.EndLevel - t.f.StartLevel - float64(t.g.Notches)*t.f.UnitRise + t.g.Tread
}

// board is the depth of a step's tread or riser board.
func (t *teacher) board(kind layout.BoardKind, step int) string {
	if b, ok := t.boardOf(kind, step); ok {
		return t.say(b.Depth)
	}
	return measure.Unknown
}

func (t *teacher) boardOf(kind layout.BoardKind, step int) (layout.Board, bool) {
	for _, b := range t.f.Boards {
		if b.Kind == kind && b.Steps[0] <= step && step <= b.Steps[1] {
			return b, true
		}
	}
	return layout.Board{}, false
}

func (t *teacher) aLanding() *layout.Landing { return t.element.(*layout.Landing) }
func (t *teacher) aTurn() *layout.Winders    { return t.element.(*layout.Winders) }
func (t *teacher) aCurve() *layout.Curve     { return t.element.(*layout.Curve) }

// tapered is the board of the first tread of the turn or curve in hand.
func (t *teacher) tapered() layout.TaperedBoard {
	if w, ok := t.element.(*layout.Winders); ok {
		return w.Boards[0]
	}
	return t.aCurve().Boards[0]
}

// pitchAt is how steep the curve is along an arc, in degrees.
func (t *teacher) pitchAt(radius float64) string {
	c := t.aCurve()
	return fmt.Sprintf("%.2f", math.Atan2(c.UnitRise, c.RunAt(radius))*180/math.Pi)
}

// walkRadius is the radius of a radial turn's walkline about its pivot.
func (t *teacher) walkRadius() float64 {
	w := t.aTurn()
	return w.Walklines[0].Edges[0].Radius
}

// degrees prints an angle to a hundredth of a degree, without zeros at its end.
func degrees(a float64) string {
	return strconv.FormatFloat(math.Round(a*100)/100, 'f', -1, 64) + "°"
}
