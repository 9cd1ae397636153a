package report_test

import (
	"bytes"
	"math"
	"strings"
	"testing"

	"stepoff/layout/choose"
	"stepoff/layout/report"
	"stepoff/spec/lumber"
	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

// figureOf weighs a rise with what figure takes where nothing is said.
func figureOf(t *testing.T, code string, rise measure.Length, units measure.Units) choose.Request {
	t.Helper()
	c, ok := rules.Lookup(code)
	if !ok {
		t.Fatalf("no code %s", code)
	}
	stock, _ := lumber.Lookup("2x12")
	run := stock.Width - measure.Inch
	floor := 11 * measure.Inch
	room := 12 * measure.Foot
	return choose.Request{Rise: rise, Stock: stock, Code: c, BoardRun: &run, Front: measure.Inch + 3*measure.Inch/4,
		FloorDepth: &floor, Available: &room, Style: measure.Style{Units: units, Denominator: 16}}
}

// The table of every code, with every column, reads on a plain terminal and
// holds nothing that is no figure.
func TestFigureFitsTheScreen(t *testing.T) {
	for _, code := range rules.Names() {
		for _, units := range []measure.Units{measure.Imperial, measure.Metric} {
			for _, rise := range []measure.Length{7 * measure.Inch, 107*measure.Inch + 3*measure.Inch/8, 40 * measure.Foot} {
				q := figureOf(t, code, rise, units)
				var b bytes.Buffer
				if err := report.Figure(&b, q, choose.Choices(q)); err != nil {
					t.Fatal(err)
				}
				for i, line := range strings.Split(b.String(), "\n") {
					if len([]rune(line)) > 80 {
						t.Errorf("%s, %g in, %s, line %d is %d wide: %s", code, rise.In(), units, i+1, len([]rune(line)), line)
					}
					for _, bad := range []string{"NaN", "Inf", measure.Unknown, "%!"} {
						if strings.Contains(line, bad) {
							t.Errorf("%s says %q: %s", code, bad, line)
						}
					}
				}
			}
		}
	}
}

// The opening that figure gives is the one check gives: 91 x 10/7.5 and the 1 3/4
// of nosing and riser board, 123.083 in.
func TestFigureOpening(t *testing.T) {
	q := figureOf(t, "irc-2021", 105*measure.Inch, measure.Imperial)
	run := 10 * measure.Inch
	q.Run = &run
	for _, c := range choose.Choices(q) {
		if c.Risers == 14 {
			if want := (91*10/7.5 + 1.75) * 25.4; c.Opening == nil || math.Abs(*c.Opening-want) > 1e-6 {
				t.Errorf("opening %v, want %.4f", c.Opening, want)
			}
			// 130 and 1 3/4 fit twelve feet.
			if !c.Fits {
				t.Error("131 3/4 does not fit 144")
			}
			return
		}
	}
	t.Error("fourteen risers are not weighed")
}
