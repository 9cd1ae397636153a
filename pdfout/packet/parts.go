package packet

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"stepoff/layout"
	"stepoff/layout/geom"
	"stepoff/layout/views"
	"stepoff/pdfout"
	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

// part is something a set can hold: a full-size drawing, or a page that is read.
// With several flights it goes by the name it has for each of those it serves.
type part struct {
	names  []string
	asked  bool // printed only when asked for by name
	sheet  func() pdfout.Part
	turned func(angle float64) pdfout.Part // the same, turned by so many radians, where that may save a sheet
	page   func() pdfout.Flow              // in place of a sheet, where nothing is cut to it
}

// The parts by name, as --part takes them.
const (
	partStringer   = "stringer"
	partNotchStrip = "notch-strip"     // in place of the whole stringer, where that is too much paper
	partRouter     = "router-template" // of housed strings
	partSettings   = "settings"        // a page to set the router by
	partPitchBoard = "pitch-board"
	partLanding    = "landing" // a page to build by: nothing of it is cut to a template
	partWinders    = "winders" // pages to build by
	partCurve      = "curve"   // likewise
	partPlates     = "plates"  // of curves
	partTreads     = "treads"  // of winders and curves: a straight flight's are ripped and crosscut
	partStoryPole  = "story-pole"
	partStrength   = "strength" // a page to judge by
)

// catalogue lists everything this stairway has, in the order it is printed.
func catalogue(s *layout.Stairway, code *rules.Code, st measure.Style) []part {
	var all []part
	flights := s.Flights()
	several := len(flights)
	add := func(name string, t template, p part) {
		p.names = t.names(name, several)
		all = append(all, p)
	}
	for _, t := range templates(flights, sameOutline, everyOutline) {
		add(partStringer, t, part{sheet: func() pdfout.Part { return stringer(t, st, several) }})
	}
	all = append(all, stringParts(s, st)...)
	steps := templates(flights, sameSteps, oneOutline)
	for _, t := range steps {
		add(partPitchBoard, t, part{
			sheet:  func() pdfout.Part { return pitchBoard(t, 0, st, several) },
			turned: func(angle float64) pdfout.Part { return pitchBoard(t, angle, st, several) },
		})
	}
	for _, t := range steps {
		if slices.ContainsFunc(t.serves, func(s served) bool { return s.f.Treads > 1 }) { // else there is no root to mark
			add(partNotchStrip, t, part{asked: true, sheet: func() pdfout.Part { return notchStrip(t, st, several) }})
		}
	}
	for _, l := range s.Landings() {
		name := partLanding
		if len(s.Landings()) > 1 {
			name = l.Name + "/" + name
		}
		all = append(all, part{names: []string{name}, asked: l.Frame == nil, page: func() pdfout.Flow { return landing(s, l, st) }})
	}
	for _, w := range s.Winders() {
		all = append(all, part{names: []string{memberPart(s, w.Name, partWinders)}, page: func() pdfout.Flow { return winders(s, w, st) }})
	}
	for _, c := range s.Curves() {
		all = append(all, part{names: []string{memberPart(s, c.Name, partCurve)}, page: func() pdfout.Flow { return curve(s, c, st) }})
		all = append(all, plateParts(s, c, st)...)
	}
	all = append(all, treadParts(s, st)...)
	if code != nil && judged(s, code) {
		all = append(all, part{names: []string{partStrength}, page: func() pdfout.Flow { return strength(s, code, st) }})
	}
	return append(all, part{names: []string{partStoryPole}, sheet: func() pdfout.Part { return storyPole(s, st) }})
}

// turnSteps is how many turns are tried on a part that does not fit one sheet as
// it stands: one for each degree of a half circle.
const turnSteps = 180

// plan lays the part on sheets; turned, if that brings it onto one.
func (p part) plan(on pdfout.Paper, u measure.Units) (*pdfout.Tiling, error) {
	t, err := pdfout.Plan(p.sheet(), on, u)
	if err != nil || p.turned == nil || len(t.Sheets) == 1 {
		return t, err
	}
	for k := 1; k < turnSteps; k++ {
		if one, err := pdfout.Plan(p.turned(float64(k)*math.Pi/turnSteps), on, u); err == nil && len(one.Sheets) == 1 {
			return one, nil
		}
	}
	return t, nil
}

// UnknownPart is a --part that this stairway does not have.
type UnknownPart struct {
	Name  string
	Known []string
}

func (e UnknownPart) Error() string {
	return fmt.Sprintf("this job has no part %q; it has %s", e.Name, strings.Join(e.Known, ", "))
}

// pick returns the parts asked for; when none is named, all but those that
// stand in for another. flight-2/ before a name is one flight's; with one flight
// it may be left out or written.
func pick(s *layout.Stairway, code *rules.Code, st measure.Style, names []string) ([]part, error) {
	all := catalogue(s, code, st)
	var known []string
	for _, p := range all {
		for _, name := range p.names {
			if !slices.Contains(known, name) {
				known = append(known, name)
			}
		}
	}
	for _, n := range names {
		if !slices.ContainsFunc(known, func(k string) bool { return matches(k, n) }) {
			return nil, UnknownPart{n, known}
		}
	}
	return slices.DeleteFunc(all, func(p part) bool {
		if len(names) == 0 {
			return p.asked
		}
		return !slices.ContainsFunc(names, p.is)
	}), nil
}

// is tells whether a part is the one asked for by a name.
func (p part) is(name string) bool {
	return slices.ContainsFunc(p.names, func(own string) bool { return matches(own, name) })
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

func stringer(t template, st measure.Style, flights int) pdfout.Part {
	g, f := t.g, t.f
	title := "Stringer" + t.suffix(flights)
	if n := slices.Index(pointers(f.Stringers), g); len(f.Stringers) > 1 {
		title = fmt.Sprintf("Stringer %d%s", n+1, t.suffix(flights))
		if len(t.serves) == 1 {
			title += " (" + g.Where(f.Spec.Stringer.Count) + ")"
		}
	}
	return pdfout.Part{
		Name: t.names(g.Name, flights)[0], Title: title,
		Drawing: views.Template(g, st),
		Station: "the foot end of the blank",
		Lay:     "lay STOCK EDGE on the crowned top edge of the blank, stations on the tape",
		Stock:   geom.Line(geom.Pt(0, 0), geom.Pt(g.LeastBlank, 0)),
	}
}

func pointers(groups []layout.Group) []*layout.Group {
	out := make([]*layout.Group, len(groups))
	for i := range groups {
		out[i] = &groups[i]
	}
	return out
}

func notchStrip(t template, st measure.Style, flights int) pdfout.Part {
	d := views.NotchStrip(t.g, st)
	b := d.Bounds()
	marks := fmt.Sprintf("each of the %d taped marks", len(t.g.Tips))
	if len(t.serves) > 1 {
		marks = "each of the taped marks"
	}
	return pdfout.Part{
		Name: t.names(partNotchStrip, flights)[0], Title: "Notch strip" + t.suffix(flights),
		Drawing: d,
		Station: "the tip",
		Lay:     fmt.Sprintf("lay STOCK EDGE on the edge of the blank, the tip on %s; prick the root, strike from it to the next mark", marks),
		Stock:   geom.Line(geom.Pt(b.Min.X, 0), geom.Pt(b.Max.X, 0)),
	}
}

func pitchBoard(t template, turn float64, st measure.Style, flights int) pdfout.Part {
	return pdfout.Part{
		Name: t.names(partPitchBoard, flights)[0], Title: "Pitch board" + t.suffix(flights),
		Drawing: views.PitchBoard(t.f, turn, st),
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
