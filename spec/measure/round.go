package measure

// Nearest returns the length nearest to l in whole parts of an inch, den of
// them to the inch, and on which side of it l lies: +1 when l is more, -1 when
// it is less, 0 when it is exact. Halfway goes away from zero. den is 16, 32 or
// 64, or any other number that divides an inch of nanometres.
func (l Length) Nearest(den int) (nearest Length, side int) {
	return l.Round(Inch / Length(den))
}

// Round returns the whole number of steps nearest to l, and on which side of it
// l lies, as Nearest does. The step is more than nothing.
func (l Length) Round(step Length) (nearest Length, side int) {
	whole, rest := l/step, l%step // both toward zero
	switch {
	case 2*rest >= step:
		whole++
	case 2*rest <= -step:
		whole--
	}
	nearest = whole * step
	switch {
	case l > nearest:
		return nearest, 1
	case l < nearest:
		return nearest, -1
	}
	return nearest, 0
}
