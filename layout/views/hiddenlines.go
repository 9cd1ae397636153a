package views

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"stepoff/layout/geom"
)

// solid is a body by its faces: plane polygons, their corners counter-clockwise
// seen from outside.
type solid [][]r3.Vec

// prism returns the body that a plane polygon sweeps when it moves by a step.
func prism(base []r3.Vec, by r3.Vec) solid {
	if r3.Dot(normal(base), by) < 0 {
		base = slices.Clone(base)
		slices.Reverse(base)
	}
	n := len(base)
	far, near := make([]r3.Vec, n), slices.Clone(base)
	for i, p := range base {
		far[i] = r3.Add(p, by)
	}
	slices.Reverse(near)
	s := solid{near, far}
	for i, p := range base {
		j := (i + 1) % n
		s = append(s, []r3.Vec{p, base[j], far[j], far[i]})
	}
	return s
}

// normal is square to a plane polygon, toward whoever sees its corners
// counter-clockwise; it is as long as twice the polygon's area.
func normal(face []r3.Vec) r3.Vec {
	var n r3.Vec
	for i, p := range face {
		n = r3.Add(n, r3.Cross(p, face[(i+1)%len(face)]))
	}
	return n
}

// eye looks at solids along one direction, all lines of sight parallel. A point
// seen is its place in the picture (X right, Y up) and how near it is (Z).
type eye struct{ right, up, toward r3.Vec }

// isometricEye looks down on the three axes alike, from the plan angle given
// (radians): a point of the floor seen from there. Lengths along the axes stay
// true, as ISO 5456-3 has isometric pictures drawn, so that the picture is
// sqrt(3/2) as large as its projection.
func isometricEye(from float64) eye {
	sin, cos := math.Sincos(from)
	down := math.Atan(1 / math.Sqrt2) // of the line of sight below level
	sd, cd := math.Sincos(down)
	large := math.Sqrt(1.5)
	return eye{
		right:  r3.Scale(large, r3.Vec{X: -sin, Y: cos}),
		up:     r3.Scale(large, r3.Vec{X: -sd * cos, Y: -sd * sin, Z: cd}),
		toward: r3.Vec{X: cd * cos, Y: cd * sin, Z: sd},
	}
}

func (e eye) see(p r3.Vec) r3.Vec {
	return r3.Vec{X: r3.Dot(p, e.right), Y: r3.Dot(p, e.up), Z: r3.Dot(p, e.toward)}
}

// Tolerances of what hides what, in millimetres: solids that touch do so up to
// rounding, and no piece of a line shorter than a pencil point is drawn.
const (
	behindBy   = 0.01
	leastPiece = 0.05
)

// seenFace is a face turned to the eye.
type seenFace struct {
	corners []geom.Point
	box     geom.Box
	nearest float64
	// How near the face's plane is at a place of the picture.
	at, slopeX, slopeY float64
}

func (f *seenFace) near(p geom.Point) float64 { return f.at + f.slopeX*p.X + f.slopeY*p.Y }

// smooth is the most that two faces of a solid bend away from each other, as a
// cosine, where together they stand for a curved face: no edge is seen between
// them. Curved bodies are broken so that their faces bend by less, and no body
// with an edge as blunt is drawn.
var smooth = math.Cos(12 * math.Pi / 180)

// lines returns every edge of the solids that is seen, or the part of it.
func (e eye) lines(solids []solid) []geom.Edge {
	var faces []seenFace
	var edges [][2]r3.Vec
	for _, s := range solids {
		normals := map[[2]r3.Vec]r3.Vec{} // of the face turned to the eye that has the edge that way round
		flush := map[[2]r3.Vec]bool{}     // edges between faces that stand for one
		first := len(edges)
		for _, face := range s {
			corners := make([]r3.Vec, len(face))
			f := seenFace{box: geom.EmptyBox(), nearest: math.Inf(-1)}
			for i, p := range face {
				corners[i] = e.see(p)
				f.box = f.box.Include(flat(corners[i]))
				f.nearest = math.Max(f.nearest, corners[i].Z)
			}
			n := r3.Unit(normal(corners))
			if !(n.Z > 1e-9) { // turned away, or edge-on
				continue
			}
			for _, p := range corners {
				f.corners = append(f.corners, flat(p))
			}
			f.slopeX, f.slopeY = -n.X/n.Z, -n.Y/n.Z
			f.at = corners[0].Z - f.slopeX*corners[0].X - f.slopeY*corners[0].Y
			faces = append(faces, f)
			for i, p := range corners {
				q := corners[(i+1)%len(corners)]
				// The neighbouring face has the same edge the other way round.
				if other, ok := normals[[2]r3.Vec{q, p}]; !ok {
					edges = append(edges, [2]r3.Vec{p, q})
				} else if r3.Dot(n, other) > smooth {
					flush[[2]r3.Vec{q, p}] = true
				}
				normals[[2]r3.Vec{p, q}] = n
			}
		}
		edges = append(edges[:first], slices.DeleteFunc(edges[first:], func(e [2]r3.Vec) bool { return flush[e] })...)
	}
	var out []geom.Edge
	for _, edge := range edges {
		out = append(out, seen(edge[0], edge[1], faces)...)
	}
	return out
}

func flat(p r3.Vec) geom.Point { return geom.Pt(p.X, p.Y) }

// seen returns what no face hides of the line from a to b.
func seen(a, b r3.Vec, faces []seenFace) []geom.Edge {
	line := geom.Line(flat(a), flat(b))
	length := line.Length()
	if length < leastPiece {
		return nil
	}
	box, farthest := line.Box(), math.Min(a.Z, b.Z)
	var hidden [][2]float64
	for i := range faces {
		if f := &faces[i]; f.nearest > farthest+behindBy && f.box.Meets(box) {
			hidden = append(hidden, f.hides(line, a.Z, b.Z)...)
		}
	}
	slices.SortFunc(hidden, func(p, q [2]float64) int { return cmp.Compare(p[0], q[0]) })
	var out []geom.Edge
	at := 0.0
	keep := func(to float64) {
		if (to-at)*length >= leastPiece {
			out = append(out, geom.Line(line.At(at), line.At(to)))
		}
	}
	for _, h := range hidden {
		keep(h[0])
		at = math.Max(at, h[1])
	}
	keep(1)
	return out
}

// hides returns which parts of a line the face hides, as fractions of it; za
// and zb are how near the line's ends are.
func (f *seenFace) hides(line geom.Edge, za, zb float64) [][2]float64 {
	cuts := []float64{0, 1}
	way := r2.Sub(line.To, line.From)
	for i, p := range f.corners {
		q := f.corners[(i+1)%len(f.corners)]
		side := r2.Sub(q, p)
		cross := r2.Cross(way, side)
		if math.Abs(cross) < 1e-12*r2.Norm(way)*r2.Norm(side) {
			continue // alongside
		}
		if t := r2.Cross(r2.Sub(p, line.From), side) / cross; t > 0 && t < 1 {
			cuts = append(cuts, t)
		}
	}
	// How far the line is behind the face's plane, at its two ends.
	behind0, behind1 := f.near(line.From)-za, f.near(line.To)-zb
	if (behind0 > behindBy) != (behind1 > behindBy) {
		cuts = append(cuts, (behindBy-behind0)/(behind1-behind0))
	}
	slices.Sort(cuts)
	var out [][2]float64
	for i := 1; i < len(cuts); i++ {
		t := (cuts[i-1] + cuts[i]) / 2
		if behind0+t*(behind1-behind0) > behindBy && f.covers(line.At(t)) {
			out = append(out, [2]float64{cuts[i-1], cuts[i]})
		}
	}
	return out
}

// covers tells whether a place of the picture lies within the face, and not on
// its outline, where a line behind would run along one that is drawn.
func (f *seenFace) covers(p geom.Point) bool {
	for i, a := range f.corners {
		if geom.Distance(p, a, f.corners[(i+1)%len(f.corners)]) < behindBy {
			return false
		}
	}
	return inside(p, f.corners)
}

// inside tells whether a place lies within the closed polygon through the points.
func inside(p geom.Point, ps []geom.Point) bool {
	in := false
	for i, a := range ps {
		b := ps[(i+1)%len(ps)]
		if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(p.Y-a.Y)/(b.Y-a.Y)*(b.X-a.X) {
			in = !in
		}
	}
	return in
}
