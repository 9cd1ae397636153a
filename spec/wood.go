package spec

import (
	"stepoff/spec/lumber"
	"stepoff/spec/measure"
)

// wood reads what a board is of.
func (g group) wood() Wood {
	w := Wood{Species: g.text("species"), Grade: g.text("grade")}
	own, given := g.sub("values")
	if !given {
		return w
	}
	w.Values = &lumber.Values{
		Fb:     own.stress("bending", leastStress, mostStress),
		Fv:     own.stress("shear", leastStress, mostStress),
		FcPerp: own.stress("bearing", leastStress, mostStress),
		E:      own.stress("modulus", leastModulus, mostModulus),
	}
	return w
}

// What design values of wood and of what is made of it lie between, by far: what
// is outside was written in another unit, or with a 0 too many.
const (
	leastStress  = 10 * measure.PSI
	mostStress   = 10_000 * measure.PSI
	leastModulus = 100_000 * measure.PSI
	mostModulus  = 10_000_000 * measure.PSI
)

// stress reads a design value in pascals; 0 where it is not there or wrong.
func (g group) stress(name string, least, most float64) float64 {
	if g.key(name).kind != stress {
		return 0 // treads are not asked what they bear on
	}
	n := g.node(name)
	if n == nil {
		return 0
	}
	text, ok := single(n, name, "a design value")
	if !ok {
		return 0
	}
	pascals, err := measure.ParseStress(text)
	switch {
	case err != nil:
		n.Mistake("%s: %s", name, err)
	case pascals < least || pascals > most:
		n.Mistake("%s: %s is none of wood's: it lies between %.0f psi and %.0f psi", name, measure.Quote(text), least/measure.PSI, most/measure.PSI)
	default:
		return pascals
	}
	return 0
}
