package geom

import "math"

// Cubic is a Bézier curve of the third degree.
type Cubic struct{ From, C1, C2, To Point }

// maxCubicSweep is the largest piece of a circle drawn as one cubic: 30
// degrees. With handles of 4/3*tan(a/4) the curve then leaves the circle by
// less than 4e-7 of its radius, 0.0025 mm at 6 m.
const maxCubicSweep = math.Pi / 6

// Cubics returns the arc as Bézier curves of 30 degrees or less each, evenly
// cut. A straight edge has none.
func (e Edge) Cubics() []Cubic {
	if !e.IsArc() {
		return nil
	}
	n := max(1, int(math.Ceil(math.Abs(e.Sweep)/maxCubicSweep-1e-9)))
	step := e.Sweep / float64(n)
	handle := 4.0 / 3 * math.Tan(step/4) // of the radius; negative when clockwise
	start := e.Start()
	out := make([]Cubic, n)
	from := e.From
	sin0, cos0 := math.Sincos(start)
	for i := range out {
		sin1, cos1 := math.Sincos(start + float64(i+1)*step)
		to := Pt(e.Centre.X+e.Radius*cos1, e.Centre.Y+e.Radius*sin1)
		if i == n-1 {
			to = e.To
		}
		h := e.Radius * handle
		out[i] = Cubic{
			From: from,
			C1:   Pt(from.X-h*sin0, from.Y+h*cos0),
			C2:   Pt(to.X+h*sin1, to.Y-h*cos1),
			To:   to,
		}
		from, sin0, cos0 = to, sin1, cos1
	}
	return out
}
