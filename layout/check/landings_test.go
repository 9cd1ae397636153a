package check_test

import (
	"strings"
	"testing"

	"stepoff/layout/check"
	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

// want is one finding that has to be there: its status, and words of it.
type want struct {
	id     string
	status check.Status
	words  string
}

func hold(t *testing.T, what string, findings []check.Finding, wants ...want) {
	t.Helper()
	for _, w := range wants {
		found := false
		for _, f := range by(findings, w.id) {
			found = found || f.Status == w.status && strings.Contains(f.Text, w.words)
		}
		if !found {
			t.Errorf("%s: no %s of %s with %q among %+v", what, w.status, w.id, w.words, by(findings, w.id))
		}
	}
}

// lists are stairways from one job's floor to floor.
func turned(t *testing.T, code, stairway string, edits map[string]string) []check.Finding {
	t.Helper()
	all := map[string]string{"width": `36"`, "stairway": stairway}
	for k, v := range edits {
		all[k] = v
	}
	return checked(t, code, all)
}

// Every flight and landing is judged by its name.
func TestFindingsNameFlightAndLanding(t *testing.T) {
	f := turned(t, "irc-2021", `[{flight: {risers: 7, run: 10"}}, {landing: {turn: left, length: 40", width: 36", joists: 2x10}}, {flight: {risers: 7, run: 9 15/16"}}]`, nil)
	hold(t, "L", f,
		want{"landing-size", check.Pass, `landing-1 is 40" long`},
		want{"landing-size", check.Pass, `landing-1 is 36" wide`},
		want{"flight-rise", check.Pass, `flight-1: the flight rises 52 1/2"`},
		want{"run-min", check.Fail, "flight-2: unit run 9 15/16\""},
		want{"run-variation", check.Pass, `the unit runs differ: 10" of flight-1, 9 15/16" of flight-2, by 1/16"`},
		want{"head-bearing", check.Warn, `flight-1: 1" of the head plumb cut bears`})
}

// A landing shorter than the code's fails, by how much it is short. Quarter
// turns are never shorter than their flights: this one goes straight on.
func TestShortLanding(t *testing.T) {
	f := turned(t, "irc-2021", `[{flight: {risers: 7, run: 10"}}, {landing: {turn: none, length: 35"}}, {flight: {risers: 7, run: 10"}}]`, nil)
	hold(t, "short", f, want{"landing-size", check.Fail, `landing-1 is 35" long`})
}

// A total rise of more than a flight's most is right where a landing parts it.
// Source: IRC R311.7.3, 151 in between floors or landings.
func TestFlightRiseIsOfEachFlight(t *testing.T) {
	tall := map[string]string{"levels": `{total_rise: 168"}`}
	one := checked(t, "irc-2021", map[string]string{"levels": `{total_rise: 168"}`, "stairway": `[{flight: {risers: 24, run: 10"}}]`})
	hold(t, "one flight", one, want{"flight-rise", check.Fail, "a landing in between"})
	two := turned(t, "irc-2021", `[{flight: {risers: 12, run: 10"}}, {landing: {turn: none}}, {flight: {risers: 12, run: 10"}}]`, tall)
	hold(t, "two", two, want{"flight-rise", check.Pass, "flight-1"}, want{"flight-rise", check.Pass, "flight-2"})
}

// Risers in line: a landing straight through does not part them, one that turns
// does. Source: UK Approved Document K, 1.17: more than 36 in consecutive flights.
func TestRisersInLine(t *testing.T) {
	tall := map[string]string{"levels": `{total_rise: 252"}`}
	flights := func(turn string) string {
		f := `{flight: {risers: 18, run: 10"}}`
		return "[" + f + ", {landing: {turn: none}}, " + f + ", {landing: {turn: " + turn + "}}, {flight: {risers: 4, run: 10\"}}]"
	}
	hold(t, "straight on", turned(t, "uk-adk", flights("none"), tall), want{"risers-in-line", check.Fail, "flight-3: 40 risers"})
	f := turned(t, "uk-adk", flights("left"), tall)
	hold(t, "turned", f, want{"risers-in-line", check.Pass, "flight-1: 36 risers"}, want{"risers-in-line", check.Pass, "flight-3: 4 risers"})
}

// A landing built 1/2 in low over eight risers is within 3/8 from riser to riser
// and is told; one built 3 in low is not, and is to be raised.
func TestBuiltLanding(t *testing.T) {
	built := func(level string) string {
		return `[{flight: {risers: 7, run: 10"}}, {landing: {turn: left, built_level: ` + level + `}}, {flight: {risers: 7, run: 10"}}]`
	}
	hold(t, "half an inch low", turned(t, "irc-2021", built(`52"`), nil), want{"riser-variation", check.Pass, `raise landing-1 by 1/2", to 52 1/2"`})
	hold(t, "three inches low", turned(t, "irc-2021", built(`49 1/2"`), nil),
		want{"riser-variation", check.Fail, `raise landing-1 by 3", to 52 1/2"`},
		want{"riser-max", check.Fail, "flight-2"})
}

// A stair that turns four times to the left passes over its own start: caught
// where the headroom is short, told where it is enough.
func TestPassingOverItsOwnStart(t *testing.T) {
	round := func(risers string) string {
		f, l := `{flight: {risers: `+risers+`, run: 10"}}`, `, {landing: {turn: left, joists: 2x8}}, `
		return "[" + f + l + f + l + f + l + f + l + f + "]"
	}
	low := turned(t, "irc-2021", round("3"), nil)
	hold(t, "low", low, want{"headroom", check.Fail, "flight-5 passes over flight-1"})
	high := turned(t, "irc-2021", round("5"), map[string]string{"levels": `{total_rise: 187 1/2"}`})
	hold(t, "high", high, want{"headroom", check.Pass, "flight-5 passes over flight-1"})
}

// A stair that cuts through itself is told under any code.
func TestCuttingThroughItself(t *testing.T) {
	code, _ := rules.Lookup(rules.None)
	facts := check.Facts{Together: &check.Together{Passings: []check.Passing{{Upper: "flight-5", Lower: "flight-1", Headroom: -25.4}}}}
	hold(t, "through", check.Judge(facts, code), want{"headroom", check.Warn, `flight-5 and flight-1 cut through each other, by 1"`})
}

// The floor that a stair takes is held against the room stated, and the upper
// floor that has to be open is told for every member.
func TestRoomAndOpenFloor(t *testing.T) {
	const l = `[{flight: {risers: 4, run: 10"}}, {landing: {turn: left}}, {flight: {risers: 10, run: 10"}}]`
	// First nosing 1 3/4 before the first riser, three runs, 36 of landing: 67 3/4.
	code, _ := rules.Lookup("irc-2021")
	text := job(map[string]string{"width": `36"`, "stairway": l, "levels": `{total_rise: 105", floor_depth: 11"}`}) + "room: {along: 67 3/4\", across: 100\"}\n"
	s := compute(t, text)
	f := check.Stairway(s, code, measure.Style{Units: s.Job.Units})
	hold(t, "room", f,
		want{"available-run", check.Pass, `along the first flight the stairway takes 67 3/4"`},
		want{"available-run", check.Warn, `across it the stairway takes 127 3/4", and there are 100"`},
		want{"opening", check.Info, `needs the upper floor open over the upper`})
}
