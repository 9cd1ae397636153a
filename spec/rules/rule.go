package rules

// Rule is one thing that is checked. Its id names the findings it gives.
type Rule struct {
	ID       string
	Meaning  string   // in one line
	Severity Severity // of a finding where it is broken
	// Reference is where a rule stands that no code sets. The section of any
	// other is its limit's.
	Reference string
}

// Severity is what a broken rule amounts to.
type Severity int

// A limit of the code in force is broken; advice; something that is needed.
const (
	Fail Severity = iota
	Warn
	Note
)

// The references of rules that stand in no code.
const (
	commonPractice = "common practice"
	ownJob         = "the job"
	thumb          = "rule of thumb"
)

// Rules returns every rule, in the order findings are given in.
func Rules() []Rule { return registry }

// LimitsOf returns the keys of the limits a rule is judged by; none for a rule
// that stands in no code.
func LimitsOf(rule string) (keys []Key) {
	for _, i := range infos {
		if i.Rule == rule {
			keys = append(keys, i.Key)
		}
	}
	return keys
}

var registry = []Rule{
	{"riser-max", "no riser is higher than the code allows", Fail, ""},
	{"riser-min", "no riser is lower than the code allows", Fail, ""},
	{"riser-variation", "the risers of a flight are alike", Fail, ""},
	{"first-riser", "the first riser as it is at each stage of the work", Warn, commonPractice},
	{"last-riser", "the last riser as it is at each stage of the work", Warn, commonPractice},
	{"run-min", "no run is shorter than the code allows", Fail, ""},
	{"run-max", "no run is longer than the code allows", Fail, ""},
	{"run-variation", "the runs of a flight are alike", Fail, ""},
	{"top-run", "the top run, once the floor's own nosing is on, is as the others", Warn, commonPractice},
	{"nosing", "the nosings overhang as much as the code asks and no more", Fail, ""},
	{"nosing-variation", "the nosings of a flight are alike", Fail, ""},
	{"two-rise-plus-run", "two rises and a run come to what the code asks", Fail, ""},
	{"pitch", "the stair is no steeper and no flatter than the code allows", Fail, ""},
	{"headroom", "there is headroom over the whole nosing line", Fail, ""},
	{"opening", "the opening in the floor that the headroom needs", Note, "(headroom + floor) / rise x run + nosing + riser board"},
	{"flight-rise", "no flight rises more than the code allows without a landing", Fail, ""},
	{"flight-risers", "a flight has as many risers as the code allows", Fail, ""},
	{"risers-in-line", "flights without a landing that turns between them have no more risers than the code allows", Fail, ""},
	{"width", "the stair is wide enough", Fail, ""},
	{"available-run", "the stair fits the room there is", Warn, ownJob},
	{"landing-size", "every landing is long and wide enough", Fail, ""},
	{"winder-walkline", "winders are deep enough on the walkline", Fail, ""},
	{"winder-narrow", "winders are deep enough at their narrow ends", Fail, ""},
	{"winder-variation", "the winders of a turn are alike on the walkline, and like the straight runs where the code asks", Fail, ""},
	{"winder-angle", "a winder turns as much as the code asks and no more", Fail, ""},
	{"winder-count", "a turn has no more winders, and a stairway no more turns of them, than the code allows", Fail, ""},
	{"winder-use", "winders stand where the code allows them", Fail, ""},
	{"curve-radius", "a curve is no tighter than the code allows", Fail, ""},
	{"open-riser", "an open riser lets no ball of the code's size pass", Fail, ""},
	{"handrail-needed", "whether a handrail is needed, and at what height", Note, ""},
	{"handrail-height", "the handrail stands within the code's band over the nosing line", Fail, ""},
	{"guard-needed", "whether a guard is needed, and how high", Note, ""},
	{"pad-slope", "the pad at the foot is level enough", Fail, ""},
	{"stringer-throat", "enough wood is left under the notches", Fail, ""},
	{"stringer-depth", "the stringers' boards are wide enough", Fail, ""},
	{"stringer-thickness", "the stringers are thick enough", Fail, ""},
	{"stringer-span", "the stringers span no farther than the code allows", Fail, ""},
	{"stringer-spacing", "the stringers stand close enough", Fail, ""},
	{"stringer-count", "there are enough stringers", Fail, ""},
	{"tread-thickness", "the treads are thick enough", Fail, ""},
	{"live-load", "the live load stated is no less than the code's", Fail, ""},
	{"tread-board", "a tread can be cut from its boards", Warn, commonPractice},
	{"head-bearing", "enough of the head plumb cut bears on the header", Warn, commonPractice},
	{"ledger-notch", "the notch over a ledger weakens the head", Warn, "NDS 3.4.3.2"},
	{"kicker-notch", "what the notch over a kicker leaves at the foot", Note, commonPractice},
	{"strength-basis", "the wood, the loads and the factors that strength is judged by", Note, ""},
	{"strength-bending", "the stringers' net section bears the load in bending", Warn, "NDS 3.3"},
	{"strength-shear", "the stringers' net section bears the load in shear", Warn, "NDS 3.4.2"},
	{"strength-deflection", "the stringers sag no more than floors may", Warn, "IRC table R301.7"},
	{"strength-bearing", "the wood at the foot bears what stands on it", Warn, "NDS 3.10"},
	{"strength-point", "the stringers under a point load", Warn, ""},
	{"strength-head", "what has to hold each head, and carry on each prop", Note, "statics"},
	{"strength-strongback", "what a strongback's glue and nails have to carry", Note, "statics"},
	{"strength-overcut", "how far past a root the saw may run", Note, "geometry"},
	{"strength-tread", "the treads bear their load from stringer to stringer", Warn, "NDS 3.3"},
	{TwoRisePlusRun, "two rises and a run, by a rule of thumb", Warn, thumb},
	{RisePlusRun, "a rise and a run, by a rule of thumb", Warn, thumb},
	{RiseTimesRun, "a rise times a run, by a rule of thumb", Warn, thumb},
	{RunLessRise, "a run less a rise, by a rule of thumb", Warn, thumb},
}
