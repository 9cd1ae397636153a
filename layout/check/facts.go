package check

import (
	"stepoff/layout"
	"stepoff/layout/turn"
	"stepoff/spec/measure"
)

// Facts is what is known of one member of a stairway and of what belongs to it.
// What is nil or empty was not measured and is not judged.
type Facts struct {
	// Part names the member where a stairway has more than one; it begins every
	// text. Style prints the lengths in texts.
	Part  string
	Style measure.Style
	Of    layout.Element // the member; nil for what is known of several

	// Plan says that the risers share a total rise and may still be shared
	// otherwise; nil for a stair that stands.
	Plan   *Plan
	Risers []Share // from the bottom up, as they will be or were measured
	// Flight is the risers of a flight as codes count it, from landing or floor to
	// landing or floor, where winders join several members to one; Member says
	// that these facts are one member's, and that the flight has its own.
	Flight []Share
	Member bool
	Foot   []Edge  // the first riser at the edges of a pad that slopes
	First  []Stage // the first riser at each stage of the work, the finished one last
	Last   []Stage // the last riser likewise

	Runs []measure.Length // from the bottom up, nosing to nosing
	// OnWalkline says that the runs are those of tapered treads on the walkline.
	OnWalkline bool
	TopRun     *TopRun
	Nosings    []measure.Length // of the treads, and of the upper floor where it is known
	// FloorNosing says that the last of Nosings is the upper floor's.
	FloorNosing bool
	OpenRisers  *bool
	Gap         *Gap
	// RisersInLine counts the risers of all flights that follow each other without
	// a landing that turns, this one with them.
	RisersInLine *int

	Overhead *layout.Overhead // the upper floor over this flight
	Opening  *measure.Length  // head plumb cut to the opening's far edge
	Headroom *measure.Length  // as measured where it is least; what Overhead gives is not looked at then

	Width        *measure.Length
	AvailableRun *measure.Length
	UsedRun      *float64 // first nosing to head plumb cut

	Landings []Landing
	// The straight flights that landings and turns stand between, where they are
	// not judged themselves.
	FlightWidth, FlightRun *measure.Length
	Turn                   *Turn
	WinderSets             *int // between the two floors

	Together *Together // of a stairway of several flights

	OpenSides *[]string       // left, right; empty: none is open; nil: not stated
	Drop      *float64        // highest tread down to the floor below
	TotalRise *measure.Length // of the whole stairway
	Handrail  *measure.Length

	Pad *Fall

	Stringers      []Stringer
	StringerCount  *int
	Spacing        *float64 // stringer to stringer, centre to centre
	TreadThickness *measure.Length
	TreadDepth     *float64        // the deepest tread board
	TreadBoards    *measure.Length // the width of what a tread is cut from
	HeadContact    *float64        // the least of the flight's stringers
	HungHead       bool
	Ledger         *Ledger
	LiveLoad       *float64 // as stated, in pascals
	Strength       *layout.Strength
}

// Plan is how a total rise is shared.
type Plan struct {
	TotalRise measure.Length
	Risers    int
}

// Edge is the first riser at one edge of the clear width.
type Edge struct {
	Where string // left, right
	Riser Share
}

// Stage is a riser at one stage of the work.
type Stage struct {
	Name  string
	Riser Share
}

// TopRun is the run between the last two nosings, the upper floor's being the
// second. Millimetres.
type TopRun struct {
	Run     float64
	LastCut float64        // the last tread cut that gives it
	Covered bool           // a riser board covers the header
	Floor   measure.Length // nosing of the upper floor
}

// Gap is the opening between two treads where risers are open.
type Gap struct {
	Height Share
	Top    float64 // of the highest one, over the floor below
}

// Fall is how much a surface falls over a level distance.
type Fall struct{ Fall, Over measure.Length }

// Landing is a landing, clear. Millimetres.
type Landing struct {
	Name          string
	Length, Width float64
}

// Turn is a set of winders, or a curve's tapered treads.
type Turn struct {
	Curve  bool
	Angle  float64          // of the whole turn, in degrees
	Lines  []measure.Length // the walklines' distances from the inside edge
	Treads []Tapered        // from the bottom up, as the code measures them

	Beside []Beside        // the flights right below and right above, where they have a tread
	Radius *measure.Length // of a curve's inside edge

	// What it was laid out from, its depths as the code has them; nil for what
	// stands. Then what would put it right can be told.
	Winders *turn.Winders
	Setback measure.Length
	Round   *turn.Curve
	Narrow  *measure.Length // the least depth at the narrow end that the job itself asks for
}

// Beside is a flight right below or right above a turn of winders.
type Beside struct {
	Name  string
	Run   measure.Length
	Above bool
}

// Tapered is a winder or a tapered tread. Depths are between nosings, in
// millimetres, the walkline's the least of all walklines'; the angle is in
// degrees.
type Tapered struct{ Walkline, Narrow, Angle float64 }

// Stringer is one stringer, or several that are alike.
type Stringer struct {
	Where     string // which: all; left, right
	Solid     bool   // not sawn into teeth
	AlongWall bool   // fastened along its length
	Width     measure.Length
	Thickness measure.Length
	Throat    *float64
	Span      *float64 // the longest level distance between its supports
}

// Ledger is the notch at the head over a ledger. Millimetres.
type Ledger struct{ Height, HeadCut float64 }
