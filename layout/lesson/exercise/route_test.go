package exercise_test

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"stepoff/layout/check"
	"stepoff/layout/lesson"
	"stepoff/layout/lesson/exercise"
	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

// sheet is a problem as an apprentice reads it: nothing but what is printed.
type sheet struct {
	t *testing.T
	exercise.Problem
	units measure.Units
}

func (s sheet) value(name string) string {
	for _, g := range s.Given {
		if g.Name == name {
			return g.Value
		}
	}
	s.t.Fatalf("%s: nothing is given as %q: %v", s.Kind, name, s.Given)
	return ""
}

func (s sheet) mm(name string) float64 { return s.parse(s.value(name)) }

func (s sheet) parse(text string) float64 {
	l, err := measure.Parse(text, s.units)
	if err != nil {
		s.t.Fatalf("%s: %v", s.Kind, err)
	}
	return l.MM()
}

func (s sheet) number(name string) float64 {
	v, err := strconv.ParseFloat(s.value(name), 64)
	if err != nil {
		s.t.Fatalf("%s: %v", s.Kind, err)
	}
	return v
}

// routes answer each kind of problem from its printed figures, another way than
// the layout does.
var routes = map[string]func(sheet) []any{
	"count-risers": func(s sheet) []any {
		n := 1
		for float64(n)*s.mm("greatest rise of one step") < s.mm("total rise")-1e-9 {
			n++
		}
		return []any{fmt.Sprint(n)}
	},
	"unit-rise": func(s sheet) []any { return []any{s.mm("total rise") / s.number("risers")} },
	"unit-run": func(s sheet) []any {
		return []any{s.mm("total run, nosing to nosing") / (s.number("risers") - 1)}
	},
	"total-run": func(s sheet) []any { return []any{(s.number("risers") - 1) * s.mm("unit run")} },
	// The blank is as long as the way, along the slope, from the heel to the top of
	// the plumb cut: a projection of the two corners.
	"stringer-length": func(s sheet) []any {
		r, u, n := s.mm("unit rise"), s.mm("unit run"), s.number("treads sawn")
		step := math.Sqrt(r*r + u*u)
		up := s.mm("first riser cut") + (n-1)*r
		return []any{step, (n*u*u + up*r) / step}
	},
	"square": func(s sheet) []any {
		fine := 25.4 / 16
		if s.units == measure.Metric {
			fine = 1
		}
		return []any{math.Round(s.mm("total rise")/s.number("risers")/fine) * fine, math.Round(s.mm("unit run")/fine) * fine}
	},
	"drop": func(s sheet) []any {
		drop := s.mm("thickness of the treads") - s.mm("flooring still to come round the foot")
		return []any{drop, s.mm("unit rise") - drop}
	},
	// Through the angle of the pitch.
	"throat": func(s sheet) []any {
		depth := s.mm("unit run") * math.Sin(math.Atan(s.mm("unit rise")/s.mm("unit run")))
		return []any{depth, s.mm("width of the board") - depth}
	},
	// The opening is widened until the headroom is reached.
	"opening": func(s sheet) []any {
		low, high := 0.0, 1e5
		for range 60 {
			if half := (low + high) / 2; s.headroomAt(half) < s.mm("headroom") {
				low = half
			} else {
				high = half
			}
		}
		return []any{high}
	},
	"headroom": func(s sheet) []any { return []any{s.headroomAt(s.mm("opening"))} },
	"story-pole": func(s sheet) []any {
		each := s.mm("total rise") / s.number("risers")
		return []any{each * s.number("lower step"), each * s.number("higher step")}
	},
	"landing": func(s sheet) []any {
		level := s.mm("total rise") * s.number("risers below the landing") / s.number("risers in all")
		return []any{level, level - s.mm("flooring on the landing")}
	},
	// Two nosings, each a line at a distance from the pivot, meet the walkline's
	// circle; how far they overhang must not matter.
	"winders": func(s sheet) []any {
		radius := s.mm("setback") + s.mm("walkline, from the inside edge")
		each := math.Pi / 2 / s.number("winders")
		meets := func(turned float64) r2.Vec {
			const overhang = 40.0
			along, off := math.Sqrt(radius*radius-overhang*overhang), overhang
			sin, cos := math.Sincos(turned)
			return r2.Vec{X: along*cos - off*sin, Y: along*sin + off*cos}
		}
		return []any{r2.Norm(r2.Sub(meets(each), meets(0)))}
	},
	"code-fault": func(s sheet) []any {
		var broken []any
		for _, g := range s.Given {
			measured, limit, _ := strings.Cut(strings.TrimSuffix(g.Value, ")"), "  (")
			value := s.parse(measured)
			over := 0.0
			if most, ok := strings.CutPrefix(limit, "at most "); ok {
				over = value - s.parse(most)
			} else if least, ok := strings.CutPrefix(limit, "at least "); ok {
				over = s.parse(least) - value
			} else {
				s.t.Fatalf("no limit in %q", g.Value)
			}
			if over > 1e-9 {
				broken = append(broken, g.Name, over)
			}
		}
		// One thing alone is wrong: the pitch of a private stair is no more than the 42
		// degrees of Approved Document K, 2013, table 1.1, note 1, whatever else is.
		if s.units == measure.Metric {
			measured := func(name string) float64 {
				value, _, _ := strings.Cut(s.value(name), "  (")
				return s.parse(value)
			}
			if pitch := math.Atan2(measured("greatest riser"), measured("least run, nosing to nosing")) * 180 / math.Pi; pitch > 42 {
				s.t.Errorf("it climbs at %.1f degrees", pitch)
			}
		}
		return broken
	},
	"parts": func(s sheet) []any {
		var names []any
		for _, n := range s.Names {
			names = append(names, n)
		}
		return names
	},
	// The drawn outline is measured.
	"sawn-wrong": func(s sheet) []any {
		o := s.Drawn.Outline
		first := r2.Norm(r2.Sub(o[1], o[0]))
		n := len(s.Drawn.Tips)
		last := r2.Norm(r2.Sub(o[2*n], o[2*n-1]))
		rightFirst := s.mm("unit rise") - s.mm("thickness of the treads") + s.mm("flooring still to come round the foot")
		var wrong []any
		if math.Abs(first-rightFirst) > 1e-6 {
			wrong = append(wrong, exercise.NotDropped, rightFirst)
		}
		if math.Abs(last-s.mm("unit run")) > 1e-6 {
			wrong = append(wrong, exercise.WrongHead, s.mm("unit run"))
		}
		if s.Drawn.Overcut > 0 {
			if s.Drawn.Root < 1 || s.Drawn.Root >= n {
				s.t.Fatalf("there is no root %d", s.Drawn.Root)
			}
			wrong = append(wrong, exercise.Overcut, fmt.Sprintf("the cut stops at root %d from the foot", s.Drawn.Root))
		}
		return wrong
	},
}

// headroomAt is what is free over the nosing line under the far edge of an
// opening: that line falls from the floor's own nosing, which stands the nosing
// and the riser board before the plumb cut.
func (s sheet) headroomAt(opening float64) float64 {
	back := opening - s.mm("nosing") - s.mm("riser board")
	return back*s.mm("unit rise")/s.mm("unit run") - s.mm("thickness of the upper floor")
}

// sets and each are ten thousand problems, half of them metric.
const (
	sets = 200
	each = 50
)

// Ten thousand problems: every answer comes out the same by a second route from
// the printed figures alone, within a hundredth of its tolerance; what is printed
// is whole; no two of a set are alike; every stair behind a problem meets its
// code.
func TestSecondRoute(t *testing.T) {
	counted := map[string]int{}
	for seed := range uint64(sets) {
		units := []measure.Units{measure.Imperial, measure.Metric}[seed%2]
		problems, err := exercise.Set(seed, each, lesson.Full, units)
		if err != nil {
			t.Fatal(err)
		}
		seen := map[string]bool{}
		for i, p := range problems {
			where := fmt.Sprintf("seed %d, exercise %d (%s)", seed, i+1, p.Kind)
			counted[p.Kind]++
			key := fmt.Sprint(p.Title, p.Ask, p.Given, p.Names)
			if seen[key] {
				t.Errorf("%s is in its set twice", where)
			}
			seen[key] = true
			route := routes[p.Kind]
			if route == nil {
				t.Fatalf("%s has no second route", p.Kind)
			}
			compare(t, where, p, route(sheet{t, p, units}))
			sound(t, where, p)
		}
	}
	total := 0
	for _, kind := range exercise.Kinds() {
		if counted[kind] == 0 {
			t.Errorf("no problem is of the kind %s", kind)
		}
		total += counted[kind]
	}
	if total != sets*each {
		t.Errorf("%d problems, want %d", total, sets*each)
	}
}

// near is how near the second route must come, as a share of the tolerance: what
// rounding in binary costs is far less, and a wrong formula misses it.
const near = 0.01

func compare(t *testing.T, where string, p exercise.Problem, want []any) {
	t.Helper()
	if len(want) != len(p.Answers) {
		t.Errorf("%s: the second route has %v, the answers are %+v", where, want, p.Answers)
		return
	}
	for i, a := range p.Answers {
		switch w := want[i].(type) {
		case string:
			if a.Value != w || a.Tolerance != 0 {
				t.Errorf("%s: %s is %q, by the second route %q", where, a.Name, a.Value, w)
			}
		case float64:
			if !a.Right(w) || math.Abs(a.MM-w) > near*a.Tolerance.MM() {
				t.Errorf("%s: %s is %.4f mm, by the second route %.4f", where, a.Name, a.MM, w)
			}
			if !(a.MM > 0) {
				t.Errorf("%s: %s is %g mm", where, a.Name, a.MM)
			}
		}
	}
}

// sound holds what is given to be what a tape shows, and the stair to be legal.
func sound(t *testing.T, where string, p exercise.Problem) {
	t.Helper()
	for _, g := range p.Given {
		if strings.HasSuffix(g.Value, "+") || strings.HasSuffix(g.Value, "-") || strings.Contains(g.Value, measure.Unknown) {
			t.Errorf("%s: %s is given as %s, which is not all of it", where, g.Name, g.Value)
		}
	}
	for _, a := range append([]string{p.Ask, p.Title}, p.Worked...) {
		if a == "" || strings.Contains(a, "?") && a != p.Ask || strings.Contains(a, "NaN") || strings.Contains(a, "%!") {
			t.Errorf("%s: %q", where, a)
		}
	}
	if p.Stairway == nil {
		return
	}
	code, ok := rules.Lookup(p.Stairway.Job.Code.Name)
	if !ok {
		t.Fatalf("%s: no code %s", where, p.Stairway.Job.Code.Name)
	}
	for _, f := range check.Of(check.Stairway(p.Stairway, code, measure.Style{Units: p.Stairway.Job.Units}), check.Fail) {
		t.Errorf("%s: the stair fails %s: %s", where, f.ID, f.Text)
	}
}
