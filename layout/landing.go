package layout

import (
	"stepoff/layout/turn"
	"stepoff/spec"
	"stepoff/spec/measure"
)

// Landing is a landing laid out. Millimetres; levels above the lower finished
// floor.
type Landing struct {
	Name         string
	Spec         *spec.Landing
	Level        float64    // finished
	FramingLevel float64    // top of the sheathing: Level less the finish
	Risers       int        // of the stairway below it
	Entry        turn.Place // the lower flight's last riser line, in plan
	turn.Lying              // the walking area from there, and where the upper flight begins

	Frame *Frame // nil where the job states no joists
}

// Kind is "landing".
func (l *Landing) Kind() string { return "landing" }

// Label is the landing's name.
func (l *Landing) Label() string { return l.Name }

// Flooring is the landing's finish.
func (l *Landing) Flooring() measure.Length { return l.Spec.Finish }

// Header is the landing's rim, under finish and sheathing; its depth is known
// where the job states the joists.
func (l *Landing) Header() (top measure.Length, depth *measure.Length) {
	top = l.Spec.Finish + l.Spec.Sheathing
	if l.Spec.Joists != nil {
		d := top + l.Spec.Joists.Width
		depth = &d
	}
	return top, depth
}

// asideOf is how the room a landing has to spare is shared out: see
// turn.Landing.
var asideOf = map[spec.Place]float64{spec.Inside: 0, spec.Middle: 0.5, spec.Outside: 1, spec.LeftSide: 0, spec.RightSide: 1}

var handOf = map[spec.Turn]turn.Hand{spec.Straight: turn.Straight, spec.Left: turn.Left, spec.Right: turn.Right}

// lie lays the landing in plan where the flight below ends.
func (l *Landing) lie(entry turn.Place, job *spec.Job) {
	asked := l.Spec
	l.Entry = entry
	l.Lying = turn.Landing{
		Hand: handOf[asked.Turn], Angle: float64(asked.Angle),
		Length: asked.Length.MM(), Width: asked.Width.MM(),
		Flight: job.Width.MM(), Gap: asked.Gap.MM(), Aside: asideOf[asked.Side],
		Overhang: overhang(job),
	}.At(entry)
}

// overhang is how far a nosing stands before its riser line.
func overhang(job *spec.Job) float64 { return (job.Riser.Thickness + job.Tread.Nosing).MM() }
