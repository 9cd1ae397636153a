package spec

import (
	"stepoff/spec/measure"
	"stepoff/spec/source"
)

// stringers is a Stringer while it is read: what was asked for, before the
// number of stringers is settled.
type stringers struct {
	Stringer
	counted bool // a number was given
}

// readStringer reads what the flights inherit, and returns it with its mapping.
func readStringer(top group, openRisers bool) (stringers, group) {
	g, _ := top.sub("stringer")
	coveredHeader := 0
	if openRisers {
		coveredHeader = 1
	}
	s := stringers{Stringer: Stringer{
		Stock:      g.stock(),
		Wood:       g.wood(),
		TopRiser:   g.word("top_riser", coveredHeader) == 0,
		TopNosing:  g.lengthIf("top_nosing"),
		BehindHead: g.length("behind_head"),
		Build:      Build(g.word("build", 0)),
		Props:      g.lengths("props", "a list of distances, like [4' 6\"]"),
	}}
	s.Strongback, _ = g.piece("strongback")
	if sb := s.Strongback; sb != nil && s.Stock.Width > 0 && sb.Width > s.Stock.Width {
		g.get("strongback").Mistake("strongback: it is wider than the stringer's own board; take one no wider, or cut the stringer from wider stock")
	}
	s.Deflection = g.whole("deflection")
	if !rising(s.Props) {
		g.get("props").Mistake("props: the distances are taken from the foot's front and stand in order, each more than the one before")
	}
	return g.override(s), g
}

// rising tells whether every length is more than the one before. A 0 stands
// for one that could not be read.
func rising(lengths []measure.Length) bool {
	for i := 1; i < len(lengths); i++ {
		if lengths[i] <= lengths[i-1] && lengths[i] != 0 {
			return false
		}
	}
	return true
}

// override returns the stringers with what a group sets of the keys that a
// flight may set for itself.
func (g group) override(s stringers) stringers {
	s.Head = Head(g.word("head", int(s.Head)))
	s.FootOn = Measured(g.word("foot", int(s.FootOn)))
	if kicker, given := g.piece("kicker"); given {
		s.Kicker = kicker
	}
	if ledger, given := g.piece("ledger"); given {
		s.Ledger = ledger
	}
	if number, word := g.wholeIf("count"); number != nil {
		s.Count, s.CountAuto, s.counted = *number, false, true
	} else if word == "auto" {
		s.Count, s.CountAuto, s.counted = 0, true, false
	}
	if levels := g.lengths("foot_levels", "a list with one level a stringer, like [0, 0, 0]"); levels != nil {
		s.FootLevels = levels
	}
	if support := g.support(); support != nil {
		s.Support = support
	} else if s.Support == nil {
		s.Support = []Support{Span}
	}
	return s
}

// aboveFloor returns what a flight inherits that stands on a landing: as many
// stringers, but the foot levels are those of the floor below.
func (s stringers) aboveFloor() stringers {
	if len(s.FootLevels) > 0 && !s.counted && !s.CountAuto {
		s.Count, s.counted = len(s.FootLevels), true
	}
	s.FootLevels = nil
	return s
}

// support returns one word for all stringers, or one each; nil where it is left
// out.
func (g group) support() []Support {
	n := g.node("support")
	if n == nil {
		return nil
	}
	nodes := []*source.Node{n}
	if n.IsList() {
		nodes = g.items("support", "one word, or a list with one a stringer, like [wall, span, wall]")
	}
	var all []Support
	for _, item := range nodes {
		i, _ := oneOf(item, "support", g.key("support").words)
		all = append(all, Support(i))
	}
	return all
}

// solidStrings is how many a stair has whose treads stand between them.
const solidStrings = 2

// settle finds the number of stringers and holds the lists against it. g is
// where they were asked for: the stringer's mapping, or a flight's.
func (s stringers) settle(g group, width *measure.Length) Stringer {
	each := len(s.FootLevels) // how many stringers the lists speak of, 0: not said
	if each == 0 && len(s.Support) > 1 {
		each = len(s.Support)
	}
	bounds := table["stringer.count"]
	switch {
	case s.counted:
	case each >= bounds.least && each <= bounds.most && !s.CountAuto:
		s.Count = each
	case s.Build != Sawn:
		s.Count, s.CountAuto = solidStrings, false
	default:
		s.Count = countFor(width)
	}
	if n := g.blame("count", "foot_levels", "support"); n != nil && s.Build != Sawn && s.Count != solidStrings {
		n.Mistake("count: a stair whose strings are %s has two, its treads stand between them; not %d", s.Build, s.Count)
		return s.Stringer
	}
	g.oneEach("foot_levels", len(s.FootLevels), s.Count)
	if len(s.Support) > 1 {
		g.oneEach("support", len(s.Support), s.Count)
	}
	return s.Stringer
}

// oneEach holds a list against the number of stringers. The mistake stands at
// whichever of the two this group gives; at neither, it is not this group's.
func (g group) oneEach(name string, length, count int) {
	if length == 0 || length == count {
		return
	}
	if n := g.blame(name, "count", "foot_levels"); n != nil {
		n.Mistake("%s: there are %d stringers, so the list has %[2]d values, not %d", name, count, length)
	}
}

// Number of stringers where none is given.
//
// Sources: three under a stair up to 36 in wide, common practice (one at each
// side, one in the middle); not more than 18 in apart, AWC DCA 6 figures 29 and
// 33 (from a secondary source).
const (
	usualCount    = 3
	usualWidth    = 36 * measure.Inch
	widestSpacing = 18 * measure.Inch
)

// countFor returns how many stringers carry a stair of a clear width, nil:
// not known.
func countFor(width *measure.Length) int {
	if width == nil || *width <= usualWidth {
		return usualCount
	}
	return int((*width+widestSpacing-1)/widestSpacing) + 1
}

// stock reads a board by its nominal size or as measured.
func (g group) stock() Stock {
	n := g.node("stock")
	if n == nil {
		return Stock{}
	}
	if n.IsMapping() {
		own, _ := g.sub("stock")
		return Stock{Size: own.measured()}
	}
	text, ok := single(n, "stock", "a board such as 2x12, or "+asMeasured)
	if !ok {
		return Stock{}
	}
	dressed, ok := nominal(n, "stock", text, asMeasured)
	if !ok {
		return Stock{}
	}
	return Stock{Name: text, Size: dressed}
}
