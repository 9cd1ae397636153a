package choose

import (
	"cmp"
	"math"
	"slices"

	"stepoff/layout/check"
	"stepoff/spec/lumber"
	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

// Request is what is known before risers and run are chosen. What is nil was
// not measured and limits nothing.
type Request struct {
	Rise      measure.Length  // between the finished floors
	Risers    *int            // only this count
	Flights   int             // that share the risers; 0 is one
	Stretches int             // from landing or floor to landing or floor; 0: each flight is one
	Run       *measure.Length // only this unit run
	Available *measure.Length // first nosing to head plumb cut
	Flush     bool            // the top tread is level with the upper floor

	BoardRun *measure.Length // the run that tread boards give: their width less the nosing
	Nosing   *measure.Length // to be judged; nil: not
	Front    measure.Length  // first nosing to first riser cut: nosing and riser board
	Open     *bool           // risers are open; nil: not known

	Stock      lumber.Size     // of the stringers
	FloorDepth *measure.Length // upper floor down to the ceiling below
	Opening    *measure.Length // head plumb cut to the far edge of the floor opening

	Code  *rules.Code
	Style measure.Style // prints the lengths in findings
}

// Choice is one riser count with its best run.
type Choice struct {
	Risers, Treads int
	UnitRise       float64 // mm
	Run            measure.Length
	TotalRun       float64  // treads * unit run, mm
	Pitch          float64  // radians
	Throat         float64  // mm; 0 or less: the board is cut through
	Fits           bool     // the available run holds it, or none was stated
	TooLong        float64  // mm, by how much the available run falls short
	NeedsPosts     bool     // longer than the code lets a stringer sawn of this stock span: posts, or a wall
	Opening        *float64 // mm, needed for the code's headroom; nil: not known
	Headroom       *float64 // mm, under the opening as measured; nil: not known
	Findings       []check.Finding
	Allowed        []string // names of other codes that would allow a choice this one does not
}

// Meets tells whether no limit of the code is broken.
func (c Choice) Meets() bool { return !check.Fails(c.Findings) }

// The two rules of thumb that choices are ranked by. Together they ask for
// 7 1/2 by 10; the sums codes set allow both (UK Approved Document K and NCC
// 2022: 2R+T of 550 to 700 mm; DIN 18065: 590 to 650).
const (
	// 2R+T: rule 1 of US Army course EN5156.
	twoRisesAndRun = 25 * measure.Inch
	// R+T: the middle of the 17 to 18 in of "Drawing: Stairways"
	// (chestofbooks.com).
	riseAndRun = 17*measure.Inch + measure.Inch/2
)

// apart is how far the choice is from the two rules of thumb, in millimetres. A
// single riser has no run; it is taken with the 10 in that both rules ask for
// beside a rise of 7 1/2.
func (c Choice) apart() float64 {
	run := c.Run.MM()
	if c.Treads == 0 {
		run = (10 * measure.Inch).MM()
	}
	return math.Abs(2*c.UnitRise+run-twoRisesAndRun.MM()) + math.Abs(c.UnitRise+run-riseAndRun.MM())
}

// better ranks two choices; the README has the ranking in words.
func better(a, b Choice) int {
	return cmp.Or(
		falseLast(a.Meets(), b.Meets()),
		falseLast(a.Fits, b.Fits),
		cmp.Compare(measure.SnapMM(a.TooLong), measure.SnapMM(b.TooLong)),
		cmp.Compare(measure.SnapMM(a.apart()), measure.SnapMM(b.apart())),
		cmp.Compare(a.Risers, b.Risers),
		cmp.Compare(a.Run, b.Run),
	)
}

func falseLast(a, b bool) int {
	switch {
	case a == b:
		return 0
	case a:
		return -1
	}
	return 1
}

// Choices weighs every riser count worth a look, best first.
func Choices(q Request) []Choice {
	var all []Choice
	for _, n := range q.counts() {
		if c, ok := q.best(n); ok {
			all = append(all, c)
		}
	}
	for i := range all {
		if !all[i].Meets() {
			all[i].Allowed = q.allowed(all[i])
		}
	}
	slices.SortStableFunc(all, better)
	return all
}

// best is the best of the runs worth considering for a riser count; ok is
// false when a flight of so many risers has no tread to give a run to.
func (q Request) best(risers int) (best Choice, ok bool) {
	for _, run := range q.runs(risers) {
		c := q.choice(risers, run, q.Code)
		if !ok || better(c, best) < 0 {
			best, ok = c, true
		}
	}
	return best, ok
}

// treads of a flight of so many risers.
func (q Request) treads(risers int) int {
	if q.Flush {
		return risers
	}
	return risers - max(1, q.Flights)
}

// allowed names the other codes that would allow what the code in force does
// not.
func (q Request) allowed(c Choice) []string {
	var names []string
	for _, name := range rules.Names() {
		other, ok := rules.Lookup(name)
		if !ok || name == q.Code.Name || name == rules.None {
			continue
		}
		if would := q.choice(c.Risers, c.Run, other); would.Meets() && !would.NeedsPosts {
			names = append(names, name)
		}
	}
	return names
}
