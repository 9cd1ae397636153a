package packet

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"stepoff/layout/geom"
	"stepoff/layout/views"
	"stepoff/pdfout/pdftest"
	"stepoff/spec/measure"
)

// sixMetres is a curve with an inside radius of 6 m.
const sixMetres = `
name: Six metres
units: metric
code: none
levels: {total_rise: 2880mm}
width: 1000mm
sides: [wall, wall]
stairway:
  - curve: {turn: %s, risers: 16, inside_radius: 6m, angle: 40, plate: 2x4, layers: 2}
tread: {thickness: 40mm, nosing: 25mm}
riser: {thickness: 19mm}
stringer: {stock: 2x12}
`

// Read back from the paper, the arcs of treads and plates lie on their true circles
// to a hundredth of a millimetre at a radius of 6 m, at every place of every curve:
// the radii are the job's own, and centres are found from the drawing's ends by
// geometry worked here. Nothing of an outline is missing, and nothing is drawn as a
// cut that is none: to the left on letter sheets, to the right on a roll.
func TestArcsAtSixMetres(t *testing.T) {
	for hand, paper := range map[string]string{"left": "letter", "right": `roll 48"`} {
		s := laidOut(t, "job.yaml", fmt.Sprintf(sixMetres, hand))
		for i, p := range print(t, s, partTreads, paper, measure.Inch/4) {
			held(t, p, treadTemplates(s)[i].first.Outline(), 6000, 7000)
		}
		for i, p := range print(t, s, partPlates, paper, measure.Inch/4) {
			plate := &s.Curves()[0].Framing.Plates[i]
			held(t, p, plate.Layers[0][0].Outline, plate.Inner, plate.Outer)
		}
	}
}

// held compares what was printed with an outline, and its curves with circles of
// the radii.
func held(t *testing.T, p printed, outline geom.Path, radii ...float64) {
	t.Helper()
	drawn := p.all("Cut")
	if err := pdftest.Missing(outline.Edges, drawn, trueSize); err != nil {
		t.Errorf("%s: %v", p.tiling.Part.Title, err)
	}
	if err := pdftest.Extra(drawn, outline.Edges, trueSize); err != nil {
		t.Errorf("%s: %v", p.tiling.Part.Title, err)
	}
	curves := 0
	for _, e := range outline.Edges {
		if !e.IsArc() {
			continue
		}
		if !slices.ContainsFunc(radii, func(r float64) bool { return math.Abs(r-e.Radius) < 1e-9 }) {
			t.Errorf("%s: an arc of radius %.4f, the radii are %v", p.tiling.Part.Title, e.Radius, radii)
		}
		centre := centreOf(e)
		for _, path := range drawn {
			for _, piece := range path.Pieces {
				if !piece.Curve || math.Abs(r2.Norm(r2.Sub(piece.From, centre))-e.Radius) > 1 {
					continue // of another arc
				}
				curves++
				for k := range 101 {
					if off := r2.Norm(r2.Sub(piece.At(float64(k)/100), centre)) - e.Radius; math.Abs(off) > trueSize {
						t.Fatalf("%s: the curve lies %.4f mm off its circle of radius %.1f", p.tiling.Part.Title, off, e.Radius)
					}
				}
			}
		}
	}
	if curves < 2 {
		t.Errorf("%s: %d curves were read back", p.tiling.Part.Title, curves)
	}
}

// centreOf finds an arc's centre from its ends and its radius alone, on the side
// that its sweep says.
func centreOf(e geom.Edge) geom.Point {
	chord := r2.Sub(e.To, e.From)
	half := r2.Norm(chord) / 2
	square := r2.Scale(math.Copysign(1, e.Sweep)/(2*half), geom.Pt(-chord.Y, chord.X))
	return r2.Add(r2.Scale(0.5, r2.Add(e.From, e.To)), r2.Scale(math.Sqrt(e.Radius*e.Radius-half*half), square))
}

// Everything that tapered treads are cut and built by, for the examples: a template
// for each tread, one for those alike, saying how many; and pages with a box's
// parts, the marks, the strings, the studs.
func TestTaperedParts(t *testing.T) {
	winder, curved := jobs(t)["winder-l.yaml"], jobs(t)["curved.yaml"]
	count := func(all []treadTemplate) (n int) {
		for _, a := range all {
			n += len(a.serves)
		}
		return n
	}
	if all := treadTemplates(winder); len(all) != 3 || count(all) != 3 {
		t.Errorf("%d templates for three winders that differ", len(all))
	}
	all := treadTemplates(curved)
	if n := count(all); n != 15 {
		t.Errorf("the templates of a curve serve %d treads, want 15", n)
	}
	// Before the first riser line the edges run straight on, so the first overhang may differ.
	if len(all) > 2 || !strings.HasSuffix(all[len(all)-1].which(), "to 15 of curve-1") {
		t.Errorf("%d templates, the last for %s", len(all), all[len(all)-1].which())
	}
	for _, c := range []struct {
		pages string
		words []string
	}{
		{pages(written(t, winder, partWinders)), []string{"Box 3 of winders-1", "outer rim", "joist", "30.0°", "Order of assembly", "lower newel face", "upper wall", "radius of 12"}},
		{pages(written(t, curved, partCurve)), []string{"Stud schedule", "16, before", "2 whole, 2 halves", "ledger", "outside string", "layers"}},
	} {
		for _, w := range c.words {
			if !strings.Contains(c.pages, w) {
				t.Errorf("no page says %q: %s", w, c.pages)
			}
		}
	}
	cover := words(written(t, curved), 0, 1)
	for _, w := range []string{"The inside plate of curve-1: ", "of curve-1: cut 14", "on the walkline"} {
		if !strings.Contains(cover, w) {
			t.Errorf("the cover does not say %q: %s", w, cover)
		}
	}
}

// pages are the words of every page after the cover.
func pages(f *pdftest.File) string { return words(f, 1, len(f.Pages)) }

// turns is a stairway of two quarter turns; the members between go in at %s.
const turns = `
name: Turns
units: imperial
code: %s
levels: {total_rise: 105", upper_finish: 3/4", lower_finish: 1/2"}
width: 36"
sides: [wall, open]
stairway:
%s
tread: {thickness: 1", nosing: 1"}
riser: {thickness: 3/4", joint: %s}
stringer: {stock: 2x12}
paper: {size: arch-d}
`

// Two turns to one hand are cut from the templates of one; to either hand, from the
// same turned over.
func TestTurnsShareTemplates(t *testing.T) {
	for second, over := range map[string]int{"left": 0, "right": 1} {
		s := stairway(t, fmt.Sprintf(strings.Replace(turns, "sides: [wall, open]", "sides: [wall, wall]", 1), "irc-2021", `
  - flight: {risers: 4, run: 10"}
  - winders: {turn: left, treads: 3}
  - flight: {risers: 3, run: 10"}
  - winders: {turn: `+second+`, treads: 3}
  - flight: {risers: 3, run: 10"}`, "behind"))
		all := treadTemplates(s)
		if len(all) != 3 {
			t.Fatalf("then %s: %d templates for six winders, want 3", second, len(all))
		}
		for _, template := range all {
			if len(template.serves) != 2 || template.over != over {
				t.Errorf("then %s: %s: %s", second, template.which(), template.count())
			}
		}
		want := []string{"winders-1/treads", "winders-2/treads"}
		if names := treadParts(s, measure.Style{})[0].names; !slices.Equal(names, want) {
			t.Errorf("asked for as %q, want %q", names, want)
		}
	}
}

// Turns at the very foot and at the very head, next to each other behind a flight of
// one riser, beside landings and curves, to either hand, in every way there is: each
// whole set can be printed, and nothing on it is no number.
func TestEveryOrderOfMembers(t *testing.T) {
	flight := func(n int) string { return fmt.Sprintf("  - flight: {risers: %d, run: 10\"}\n", n) }
	winders := func(turn, how string) string { return "  - winders: {turn: " + turn + ", " + how + "}\n" }
	landing := func(turn string) string { return "  - landing: {turn: " + turn + ", joists: 2x8}\n" }
	curve := func(turn string, n int) string {
		return fmt.Sprintf("  - curve: {turn: %s, risers: %d, inside_radius: 5', angle: 90, plate: 2x4}\n", turn, n)
	}
	for _, c := range []struct{ name, code, joint, members string }{
		{"at the foot", "irc-2021", "behind", flight(1) + winders("left", "treads: 3") + flight(11)},
		{"at the head", "irc-2021", "on", flight(11) + winders("right", "treads: 3") + flight(1)},
		{"a U", "irc-2021", "behind", flight(4) + winders("right", "treads: 3") + flight(1) + winders("right", "treads: 3") + flight(5)},
		{"even lines", "none", "behind", flight(6) + winders("left", "treads: 4, lines: even") + flight(5)},
		{"in a point", "nbc-2020", "behind", flight(6) + winders("left", "treads: 3, setback: 0") + flight(6)},
		{"less than a quarter", "none", "behind", flight(6) + winders("right", "treads: 2, angle: 45") + flight(7)},
		{"on no boxes", "none", "on", flight(6) + winders("left", "treads: 3, framing: none") + flight(6)},
		{"from a landing", "none", "behind", flight(3) + landing("right") + curve("right", 12)},
		{"to a landing", "none", "on", curve("left", 12) + landing("left") + flight(3)},
		{"curve and winders", "none", "behind", curve("right", 10) + winders("left", "treads: 3") + flight(3)},
	} {
		for _, hand := range []string{"left", "right"} {
			members := c.members
			if hand == "right" {
				members = strings.NewReplacer("turn: left", "turn: right", "turn: right", "turn: left").Replace(members)
			}
			s := stairway(t, fmt.Sprintf(turns, c.code, members, c.joint))
			f := written(t, s)
			all := words(f, 0, len(f.Pages))
			for _, bad := range []string{"NaN", "Inf", measure.Unknown, "%!"} {
				if strings.Contains(all, bad) {
					t.Errorf("%s, %s: a page says %q", c.name, hand, bad)
				}
			}
			for _, tread := range views.Treads(s) {
				if want := fmt.Sprintf("of %s", tread.Member); !strings.Contains(all, want) {
					t.Errorf("%s, %s: no page says %q", c.name, hand, want)
				}
			}
		}
	}
}
