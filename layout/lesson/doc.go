// Package lesson tells the layout as ordered steps with this stair's numbers
// in them: what to do, in the words used at the saw horses.
package lesson

// Cautions stand on every set of sheets and at the end of every check.
var Cautions = []string{
	"Local code and the building official decide. Have structure checked by a licensed professional.",
	"Keep guards on, eyes and ears protected, stock clamped, the blade no deeper than needed.",
	"Cut one stringer, test it in place, then trace the rest from it.",
}
