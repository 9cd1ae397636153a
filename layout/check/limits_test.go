package check

import (
	"slices"
	"strings"
	"testing"

	"stepoff/layout"
	"stepoff/layout/strength"
	"stepoff/spec"
	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

// Every limit of every code: on it the rule is kept, a step beyond it broken.
// The finding names the section, says what would put it right, and says verify
// wherever a value from memory decides.
func TestEveryLimitOfEveryCode(t *testing.T) {
	for _, name := range rules.Names() {
		code, _ := rules.Lookup(name)
		for _, l := range code.Limits {
			build, ok := fixtures[l.Key]
			if !ok {
				continue // TestEveryRuleHasAFixture says so
			}
			t.Run(name+"/"+string(l.Key), func(t *testing.T) {
				info, _ := rules.InfoOf(l.Key)
				f := build(l, code)
				on, off := l.Key, l.Key
				if f.on != "" {
					on, off = f.on, f.off
				}
				kept := judgedBy(t, Judge(prepared(f.at, l), code), on)
				broken := judgedBy(t, Judge(prepared(f.beyond, l), code), off)
				if kept.Status != Pass || broken.Status != f.broken {
					t.Errorf("on the limit %s (%s), beyond it %s (%s)", kept.Status, kept.Text, broken.Status, broken.Text)
				}
				for _, finding := range []Finding{kept, broken} {
					if finding.ID != info.Rule || finding.Section == "" {
						t.Errorf("the finding is %s, section %q, want %s", finding.ID, finding.Section, info.Rule)
					}
					if on == l.Key && finding.Section != l.Section {
						t.Errorf("section %q, want %q", finding.Section, l.Section)
					}
					if finding.Basis == "" {
						t.Error("the finding does not say how the limit came to be known")
					}
				}
				if l.Basis == rules.FromMemory {
					if !strings.Contains(broken.Text, "verify") || broken.Basis != rules.FromMemory.String() {
						t.Errorf("from memory, yet: %s (%s)", broken.Text, broken.Basis)
					}
					if on == l.Key && !strings.Contains(kept.Text, "verify") {
						t.Errorf("from memory, yet: %s", kept.Text)
					}
				}
				if f.broken == Fail && !strings.Contains(broken.Text, "; ") {
					t.Errorf("nothing says what would put it right: %s", broken.Text)
				}
			})
		}
	}
}

// A rule without a fixture is a rule nobody has seen fail.
func TestEveryRuleHasAFixture(t *testing.T) {
	for _, r := range rules.Rules() {
		if judges[r.ID] == nil {
			t.Errorf("%s: nothing judges it", r.ID)
		}
		keys := rules.LimitsOf(r.ID)
		if len(keys) == 0 && !slices.ContainsFunc(fits, func(f fit) bool { return f.rule == r.ID }) && !strings.HasPrefix(r.ID, "comfort-") {
			t.Errorf("%s has no fixture", r.ID)
		}
		for _, k := range keys {
			if _, ok := fixtures[k]; !ok && !data[k] && !told[k] {
				t.Errorf("limit %s of %s has no fixture", k, r.ID)
			}
		}
	}
	for id := range judges {
		if !slices.ContainsFunc(rules.Rules(), func(r rules.Rule) bool { return r.ID == id }) {
			t.Errorf("%s is judged and is no rule", id)
		}
	}
	for k := range fixtures {
		if _, ok := rules.InfoOf(k); !ok {
			t.Errorf("the fixture for %s is an orphan", k)
		}
	}
}

// fit is a rule that stands in no code: a stair that keeps it, and one a step
// beyond.
type fit struct {
	rule         string
	kept, broken Facts
	says         string // in the broken one's text
}

var (
	in       = measure.Inch
	run10    = []measure.Length{10 * in, 10 * in}
	hundred  = 100 * in
	overhead = overheadFor(7.5, 10)
)

var fits = []fit{
	{"first-riser",
		Facts{Risers: even(2), First: stages(base, base, base.Plus(in*3/8))},
		Facts{Risers: even(2), First: stages(base, base, base.Plus(in*3/8+in/64))}, "25/64"},
	{"last-riser",
		Facts{Risers: even(2), Last: stages(base, base, base.Plus(-in*3/8))},
		Facts{Risers: even(2), Last: stages(base, base, base.Plus(-in*3/8-in/64))}, "25/64"},
	{"top-run",
		Facts{Runs: run10, TopRun: &TopRun{Run: (10 * in).MM()}},
		Facts{Runs: run10, TopRun: &TopRun{Run: (10*in - in/64).MM()}}, `the others are 10"`},
	{"opening",
		Facts{Overhead: overhead, Opening: ptr(123*in + in/8)},
		Facts{Overhead: overhead, Opening: ptr(123 * in)}, `it is 123"`},
	{"available-run",
		Facts{AvailableRun: &hundred, UsedRun: float(hundred)},
		Facts{AvailableRun: &hundred, UsedRun: float(hundred + in/64)}, `1/64" too much`},
	{"tread-board",
		Facts{TreadBoards: &hundred, TreadDepth: float(hundred)},
		Facts{TreadBoards: &hundred, TreadDepth: float(hundred + in/64)}, `1/64" short`},
	{"head-bearing",
		Facts{HeadContact: float(in + in/2)},
		Facts{HeadContact: float(in + in/2 - in/64), HungHead: true}, "hanger board"},
	{"ledger-notch", Facts{}, Facts{Ledger: &Ledger{Height: 3.5 * 25.4, HeadCut: 7 * 25.4}}, "0.25"},

	{"strength-basis", Facts{}, carrying(nil), "outside what the NDS allows"},
	{"strength-bending", carrying(func(c *layout.Carrier) { c.BendingRatio = 1 }), carrying(func(c *layout.Carrier) { c.BendingRatio = 1.0001 }), "1.01 times"},
	{"strength-shear", carrying(func(c *layout.Carrier) { c.ShearRatio = 1 }), carrying(func(c *layout.Carrier) { c.ShearRatio = 1.0001 }), "1.01 times"},
	{"strength-deflection", carrying(func(c *layout.Carrier) { c.DeflectionRatio = 1 }), carrying(func(c *layout.Carrier) { c.DeflectionRatio = 1.0001 }), "1.01 times"},
	{"strength-bearing", carrying(func(c *layout.Carrier) { c.FootBearing = c.Allowed }), carrying(func(c *layout.Carrier) { c.FootBearing = 1.0001 * c.Allowed }), "1.01 times"},
	{"strength-tread", treading(1), treading(1.0001), "1.01 times"},
	{"strength-point", Facts{}, carrying(nil), "300 lb in mid-span"},
	{"strength-head", Facts{}, carrying(nil), "has to carry"},
	{"strength-strongback", Facts{}, carrying(func(c *layout.Carrier) {
		c.Section = strength.Stiffened(c.Section[0], strength.Ply{Thickness: 38, Depth: 140, E: 11000, Fb: 6, Fv: 1})
		c.Stiffener = &c.Section[1]
	}), "glue and nails carry"},
	{"strength-overcut", Facts{}, carrying(nil), "an overcut of"},
	{"kicker-notch", Facts{}, carrying(nil), "a split starts in that corner"},
}

// tells are the rules that have something to say wherever they have anything to
// say it of, and nothing to pass.
var tells = map[string]bool{
	"ledger-notch": true, "kicker-notch": true, "strength-basis": true, "strength-point": true, "strength-head": true,
	"strength-strongback": true, "strength-overcut": true,
}

// carrying is a flight of one stringer in the middle of three, with a kicker,
// and what it carries changed.
func carrying(edit func(c *layout.Carrier)) Facts {
	job, err := spec.Load("job.yaml", []byte(`{units: imperial, levels: {total_rise: 52 1/2}, width: 36, stairway: [{flight: {risers: 7, run: 10}}],
		tread: {thickness: 1 1/2, species: DF-L, grade: No.2}, riser: {thickness: 3/4},
		stringer: {stock: 2x12, species: DF-L, grade: No.2, kicker: 2x4, support: [wall, span, wall]}}`))
	if err != nil {
		panic(err)
	}
	s, err := layout.Compute(job)
	if err != nil {
		panic(err)
	}
	code, _ := rules.Lookup("irc-2021")
	w := s.Strength(s.Flights()[0], code)
	if edit != nil {
		edit(&w.Stringers[1])
	}
	return Facts{Strength: w}
}

// treading is carrying, its treads borne to a part of what they may.
func treading(part float64) Facts {
	f := carrying(nil)
	f.Strength.Treads.TreadVerdict = strength.TreadVerdict{BendingRatio: part}
	return f
}

func ptr(l measure.Length) *measure.Length { return &l }

// The rules that stand in no code advise, and never fail.
func TestFits(t *testing.T) {
	code, _ := rules.Lookup("irc-2021")
	for _, f := range fits {
		f.kept.Style.Denominator, f.broken.Style.Denominator = 64, 64
		passes := tells[f.rule] // without what it tells of nothing is found
		for _, found := range Judge(f.kept, code) {
			passes = passes || found.ID == f.rule
			if found.ID == f.rule && found.Status != Pass {
				t.Errorf("%s: kept, yet %s: %s", f.rule, found.Status, found.Text)
			}
		}
		if !passes {
			t.Errorf("%s: kept, and nothing is found", f.rule)
		}
		seen := false
		for _, found := range Judge(f.broken, code) {
			if found.ID != f.rule {
				continue
			}
			seen = true
			if found.Status != Warn && found.Status != Info || !strings.Contains(found.Text, f.says) || found.Section == "" {
				t.Errorf("%s: %s [%s]: %s; want advice that says %q", f.rule, found.Status, found.Section, found.Text, f.says)
			}
		}
		if !seen {
			t.Errorf("%s: nothing is found", f.rule)
		}
	}
}

// Limits that are told stand in the text of what is needed.
func TestToldLimits(t *testing.T) {
	text := func(code string, f Facts, rule string) string {
		c, _ := rules.Lookup(code)
		for _, found := range Judge(f, c) {
			if found.ID == rule {
				return found.Text
			}
		}
		t.Fatalf("%s finds nothing", rule)
		return ""
	}
	guard := text("irc-2021", Facts{OpenSides: &[]string{"left"}, Drop: float(100 * in)}, "guard-needed")
	for _, want := range []string{`34" plumb over the nosing line`, `36" along a floor`, "left side is open"} {
		if !strings.Contains(guard, want) {
			t.Errorf("%q does not say %q", guard, want)
		}
	}
	one := measure.Metre
	narrow := one - measure.Millimetre
	for width, want := range map[*measure.Length]string{&one: "both sides", &narrow: "one side"} {
		if got := text("uk-adk", Facts{Risers: even(5), Width: width}, "handrail-needed"); !strings.Contains(got, want) || !strings.Contains(got, "900 mm") {
			t.Errorf("%q does not say %q and the height", got, want)
		}
	}
}

// Each rule of thumb: kept within its range, advice a sixteenth beyond it.
func TestComfortRanges(t *testing.T) {
	none, _ := rules.Lookup(rules.None)
	status := func(c rules.Comfort, value float64) Status {
		rise := 150.0
		run := map[string]float64{rules.TwoRisePlusRun: value - 2*rise, rules.RisePlusRun: value - rise, rules.RiseTimesRun: value / rise, rules.RunLessRise: value + rise}[c.Rule]
		exact, _ := measure.FromMM(run)
		for _, f := range Judge(Facts{Risers: []Share{Whole(150 * measure.Millimetre)}, Runs: []measure.Length{exact}}, none) {
			if f.ID == c.Rule && f.Section == c.Source {
				return f.Status
			}
		}
		t.Fatalf("%s of %s finds nothing", c.Rule, c.Source)
		return Fail
	}
	for _, c := range rules.ComfortRules() {
		step, hair := in.MM()/16, 0.0
		if c.Area() {
			step, hair = 100, 0.001 // mm2: a run to the nanometre is not the range's end exactly
		}
		for _, inside := range []float64{c.Least + hair, c.Most - hair} {
			if s := status(c, inside); s != Pass {
				t.Errorf("%s %s (%s): %s at %g", c.Formula, c.Text, c.Source, s, inside)
			}
		}
		for _, outside := range []float64{c.Least - step, c.Most + step} {
			if s := status(c, outside); s != Warn {
				t.Errorf("%s %s (%s): %s at %g", c.Formula, c.Text, c.Source, s, outside)
			}
		}
	}
}
