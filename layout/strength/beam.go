package strength

import "math"

// Beam is a straight member over supports, each of which holds it up and lets
// it slide along: its foot first, its head last, level places in order.
//
// Statics of a sloping member under a load w on its horizontal projection, of
// slope a, over a level span L. Its length is L / cos a, the load per length of
// it w cos a, of which w cos2 a is square to it.
//
//   - Moments come to those of a level beam: w cos2 a (L / cos a)2 = w L2.
//   - Shear square to the member is that of a level beam x cos a.
//   - Square to the member it sags by w cos2 a (L / cos a)4 / EI = w L4 / (EI
//     cos2 a) times the level beam's figure. It does not shorten, so that every
//     point moves square to it and the plumb part of that is x cos a: plumb, it
//     sags by what a level beam of span L would, / cos a.
//
// What pushes along it, up to w L sin a / 2 at its ends and nothing in the
// middle, stresses it little and is left out.
type Beam struct {
	At    []float64
	Slope float64
}

// Forces is what a uniform load does to a beam.
type Forces struct {
	Reactions []float64 // N upward, one a support
	Moments   []float64 // N mm at each support; those that stretch the upper edge are negative
	Moment    float64   // the greatest of either sign, N mm
	Shear     float64   // the greatest, square to the member, N
	// Sag is the greatest plumb deflection of either sign in mm x EI, SagSpan the
	// level span it is in, chosen so that Sag / SagSpan is the greatest.
	Sag, SagSpan float64

	beam Beam
	load float64
}

// Through is the beam running through over all its supports, loaded over its
// whole length with w N/mm.
func (b Beam) Through(w float64) Forces {
	f := Forces{beam: b, load: w, Moments: threeMoments(b.At, w)}
	return f.fill()
}

// Apart is the beam cut over every support, or loaded in one span only: each
// span a simple beam.
func (b Beam) Apart(w float64) Forces {
	f := Forces{beam: b, load: w, Moments: make([]float64, len(b.At))}
	return f.fill()
}

// threeMoments solves Clapeyron's equations for a uniform load and simple ends:
// over two neighbouring spans l and r, M1 l + 2 M2 (l + r) + M3 r = -w (l3 + r3)
// / 4. They are tridiagonal.
func threeMoments(at []float64, w float64) []float64 {
	n := len(at) - 1 // spans
	m := make([]float64, n+1)
	if n < 2 {
		return m
	}
	span := func(i int) float64 { return at[i+1] - at[i] }
	upper := make([]float64, n)
	for i := 1; i < n; i++ { // forward
		l, r := span(i-1), span(i)
		pivot := 2*(l+r) - l*upper[i-1]
		upper[i] = r / pivot
		m[i] = (-w*(l*l*l+r*r*r)/4 - l*m[i-1]) / pivot
	}
	for i := n - 1; i > 0; i-- { // back
		m[i] -= upper[i] * m[i+1]
	}
	return m
}

// fill works the rest out from the moments over the supports.
func (f Forces) fill() Forces {
	f.Reactions = make([]float64, len(f.beam.At))
	worst := 0.0
	for i := range len(f.beam.At) - 1 {
		l := f.beam.At[i+1] - f.beam.At[i]
		tilt := (f.Moments[i+1] - f.Moments[i]) / l
		low, high := f.load*l/2+tilt, f.load*l/2-tilt // what the span's ends stand with
		f.Reactions[i] += low
		f.Reactions[i+1] += high
		f.Shear = math.Max(f.Shear, math.Max(math.Abs(low), math.Abs(high))*math.Cos(f.beam.Slope))
		f.Moment = math.Max(f.Moment, math.Max(math.Abs(f.Moments[i]), math.Abs(f.Moments[i+1])))
		if f.load > 0 {
			if x := low / f.load; x > 0 && x < l { // no shear there: the moment's greatest
				f.Moment = math.Max(f.Moment, math.Abs(f.MomentAt(f.beam.At[i]+x)))
			}
		}
		for _, x := range f.level(i) {
			if sag := math.Abs(f.SagAt(x)); sag/l > worst {
				worst, f.Sag, f.SagSpan = sag/l, sag, l
			}
		}
	}
	return f
}

// MomentAt is the moment at a level place, N mm.
func (f Forces) MomentAt(x float64) float64 {
	i, x, l := f.within(x)
	return f.Moments[i]*(1-x/l) + f.Moments[i+1]*x/l + f.load*x*(l-x)/2
}

// SagAt is the plumb deflection at a level place, downward, in mm x EI.
func (f Forces) SagAt(x float64) float64 {
	i, x, l := f.within(x)
	y := f.load*x*(l*l*l-2*l*x*x+x*x*x)/24 +
		f.Moments[i]*x*(l-x)*(2*l-x)/(6*l) + f.Moments[i+1]*x*(l-x)*(l+x)/(6*l)
	return y / math.Cos(f.beam.Slope)
}

// slope is that of SagAt, but for its factor.
func (f Forces) slope(i int, x, l float64) float64 {
	return f.load*(l*l*l-6*l*x*x+4*x*x*x)/24 +
		f.Moments[i]*(2*l*l-6*l*x+3*x*x)/(6*l) + f.Moments[i+1]*(l*l-3*x*x)/(6*l)
}

// within finds the span a place lies in, and how far into it.
func (f Forces) within(x float64) (span int, into, length float64) {
	at := f.beam.At
	for span < len(at)-2 && x > at[span+1] {
		span++
	}
	return span, x - at[span], at[span+1] - at[span]
}

// pieces is how finely a span is looked through for places where it is level:
// the slope is a cubic, which turns twice at most.
const pieces = 16

// level returns the places of a span where the bent beam is as at rest: there it
// has sagged most.
func (f Forces) level(i int) []float64 {
	l := f.beam.At[i+1] - f.beam.At[i]
	var all []float64
	for k := range pieces {
		a, b := l*float64(k)/pieces, l*float64(k+1)/pieces
		ya, yb := f.slope(i, a, l), f.slope(i, b, l)
		if (ya > 0) == (yb > 0) {
			continue
		}
		for range 60 { // halved to the last bit
			if mid := (a + b) / 2; (f.slope(i, mid, l) > 0) == (ya > 0) {
				a = mid
			} else {
				b = mid
			}
		}
		all = append(all, f.beam.At[i]+(a+b)/2)
	}
	return all
}

// Shares is how much of its simple share of a load each of n stringers takes,
// evenly spaced, under treads that run through over all of them: the reactions
// of a continuous beam on props that do not give. Those at the edges are left
// at their half bay, and no share is taken for less than simple.
func Shares(n int) []float64 {
	shares := make([]float64, n)
	for i := range shares {
		shares[i] = 1
	}
	if n < 3 {
		return shares
	}
	at := make([]float64, n)
	for i := range at {
		at[i] = float64(i)
	}
	for i, r := range (Beam{At: at}).Through(1).Reactions[1 : n-1] {
		shares[i+1] = math.Max(1, r)
	}
	return shares
}
