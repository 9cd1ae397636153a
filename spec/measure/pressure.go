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

// PoundForce is one pound-force in newtons. Source: NIST Special Publication
// 811, appendix B.
const PoundForce = 4.4482216152605

// MaxForce bounds a force that is read, in newtons: 100 kN, ten tons on a tread.
const MaxForce = 100_000

var forceForm = regexp.MustCompile(`^([1-9][0-9]*(?:\.[0-9]+)?) *(lb|N|kN)$`)

// ParseForce reads a load on a spot, 1000 lb or 4.5 kN, and returns newtons.
func ParseForce(text string) (newtons float64, err error) {
	m := forceForm.FindStringSubmatch(text)
	if m == nil || len(text) > longest {
		return 0, fmt.Errorf("cannot read %s as a force; write it like 300 lb or 1.3 kN", Quote(text))
	}
	number, err := strconv.ParseFloat(m[1], 64)
	newtons = number * map[string]float64{"lb": PoundForce, "N": 1, "kN": 1000}[m[2]]
	if err != nil || newtons > MaxForce {
		return 0, fmt.Errorf("%s is more than anybody puts on a tread: up to %d kN are read", Quote(text), MaxForce/1000)
	}
	return newtons, nil
}

// PSI is one pound-force per square inch in pascals.
//
// Source: NIST Special Publication 811, appendix B.
const PSI = 6894.757293168

// MaxStress bounds a design value that is read, in pascals: 100 GPa, about half
// of what steel's modulus of elasticity is.
const MaxStress = 100e9

var stressForm = regexp.MustCompile(`^((?:0|[1-9][0-9]*)(?:\.[0-9]+)?(?:e[0-9])?) *(psi|ksi|MPa|GPa|N/mm2)$`)

// stressUnits are the units a design value may be written in, in pascals.
var stressUnits = map[string]float64{"psi": PSI, "ksi": 1000 * PSI, "MPa": 1e6, "N/mm2": 1e6, "GPa": 1e9}

// ParseStress reads a design value of a material, 900 psi, 1.6e6 psi or 11 GPa,
// and returns pascals.
func ParseStress(text string) (pascals float64, err error) {
	m := stressForm.FindStringSubmatch(text)
	if m == nil || len(text) > longest {
		return 0, fmt.Errorf("cannot read %s as a design value; write it like 900 psi, 1.6e6 psi or 11 GPa", Quote(text))
	}
	number, err := strconv.ParseFloat(m[1], 64)
	pascals = number * stressUnits[m[2]]
	if err != nil || pascals > MaxStress {
		return 0, fmt.Errorf("%s is more than any stringer has: up to %g GPa are read", Quote(text), MaxStress/1e9)
	}
	return pascals, nil
}
