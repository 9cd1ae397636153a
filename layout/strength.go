package layout

import (
	"fmt"
	"math"

	"stepoff/layout/strength"
	"stepoff/spec"
	"stepoff/spec/lumber"
	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

// Strength is how a flight's stringers and treads carry. What is not known of
// the wood gives no verdict, and Unknown says why.
type Strength struct {
	Loads FlightLoads

	Unknown   string // why the stringers get no verdict; empty: they do
	Wood      Lumber
	Stringers []Carrier // left to right going up

	TreadsUnknown string
	Treads        *Treads
}

// Carrier is one stringer of a flight in its own place.
type Carrier struct {
	Position  int // 0 is the leftmost going up
	Support   spec.Support
	Group     *Group
	Share     float64 // of its simple share, under treads that run through
	Tributary float64 // level width it carries, mm
	Seat      float64 // length of the foot's bearing, mm

	// Of a stringer fastened along a wall the rest is empty: it does not span.
	*strength.Member
	strength.Verdict
	Limit      strength.Limit // how far it reaches as a simple span
	PointRatio float64        // in bending, with the point load and the dead load on it alone
	Stiffener  *strength.Ply

	FootBearing float64 // stress on the seat
	HeadBearing float64 // length a hanger's seat needs
	Allowed     float64 // across the grain
	// LeastThroat is the throat that just holds; ok is false where its own does
	// not.
	LeastThroat   float64
	LeastThroatOK bool
}

// Spans tells whether the stringer carries from support to support.
func (c *Carrier) Spans() bool { return c.Member != nil }

// Head and Foot are what the stringer stands with at its ends, N.
func (c *Carrier) Head() float64 { return c.Reactions[len(c.Reactions)-1] }
func (c *Carrier) Foot() float64 { return c.Reactions[0] }

// Treads is how a tread carries over the stringers.
type Treads struct {
	Wood   Lumber
	Boards int
	Tread  strength.Tread
	Span   float64
	strength.TreadVerdict
	Longest float64
}

// Holds tells whether everything that has a verdict holds.
func (s *Strength) Holds() bool {
	for i := range s.Stringers {
		if c := &s.Stringers[i]; c.Spans() && !(c.Holds() && c.FootBearing <= c.Allowed) {
			return false
		}
	}
	return s.TreadsHold()
}

// Worst is the spanning stringer that comes nearest to what it may bear, or is
// farthest beyond it; nil where none spans.
func (s *Strength) Worst() *Carrier {
	var worst *Carrier
	for i := range s.Stringers {
		if c := &s.Stringers[i]; c.Spans() && (worst == nil || c.Ratio() > worst.Ratio()) {
			worst = c
		}
	}
	return worst
}

// TreadsHold tells whether the treads hold, or get no verdict.
func (s *Strength) TreadsHold() bool { return s.Treads == nil || s.Treads.Ratio() <= 1 }

// longestTread is how far a tread is looked at.
const longestTread = 4000.0

// Strength works out how the flight carries; nil where it has no stringers.
func (s *Stairway) Strength(f *Flight, code *rules.Code) *Strength {
	if !f.HasStringers() {
		return nil
	}
	w := &Strength{Loads: loads(s.Job, code)}
	w.stringers(s.Job, f)
	w.treads(s.Job, f)
	return w
}

func (w *Strength) stringers(job *spec.Job, f *Flight) {
	st := &f.Spec.Stringer
	switch {
	case st.Build != spec.Sawn:
		w.Unknown = "only sawn stringers are judged, none that is " + st.Build.String() + ": have a licensed professional size it"
	case !st.Wood.Stated():
		w.Unknown = "species and grade of the stringers are not stated"
	case st.Wood.Values == nil && st.Wood.Species == "":
		w.Unknown = "the species of the stringers is not stated"
	case st.Wood.Values == nil && st.Wood.Grade == "":
		w.Unknown = "the grade of the stringers is not stated"
	case job.Width == nil:
		w.Unknown = "the width of the stair is not stated, and with it what each stringer carries"
	}
	if w.Unknown != "" {
		return
	}
	var err error
	if w.Wood, err = woodOf(job, st.Wood, st.Stock.Size, false); err != nil {
		w.Unknown = err.Error()
		return
	}
	var stiffener *strength.Ply
	if sb := st.Strongback; sb != nil {
		own, err := woodOf(job, st.Wood, sb.Size, false)
		if err != nil {
			w.Unknown = "of the strongback: " + err.Error()
			return
		}
		stiffener = &strength.Ply{Thickness: sb.Thickness.MM(), Depth: sb.Width.MM(), E: own.E * mpa, Fb: own.Fb * mpa, Fv: own.Fv * mpa}
	}
	shares := strength.Shares(st.Count)
	for at := range st.Count {
		c := Carrier{Position: at, Support: SupportAt(st, at), Group: f.groupOf(at), Share: shares[at], Tributary: f.Spacing * shares[at]}
		if at == 0 || at == st.Count-1 {
			c.Tributary = edge(f.Spacing, overhangAt(job, at == 0))
		}
		c.Seat = seat(c.Group)
		if c.Support == spec.Span {
			w.carry(&c, f, stiffener)
		}
		w.Stringers = append(w.Stringers, c)
	}
}

// edge is the width an outermost stringer carries: half a bay or, where the
// treads hang over it, what a simple span with that overhang stands with on it,
// (s + o)2 / 2s.
func edge(spacing, overhang float64) float64 {
	return (spacing + overhang) * (spacing + overhang) / (2 * spacing)
}

// overhangAt is how far the treads reach past the leftmost or the rightmost
// stringer: over an open side alone.
func overhangAt(job *spec.Job, left bool) float64 {
	at := 0
	if !left {
		at = 1
	}
	if at < len(job.Sides) && job.Sides[at] == spec.Open {
		return job.Tread.Overhang.MM()
	}
	return 0
}

func (f *Flight) groupOf(position int) *Group {
	for k := range f.Stringers {
		for _, p := range f.Stringers[k].Positions {
			if p == position {
				return &f.Stringers[k]
			}
		}
	}
	return nil
}

// carry judges a stringer that spans.
func (w *Strength) carry(c *Carrier, f *Flight, stiffener *strength.Ply) {
	g, st := c.Group, &f.Spec.Stringer
	ply := strength.Ply{Thickness: g.Thickness, Depth: g.Throat, E: w.Wood.E * mpa, Fb: w.Wood.Fb * mpa, Fv: w.Wood.Fv * mpa}
	section := strength.Section{ply}
	if stiffener != nil {
		section = strength.Stiffened(ply, *stiffener)
		c.Stiffener = &section[1]
	}
	c.Member = &strength.Member{
		Section: section,
		Beam:    strength.Beam{At: Supports(g, st.Props), Slope: g.Pitch},
		Live:    w.Loads.Live * mpa * c.Tributary,
		Dead:    w.Loads.Dead * mpa * c.Tributary,
		Usual:   w.Loads.Usual * mpa * c.Tributary,
		Over:    float64(st.Deflection),
	}
	if w.Loads.PointLimit != nil {
		c.Member.Point = w.Loads.Point
	}
	c.Verdict = c.Member.Judge()
	c.Limit = c.Member.Longest()
	_, c.PointRatio = c.Member.WithPoint(w.Loads.Point)
	c.LeastThroat, c.LeastThroatOK = c.Member.LeastDepth(g.Throat)

	c.Allowed = w.Wood.FcPerp * mpa
	c.FootBearing = strength.Bearing(c.Foot(), g.Thickness, c.Seat)
	c.HeadBearing = strength.BearingLength(c.Head(), g.Thickness, c.Allowed)
}

// seat is what of the seat cut is left to stand on.
func seat(g *Group) float64 {
	length := g.SeatCut
	if g.Kicker != nil {
		length -= g.Kicker.Depth
	}
	if g.Ledger != nil && g.Clipped {
		length -= g.Ledger.Depth
	}
	return length
}

// Alike gathers the positions of stringers that are held alike and carry as
// much, left to right. Feet at different levels differ in nothing else but the
// seat, and in whether a post stands in it: of each set the first has the shortest.
func (s *Strength) Alike() [][]int {
	var sets [][]int
next:
	for i := range s.Stringers {
		c := &s.Stringers[i]
		for k, set := range sets {
			first := &s.Stringers[set[0]]
			if first.Support == c.Support && measure.SnapMM(first.Tributary) == measure.SnapMM(c.Tributary) && len(first.Reactions) == len(c.Reactions) {
				sets[k] = append(set, i)
				if c.Seat < first.Seat {
					last := len(sets[k]) - 1
					sets[k][0], sets[k][last] = i, set[0]
				}
				continue next
			}
		}
		sets = append(sets, []int{i})
	}
	return sets
}

// treads judges one board of a tread between two stringers.
func (w *Strength) treads(job *spec.Job, f *Flight) {
	t := &job.Tread
	switch {
	case !t.Wood.Stated():
		w.TreadsUnknown = "species and grade of the treads are not stated"
	case t.Wood.Values == nil && (t.Wood.Species == "" || t.Wood.Grade == ""):
		w.TreadsUnknown = "of the treads, species and grade are needed both"
	case f.Spacing == 0:
		w.TreadsUnknown = "the width of the stair is not stated, and with it how far the treads reach"
	}
	if w.TreadsUnknown != "" {
		return
	}
	depth, boards := f.leastTread(), 1
	size := lumber.Size{Thickness: t.Thickness}
	size.Width, _ = measure.FromMM(depth)
	if t.Boards != nil {
		size = t.Boards.Size
		if boards = t.Boards.Count; boards > 1 {
			depth = t.Boards.Width.MM()
		}
	}
	thickness := min(t.Thickness, size.Thickness).MM()
	wood, err := woodOf(job, t.Wood, size, true)
	if err != nil {
		w.TreadsUnknown = fmt.Sprintf("of the treads: %s", err)
		return
	}
	tread := strength.Tread{Depth: depth, Thickness: thickness, E: wood.E * mpa, Fb: wood.Fb * mpa, Fv: wood.Fv * mpa,
		Live: w.Loads.Live * mpa, Dead: w.Loads.Dead * mpa, Point: w.Loads.Point, Patch: patchSide, Over: TreadDeflection,
		Usual: w.Loads.Usual * mpa, UsualPoint: pointLoad}
	w.Treads = &Treads{Wood: wood, Boards: boards, Tread: tread, Span: f.Spacing,
		TreadVerdict: tread.Judge(f.Spacing), Longest: tread.Longest(longestTread)}
}

// leastTread is the depth of the narrowest tread board as ripped.
func (f *Flight) leastTread() float64 {
	least := 0.0
	for _, b := range f.Boards {
		if b.Kind == TreadBoard && (least == 0 || b.Depth < least) {
			least = b.Depth
		}
	}
	return least
}

// usualThroat is the code whose least throat is taken, beside what strength asks
// for, where the code in force has none: the lesser of the two that are published.
const usualThroat = "nbc-2020"

// LeastThroat is the throat an outline may not be cut below: the code's, or what
// its stringers need to hold, whichever is more. from says whose it is: a code's
// name, or strength; ok is false where neither is known.
func (s *Strength) LeastThroat(g *Group, code *rules.Code) (least float64, from string, ok bool) {
	l, has := code.Limit(rules.StringerThroatMin)
	from = code.Name
	if !has && s.spans(g) {
		usual, _ := rules.Lookup(usualThroat)
		l, has = usual.Limit(rules.StringerThroatMin)
		from = usualThroat
	}
	least, ok = l.Length.MM(), has
	for i := range s.Stringers {
		c := &s.Stringers[i]
		if !c.Spans() || c.Group != g {
			continue
		}
		need := g.Throat // nothing to spare
		if c.LeastThroatOK {
			need = c.LeastThroat
		}
		if !ok || need > least {
			least, from, ok = need, "strength", true
		}
	}
	return least, from, ok
}

// Reach is the longest clear span of a stringer like this one, of the same stock
// and under the same load, with another unit rise and run; ok is false where the
// notches would leave nothing of it.
func (c *Carrier) Reach(rise, run float64) (span float64, ok bool) {
	g := c.Group
	throat := g.Width - rise*run/math.Hypot(rise, run) - g.Saw.RootHole/2
	if !c.Spans() || throat <= 0 {
		return 0, false
	}
	m := *c.Member
	m.Beam.Slope = math.Atan2(rise, run)
	ply := m.Section[0]
	ply.Depth = throat
	m.Section = strength.Section{ply}
	if c.Stiffener != nil {
		m.Section = strength.Stiffened(ply, *c.Stiffener)
	}
	return m.Longest().Least(), true
}

// spans tells whether one of an outline's stringers does.
func (s *Strength) spans(g *Group) bool {
	for i := range s.Stringers {
		if c := &s.Stringers[i]; c.Spans() && c.Group == g {
			return true
		}
	}
	return false
}
