package measure

import (
	"fmt"
	"regexp"
	"strconv"
)

// PSF is one pound-force per square foot in pascals.
//
// Source: NIST Special Publication 811, appendix B.
const PSF = 47.88025898

// MaxPressure bounds a load that is read, in pascals: 100 kPa, about 2000 psf,
// ten times what any building code asks of a floor.
const MaxPressure = 100_000

var pressureForm = regexp.MustCompile(`^((?:0|[1-9][0-9]*)(?:\.[0-9]+)?) *(psf|kPa)$`)

// ParsePressure reads a uniform load, 40 psf or 1.9 kPa, and returns pascals;
// 0 needs no unit.
func ParsePressure(text string) (pascals float64, err error) {
	if text == "0" {
		return 0, nil
	}
	m := pressureForm.FindStringSubmatch(text)
	if m == nil || len(text) > longest {
		return 0, fmt.Errorf("cannot read %s as a load; write it like 40 psf or 1.9 kPa", Quote(text))
	}
	number, err := strconv.ParseFloat(m[1], 64)
	if m[2] == "psf" {
		pascals = number * PSF
	} else {
		pascals = number * 1000
	}
	if err != nil || pascals > MaxPressure {
		return 0, fmt.Errorf("%s is more than any floor bears: up to %d kPa are read", Quote(text), MaxPressure/1000)
	}
	return pascals, nil
}
