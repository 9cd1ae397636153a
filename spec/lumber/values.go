package lumber

import (
	"fmt"
	"strings"

	"stepoff/spec/measure"
)

// Values are design values of wood, in pascals.
type Values struct {
	Fb     float64 // bending
	Fv     float64 // shear parallel to grain
	FcPerp float64 // compression perpendicular to grain: bearing
	E      float64 // modulus of elasticity
	Emin   float64 // the same for stability; 0 where it is not stated
}

// Reference is one row of reference design values: visually graded dimension
// lumber, 2 to 4 in thick, at normal load duration and in the dry, before any
// factor.
type Reference struct {
	Species, Grade string
	// Nominal is the nominal width the values are for; 0 for all, which the size
	// factor then adjusts.
	Nominal int
	Values
	Source string
	Basis  string // secondary, from memory
}

// How the values came to be known.
const (
	secondary  = "secondary"
	fromMemory = "from memory"
)

const (
	psi        = measure.PSI
	millionPSI = 1e6 * psi
)

// The tables the values are from. Those of 4A were found in a public table of
// sawn species, those of 4B, in force since June 2013, in a public structural
// library; Southern Pine's better grades in other widths than 12 are from memory.
const (
	table4A = "NDS Supplement 2018, table 4A"
	table4B = "NDS Supplement 2018, table 4B"
)

// references are the rows there are. Every other species, and every grade not
// listed, has no value here, and gets no verdict.
//
// Secondary tables disagree about some of them. DF-L No.1 at 1200 and Hem-Fir
// No.1 at 1100 are No.1 & Btr; Southern Pine No.2 at 850 for wide boards, or at
// 1000 for every width, is older than 2013.
var references = []Reference{
	{"DF-L", "SS", 0, Values{1500 * psi, 180 * psi, 625 * psi, 1.9 * millionPSI, 0.69 * millionPSI}, table4A, secondary},
	{"DF-L", "No.1", 0, Values{1000 * psi, 180 * psi, 625 * psi, 1.7 * millionPSI, 0.62 * millionPSI}, table4A, secondary},
	{"DF-L", "No.2", 0, Values{900 * psi, 180 * psi, 625 * psi, 1.6 * millionPSI, 0.58 * millionPSI}, table4A, secondary},
	{"HF", "SS", 0, Values{1400 * psi, 150 * psi, 405 * psi, 1.6 * millionPSI, 0.58 * millionPSI}, table4A, secondary},
	{"HF", "No.1", 0, Values{975 * psi, 150 * psi, 405 * psi, 1.5 * millionPSI, 0.55 * millionPSI}, table4A, secondary},
	{"HF", "No.2", 0, Values{850 * psi, 150 * psi, 405 * psi, 1.3 * millionPSI, 0.47 * millionPSI}, table4A, secondary},
	{"SPF", "SS", 0, Values{1250 * psi, 135 * psi, 425 * psi, 1.5 * millionPSI, 0.55 * millionPSI}, table4A, secondary},
	{"SPF", "No.1/No.2", 0, Values{875 * psi, 135 * psi, 425 * psi, 1.4 * millionPSI, 0.51 * millionPSI}, table4A, secondary},

	southern("SS", 4, 2350, fromMemory), southern("SS", 6, 2100, fromMemory), southern("SS", 8, 1950, fromMemory),
	southern("SS", 10, 1700, fromMemory), southern("SS", 12, 1600, secondary),
	southern("No.1", 4, 1500, fromMemory), southern("No.1", 6, 1350, fromMemory), southern("No.1", 8, 1250, fromMemory),
	southern("No.1", 10, 1050, fromMemory), southern("No.1", 12, 1000, secondary),
	southern("No.2", 4, 1100, secondary), southern("No.2", 6, 1000, secondary), southern("No.2", 8, 925, secondary),
	southern("No.2", 10, 800, secondary), southern("No.2", 12, 750, secondary),
}

// southern is a row of Southern Pine, whose bending value depends on the width
// and takes no size factor up to 12 in.
func southern(grade string, nominal int, fb float64, basis string) Reference {
	e, emin := 1.4, 0.51
	switch grade {
	case "SS":
		e, emin = 1.8, 0.66
	case "No.1":
		e, emin = 1.6, 0.58
	}
	return Reference{"SP", grade, nominal, Values{fb * psi, 175 * psi, 565 * psi, e * millionPSI, emin * millionPSI}, table4B, basis}
}

// References returns the rows there are.
func References() []Reference { return append([]Reference(nil), references...) }

// Species are what a grade stamp may say, by the name the tables use.
var species = []struct {
	name, long string
	stamps     []string
}{
	{"DF-L", "Douglas Fir-Larch", []string{"dfl", "douglasfirlarch", "dougfirlarch", "dfirl"}},
	{"HF", "Hem-Fir", []string{"hf", "hemfir"}},
	{"SPF", "Spruce-Pine-Fir", []string{"spf", "sprucepinefir"}},
	{"SP", "Southern Pine", []string{"sp", "syp", "southernpine", "southernyellowpine"}},
}

// grades are what a stamp may say of the grade.
var grades = map[string]string{
	"ss": "SS", "selstr": "SS", "selectstructural": "SS", "selectstr": "SS",
	"no1": "No.1", "1": "No.1", "number1": "No.1",
	"no2": "No.2", "2": "No.2", "number2": "No.2",
	"no1no2": "No.1/No.2", "no12": "No.1/No.2",
}

// plain takes from a stamp all that is written in several ways.
func plain(stamp string) string {
	return strings.Map(func(r rune) rune {
		if strings.ContainsRune(" .-/#_", r) {
			return -1
		}
		return r
	}, strings.ToLower(stamp))
}

// leastThickness and mostThickness bound the lumber the tables are for: nominal
// 2 to 4 in. Thinner lumber has no values; thicker is posts and timbers, another
// table. Source: NDS Supplement, headings of tables 4A and 4B (from memory);
// lumber less than 2 in thick: USDA FPL, RIP-4719-040 (2018).
const (
	leastThickness = measure.Inch + measure.Inch/2 - tolerated
	mostThickness  = 3*measure.Inch + 9*measure.Inch/16
	// tolerated is how much less than dressed a board as measured may be and
	// still count as it: 1 mm, so that a board of 38 mm or one planed once is a 2x.
	tolerated = measure.Millimetre
)

// Published returns the reference design values of a board by the words on its
// stamp. The error says why there are none, in words for whoever bought it.
func Published(stampSpecies, stampGrade string, size Size) (Reference, error) {
	name := speciesOf(stampSpecies)
	grade := grades[plain(stampGrade)]
	switch {
	case name == "":
		return Reference{}, fmt.Errorf("no design values of the species %s are published here (they are of %s); appearance grades of hardwood have none at all", measure.Quote(stampSpecies), speciesNames())
	case grade == "":
		return Reference{}, fmt.Errorf("no design values of the grade %s are published here; those of %s are %s", measure.Quote(stampGrade), name, gradesOf(name))
	case size.Thickness < leastThickness:
		return Reference{}, fmt.Errorf("lumber thinner than a nominal 2 in has no published design values, whatever its stamp")
	case size.Thickness > mostThickness:
		return Reference{}, fmt.Errorf("lumber thicker than a nominal 4 in is not in the tables of dimension lumber")
	}
	if name == "SPF" && grade != "SS" {
		grade = "No.1/No.2"
	}
	nominal := nominalWidth(size.Width)
	for _, r := range references {
		if r.Species == name && r.Grade == grade && (r.Nominal == 0 || r.Nominal == min(nominal, 12)) {
			return r, nil
		}
	}
	return Reference{}, fmt.Errorf("no design values of %s %s are published here; of %s there are %s", name, measure.Quote(stampGrade), name, gradesOf(name))
}

func speciesOf(stamp string) string {
	for _, s := range species {
		for _, known := range s.stamps {
			if plain(stamp) == known {
				return s.name
			}
		}
	}
	return ""
}

func speciesNames() string {
	var all []string
	for _, s := range species {
		all = append(all, s.name+" ("+s.long+")")
	}
	return strings.Join(all, ", ")
}

// gradesOf lists the grades a species has values for, best first.
func gradesOf(name string) string { return strings.Join(Grades(name), ", ") }

// Grades are those a species, by the tables' name, has values for, best first.
func Grades(name string) []string {
	var all []string
	for _, r := range references {
		if r.Species == name && (len(all) == 0 || all[len(all)-1] != r.Grade) {
			all = append(all, r.Grade)
		}
	}
	return all
}

// green are the widths of boards surfaced green, by nominal width: a board as
// measured belongs to the first it does not exceed. Source: PS 20, as size.go's.
var green = []struct {
	nominal int
	width   measure.Length
}{
	{4, 57 * sixteenth}, {6, 90 * sixteenth}, {8, 120 * sixteenth}, {10, 152 * sixteenth}, {12, 184 * sixteenth},
}

// nominalWidth is the nominal width in inches of a board as measured; 14 stands
// for whatever is wider than a 2x12.
func nominalWidth(width measure.Length) int {
	for _, g := range green {
		if width <= g.width {
			return g.nominal
		}
	}
	return 14
}
