package rules

// Key names one limit in the code files.
type Key string

// The limits. What each one is stands in the table below.
const (
	RiserMax               Key = "riser-max"
	RiserMin               Key = "riser-min"
	RiserVariation         Key = "riser-variation"
	RiserVariationAdjacent Key = "riser-variation-adjacent"
	RiserDeviation         Key = "riser-deviation"

	RunMin               Key = "run-min"
	RunMax               Key = "run-max"
	RunVariation         Key = "run-variation"
	RunVariationAdjacent Key = "run-variation-adjacent"
	RunDeviation         Key = "run-deviation"

	NosingMin       Key = "nosing-min"
	NosingMax       Key = "nosing-max"
	NosingExemptRun Key = "nosing-exempt-run"
	NosingVariation Key = "nosing-variation"

	TwoRisePlusRunMin Key = "two-rise-plus-run-min"
	TwoRisePlusRunMax Key = "two-rise-plus-run-max"
	PitchMin          Key = "pitch-min"
	PitchMax          Key = "pitch-max"

	HeadroomMin     Key = "headroom-min"
	FlightRiseMax   Key = "flight-rise-max"
	FlightRisersMin Key = "flight-risers-min"
	FlightRisersMax Key = "flight-risers-max"
	RisersInLineMax Key = "risers-in-line-max"
	WidthMin        Key = "width-min"

	LandingLengthMin Key = "landing-length-min"
	LandingWidthMin  Key = "landing-width-min"

	WalklineFrom         Key = "walkline-from"
	WalklineDatum        Key = "walkline-datum"
	WalklineMiddleBelow  Key = "walkline-middle-below"
	WinderWalklineMin    Key = "winder-walkline-min"
	WinderNarrowMin      Key = "winder-narrow-min"
	WinderNarrowDatum    Key = "winder-narrow-datum"
	WinderVariation      Key = "winder-variation"
	WinderAdjacent       Key = "winder-variation-adjacent"
	WinderRunVariation   Key = "winder-run-variation"
	WinderAngleMin       Key = "winder-angle-min"
	WinderAngleMax       Key = "winder-angle-max"
	WinderSetAngleMax    Key = "winder-set-angle-max"
	WinderPerQuarterMax  Key = "winder-per-quarter-max"
	WinderSetsMax        Key = "winder-sets-max"
	WinderUse            Key = "winder-use"
	TaperedWalklineMin   Key = "tapered-walkline-min"
	TaperedNarrowMin     Key = "tapered-narrow-min"
	CurveRadiusWidths    Key = "curve-radius-widths"
	OpenRiserSphere      Key = "open-riser-sphere"
	OpenRiserAbove       Key = "open-riser-above"
	HandrailRisers       Key = "handrail-risers"
	HandrailHeightMin    Key = "handrail-height-min"
	HandrailHeightMax    Key = "handrail-height-max"
	HandrailBothSides    Key = "handrail-both-sides-width"
	GuardDrop            Key = "guard-drop"
	GuardTotalRise       Key = "guard-total-rise"
	GuardHeightMin       Key = "guard-height-min"
	GuardStairHeightMin  Key = "guard-stair-height-min"
	PadSlopeMax          Key = "pad-slope-max"
	StringerThroatMin    Key = "stringer-throat-min"
	StringerDepthMin     Key = "stringer-depth-min"
	StringerThicknessMin Key = "stringer-thickness-min"
	StringerSupportedMin Key = "stringer-thickness-supported-min"
	StringerCutSpanMax   Key = "stringer-cut-span-max"
	StringerSolidSpanMax Key = "stringer-solid-span-max"
	StringerSpacingMax   Key = "stringer-spacing-max"
	StringerClearMax     Key = "stringer-clear-risers-max"
	StringerSolidSpacing Key = "stringer-solid-spacing-max"
	StringerCountMin     Key = "stringer-count-min"
	TreadThicknessMin    Key = "tread-thickness-min"
	TreadThicknessOpen   Key = "tread-thickness-open-min"
	TreadThicknessBeyond Key = "tread-thickness-open-spacing"
	LiveLoadMin          Key = "live-load-min"
	LiveLoadTimes        Key = "live-load-times"
	PointLoadMin         Key = "point-load-min"
)

// Kind is what a limit's value is.
type Kind int

// The kinds of value, each written as in the examples.
const (
	Length   Kind = iota // 7 3/4", 190 mm
	Relative             // stair width; stair width, 48" at most; unit run; or a length
	Angle                // 42 degrees
	Count                // 4
	Slope                // 1:48
	Load                 // 40 psf
	Force                // 300 lb
	Word                 // one of the key's words
)

// Info is what is the same about a limit in every code.
type Info struct {
	Key     Key
	Kind    Kind
	Rule    string // id of the rule it belongs to
	Meaning string
	Words   []string // of a Word
}

// The words of WalklineFrom: where the walkline's datum is taken from.
const (
	FromClearWidth = "clear width"     // the inside edge of the clear width
	FromHandrail   = "inside handrail" // the centreline of the handrail at the inside
	FromEachSide   = "each side"       // both sides of the stair: two lines
	FromMiddle     = "middle"          // the line runs in the middle; there is no datum
)

// The words of WinderUse.
const (
	Anywhere    = "anywhere"
	NotInEgress = "not in a means of egress" // but a curve's tapered treads may be
)

// InfoOf returns what is known of a limit. ok is false for a key that is none.
func InfoOf(key Key) (info Info, ok bool) {
	for _, i := range infos {
		if i.Key == key {
			return i, true
		}
	}
	return Info{}, false
}

// infos is every limit there is, in the order they are printed in.
var infos = []Info{
	{RiserMax, Length, "riser-max", "height of a riser, at most", nil},
	{RiserMin, Length, "riser-min", "height of a riser, at least", nil},
	{RiserVariation, Length, "riser-variation", "tallest riser of a flight less its shortest, at most", nil},
	{RiserVariationAdjacent, Length, "riser-variation", "difference of neighbouring risers, at most", nil},
	{RiserDeviation, Length, "riser-variation", "difference of a riser from the planned one, at most", nil},

	{RunMin, Length, "run-min", "unit run, at least", nil},
	{RunMax, Length, "run-max", "unit run, at most", nil},
	{RunVariation, Length, "run-variation", "longest run of a flight less its shortest, at most", nil},
	{RunVariationAdjacent, Length, "run-variation", "difference of neighbouring runs, at most", nil},
	{RunDeviation, Length, "run-variation", "difference of a run from the planned one, at most", nil},

	{NosingMin, Length, "nosing", "overhang of a tread's nosing, at least", nil},
	{NosingMax, Length, "nosing", "overhang of a tread's nosing, at most", nil},
	{NosingExemptRun, Length, "nosing", "unit run from which a nosing may be less than its least, or none", nil},
	{NosingVariation, Length, "nosing-variation", "largest nosing of a flight less its smallest, at most", nil},

	{TwoRisePlusRunMin, Length, "two-rise-plus-run", "two rises and a run, at least", nil},
	{TwoRisePlusRunMax, Length, "two-rise-plus-run", "two rises and a run, at most", nil},
	{PitchMin, Angle, "pitch", "pitch of the nosing line above level, at least", nil},
	{PitchMax, Angle, "pitch", "pitch of the nosing line above level, at most", nil},

	{HeadroomMin, Length, "headroom", "headroom over the nosing line, at least", nil},
	{FlightRiseMax, Length, "flight-rise", "rise of a flight between landings or floors, at most", nil},
	{FlightRisersMin, Count, "flight-risers", "risers of a flight, at least", nil},
	{FlightRisersMax, Count, "flight-risers", "risers of a flight, at most", nil},
	{RisersInLineMax, Count, "risers-in-line", "risers of flights that follow each other without a landing that turns, at most", nil},
	{WidthMin, Length, "width", "clear width, at least", nil},

	{LandingLengthMin, Relative, "landing-size", "length of a landing in the direction of travel, at least", nil},
	{LandingWidthMin, Relative, "landing-size", "width of a landing square to travel, at least", nil},

	{WalklineFrom, Word, "winder-walkline", "what the walkline's distance is taken from", []string{FromClearWidth, FromHandrail, FromEachSide, FromMiddle}},
	{WalklineDatum, Length, "winder-walkline", "distance of the walkline", nil},
	{WalklineMiddleBelow, Length, "winder-walkline", "clear width below which the walkline is the middle", nil},
	{WinderWalklineMin, Relative, "winder-walkline", "depth of a winder on the walkline, at least", nil},
	{TaperedWalklineMin, Relative, "winder-walkline", "depth of a tapered tread of a curve on the walkline, at least", nil},
	{WinderNarrowMin, Length, "winder-narrow", "depth of a winder at its narrow end, at least", nil},
	{WinderNarrowDatum, Length, "winder-narrow", "how far from the inside edge the narrow end is measured", nil},
	{TaperedNarrowMin, Length, "winder-narrow", "depth of a tapered tread of a curve at its narrow end, at least", nil},
	{WinderVariation, Length, "winder-variation", "deepest winder on the walkline less the least deep, at most; 0: all alike", nil},
	{WinderAdjacent, Length, "winder-variation", "difference of neighbouring winders on the walkline, at most", nil},
	{WinderRunVariation, Length, "winder-variation", "difference of a winder on the walkline from the straight runs beside it, at most", nil},
	{WinderAngleMin, Angle, "winder-angle", "angle one winder turns, at least", nil},
	{WinderAngleMax, Angle, "winder-angle", "angle one winder turns, at most", nil},
	{WinderSetAngleMax, Angle, "winder-angle", "angle a set of winders turns, at most", nil},
	{WinderPerQuarterMax, Count, "winder-count", "winders in a quarter turn, at most", nil},
	{WinderSetsMax, Count, "winder-count", "sets of winders between two floors, at most", nil},
	{WinderUse, Word, "winder-use", "where winders may be used", []string{Anywhere, NotInEgress}},
	{CurveRadiusWidths, Count, "curve-radius", "least radius of a curve, as many times the width that is asked for", nil},

	{OpenRiserSphere, Length, "open-riser", "ball that must not pass an open riser", nil},
	{OpenRiserAbove, Length, "open-riser", "height above the floor up to which an open riser is not limited", nil},
	{HandrailRisers, Count, "handrail-needed", "risers of a flight from which a handrail is needed", nil},
	{HandrailBothSides, Length, "handrail-needed", "clear width from which both sides need one", nil},
	{HandrailHeightMin, Length, "handrail-height", "top of the handrail over the nosing line, at least", nil},
	{HandrailHeightMax, Length, "handrail-height", "top of the handrail over the nosing line, at most", nil},
	{GuardDrop, Length, "guard-needed", "drop at an open side beyond which a guard is needed", nil},
	{GuardTotalRise, Length, "guard-needed", "total rise from which open sides need a guard", nil},
	{GuardHeightMin, Length, "guard-needed", "height of a guard along a floor or landing, at least", nil},
	{GuardStairHeightMin, Length, "guard-needed", "height of a guard over the nosing line, at least", nil},

	{PadSlopeMax, Slope, "pad-slope", "slope of the pad the stair starts from, at most", nil},
	{StringerThroatMin, Length, "stringer-throat", "wood left square across under each root, at least", nil},
	{StringerDepthMin, Length, "stringer-depth", "width of the board a stringer is cut from, at least", nil},
	{StringerThicknessMin, Length, "stringer-thickness", "thickness of a stringer held at its ends, at least", nil},
	{StringerSupportedMin, Length, "stringer-thickness", "thickness of a stringer fastened along its length, at least", nil},
	{StringerCutSpanMax, Length, "stringer-span", "level span of a sawn stringer, at most", nil},
	{StringerSolidSpanMax, Length, "stringer-span", "level span of a solid stringer, at most", nil},
	{StringerSpacingMax, Length, "stringer-spacing", "stringer to stringer, centre to centre, at most", nil},
	{StringerClearMax, Length, "stringer-spacing", "clear between stringers where risers support the treads' fronts, at most", nil},
	{StringerSolidSpacing, Length, "stringer-spacing", "solid stringer to solid stringer, centre to centre, at most", nil},
	{StringerCountMin, Count, "stringer-count", "sawn stringers under a flight, at least", nil},
	{TreadThicknessMin, Length, "tread-thickness", "thickness of a tread, at least", nil},
	{TreadThicknessOpen, Length, "tread-thickness", "thickness of a tread with open risers and stringers far apart, at least", nil},
	{TreadThicknessBeyond, Length, "tread-thickness", "stringer spacing beyond which stringers are far apart", nil},
	{LiveLoadMin, Load, "live-load", "uniform live load on the level projection, at least", nil},
	{LiveLoadTimes, Count, "strength-basis", "how many times the live load expected a stair has to bear", nil},
	{PointLoadMin, Force, "strength-point", "load on any spot that a stair has to bear, at least", nil},
}
