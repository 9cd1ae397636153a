package packet

import (
	"fmt"
	"slices"
	"strings"

	"stepoff/layout"
	"stepoff/layout/geom"
	"stepoff/spec/measure"
)

// template is one full-size drawing and what it serves: flights whose outlines
// are the same to the nanometre are cut from one.
type template struct {
	f      *layout.Flight // the first it serves
	g      *layout.Group  // of that flight
	serves []served
}

// served is a flight cut from a template, and which of its stringers are.
type served struct {
	number int // of the flight, from the bottom up
	f      *layout.Flight
	g      *layout.Group
}

// templates gathers the flights' outlines that are alike.
func templates(flights []*layout.Flight, alike func(a, b *layout.Group) bool, groups func(*layout.Flight) int) []template {
	var all []template
	for n, f := range flights {
		for i := range groups(f) {
			own := served{n + 1, f, &f.Stringers[i]}
			at := slices.IndexFunc(all, func(t template) bool { return alike(t.g, own.g) })
			if at < 0 {
				all = append(all, template{f: f, g: own.g})
				at = len(all) - 1
			}
			all[at].serves = append(all[at].serves, own)
		}
	}
	return all
}

// everyOutline and oneOutline say how many of a flight's outlines templates are
// wanted of: all of them, or one that stands for all where only the steps count.
func everyOutline(f *layout.Flight) int { return len(f.Stringers) }

func oneOutline(f *layout.Flight) int { return min(1, len(f.Stringers)) }

// sameOutline tells whether two stringers are cut alike: every corner, every cut
// and every place where the blade stops is the same to the nanometre.
func sameOutline(a, b *layout.Group) bool {
	if !samePoints(a.Outline, b.Outline) || !samePoints(a.Tips, b.Tips) || len(a.Cuts) != len(b.Cuts) ||
		!same(a.Width, b.Width) || !same(a.Thickness, b.Thickness) {
		return false
	}
	for i, c := range a.Cuts {
		d := b.Cuts[i]
		if c.Kind != d.Kind || c.Step != d.Step || c.Stops != d.Stops || !samePoints([]geom.Point{c.From, c.To, c.Stop}, []geom.Point{d.From, d.To, d.Stop}) {
			return false
		}
	}
	return true
}

// sameSteps tells whether two stringers' steps are alike, whatever their number,
// foot and head: one pitch board serves both, and one notch strip.
func sameSteps(a, b *layout.Group) bool {
	return same(a.Rise, b.Rise) && same(a.Run, b.Run) && same(a.Saw.StopShort, b.Saw.StopShort)
}

func same(a, b float64) bool { return measure.SnapMM(a) == measure.SnapMM(b) }

func samePoints(a, b []geom.Point) bool {
	return slices.EqualFunc(a, b, func(p, q geom.Point) bool { return same(p.X, q.X) && same(p.Y, q.Y) })
}

// names are what a template goes by: the part's name for each flight it serves.
func (t template) names(part string, flights int) (names []string) {
	for _, s := range t.serves {
		name := part
		if flights > 1 {
			name = s.f.Name + "/" + part
		}
		if !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	return names
}

// suffix tells the flights in a title: ", flights 1 and 2". With one flight in
// all there is nothing to tell.
func (t template) suffix(flights int) string {
	if flights < 2 {
		return ""
	}
	return ", " + t.flights()
}

// flights tells the flights a template serves: flights 1, 2 and 4.
func (t template) flights() string {
	var numbers []int
	for _, s := range t.serves {
		numbers = append(numbers, s.number)
	}
	return flightNumbers(numbers)
}

func flightNumbers(numbers []int) string {
	numbers = slices.Compact(slices.Sorted(slices.Values(numbers)))
	words := make([]string, len(numbers))
	for i, n := range numbers {
		words[i] = fmt.Sprint(n)
	}
	last := len(words) - 1
	if last == 0 {
		return "flight " + words[0]
	}
	return "flights " + strings.Join(words[:last], ", ") + " and " + words[last]
}

// templateOf is the template a stringer is cut from: its own, or that of a flight
// below that is cut alike.
func templateOf(s *layout.Stairway, g *layout.Group) template {
	all := templates(s.Flights(), sameOutline, everyOutline)
	return all[slices.IndexFunc(all, func(t template) bool {
		return slices.ContainsFunc(t.serves, func(own served) bool { return own.g == g })
	})]
}

// called is what a table calls a flight's stringers: by the flight alone where
// they are all alike.
func called(f *layout.Flight, g *layout.Group, flights int) string {
	switch {
	case flights < 2:
		return g.Name
	case len(f.Stringers) < 2:
		return f.Name
	}
	return f.Name + "/" + g.Name
}
