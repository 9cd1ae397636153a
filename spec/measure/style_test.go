package measure_test

import (
	"math"
	"math/big"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"stepoff/spec/measure"
)

func TestPrinting(t *testing.T) {
	const (
		mm = measure.Millimetre
		nm = measure.Nanometre
	)
	var (
		tape   = measure.Style{}
		fine   = measure.Style{Denominator: 64}
		metric = measure.Style{Units: measure.Metric}
	)
	for _, c := range []struct {
		style                         measure.Style
		length                        measure.Length
		format, inches, bare, decimal string
	}{
		{tape, 0, `0"`, `0"`, `0`, `0.000"`},
		{tape, 105 * in, `8' 9"`, `105"`, `105`, `105.000"`},
		{tape, 7*in + 9*in/16, `7 9/16"`, `7 9/16"`, `7 9/16`, `7.563"`},
		{tape, 7*in + 9*in/16 + nm, `7 9/16"+`, `7 9/16"+`, `7 9/16+`, `7.563"`},
		{tape, 7*in + 9*in/16 - nm, `7 9/16"-`, `7 9/16"-`, `7 9/16-`, `7.562"`}, // 7.5625 less a nanometre
		{tape, 12*in - nm, `1' 0"-`, `12"-`, `12-`, `12.000"`},                   // the foot begins with what is printed
		{tape, 12*in + in/2, `1' 0 1/2"`, `12 1/2"`, `12 1/2`, `12.500"`},
		{tape, 808 * in / 5, `13' 5 5/8"-`, `161 5/8"-`, `161 5/8-`, `161.600"`},
		{fine, 808 * in / 5, `13' 5 19/32"+`, `161 19/32"+`, `161 19/32+`, `161.600"`},
		{tape, in / 32, `1/16"-`, `1/16"-`, `1/16-`, `0.031"`}, // halfway goes away from zero
		{tape, in/32 - nm, `0"+`, `0"+`, `0+`, `0.031"`},
		{tape, 3 * in / 4, `3/4"`, `3/4"`, `3/4`, `0.750"`},
		{tape, -3 * in / 8, `-3/8"`, `-3/8"`, `-3/8`, `-0.375"`},
		{tape, -3*in/8 - nm, `-3/8"+`, `-3/8"+`, `-3/8+`, `-0.375"`}, // a little further below
		{tape, -nm, `0"-`, `0"-`, `0-`, `0.000"`},
		{metric, 2727 * mm, `2727 mm`, `2727 mm`, `2727`, `2727.00 mm`},
		{metric, 2727*mm + 325_000, `2727 mm+`, `2727 mm+`, `2727+`, `2727.33 mm`},
		{metric, 190*mm + 500_000, `191 mm-`, `191 mm-`, `191-`, `190.50 mm`},
		{metric, -190*mm - 500_000, `-191 mm-`, `-191 mm-`, `-191-`, `-190.50 mm`},
		{metric, -nm, `0 mm-`, `0 mm-`, `0-`, `0.00 mm`},
		{metric, measure.Max, `1000000 mm`, `1000000 mm`, `1000000`, `1000000.00 mm`},
	} {
		for _, p := range []struct{ method, got, want string }{
			{"Format", c.style.Format(c.length), c.format},
			{"Inches", c.style.Inches(c.length), c.inches},
			{"Bare", c.style.Bare(c.length), c.bare},
			{"Decimal", c.style.Decimal(c.length), c.decimal},
			{"FormatMM", c.style.FormatMM(c.length.MM()), c.format},
			{"InchesMM", c.style.InchesMM(c.length.MM()), c.inches},
			{"BareMM", c.style.BareMM(c.length.MM()), c.bare},
			{"DecimalMM", c.style.DecimalMM(c.length.MM()), c.decimal},
		} {
			if p.got != p.want {
				t.Errorf("%s of %d nm = %s, want %s", p.method, c.length, p.got, p.want)
			}
		}
	}
}

func TestWhatIsNoLengthPrintsAsUnknown(t *testing.T) {
	for _, mm := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), 1e300, measure.Max.MM() * 1.001} {
		for _, s := range []measure.Style{{}, {Units: measure.Metric}} {
			for _, got := range []string{s.FormatMM(mm), s.InchesMM(mm), s.BareMM(mm), s.DecimalMM(mm)} {
				if got != measure.Unknown {
					t.Errorf("%v prints as %q, want %q", mm, got, measure.Unknown)
				}
			}
		}
	}
}

// The printed figure is within half a step of the truth, and its mark says on
// which side the truth lies. Held against exact rational arithmetic.
func TestTheMarkSaysOnWhichSideTheTruthLies(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := measure.Length(rapid.Int64Range(0, int64(measure.Max-in)).Draw(t, "nm"))
		den := rapid.SampledFrom([]int{16, 32, 64}).Draw(t, "denominator")
		printed := measure.Style{Denominator: den}.Inches(l)
		figure := strings.TrimRight(printed, "+-")
		shown, err := measure.Parse(figure, measure.Undeclared)
		if err != nil {
			t.Fatal(err)
		}
		switch {
		case strings.HasSuffix(printed, "+") != (l > shown), strings.HasSuffix(printed, "-") != (l < shown):
			t.Fatalf("%d nm prints as %s, which is %d nm", l, printed, shown)
		case 2*(l-shown).Abs() > in/measure.Length(den):
			t.Fatalf("%d nm prints as %s: more than half of 1/%d off", l, printed, den)
		}
	})
}

// Held against math/big: the nearest multiple, halfway away from zero.
func TestRoundIsNearest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := measure.Length(rapid.Int64Range(-int64(measure.Max), int64(measure.Max)).Draw(t, "nm"))
		step := measure.Length(rapid.Int64Range(1, int64(measure.Metre)).Draw(t, "step"))
		got, side := l.Round(step)
		ratio := new(big.Rat).SetFrac64(int64(l.Abs()), int64(step))
		ratio.Add(ratio, big.NewRat(1, 2))
		want := measure.Length(new(big.Int).Quo(ratio.Num(), ratio.Denom()).Int64()) * step
		if l < 0 {
			want = -want
		}
		if got != want {
			t.Fatalf("%d to steps of %d = %d, want %d", l, step, got, want)
		}
		if (side > 0) != (l > got) || (side < 0) != (l < got) {
			t.Fatalf("%d lies on side %d of %d", l, side, got)
		}
	})
}

func TestNearestOnATape(t *testing.T) {
	for _, c := range []struct {
		length  measure.Length
		den     int
		nearest measure.Length
		side    int
	}{
		{15 * in / 2, 16, 15 * in / 2, 0},
		{15*in/2 + 1, 16, 15 * in / 2, 1},
		{15*in/2 - 1, 16, 15 * in / 2, -1},
		{in / 64, 64, in / 64, 0},
		{in / 64, 16, 0, 1},
		{-in / 64, 16, 0, -1},
	} {
		if nearest, side := c.length.Nearest(c.den); nearest != c.nearest || side != c.side {
			t.Errorf("%d to 1/%d = %d, %d; want %d, %d", c.length, c.den, nearest, side, c.nearest, c.side)
		}
	}
}

// What is rounded up is a whole step, no less than the length, and less than a step
// more.
func TestUpIsEnough(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := measure.Style{Units: rapid.SampledFrom([]measure.Units{measure.Imperial, measure.Metric}).Draw(t, "units"), Denominator: rapid.SampledFrom([]int{16, 32, 64}).Draw(t, "denominator")}
		l := measure.Length(rapid.Int64Range(0, int64(1000*measure.Metre)).Draw(t, "length"))
		up, step := s.Up(l), s.Fineness()
		if up < l || up-l >= step || up%step != 0 {
			t.Errorf("%d nm comes up to %d in steps of %d", l, up, step)
		}
	})
}

// What a machine is set to is told to a hundredth of a millimetre, or as a fraction
// only where that is exact.
func TestFine(t *testing.T) {
	for _, c := range []struct {
		st   measure.Style
		mm   float64
		want string
	}{
		{measure.Style{}, 25.4 / 16, `1/16"`},
		{measure.Style{}, 25.4 * 0.578, `0.578"`},
		{measure.Style{Units: measure.Metric}, 2.6458, "2.65 mm"},
		{measure.Style{Units: measure.Metric}, 12, "12.00 mm"},
	} {
		if got := c.st.FineMM(c.mm); got != c.want {
			t.Errorf("%v mm: %q, want %q", c.mm, got, c.want)
		}
	}
}
