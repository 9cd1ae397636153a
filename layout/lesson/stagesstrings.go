package lesson

// strung teaches a flight whose treads stand between two strings, housed or on
// cleats.
func (t *teacher) strung() {
	t.part = t.f.Part
	t.run()
	sums := []string{"the first at {first nosing}, then every {string step}",
		when(t.full(), "{left of string} is left square across the string, below them")}
	if t.f.Strings[0].Housed == nil {
		t.stage(FigureHousings, "Mark the cleats",
			"The two [stringers] keep both their edges, and the treads stand between them. Mark the [nosings] on the top edge in one pull of the tape, and from each, {string margin} square in, the tread with its [cleat] under it.",
			sums,
			"Both stringers are marked for one hand.",
			"Stand them face to face: every cleat has to look at its own.")
		return
	}
	t.stage(FigureHousings, "Mark the housings",
		"The two strings keep both their edges, and treads and risers are let into them, {housing depth} deep. Mark the [nosings] on the top edge in one pull of the tape, and lay the template on each, {string margin} square in.",
		append(sums, when(t.job().Width != nil, "tread length: clear between the strings, and {housing depth} more at either end")),
		"Both strings are routed for one hand.",
		"Stand them face to face: every housing has to look at its own.")
}
