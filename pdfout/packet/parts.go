package packet

import (
	"fmt"
	"slices"
	"strings"

	"stepoff/layout"
	"stepoff/layout/geom"
	"stepoff/layout/views"
	"stepoff/pdfout"
	"stepoff/spec/measure"
)

// part is something a set can hold: full-size drawings under one name.
type part struct {
	name  string
	asked bool // printed only when asked for by name
	sheet func() []pdfout.Part
}

// The parts by name, as --part takes them.
const (
	partStringer   = "stringer"
	partNotchStrip = "notch-strip" // in place of the whole stringer, where that is too much paper
	partPitchBoard = "pitch-board"
	partStoryPole  = "story-pole"
)

// catalogue lists everything this stairway has at full size, in the order it
// is printed.
func catalogue(s *layout.Stairway, st measure.Style) []part {
	var all []part
	flights := s.Flights()
	for _, f := range flights {
		if len(f.Stringers) == 0 {
			continue
		}
		prefix, suffix := "", ""
		if len(flights) > 1 {
			prefix, suffix = f.Name+"/", ", "+f.Name
		}
		all = append(all,
			part{prefix + partStringer, false, func() []pdfout.Part { return stringers(f, st, prefix, suffix) }},
			part{prefix + partPitchBoard, false, func() []pdfout.Part { return []pdfout.Part{pitchBoard(f, st, prefix, suffix)} }},
		)
		if f.Treads > 1 { // else there is no root to mark
			all = append(all, part{prefix + partNotchStrip, true, func() []pdfout.Part { return []pdfout.Part{notchStrip(f, st, prefix, suffix)} }})
		}
	}
	return append(all, part{partStoryPole, false, func() []pdfout.Part { return []pdfout.Part{storyPole(s, st)} }})
}

// UnknownPart is a --part that this stairway does not have.
type UnknownPart struct {
	Name  string
	Known []string
}

func (e UnknownPart) Error() string {
	return fmt.Sprintf("this job has no part %q; it has %s", e.Name, strings.Join(e.Known, ", "))
}

// choose picks the parts asked for; when none is named, all but those that
// stand in for another. flight-2/
// before a name is one flight's; with one flight it may be left out or written.
func choose(s *layout.Stairway, st measure.Style, names []string) ([]pdfout.Part, error) {
	all := catalogue(s, st)
	var known []string
	for _, p := range all {
		known = append(known, p.name)
	}
	var chosen []pdfout.Part
	for _, p := range all {
		if len(names) == 0 && !p.asked || slices.ContainsFunc(names, func(n string) bool { return matches(p.name, n) }) {
			chosen = append(chosen, p.sheet()...)
		}
	}
	for _, n := range names {
		if !slices.ContainsFunc(known, func(k string) bool { return matches(k, n) }) {
			return nil, UnknownPart{n, known}
		}
	}
	return chosen, nil
}

// matches tells whether a part is the one asked for: by its whole name, or by
// the name without its flight.
func matches(have, want string) bool {
	if have == want {
		return true
	}
	if _, bare, ok := strings.Cut(have, "/"); ok {
		return bare == want
	}
	flight, bare, ok := strings.Cut(want, "/")
	return ok && flight == "flight-1" && bare == have
}

func stringers(f *layout.Flight, st measure.Style, prefix, suffix string) []pdfout.Part {
	var out []pdfout.Part
	for i := range f.Stringers {
		g := &f.Stringers[i]
		title := "Stringer" + suffix
		if len(f.Stringers) > 1 {
			title = fmt.Sprintf("Stringer %d%s (%s)", i+1, suffix, g.Where(f.Spec.Stringer.Count))
		}
		out = append(out, pdfout.Part{
			Name: prefix + g.Name, Title: title,
			Drawing: views.Template(g, st),
			Station: "the foot end of the blank",
			Lay:     "lay STOCK EDGE on the crowned top edge of the blank, stations on the tape",
			Stock:   geom.Line(geom.Pt(0, 0), geom.Pt(g.LeastBlank, 0)),
		})
	}
	return out
}

func notchStrip(f *layout.Flight, st measure.Style, prefix, suffix string) pdfout.Part {
	g := &f.Stringers[0]
	d := views.NotchStrip(g, st)
	b := d.Bounds()
	return pdfout.Part{
		Name: prefix + partNotchStrip, Title: "Notch strip" + suffix,
		Drawing: d,
		Station: "the tip",
		Lay:     fmt.Sprintf("lay STOCK EDGE on the edge of the blank, the tip on each of the %d taped marks; prick the root, strike from it to the next mark", len(g.Tips)),
		Stock:   geom.Line(geom.Pt(b.Min.X, 0), geom.Pt(b.Max.X, 0)),
	}
}

func pitchBoard(f *layout.Flight, st measure.Style, prefix, suffix string) pdfout.Part {
	return pdfout.Part{
		Name: prefix + partPitchBoard, Title: "Pitch board" + suffix,
		Drawing: views.PitchBoard(f, st),
		Station: "the lower tip",
		Lay:     "glue to thin plywood; saw the two legs, leave a strip beyond the long side; screw a straight fence on that strip, its edge on the line",
	}
}

func storyPole(s *layout.Stairway, st measure.Style) pdfout.Part {
	d := views.StoryPole(s, st)
	b := d.Bounds()
	foot := "its foot at 0, on the lower finished floor"
	if b.Min.X < 0 {
		foot = "its foot at " + st.InchesMM(b.Min.X) + ", on the floor as it is today; 0 is the floor to come"
	}
	return pdfout.Part{
		Name: partStoryPole, Title: "Story pole",
		Drawing: d,
		Station: "the lower finished floor",
		Lay:     "lay STOCK EDGE on the edge of a straight pole, " + foot,
		Stock:   geom.Line(geom.Pt(b.Min.X, 0), geom.Pt(b.Max.X, 0)),
	}
}
