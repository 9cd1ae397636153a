package packet

import (
	"bytes"
	"slices"
	"strings"
	"testing"

	"stepoff/layout"
	"stepoff/pdfout/pdftest"
	"stepoff/spec/measure"
)

// alike is a stairway whose second and third flights stand alike on landings
// alike; the first stands on the floor, the last has another run.
const alike = `
name: Four flights
units: imperial
levels: {total_rise: 150", upper_finish: 3/4"}
width: 36"
stairway:
  - flight: {risers: 5, run: 10"}
  - landing: {turn: left, joists: 2x8}
  - flight: {risers: 5, run: 10"}
  - landing: {turn: left, joists: 2x8, on: walls}
  - flight: {risers: 5, run: 10"}
  - landing: {turn: left}
  - flight: {risers: 5, run: 10 1/2"}
tread: {thickness: 1 1/2", nosing: 1"}
riser: {thickness: 3/4"}
stringer: {stock: 2x12}
`

func stairway(t *testing.T, text string) *layout.Stairway {
	t.Helper()
	return laidOut(t, "job.yaml", text)
}

func written(t *testing.T, s *layout.Stairway, parts ...string) *pdftest.File {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, s, Options{Parts: parts, Paper: s.Job.Paper, Style: measure.Style{Units: s.Job.Units}}); err != nil {
		t.Fatal(err)
	}
	return pdftest.MustRead(t, b.Bytes())
}

func words(f *pdftest.File, from, to int) string {
	all := ""
	for _, p := range f.Pages[from:to] {
		all += " " + strings.Join(p.Lines(), " ")
	}
	return strings.Join(strings.Fields(all), " ")
}

// Flights that are cut alike have one template between them, whatever flight it
// is asked for by; one that differs, by half an inch of run or by standing on the
// floor, has its own. The cover says which is which.
func TestFlightsShareTemplates(t *testing.T) {
	s := stairway(t, alike)
	all, err := pick(s, nil, measure.Style{}, nil)
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, p := range all {
		got = append(got, strings.Join(p.names, " "))
	}
	want := []string{
		"flight-1/stringer", "flight-2/stringer flight-3/stringer", "flight-4/stringer",
		"flight-1/pitch-board flight-2/pitch-board flight-3/pitch-board", "flight-4/pitch-board",
		"landing-1/landing", "landing-2/landing", "story-pole",
	}
	if !slices.Equal(got, want) {
		t.Errorf("parts %q, want %q", got, want)
	}
	two, three := s.Flights()[1].Stringers[0], s.Flights()[2].Stringers[0]
	if !slices.Equal(two.Outline, three.Outline) {
		t.Fatal("flights 2 and 3 should be cut alike: the case shows nothing")
	}
	for _, name := range []string{"flight-2/stringer", "flight-3/stringer"} {
		f := written(t, s, name)
		cover := words(f, 0, 1)
		for _, line := range []string{"Stringer, flights 2 and 3: ", "flight-3 all; cut as flight-2 "} {
			if !strings.Contains(cover, line) {
				t.Errorf("--part %s: the cover does not say %q: %s", name, line, cover)
			}
		}
		if sheets := words(f, 1, len(f.Pages)); strings.Contains(sheets, "Stringer, flight 1") || !strings.Contains(sheets, "Stringer, flights 2 and 3") {
			t.Errorf("--part %s prints %s", name, sheets)
		}
	}
}

// A whole set shows the stairway after its cover, tells the work flight by flight
// and has a page for every landing that is framed, with its cut list.
func TestWholeStairway(t *testing.T) {
	s := stairway(t, alike)
	f := written(t, s)
	all := words(f, 0, len(f.Pages))
	want := []string{"Plan, levels above the lower finished floor", "Isometric picture", "Unfolded elevation", "not for cutting",
		"Framing of landing-1", "Framing of landing-2", "wall stud", "Cut sequence, flight-1", "Cut list, flight-4"}
	for _, l := range s.Landings() {
		for _, p := range frame(l) {
			want = append(want, p.Part)
		}
	}
	for _, w := range want {
		if !strings.Contains(all, w) {
			t.Errorf("no page says %q", w)
		}
	}
	if strings.Contains(all, "Framing of landing-3") {
		t.Error("a landing without joists has a page of framing")
	}
	if page := words(written(t, s, "landing-3/landing"), 1, 2); !strings.Contains(page, "states no joists") {
		t.Errorf("asked for, the landing without joists says %q", page)
	}
	if pages := len(written(t, s, "landing").Pages); pages != 1+3 {
		t.Errorf("a cover and three landings take %d pages", pages)
	}
}

func frame(l *layout.Landing) []layout.FramePiece {
	if l.Frame == nil {
		return nil
	}
	return l.Frame.Pieces
}
