package asbuilt

import (
	"math"

	"stepoff/spec"
	"stepoff/spec/measure"
	"stepoff/spec/source"
)

// Throat is the wood left under the notches of a stringer that stands.
// Millimetres.
type Throat struct {
	Left     float64
	Measured bool // as it is; otherwise worked out, as below

	Width      float64 // of the board
	NotchDepth float64
	// Riser and Tread are what the overcuts along the riser line and along the
	// tread line take. Both end under the same root: the greater counts.
	Riser, Tread float64
	Searched     bool // overcuts were looked for
}

// throat returns nil where too little was measured.
//
// Worked out, it is the board's width less the notch depth, less what the
// overcuts take square across: e cos theta past the root along the riser line, e
// sin theta along the tread line.
func throat(a *spec.AsBuilt, st measure.Style) (*Throat, error) {
	s := a.Stringer
	switch {
	case s == nil:
		return nil, nil
	case s.Throat != nil:
		return &Throat{Left: s.Throat.MM(), Measured: true}, nil
	case s.Width == nil || len(a.Treads) == 0 && s.UnitRun == nil:
		return nil, nil
	}
	rise, run := notch(a)
	step := math.Hypot(rise, run)
	t := &Throat{Width: s.Width.MM(), NotchDepth: rise * run / step}
	if o := s.Overcuts; o != nil {
		t.Searched = true
		t.Riser, t.Tread = o.Riser.MM()*run/step, o.Tread.MM()*rise/step
	}
	t.Left = t.Width - t.NotchDepth - math.Max(t.Riser, t.Tread)
	if measure.SnapMM(t.Left) > 0 {
		return t, nil
	}
	var bad source.Mistakes
	if t.NotchDepth >= t.Width {
		bad = append(bad, a.Mistake("stringer.width", "width: notches of %s by %s are %s deep and leave nothing of a board %s wide: one of the three is not so",
			st.InchesMM(rise), st.InchesMM(run), st.InchesMM(t.NotchDepth), st.Inches(*s.Width)))
	} else {
		bad = append(bad, a.Mistake("stringer.overcuts", "overcuts: they take %s of the %s under the notches: a stringer sawn through does not stand",
			st.InchesMM(math.Max(t.Riser, t.Tread)), st.InchesMM(t.Width-t.NotchDepth)))
	}
	return nil, bad.Err()
}

// notch is the rise and run the stringer was cut to: as measured on it, else the
// means of the stair.
func notch(a *spec.AsBuilt) (rise, run float64) {
	if s := a.Stringer; s.UnitRise != nil {
		rise = s.UnitRise.MM()
	} else {
		rise = sum(a.Risers).PartMM(1, len(a.Risers))
	}
	if s := a.Stringer; s.UnitRun != nil {
		run = s.UnitRun.MM()
	} else {
		run = sum(a.Treads).PartMM(1, len(a.Treads))
	}
	return rise, run
}

// SectionLeft is what overcuts leave of the bending strength of the net section
// under the notches: its modulus goes with the square of the throat.
func (t *Throat) SectionLeft() float64 {
	left := t.Left / (t.Left + math.Max(t.Riser, t.Tread))
	return left * left
}
