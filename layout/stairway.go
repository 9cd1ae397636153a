package layout

import (
	"fmt"
	"strings"

	"stepoff/layout/stringer"
	"stepoff/spec"
	"stepoff/spec/measure"
)

// Stairway is a job laid out.
type Stairway struct {
	Job       *spec.Job
	TotalRise measure.Length // between the finished floors
	Risers    int
	UnitRise  float64
	Elements  []Element // from the bottom up
}

// Element is one member of a stairway: *Flight.
type Element interface {
	Kind() string  // as the job file calls it
	Label() string // flight-1
}

// Level returns the height of the k-th riser's top above the lower finished
// floor: total rise * k / risers, never a sum of rises. Level(Risers) is the
// total rise exactly.
func (s *Stairway) Level(k int) float64 {
	return s.TotalRise.PartMM(k, s.Risers)
}

// Flights are the stairway's flights, from the bottom up.
func (s *Stairway) Flights() []*Flight {
	var fs []*Flight
	for _, e := range s.Elements {
		if f, ok := e.(*Flight); ok {
			fs = append(fs, f)
		}
	}
	return fs
}

// Flight is a flight laid out.
type Flight struct {
	Name   string
	Spec   *spec.Flight
	Risers int
	Treads int // risers, less one when the head is hung

	UnitRise float64
	UnitRun  measure.Length
	TotalRun float64 // treads * unit run, nosing to nosing
	Pitch    float64 // radians above level

	StartLevel, EndLevel float64
	X, Y, Heading        float64 // in plan: middle of the first riser line, heading in degrees
	TreadLevels          []float64

	// Flooring is what is laid later round the foot: 0 when the foot stands on
	// the finished surface.
	Flooring  measure.Length
	Stringers []Group // one for each different outline, in order of first use
	Boards    []Board // treads and riser boards
	Spacing   float64 // stringer to stringer, centre to centre; 0 when the width is not known
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
func (g *Group) Where(count int) string {
	if len(g.Positions) == count {
		return "all"
	}
	var words []string
	for _, p := range g.Positions {
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
