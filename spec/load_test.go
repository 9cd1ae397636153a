package spec_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"stepoff/spec"
	"stepoff/spec/lumber"
	"stepoff/spec/measure"
)

const in = measure.Inch

// load reads a job that is right.
func load(t *testing.T, text string) *spec.Job {
	t.Helper()
	job, err := spec.Load("job.yaml", []byte(text))
	if err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	return job
}

func ptr[T any](v T) *T { return &v }

// compare holds a job against another; where it was read from is not part of it.
func compare(t *testing.T, want, got *spec.Job) {
	t.Helper()
	if diff := cmp.Diff(want, got, cmpopts.IgnoreFields(spec.Job{}, "Source"), cmpopts.IgnoreUnexported(spec.Job{})); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

var twoByTwelve = lumber.Size{Thickness: 3 * in / 2, Width: 45 * in / 4}
var twoByFour = lumber.Size{Thickness: 3 * in / 2, Width: 7 * in / 2}

func TestEveryKeyIsLoaded(t *testing.T) {
	text, err := os.ReadFile(filepath.Join("testdata", "jobs", "every-key.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	stringer := spec.Stringer{
		Stock: spec.Stock{Name: "2x12", Size: twoByTwelve}, Wood: spec.Wood{Species: "DF-L", Grade: "No.2", Values: &lumber.Values{Fb: 1200 * measure.PSI, Fv: 180 * measure.PSI, FcPerp: 625 * measure.PSI, E: 1.6e6 * measure.PSI}}, Count: 3,
		Head: spec.Hung, TopRiser: true, TopNosing: ptr(in), BehindHead: 3 * in / 4,
		FootOn: spec.Rough, FootLevels: []measure.Length{3 * in / 8, 0, -3 * in / 8}, Kicker: &spec.Piece{Name: "2x4", Size: twoByFour},
		Ledger:  &spec.Piece{Name: "2x6", Size: lumber.Size{Thickness: 3 * in / 2, Width: 11 * in / 2}},
		Support: []spec.Support{spec.AlongWall, spec.Span, spec.AlongWall}, Build: spec.Sawn,
		Props: []measure.Length{54 * in, 90 * in}, Strongback: &spec.Piece{Name: "2x6", Size: lumber.Size{Thickness: 3 * in / 2, Width: 11 * in / 2}},
		Deflection: 480,
	}
	flight := stringer
	flight.Head, flight.FootOn, flight.Count = spec.Flush, spec.Finished, 2
	flight.Kicker, flight.Ledger = nil, &spec.Piece{Name: "2x4", Size: twoByFour}
	flight.Support, flight.FootLevels = []spec.Support{spec.AlongWall}, []measure.Length{0, in / 4}
	compare(t, &spec.Job{
		Name: "Quarry Lane workshop loft", Number: "QL-14", Date: "2026-03-02", Units: measure.Imperial,
		Code: spec.Code{Name: "irc-2021", Given: true},
		Levels: spec.Levels{
			TotalRise: 105 * in, Measured: spec.Rough, LowerFinish: in / 2, UpperFinish: 3 * in / 4,
			HeaderTop: 3 * in / 2, HeaderDepth: ptr(45 * in / 4), FloorDepth: ptr(47 * in / 4),
		},
		Width: ptr(36 * in), Sides: []spec.Side{spec.Wall, spec.Open}, WallGap: 3 * in / 2,
		AvailableRun: ptr(144 * in), Opening: ptr(128 * in),
		Stairway: []spec.Element{{Flight: &spec.Flight{Risers: ptr(14), Run: ptr(10 * in), Stringer: flight}}},
		Tread: spec.Tread{
			Thickness: 3 * in / 2, Nosing: in, Overhang: in / 2,
			Boards: &spec.Boards{Name: "2 2x6", Count: 2, Size: lumber.Size{Thickness: 3 * in / 2, Width: 11 * in / 2}},
		},
		Riser:    spec.Riser{Thickness: 3 * in / 4, Joint: spec.On},
		Stringer: stringer,
		Housing: spec.Housing{
			Margin: 3 * in / 2, Depth: 3 * in / 8, WedgeTaper: 1. / 20, Round: ptr(in / 4), Cutter: 3 * in / 8, Bush: 7 * in / 16, FootPlumb: 2 * in, HeadLevel: 3 * in,
		},
		Cleats: spec.Cleats{
			Margin: in, Kind: spec.SteelBracket, Height: 2 * in, Thickness: 5 * in / 4, Setback: in / 4, Screws: 4, FootPlumb: 3 * in / 2, HeadLevel: 7 * in / 2,
		},
		Saw:     spec.Saw{Blade: 29 * in / 4, Depth: ptr(13 * in / 8), StopShort: in / 16},
		Loads:   spec.Loads{Live: ptr(40 * measure.PSF), Dead: ptr(500.0)},
		Service: spec.Wet, Incised: true,
		Bought: spec.Bought{Lengths: []measure.Length{144 * in, 168 * in, 192 * in}, Prices: []int64{1300, 1550, 1840}, Kerf: 3 * in / 32, EndTrim: in / 2},
		Paper: spec.Paper{
			Size:   spec.PaperSize{Name: "tabloid", Width: 11 * in, Height: 17 * in},
			Margin: 3 * in / 8, Overlap: in, ScaleX: 0.9962, ScaleY: 1.0011,
		},
	}, load(t, string(text)))
}

// A metric job is as exact as one in inches, and inches may stand in it.
func TestGoodJobsLoad(t *testing.T) {
	names, err := filepath.Glob("testdata/jobs/*.yaml")
	if err != nil || len(names) < 3 {
		t.Fatalf("jobs %v, %v", names, err)
	}
	for _, name := range names {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		sane(t, load(t, string(text)))
	}
	metric, _ := os.ReadFile("testdata/jobs/metric.yaml")
	job := load(t, string(metric))
	const mm = measure.Millimetre
	flight := job.Stairway[0].Flight
	for what, c := range map[string]struct{ got, want measure.Length }{
		"total rise": {job.Levels.TotalRise, 2727*mm + 300_000}, "width": {*job.Width, 900 * mm}, "run": {*flight.Run, 250 * mm},
		"tread": {job.Tread.Thickness, 38 * mm}, "stock": {job.Stringer.Stock.Width, 286 * mm}, "prop": {job.Stringer.Props[0], 54 * in},
		"foot": {job.Stringer.FootLevels[1], -9*mm - 500_000}, "roll": {job.Paper.Size.Width, 914 * mm},
		"shortest board": {job.Bought.Lengths[0], 2400 * mm}, "longest board": {job.Bought.Lengths[12], 6000 * mm},
	} {
		if c.got != c.want {
			t.Errorf("%s is %d nm, want %d", what, c.got, c.want)
		}
	}
}

// What the file leaves out is what the README's table says.
func TestTheLeastJob(t *testing.T) {
	job := load(t, "levels: {total_rise: 8' 9\"}\ntread: {boards: 2x12}\nriser: open\nstringer: {stock: {width: 11 3/16\", thickness: 1 1/2\"}}\n")
	stringer := spec.Stringer{
		Stock: spec.Stock{Size: lumber.Size{Thickness: 3 * in / 2, Width: 179 * in / 16}}, Count: 3,
		FootOn: spec.Rough, Deflection: 360, Support: []spec.Support{spec.Span},
	}
	compare(t, &spec.Job{
		Code:     spec.Code{Name: "irc-2021"},
		Levels:   spec.Levels{TotalRise: 105 * in},
		Stairway: []spec.Element{{Flight: &spec.Flight{Stringer: stringer}}},
		Tread:    spec.Tread{Thickness: 3 * in / 2, Boards: &spec.Boards{Name: "2x12", Count: 1, Size: twoByTwelve}},
		Riser:    spec.Riser{Open: true},
		Stringer: stringer,
		Housing: spec.Housing{
			Margin: 40 * measure.Millimetre, Depth: in / 2, WedgeTaper: 1. / 16, Undercut: 1. / 12, Cutter: in / 2, Bush: 5 * in / 8,
			FootPlumb: 40 * measure.Millimetre, HeadLevel: 100 * measure.Millimetre,
		},
		Cleats: spec.Cleats{
			Margin: 40 * measure.Millimetre, Height: 3 * in / 2, Thickness: 3 * in / 2, Setback: in / 2, Screws: 3,
			FootPlumb: 40 * measure.Millimetre, HeadLevel: 100 * measure.Millimetre,
		},
		Saw:    spec.Saw{Blade: 29 * in / 4, StopShort: in / 8},
		Bought: spec.Bought{Lengths: []measure.Length{96 * in, 120 * in, 144 * in, 168 * in, 192 * in, 216 * in, 240 * in}, Kerf: in / 8, EndTrim: in},
		Paper:  spec.Paper{Size: spec.PaperSize{Name: "letter", Width: 17 * in / 2, Height: 11 * in}, Margin: in / 4, Overlap: in / 2, ScaleX: 1, ScaleY: 1},
	}, job)
}

// least is the least job with other lines put in.
func least(lines ...string) string {
	parts := map[string]string{
		"levels": `{total_rise: 8' 9"}`, "tread": `{thickness: 1 1/2"}`, "riser": `{thickness: 3/4"}`, "stringer": "{stock: 2x12}",
	}
	var out []string
	for _, line := range lines {
		key, _, _ := strings.Cut(line, ":")
		delete(parts, key)
		out = append(out, line)
	}
	for _, key := range []string{"levels", "tread", "riser", "stringer"} {
		if value, left := parts[key]; left {
			out = append(out, key+": "+value)
		}
	}
	return strings.Join(out, "\n") + "\n"
}

func TestFinishedRise(t *testing.T) {
	for levels, want := range map[string]measure.Length{
		`{total_rise: 105", lower_finish: 3/4", upper_finish: 1"}`:                  105 * in,
		`{total_rise: 105", measured: rough, lower_finish: 3/4", upper_finish: 1"}`: 105*in + in/4,
		`{total_rise: 105", measured: rough, lower_finish: 3/4"}`:                   104*in + in/4,
	} {
		if got := load(t, least("levels: "+levels)).Levels.Finished(); got != want {
			t.Errorf("%s: finished rise %s, want %s", levels, measure.Style{}.Inches(got), measure.Style{}.Inches(want))
		}
	}
}

func TestUnitsLeftOutAreThoseOfTheTotalRise(t *testing.T) {
	for levels, want := range map[string]measure.Units{
		"levels: {total_rise: 2667mm}":  measure.Metric,
		"levels: {total_rise: 2.667 m}": measure.Metric,
		"levels: {total_rise: 8' 9\"}":  measure.Imperial,
	} {
		if got := load(t, least(levels)).Units; got != want {
			t.Errorf("%s: %s, want %s", levels, got, want)
		}
	}
	if got := load(t, least("units: imperial", "levels: {total_rise: 2667mm}")).Units; got != measure.Imperial {
		t.Errorf("declared imperial, printed %s", got)
	}
}

// Three up to 36 in, common practice; then not more than 18 in apart, AWC DCA 6.
func TestNumberOfStringers(t *testing.T) {
	for _, c := range []struct {
		width, stringer string
		want            int
		auto            bool
	}{
		{"", "", 3, false},
		{`width: 30"`, "", 3, false},
		{`width: 36"`, "", 3, false},
		{`width: 36 1/64"`, "", 4, false},
		{`width: 54"`, "", 4, false},
		{`width: 55"`, "", 5, false},
		{`width: 914.4mm`, "", 3, false},
		{`width: 54"`, ", count: 2", 2, false},
		{`width: 54"`, ", count: auto", 4, true},
		{`width: 54"`, ", count: auto, foot_levels: [0, 0, 0, 0]", 4, true},
		{`width: 54"`, ", foot_levels: [0, 0]", 2, false},
		{`width: 54"`, ", support: [wall, span]", 2, false},
		{`width: 54"`, ", support: wall", 4, false},
		{`width: 36"`, ", foot_levels: [0, 0, 0, 0], support: [wall, span, span, wall]", 4, false},
		{`width: 54"`, ", support: [wall]", 4, false},
	} {
		job := load(t, least(c.width, "stringer: {stock: 2x12"+c.stringer+"}"))
		for name, s := range map[string]spec.Stringer{"the job's": job.Stringer, "the flight's": job.Stairway[0].Flight.Stringer} {
			if s.Count != c.want || s.CountAuto != c.auto {
				t.Errorf("%s %s: %s count is %d (auto %v); want %d (auto %v)", c.width, c.stringer, name, s.Count, s.CountAuto, c.want, c.auto)
			}
		}
	}
}

func TestAFlightOverridesTheStringer(t *testing.T) {
	job := load(t, least(
		`stringer: {stock: 2x12, count: 3, kicker: 2x4, foot_levels: [0, 1/8", 1/4"], support: [wall, span, wall]}`,
		`stairway: [{flight: {count: 2, foot_levels: [0, 1/4"], support: wall, kicker: none, head: flush, foot: finished}}]`,
	))
	want := job.Stringer
	want.Count, want.FootLevels, want.Support = 2, []measure.Length{0, in / 4}, []spec.Support{spec.AlongWall}
	want.Kicker, want.Head, want.FootOn = nil, spec.Flush, spec.Finished
	if diff := cmp.Diff(want, job.Stairway[0].Flight.Stringer); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
	if job.Stringer.Count != 3 || job.Stringer.Kicker == nil {
		t.Error("the job's own stringer changed with the flight's")
	}
	// A list of another length brings its own number of stringers with it, where none was given.
	job = load(t, least(`stringer: {stock: 2x12, foot_levels: [0, 0, 0]}`, `stairway: [{flight: {foot_levels: [0, 1/4"]}}]`))
	if a, b := job.Stringer.Count, job.Stairway[0].Flight.Stringer.Count; a != 3 || b != 2 {
		t.Errorf("counts %d and %d, want 3 and 2", a, b)
	}
}

func TestWhoCoversTheHeader(t *testing.T) {
	for _, c := range []struct {
		riser, stringer string
		want            bool
	}{
		{`{thickness: 3/4"}`, "", true},
		{"open", "", false},
		{"open", ", top_riser: board", true},
		{`{thickness: 3/4"}`, ", top_riser: none", false},
	} {
		if got := load(t, least("riser: "+c.riser, "stringer: {stock: 2x12"+c.stringer+"}")).Stringer.TopRiser; got != c.want {
			t.Errorf("riser %s%s: covered %v, want %v", c.riser, c.stringer, got, c.want)
		}
	}
}

func TestTreadThicknessIsItsBoardsWhereNotGiven(t *testing.T) {
	for tread, want := range map[string]measure.Length{
		`{thickness: 1"}`:                                     in,
		`{thickness: 1", boards: 2x12}`:                       in,
		`{boards: 2x12}`:                                      3 * in / 2,
		`{boards: 5/4x6}`:                                     in,
		`{boards: 2 2x6}`:                                     3 * in / 2,
		`{boards: {width: 11", thickness: 1 1/16"}}`:          17 * in / 16,
		`{thickness: 1", boards: {width: 11", thickness: 1}}`: in,
	} {
		if got := load(t, least("units: imperial", "tread: "+tread)).Tread.Thickness; got != want {
			t.Errorf("%s: %s, want %s", tread, measure.Style{}.Format(got), measure.Style{}.Format(want))
		}
	}
}

func TestOneLoadMayBeLeftOut(t *testing.T) {
	job := load(t, least("loads: {live: 1.9 kPa}"))
	if job.Loads.Dead != nil || job.Loads.Live == nil || *job.Loads.Live != 1900 {
		t.Errorf("loads %v", job.Loads)
	}
}

// The text is kept as it was read, byte for byte.
func TestTheSourceIsKept(t *testing.T) {
	text := "\ufeff# a comment\r\n" + strings.ReplaceAll(least(), "\n", "\r\n")
	if got := string(load(t, text).Source); got != text {
		t.Errorf("source is %q", got)
	}
}

func TestAMistakeFoundLaterHasItsPlace(t *testing.T) {
	job := load(t, least("stairway:", "  - flight: {risers: 14}", "stringer:", "  stock: 2x12", "  kicker: 2x4", "saw:", "  blade: 7\""))
	for path, want := range map[string]string{
		"stringer.kicker":           "5:11",
		"stringer.ledger":           "3:1", // left out: where it would stand
		"stairway[0].flight.risers": "2:22",
		"stairway[0].flight.run":    "2:13",
		"stairway[0].flight.kicker": "2:13",
		"stairway[4].flight.kicker": "1:1",
		"saw.depth":                 "6:1",
		"paper.size":                "1:1",
		"width":                     "1:1",
		"levels.total_rise":         "8:22",
		"":                          "1:1",
	} {
		m := job.Mistake(path, "the throat is %d", 0)
		if m.At.String() != want || m.Message != "the throat is 0" || !strings.HasPrefix(m.Error(), "job.yaml:"+want+": ") {
			t.Errorf("%s: %s; want it at %s", path, m.Error(), want)
		}
	}
	built := &spec.Job{} // no file
	if got := built.Mistake("saw.depth", "too shallow").Error(); got != "job:1:1: too shallow" {
		t.Errorf("of a job without a file: %s", got)
	}
}
