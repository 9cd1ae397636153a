package check_test

import (
	"strings"
	"testing"

	"stepoff/layout/check"
)

// A stair walked on its treads before the lower floor is laid keeps the code's
// most too: 7 3/4 and 3/8 still to come is 8 1/8, within the IRC's variation and
// over its 7 3/4.
func TestStagesKeepTheMost(t *testing.T) {
	found := by(checked(t, "irc-2021", map[string]string{
		"levels": `{total_rise: 108 1/2", lower_finish: 3/8"}`, "stairway": `[{flight: {risers: 14, run: 10"}}]`,
	}), "first-riser")
	if len(found) != 1 || found[0].Status != check.Warn || !strings.Contains(found[0].Text, `higher than 7 3/4"`) {
		t.Errorf("first riser: %+v", found)
	}
}

// Where the data has no rule for guards or handrails, that is said: silence
// would be taken for permission.
func TestUnknownGuardsAreSaid(t *testing.T) {
	findings := checked(t, "nbc-2020", map[string]string{"sides": "[open, open]"})
	for _, id := range []string{"guard-needed", "handrail-needed"} {
		found := by(findings, id)
		if len(found) != 1 || found[0].Status != check.Info || !strings.Contains(found[0].Text, "not known here") {
			t.Errorf("%s: %+v", id, found)
		}
	}
}
