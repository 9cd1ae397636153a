package measure_test

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"stepoff/spec/measure"
)

const in = measure.Inch

// spellings has one length a row, in every spelling it may have. The lengths
// are worked out by hand: an inch is 25.4 mm exactly (the international inch).
var spellings = []struct {
	length measure.Length
	texts  []string
}{
	{107*in + 3*in/8, []string{
		`8' 11 3/8"`, `8ft 11-3/8in`, `8'-11 3/8"`, `8' - 11 3/8"`, `8'11 3/8"`, `8 ft 11 3/8 in`, `8′ 11⅜″`, `8’ 11 ⅜”`,
		`8' 11 6/16"`, `8' 11.375"`, `107 3/8"`, `107-3/8in`, `107.375in`, `107⅜"`, `107.375000000000in`, ` 107.375 in `,
		"8'\u00a011\u202f3/8\"", `2727.325mm`, `272.7325cm`, `2.727325m`,
	}},
	{2727*measure.Millimetre + 300_000, []string{`2727.3mm`, `2727.3 mm`, `272.73 cm`, `2.7273 m`, `2.72730m`}},
	{8 * measure.Foot, []string{`8'`, `8ft`, `8 ft`, `8′`, `8’`, `96"`, `8' 0"`, `8.0'`, `243.84cm`}},
	{3 * in / 4, []string{`3/4"`, `¾"`, `¾″`, `0.75in`, `0 3/4"`, `0' 3/4"`, `12/16in`, `48/64"`, `19.05mm`}},
	{in / 2, []string{`½"`, `1/2"`, `32/64in`}},
	{in / 4, []string{`¼"`}},
	{in / 8, []string{`⅛"`}},
	{5 * in / 8, []string{`⅝"`}},
	{7 * in / 8, []string{`⅞"`}},
	{7*in + 9*in/16, []string{`7 9/16"`, `7-9/16"`, `7.5625in`}},
	{in / 64, []string{`1/64"`, `0.015625in`, `0.396875mm`}},
	{-3 * in / 8, []string{`-3/8"`, `- 3/8"`, `−⅜″`, `-0.375in`, `-9.525mm`}},
	{-13 * in / 2, []string{`-6 1/2"`, `-0' 6 1/2"`}},
	{0, []string{`0`, `-0`, `0.0`, `0"`, `0'`, `0mm`, `0' 0"`}},
	{measure.Max, []string{`1000m`, `1000000mm`, `1000000.000000mm`}},
}

func TestEverySpellingOfALength(t *testing.T) {
	for _, row := range spellings {
		for _, text := range row.texts {
			for _, units := range []measure.Units{measure.Imperial, measure.Metric, measure.Undeclared} {
				got, err := measure.Parse(text, units)
				if err != nil || got != row.length {
					t.Errorf("Parse(%q, %s) = %d nm, %v; want %d nm", text, units, got, err, row.length)
				}
			}
		}
	}
}

func TestBareNumbersAreInTheDeclaredUnits(t *testing.T) {
	for _, c := range []struct {
		text             string
		imperial, metric measure.Length // metric 0: refused
	}{
		{"105", 105 * in, 105 * measure.Millimetre},
		{"107.375", 107*in + 3*in/8, 107*measure.Millimetre + 375_000},
		{"-2", -2 * in, -2 * measure.Millimetre},
		{"7 1/2", 15 * in / 2, 0},
		{"7½", 15 * in / 2, 0},
		{"3/4", 3 * in / 4, 0},
	} {
		if got, err := measure.Parse(c.text, measure.Imperial); err != nil || got != c.imperial {
			t.Errorf("%q imperial = %d, %v; want %d", c.text, got, err, c.imperial)
		}
		if got, err := measure.Parse(c.text, measure.Metric); (err != nil) != (c.metric == 0) || got != c.metric {
			t.Errorf("%q metric = %d, %v; want %d", c.text, got, err, c.metric)
		}
		if got, err := measure.Parse(c.text, measure.Undeclared); err == nil || !strings.Contains(err.Error(), "no unit") {
			t.Errorf("%q with no units declared = %d, %v; want an error that says so", c.text, got, err)
		}
	}
}

// Halfway between two nanometres goes up; below, down.
func TestDecimalsFinerThanANanometreAreRounded(t *testing.T) {
	for text, want := range map[string]measure.Length{
		"0.0000004mm":            0,
		"0.0000005mm":            1,
		"-0.0000005mm":           -1,
		"1.99999999999999mm":     2 * measure.Millimetre,
		"0.33333333333333333in":  8_466_667, // 25 400 000 / 3
		"0.666666666666666667in": 16_933_333,
	} {
		if got, err := measure.Parse(text, measure.Undeclared); err != nil || got != want {
			t.Errorf("%q = %d nm, %v; want %d nm", text, got, err, want)
		}
	}
}

func TestWhatIsNoLengthIsRefusedWithARightSpelling(t *testing.T) {
	for _, c := range []struct{ text, says string }{
		{``, "missing"}, {`  `, "missing"},
		{`'`, "no number"}, {`"`, "no number"}, {`-`, "no number"}, {`in`, "no number"}, {`' "`, ""},
		{`010`, "begin with 0"}, {`08' 9"`, "begin with 0"}, {`8' 09"`, "begin with 0"}, {`00"`, "begin with 0"},
		{`1_000`, "plain digits"}, {`0x10`, "plain digits"}, {`1e3`, "plain digits"}, {`1.5E2mm`, "plain digits"},
		{`.inf`, "plain digits"}, {`-.Inf`, "plain digits"}, {`NaN`, "plain digits"}, {`.nan`, "plain digits"}, {`inf`, "plain digits"},
		{`2026-03-02`, "date"}, {`12:30`, ""},
		{`10,5`, "point"}, {`1,000"`, "point"},
		{`.5in`, "both sides"}, {`5.in`, "both sides"}, {`5."`, "both sides"},
		{`8' 11''`, "two single marks"}, {`8' 11`, "no mark"}, {`8ft 3/8`, "no mark"},
		{`+3/8"`, "plus sign"}, {`8' -11"`, ""}, {`--8"`, ""},
		{`8 feet`, "units are"}, {`8 yd`, "units are"}, {`8 inches`, "units are"}, {`eight`, "units are"}, {`5 µm`, ""}, {`5 IN`, "units are"},
		{`7 1/2mm`, "of an inch"}, {`1/2 m`, "of an inch"},
		{`1½6"`, ""}, {`½½"`, ""}, {`7 1/2 1/2"`, ""}, {`1/2/4"`, ""}, {`1/0"`, ""}, {`0/4"`, ""},
		{"\x1b[31m", "units are"}, {"8\"\n9\"", ""},
		{strings.Repeat("1", 61), "too long"},
	} {
		got, err := measure.Parse(c.text, measure.Imperial)
		if err == nil {
			t.Errorf("%q = %d nm; want an error", c.text, got)
			continue
		}
		said := err.Error()
		if !strings.Contains(said, c.says) || !strings.Contains(said, measure.Spellings) {
			t.Errorf("%q says %q; want %q and the right spellings", c.text, said, c.says)
		}
		if strings.ContainsAny(said, "\x1b\n") || len(said) > 200 {
			t.Errorf("%q says something unfit for a terminal: %q", c.text, said)
		}
	}
}

func TestWhatWasMeantIsShown(t *testing.T) {
	for text, want := range map[string]string{
		`8' 14"`:       `write 9' 2"`,
		`8' 12"`:       `write 9' 0"`,
		`12' 12 1/64"`: `write 13' 0 1/64"`,
		`8.5' 3"`:      `write 8' 9"`,
		`7 3/2"`:       `write 8 1/2"`,
		`3/2"`:         `write 1 1/2"`,
		`4/4"`:         `write 1"`,
		`1/3"`:         `like 0.333in`,
		`7 5/10"`:      `like 0.333in`,
		`1/128"`:       `like 0.333in`,
		`105`:          `write 105" or 105mm`,
		`7 1/2`:        `write 7 1/2", or`,
		`1000.001m`:    `1000 m`,
		`39371"`:       `1000 m`,
		`-1001m`:       `1000 m`,
		`99999999999999999999999999999999999999999999"`: `1000 m`,
	} {
		if _, err := measure.Parse(text, measure.Undeclared); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v; want %s", text, err, want)
		}
	}
}

func TestUnitsOfIsTheSystemWritten(t *testing.T) {
	for text, want := range map[string]measure.Units{
		`8' 9"`: measure.Imperial, `105in`: measure.Imperial, `0"`: measure.Imperial,
		`2667mm`: measure.Metric, `2.667 m`: measure.Metric,
		`0`: measure.Undeclared, `105`: measure.Undeclared, `x`: measure.Undeclared,
	} {
		if got := measure.UnitsOf(text); got != want {
			t.Errorf("UnitsOf(%q) = %s, want %s", text, got, want)
		}
	}
}

// tapeLengths are lengths a tape shows: whole 64ths, of either sign.
var tapeLengths = rapid.Custom(func(t *rapid.T) measure.Length {
	return measure.Length(rapid.Int64Range(-64*39370, 64*39370).Draw(t, "64ths")) * (in / 64)
})

// Anything printed without a mark is the whole truth, so it reads back as the
// same length.
func TestExactLengthsReadBackAsTheyWerePrinted(t *testing.T) {
	style := measure.Style{Denominator: 64}
	metric := measure.Style{Units: measure.Metric}
	rapid.Check(t, func(t *rapid.T) {
		l := tapeLengths.Draw(t, "length")
		same(t, style.Format(l), measure.Undeclared, l)
		same(t, style.Inches(l), measure.Undeclared, l)
		same(t, style.Bare(l), measure.Imperial, l)
		mm := measure.Length(rapid.Int64Range(-1_000_000, 1_000_000).Draw(t, "mm")) * measure.Millimetre
		same(t, metric.Format(mm), measure.Undeclared, mm)
		same(t, metric.Inches(mm), measure.Undeclared, mm)
		same(t, metric.Bare(mm), measure.Metric, mm)
	})
}

func same(t *rapid.T, text string, units measure.Units, want measure.Length) {
	if got, err := measure.Parse(text, units); err != nil || got != want {
		t.Fatalf("%d nm printed as %q reads back as %d nm, %v", want, text, got, err)
	}
}

func FuzzParse(f *testing.F) {
	for _, row := range spellings {
		for _, text := range row.texts {
			f.Add(text)
		}
	}
	f.Add(`8' 14"`)
	f.Add("1/3\"")
	f.Fuzz(func(t *testing.T, text string) {
		for _, units := range []measure.Units{measure.Imperial, measure.Metric, measure.Undeclared} {
			l, err := measure.Parse(text, units)
			switch {
			case err != nil && (l != 0 || err.Error() == ""):
				t.Errorf("%q: an error comes with no length and says something: %d, %q", text, l, err)
			case err == nil && l.Abs() > measure.Max:
				t.Errorf("%q is longer than the longest: %d", text, l)
			case err == nil && l < 0 && !strings.ContainsAny(text, "-−"):
				t.Errorf("%q is negative without a minus: %d", text, l)
			}
			if err == nil {
				exact := measure.Style{Denominator: 64}
				if printed := exact.Format(l); !strings.HasSuffix(printed, "+") && !strings.HasSuffix(printed, "-") {
					if again, err := measure.Parse(printed, measure.Undeclared); err != nil || again != l {
						t.Errorf("%q prints as %q, which reads as %d nm (%v), not %d nm", text, printed, again, err, l)
					}
				}
			}
		}
	})
}
