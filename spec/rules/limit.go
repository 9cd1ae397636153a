package rules

import (
	"fmt"

	"stepoff/spec/measure"
)

// Limit is one number of a code. Which of the value's fields is set follows
// from the key's Kind.
type Limit struct {
	Key  Key
	Text string // the value as its code prints it: 7 3/4", 190 mm, 1:48

	Length  measure.Length // exact; of a Relative one the most it need be, 0: no such bound
	Of      Of
	Degrees float64
	Count   int
	Slope   Fall
	Pascals float64
	Newtons float64
	Word    string

	When     When
	Section  string
	Measured string // how it is measured
	Note     string
	Basis    Basis
	Sources  []string // keys of the code's Sources
}

// Of says what a Relative limit is compared with.
type Of int

// A length of its own; the clear width of the stair; the unit run of its
// straight treads.
const (
	Itself Of = iota
	StairWidth
	UnitRun
)

// Fall is a slope: Rise in Run.
type Fall struct{ Rise, Run int }

func (f Fall) String() string { return fmt.Sprintf("%d:%d", f.Rise, f.Run) }

// When says which stairs a limit is for.
type When int

// All stairs; those with riser boards; those without.
const (
	Always When = iota
	SolidRisers
	OpenRisers
)

var whenWords = []string{"always", "solid risers", "open risers"}

func (w When) String() string { return whenWords[w] }

// Basis says how a value came to be known. Greater is weaker.
type Basis int

// The bases.
const (
	OwnFile    Basis = iota // stated in the user's own file
	TextRead                // the code's or standard's own text was read
	Secondary               // seen in a handout, an article, a thread that quotes the text
	FromMemory              // to be verified before anybody relies on it
)

var basisWords = []string{"own file", "text read", "secondary", "from memory"}

func (b Basis) String() string { return basisWords[b] }
