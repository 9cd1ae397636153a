// Package lesson tells the layout as ordered steps with this stair's numbers
// in them: what to do, in the words used at the saw horses.
package lesson

import "stepoff/layout"

// Cautions are those that belong on a set of sheets of this stairway.
func Cautions(s *layout.Stairway) []string {
	all := []string{
		"Local code and the building official decide. Have structure checked by a licensed professional.",
		"Keep guards on, eyes and ears protected, stock clamped, the blade no deeper than needed.",
	}
	outlines := 0
	for _, f := range s.Flights() {
		outlines += len(f.Stringers)
	}
	for _, f := range s.Flights() {
		if len(f.Strings) > 0 {
			all = append(all, "Left and right strings are mirror images: mark both, face to face, before either is cut.")
			break
		}
	}
	switch {
	case outlines == 1:
		all = append(all, "Cut one stringer, test it in place, then trace the rest from it.")
	case outlines > 1:
		all = append(all, "The stringers are not all alike. Cut one of each outline, test it in its place, and trace only its own from it.")
	}
	if len(s.Winders())+len(s.Curves()) > 0 {
		all = append(all, "Cut one tapered tread, try it in its place, then cut the rest: walls are seldom square, and no wall is quite round.")
	}
	return all
}
