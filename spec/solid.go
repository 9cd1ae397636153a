package spec

import (
	"regexp"
	"strconv"
	"strings"

	"stepoff/spec/measure"
)

// Housing is how treads and risers are let into housed strings.
type Housing struct {
	Margin     measure.Length  // nosing line to the string's top edge, square to it
	Depth      measure.Length  // of the housings
	WedgeTaper float64         // thickness / length
	Undercut   float64         // how far a wall leans out at the bottom / depth
	Round      *measure.Length // radius of the treads' nosings; nil: half their thickness, at most the nosing
	Cutter     measure.Length  // diameter of the router cutter, where it is widest
	Bush       measure.Length  // outside diameter of the guide bush
	FootPlumb  measure.Length  // plumb cut at the foot to the first nosing, level
	HeadLevel  measure.Length  // length of the level cut at the head
}

// Cleats is what treads bear on between solid stringers, and how those end.
type Cleats struct {
	Margin    measure.Length // nosing line to the stringer's top edge, square to it
	Kind      CleatKind
	Height    measure.Length
	Thickness measure.Length // from the stringer's face, under the tread
	Setback   measure.Length // from either edge of the tread to the cleat's end
	Screws    int            // through each cleat into the stringer
	FootPlumb measure.Length // as a housed string's
	HeadLevel measure.Length
}

// CleatKind says what a tread bears on.
type CleatKind int

// Blocks of wood, or steel angle brackets.
const (
	WoodCleat CleatKind = iota
	SteelBracket
)

func readHousing(top group) Housing {
	g, _ := top.sub("housing")
	return Housing{
		Margin:     g.length("margin"),
		Depth:      g.length("depth"),
		WedgeTaper: g.ratio("wedge_taper"),
		Undercut:   g.ratio("undercut"),
		Round:      g.lengthIf("round"),
		Cutter:     g.length("cutter"),
		Bush:       g.length("bush"),
		FootPlumb:  g.length("foot_plumb"),
		HeadLevel:  g.length("head_level"),
	}
}

func readCleats(top group) Cleats {
	g, _ := top.sub("cleats")
	c := Cleats{
		Margin:    g.length("margin"),
		Kind:      CleatKind(g.word("kind", 0)),
		Height:    g.length("height"),
		Thickness: g.length("thickness"),
		Setback:   g.length("setback"),
		FootPlumb: g.length("foot_plumb"),
		HeadLevel: g.length("head_level"),
	}
	if n, _ := g.wholeIf("screws"); n != nil {
		c.Screws = *n
	} else {
		c.Screws, _ = strconv.Atoi(g.key("screws").Default)
	}
	return c
}

var ratioForm = regexp.MustCompile(`^1 ?: ?([1-9][0-9]{0,3}(?:\.[0-9]{1,6})?)$`)

// ratio returns a slope written as 1:16, as a number: 1/16; its default where it
// is left out, 0 where it is none.
func (g group) ratio(name string) float64 {
	k := g.key(name)
	wanted := "a slope such as 1:16, one in sixteen"
	if len(k.words) > 0 {
		wanted += ", or " + strings.Join(k.words, ", ")
	}
	text := k.Default
	n := g.node(name)
	if n != nil {
		var ok bool
		if text, ok = single(n, name, wanted); !ok {
			return 0
		}
	}
	if index(k.words, text) >= 0 {
		return 0
	}
	m := ratioForm.FindStringSubmatch(text)
	if m == nil {
		n.Mistake("%s: %s is not %s", name, measure.Quote(text), wanted)
		return 0
	}
	by, _ := strconv.ParseFloat(m[1], 64)
	if by < leastRatio {
		n.Mistake("%s: %s is steeper than any wedge; write 1:%d or flatter", name, text, leastRatio)
		return 0
	}
	return 1 / by
}

// leastRatio is the steepest slope that is read: a wedge steeper than 1:4 does not
// hold (from memory), and no wall is undercut so much.
const leastRatio = 4
