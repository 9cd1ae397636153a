package report

import (
	"fmt"
	"strings"

	"stepoff/layout"
)

// Risers says how many risers there are and how high, as say prints that; of
// every part, where landings built already part the stairway.
func Risers(s *layout.Stairway, say func(mm float64) string) string {
	var parts []string
	for _, p := range s.Parts {
		parts = append(parts, fmt.Sprintf("%d at %s", p.Risers, say(p.UnitRise())))
	}
	return strings.Join(parts, ", then ")
}
