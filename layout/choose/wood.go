package choose

import (
	"slices"

	"stepoff/spec"
	"stepoff/spec/lumber"
)

// betterGrades are the grades of the same species above the one there is, the
// nearest first.
func betterGrades(w spec.Wood, size lumber.Size) (grades []string, species string) {
	row, err := lumber.Published(w.Species, w.Grade, size)
	if err != nil {
		return nil, w.Species
	}
	all := lumber.Grades(row.Species) // best first
	above := all[:max(0, slices.Index(all, row.Grade))]
	slices.Reverse(above)
	return above, row.Species
}

// stiffeners are the strongbacks that may be put on: 2x lumber wider than the
// one there is, no wider than the stringer's own board.
func stiffeners(st *spec.Stringer) []spec.Piece {
	var all []spec.Piece
	for _, name := range [...]string{"2x4", "2x6", "2x8", "2x10", "2x12"} {
		size, _ := lumber.Lookup(name)
		if size.Width <= st.Stock.Width && (st.Strongback == nil || size.Width > st.Strongback.Width) {
			all = append(all, spec.Piece{Name: name, Size: size})
		}
	}
	return all
}
