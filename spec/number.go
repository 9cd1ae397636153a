package spec

import (
	"fmt"
	"regexp"
	"strconv"

	"stepoff/spec/measure"
)

var wholeForm = regexp.MustCompile(`^[1-9][0-9]{0,8}$`)

// wholeIf returns a whole number, and the word that stands in its place if one
// does; nil and empty where it is left out.
func (g group) wholeIf(name string) (*int, string) {
	k := g.key(name)
	n := g.node(name)
	if n == nil {
		return nil, ""
	}
	wanted := fmt.Sprintf("a whole number from %d to %d in plain digits", k.least, k.most)
	for _, w := range k.words {
		wanted += ", or " + w
	}
	text, ok := single(n, name, wanted)
	if !ok {
		return nil, ""
	}
	if index(k.words, text) >= 0 {
		return nil, text
	}
	number, _ := strconv.Atoi(text)
	if !wholeForm.MatchString(text) || number < k.least || number > k.most {
		n.Mistake("%s: %s is not %s", name, measure.Quote(text), wanted)
		return nil, ""
	}
	return &number, ""
}

// whole returns a whole number; its default where it is left out or wrong.
func (g group) whole(name string) int {
	number, _ := g.wholeIf(name)
	if number == nil {
		fallback, _ := strconv.Atoi(g.key(name).Default)
		return fallback
	}
	return *number
}

// Bounds of a printer's scale. Farther off is no printer's error but a page
// scaled to fit.
const (
	leastScale = 0.97
	mostScale  = 1.03
)

var decimalForm = regexp.MustCompile(`^(?:0|[1-9][0-9]{0,8})(?:\.[0-9]{1,12})?$`)

// angle returns an angle in degrees; its default where it is left out, 0 where it
// is wrong. more says how a greater one is had.
func (g group) angle(name, more string) float64 {
	k := g.key(name)
	n := g.node(name)
	if n == nil {
		value, _ := strconv.ParseFloat(k.Default, 64)
		return value
	}
	wanted := fmt.Sprintf("degrees from %d to %d in plain digits", k.least, k.most)
	text, ok := single(n, name, wanted)
	if !ok {
		return 0
	}
	value, err := strconv.ParseFloat(text, 64)
	if err != nil || !decimalForm.MatchString(text) || value < float64(k.least) || value > float64(k.most) {
		if err == nil && value > float64(k.most) {
			wanted += more
		}
		n.Mistake("%s: %s is not %s", name, measure.Quote(text), wanted)
		return 0
	}
	return value
}

func (g group) scale(name string) float64 {
	n := g.node(name)
	if n == nil {
		return 1
	}
	text, ok := single(n, name, "a decimal number")
	if !ok {
		return 1
	}
	value, err := strconv.ParseFloat(text, 64)
	if err != nil || !decimalForm.MatchString(text) {
		n.Mistake("%s: %s is not a decimal number such as 0.9962 (measured / drawn)", name, measure.Quote(text))
		return 1
	}
	if value < leastScale || value > mostScale {
		n.Mistake("%s: %s is outside %g to %g: that is a page scaled to fit, not a printer's error; print at 100 %% (actual size) and measure again", name, text, leastScale, mostScale)
		return 1
	}
	return value
}
