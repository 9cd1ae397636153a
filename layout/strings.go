package layout

import (
	"fmt"
	"math"
	"strings"

	"stepoff/layout/stringer"
	"stepoff/spec"
	"stepoff/spec/measure"
	"stepoff/spec/source"
)

// String is one string of a flight whose treads stand between two: housed or
// cleated. Exactly one of Housed and Cleated is set, and Solid is its outline.
type String struct {
	Name string // stringer-left
	Hand stringer.Hand
	*stringer.Solid
	Housed    *stringer.Housed
	Cleated   *stringer.Cleated
	FootLevel measure.Length

	StockLength measure.Length // as a Group's
	HeadContact *float64       // likewise
}

// Left is the wood left square across below housings or cleats.
func (s *String) Left() float64 {
	if s.Housed != nil {
		return s.Housed.Left
	}
	return s.Cleated.Left
}

// solid lays out the two strings of a flight that keep both their edges.
func (f *Flight) solid(job *spec.Job) (bad source.Mistakes) {
	asked := &f.Spec.Stringer
	blamed := map[string]bool{}
	refuse := func(all stringer.Refusals) {
		for _, r := range all {
			if !blamed[r.Key+r.Message] {
				blamed[r.Key+r.Message] = true
				bad = append(bad, job.Mistake(saidKey(job, r.Key), "%s", r.Message))
			}
		}
	}
	refuse(f.notInSolid(job))
	if job.Width != nil {
		f.Spacing = (*job.Width + asked.Stock.Thickness).MM() // they stand outside the clear width
	}
	for at := range asked.Count {
		var foot measure.Length
		if len(asked.FootLevels) > 0 {
			foot = asked.FootLevels[at]
		}
		s := String{Hand: stringer.Hand(at), FootLevel: foot}
		s.Name = "stringer-" + s.Hand.String()
		var refused stringer.Refusals
		if asked.Build == spec.Housed {
			s.Housed, refused = f.housed(job, foot).Housed()
			if s.Housed != nil {
				s.Solid = &s.Housed.Solid
			}
		} else {
			s.Cleated, refused = f.cleated(job, foot).Cleated()
			if s.Cleated != nil {
				s.Solid = &s.Cleated.Solid
			}
		}
		refuse(refused)
		if s.Solid == nil {
			continue
		}
		s.StockLength = stockLength(s.LeastBlank, job.Units)
		top := f.EndLevel - f.StartLevel - s.HeadLevelY()
		s.HeadContact = f.contact(job, top, top+s.HeadCut)
		f.Strings = append(f.Strings, s)
	}
	return bad
}

// saidKey is the key a refusal stands at: where the job leaves a housing's or
// cleat's key to its default, that is `build`.
func saidKey(job *spec.Job, key string) string {
	group, _, _ := strings.Cut(key, ".")
	if (group == "housing" || group == "cleats") && !job.Says(key) {
		return "stringer.build"
	}
	return key
}

// notInSolid refuses what only sawn stringers have.
func (f *Flight) notInSolid(job *spec.Job) (bad stringer.Refusals) {
	st := &f.Spec.Stringer
	no := func(set bool, key, what string) {
		if set {
			bad = append(bad, stringer.Refusal{Key: key, Message: what + " is for sawn stringers; leave it out, or write build: sawn"})
		}
	}
	no(st.Kicker != nil, "stringer.kicker", "a notch over a kicker")
	no(st.Ledger != nil, "stringer.ledger", "a notch over a ledger")
	if job.Tread.Overhang > 0 {
		bad = append(bad, stringer.Refusal{Key: "tread.overhang", Message: "treads stand between strings that are " + st.Build.String() + " and overhang nothing; leave it out"})
	}
	return bad
}

// solidRequest gathers what housed and cleated strings have alike.
func (f *Flight) solidRequest(job *spec.Job, foot, margin, footPlumb, headLevel measure.Length) stringer.SolidRequest {
	r := stringer.SolidRequest{
		Request:    f.request(job, foot),
		RiserBoard: job.Riser.Thickness.MM(),
		OnTread:    job.Riser.Joint == spec.On,
		Nosing:     job.Tread.Nosing.MM(),
		Margin:     margin.MM(), FootPlumb: footPlumb.MM(), HeadLevel: headLevel.MM(),
	}
	if f.Hung() && f.Spec.Stringer.TopRiser && !job.Riser.Open {
		r.TopRiser = r.HeadX() + f.Spec.Stringer.BehindHead.MM()
	}
	return r
}

func (f *Flight) housed(job *spec.Job, foot measure.Length) stringer.HousedRequest {
	h := job.Housing
	r := stringer.HousedRequest{
		SolidRequest: f.solidRequest(job, foot, h.Margin, h.FootPlumb, h.HeadLevel),
		HousingSizes: stringer.HousingSizes{
			Depth: h.Depth.MM(), WedgeTaper: h.WedgeTaper, Undercut: h.Undercut,
			Cutter: h.Cutter.MM(), Bush: h.Bush.MM(),
			Round: math.Min(job.Tread.Thickness.MM()/2, job.Tread.Nosing.MM()),
		},
	}
	if h.Round != nil {
		r.Round = h.Round.MM()
	}
	return r
}

func (f *Flight) cleated(job *spec.Job, foot measure.Length) stringer.CleatedRequest {
	c := job.Cleats
	return stringer.CleatedRequest{
		SolidRequest: f.solidRequest(job, foot, c.Margin, c.FootPlumb, c.HeadLevel),
		CleatSizes:   stringer.CleatSizes{Height: c.Height.MM(), Out: c.Thickness.MM(), Setback: c.Setback.MM(), Screws: c.Screws},
	}
}

// stringsApart refuses a half turn whose flights' strings would stand in each other:
// they stand outside the clear width, in the gap.
func (s *Stairway) stringsApart() (bad source.Mistakes) {
	for i, e := range s.Elements {
		l, ok := e.(*Landing)
		if !ok || l.Spec.Angle != 180 {
			continue
		}
		var need measure.Length
		for _, next := range [...]int{i - 1, i + 1} {
			if f, ok := s.Elements[next].(*Flight); ok && len(f.Strings) > 0 {
				need += f.Spec.Stringer.Stock.Thickness
			}
		}
		if l.Spec.Gap < need {
			say := measure.Style{Units: s.Job.Units}.Format
			key := fmt.Sprintf("stairway[%d].landing.gap", i)
			bad = append(bad, s.Job.Mistake(key, "gap: the strings of both flights stand in it, outside the clear width, and take %s; it is %s", say(need), say(l.Spec.Gap)))
		}
	}
	return bad
}

// HeadX is where the flight's head plumb cut stands, from its first riser line;
// the end of the run where nothing is cut.
func (f *Flight) HeadX() float64 {
	switch {
	case len(f.Stringers) > 0:
		return f.Stringers[0].HeadX()
	case len(f.Strings) > 0:
		return f.Strings[0].HeadX()
	}
	return f.TotalRun
}

// LastTread is the last tread's run on the stringers, to the head plumb cut.
func (f *Flight) LastTread() float64 {
	if len(f.Strings) > 0 {
		return f.Strings[0].LastTread
	}
	return f.Stringers[0].LastTread
}

// Seat is how far from its first riser line what carries the flight bears on what
// it stands on, at most; ok is false where nothing is cut.
func (f *Flight) Seat() (x float64, ok bool) {
	for _, g := range f.Stringers {
		x, ok = max(x, g.SeatCut), true
	}
	for _, s := range f.Strings {
		x, ok = max(x, s.SeatEnd()), true
	}
	return x, ok
}

// HasStringers tells whether anything is cut for the flight: not for a single riser.
func (f *Flight) HasStringers() bool { return len(f.Stringers)+len(f.Strings) > 0 }
