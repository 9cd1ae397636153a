package layout

import (
	"fmt"
	"math"

	"stepoff/layout/strength"
	"stepoff/spec"
	"stepoff/spec/lumber"
	"stepoff/spec/measure"
	"stepoff/spec/rules"
	"stepoff/spec/source"
)

// Loads taken where neither the job nor the code says: dwellings, and what
// stringers, treads and riser boards of 2x lumber weigh (common practice; DCA 6
// reckons with both). The point load is that of one tread on its patch.
//
// Source of 40 psf, and of 300 lb on 2 in by 2 in: IRC table R301.5 and its note
// on treads.
const (
	usualLive = 40 * measure.PSF
	usualDead = 10 * measure.PSF
	pointLoad = 300 * measure.PoundForce
	patchSide = 2 * 25.4
)

// TreadDeflection is what a tread may bend under its point load: span over this.
// Source: Wisconsin SPS 320-325, appendix B, basis of its table of treads.
const TreadDeflection = 288

// FlightLoads are the uniform loads a flight is held against, in pascals.
type FlightLoads struct {
	Live, Dead float64
	LiveFrom   string       // whose live load it is
	DeadFrom   string       // likewise
	Limit      *rules.Limit // the code's live load, where it was taken
	Times      *rules.Limit // the code's number of times the live load expected
	Point      float64      // N on a spot: of a tread, and where the code says so of the stringers
	PointLimit *rules.Limit // the code's, for treads and stringers; nil: it is a rule for treads alone
}

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

// Lumber is the wood of a member and what it may be stressed to.
type Lumber struct {
	Name   string // DF-L No.2
	Source string
	Basis  string
	lumber.Adjusted
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
	if len(f.Stringers) == 0 {
		return nil
	}
	w := &Strength{Loads: loads(s.Job, code)}
	w.stringers(s.Job, f)
	w.treads(s.Job, f)
	return w
}

func loads(job *spec.Job, code *rules.Code) FlightLoads {
	l := FlightLoads{Live: usualLive, LiveFrom: "no live load is known of " + code.Name + ": that of dwellings is taken", Dead: usualDead, DeadFrom: "usual", Point: pointLoad}
	if code.Name == rules.None {
		l.LiveFrom = "no code is named: that of dwellings is taken"
	}
	if limit, ok := code.Limit(rules.LiveLoadMin); ok {
		l.Live, l.LiveFrom, l.Limit = limit.Pascals, code.Name+" "+limit.Section, &limit
	}
	if job.Loads.Live != nil {
		l.Live, l.LiveFrom, l.Limit = *job.Loads.Live, "the job", nil
	}
	if job.Loads.Dead != nil {
		l.Dead, l.DeadFrom = *job.Loads.Dead, "the job"
	}
	if times, ok := code.Limit(rules.LiveLoadTimes); ok {
		l.Live *= float64(times.Count)
		l.Times = &times
	}
	if point, ok := code.Limit(rules.PointLoadMin); ok {
		l.Point = max(l.Point, point.Newtons)
		l.PointLimit = &point
	}
	return l
}

// woodOf finds the design values of a board and puts the job's conditions on
// them.
func woodOf(job *spec.Job, w spec.Wood, size lumber.Size, flat bool) (Lumber, error) {
	if w.Values != nil {
		return Lumber{Name: "own values", Source: "the job", Basis: "own values", Adjusted: w.Values.Own()}, nil
	}
	row, err := lumber.Published(w.Species, w.Grade, size)
	if err != nil {
		return Lumber{}, err
	}
	c := lumber.Conditions{Wet: job.Service == spec.Wet, Incised: job.Incised, Flat: flat, Size: size}
	return Lumber{Name: row.Species + " " + row.Grade, Source: row.Source, Basis: row.Basis, Adjusted: row.Adjust(c)}, nil
}

// mpa turns pascals into N/mm2.
const mpa = 1e-6

func (w *Strength) stringers(job *spec.Job, f *Flight) {
	st := &f.Spec.Stringer
	switch {
	case !st.Wood.Stated():
		w.Unknown = "species and grade of the stringers are not stated"
	case st.Wood.Values == nil && st.Wood.Species == "":
		w.Unknown = "the species of the stringers is not stated"
	case st.Wood.Values == nil && st.Wood.Grade == "":
		w.Unknown = "the grade of the stringers is not stated"
	case job.Width == nil:
		w.Unknown = "the width of the stair is not stated, and with it what each stringer carries"
	case st.Build != spec.Sawn:
		w.Unknown = "only sawn stringers are judged"
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
			c.Tributary = f.Spacing / 2
		}
		c.Seat = seat(c.Group)
		if c.Support == spec.Span {
			w.carry(&c, f, stiffener)
		}
		w.Stringers = append(w.Stringers, c)
	}
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
		Beam:    strength.Beam{At: supports(g.HeadX(), st.Props), Slope: g.Pitch},
		Live:    w.Loads.Live * mpa * c.Tributary,
		Dead:    w.Loads.Dead * mpa * c.Tributary,
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
// seat: of each set the first has the shortest.
func (s *Strength) Alike() [][]int {
	var sets [][]int
next:
	for i := range s.Stringers {
		c := &s.Stringers[i]
		for k, set := range sets {
			first := &s.Stringers[set[0]]
			if first.Support == c.Support && measure.SnapMM(first.Tributary) == measure.SnapMM(c.Tributary) {
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

// supports are the level places that hold a stringer up: the foot's front, the
// props, the head plumb cut.
func supports(headX float64, props []measure.Length) []float64 {
	at := []float64{0}
	for _, p := range props {
		if x := p.MM(); x < headX {
			at = append(at, x)
		}
	}
	return append(at, headX)
}

// SupportAt says what holds a stringer along its length: one word is for all.
func SupportAt(st *spec.Stringer, position int) spec.Support {
	switch {
	case len(st.Support) == 0:
		return spec.Span
	case position < len(st.Support):
		return st.Support[position]
	}
	return st.Support[len(st.Support)-1]
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
		Live: w.Loads.Live * mpa, Dead: w.Loads.Dead * mpa, Point: w.Loads.Point, Patch: patchSide, Over: TreadDeflection}
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

// LeastThroat is the throat an outline may not be cut below: the code's, or what
// its stringers need to hold, whichever is more. from says whose it is; ok is
// false where neither is known.
func (s *Strength) LeastThroat(g *Group, code *rules.Code) (least float64, from string, ok bool) {
	if l, has := code.Limit(rules.StringerThroatMin); has {
		least, from, ok = l.Length.MM(), code.Name, true
	}
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

// posts refuses props where no flight has a place for them: under the seat, or
// beyond the head.
func (s *Stairway) posts() (bad source.Mistakes) {
	flights := s.Flights()
	for i, p := range s.Job.Stringer.Props {
		x, stands, longest := p.MM(), false, 0.0
		for _, f := range flights {
			for k := range f.Stringers {
				g := &f.Stringers[k]
				stands = stands || x > g.SeatCut && x < g.HeadX()
				longest = math.Max(longest, g.HeadX())
			}
		}
		key := fmt.Sprintf("stringer.props[%d]", i)
		say := measure.Style{Units: s.Job.Units}.FormatMM
		switch {
		case stands || longest == 0:
		case x >= longest:
			bad = append(bad, s.Job.Mistake(key, "props: a post %s from the foot's front stands beyond the head, which is %s from it", say(x), say(longest)))
		default:
			bad = append(bad, s.Job.Mistake(key, "props: a post %s from the foot's front stands in the seat, where the stringer bears already", say(x)))
		}
	}
	return bad
}
