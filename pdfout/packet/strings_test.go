package packet

import (
	"bytes"
	"strings"
	"testing"

	"stepoff/layout"
	"stepoff/layout/geom"
	cut "stepoff/layout/stringer"
	"stepoff/layout/views"
	"stepoff/pdfout/pdftest"
	"stepoff/spec/measure"
)

// readPart prints the parts of one name, and reads them back from their pages.
func readPart(t *testing.T, s *layout.Stairway, name, size string) []printed {
	t.Helper()
	all := print(t, s, name, size, measure.Inch/4)
	if len(all) == 0 {
		t.Fatalf("no part %s", name)
	}
	return all
}

// cutsOf are what of a string must be on paper: its housings' walls with their
// nosings as arcs, and its outline where that is not the board's edge.
func cutsOf(s *layout.String) []geom.Edge {
	var all []geom.Edge
	for _, e := range s.Hand.Face(geom.Closed(s.Outline...)).Edges {
		onEdge := func(y float64) bool {
			return near1(e.From.Y, y) && near1(e.To.Y, y)
		}
		if w := s.Width; !onEdge(0) && !onEdge(w) && !onEdge(-w) {
			all = append(all, e)
		}
	}
	if s.Housed != nil {
		for i := range s.Housed.Housings {
			for _, run := range s.Housed.Housings[i].Walls() {
				all = append(all, s.Hand.Face(run).Edges...)
			}
		}
	}
	return all
}

func near1(a, b float64) bool { return a-b < 1e-6 && b-a < 1e-6 }

// Pieced together from letter sheets, every cut of either string is there at true
// size, arcs and all, and no other; the left string's sheets say so, and the right
// one's are not the same sheets.
func TestStringsFromLetterSheets(t *testing.T) {
	all := jobs(t)
	for _, name := range []string{"parlour.yaml", "landing-stage.yaml"} {
		s := all[name]
		f := s.Flights()[0]
		printed := readPart(t, s, partStringer, "letter")
		if len(printed) != 2 {
			t.Fatalf("%s: %d templates for two strings", name, len(printed))
		}
		for i, p := range printed {
			c := &f.Strings[i]
			if p.tiling.Part.Hand != c.Hand.String() {
				t.Errorf("%s: template %d is for the %s hand", name, i, p.tiling.Part.Hand)
			}
			want, drawn := cutsOf(c), p.all("Cut")
			arcs := 0
			for _, e := range want {
				if e.IsArc() {
					arcs++
				}
			}
			if c.Housed != nil && arcs != len(c.Marks) {
				t.Errorf("%s: %d arcs, want a half round for each of %d treads", name, arcs, len(c.Marks))
			}
			if err := pdftest.Missing(want, drawn, trueSize); err != nil {
				t.Errorf("%s, %s: %v", name, c.Name, err)
			}
			if err := pdftest.Extra(drawn, want, trueSize); err != nil {
				t.Errorf("%s, %s: %v", name, c.Name, err)
			}
			if c.Cleated != nil {
				var marks []geom.Edge
				for _, k := range c.Cleated.Cleats {
					marks = append(marks, c.Hand.Face(geom.Closed(k.Corners...)).Edges...)
				}
				if err := pdftest.Missing(marks, p.all("Mark"), trueSize); err != nil {
					t.Errorf("%s, cleats of %s: %v", name, c.Name, err)
				}
			}
		}
	}
}

// The router's template stands the offset outside its housing everywhere on paper:
// half the bush less the cutter's radius, worked by hand for the parlour stair:
// 5/16 - 1/4 in.
func TestRouterTemplateOnPaper(t *testing.T) {
	s := jobs(t)["parlour.yaml"]
	h := s.Flights()[0].Strings[0].Housed
	p := readPart(t, s, partRouter, "tabloid")[0]
	if want := 25.4 / 16; !near1(h.Router.Offset, want) {
		t.Errorf("the template stands %.4f outside the housing, want %.4f", h.Router.Offset, want)
	}
	lay := func(q geom.Point) geom.Point { return geom.Pt(q.X-h.Marks[0], -q.Y) }
	want := h.Router.Template.Moved(lay, true).Edges
	if err := pdftest.Missing(want, p.all("Cut"), trueSize); err != nil {
		t.Error(err)
	}
	if err := pdftest.Extra(p.all("Cut"), want, trueSize); err != nil {
		t.Error(err)
	}
}

// The page of settings tells what the stops, the fence and the router are set to;
// stringers on cleats have none.
func TestSettings(t *testing.T) {
	all := jobs(t)
	st := measure.Style{Units: measure.Imperial}
	var b bytes.Buffer
	s := all["parlour.yaml"]
	if err := Write(&b, s, Options{Parts: []string{partSettings}, Paper: s.Job.Paper, Style: st}); err != nil {
		t.Fatal(err)
	}
	f := pdftest.MustRead(t, b.Bytes())
	text := strings.Join(f.Pages[1].Lines(), " ")
	for _, want := range []string{"stepped jig", "13 stops", "36.87 degrees", "guide bush", "Wedges, one taper for all"} {
		if !strings.Contains(text, want) {
			t.Errorf("the page of settings does not say %q", want)
		}
	}
	err := Write(&b, all["landing-stage.yaml"], Options{Parts: []string{partSettings}, Paper: s.Job.Paper, Style: st})
	if _, ok := err.(UnknownPart); !ok {
		t.Errorf("settings of stringers on cleats: %v", err)
	}
}

// The right string's drawing is the left one's mirror image, line for line.
func TestHandsOnPaperAreMirrorImages(t *testing.T) {
	f := jobs(t)["parlour.yaml"].Flights()[0]
	left, right := &f.Strings[0], &f.Strings[1]
	flip := func(q geom.Point) geom.Point { return geom.Pt(q.X, -q.Y) }
	for _, pair := range [][2]geom.Path{
		{cut.LeftString.Face(geom.Closed(left.Outline...)), cut.RightString.Face(geom.Closed(right.Outline...))},
		{cut.LeftString.Face(left.Housed.Housings[0].Outline), cut.RightString.Face(right.Housed.Housings[0].Outline)},
	} {
		for k, e := range pair[0].Moved(flip, true).Edges {
			if o := pair[1].Edges[k]; !same(e.From.X, o.From.X) || !same(e.From.Y, o.From.Y) || !near1(e.Sweep, o.Sweep) {
				t.Errorf("edge %d: %v turned over is not %v", k, e, o)
			}
		}
	}
	if d := views.StringHousings(left); d == nil || len(d.Items) != len(left.Housed.Housings) {
		t.Error("not every housing is handed to the router")
	}
}
