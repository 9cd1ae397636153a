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
	c.Laid = turn.Curve{
		Hand: handOf[asked.Turn], Angle: asked.Angle, Treads: n - 1, Inside: c.Inside, Width: s.Job.Width.MM(),
		Overhang: overhang(s.Job), Depths: depthsOf(asked.Depths),
	}.At(entry)
	c.Boards = s.taperedBoards(c.Laid)
	last := n - 1
	if !s.Job.Stringer.TopRiser {
		last-- // the header stands bare above the last tread
	}
	c.CutList = s.taperedCutList(c.Laid, c.Boards, c.UnitRise, 0, last, s.Job.Tread.Thickness.MM())
	return c
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
