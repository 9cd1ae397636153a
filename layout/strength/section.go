package strength

import "math"

// Ply is one rectangle of a cross-section, standing on edge.
type Ply struct {
	Thickness, Depth float64
	Top              float64 // its upper edge below a datum shared by all plies
	E                float64 // modulus of elasticity
	Fb, Fv           float64 // what it may be stressed to in bending and in shear
}

func (p Ply) area() float64   { return p.Thickness * p.Depth }
func (p Ply) centre() float64 { return p.Top + p.Depth/2 }
func (p Ply) own() float64    { return p.Thickness * p.Depth * p.Depth * p.Depth / 12 }

// Section is plies fastened side by side so that they bend as one: each is as
// strained as its place makes it, and as stressed as its E makes it of that
// (the transformed section).
type Section []Ply

// Neutral is how far below the datum the section is neither stretched nor
// shortened: the centre of E x area.
func (s Section) Neutral() float64 {
	ea, eay := 0.0, 0.0
	for _, p := range s {
		ea += p.E * p.area()
		eay += p.E * p.area() * p.centre()
	}
	return eay / ea
}

// EI is the bending stiffness about the neutral axis, N mm2.
func (s Section) EI() float64 {
	sum, axis := 0.0, s.Neutral()
	for _, p := range s {
		d := p.centre() - axis
		sum += p.E * (p.own() + p.area()*d*d)
	}
	return sum
}

// extreme is how far a ply's farther edge lies from the neutral axis.
func (s Section) extreme(p Ply) float64 {
	axis := s.Neutral()
	return math.Max(math.Abs(p.Top-axis), math.Abs(p.Top+p.Depth-axis))
}

// Bending returns the stress in the ply that a moment brings nearest to what it
// may be stressed to, what that is, and how near: 1 is all of it.
func (s Section) Bending(moment float64) (stress, allowed, ratio float64) {
	ei := s.EI()
	for _, p := range s {
		if f := moment * p.E * s.extreme(p) / ei; f/p.Fb >= ratio {
			stress, allowed, ratio = f, p.Fb, f/p.Fb
		}
	}
	return stress, allowed, ratio
}

// Shear is Bending for a shear force square to the member: V Q / (I b), looked
// for where it can be greatest, at the neutral axis and at every ply's edges.
// One rectangle gives 3V/(2bd).
func (s Section) Shear(force float64) (stress, allowed, ratio float64) {
	axis := s.Neutral()
	levels := []float64{axis}
	for _, p := range s {
		levels = append(levels, p.Top, p.Top+p.Depth)
	}
	ei := s.EI()
	for _, y := range levels {
		// Just above and just below, where the width steps.
		for _, side := range [...]float64{-1, 1} {
			wide, weak := 0.0, math.Inf(1) // E x width there, the least allowed
			beyond := 0.0                  // E x first moment of what lies beyond the level
			for _, p := range s {
				top, bottom := p.Top, p.Top+p.Depth
				if side < 0 && top < y && y <= bottom || side > 0 && top <= y && y < bottom {
					wide += p.E * p.Thickness
					weak = math.Min(weak, p.Fv/p.E)
				}
				if from := math.Max(top, y); from < bottom {
					beyond += p.E * p.Thickness * (bottom - from) * ((bottom+from)/2 - axis)
				}
			}
			if wide == 0 {
				continue
			}
			// Stress in a ply is its E times the shear flow over E x width: the ply
			// with the least Fv for its E decides.
			strain := force * math.Abs(beyond) / (ei * wide)
			if r := strain / weak; r >= ratio {
				ratio = r
				for _, p := range s {
					if p.Fv/p.E == weak {
						stress, allowed = strain*p.E, p.Fv
					}
				}
			}
		}
	}
	return stress, allowed, ratio
}

// Connection is what fastens a ply to the others has to carry, N/mm along it,
// where the section is under a shear force and a load w square to it: along the
// member the shear flow V Q / I, across it the share of the load that the ply
// takes by its stiffness; and both together.
func (s Section) Connection(ply int, force, w float64) (along, across, both float64) {
	p, ei := s[ply], s.EI()
	d := p.centre() - s.Neutral()
	along = math.Abs(force * p.E * p.area() * d / ei)
	across = w * p.E * (p.own() + p.area()*d*d) / ei
	return along, across, math.Hypot(along, across)
}

// Stiffened is a stringer's throat with a strongback at its side. The strongback
// stands with its lower edge at the stringer's, or with its upper edge at the
// roots where it is wider than the throat: above the roots it would be in the
// treads' way. The datum is the line of the roots.
func Stiffened(stringer, strongback Ply) Section {
	stringer.Top = 0
	strongback.Top = math.Max(0, stringer.Depth-strongback.Depth)
	return Section{stringer, strongback}
}
