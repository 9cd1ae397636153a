package layout

import (
	"math"

	"stepoff/layout/turn"
	"stepoff/spec"
	"stepoff/spec/measure"
)

// Winders is a turn of winders laid out. Millimetres; levels above the lower
// finished floor.
type Winders struct {
	Name   string
	Spec   *spec.Winders
	Part   Part      // of the stairway, in which its risers are alike
	Risers int       // of the stairway up to its first tread, whose riser is the lower flight's last
	Levels []float64 // finished, of its treads
	*turn.Laid

	UnitRise float64
	Boards   []TaperedBoard // of its treads, from the bottom up
	CutList  []Board        // the same as rectangles, and its riser boards but the first, which is the lower flight's last

	// Boxes are the platforms stacked on each other that the winders are framed with,
	// the lowest first, which is the order they go together in; nil where the job
	// asks for no framing.
	Boxes []turn.Box
	Seat  float64 // how far they run on past the last riser line, under the upper flight's feet
	// BoxStock is what their rims and joists are ripped from: the narrowest board two
	// inches thick that is as wide as the highest box. Its name is empty where there
	// is none.
	BoxStock spec.Piece
	// Legs is how many legs carry the lowest box, one at every corner; none where it
	// stands on the floor.
	Legs   int
	Pieces []FramePiece // the boxes' cut list
	// WallMarks are where the riser lines meet both walls and the newel, NosingMarks
	// where the nosings do.
	WallMarks, NosingMarks []turn.WallMark
	WallStrings            []turn.WallString   // notched to the treads, unrolled
	HousedStrings          []turn.HousedString // the same, housed

	flooring measure.Length
}

// Kind is "winders".
func (w *Winders) Kind() string { return "winders" }

// Label is the turn's name.
func (w *Winders) Label() string { return w.Name }

// Curve is a curved flight laid out. Millimetres; levels above the lower
// finished floor.
type Curve struct {
	Name   string
	Spec   *spec.Curve
	Part   Part // of the stairway, in which its risers are alike
	Below  int  // risers of the stairway below the curve
	Risers int  // treads are one fewer

	// Foot and Head are what the curve stands on and rises to; nil is the floor.
	Foot, Head Turn

	StartLevel, EndLevel float64
	UnitRise             float64
	Levels               []float64 // finished, of its treads
	Inside, Outside      float64   // radii of the edges of the clear width
	*turn.Laid

	Boards  []TaperedBoard // of its treads, from the bottom up
	CutList []Board        // the same as rectangles, and its riser boards

	// Framing is two walls of studs on curved plates with bearers and ledgers between
	// them. PlateStock is what its studs are and how wide its plates.
	Framing                              *turn.CurveFraming
	PlateStock, BearerStock, LedgerStock spec.Piece
	Pieces                               []FramePiece // their cut list
	// Sheets is how many the plates take, their segments cut as the rectangles they
	// lie in: fewer do where they are laid into each other.
	Sheets int

	Strings []CurvedString // unrolled, the inside one and the outside one
	// NoStrings says why there are none, where they cannot be cut: the walls do not
	// hang on them.
	NoStrings string
}

// Kind is "curve".
func (c *Curve) Kind() string { return "curve" }

// Label is the curve's name.
func (c *Curve) Label() string { return c.Name }

// RunAt is the run of a tread along the arc of that radius, in millimetres.
func (c *Curve) RunAt(radius float64) float64 {
	return radius * c.Spec.Angle * math.Pi / 180 / float64(len(c.Treads))
}

// Flooring is the thickness of the tread that is laid on the boxes after a foot
// has been set on them; nothing where the turn is framed otherwise.
func (w *Winders) Flooring() measure.Length { return w.flooring }

// Header is the front of the lowest box, under tread and sheathing: a unit rise from
// top of tread to top of the next box's, so that a hung head ends where it begins. A
// turn framed otherwise has none that is known.
func (w *Winders) Header() (top measure.Length, depth *measure.Length) {
	if !w.Spec.Boxes {
		return 0, nil
	}
	thick := w.flooring
	// To the nanometre below, so that nothing bears by rounding.
	d := thick + measure.Length(math.Floor(w.UnitRise*float64(measure.Millimetre)))
	return thick + w.Spec.Sheathing, &d
}

// winders lays a turn out whose first tread is as high as that many risers, where
// the flight below it ends.
func (s *Stairway) winders(below int, entry turn.Place, asked *spec.Winders) *Winders {
	w := &Winders{Spec: asked, Risers: below, Part: s.partAt(below)}
	w.UnitRise = w.Part.UnitRise()
	for k := range asked.Treads {
		w.Levels = append(w.Levels, s.Level(below+k))
	}
	w.Laid = PlanOf(asked, s.Job).At(entry, asked.Setback.MM())
	w.Boards = s.taperedBoards(w.Laid)
	w.CutList = s.taperedCutList(w.Laid, w.Boards, w.UnitRise, 1, len(w.Treads)-1, 0)
	if asked.Boxes {
		w.flooring = s.Job.Tread.Thickness
	}
	return w
}

// PlanOf is what decides where a turn of winders lies.
func PlanOf(asked *spec.Winders, job *spec.Job) turn.Winders {
	return turn.Winders{
		Hand: handOf[asked.Turn], Angle: asked.Angle, Treads: asked.Treads, Even: asked.Even,
		Width: job.Width.MM(), Overhang: overhang(job), Depths: depthsOf(asked.Depths),
	}
}

func depthsOf(d spec.Depths) turn.Depths {
	out := turn.Depths{Arc: d.Arc, NarrowAt: d.NarrowAt.MM(), LeastWalkline: d.LeastWalkline.MM(), LeastNarrow: d.LeastNarrow.MM()}
	for _, l := range d.Walklines {
		out.Walklines = append(out.Walklines, l.MM())
	}
	return out
}

// curve lays a curved flight out, where the member under it ends.
func (s *Stairway) curve(below int, entry turn.Place, under Turn, asked *spec.Curve) *Curve {
	n := *asked.Risers
	c := &Curve{
		Spec: asked, Foot: under, Below: below, Risers: n, Part: s.partAt(below + 1),
		StartLevel: s.Level(below), EndLevel: s.Level(below + n),
		Inside: asked.InsideRadius.MM(), Outside: (asked.InsideRadius + *s.Job.Width).MM(),
	}
	c.UnitRise = c.Part.UnitRise()
	for k := 1; k < n; k++ {
		c.Levels = append(c.Levels, s.Level(below+k))
	}
	c.Laid = RoundOf(asked, s.Job).At(entry)
	c.Boards = s.taperedBoards(c.Laid)
	last := n - 1
	if !s.Job.Stringer.TopRiser {
		last-- // the header stands bare above the last tread
	}
	onFloor := s.Job.Tread.Thickness.MM()
	if _, onWinder := under.(*Winders); onWinder {
		onFloor = 0 // the first riser board runs down behind the winder
	}
	c.CutList = s.taperedCutList(c.Laid, c.Boards, c.UnitRise, 0, last, onFloor)
	return c
}

// RoundOf is what decides where a curve lies. Its risers are known.
func RoundOf(asked *spec.Curve, job *spec.Job) turn.Curve {
	return turn.Curve{
		Hand: handOf[asked.Turn], Angle: asked.Angle, Treads: *asked.Risers - 1,
		Inside: asked.InsideRadius.MM(), Width: job.Width.MM(),
		Overhang: overhang(job), Depths: depthsOf(asked.Depths),
	}
}

// partAt is the part of the stairway that its k-th riser belongs to.
func (s *Stairway) partAt(k int) Part {
	for _, p := range s.Parts {
		if k <= p.Below+p.Risers {
			return p
		}
	}
	return s.Parts[len(s.Parts)-1]
}
