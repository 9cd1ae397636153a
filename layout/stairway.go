package layout

import (
	"fmt"
	"strings"

	"stepoff/layout/geom"
	"stepoff/layout/stringer"
	"stepoff/spec"
	"stepoff/spec/measure"
)

// Stairway is a job laid out.
type Stairway struct {
	Job       *spec.Job
	TotalRise measure.Length // between the finished floors
	Risers    int
	Parts     []Part    // from the bottom up; one, unless a landing is built already
	Elements  []Element // from the bottom up
}

// Part is what lies between two levels that are fixed: the floors, and landings
// that exist. Its risers share its rise evenly.
type Part struct {
	From, To measure.Length // finished levels
	Below    int            // risers of the stairway below it
	Risers   int
}

// Rise is what the part's risers share.
func (p Part) Rise() measure.Length { return p.To - p.From }

// UnitRise is the part's rise / its risers.
func (p Part) UnitRise() float64 { return p.Rise().PartMM(1, p.Risers) }

// level is the height of the top of the part's k-th riser: a whole number of
// nanometres is shared, and the ends come out exactly.
func (p Part) level(k int) float64 {
	n := measure.Length(p.Risers)
	return (p.From*(n-measure.Length(k)) + p.To*measure.Length(k)).PartMM(1, p.Risers)
}

// Element is one member of a stairway: *Flight, *Landing, *Winders or *Curve.
type Element interface {
	Kind() string  // as the job file calls it
	Label() string // flight-1
}

// Turn is a member that stands between two that climb, and that they start from
// and rise to: *Landing or *Winders.
type Turn interface {
	Element
	// Flooring is what is laid later round a foot that stands on it.
	Flooring() measure.Length
	// Header is what a head that rises to it bears on: the finished level down to
	// its top, and down to its underside, which is nil where that is not known.
	Header() (top measure.Length, depth *measure.Length)
}

// Level returns the height of the k-th riser's top above the lower finished
// floor: total rise * k / risers, never a sum of rises; where landings are built
// already, likewise within its part. Level(Risers) is the total rise exactly.
func (s *Stairway) Level(k int) float64 {
	for _, p := range s.Parts {
		if k <= p.Below+p.Risers {
			return p.level(k - p.Below)
		}
	}
	return s.TotalRise.MM()
}

// UnitRise is the unit rise of the whole stairway; ok is false where landings
// that are built part it, and each part has its own.
func (s *Stairway) UnitRise() (rise float64, ok bool) {
	return s.Parts[0].UnitRise(), len(s.Parts) == 1
}

// Flights are the stairway's straight flights, from the bottom up.
func (s *Stairway) Flights() []*Flight { return membersOf[*Flight](s) }

// Landings are the stairway's landings, from the bottom up.
func (s *Stairway) Landings() []*Landing { return membersOf[*Landing](s) }

// Winders are the stairway's turns of winders, from the bottom up.
func (s *Stairway) Winders() []*Winders { return membersOf[*Winders](s) }

// Curves are the stairway's curved flights, from the bottom up.
func (s *Stairway) Curves() []*Curve { return membersOf[*Curve](s) }

func membersOf[M Element](s *Stairway) []M {
	var all []M
	for _, e := range s.Elements {
		if m, ok := e.(M); ok {
			all = append(all, m)
		}
	}
	return all
}

// Flight is a flight laid out.
type Flight struct {
	Name  string
	Spec  *spec.Flight
	Part  Part // of the stairway, in which the flight's risers are alike
	Below int  // risers of the stairway below the flight

	// Foot and Head are what the flight stands on and rises to; nil is the floor.
	Foot, Head Turn

	Risers int
	Treads int // risers, less one when the head is hung

	UnitRise float64
	UnitRun  measure.Length
	TotalRun float64 // treads * unit run, nosing to nosing
	Pitch    float64 // radians above level

	StartLevel, EndLevel float64
	X, Y, Heading        float64      // in plan: middle of the first riser line, heading in degrees
	Outline              []geom.Point // in plan, riser line to riser line, counter-clockwise; nil without a width or a run
	TreadLevels          []float64

	// Flooring is what is laid later round the foot: 0 when the foot stands on
	// the finished surface.
	Flooring  measure.Length
	Stringers []Group  // sawn: one for each different outline, in order of first use
	Strings   []String // housed or cleated: left and right
	Boards    []Board  // treads and riser boards
	Spacing   float64  // stringer to stringer, centre to centre; 0 when the width is not known
}

// Kind is "flight".
func (f *Flight) Kind() string { return "flight" }

// Label is the flight's name.
func (f *Flight) Label() string { return f.Name }

// Hung tells whether the head is hung: the top tread one rise below the floor.
func (f *Flight) Hung() bool { return f.Spec.Stringer.Head == spec.Hung }

// Group is one stringer outline and the places it stands in.
type Group struct {
	Name      string
	Positions []int // 0 is the leftmost going up
	*stringer.Sawn
	FootLevel measure.Length

	// StockLength is the board to buy: LeastBlank and a trim at both ends,
	// rounded up to what is sold; 0 when nothing that long is.
	StockLength measure.Length
	// HeadContact is how much of the head plumb cut bears on the header; nil
	// when the header was not measured.
	HeadContact *float64
}

// Where says in words which of the flight's stringers share this outline, left
// to right going up.
func (g *Group) Where(count int) string { return Where(g.Positions, count) }

// Where says in words which of so many stringers stand at the positions, 0 being
// the leftmost going up.
func Where(positions []int, count int) string {
	if len(positions) == count {
		return "all"
	}
	var words []string
	for _, p := range positions {
		switch {
		case p == 0:
			words = append(words, "left")
		case p == count-1:
			words = append(words, "right")
		case count == 3:
			words = append(words, "middle")
		default:
			words = append(words, fmt.Sprintf("no. %d from the left", p+1))
		}
	}
	return strings.Join(words, ", ")
}
