package spec

import (
	"math"
	"strings"
	"testing"

	"stepoff/spec/measure"
)

func sheetNamed(t *testing.T, name string) PaperSize {
	t.Helper()
	p, err := ParsePaperSize(name, measure.Undeclared)
	if err != nil || p.Name != name {
		t.Fatalf("%s: %v, %v", name, p, err)
	}
	return p
}

// ISO 216: A0 is a square metre, its sides as 1 to the root of 2, and each size
// is half of the one before, rounded down to the millimetre.
func TestISOSizesAreHalvesOfASquareMetre(t *testing.T) {
	width, height := int64(math.Round(1000*math.Pow(2, -0.25))), int64(math.Round(1000*math.Pow(2, 0.25)))
	for _, name := range []string{"a0", "a1", "a2", "a3", "a4"} {
		p := sheetNamed(t, name)
		if p.Width != measure.Length(width)*measure.Millimetre || p.Height != measure.Length(height)*measure.Millimetre || p.Roll {
			t.Errorf("%s is %v x %v mm, want %d x %d", name, p.Width.MM(), p.Height.MM(), width, height)
		}
		width, height = height/2, width
	}
}

// ANSI/ASME Y14.1: A (letter) is 8 1/2 x 11, and each size is the one before
// twice over; the architects' series likewise from 9 x 12.
func TestAmericanSizesDouble(t *testing.T) {
	for first, series := range map[[2]measure.Length][]string{
		{17 * measure.Inch / 2, 11 * measure.Inch}: {"letter", "tabloid", "ansi-c", "ansi-d", "ansi-e"},
		{9 * measure.Inch, 12 * measure.Inch}:      {"arch-a", "arch-b", "arch-c", "arch-d", "arch-e"},
	} {
		width, height := first[0], first[1]
		for _, name := range series {
			if p := sheetNamed(t, name); p.Width != width || p.Height != height {
				t.Errorf("%s is %v x %v in, want %v x %v", name, p.Width.In(), p.Height.In(), width.In(), height.In())
			}
			width, height = height, 2*width
		}
	}
	if p := sheetNamed(t, "legal"); p.Width != 17*measure.Inch/2 || p.Height != 14*measure.Inch {
		t.Errorf("legal is %v x %v in", p.Width.In(), p.Height.In())
	}
}

func TestPaperByItsMeasurements(t *testing.T) {
	const mm, in = measure.Millimetre, measure.Inch
	for _, c := range []struct {
		text  string
		units measure.Units
		want  PaperSize
	}{
		{"Letter", measure.Imperial, sheetNamed(t, "letter")},
		{" A4 ", measure.Metric, sheetNamed(t, "a4")},
		{`12" x 18"`, measure.Undeclared, PaperSize{Name: `12" x 18"`, Width: 12 * in, Height: 18 * in}},
		{`18"x12"`, measure.Undeclared, PaperSize{Name: `18"x12"`, Width: 12 * in, Height: 18 * in}}, // turned upright
		{`12×18`, measure.Imperial, PaperSize{Name: `12×18`, Width: 12 * in, Height: 18 * in}},
		{`300 x 450`, measure.Metric, PaperSize{Name: `300 x 450`, Width: 300 * mm, Height: 450 * mm}},
		{`roll 36"`, measure.Metric, PaperSize{Name: `roll 36"`, Width: 36 * in, Roll: true}},
		{`roll 305mm`, measure.Imperial, PaperSize{Name: `roll 305mm`, Width: 305 * mm, Roll: true}},
		{"roll  24", measure.Imperial, PaperSize{Name: "roll 24", Width: 24 * in, Roll: true}},
	} {
		if got, err := ParsePaperSize(c.text, c.units); err != nil || got != c.want {
			t.Errorf("%q = %+v, %v; want %+v", c.text, got, err, c.want)
		}
	}
}

func TestWhatIsNoPaper(t *testing.T) {
	for text, says := range map[string]string{
		"":              "letter, legal",
		"lettre":        "did you mean letter?",
		"a5":            "no paper size",
		"roll":          "a roll by its width",
		"roll wide":     "cannot read",
		"roll 36":       "no unit",
		`2" x 18"`:      "paper is between 3\" and 200\"",
		`12" x 201"`:    "paper is between 3\" and 200\"",
		`roll 0"`:       "paper is between",
		`roll -36"`:     "paper is between",
		`12" x`:         "a length is missing",
		`12" x 18" x 1`: "cannot read",
	} {
		if got, err := ParsePaperSize(text, measure.Undeclared); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%q = %+v, %v; want %s", text, got, err, says)
		}
	}
}
