package geom

// Path is a chain of edges, each beginning where the one before ends. A
// closed path ends where it began.
type Path struct {
	Edges  []Edge
	Closed bool
}

// Polyline returns the open path through the points.
func Polyline(pts ...Point) Path {
	var p Path
	for i := 1; i < len(pts); i++ {
		p.Edges = append(p.Edges, Line(pts[i-1], pts[i]))
	}
	return p
}

// Closed returns the closed path through the points, the last joined to the
// first.
func Closed(pts ...Point) Path {
	if len(pts) == 0 {
		return Path{}
	}
	p := Polyline(append(append([]Point(nil), pts...), pts[0])...)
	p.Closed = true
	return p
}

// Rect returns the box's outline as a closed path.
func Rect(b Box) Path {
	return Closed(b.Min, Pt(b.Max.X, b.Min.Y), b.Max, Pt(b.Min.X, b.Max.Y))
}

// Box returns the smallest upright rectangle round the path.
func (p Path) Box() Box {
	b := EmptyBox()
	for _, e := range p.Edges {
		b = b.Union(e.Box())
	}
	return b
}

// Length is the distance along the whole path.
func (p Path) Length() float64 {
	sum := 0.0
	for _, e := range p.Edges {
		sum += e.Length()
	}
	return sum
}
