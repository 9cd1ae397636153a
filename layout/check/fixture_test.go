package check

import (
	"math"
	"testing"

	"stepoff/layout"
	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

// fixture is a stair just on a limit and one a step beyond it: 1/64 in, 0.4 mm,
// one riser, a hundredth of a degree.
type fixture struct {
	at, beyond Facts
	// broken is what the rule finds beyond the limit; on it all is well.
	broken Status
	// on and off are the limits the findings are judged by where that is
	// another than the one held.
	on, off rules.Key
}

// A limit that says where or how another is measured, and decides nothing by
// itself here. What is measured comes in with the facts.
var data = map[rules.Key]bool{
	rules.WalklineFrom: true, rules.WalklineDatum: true, rules.WalklineMiddleBelow: true, rules.WinderNarrowDatum: true,
}

// A limit that a finding tells and does not judge by.
var told = map[rules.Key]bool{
	rules.GuardHeightMin: true, rules.GuardStairHeightMin: true, rules.HandrailBothSides: true, rules.LiveLoadTimes: true,
}

func step(l rules.Limit) measure.Length {
	if measure.UnitsOf(l.Text) == measure.Metric {
		return 400_000 * measure.Nanometre
	}
	return measure.Inch / 64
}

func atMost(l rules.Limit, facts func(measure.Length) Facts) fixture {
	return fixture{at: facts(l.Length), beyond: facts(l.Length + step(l))}
}

func atLeast(l rules.Limit, facts func(measure.Length) Facts) fixture {
	return fixture{at: facts(l.Length), beyond: facts(l.Length - step(l))}
}

// lessThan is for a limit that has to be kept below: on it, it is broken.
func lessThan(l rules.Limit, facts func(measure.Length) Facts) fixture {
	return fixture{at: facts(l.Length - step(l)), beyond: facts(l.Length)}
}

func counted(l rules.Limit, beyond int, facts func(int) Facts) fixture {
	return fixture{at: facts(l.Count), beyond: facts(l.Count + beyond)}
}

// of is a limit's length, or what a relative one comes to.
func of(l rules.Limit, related measure.Length) rules.Limit {
	if l.Of != rules.Itself {
		l.Length = related
	}
	return l
}

var (
	base  = Whole(7 * measure.Inch)
	solid = false
	open  = true
	wide  = 40 * measure.Inch // less than the 48 in a landing need be at most
)

func even(n int) []Share {
	all := make([]Share, n)
	for i := range all {
		all[i] = base
	}
	return all
}

func float(l measure.Length) *float64 { v := l.MM(); return &v }

func winders(treads ...Tapered) Facts {
	return Facts{Turn: &Turn{Angle: 90, Treads: treads}, FlightRun: &wide}
}

func curve(t Tapered) Facts {
	return Facts{Turn: &Turn{Curve: true, Angle: 90, Treads: []Tapered{t}}}
}

func turnApart(l rules.Limit, _ *rules.Code) fixture {
	return atMost(l, func(v measure.Length) Facts { return winders(Tapered{Walkline: 300}, Tapered{Walkline: 300 + v.MM()}) })
}

// fixtures builds, for every limit, the stairs that hold it.
var fixtures = map[rules.Key]func(rules.Limit, *rules.Code) fixture{
	rules.RiserMax: func(l rules.Limit, _ *rules.Code) fixture {
		return atMost(l, func(v measure.Length) Facts { return Facts{Risers: []Share{Whole(v), Whole(v)}} })
	},
	rules.RiserMin: func(l rules.Limit, _ *rules.Code) fixture {
		return atLeast(l, func(v measure.Length) Facts { return Facts{Risers: []Share{Whole(v), Whole(v)}} })
	},
	rules.RiserVariation:         riserApart,
	rules.RiserVariationAdjacent: riserApart,
	rules.RiserDeviation: func(l rules.Limit, _ *rules.Code) fixture {
		return atMost(l, func(v measure.Length) Facts {
			return Facts{Plan: &Plan{base.Total * 10, 10}, Risers: []Share{base, base.Plus(v)}}
		})
	},
	rules.RunMin: func(l rules.Limit, _ *rules.Code) fixture {
		return atLeast(l, func(v measure.Length) Facts { return Facts{Runs: []measure.Length{v, v}} })
	},
	rules.RunMax: func(l rules.Limit, _ *rules.Code) fixture {
		return atMost(l, func(v measure.Length) Facts { return Facts{Runs: []measure.Length{v, v}} })
	},
	rules.RunVariation:         runApart,
	rules.RunVariationAdjacent: runApart,
	rules.RunDeviation: func(l rules.Limit, _ *rules.Code) fixture {
		return atMost(l, func(v measure.Length) Facts { return Facts{Runs: []measure.Length{wide - v, wide, wide + v}} }) // from the mean
	},
	rules.NosingMin: func(l rules.Limit, c *rules.Code) fixture {
		run := 9 * measure.Inch
		return atLeast(l, func(v measure.Length) Facts {
			return Facts{Nosings: []measure.Length{v}, Runs: []measure.Length{run}}
		})
	},
	rules.NosingMax: func(l rules.Limit, _ *rules.Code) fixture {
		return atMost(l, func(v measure.Length) Facts { return Facts{Nosings: []measure.Length{v}} })
	},
	rules.NosingExemptRun: func(l rules.Limit, _ *rules.Code) fixture {
		f := atLeast(l, func(v measure.Length) Facts {
			return Facts{Nosings: []measure.Length{0}, Runs: []measure.Length{v}}
		})
		f.on, f.off = rules.NosingMin, rules.NosingMin
		return f
	},
	rules.NosingVariation: func(l rules.Limit, _ *rules.Code) fixture {
		return atMost(l, func(v measure.Length) Facts { return Facts{Nosings: []measure.Length{measure.Inch, measure.Inch + v}} })
	},
	rules.TwoRisePlusRunMin: func(l rules.Limit, _ *rules.Code) fixture { return atLeast(l, twoRises) },
	rules.TwoRisePlusRunMax: func(l rules.Limit, _ *rules.Code) fixture { return atMost(l, twoRises) },
	rules.PitchMin:          func(l rules.Limit, _ *rules.Code) fixture { return pitched(l, -1) },
	rules.PitchMax:          func(l rules.Limit, _ *rules.Code) fixture { return pitched(l, 1) },

	rules.HeadroomMin: func(l rules.Limit, _ *rules.Code) fixture {
		return atLeast(l, func(v measure.Length) Facts { return Facts{Headroom: &v} })
	},
	rules.FlightRiseMax: func(l rules.Limit, _ *rules.Code) fixture {
		return atMost(l, func(v measure.Length) Facts { return Facts{Risers: []Share{base, Whole(v - base.Total)}} })
	},
	rules.FlightRisersMin: func(l rules.Limit, _ *rules.Code) fixture {
		return counted(l, -1, func(n int) Facts { return Facts{Risers: even(n)} })
	},
	rules.FlightRisersMax: func(l rules.Limit, _ *rules.Code) fixture {
		return counted(l, 1, func(n int) Facts { return Facts{Risers: even(n)} })
	},
	rules.RisersInLineMax: func(l rules.Limit, _ *rules.Code) fixture {
		return counted(l, 1, func(n int) Facts { return Facts{RisersInLine: &n} })
	},
	rules.WidthMin: func(l rules.Limit, _ *rules.Code) fixture {
		return atLeast(l, func(v measure.Length) Facts { return Facts{Width: &v} })
	},
	rules.LandingLengthMin: func(l rules.Limit, _ *rules.Code) fixture {
		return atLeast(of(l, wide), func(v measure.Length) Facts {
			return Facts{Width: &wide, Landings: []Landing{{Name: "landing-2", Length: v.MM(), Width: 5000}}}
		})
	},
	rules.LandingWidthMin: func(l rules.Limit, _ *rules.Code) fixture {
		return atLeast(of(l, wide), func(v measure.Length) Facts {
			return Facts{Width: &wide, Landings: []Landing{{Name: "landing-2", Width: v.MM(), Length: 5000}}}
		})
	},

	rules.WinderWalklineMin: func(l rules.Limit, _ *rules.Code) fixture {
		return atLeast(of(l, wide), func(v measure.Length) Facts { return winders(Tapered{Walkline: v.MM()}) })
	},
	rules.WinderNarrowMin: func(l rules.Limit, _ *rules.Code) fixture {
		return atLeast(l, func(v measure.Length) Facts { return winders(Tapered{Narrow: v.MM()}) })
	},
	rules.TaperedWalklineMin: func(l rules.Limit, _ *rules.Code) fixture {
		return atLeast(l, func(v measure.Length) Facts { return curve(Tapered{Walkline: v.MM()}) })
	},
	rules.TaperedNarrowMin: func(l rules.Limit, _ *rules.Code) fixture {
		return atLeast(l, func(v measure.Length) Facts { return curve(Tapered{Narrow: v.MM()}) })
	},
	rules.WinderVariation: turnApart,
	rules.WinderAdjacent:  turnApart,
	rules.WinderRunVariation: func(l rules.Limit, _ *rules.Code) fixture {
		return atMost(l, func(v measure.Length) Facts {
			f := winders(Tapered{Walkline: (wide + v).MM()}, Tapered{Walkline: 300})
			f.Turn.Beside = []Beside{{Name: "flight-1", Run: wide}}
			return f
		})
	},
	rules.WinderAngleMin: func(l rules.Limit, _ *rules.Code) fixture {
		return fixture{at: winders(Tapered{Angle: l.Degrees}), beyond: winders(Tapered{Angle: l.Degrees - 0.01})}
	},
	rules.WinderAngleMax: func(l rules.Limit, _ *rules.Code) fixture {
		return fixture{at: winders(Tapered{Angle: l.Degrees}), beyond: winders(Tapered{Angle: l.Degrees + 0.01})}
	},
	rules.WinderSetAngleMax: func(l rules.Limit, _ *rules.Code) fixture {
		set := func(angle float64) Facts {
			return Facts{Turn: &Turn{Angle: angle, Treads: []Tapered{{Angle: 30}}}}
		}
		return fixture{at: set(l.Degrees), beyond: set(l.Degrees + 0.01)}
	},
	rules.WinderPerQuarterMax: func(l rules.Limit, _ *rules.Code) fixture {
		return counted(l, 1, func(n int) Facts { return winders(make([]Tapered, n)...) })
	},

	rules.WinderSetsMax: func(l rules.Limit, _ *rules.Code) fixture {
		return counted(l, 1, func(n int) Facts { return Facts{WinderSets: &n} })
	},
	rules.WinderUse: func(rules.Limit, *rules.Code) fixture {
		return fixture{at: curve(Tapered{}), beyond: winders(Tapered{})}
	},
	rules.CurveRadiusWidths: func(l rules.Limit, c *rules.Code) fixture {
		width, _ := c.Limit(rules.WidthMin)
		l.Length = measure.Length(l.Count) * width.Length
		return atLeast(l, func(v measure.Length) Facts {
			return Facts{Turn: &Turn{Curve: true, Angle: 90, Radius: &v}}
		})
	},

	rules.OpenRiserSphere: func(l rules.Limit, _ *rules.Code) fixture {
		return lessThan(l, func(v measure.Length) Facts { return Facts{OpenRisers: &open, Gap: &Gap{Whole(v), 5000}} })
	},
	rules.OpenRiserAbove: func(l rules.Limit, c *rules.Code) fixture {
		ball, _ := c.Limit(rules.OpenRiserSphere)
		f := atMost(l, func(v measure.Length) Facts { return Facts{OpenRisers: &open, Gap: &Gap{Whole(ball.Length), v.MM()}} })
		f.on, f.off = rules.OpenRiserSphere, rules.OpenRiserSphere
		return f
	},
	rules.HandrailRisers: func(l rules.Limit, _ *rules.Code) fixture {
		return fixture{at: Facts{Risers: even(l.Count - 1)}, beyond: Facts{Risers: even(l.Count)}, broken: Info}
	},
	rules.HandrailHeightMin: func(l rules.Limit, _ *rules.Code) fixture {
		return atLeast(l, func(v measure.Length) Facts { return Facts{Handrail: &v} })
	},
	rules.HandrailHeightMax: func(l rules.Limit, _ *rules.Code) fixture {
		return atMost(l, func(v measure.Length) Facts { return Facts{Handrail: &v} })
	},
	rules.GuardDrop: func(l rules.Limit, _ *rules.Code) fixture {
		f := atMost(l, func(v measure.Length) Facts { return Facts{OpenSides: &[]string{"left"}, Drop: float(v)} })
		f.broken = Info
		return f
	},
	rules.GuardTotalRise: func(l rules.Limit, _ *rules.Code) fixture {
		f := lessThan(l, func(v measure.Length) Facts {
			return Facts{OpenSides: &[]string{"left", "right"}, TotalRise: &v}
		})
		f.broken = Info
		return f
	},
	rules.PadSlopeMax: func(l rules.Limit, _ *rules.Code) fixture {
		pad := func(more measure.Length) Facts {
			return Facts{Pad: &Fall{Fall: measure.Length(l.Slope.Rise) * measure.Inch, Over: measure.Length(l.Slope.Run)*measure.Inch - more}}
		}
		return fixture{at: pad(0), beyond: pad(measure.Inch / 64)}
	},

	rules.StringerThroatMin: func(l rules.Limit, _ *rules.Code) fixture {
		return atLeast(l, func(v measure.Length) Facts {
			return Facts{Stringers: []Stringer{{Width: 300 * measure.Millimetre, Throat: float(v)}}}
		})
	},
	rules.StringerDepthMin: func(l rules.Limit, _ *rules.Code) fixture {
		return atLeast(l, func(v measure.Length) Facts { return Facts{Stringers: []Stringer{{Width: v}}} })
	},
	rules.StringerThicknessMin: func(l rules.Limit, _ *rules.Code) fixture {
		return atLeast(l, func(v measure.Length) Facts { return Facts{Stringers: []Stringer{{Thickness: v}}} })
	},
	rules.StringerSupportedMin: func(l rules.Limit, _ *rules.Code) fixture {
		return atLeast(l, func(v measure.Length) Facts { return Facts{Stringers: []Stringer{{Thickness: v, AlongWall: true}}} })
	},
	rules.StringerCutSpanMax: func(l rules.Limit, _ *rules.Code) fixture {
		return atMost(l, func(v measure.Length) Facts { return Facts{Stringers: []Stringer{{Span: float(v)}}} })
	},
	rules.StringerSolidSpanMax: func(l rules.Limit, _ *rules.Code) fixture {
		return atMost(l, func(v measure.Length) Facts { return Facts{Stringers: []Stringer{{Span: float(v), Solid: true}}} })
	},
	rules.StringerSpacingMax: func(l rules.Limit, _ *rules.Code) fixture {
		return atMost(l, func(v measure.Length) Facts {
			return Facts{Spacing: float(v), OpenRisers: &open, Stringers: []Stringer{{}}}
		})
	},
	rules.StringerSolidSpacing: func(l rules.Limit, _ *rules.Code) fixture {
		return atMost(l, func(v measure.Length) Facts { return Facts{Spacing: float(v), Stringers: []Stringer{{Solid: true}}} })
	},
	rules.StringerClearMax: func(l rules.Limit, _ *rules.Code) fixture {
		thick := 38 * measure.Millimetre
		return atMost(l, func(v measure.Length) Facts {
			return Facts{Spacing: float(v + thick), OpenRisers: &solid, Stringers: []Stringer{{Thickness: thick}}}
		})
	},
	rules.StringerCountMin: func(l rules.Limit, _ *rules.Code) fixture {
		return counted(l, -1, func(n int) Facts { return Facts{StringerCount: &n} })
	},
	rules.TreadThicknessMin: func(l rules.Limit, _ *rules.Code) fixture {
		return atLeast(l, func(v measure.Length) Facts { return Facts{TreadThickness: &v} })
	},
	rules.TreadThicknessOpen: func(l rules.Limit, _ *rules.Code) fixture {
		return atLeast(l, func(v measure.Length) Facts {
			return Facts{TreadThickness: &v, OpenRisers: &open, Spacing: float(measure.Metre)}
		})
	},
	rules.TreadThicknessBeyond: func(l rules.Limit, c *rules.Code) fixture {
		thin, _ := c.Limit(rules.TreadThicknessMin)
		f := atMost(l, func(v measure.Length) Facts {
			return Facts{TreadThickness: &thin.Length, OpenRisers: &open, Spacing: float(v)}
		})
		f.on, f.off = rules.TreadThicknessMin, rules.TreadThicknessOpen
		return f
	},
	rules.PointLoadMin: func(l rules.Limit, code *rules.Code) fixture {
		bears := func(part float64) Facts {
			f := carrying(nil)
			f.Strength.Loads.PointLimit = &l
			f.Strength.Stringers[1].PointRatio = part
			return f
		}
		return fixture{at: bears(1), beyond: bears(1.0001), broken: Warn}
	},
	rules.LiveLoadMin: func(l rules.Limit, _ *rules.Code) fixture {
		less := l.Pascals - 1
		return fixture{at: Facts{LiveLoad: &l.Pascals}, beyond: Facts{LiveLoad: &less}}
	},
}

func riserApart(l rules.Limit, _ *rules.Code) fixture {
	return atMost(l, func(v measure.Length) Facts { return Facts{Risers: []Share{base, base.Plus(v), base}} })
}

func runApart(l rules.Limit, _ *rules.Code) fixture {
	return atMost(l, func(v measure.Length) Facts { return Facts{Runs: []measure.Length{wide, wide + v, wide}} })
}

// twoRises makes 2R+T come to a length.
func twoRises(v measure.Length) Facts {
	rise := 150 * measure.Millimetre
	return Facts{Risers: []Share{Whole(rise), Whole(rise)}, Runs: []measure.Length{v - 2*rise}}
}

// pitched makes a stair of 250 mm runs that keeps the angle to the nanometre of
// its rise, and one a hundredth of a degree beyond it.
func pitched(l rules.Limit, side float64) fixture {
	run := 250 * measure.Millimetre
	facts := func(angle float64, round func(float64) float64) Facts {
		rise := measure.Length(round(float64(run) * math.Tan(angle*math.Pi/180)))
		return Facts{Risers: []Share{Whole(rise), Whole(rise)}, Runs: []measure.Length{run}}
	}
	inside := math.Floor
	if side < 0 {
		inside = math.Ceil
	}
	return fixture{at: facts(l.Degrees, inside), beyond: facts(l.Degrees+side*0.01, math.Round)}
}

// prepared gives the facts the risers that the limit is for.
func prepared(f Facts, l rules.Limit) Facts {
	if f.OpenRisers == nil {
		f.OpenRisers = &solid
		if l.When == rules.OpenRisers {
			f.OpenRisers = &open
		}
	}
	return f
}

// judgedBy returns the one finding that rests on a limit.
func judgedBy(t *testing.T, findings []Finding, key rules.Key) Finding {
	t.Helper()
	var found []Finding
	for _, f := range findings {
		if f.key == key {
			found = append(found, f)
		}
	}
	if len(found) != 1 {
		t.Fatalf("%d findings rest on %s: %+v", len(found), key, found)
	}
	return found[0]
}

// overheadFor is a hung flight of 14 risers under a floor 11 in deep, riser
// board 3/4, nosing 1. Inches.
func overheadFor(rise, run float64) *layout.Overhead {
	const in = 25.4
	return &layout.Overhead{Rise: rise * in, Run: run * in, TotalRise: 14 * rise * in, FloorDepth: 11 * in, FirstNosing: -1.75 * in, Head: 13 * run * in}
}
