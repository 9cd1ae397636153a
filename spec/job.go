package spec

import (
	"stepoff/spec/lumber"
	"stepoff/spec/measure"
	"stepoff/spec/source"
)

// Job is one job file, read and checked, defaults filled in. A nil pointer is
// something nobody measured or asked for: what needs it is left out.
type Job struct {
	Name   string
	Number string
	Date   string // YYYY-MM-DD as written, or empty
	Units  measure.Units
	Code   Code

	Levels       Levels
	Width        *measure.Length // clear width
	Sides        []Side          // left and right going up; empty when not stated
	WallGap      measure.Length  // stringer to wall framing
	AvailableRun *measure.Length // first nosing to head plumb cut
	Room         Room            // for the whole stairway in plan
	Opening      *measure.Length // head plumb cut to the far edge of the floor opening

	Stairway []Element // from the bottom up, never empty

	Tread    Tread
	Riser    Riser
	Stringer Stringer // what flights inherit; each flight holds its own, merged
	Housing  Housing  // of housed strings
	Cleats   Cleats   // between cleated ones
	Saw      Saw
	Loads    Loads
	Service  Service
	Incised  bool
	Bought   Bought
	Paper    Paper

	// Source is the file as it was read, so that a set of sheets can carry it.
	Source []byte

	file   *source.File
	places map[string]source.Pos
	over   map[string]*source.Node // values from elsewhere, by the paths of their keys
}

// Code names the building code in force.
type Code struct {
	Name  string
	Given bool // false: the default was taken, and is to be said
}

// Levels are the heights measured on site.
type Levels struct {
	TotalRise   measure.Length // as measured: see Measured
	Measured    Measured
	LowerFinish measure.Length  // flooring still to come on the lower floor
	UpperFinish measure.Length  // flooring still to come on the upper floor
	HeaderTop   measure.Length  // finished upper floor down to the top of what the head bears on
	HeaderDepth *measure.Length // finished upper floor down to its underside
	FloorDepth  *measure.Length // finished upper floor down to the ceiling below
}

// Finished is the total rise between the finished floors.
func (l Levels) Finished() measure.Length {
	if l.Measured == Rough {
		return l.TotalRise + l.UpperFinish - l.LowerFinish
	}
	return l.TotalRise
}

// Measured says between which surfaces the total rise was taken.
type Measured int

// Between the finished floors, or between the floors as they are today.
const (
	Finished Measured = iota
	Rough
)

// Room is the floor there is for a stairway: along its first flight and across
// it; nil where that is not limited.
type Room struct{ Along, Across *measure.Length }

// Side says what stands at one side of the stair.
type Side int

// A wall, or nothing.
const (
	Wall Side = iota
	Open
)

// Element is one member of a stairway. Exactly one pointer is set.
type Element struct {
	Flight  *Flight
	Landing *Landing
	Winders *Winders
	Curve   *Curve
}

// Flight is one flight as asked for.
type Flight struct {
	Risers   *int            // nil: to be chosen
	Run      *measure.Length // unit run; nil: to be chosen
	Stringer Stringer        // the job's, with what this flight overrides

	// What was not stated and was chosen before the stair was laid out.
	RisersChosen, RunChosen bool
	// CountBy says how the number of stringers came about that `count: auto` asked
	// for.
	CountBy string
}

// Landing is one landing as asked for, defaults filled in.
type Landing struct {
	Turn   Turn
	Angle  int            // degrees: 90 or 180; 0 straight through
	Length measure.Length // clear, along the lower flight's travel
	Width  measure.Length // clear, across it
	Gap    measure.Length // between the flights of a half turn
	Side   Place          // where the flights stand on a landing wider than they are

	Finish    measure.Length // flooring on the sheathing
	Sheathing measure.Length
	Joists    *Piece         // nil: not stated, no framing
	Spacing   measure.Length // of the joists, on centre
	On        Bearing

	// BuiltLevel is the top of a landing that exists, above the lower floor:
	// taken between the same surfaces as the total rise.
	BuiltLevel *measure.Length
}

// Turn says to which hand a stairway turns, going up.
type Turn int

// Straight on, or to a hand.
const (
	Straight Turn = iota
	Left
	Right
)

// Place says where the flights stand on a landing wider than they are.
type Place int

// Inside: toward the hand the stairway turns to; Outside: away from it. On a
// landing straight through, LeftSide and RightSide, going up.
const (
	Inside Place = iota
	Middle
	Outside
	LeftSide
	RightSide
)

// Bearing says what carries a landing.
type Bearing int

// Posts under its corners, framed walls under its edges, or ledgers on the
// walls round it.
const (
	OnLegs Bearing = iota
	OnWalls
	OnLedgers
)

func (b Bearing) String() string { return [...]string{"legs", "walls", "ledgers"}[b] }

// Tread is the tread as finished.
type Tread struct {
	Thickness measure.Length
	Nosing    measure.Length // overhang past the riser board's face; past the riser cut where risers are open
	Boards    *Boards        // what treads are cut from
	Overhang  measure.Length // past an open side
	Wood      Wood
}

// Boards is what one tread is cut from: Count boards side by side.
type Boards struct {
	Name  string // as written: 2x12
	Count int
	lumber.Size
}

// Riser is the riser board, or none.
type Riser struct {
	Open      bool
	Thickness measure.Length // 0 when open
	Joint     Joint
}

// Joint says how riser board and tread meet.
type Joint int

// Behind: the riser board runs down behind the tread. On: it stands on it.
const (
	Behind Joint = iota
	On
)

// Stringer is how the stringers of a flight are made and stand.
type Stringer struct {
	Stock      Stock
	Wood       Wood
	Count      int  // 0: to be worked out from the width
	CountAuto  bool // `count: auto` was asked for
	Head       Head
	TopRiser   bool             // the header above the last tread is covered by a riser board
	TopNosing  *measure.Length  // the upper floor's own nosing; nil: as the treads'
	BehindHead measure.Length   // hanger board or packing between head and header
	FootOn     Measured         // what the foot stands on: Rough or Finished
	FootLevels []measure.Length // one a stringer, left to right going up; empty: all 0
	Kicker     *Piece
	Ledger     *Piece
	Support    []Support // one a stringer, or one for all
	Build      Build
	Props      []measure.Length
	Strongback *Piece
	Deflection int // allowed under the live load: span over this
}

// Wood is what a board is of: as its stamp says, or with design values of its
// own. Neither is stated where all is empty, and strength is left out.
type Wood struct {
	Species, Grade string
	Values         *lumber.Values // taken in place of those of species and grade
}

// Stated tells whether anything is.
func (w Wood) Stated() bool { return w.Values != nil || w.Species != "" || w.Grade != "" }

// Stock is the board the stringers are cut from.
type Stock struct {
	Name string // as written: 2x12; empty when measured
	lumber.Size
}

// Piece is a length of dimension lumber named by its nominal size.
type Piece struct {
	Name string
	lumber.Size
}

// Head says how the stringer meets the upper floor.
type Head int

// Hung: the top tread is one rise below the floor. Flush: level with it.
const (
	Hung Head = iota
	Flush
)

// Support says what holds a stringer along its length.
type Support int

// Span: only its ends. AlongWall: fastened along a wall.
const (
	Span Support = iota
	AlongWall
)

// Build is the kind of stringer.
type Build int

// Sawn: steps cut into it. Housed: treads and risers let into its face. Cleated:
// solid, its treads on cleats.
const (
	Sawn Build = iota
	Housed
	Cleated
)

func (b Build) String() string { return [...]string{"sawn", "housed", "cleated"}[b] }

// Saw is the circular saw the stringers are cut with.
type Saw struct {
	Blade     measure.Length  // diameter
	Depth     *measure.Length // below the shoe; nil: stock + 1/8 in, at most 2 7/16 in
	StopShort measure.Length  // how far short of the root the blade stops
	Bevel     float64         // tilt of the blade from square, degrees
	RootHole  measure.Length  // diameter of a hole drilled at every root; 0: none
}

// Loads are uniform loads on the horizontal projection, in pascals; nil when
// not stated.
type Loads struct {
	Live, Dead *float64
}

// Service is the moisture the wood works in.
type Service int

// Dry or wet.
const (
	Dry Service = iota
	Wet
)

// Bought is how boards are bought, and cut to length.
type Bought struct {
	// Lengths boards are sold in, short to long, no two alike.
	Lengths []measure.Length
	// Prices of one board of the stringers' stock, one for each of Lengths, in
	// hundredths of whatever money they are in; empty: not stated.
	Prices  []int64
	Kerf    measure.Length // taken between two parts
	EndTrim measure.Length // off either end of a board first, its kerf included
}

// Paper is what the sheets are printed on.
type Paper struct {
	Size           PaperSize
	Margin         measure.Length
	Overlap        measure.Length
	ScaleX, ScaleY float64 // measured / drawn, across and along the paper
}
