package choose_test

import (
	"fmt"
	"math"
	"os"
	"slices"
	"strings"
	"testing"

	"go.yaml.in/yaml/v4"
	"pgregory.net/rapid"

	"stepoff/layout"
	"stepoff/layout/check"
	"stepoff/layout/choose"
	"stepoff/spec"
	"stepoff/spec/lumber"
	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

// code returns a built-in code, or the one the published window needs.
func code(t testing.TB, name string) *rules.Code {
	t.Helper()
	if name == "two-rises-and-a-run" {
		c, err := rules.Read("window.yaml", []byte("base: none\nunits: metric\nlimits: {two-rise-plus-run-min: 550, two-rise-plus-run-max: 700}\n"))
		if err != nil {
			t.Fatal(err)
		}
		return c
	}
	c, ok := rules.Lookup(name)
	if !ok {
		t.Fatalf("no code %s", name)
	}
	return c
}

func length(t testing.TB, text string) measure.Length {
	t.Helper()
	l, err := measure.Parse(text, measure.Imperial)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// request is a rise under a code, cut from 2x12.
func request(t testing.TB, rise, codeName string) choose.Request {
	stock, _ := lumber.Lookup("2x12")
	return choose.Request{Rise: length(t, rise), Stock: stock, Code: code(t, codeName)}
}

// Counts found in published sources are among the choices; each row names its
// source.
func TestPublished(t *testing.T) {
	text, err := os.ReadFile("../../testdata/published/figure.yaml")
	if err != nil {
		t.Fatal(err)
	}
	var rows []struct {
		ID, Tag, Source, Rise, Run, Code string
		FloorDepth                       string `yaml:"floor_depth"`
		Front                            string
		Counts                           []struct {
			Risers, Treads int
			UnitRise       string `yaml:"unit_rise"`
			Within         string
			TotalRun       string `yaml:"total_run"`
			Meets          *bool
			Opening        string
			OpeningWithin  string `yaml:"opening_within"`
		}
	}
	if err := yaml.Unmarshal(text, &rows); err != nil {
		t.Fatal(err)
	}
	for _, row := range rows {
		t.Run(row.ID, func(t *testing.T) {
			if row.Source == "" || row.Tag == "" || len(row.Counts) == 0 {
				t.Fatal("a row needs a source, a tag and counts")
			}
			q := request(t, row.Rise, row.Code)
			if row.Run != "" {
				run := length(t, row.Run)
				q.Run = &run
			}
			if row.FloorDepth != "" {
				depth := length(t, row.FloorDepth)
				q.FloorDepth, q.Front = &depth, length(t, row.Front)
			}
			choices := choose.Choices(q)
			for _, want := range row.Counts {
				i := slices.IndexFunc(choices, func(c choose.Choice) bool { return c.Risers == want.Risers })
				if i < 0 {
					t.Errorf("%d risers are not among the choices", want.Risers)
					continue
				}
				c := choices[i]
				if math.Abs(c.UnitRise-length(t, want.UnitRise).MM()) > length(t, want.Within).MM() {
					t.Errorf("%d risers: unit rise %.4f in, want %s", c.Risers, c.UnitRise/25.4, want.UnitRise)
				}
				if want.Treads != 0 && c.Treads != want.Treads {
					t.Errorf("%d risers: %d treads, want %d", c.Risers, c.Treads, want.Treads)
				}
				if want.TotalRun != "" && math.Abs(c.TotalRun-length(t, want.TotalRun).MM()) > 1e-6 {
					t.Errorf("%d risers: total run %.4f in, want %s", c.Risers, c.TotalRun/25.4, want.TotalRun)
				}
				if want.Opening != "" && (c.Opening == nil || math.Abs(*c.Opening-length(t, want.Opening).MM()) > length(t, want.OpeningWithin).MM()) {
					t.Errorf("%d risers: opening %v mm, want %s", c.Risers, c.Opening, want.Opening)
				}
				if want.Meets != nil && c.Meets() != *want.Meets {
					t.Errorf("%d risers, run %g mm: meets %v, want %v", c.Risers, c.Run.MM(), c.Meets(), *want.Meets)
				}
			}
		})
	}
}

// The list runs from just outside the code's limits to just outside, best
// first: property of any rise under any code.
func TestListProperties(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		q := request(t, "1'", rapid.SampledFrom(rules.Names()).Draw(rt, "code"))
		q.Rise = measure.Length(rapid.Int64Range(500e6, 5000e6).Draw(rt, "rise, nm"))
		choices := choose.Choices(q)
		if len(choices) == 0 {
			rt.Fatal("no choice at all")
		}
		most, limited := q.Code.Limit(rules.RiserMax)
		tooHigh, met := 0, true
		for _, c := range choices {
			if !c.Meets() {
				met = false
			} else if !met {
				rt.Fatalf("%d risers meet the code and stand below a choice that does not", c.Risers)
			}
			if limited && q.Rise > most.Length*measure.Length(c.Risers) {
				tooHigh++
				if c.Meets() {
					rt.Fatalf("%d risers of %g mm meet %s, whose most is %s", c.Risers, c.UnitRise, q.Code.Name, most.Text)
				}
			}
			if c.Meets() && len(c.Allowed) > 0 {
				rt.Fatalf("%d risers meet the code, yet other codes are named", c.Risers)
			}
			for _, name := range c.Allowed {
				if name == q.Code.Name {
					rt.Fatalf("the code itself is named as allowing what it forbids")
				}
			}
		}
		if tooHigh > 1 {
			rt.Fatalf("%d counts are too high; one is enough to show where the limit lies", tooHigh)
		}
	})
}

// 7 3/4 by 10 is the most the IRC allows and above 2R+T = 25; by 11 it leaves a
// 2x12 a throat of 4.915 in, under DCA 6's 5.
func TestAtTheLimit(t *testing.T) {
	q := request(t, `108 1/2"`, "irc-2021")
	run := length(t, `10"`)
	q.Run = &run
	c := ofCount(t, q, 14)
	if !c.Meets() || !has(c.Findings, "comfort-two-rise-plus-run", check.Warn, `25 1/2"`) {
		t.Errorf("7 3/4 by 10 under irc-2021: meets %v, findings %v", c.Meets(), texts(c.Findings))
	}
	q = request(t, `31"`, "dca-6")
	run = length(t, `11"`)
	q.Run = &run
	c = ofCount(t, q, 4)
	if c.Meets() || !has(c.Findings, "stringer-throat", check.Fail, "4.915") {
		t.Errorf("7 3/4 by 11 under dca-6: meets %v, findings %v", c.Meets(), texts(c.Findings))
	}
}

// Canada: 38 x 235 boards at 180 by 280 keep 83.6 mm, less than the 90 asked.
func TestCanadianThroat(t *testing.T) {
	q := request(t, "2700mm", "nbc-2020")
	q.Stock = lumber.Size{Thickness: 38 * measure.Millimetre, Width: 235 * measure.Millimetre}
	q.Style.Units = measure.Metric
	run := 280 * measure.Millimetre
	q.Run = &run
	c := ofCount(t, q, 15)
	if math.Abs(c.Throat-83.6) > 0.05 || !has(c.Findings, "stringer-throat", check.Fail, "90 mm") {
		t.Errorf("throat %.2f, findings %v", c.Throat, texts(c.Findings))
	}
}

// A failing choice names the codes that would allow it: a rise of 8 1/4 is over
// the IRC's 7 3/4 and within the private stairs of Approved Document K (220 mm).
func TestAllowedElsewhere(t *testing.T) {
	c := ofCount(t, request(t, `107 1/4"`, "irc-2021"), 13)
	if c.Meets() || !slices.Contains(c.Allowed, "uk-adk") || slices.Contains(c.Allowed, "ibc-2021") {
		t.Errorf("8 1/4 under irc-2021: meets %v, allowed by %v", c.Meets(), c.Allowed)
	}
}

// What fits the room comes before what does not, however well it steps.
func TestAvailableRun(t *testing.T) {
	q := request(t, `105"`, "irc-2021")
	room := length(t, `131"`)
	q.Available = &room
	best := choose.Choices(q)[0]
	if !best.Fits || best.Risers != 14 || best.Run > length(t, `10 1/16"`) {
		t.Errorf("best in 131 in: %d risers, run %g in, fits %v", best.Risers, best.Run.In(), best.Fits)
	}
}

const openJob = `
units: imperial
code: %s
levels: {total_rise: %s}
width: 36"
%s
tread: {nosing: 1", boards: 2x12}
riser: {thickness: 3/4"}
stringer: {stock: 2x12}
`

// A job that leaves risers and run open gets them: under a code the best, under
// none the count nearest to 7 1/2 in; the run of its tread boards either way.
// What it states is kept.
func TestFill(t *testing.T) {
	for _, c := range []struct {
		code, rise, stairway string
		risers               int
		run                  string
		risersChosen         bool
	}{
		{"irc-2021", `107"`, "", 15, `10 1/4"`, true},
		{"none", `107"`, "", 14, `10 1/4"`, true}, // 107 / 7 1/2 = 14.27
		{"none", `110"`, "", 15, `10 1/4"`, true}, // 14.67
		{"irc-2021", `107"`, "stairway: [{flight: {risers: 16}}]", 16, `10 1/4"`, false},
		{"irc-2021", `107"`, `stairway: [{flight: {run: 10"}}]`, 14, `10"`, true},
		{"ibc-2021", `107"`, "", 16, `11"`, true}, // its least run
	} {
		job, err := spec.Load("job.yaml", []byte(fmt.Sprintf(openJob, c.code, c.rise, c.stairway)))
		if err != nil {
			t.Fatal(err)
		}
		filled, err := choose.Fill(job, code(t, c.code))
		if err != nil {
			t.Fatal(err)
		}
		f := filled.Stairway[0].Flight
		if *f.Risers != c.risers || *f.Run != length(t, c.run) || f.RisersChosen != c.risersChosen {
			t.Errorf("%s, %s, %q: %d risers (chosen %v), run %g in; want %d, %s", c.code, c.rise, c.stairway, *f.Risers, f.RisersChosen, f.Run.In(), c.risers, c.run)
		}
		if c.stairway == "" && job.Stairway[0].Flight.Risers != nil {
			t.Error("the job itself was changed")
		}
		if _, err := layout.Compute(filled); err != nil {
			t.Errorf("%s: %v", c.code, err)
		}
	}
}

func ofCount(t *testing.T, q choose.Request, risers int) choose.Choice {
	t.Helper()
	choices := choose.Choices(q)
	i := slices.IndexFunc(choices, func(c choose.Choice) bool { return c.Risers == risers })
	if i < 0 {
		t.Fatalf("%d risers are not among the choices", risers)
	}
	return choices[i]
}

func has(findings []check.Finding, id string, status check.Status, words string) bool {
	return slices.ContainsFunc(findings, func(f check.Finding) bool {
		return f.ID == id && f.Status == status && strings.Contains(f.Text, words)
	})
}

func texts(findings []check.Finding) []string {
	var out []string
	for _, f := range findings {
		out = append(out, f.Status.String()+" "+f.ID+": "+f.Text)
	}
	return out
}
