package measure

import (
	"strconv"
	"strings"
)

// Style is how lengths are printed: in feet, inches and fractions of an inch,
// or in millimetres. The zero value prints to the nearest 1/16 in.
//
// A printed figure that is not the whole truth says so: 7 9/16" is exact,
// 7 9/16"+ means that the true length is a little more than printed, 7 9/16"-
// that it is a little less. A negative length is a minus sign and then its
// size, and the mark speaks of the size: -3/8"+ lies a little further below.
type Style struct {
	Units Units
	// Denominator is how many parts of an inch are told apart: 16, 32 or 64;
	// 0 is 16. Metric lengths are printed to the nearest millimetre.
	Denominator int
}

// Unknown is printed where a computed number is no length: never NaN.
const Unknown = "?"

// Format prints a length as it is called out: feet and inches from one foot up
// (8' 9"), inches below (7 9/16"+), or millimetres (2727 mm+).
func (s Style) Format(l Length) string { return s.print(l, true, true) }

// Inches prints a length in inches alone however long it is (161 5/8"-), as
// marks taped in one pull are read; metric as Format.
func (s Style) Inches(l Length) string { return s.print(l, false, true) }

// Bare prints a length as Inches does, without the unit: 161 5/8-, 2727+. For
// columns and drawings whose unit is said once.
func (s Style) Bare(l Length) string { return s.print(l, false, false) }

// FormatMM prints a computed number of millimetres as Format does.
func (s Style) FormatMM(mm float64) string { return computed(mm, s.Format) }

// InchesMM prints a computed number of millimetres as Inches does.
func (s Style) InchesMM(mm float64) string { return computed(mm, s.Inches) }

// BareMM prints a computed number of millimetres as Bare does.
func (s Style) BareMM(mm float64) string { return computed(mm, s.Bare) }

// Decimal prints a length in decimals, three of an inch (104.938") or two of a
// millimetre (2665.41 mm), rounded to the nearest, halfway away from zero. It
// stands beside a fraction where the difference matters.
func (s Style) Decimal(l Length) string {
	if s.Units == Metric {
		return fixed(l, Millimetre/100, 2) + " mm"
	}
	return fixed(l, Inch/1000, 3) + `"`
}

// DecimalMM prints a computed number of millimetres as Decimal does.
func (s Style) DecimalMM(mm float64) string { return computed(mm, s.Decimal) }

// Fine prints a length that a machine is set to: as Inches does where that is exact
// to a tape's fraction, otherwise as Decimal does. Whole millimetres are too coarse,
// so that those are always decimal.
func (s Style) Fine(l Length) string {
	if s.Units == Metric || l%s.Fineness() != 0 {
		return s.Decimal(l)
	}
	return s.Inches(l)
}

// FineMM prints a computed number of millimetres as Fine does.
func (s Style) FineMM(mm float64) string { return computed(mm, s.Fine) }

func computed(mm float64, print func(Length) string) string {
	l, ok := FromMM(mm)
	if !ok {
		return Unknown
	}
	return print(l)
}

// Fineness is the least difference the printed figures tell apart: 1/16 in, or
// what Denominator says, or 1 mm.
func (s Style) Fineness() Length {
	if s.Units == Metric {
		return Millimetre
	}
	return Inch / Length(s.denominator())
}

// Up is a length rounded up to what the printed figures tell apart: what is built or
// written to it is enough where the length was.
func (s Style) Up(l Length) Length {
	step := s.Fineness()
	return (l + step - 1) / step * step
}

func (s Style) denominator() int {
	if s.Denominator == 0 {
		return 16
	}
	return s.Denominator
}

// print prints the size of a length with its sign before it and the mark for
// what was rounded away behind it.
func (s Style) print(l Length, feet, unit bool) string {
	step := s.Fineness()
	size, side := l.Abs().Round(step)
	minus := ""
	if l < 0 && size > 0 {
		minus = "-"
	} else if l < 0 {
		side = -side // printed as 0, with no minus sign to speak for it
	}
	mark := [...]string{"-", "", "+"}[side+1]
	if s.Units == Metric {
		text := strconv.FormatInt(int64(size/Millimetre), 10)
		if unit {
			text += " mm"
		}
		return minus + text + mark
	}
	text := ""
	if feet = feet && size >= Foot; feet {
		text = strconv.FormatInt(int64(size/Foot), 10) + "' "
		size %= Foot
	}
	text += mixed(size, step, feet)
	if unit {
		text += `"`
	}
	return minus + text + mark
}

// mixed prints a whole number of steps in inches: 0, 3/4, 7, 7 9/16. After feet
// the whole inches are printed even when there are none: 8' 0 1/2".
func mixed(size, step Length, afterFeet bool) string {
	whole, part := int64(size/Inch), int64(size%Inch/step)
	if part == 0 {
		return strconv.FormatInt(whole, 10)
	}
	den := int64(Inch / step)
	for part%2 == 0 {
		part, den = part/2, den/2
	}
	fraction := strconv.FormatInt(part, 10) + "/" + strconv.FormatInt(den, 10)
	if whole == 0 && !afterFeet {
		return fraction
	}
	return strconv.FormatInt(whole, 10) + " " + fraction
}

// fixed prints a length as a decimal number whose last place is one step.
func fixed(l, step Length, places int) string {
	nearest, _ := l.Round(step)
	steps := int64(nearest / step)
	minus := ""
	if steps < 0 {
		minus, steps = "-", -steps
	}
	digits := strconv.FormatInt(steps, 10)
	if short := places + 1 - len(digits); short > 0 {
		digits = strings.Repeat("0", short) + digits
	}
	point := len(digits) - places
	return minus + digits[:point] + "." + digits[point:]
}
