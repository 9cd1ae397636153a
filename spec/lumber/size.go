// Package lumber holds what softwood boards measure and how long they are
// sold, each figure with its source.
package lumber

import "stepoff/spec/measure"

// Size is a board's dressed cross-section.
type Size struct {
	Thickness, Width measure.Length
}
