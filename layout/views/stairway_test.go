package views_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"stepoff/layout"
	"stepoff/layout/choose"
	"stepoff/layout/drawing"
	"stepoff/layout/geom"
	"stepoff/layout/views"
	"stepoff/spec"
	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

// randomStairway is a job of one to four flights and curves with landings, some of
// them framed, and winders between. hand swaps left and right.
func randomStairway(t *rapid.T) (job func(mirrored bool) string) {
	num := func(what string, least, most int) int { return rapid.IntRange(least, most).Draw(t, what) }
	flights := num("flights", 1, 4)
	risers := 0
	type member struct{ text, turn string }
	var members []member
	for i := range flights {
		n := num("risers", 1, 9)
		if flights == 1 {
			n += 2
		}
		risers += n
		if n > 2 && num("curved", 0, 3) == 0 {
			members = append(members, member{fmt.Sprintf("curve: {turn: %%s, risers: %d, inside_radius: %d, angle: %d}", n, num("radius", 60, 75), (n-1)*num("degrees a tread", 8, 10)),
				rapid.SampledFrom([]string{"left", "right"}).Draw(t, "curve's turn")})
		} else {
			members = append(members, member{text: fmt.Sprintf("flight: {risers: %d, run: %d.5}", n, num("run", 9, 11))})
		}
		if i == flights-1 {
			break
		}
		more := fmt.Sprintf("finish: 0.%d, on: %s", 25*num("finish", 0, 3), rapid.SampledFrom([]string{"legs", "walls", "ledgers"}).Draw(t, "on"))
		turn := rapid.SampledFrom([]string{"none", "left", "right"}).Draw(t, "turn")
		if turn != "none" && num("winders", 0, 2) == 0 {
			angle, treads := 90, num("treads", 2, 4)
			if treads == 2 {
				angle = num("winders' angle", 45, 90)
			}
			risers += treads - 1
			lines := rapid.SampledFrom([]string{"radial", "even"}).Draw(t, "lines")
			members = append(members, member{fmt.Sprintf("winders: {turn: %%s, treads: %d, angle: %d, lines: %s}", treads, angle, lines), turn})
			continue
		}
		if turn != "none" {
			switch num("angle", 0, 2) {
			case 0:
				more += fmt.Sprintf(", angle: 180, gap: %d", num("gap", 0, 20))
			case 1:
				more += fmt.Sprintf(", length: %d, width: %d, side: middle", num("length", 36, 60), num("wide", 36, 60))
			}
		}
		if rapid.Bool().Draw(t, "framed") && risers > 2 {
			more += ", joists: 2x6"
		}
		members = append(members, member{"landing: {turn: %s, " + more + "}", turn})
	}
	open := rapid.SampledFrom([]string{"[open, open]", "[wall, wall]"}).Draw(t, "sides")
	return func(mirrored bool) string {
		var b strings.Builder
		fmt.Fprintf(&b, "units: imperial\nlevels: {total_rise: %d.25, floor_depth: 11, upper_finish: 3/4}\nwidth: 36\nsides: %s\n", risers*7, open)
		b.WriteString("tread: {thickness: 1 1/2, nosing: 1}\nriser: {thickness: 3/4}\nstringer: {stock: 2x12}\nstairway:\n")
		for _, m := range members {
			turn := m.turn
			if mirrored {
				turn = map[string]string{"none": "none", "left": "right", "right": "left"}[turn]
			}
			b.WriteString("  - " + strings.Replace(m.text, "%s", turn, 1) + "\n")
		}
		return b.String()
	}
}

func compute(t rapid.TB, text string) *layout.Stairway {
	job, err := spec.Load("job.yaml", []byte(text))
	if err != nil {
		t.Fatalf("%s\n%v", text, err)
	}
	if job, err = choose.Fill(job, codeOf(job)); err != nil {
		t.Fatal(err)
	}
	s, err := layout.Compute(job)
	if err != nil {
		t.Skip(err) // some cannot be built
	}
	return s
}

// Of any stairway every drawing can be written, is no larger than the stair with
// its floors and walls, and what a framer looks for is on it: every riser
// numbered once, every landing with its level, in plan and unfolded.
func TestWholeStairway(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := compute(t, randomStairway(t)(false))
		st := measure.Style{Units: s.Job.Units}
		plan, unfolded, picture := views.Plan(s, st), views.Unfolded(s, st), views.Isometric(s, st)
		irc, _ := rules.Lookup("irc-2021")
		drawings := []*drawing.Drawing{plan, unfolded, picture, views.StoryPole(s, st)}
		for _, f := range s.Flights() {
			drawings = append(drawings, views.Elevation(s, f, irc, st))
		}
		for _, e := range s.Elements {
			if d := views.TurnPlan(s, e, st); d != nil {
				drawings = append(drawings, d)
			}
		}
		for _, l := range s.Landings() {
			if d := views.Framing(s, l, st); d != nil {
				drawings = append(drawings, d)
			}
		}
		for _, d := range drawings {
			if err := d.Check(); err != nil {
				t.Fatal(err)
			}
		}

		footprint, _ := s.Footprint()
		const wall, floors = 120 * math.Sqrt2, 1300 // beyond it, millimetres: walls, of one that stands aslant its corner; floors in the picture
		for _, it := range plan.Items {
			if p, ok := it.(drawing.Path); ok && p.Layer != drawing.Lumber {
				box := p.Box()
				if !footprint.Contains(box.Min, wall) || !footprint.Contains(box.Max, wall) {
					t.Fatalf("%v in the plan lies beyond the footprint %v", box, footprint)
				}
			}
		}
		diagonal := math.Hypot(footprint.Width(), footprint.Height()) + s.TotalRise.MM()*2 + 2*floors
		if b := picture.Bounds(); b.Empty() || b.Width() > diagonal || b.Height() > diagonal {
			t.Fatalf("the picture is %g by %g", b.Width(), b.Height())
		}
		var numbers []string
		for _, it := range plan.Items {
			if text, ok := it.(drawing.Text); ok && len(text.Text) <= 2 && text.Text != "UP" {
				numbers = append(numbers, text.Text)
			}
		}
		for k := range s.Risers {
			if k >= len(numbers) || numbers[k] != fmt.Sprint(k+1) {
				t.Fatalf("the risers are numbered %v, not 1 to %d", numbers, s.Risers)
			}
		}
		for _, l := range s.Landings() {
			level := st.FormatMM(l.Level)
			if !says(plan, l.Name) || !says(plan, level) || !says(unfolded, l.Name+" "+level) {
				t.Fatalf("%s at %s is not named", l.Name, level)
			}
		}
	})
}

// With every turn to the other hand the plan is the mirror image: what is drawn
// solid on the left is drawn on the right.
func TestMirroredPlan(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := randomStairway(t)
		s, m := compute(t, text(false)), compute(t, text(true))
		st := measure.Style{}
		ends := func(s *layout.Stairway, sign float64) (all []geom.Point) {
			for _, l := range [...]drawing.Layer{drawing.Outline, drawing.Hidden} {
				for _, e := range lines(views.Plan(s, st), l) {
					for _, p := range [...]geom.Point{e.From, e.To} {
						all = append(all, geom.Pt(math.Round(sign*p.X*100)/100, math.Round(p.Y*100)/100))
					}
				}
			}
			return all
		}
		here, there := ends(s, 1), ends(m, -1)
		const onBreak = 220 // the break line leans the same way in both, on a curve's outside the most
		for _, p := range here {
			if !slices.ContainsFunc(there, func(q geom.Point) bool { return math.Hypot(p.X-q.X, p.Y-q.Y) < 0.02+onBreak }) {
				t.Fatalf("%v has no mirror image", p)
			}
		}
		if len(here) != len(there) {
			t.Fatalf("%d ends of lines, mirrored %d", len(here), len(there))
		}
	})
}

// The frame as drawn has as many joists as the cut list, each as long.
func TestFramingIsTheCutList(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := compute(t, randomStairway(t)(false))
		for _, l := range s.Landings() {
			d := views.Framing(s, l, measure.Style{})
			if d == nil {
				continue
			}
			var drawn, listed []float64
			for _, it := range d.Items {
				if p, ok := it.(drawing.Path); ok && p.Layer == drawing.Thin && p.Closed {
					drawn = append(drawn, math.Max(p.Edges[0].Length(), p.Edges[1].Length()))
				}
			}
			for _, p := range l.Frame.Pieces {
				if strings.HasPrefix(p.Part, "joist") {
					for range p.Count {
						listed = append(listed, p.Length)
					}
				}
			}
			slices.Sort(drawn)
			slices.Sort(listed)
			if !slices.EqualFunc(drawn, listed, func(a, b float64) bool { return math.Abs(a-b) < 1e-6 }) {
				t.Fatalf("%s: joists drawn %.1f, listed %.1f", l.Name, drawn, listed)
			}
		}
	})
}
