package turn

import (
	"math"

	"stepoff/layout/geom"
)

// WallHousing says how the edges of a housed string run. Millimetres.
type WallHousing struct {
	RunBelow, RunAbove float64 // unit runs of the flights below and above; 0: one of a single riser
	Over               float64 // from the nosings, square, to the upper edge
	Width              float64 // of the string
	Radius             float64 // of each change of pitch; 0: HousedRadius
}

// HousedRadius rounds off the changes of pitch of a housed string where nothing
// else is asked: 12 in. One radius for all of them is common practice; how great it
// is is the shop's to choose.
const HousedRadius = 12 * 25.4

// HousedString is a housed string along one face of winders, unrolled as a
// WallString is, with a unit run of the flight it comes from or goes on to.
type HousedString struct {
	Wall         WinderWall
	Upper, Lower geom.Path // its edges, going up
	// Pitch and FlightPitch are of the winders and of the flight, in degrees;
	// FlightPitch is 0 where there is none to meet.
	Pitch, FlightPitch float64
	Radius             float64 // of both edges: as asked, or as much as there is room for; 0: no change of pitch
	// Clear is the least from a nosing on this face to the upper edge: a little less
	// than was asked where the edge is rounded off over one; less again, below 0 even,
	// where a step is less deep along this face than the flight's, so that its nosing
	// stands over the flight's line.
	Clear float64
	// Needs is the least width that holds the treads: from the upper edge, square, to
	// the lowest corner of a tread's underside. Wedges take more.
	Needs float64
}

// slope is a straight line of the unrolled string.
type slope struct{ x, y, rate float64 }

func (s slope) at(x float64) geom.Point { return geom.Pt(x, s.y+s.rate*(x-s.x)) }

// raised is the line moved up, square to itself.
func (s slope) raised(by float64) slope { s.y += by * math.Hypot(1, s.rate); return s }

// HousedStrings are the strings of WallStrings where they are housed.
//
// Steps of winders differ, so their nosings lie on no straight line. The edge is
// straight all the same: parallel to the line from the turn's first nosing to the
// last, round the corner, so that both strings meet there, and raised until no
// nosing stands over it; then to the flights' own nosing lines, with one radius
// where they meet. At a newel so near that its faces do not hold the first and the
// last nosing, there is none inside.
func (l *Laid) HousedStrings(h WinderHeights, a WallHousing) (strings []HousedString) {
	if a.Radius == 0 {
		a.Radius = HousedRadius
	}
	for _, e := range [...]windersEdge{l.outsideEdge(), l.insideEdge()} {
		corner, at := e.unroll(l.Risers)
		var tips []geom.Point
		for k, s := range l.Nosings {
			if from, on := e.fromCorner(s); on {
				tips = append(tips, geom.Pt(corner+from, h.Finished(k)))
			}
		}
		n := len(l.Nosings) - 1
		if len(tips) <= n || tips[0].X > corner-leastWallString || tips[n].X < corner+leastWallString {
			continue
		}
		turn := slope{tips[0].X, tips[0].Y, (tips[n].Y - tips[0].Y) / (tips[n].X - tips[0].X)}
		stands := 0.0
		for _, p := range tips {
			stands = max(stands, p.Y-turn.at(p.X).Y)
		}
		turn.y += stands
		lower := housed(e.lower, turn, tips[0], corner, a.RunBelow, tips, h, a)
		upper := housed(e.upper, turn, tips[n], corner, a.RunAbove, tips, h, a)
		lower.hold(WallString{To: corner}, at, h)
		upper.hold(WallString{From: corner, To: at[n]}, at, h)
		strings = append(strings, lower, upper)
	}
	return strings
}

// housed is the string between the corner and the flight whose nosing line passes
// through the turn's nosing there.
func housed(wall WinderWall, winders slope, nosing geom.Point, corner, run float64, tips []geom.Point, h WinderHeights, a WallHousing) HousedString {
	ahead := 1.0 // along x from the flight to the corner: the upper string is the lower turned by half a circle
	if nosing.X > corner {
		ahead = -1
	}
	s := HousedString{Wall: wall, Pitch: math.Atan(winders.rate) * 180 / math.Pi}
	upper, lower := []slope{winders.raised(a.Over)}, []slope{winders.raised(a.Over - a.Width)}
	far := nosing.X
	tips = tips[:len(tips):len(tips)]
	if run > 0 {
		flight := slope{nosing.X, nosing.Y, h.Rise / run}
		far -= ahead * run
		tips = append(tips, flight.at(far))
		s.FlightPitch = math.Atan(flight.rate) * 180 / math.Pi
		up, down := flight.raised(a.Over), flight.raised(a.Over-a.Width)
		s.Radius = min(a.Radius, roomFor(up, upper[0], corner, ahead), roomFor(down, lower[0], corner, ahead))
		if s.Radius > 0 {
			upper, lower = append([]slope{up}, upper...), append([]slope{down}, lower...)
		}
	}
	s.Upper, s.Lower = eased(upper, far, corner, s.Radius, ahead), eased(lower, far, corner, s.Radius, ahead)
	s.Clear = math.Inf(1)
	for _, p := range tips {
		if ahead*(p.X-corner) > 0 || ahead*(far-p.X) > 0 {
			continue
		}
		s.Clear = min(s.Clear, above(s.Upper, p))
	}
	return s
}

// hold works out how wide the string has to be for the treads along it. A
// notched string's cuts run along their undersides.
func (s *HousedString) hold(notched WallString, at []float64, h WinderHeights) {
	notched.step(at, h)
	// Two points a step: but for where the first cut begins, at the tread below.
	for _, p := range notched.Notched[len(notched.Notched)-2*len(notched.Steps):] {
		s.Needs = max(s.Needs, above(s.Upper, p))
	}
}

// meet is where two lines cross, and how much the pitch changes there, in radians;
// ok is false where they run side by side.
func (s slope) meet(o slope) (p geom.Point, change float64, ok bool) {
	if math.Abs(s.rate-o.rate) < parallel {
		return p, 0, false
	}
	x := (o.at(0).Y - s.at(0).Y) / (s.rate - o.rate)
	return s.at(x), math.Abs(math.Atan(s.rate) - math.Atan(o.rate)), true
}

// roomFor is the greatest radius that rounds off the change from the flight's line
// to the winders' before the corner; 0 where they do not meet before it. An arc
// leaves either line radius x tan(change/2) from where they meet.
func roomFor(flight, winders slope, corner, ahead float64) float64 {
	p, change, ok := flight.meet(winders)
	if !ok || ahead*(corner-p.X) <= 0 {
		return 0
	}
	return ahead * (corner - p.X) * math.Hypot(1, winders.rate) / math.Tan(change/2)
}

// eased is the edge along one line or two, going up: from the far end, or from
// where the arc begins where that is farther, to the corner, or back.
func eased(lines []slope, far, corner, radius, ahead float64) geom.Path {
	last := lines[len(lines)-1]
	var edges []geom.Edge
	if len(lines) == 1 {
		edges = pieces(last.at(far), last.at(corner))
	} else {
		p, change, _ := lines[0].meet(last)
		tangent := radius * math.Tan(change/2)
		from := lines[0].at(p.X - ahead*tangent/math.Hypot(1, lines[0].rate))
		to := last.at(p.X + ahead*tangent/math.Hypot(1, last.rate))
		far = ahead * min(ahead*far, ahead*from.X)
		edges = append(pieces(lines[0].at(far), from), arcBetween(from, to, lines[0].rate, last.rate, radius))
		edges = append(edges, pieces(to, last.at(corner))...)
	}
	path := geom.Path{Edges: edges}
	if ahead < 0 {
		path = path.Reversed()
	}
	return path
}

// arcBetween is the arc that leaves the line of one slope where it begins and joins
// the line of the other where it ends.
func arcBetween(from, to geom.Point, rate, then, radius float64) geom.Edge {
	sweep := math.Atan(then) - math.Atan(rate) // the same whichever way it is run
	// The centre lies square to the first line, on the side the arc bends to.
	side := math.Copysign(radius, sweep)
	if to.X < from.X {
		side = -side
	}
	long := math.Hypot(1, rate)
	centre := geom.Pt(from.X-side*rate/long, from.Y+side/long)
	return geom.Edge{From: from, To: to, Centre: centre, Radius: radius, Sweep: sweep}
}

// above is how far a path lies above a point, less than 0 below it.
func above(path geom.Path, p geom.Point) float64 {
	best, sign := math.Inf(1), 1.0
	for _, e := range path.Edges {
		if d, f := e.Nearest(p); d < best {
			best = d
			sign = math.Copysign(1, e.At(f).Y-p.Y)
		}
	}
	return sign * best
}
