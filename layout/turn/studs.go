package turn

import (
	"math"

	"stepoff/layout/geom"
)

// ShortestStud is the shortest that is cut as a stud: a shorter block splits when
// it is nailed, and what it would carry stands on the plates instead. 3 in;
// common practice, the figure from memory.
const ShortestStud = 3 * 25.4

// CurveWalls are the two stud walls under a curved flight and what lies on them.
// They stand under the clear width, their outer faces flush with its edges: the
// inside wall from the inside radius outward, the outside wall from the outside
// radius inward. Millimetres.
type CurveWalls struct {
	Plates PlateStock
	Stud   float64 // thickness; its depth is the plate's width
	// Spacing is the most from stud to stud, mark to mark along the plate's outer
	// edge: where the goings are longer there, studs stand between the riser
	// lines, under the tread itself.
	Spacing        float64
	Bearer, Ledger BearerStock
}

// Stud is one stud of a schedule. It stands square on the plates, its depth
// along the radius. Its mark is a radius: the riser line where there is one.
type Stud struct {
	Plate  string  // CurveInside or CurveOutside
	Angle  float64 // of its mark, degrees from the first riser line
	Riser  int     // the riser line it stands at; 0: between two
	Tread  int     // the one it carries
	Before bool    // it stands before its mark, going up, not behind it: the last of each wall
	Height float64 // cut length, from the plates to what it carries
	// Bevel of its top, in degrees: 0, a square cut, since bearers, ledgers and
	// treads lie level.
	Bevel float64

	Thickness    float64
	Inner, Outer float64 // from the centre along its mark
}

// In is the stud in its place in plan.
func (s Stud) In(l *Laid) geom.Path {
	ahead := s.Thickness
	if s.Before {
		ahead = -ahead
	}
	return l.Bar(s.Angle, s.Inner, s.Outer, ahead)
}

// CurveFraming is the framing of a curved flight on stud walls.
type CurveFraming struct {
	Plates  []Plate  // inside, outside
	Studs   []Stud   // of the inside wall, then of the outside one, each going up
	Bearers []Bearer // from the bottom up, each tread's bearer and then its ledger
}

// Framing lays the framing out. What cannot be built is refused with every reason
// there is.
//
// A stud stands under each bearer, at each riser line but the last, its face in
// the riser plane as the bearer's; before the last riser line one stands under
// the last ledger. Where what a stud carries stands on the plates, there is none.
func (s CurveSteps) Framing(w CurveWalls) (*CurveFraming, []CurveRefusal) {
	if bad := s.refuse(w); len(bad) > 0 {
		return nil, bad
	}
	inner := s.Outside() - w.Plates.Width
	f := &CurveFraming{
		Plates:  []Plate{w.Plates.plate(CurveInside, s.Inside, s.Angle), w.Plates.plate(CurveOutside, inner, s.Angle)},
		Bearers: s.bearers(w),
	}
	for _, p := range f.Plates {
		f.Studs = append(f.Studs, s.studs(w, p, f.Bearers)...)
	}
	return f, nil
}

// room is what is left between the plates and the underside of tread k.
func (s CurveSteps) room(w CurveWalls, k int) float64 {
	return s.under(k) - s.Floor - w.Plates.Height()
}

// spaces is how many equal spaces the studs divide a going into on a plate.
func (s CurveSteps) spaces(w CurveWalls, outer float64) int {
	return fewest(outer*radians(s.Step()), w.Spacing)
}

// studs is the schedule of one wall.
func (s CurveSteps) studs(w CurveWalls, p Plate, bearers []Bearer) []Stud {
	var all []Stud
	n := s.spaces(w, p.Outer)
	add := func(st Stud) {
		st.Plate, st.Thickness = p.Name, w.Stud
		st.Inner = p.Inner
		if p.Name == CurveOutside {
			st.Inner = squareEnd(p.Outer, w.Stud) - w.Plates.Width
		}
		st.Outer = st.Inner + w.Plates.Width
		all = append(all, st)
	}
	for _, b := range bearers {
		last := b.Riser == s.Risers()
		if (!b.Ledger || last) && !b.OnPlates {
			add(Stud{Angle: b.Angle, Riser: b.Riser, Tread: b.Tread, Before: last, Height: s.room(w, b.Tread) - b.Depth})
		}
		if b.Ledger {
			continue
		}
		for i := 1; i < n; i++ {
			add(Stud{Angle: b.Angle + s.Step()*float64(i)/float64(n), Tread: b.Tread, Height: s.room(w, b.Tread)})
		}
	}
	return all
}

// refuse says what of the walls cannot be built.
func (s CurveSteps) refuse(w CurveWalls) []CurveRefusal {
	var bad curveRefusals
	say, p := s.Style.FormatMM, w.Plates
	clear := s.Width - 2*p.Width
	if clear < curveTouching {
		bad.add("width", "two walls of studs %s deep leave nothing between them in a clear width of %s", say(p.Width), say(s.Width))
		return bad // the radii below hang on it
	}
	for _, inner := range []float64{s.Inside, s.Outside() - p.Width} {
		b := inner + p.Width
		if most := p.MostAngle(inner); b*radians(min(most, s.Angle)) < min(p.Width, b*radians(s.Angle))-curveTouching {
			bad.add("sheet", "a plate %s wide at a radius of %s cannot be cut from sheets %s by %s in pieces longer than wide; take a larger sheet or a narrower plate",
				say(p.Width), say(b), say(p.SheetLength), say(p.SheetWidth))
		}
	}
	if room := s.room(w, 1); room < w.Bearer.Thickness-curveTouching {
		left := "nothing"
		if room > curveTouching {
			left = say(room)
		}
		bad.add("tread", "under the first tread %s is left over plates %s high: a board on edge needs %s; take thinner treads, fewer layers or fewer risers", left, say(p.Height()), say(w.Bearer.Thickness))
	}
	if need := 2 * (w.Stud + w.Ledger.Thickness); w.Spacing < need {
		bad.add("spacing", "studs %s apart leave no room for a ledger between them; %s is the least", say(w.Spacing), say(need))
		return bad
	}
	s.refuseCrowding(w, &bad)
	return bad
}

// refuseCrowding holds the narrow ends of the goings against what stands there.
// Two marks an angle apart, what stands behind the first clears the second from a
// radius of thickness / sin(angle) on.
func (s CurveSteps) refuseCrowding(w CurveWalls, bad *curveRefusals) {
	say := s.Style.FormatMM
	need := max(w.Stud, w.Bearer.Thickness)
	n := s.spaces(w, s.Inside+w.Plates.Width)
	if n > 1 {
		need = max(need, w.Stud+w.Ledger.Thickness)
	}
	apart := math.Sin(radians(min(90, s.Step()/float64(n))))
	if s.Inside*apart < need-curveTouching {
		bad.add("inside_radius", "riser lines come so near each other at the inside edge that %s of wood does not stand between them: the radius is %s, and has to be %s or more with as many risers in this angle",
			say(need), say(s.Inside), s.atLeast(need/apart))
		return
	}
	if start, wall := ledgerStart(s.Step(), w.Bearer.Thickness, w.Ledger.Thickness), s.Outside()-w.Plates.Width; start > wall-curveTouching {
		bad.add("inside_radius", "bearer and ledger of a tread have room beside each other only %s from the centre, past the outside wall at %s: take fewer risers, or a larger radius", say(start), say(wall))
	}
}
