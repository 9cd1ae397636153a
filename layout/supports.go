package layout

import (
	"fmt"
	"math"

	"stepoff/spec"
	"stepoff/spec/measure"
	"stepoff/spec/source"
)

// Supports are the level places that hold a stringer up: the foot's front, the
// props, the head plumb cut. A prop that stands in this flight's seat, or beyond
// its head, is another flight's.
func Supports(g *Group, props []measure.Length) []float64 {
	return supports(g.SeatCut, g.HeadX(), props)
}

// Supports are those of a string: its foot's front is the plumb cut there.
func (s *String) Supports(props []measure.Length) []float64 {
	return supports(s.SeatCut, s.Span(), props)
}

func supports(seat, head float64, props []measure.Length) []float64 {
	at := []float64{0}
	for _, p := range props {
		if x := p.MM(); x > seat && x < head {
			at = append(at, x)
		}
	}
	return append(at, head)
}

// SupportAt says what holds a stringer along its length: one word is for all.
func SupportAt(st *spec.Stringer, position int) spec.Support {
	switch {
	case len(st.Support) == 0:
		return spec.Span
	case position < len(st.Support):
		return st.Support[position]
	}
	return st.Support[len(st.Support)-1]
}

// posts refuses props where no flight has a place for them: under the seat, or
// beyond the head.
func (s *Stairway) posts() (bad source.Mistakes) {
	flights := s.Flights()
	for i, p := range s.Job.Stringer.Props {
		x, stands, longest := p.MM(), false, 0.0
		for _, f := range flights {
			for k := range f.Stringers {
				g := &f.Stringers[k]
				stands = stands || len(Supports(g, []measure.Length{p})) == 3
				longest = math.Max(longest, g.HeadX())
			}
			for k := range f.Strings {
				c := &f.Strings[k]
				stands = stands || len(c.Supports([]measure.Length{p})) == 3
				longest = math.Max(longest, c.Span())
			}
		}
		key := fmt.Sprintf("stringer.props[%d]", i)
		say := measure.Style{Units: s.Job.Units}.FormatMM
		switch {
		case stands || longest == 0:
		case x >= longest:
			bad = append(bad, s.Job.Mistake(key, "props: a post %s from the foot's front stands beyond the head, which is %s from it", say(x), say(longest)))
		default:
			bad = append(bad, s.Job.Mistake(key, "props: a post %s from the foot's front stands in the seat, where the stringer bears already", say(x)))
		}
	}
	return bad
}
