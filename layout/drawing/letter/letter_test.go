package letter_test

import (
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"stepoff/layout/drawing/letter"
)

// TestWidth holds widths against the font's own table (hmtx of Go Regular,
// units of 1/2048 em): H 1479, 0 1139, ... 2048, capitals 1480 high (OS/2).
func TestWidth(t *testing.T) {
	for text, units := range map[string]float64{"H": 1479, "0": 1139, "g": 1139, "…": 2048, "H0": 1479 + 1139, "→": 2048, "": 0} {
		if got, want := letter.Width(text, 3.5), units*3.5/1480; math.Abs(got-want) > 1e-12 {
			t.Errorf("%q is %.6f wide, want %.6f", text, got, want)
		}
	}
	if got, want := letter.Em(1480), 2048.0; math.Abs(got-want) > 1e-9 {
		t.Errorf("capitals of 1480 on an em of %g", got)
	}
}

func TestHas(t *testing.T) {
	for r, want := range map[rune]bool{'A': true, '½': true, '″': true, '°': true, 'é': true, '中': false, 'א': false, 0x1F600: false} {
		if letter.Has(r) != want {
			t.Errorf("has %U: %v", r, !want)
		}
	}
}

// spans are a line's texts, a fraction in brackets with its parts.
func spans(text string) []string {
	var out []string
	for _, s := range letter.Set(text, 3.5).Spans {
		if s.Bar == nil {
			out = append(out, s.Text)
			continue
		}
		var runs []string
		for _, r := range s.Runs {
			runs = append(runs, r.Text)
		}
		out = append(out, "["+s.Text+": "+strings.Join(runs, " ")+"]")
	}
	return out
}

// TestFractions: what a tape shows is stacked, other strokes are not.
func TestFractions(t *testing.T) {
	for _, c := range []struct {
		text string
		want []string
	}{
		{`7 5/8"`, []string{"[7 5/8: 7 5 8]", `"`}},
		{`8' 11 3/8"+`, []string{"8' ", "[11 3/8: 11 3 8]", `"+`}},
		{"3/4", []string{"[3/4: 3 4]"}},
		{"-3/8", []string{"-", "[3/8: 3 8]"}},
		{"13/16 and 15/64.", []string{"[13/16: 13 16]", " and ", "[15/64: 15 64]", "."}},
		{"12 7 1/2", []string{"12 ", "[7 1/2: 7 1 2]"}},
		{"3/4 1/2", []string{"[3/4: 3 4]", " ", "[1/2: 1 2]"}},
		{"3/4/26", []string{"3/4/26"}},
		{"03/04", []string{"03/04"}},
		{"L/360 and 1/3", []string{"L/360 and 1/3"}},
		{"1.5/8", []string{"1.5/8"}},
		{"9/8 8/8 0/4", []string{"9/8 8/8 0/4"}},
		{"x1/2", []string{"x1/2"}},
		{"1:12, 24/7", []string{"1:12, 24/7"}},
		{"", nil},
	} {
		if diff := cmp.Diff(c.want, spans(c.text)); diff != "" {
			t.Errorf("%q (-want +got):\n%s", c.text, diff)
		}
	}
}

// TestSet: whatever the text, nothing of it is lost, its pieces follow one
// another without overlap, none is smaller than the least height, and the
// figures of a fraction clear their bar.
func TestSet(t *testing.T) {
	alphabet := rapid.StringOfN(rapid.SampledFrom([]rune(`0123456789/ 1248 16"'ab.-+`)), 0, 40, -1)
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.OneOf(alphabet, rapid.String()).Draw(t, "text")
		height := rapid.SampledFrom([]float64{2.5, 3.5, 5, 7}).Draw(t, "height")
		line := letter.Set(text, height)
		read, end := "", 0.0
		for _, s := range line.Spans {
			read += s.Text
			last := end
			for i, r := range s.Runs {
				if r.Height < letter.Least {
					t.Fatalf("%q is %g high", r.Text, r.Height)
				}
				if r.X < end-1e-9 {
					t.Fatalf("%q begins at %g, within what ends at %g", r.Text, r.X, end)
				}
				last = math.Max(last, r.X+letter.Width(r.Text, r.Height))
				if s.Bar == nil || len(s.Runs) == 3 && i == 0 {
					end = last
					continue
				}
				if above := r.Y > s.Bar.Y; above && r.Y < s.Bar.Y+letter.BarWidth || !above && r.Y+r.Height > s.Bar.Y-letter.BarWidth {
					t.Fatalf("the figure %q touches its bar", r.Text)
				}
				if r.Y+r.Height > line.Up+1e-9 || r.Y < -line.Down-1e-9 {
					t.Fatalf("the figure %q reaches out of its line", r.Text)
				}
			}
			end = last
		}
		if read != text {
			t.Fatalf("%q reads %q", text, read)
		}
		if end > line.Width+1e-9 {
			t.Fatalf("%q ends at %g, its line at %g", text, end, line.Width)
		}
	})
}

// TestWords: lines break at blanks, never within a mixed number.
func TestWords(t *testing.T) {
	for text, want := range map[string][]string{
		`set 7 5/8" by 10 1/4"`: {"set", `7 5/8"`, "by", `10 1/4"`},
		" a\t b\nc ":            {"a", "b", "c"},
		"no 3/4 turn":           {"no", "3/4", "turn"},
		"":                      nil,
	} {
		if diff := cmp.Diff(want, letter.Words(text)); diff != "" {
			t.Errorf("%q (-want +got):\n%s", text, diff)
		}
	}
}
