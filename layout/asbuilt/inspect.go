package asbuilt

import (
	"stepoff/layout/check"
	"stepoff/spec"
	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

// Inspection is a stair as measured, judged by a code.
type Inspection struct {
	Stair     *spec.AsBuilt
	Code      *rules.Code
	TotalRise measure.Length // the risers together
	MeanRise  float64        // millimetres

	Steps   []Step // one a riser, from the bottom up
	Risers  Spread
	Treads  *Spread // nil: the flight has one riser
	Nosings *Spread // nil: not measured
	Throat  *Throat // nil: not measured, nor enough to work it out

	Findings []check.Finding
	Remedy   Remedy
}

// Inspect judges a measured stair. The style prints the lengths in texts. The
// error is source.Mistakes where measurements of the stringer cannot all be
// true.
func Inspect(a *spec.AsBuilt, code *rules.Code, st measure.Style) (*Inspection, error) {
	in := &Inspection{
		Stair: a, Code: code,
		TotalRise: sum(a.Risers),
		Risers:    *spreadOf(a.Risers),
		Treads:    spreadOf(a.Treads),
		Nosings:   spreadOf(a.Nosings),
	}
	in.MeanRise = in.TotalRise.PartMM(1, len(a.Risers))
	var err error
	if in.Throat, err = throat(a, st); err != nil {
		return nil, err
	}
	in.Findings = check.Judge(in.facts(st), code)
	in.Remedy = in.remedy(st)
	in.Steps = in.steps(st)
	return in, nil
}

// Fails tells whether the stair breaks a limit of the code.
func (in *Inspection) Fails() bool { return check.Fails(in.Findings) }

// facts are what the stair is judged by. Nobody plans a stair that stands: its
// risers are shared as they are.
func (in *Inspection) facts(st measure.Style) check.Facts {
	a := in.Stair
	n := len(a.Risers)
	f := check.Facts{
		Style: st, Risers: check.Wholes(a.Risers), TotalRise: &in.TotalRise, RisersInLine: &n,
		Runs: a.Treads, Nosings: a.Nosings,
		Width: a.Width, Headroom: a.Headroom, Handrail: a.HandrailHeight,
	}
	if s := a.Stringer; s != nil {
		one := check.Stringer{}
		if s.Width != nil {
			one.Width = *s.Width
		}
		if s.Thickness != nil {
			one.Thickness = *s.Thickness
		}
		if in.Throat != nil {
			one.Throat = &in.Throat.Left
		}
		f.Stringers = []check.Stringer{one}
	}
	return f
}

// Spread is how far a flight's risers, treads or nosings are apart.
type Spread struct {
	Least, Most Numbered // the lowest of equals
	Apart       measure.Length
	Neighbours  *Neighbours // those that differ most; nil: there is only one
}

// Numbered is a riser, a tread or a nosing, counted from 1 from the bottom up.
type Numbered struct {
	Number int
	Length measure.Length
}

// Neighbours are two that follow each other: Lower and the one above it.
type Neighbours struct {
	Lower int
	Apart measure.Length
}

// spreadOf is nil for no lengths.
func spreadOf(lengths []measure.Length) *Spread {
	if len(lengths) == 0 {
		return nil
	}
	s := &Spread{Least: Numbered{1, lengths[0]}, Most: Numbered{1, lengths[0]}}
	for i, l := range lengths {
		if l < s.Least.Length {
			s.Least = Numbered{i + 1, l}
		}
		if l > s.Most.Length {
			s.Most = Numbered{i + 1, l}
		}
		if i == 0 {
			continue
		}
		if apart := (l - lengths[i-1]).Abs(); s.Neighbours == nil || apart > s.Neighbours.Apart {
			s.Neighbours = &Neighbours{i, apart}
		}
	}
	s.Apart = s.Most.Length - s.Least.Length
	return s
}

func sum(lengths []measure.Length) measure.Length {
	total := measure.Length(0)
	for _, l := range lengths {
		total += l
	}
	return total
}
