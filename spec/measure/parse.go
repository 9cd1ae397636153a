package measure

import (
	"errors"
	"fmt"
	"math/big"
	"regexp"
	"strings"
)

// Spellings shows how a length is written, for messages and help.
const Spellings = `8' 11 3/8", 107.375in or 2727.3mm`

// Parse reads a length as a carpenter writes it:
//
//	8' 11 3/8"   8'-11 3/8"   8ft 11-3/8in   107 3/8"   107.375in   8'   3/4"   7⅜"
//	2727.3mm   272.73 cm   2.7273 m
//
// with straight, curly or true prime marks, and a minus sign before it where a
// level lies below another: whether it may is for the caller to say. A bare
// number (105, 7 1/2, 0) is in the given units, inches or millimetres; where
// they are Undeclared only 0 can stand alone.
//
// Fractions are those of a tape: halves to sixty-fourths, and only of an inch.
// After feet the inches stay below 12, and after whole inches the fraction
// below 1. Everything is exact but a decimal finer than a nanometre, which is
// rounded to the nearest. Nothing longer than Max is read.
//
// Anything else is an error that shows a right spelling: among them numbers as
// programs write them (010, 1_000, 0x10, 1e3, .inf), dates, and decimal commas.
func Parse(text string, units Units) (Length, error) {
	l, _, err := parse(text, units)
	return l, err
}

// UnitsOf returns the system of units a length is written in; Undeclared when
// it is a bare number or no length at all.
func UnitsOf(text string) Units {
	_, units, err := parse(text, Undeclared)
	if err != nil {
		return Undeclared
	}
	return units
}

// The spellings, once plain has turned every mark into its straight form.
var (
	lengthForm = func() *regexp.Regexp {
		const (
			whole    = `(?:0|[1-9][0-9]*)`
			number   = whole + `(?:\.[0-9]+)?`
			feet     = `(?P<feet>` + number + `) *(?:'|ft)`
			fraction = `(?:(?P<whole>` + whole + `)(?: +|-))?(?P<top>[1-9][0-9]*)/(?P<bottom>[1-9][0-9]*)`
			inches   = `(?:(?P<inches>` + number + `)|` + fraction + `)`
		)
		bare := strings.NewReplacer("<inches>", "<number>", "<whole>", "<barewhole>", "<top>", "<baretop>", "<bottom>", "<barebottom>").Replace(inches)
		return regexp.MustCompile(`^(?P<minus>-)? *(?:` +
			feet + `|` +
			`(?:` + strings.Replace(feet, "<feet>", "<morefeet>", 1) + `(?: *|-| - ))?` + inches + ` *(?:"|in)|` +
			`(?P<metric>` + number + `) *(?P<unit>mm|cm|m)|` +
			bare + `)$`)
	}()

	plain = strings.NewReplacer(
		"′", "'", "’", "'", "″", `"`, "”", `"`, "−", "-",
		"\u00a0", " ", "\u2009", " ", "\u202f", " ", // spaces that do not break
		"½", " 1/2 ", "¼", " 1/4 ", "¾", " 3/4 ", "⅛", " 1/8 ", "⅜", " 3/8 ", "⅝", " 5/8 ", "⅞", " 7/8 ",
	)

	metricUnits = map[string]Length{"mm": Millimetre, "cm": Centimetre, "m": Metre}
)

// longest bounds the text of one length: the longest sensible spelling has
// about 20 characters, and a decimal written out by a program about 30.
const longest = 60

// parse reads a length and says in which system it was written.
func parse(text string, units Units) (Length, Units, error) {
	if len(text) > longest {
		return 0, Undeclared, unreadable(text, "it is too long")
	}
	spelled := strings.TrimSpace(plain.Replace(text))
	found := lengthForm.FindStringSubmatch(spelled)
	if found == nil {
		return 0, Undeclared, unreadable(text, slip(spelled))
	}
	group := func(name string) string { return found[lengthForm.SubexpIndex(name)] }

	var value *big.Rat // in nanometres
	var err error
	switch bare := group("number") != "" || group("baretop") != ""; {
	case group("metric") != "":
		value = times(group("metric"), metricUnits[group("unit")])
		units = Metric
	case bare && units == Metric && group("baretop") != "":
		return 0, Undeclared, unreadable(text, "fractions are of an inch, and bare numbers are millimetres here")
	case bare && units == Metric:
		value = times(group("number"), Millimetre)
	case bare:
		value, err = inches(text, group("number"), group("barewhole"), group("baretop"), group("barebottom"))
		if err == nil && units == Undeclared && value.Sign() != 0 {
			return 0, Undeclared, fmt.Errorf("%s has no unit: write %s, or declare units: imperial or metric", Quote(text), withUnit(spelled))
		}
	case group("feet") != "":
		value = times(group("feet"), Foot)
		units = Imperial
	default:
		value, err = inches(text, group("inches"), group("whole"), group("top"), group("bottom"))
		if feet := group("morefeet"); feet != "" && err == nil {
			value, err = addFeet(text, feet, value)
		}
		units = Imperial
	}
	if err != nil {
		return 0, Undeclared, err
	}
	l, ok := nanometres(value)
	if !ok {
		return 0, Undeclared, fmt.Errorf("%s is longer than %d m, the longest length that is read", Quote(text), Max/Metre)
	}
	if group("minus") != "" {
		l = -l
	}
	return l, units, nil
}

// withUnit shows a bare number as it might have been meant.
func withUnit(number string) string {
	if strings.Contains(number, "/") {
		return number + `"`
	}
	return number + `" or ` + number + "mm"
}

// times is a decimal number of units, in nanometres.
func times(number string, unit Length) *big.Rat {
	value, _ := new(big.Rat).SetString(number) // the pattern lets only numbers through
	return value.Mul(value, new(big.Rat).SetInt64(int64(unit)))
}

// inches is a decimal number of inches, or whole inches (none: "") and a
// fraction.
func inches(text, number, whole, top, bottom string) (*big.Rat, error) {
	if number != "" {
		return times(number, Inch), nil
	}
	part, _ := new(big.Rat).SetString(top + "/" + bottom) // bottom does not start with 0
	switch bottom {
	case "2", "4", "8", "16", "32", "64":
	default:
		return nil, fmt.Errorf("%s is not a fraction on a tape: halves, 4ths, 8ths, 16ths, 32nds and 64ths are read; write anything else as a decimal, like 0.333in", Quote(text))
	}
	value := part.Mul(part, new(big.Rat).SetInt64(int64(Inch)))
	tooMuch := value.Cmp(new(big.Rat).SetInt64(int64(Inch))) >= 0
	if whole != "" {
		value.Add(value, times(whole, Inch))
	}
	if tooMuch {
		return nil, fmt.Errorf("%s has a fraction of an inch or more%s", Quote(text), rightly(value))
	}
	return value, nil
}

// addFeet puts whole feet before inches.
func addFeet(text, feet string, inches *big.Rat) (*big.Rat, error) {
	tooMuch := inches.Cmp(new(big.Rat).SetInt64(int64(Foot))) >= 0
	value := inches.Add(inches, times(feet, Foot))
	switch {
	case strings.Contains(feet, "."):
		return nil, fmt.Errorf("%s has decimals of a foot and inches too%s", Quote(text), rightly(value))
	case tooMuch:
		return nil, fmt.Errorf("%s has 12 inches or more after the feet%s", Quote(text), rightly(value))
	}
	return value, nil
}

// rightly spells a value that was meant but not well written, where a tape can
// show it.
func rightly(value *big.Rat) string {
	l, ok := nanometres(value)
	if _, side := l.Nearest(64); !ok || side != 0 {
		return "; write it like " + Spellings
	}
	return "; write " + Style{Denominator: 64}.Format(l)
}

// nanometres rounds a value that is not negative to the nearest nanometre.
func nanometres(value *big.Rat) (Length, bool) {
	if value.Cmp(new(big.Rat).SetInt64(int64(Max))) > 0 {
		return 0, false
	}
	twice := new(big.Int).Mul(value.Num(), big.NewInt(2))
	twice.Add(twice, value.Denom())
	return Length(twice.Quo(twice, new(big.Int).Mul(value.Denom(), big.NewInt(2))).Int64()), true
}

func unreadable(text, why string) error {
	if why != "" {
		why = ": " + why
	}
	if strings.TrimSpace(text) == "" {
		return errors.New("a length is missing; write it like " + Spellings)
	}
	return fmt.Errorf("cannot read %s as a length%s; write it like %s", Quote(text), why, Spellings)
}

// slips are what is most often written instead of a length.
var slips = []struct {
	form *regexp.Regexp
	why  string
}{
	{regexp.MustCompile(`^[-'"]+$|^-?(?:ft|in|mm|cm|m)$`), "it has no number"},
	{regexp.MustCompile(`^\d{4}-\d{1,2}-\d{1,2}`), "it looks like a date"},
	{regexp.MustCompile(`,`), "a decimal takes a point, not a comma"},
	{regexp.MustCompile(`''`), `two single marks are not an inch mark: use " or in`},
	{regexp.MustCompile(`^-?0[xX]|^-?[0-9.]+[eE][-+]?[0-9]|_|(?i)^[-+]?\.?(?:inf|nan)`), "plain digits only"},
	{regexp.MustCompile(`(?:^|[^0-9.])0[0-9]`), "a number does not begin with 0"},
	{regexp.MustCompile(`^\+`), "a length has no plus sign"},
	{regexp.MustCompile(`(?:^|[^0-9])\.[0-9]|[0-9]\.(?:[^0-9]|$)`), "a decimal has digits on both sides of the point"},
	{regexp.MustCompile(`/[0-9]+ *c?mm?$`), "fractions are of an inch"},
	{regexp.MustCompile(`(?:'|ft)[- ]*[0-9][0-9 ./-]*$`), `the inches have no mark: use " or in`},
	{regexp.MustCompile(`[A-Za-z]`), `the units are ' or ft, " or in, mm, cm and m`},
}

func slip(text string) string {
	for _, s := range slips {
		if s.form.MatchString(text) {
			return s.why
		}
	}
	return ""
}
