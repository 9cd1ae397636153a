package turn

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"stepoff/spec/measure"
)

// Winders is what decides where a set of winders lies. Millimetres.
type Winders struct {
	Hand   Hand    // Left or Right
	Angle  float64 // degrees, more than 0 and at most 90
	Treads int     // 2 or more
	// Even divides the walkline into equal chords, and the inside edge likewise;
	// else all riser lines meet in a pivot and turn by equal angles.
	Even bool

	Width    float64 // clear width
	Overhang float64 // how far a nosing stands before its riser line
	Depths   Depths
}

// At lays the winders from the lower flight's last riser line. The setback is how
// far before the inside corner that stands, and how far after it the last one.
//
// Radial, all riser lines pass through the pivot, where the first and the last
// meet, and the walklines are arcs about it. Even, a riser line joins the k-th
// of equal chords along the inside edge with the k-th along the walkline, which
// is the line at the code's distance from the inside edge; of several, the
// first.
func (w Winders) At(entry Place, setback float64) *Laid {
	c, lines, on := w.lines(setback)
	pivot := lines[0].from
	l := lay(entry, w.Hand, c, lines, w.Overhang, w.Depths, on)
	if !w.Even {
		p := l.toPlan(pivot)
		l.Pivot = &p
	}
	return l
}

// lines are the riser lines and the walklines at a set-back.
func (w Winders) lines(setback float64) (c corner, lines []ray, on []walkline) {
	c = cornerOf(w.Width, 0, w.Angle, setback)
	if w.Even {
		lines, on = w.even(c)
	} else {
		lines, on = w.radial(c)
	}
	return c, lines, on
}

func (w Winders) radial(c corner) (lines []ray, on []walkline) {
	back := c.setback / math.Tan(c.angle/2) // from the pivot to the near end of the first riser line
	pivot := r2.Sub(c.first(0), r2.Scale(back, c.out(0)))
	for k := range w.Treads + 1 {
		turned := c.share(k, w.Treads)
		lines = append(lines, ray{pivot, c.out(turned), turned})
	}
	for _, d := range w.Depths.Walklines {
		on = append(on, walkline{c: c, about: pivot, radius: back + d})
	}
	return lines, on
}

// share is the angle turned at the k-th of n equal steps.
func (c corner) share(k, n int) float64 {
	if k == n {
		return c.angle
	}
	return c.angle * float64(k) / float64(n)
}

func (w Winders) even(c corner) (lines []ray, on []walkline) {
	for _, d := range w.Depths.Walklines {
		on = append(on, walkline{c: c, d: d})
	}
	inner := equalChords(c, 0, w.Treads)
	outer := equalChords(c, w.Depths.Walklines[0], w.Treads)
	for k := range inner {
		along := r2.Unit(r2.Sub(outer[k], inner[k]))
		switch k {
		case 0:
			along = c.out(0)
		case w.Treads:
			along = c.out(c.angle)
		}
		lines = append(lines, ray{inner[k], along, math.Atan2(along.Y, along.X) + math.Pi/2})
	}
	lines[w.Treads].turned = c.angle
	return lines, on
}

// MostSetback bounds the search for a set-back: a stair with more is no winder
// stair.
const MostSetback measure.Length = 5 * measure.Metre

// LeastSetback is the least set-back, to the nanometre, at which every tread is as
// deep on the walkline and at its narrow end as it has to be; ok is false where
// none is. Both depths grow with the set-back.
func (w Winders) LeastSetback() (setback measure.Length, ok bool) {
	return least(0, MostSetback, w.Meets)
}

// least is the least length between two, to the nanometre, that is enough, where
// more is enough too; ok is false where not even the most is.
func least(from, most measure.Length, enough func(measure.Length) bool) (l measure.Length, ok bool) {
	if !enough(most) {
		return 0, false
	}
	for from < most {
		if half := (from + most) / 2; enough(half) {
			most = half
		} else {
			from = half + 1
		}
	}
	return most, true
}

// Meets tells whether every tread is deep enough at a set-back.
func (w Winders) Meets(setback measure.Length) bool {
	c, lines, on := w.lines(setback.MM())
	return w.Depths.met(c, nosings(lines, w.Overhang), on)
}

// depthRounding is how far, in millimetres, a depth may come out under a limit it
// reaches exactly: a hundred times what is lost on lines some metres long. Processors
// round differently there, and would find set-backs a nanometre apart.
const depthRounding = 1e-10

// met tells whether every tread between the nosings is deep enough.
func (by Depths) met(c corner, fronts []ray, on []walkline) bool {
	for _, t := range depths(c, fronts, by, on) {
		if t.walkline < by.LeastWalkline-depthRounding || t.narrow < by.LeastNarrow-depthRounding {
			return false
		}
	}
	return true
}
