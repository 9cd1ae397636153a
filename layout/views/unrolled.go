package views

import (
	"stepoff/layout"
	"stepoff/layout/drawing"
	"stepoff/layout/geom"
	"stepoff/layout/turn"
	"stepoff/spec"
)

// unrolled is a turn of winders or a curve seen from the side as if its first
// walkline ran straight on: x along the walkline from the first riser line, y
// above the lower finished floor.
type unrolled struct {
	s      *layout.Stairway
	start  float64   // level it climbs from
	rise   float64   // unit rise
	levels []float64 // of its treads
	lines  []float64 // where its riser lines stand, one more than treads
	// own are the riser lines with a riser board of its own: all of a curve's; of
	// winders not the first, which is the last of what climbs to them, nor the last.
	own [2]int
}

func unrollWinders(s *layout.Stairway, w *layout.Winders) unrolled {
	return unrolled{s, w.Levels[0], w.UnitRise, w.Levels, riserLines(w.Laid), [2]int{1, len(w.Levels) - 1}}
}

func unrollCurve(s *layout.Stairway, c *layout.Curve) unrolled {
	return unrolled{s, c.StartLevel, c.UnitRise, c.Levels, riserLines(c.Laid), [2]int{0, len(c.Levels)}}
}

// riserLines are how far along the first walkline the riser lines stand. Each is
// as far before its nosing as the others.
func riserLines(l *turn.Laid) []float64 {
	at := []float64{0}
	for k := range l.Treads {
		at = append(at, at[k]+l.Along(0, k).Length())
	}
	return at
}

// long is from the first riser line to the last.
func (u unrolled) long() float64 { return u.lines[len(u.lines)-1] }

// nosing is the k-th nosing, 0 the lowest; the one after the last tread's is
// that of what stands above.
func (u unrolled) nosing(k int) geom.Point {
	return geom.Pt(u.lines[k]-front(u.s), u.level(k))
}

// level is that of the k-th tread; after the last one a riser more.
func (u unrolled) level(k int) float64 {
	if n := len(u.levels); k == n {
		return u.levels[n-1] + u.rise
	}
	return u.levels[k]
}

// boards are the treads and riser boards.
func (u unrolled) boards() []stepBoard {
	t, b := u.s.Job.Tread.Thickness.MM(), u.s.Job.Riser.Thickness.MM()
	behind := 0.0 // how far a tread stops short of the next riser line
	if u.s.Job.Riser.Joint == spec.Behind {
		behind = b
	}
	var all []stepBoard
	for k, level := range u.levels {
		all = append(all, stepBoard{layout.TreadBoard, geom.Box{
			Min: geom.Pt(u.nosing(k).X, level-t), Max: geom.Pt(u.lines[k+1]-behind, level)}})
	}
	if u.s.Job.Riser.Open {
		return all
	}
	for k := u.own[0]; k <= u.own[1]; k++ {
		bottom := u.start
		if k > 0 {
			// On the cut below it, or on the tread there.
			bottom = u.levels[k-1]
			if behind > 0 {
				bottom -= t
			}
		}
		all = append(all, stepBoard{layout.RiserBoard, geom.Box{Min: geom.Pt(u.lines[k]-b, bottom), Max: geom.Pt(u.lines[k], u.level(k)-t)}})
	}
	return all
}

// framed draws the boxes that winders stand on, each from its riser line to the
// last and on under the seat of the flight above, and the legs under the lowest, down
// to a level.
func (u unrolled) framed(d *drawing.Drawing, x float64, w *layout.Winders, down float64) {
	boxes := w.Boxes
	end := x + u.long() + w.Seat
	for k, b := range boxes {
		d.Add(drawing.Path{Layer: drawing.Outline, Path: geom.Rect(geom.Box{Min: geom.Pt(x+u.lines[k], b.Bottom), Max: geom.Pt(end, b.Top)})})
	}
	if len(boxes) == 0 || boxes[0].Leg <= 0 {
		return
	}
	for _, at := range [...]float64{x, end - legSize} {
		d.Polyline(drawing.Thin, geom.Pt(at, boxes[0].Bottom), geom.Pt(at, down))
		d.Polyline(drawing.Thin, geom.Pt(at+legSize, boxes[0].Bottom), geom.Pt(at+legSize, down))
	}
}
