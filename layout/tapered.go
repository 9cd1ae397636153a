package layout

import (
	"math"

	"stepoff/layout/geom"
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

	Boards []TaperedBoard // of its treads, from the bottom up
}

// Kind is "curve".
func (c *Curve) Kind() string { return "curve" }

// Label is the curve's name.
func (c *Curve) Label() string { return c.Name }

// TaperedBoard is the board of a winder or of a curve's tread as it is cut.
// Millimetres.
type TaperedBoard struct {
	// Outline in plan, counter-clockwise: from the nosing to the riser board behind
	// it, or under it, trimmed to the edges of the clear width; past an open side
	// by the overhang.
	Outline geom.Path
	// Along and Deep are the rectangle it is cut from: along its nosing, with the
	// grain, and square to that.
	Along, Deep float64
	Riser       float64 // length of the riser board at its front, along the riser line; 0 where risers are open
}

// Flooring is the thickness of the tread that is laid on the boxes after a foot
// has been set on them; nothing where the turn is framed otherwise.
func (w *Winders) Flooring() measure.Length { return w.flooring }

// Header is not known: what a head bears on depends on how the turn is carried.
func (w *Winders) Header() (top measure.Length, depth *measure.Length) { return 0, nil }

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

// curve lays a curved flight out, where the member below it ends.
func (s *Stairway) curve(below int, entry turn.Place, asked *spec.Curve) *Curve {
	n := *asked.Risers
	c := &Curve{
		Spec: asked, Below: below, Risers: n, Part: s.partAt(below + 1),
		StartLevel: s.Level(below), EndLevel: s.Level(below + n),
		Inside: asked.InsideRadius.MM(), Outside: (asked.InsideRadius + *s.Job.Width).MM(),
	}
	c.UnitRise = c.Part.UnitRise()
	for k := 1; k < n; k++ {
		c.Levels = append(c.Levels, s.Level(below+k))
	}
	c.Laid = RoundOf(asked, s.Job).At(entry)
	c.Boards = s.taperedBoards(c.Laid)
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

// taperedBoards works out the boards of tapered treads: from nosing to riser
// board as a straight tread's, see Flight.boards.
func (s *Stairway) taperedBoards(l *turn.Laid) []TaperedBoard {
	job := s.Job
	over := turn.Over{Front: overhang(job)}
	if job.Riser.Joint == spec.Behind {
		over.Back = job.Riser.Thickness.MM()
	}
	for i, side := range job.Sides {
		if side != spec.Open {
			continue
		}
		// Going up, the inside is on the hand the turn turns to.
		if inside := (i == 0) == (l.Hand() == turn.Left); inside {
			over.Inside = job.Tread.Overhang.MM()
		} else {
			over.Outside = job.Tread.Overhang.MM()
		}
	}
	var boards []TaperedBoard
	for k := range l.Treads {
		b := TaperedBoard{Outline: l.Board(k, over)}
		b.Along, b.Deep = extent(b.Outline, l.Nosings[k])
		if !job.Riser.Open {
			b.Riser = math.Hypot(l.Risers[k].Out.X-l.Risers[k].In.X, l.Risers[k].Out.Y-l.Risers[k].In.Y)
		}
		boards = append(boards, b)
	}
	return boards
}

// extent is how long and how deep a piece is, along a line and square to it.
func extent(p geom.Path, along turn.Segment) (long, deep float64) {
	angle := math.Atan2(along.Out.Y-along.In.Y, along.Out.X-along.In.X)
	b := p.Turned(-angle).Box()
	return b.Width(), b.Height()
}
