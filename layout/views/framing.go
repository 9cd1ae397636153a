package views

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"stepoff/layout"
	"stepoff/layout/drawing"
	"stepoff/layout/geom"
	"stepoff/spec"
	"stepoff/spec/measure"
)

// plateWide is the width of a 2x4 plate: what a wall under a landing takes.
const plateWide = 3.5 * 25.4

// Framing draws a landing's frame from above: rims, joists, what carries them,
// where the lower flight hangs and where the upper one stands. It is nil where
// no framing was worked out.
func Framing(s *layout.Stairway, l *layout.Landing, st measure.Style) *drawing.Drawing {
	if l.Frame == nil || s.Job.Width == nil {
		return nil
	}
	fr := frameAt(l.Entry.At.X, l.Entry.At.Y, l.Entry.Heading)
	f := &framing{
		d: &drawing.Drawing{Name: l.Name + "-framing", Title: "Framing of " + l.Name + " from above"},
		s: s, l: l, st: st, frame: fr, walk: reach(l, fr), thick: l.Spec.Joists.Thickness.MM(),
	}
	f.whole = f.walk
	for _, p := range l.Frame.Outline {
		f.whole = f.whole.Include(geom.Pt(fr.lengthwise(p), fr.sideways(p)))
	}
	f.d.Polygon(drawing.Outline, l.Frame.Outline...)
	f.wood()
	f.carried()
	f.flights()
	f.dims()
	return f.d
}

// framing reckons in the frame of the lower flight's last riser line: x along its
// travel, y to the left.
type framing struct {
	d     *drawing.Drawing
	s     *layout.Stairway
	l     *layout.Landing
	st    measure.Style
	frame frame
	walk  geom.Box // the walking area
	whole geom.Box // the frame, which runs on under the upper flight's seat
	thick float64  // of rims and joists
}

// lane is the strip of a half turn's upper flight, under which the joists run
// on; ok is false on other landings.
func (f *framing) lane() (low, high float64, ok bool) {
	if f.l.Spec.Angle != 180 || f.l.Frame.Seat <= 0 {
		return 0, 0, false
	}
	middle, half := f.frame.sideways(f.l.Exit.At), f.s.Job.Width.MM()/2
	return middle - half, middle + half, true
}

// wood draws rims and joists: joists on centre from one side, the last against
// the other.
func (f *framing) wood() {
	w := f.whole
	f.rect(drawing.Outline, w.Max.X-f.thick, w.Max.X, w.Min.Y, w.Max.Y) // the far rim runs through
	low, high, ok := f.lane()
	if !ok {
		f.bay(w.Min.X, w.Max.X, w.Min.Y, w.Max.Y)
		return
	}
	f.bay(w.Min.X, w.Max.X, low, high)
	for _, rest := range [...][2]float64{{w.Min.Y, low}, {high, w.Max.Y}} {
		if rest[1]-rest[0] > f.thick {
			f.bay(f.walk.Min.X, w.Max.X, rest[0], rest[1])
		}
	}
}

// bay draws the rim nearest to the lower flight and the joists from there to the
// far one.
func (f *framing) bay(x0, x1, y0, y1 float64) {
	f.rect(drawing.Outline, x0, x0+f.thick, y0, y1)
	n := int(math.Ceil((y1-y0-f.thick)/f.l.Spec.Spacing.MM() - 1e-9)) // a whole number of spacings stays one
	for k := range n + 1 {
		y := math.Min(y0+float64(k)*f.l.Spec.Spacing.MM(), y1-f.thick)
		f.rect(drawing.Thin, x0+f.thick, x1-f.thick, y, y+f.thick)
	}
}

func (f *framing) rect(layer drawing.Layer, x0, x1, y0, y1 float64) {
	f.d.Polygon(layer, f.frame.at(x0, y0), f.frame.at(x1, y0), f.frame.at(x1, y1), f.frame.at(x0, y1))
}

// carried draws what the frame stands or hangs on, dashed under it.
func (f *framing) carried() {
	w := f.whole
	switch f.l.Spec.On {
	case spec.OnLegs:
		for _, leg := range legs(f.l.Frame.Outline) {
			f.d.Polygon(drawing.Hidden, leg...)
		}
	case spec.OnWalls:
		f.rect(drawing.Hidden, w.Min.X, w.Min.X+plateWide, w.Min.Y, w.Max.Y)
		f.rect(drawing.Hidden, w.Max.X-plateWide, w.Max.X, w.Min.Y, w.Max.Y)
	case spec.OnLedgers:
		f.ledgers()
	}
}

// legs are the posts under a frame's corners, each within them and square to its
// edges.
func legs(outline []geom.Point) [][]geom.Point {
	x := r2.Unit(r2.Sub(outline[1], outline[0]))
	for !(x.X > levelEnough && x.Y > -levelEnough) { // of the edges' ways the one between +x and +y
		x = geom.Pt(x.Y, -x.X)
	}
	y := geom.Pt(-x.Y, x.X)
	var all [][]geom.Point
	for _, corner := range outline {
		for _, way := range [...]geom.Point{{X: 1, Y: 1}, {X: 1, Y: -1}, {X: -1, Y: 1}, {X: -1, Y: -1}} {
			u, v := r2.Scale(way.X*legSize, x), r2.Scale(way.Y*legSize, y)
			far := r2.Add(corner, r2.Add(u, v))
			if inside(r2.Scale(0.5, r2.Add(corner, far)), outline) {
				all = append(all, []geom.Point{corner, r2.Add(corner, u), far, r2.Add(corner, v)})
				break
			}
		}
	}
	return all
}

// ledgers marks the edges that hang on walls: all but those the flights meet, and
// of a landing straight through its two sides. The corner between the flights of
// a quarter turn has no wall, and stands on a post.
func (f *framing) ledgers() {
	w := f.whole
	type edge struct{ from, to, in geom.Point }
	far := edge{geom.Pt(w.Max.X, w.Min.Y), geom.Pt(w.Max.X, w.Max.Y), geom.Pt(-1, 0)}
	left := edge{geom.Pt(f.walk.Min.X, w.Max.Y), geom.Pt(w.Max.X, w.Max.Y), geom.Pt(0, -1)}
	right := edge{geom.Pt(f.walk.Min.X, w.Min.Y), geom.Pt(w.Max.X, w.Min.Y), geom.Pt(0, 1)}
	var edges []edge
	inner := geom.Pt(w.Min.X, w.Max.Y)
	switch {
	case f.l.Spec.Angle == 0:
		edges = []edge{left, right}
	case f.l.Spec.Angle == 180:
		edges = []edge{far, left, right}
	case f.l.Spec.Turn == spec.Left:
		edges = []edge{far, right}
	default:
		edges = []edge{far, left}
		inner.Y = w.Min.Y
	}
	for _, e := range edges {
		from, to := f.frame.at(e.from.X, e.from.Y), f.frame.at(e.to.X, e.to.Y)
		f.d.Line(drawing.Cut, from, to)
		f.beside(from, to, r2.Sub(f.frame.at(e.in.X, e.in.Y), f.frame.origin), f.thick, "ledger")
	}
	if f.l.Spec.Angle == 90 {
		at := f.frame.at(inner.X, inner.Y)
		for _, leg := range legs(f.l.Frame.Outline) {
			if r2.Norm(r2.Sub(leg[0], at)) < leastPiece {
				f.d.Polygon(drawing.Hidden, leg...)
			}
		}
	}
}

// Words beside a line stand off it by a share of the stair's width: more where
// their tops are toward it.
const (
	besideAbove = 0.03
	besideBelow = 0.1
)

// beside writes along a line on the side that toward, a step of 1, points to,
// clear of a strip there.
func (f *framing) beside(from, to, toward geom.Point, strip float64, words string) {
	angle := readable(r2.Sub(to, from))
	sin, cos := math.Sincos(angle)
	off := besideAbove
	if r2.Dot(toward, geom.Pt(-sin, cos)) < 0 {
		off = besideBelow
	}
	at := r2.Add(r2.Scale(0.5, r2.Add(from, to)), r2.Scale(strip+off*f.s.Job.Width.MM(), toward))
	f.d.Add(drawing.Text{Layer: drawing.Note, At: at, Height: drawing.Small, Angle: angle, Align: drawing.Middle, Text: words})
}

// flights draws the riser lines of both flights, and says what they do there.
func (f *framing) flights() {
	half := f.s.Job.Width.MM() / 2
	below, above := f.around()
	on := placeFrame(f.l.Exit)
	for _, end := range [...]struct {
		fr     frame
		toward geom.Point
		words  string
	}{{f.frame, r2.Scale(-1, f.frame.along), below.Label() + " hangs here"}, {on, on.along, above.Label() + " stands here"}} {
		from, to := end.fr.at(0, half), end.fr.at(0, -half)
		f.d.Line(drawing.Centre, from, to)
		f.beside(from, to, end.toward, 0, end.words)
	}
}

// around are what climbs to the landing and what climbs on from it.
func (f *framing) around() (below, above layout.Element) {
	at := slices.Index(f.s.Elements, layout.Element(f.l))
	return f.s.Elements[at-1], f.s.Elements[at+1]
}

// dims gives the frame's sizes as it is built, and the joists' spacing.
func (f *framing) dims() {
	w := f.whole
	at := f.frame.at
	side, y := 1.0, w.Max.Y // the long side away from the upper flight
	if f.l.Spec.Turn == spec.Left {
		side, y = -1, w.Min.Y
	}
	f.d.Dim(drawing.Aligned, at(f.walk.Min.X, y), at(w.Max.X, y), side*dimRow, f.st.FormatMM(w.Max.X-f.walk.Min.X))
	f.d.Dim(drawing.Aligned, at(w.Max.X, w.Max.Y), at(w.Max.X, w.Min.Y), 2*dimRow, f.st.FormatMM(w.Height()))
	first := w.Min.Y
	if second := first + f.l.Spec.Spacing.MM(); second < w.Max.Y-f.thick {
		f.d.Dim(drawing.Aligned, at(w.Max.X, second), at(w.Max.X, first), dimRow, f.st.Inches(f.l.Spec.Spacing)+" on centre")
	}
	if low, high, ok := f.lane(); ok {
		y := low // the side of the lane where no flight is
		if side < 0 {
			y = high
		}
		f.d.Dim(drawing.Aligned, at(w.Min.X, y), at(f.walk.Min.X, y), -side*dimRow, f.st.FormatMM(f.walk.Min.X-w.Min.X))
	}
}
