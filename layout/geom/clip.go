package geom

import (
	"math"
	"slices"
)

// Clip returns what of the edge lies in the box, its sides included, in the
// edge's own direction. An edge that lies wholly inside comes back as it is,
// bit for bit. Sides at infinity clip nothing.
func (e Edge) Clip(b Box) []Edge {
	var out []Edge
	for _, w := range e.Within(b) {
		if w == [2]float64{0, 1} {
			return []Edge{e}
		}
		out = append(out, e.Part(w[0], w[1]))
	}
	return out
}

// Within returns which parts of the edge lie in the box, its sides included:
// from and to, as fractions of the edge's length, in order.
func (e Edge) Within(b Box) [][2]float64 {
	switch box := e.Box(); {
	case box.Min.X >= b.Min.X && box.Max.X <= b.Max.X && box.Min.Y >= b.Min.Y && box.Max.Y <= b.Max.Y:
		return [][2]float64{{0, 1}}
	case box.Min.X > b.Max.X || box.Max.X < b.Min.X || box.Min.Y > b.Max.Y || box.Max.Y < b.Min.Y:
		return nil
	case e.IsArc():
		return e.arcWithin(b)
	}
	f0, f1 := 0.0, 1.0
	for _, s := range [...]struct{ from, d, min, max float64 }{
		{e.From.X, e.To.X - e.From.X, b.Min.X, b.Max.X},
		{e.From.Y, e.To.Y - e.From.Y, b.Min.Y, b.Max.Y},
	} {
		if s.d == 0 {
			continue // not outside: the boxes meet
		}
		in, out := (s.min-s.from)/s.d, (s.max-s.from)/s.d
		if s.d < 0 {
			in, out = out, in
		}
		f0, f1 = math.Max(f0, in), math.Min(f1, out)
	}
	if f0 > f1 {
		return nil
	}
	return [][2]float64{{f0, f1}}
}

// Part returns the piece of the edge from the fraction f0 to the fraction f1
// of its length.
func (e Edge) Part(f0, f1 float64) Edge {
	p := e
	p.From, p.To = e.At(f0), e.At(f1)
	p.Sweep = e.Sweep * (f1 - f0)
	return p
}

// arcWithin cuts the arc where its circle crosses the box's sides and keeps
// the pieces whose middles are inside.
func (e Edge) arcWithin(b Box) [][2]float64 {
	cuts := []float64{0, 1}
	start := e.Start()
	cross := func(angle float64) {
		// The fraction of the sweep at which the angle is reached, if it is.
		turn := math.Mod(angle-start, 2*math.Pi)
		if turn*e.Sweep < 0 {
			turn += math.Copysign(2*math.Pi, e.Sweep)
		}
		if f := turn / e.Sweep; f > 0 && f < 1 {
			cuts = append(cuts, f)
		}
	}
	for _, x := range [...]float64{b.Min.X, b.Max.X} {
		if c := (x - e.Centre.X) / e.Radius; c > -1 && c < 1 {
			a := math.Acos(c)
			cross(a)
			cross(-a)
		}
	}
	for _, y := range [...]float64{b.Min.Y, b.Max.Y} {
		if s := (y - e.Centre.Y) / e.Radius; s > -1 && s < 1 {
			a := math.Asin(s)
			cross(a)
			cross(math.Pi - a)
		}
	}
	slices.Sort(cuts)
	var out [][2]float64
	for i := 1; i < len(cuts); i++ {
		f0, f1 := cuts[i-1], cuts[i]
		if f0 == f1 || !b.Contains(e.At((f0+f1)/2), 0) {
			continue
		}
		if n := len(out); n > 0 && out[n-1][1] == f0 {
			out[n-1][1] = f1
			continue
		}
		out = append(out, [2]float64{f0, f1})
	}
	return out
}
