package views

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"stepoff/layout"
	"stepoff/layout/drawing"
	"stepoff/layout/geom"
	"stepoff/layout/lesson"
	"stepoff/layout/stringer"
	"stepoff/spec/measure"
)

// bench is a blank, or a piece of it, lying on the saw horses with its crowned
// edge up: x along that edge from the foot end, y minus the distance square in.
type bench struct {
	d        *drawing.Drawing
	f        *layout.Flight
	g        *layout.Group
	st       measure.Style
	from, to float64 // what is shown of it
}

// newCut and oldCut are the layers of what a stage adds and of what was there.
const (
	newCut = drawing.Cut
	oldCut = drawing.Thin
)

func (b *bench) say(mm float64) string { return b.st.InchesMM(mm) }

// level and plumb are the stair's directions on the board: up the run, and up.
func (b *bench) levelWay() geom.Point {
	sin, cos := math.Sincos(b.g.Pitch)
	return geom.Pt(cos, -sin)
}

func (b *bench) plumbWay() geom.Point {
	sin, cos := math.Sincos(b.g.Pitch)
	return geom.Pt(sin, cos)
}

func (b *bench) tip(k int) geom.Point { return onBoard(b.g.Tips[k-1]) }

// root is the inside corner of a notch, or where it would be at the head.
func (b *bench) root(k int) geom.Point {
	return r2.Add(b.tip(k), r2.Scale(b.g.Run, b.levelWay()))
}

// whole shows the blank from end to end.
func (b *bench) whole() {
	b.from, b.to = 0, b.g.LeastBlank
	b.board()
}

// foot shows the foot end and so many steps; head the head end.
func (b *bench) foot(steps float64) {
	b.from, b.to = 0, math.Min(b.g.LeastBlank, b.g.Tips[0].X+steps*b.g.Step)
	b.board()
}

func (b *bench) head(steps float64) {
	b.from, b.to = math.Max(0, b.g.LeastBlank-steps*b.g.Step), b.g.LeastBlank
	b.board()
}

// board draws the edges of what is shown, broken off where the board goes on.
func (b *bench) board() {
	w := b.g.Width
	for _, y := range [...]float64{0, -w} {
		b.d.Line(drawing.Outline, geom.Pt(b.from, y), geom.Pt(b.to, y))
	}
	for _, x := range [...]float64{b.from, b.to} {
		if x == 0 || x == b.g.LeastBlank {
			b.d.Line(drawing.Outline, geom.Pt(x, 0), geom.Pt(x, -w))
			continue
		}
		z := 0.06 * w
		b.d.Polyline(drawing.Thin, geom.Pt(x, z), geom.Pt(x, -0.42*w), geom.Pt(x+z, -0.46*w), geom.Pt(x-z, -0.54*w), geom.Pt(x, -0.58*w), geom.Pt(x, -w-z))
	}
}

// cuts draws those cuts of what is shown that are asked for.
func (b *bench) cuts(l drawing.Layer, asked func(stringer.Cut) bool) {
	box := geom.Box{Min: geom.Pt(b.from, -b.g.Width-1), Max: geom.Pt(b.to, 1)}
	for _, c := range b.g.Cuts {
		if !asked(c) {
			continue
		}
		for _, e := range geom.Line(onBoard(c.From), onBoard(c.To)).Clip(box) {
			b.d.Line(l, e.From, e.To)
		}
	}
}

func steps(c stringer.Cut) bool {
	return c.Kind == stringer.RiserCut || c.Kind == stringer.TreadCut
}

func ofKind(kinds ...stringer.CutKind) func(stringer.Cut) bool {
	return func(c stringer.Cut) bool {
		for _, k := range kinds {
			if c.Kind == k {
				return true
			}
		}
		return false
	}
}

// Sizes of a framing square, in millimetres: blade 24 by 2 in, tongue 16 by
// 1 1/2 in (common practice); metric ones are near enough for a picture.
const (
	bladeLong, bladeWide   = 24 * 25.4, 2 * 25.4
	tongueLong, tongueWide = 16 * 25.4, 1.5 * 25.4
	squareGrey             = 0.12
)

// marker lays on notch k what it is marked with: the framing square, or a pitch
// board where the rise is more than a square has.
func (b *bench) marker(k int) {
	if lesson.FitsSquare(b.g) {
		b.square(k)
		return
	}
	b.d.Add(drawing.Path{Layer: drawing.Thin, Fill: squareGrey, Path: geom.Closed(b.tip(k), b.root(k), r2.Add(b.root(k), r2.Scale(b.g.Rise, b.plumbWay())))})
}

// square lays the framing square on notch k: blade on the tread line, tongue on
// the riser line, its corner in the root.
func (b *bench) square(k int) {
	c, u, v := b.root(k), r2.Scale(-1, b.levelWay()), b.plumbWay()
	at := func(blade, tongue float64) geom.Point {
		return r2.Add(c, r2.Add(r2.Scale(blade, u), r2.Scale(tongue, v)))
	}
	b.d.Add(drawing.Path{Layer: drawing.Thin, Fill: squareGrey, Path: geom.Closed(
		c, at(bladeLong, 0), at(bladeLong, bladeWide), at(tongueWide, bladeWide), at(tongueWide, tongueLong), at(0, tongueLong))})
	// The gauges rest on the edge beside the two figures.
	for _, p := range [...]geom.Point{b.tip(k), r2.Add(c, r2.Scale(b.g.Rise, v))} {
		b.d.Add(drawing.Path{Layer: drawing.Thin, Fill: 0.4, Path: geom.Rect(geom.Box{Min: geom.Pt(p.X-8, 0), Max: geom.Pt(p.X+8, 16)})})
	}
	b.d.Add(drawing.Text{Layer: drawing.Note, At: at(bladeLong*0.78, bladeWide*0.25), Height: drawing.Small, Angle: -b.g.Pitch, Align: drawing.Middle, Text: "blade"})
	b.d.Add(drawing.Text{Layer: drawing.Note, At: at(tongueWide*0.3, tongueLong*0.78), Height: drawing.Small, Angle: math.Pi/2 - b.g.Pitch, Align: drawing.Middle, Text: "tongue"})
}

func (b *bench) pick() {
	g := b.g
	// The crown, drawn much higher than any board has it.
	b.d.Add(drawing.Path{Layer: drawing.Thin, Path: geom.Polyline(geom.Pt(0, 0), geom.Pt(g.LeastBlank/4, 0.09*g.Width), geom.Pt(g.LeastBlank/2, 0.12*g.Width), geom.Pt(3*g.LeastBlank/4, 0.09*g.Width), geom.Pt(g.LeastBlank, 0))})
	b.d.Text(geom.Pt(g.LeastBlank/2, 0.26*g.Width), drawing.Normal, drawing.Middle, "crown up")
	b.d.Text(geom.Pt(-0.1*g.Width, -g.Width/2), drawing.Small, drawing.Right, "foot end")
	b.d.Text(geom.Pt(g.LeastBlank/2, -g.NotchDepth-0.75*g.Throat), drawing.Small, drawing.Middle, "no knots or splits where the roots will be")
	b.cuts(drawing.Hidden, steps)
	b.d.Dim(drawing.Horizontal, geom.Pt(0, -g.Width), geom.Pt(g.LeastBlank, -g.Width), -dimRow, "at least "+b.say(g.LeastBlank))
	b.d.Dim(drawing.Vertical, geom.Pt(g.LeastBlank, -g.Width), geom.Pt(g.LeastBlank, 0), dimRow, b.say(g.Width))
}

func (b *bench) settings() {
	b.marker(1)
	root, next := b.root(1), r2.Add(b.root(1), r2.Scale(b.g.Rise, b.plumbWay()))
	b.d.Line(newCut, b.tip(1), root)
	b.d.Line(newCut, root, next)
	tongue, blade := b.say(b.g.Square.Tongue), b.say(b.g.Square.Blade)
	if !lesson.FitsSquare(b.g) { // a board is made to size, not set to marks
		tongue, blade = b.say(b.g.Rise), b.say(b.g.Run)
	}
	b.d.Dim(drawing.Aligned, b.tip(1), root, -dimRow, "run "+blade)
	b.d.Dim(drawing.Aligned, root, next, -dimRow, "rise "+tongue)
}

func (b *bench) firstStep() {
	b.marker(1)
	b.d.Line(newCut, b.tip(1), r2.Add(b.tip(1), r2.Scale(math.Min(b.g.Run, b.lastTread()), b.levelWay())))
	b.d.Dim(drawing.Horizontal, geom.Pt(0, -b.g.Width), geom.Pt(b.tip(1).X, -b.g.Width), -dimRow, "first tip "+b.say(b.tip(1).X))
	b.d.Line(drawing.Dimension, b.tip(1), geom.Pt(b.tip(1).X, -b.g.Width))
}

// lastTread is how long the first tread cut is where it is the last as well.
func (b *bench) lastTread() float64 {
	if b.g.Notches == 1 {
		return b.g.LastTread
	}
	return b.g.Run
}

func (b *bench) tips() {
	g := b.g
	b.cuts(newCut, func(c stringer.Cut) bool { return steps(c) && (c.Kind != stringer.RiserCut || c.Step > 1) })
	first, last := b.tip(1), b.tip(g.Notches)
	b.d.Dim(drawing.Horizontal, geom.Pt(0, 0), last, 2.2*dimRow, "last tip "+b.say(last.X))
	b.d.Dim(drawing.Horizontal, geom.Pt(0, -g.Width), geom.Pt(first.X, -g.Width), -dimRow, "first tip "+b.say(first.X))
	if g.Notches > 2 {
		b.d.Dim(drawing.Horizontal, b.tip(2), b.tip(3), dimRow, "step "+b.say(g.Step))
	}
	for k := 1; k <= g.Notches; k++ {
		b.d.Text(geom.Pt(b.tip(k).X, 0.06*g.Width), drawing.Small, drawing.Right, fmtInt(k))
	}
}

func (b *bench) throat() {
	g := b.g
	b.cuts(oldCut, steps)
	root := onBoard(g.Roots[0])
	b.d.Line(newCut, geom.Pt(root.X, 0), geom.Pt(root.X, -g.Width))
	x := b.to + 0.1*g.Width
	b.d.Line(drawing.Dimension, root, geom.Pt(x, root.Y))
	b.d.Dim(drawing.Vertical, geom.Pt(x, root.Y), geom.Pt(x, 0), dimRow, b.say(g.NotchDepth))
	b.d.Dim(drawing.Vertical, geom.Pt(x, -g.Width), geom.Pt(x, root.Y), 2*dimRow, b.say(g.Throat))
}

// heel is where the first riser cut meets the seat.
func (b *bench) heel() geom.Point {
	return r2.Add(b.tip(1), r2.Scale(-b.g.FirstRiserCut, b.plumbWay()))
}

func (b *bench) drop() {
	g := b.g
	b.cuts(oldCut, steps)
	heel := b.heel()
	end := r2.Add(heel, r2.Scale(g.SeatCut, b.levelWay()))
	if measure.SnapMM(g.BottomDrop) != 0 {
		whole := r2.Add(b.tip(1), r2.Scale(-g.Rise, b.plumbWay()))
		b.d.Line(drawing.Hidden, whole, r2.Add(whole, r2.Scale(g.SeatCut, b.levelWay())))
		b.d.Line(drawing.Hidden, b.tip(1), whole)
		over := r2.Scale(g.SeatCut*0.8, b.levelWay())
		a, c := r2.Add(whole, over), r2.Add(heel, over)
		b.d.Dim(drawing.Aligned, c, a, dimRow, b.say(math.Abs(g.BottomDrop)))
	}
	b.d.Line(newCut, heel, end)
	b.d.Line(newCut, heel, b.tip(1))
	b.d.Dim(drawing.Aligned, heel, b.tip(1), dimRow, b.say(g.FirstRiserCut))
}

func (b *bench) seat() {
	b.cuts(oldCut, steps)
	heel := b.heel()
	end := r2.Add(heel, r2.Scale(b.g.SeatCut, b.levelWay()))
	b.d.Line(newCut, heel, end)
	b.d.Dim(drawing.Aligned, heel, end, -dimRow, "seat "+b.say(b.g.SeatCut))
}

func (b *bench) kicker() {
	b.cuts(oldCut, func(c stringer.Cut) bool { return steps(c) || c.Kind == stringer.SeatCut })
	b.cuts(newCut, ofKind(stringer.KickerCut))
	k, heel := b.g.Kicker, b.heel()
	up := r2.Add(heel, r2.Scale(k.Height, b.plumbWay()))
	in := r2.Add(heel, r2.Scale(k.Depth, b.levelWay()))
	b.d.Dim(drawing.Aligned, heel, up, dimRow, b.say(k.Height)+" up")
	b.d.Dim(drawing.Aligned, heel, in, -dimRow, b.say(k.Depth)+" back")
}

// headEnd is where the last tread cut ends and the plumb cut begins.
func (b *bench) headEnd() geom.Point {
	return r2.Add(b.tip(b.g.Notches), r2.Scale(b.g.LastTread, b.levelWay()))
}

func (b *bench) plumb() {
	g := b.g
	b.cuts(oldCut, func(c stringer.Cut) bool { return steps(c) && c.Step < g.Notches })
	b.cuts(newCut, func(c stringer.Cut) bool { return steps(c) && c.Step == g.Notches || c.Kind == stringer.HeadCut })
	top := b.headEnd()
	low := r2.Add(top, r2.Scale(-g.HeadCut, b.plumbWay()))
	b.d.Dim(drawing.Aligned, top, low, dimRow, b.say(g.HeadCut))
	b.d.Dim(drawing.Aligned, b.tip(g.Notches), top, dimRow, b.say(g.LastTread))
}

func (b *bench) ledger() {
	g := b.g
	b.cuts(oldCut, func(c stringer.Cut) bool { return steps(c) || c.Kind == stringer.HeadCut })
	b.cuts(newCut, ofKind(stringer.LedgerCut))
	low := r2.Add(b.headEnd(), r2.Scale(-g.HeadCut, b.plumbWay()))
	up := r2.Add(low, r2.Scale(g.Ledger.Height, b.plumbWay()))
	b.d.Dim(drawing.Aligned, up, low, dimRow, b.say(g.Ledger.Height)+" up")
	b.d.Dim(drawing.Aligned, up, r2.Add(up, r2.Scale(-g.Ledger.Depth, b.levelWay())), -dimRow, b.say(g.Ledger.Depth)+" in")
}

func (b *bench) stops() {
	g := b.g
	b.cuts(oldCut, func(c stringer.Cut) bool { return !c.Stops })
	for _, c := range g.Cuts {
		at := onBoard(c.Stop)
		if !c.Stops || !steps(c) || at.X > b.to || onBoard(c.From).X > b.to {
			continue
		}
		b.d.Line(newCut, onBoard(c.From), at)
		b.d.Line(drawing.Hidden, at, onBoard(c.To))
		across(b.d, drawing.Mark, at, r2.Sub(onBoard(c.To), onBoard(c.From)), 0.16*g.Width)
	}
	// The gap is too small to be seen at its size: it is told beside the root.
	root := onBoard(g.Roots[0])
	to := geom.Pt(root.X+0.25*g.Width, root.Y-0.3*g.Width)
	b.d.Line(drawing.Dimension, root, to)
	b.d.Add(drawing.Text{Layer: drawing.Dimension, At: to, Height: drawing.Normal, Text: "stop " + b.say(g.Saw.StopShort) + " short of the root"})
}

func (b *bench) trace() {
	b.cuts(newCut, func(c stringer.Cut) bool { return true })
	b.d.Text(geom.Pt(b.g.LeastBlank/2, -0.8*b.g.Width), drawing.Small, drawing.Middle, "pattern")
	// The next board lies below it.
	off := geom.Pt(0, -1.35*b.g.Width)
	next := make([]geom.Point, len(b.g.Outline))
	for i, p := range b.g.Outline {
		next[i] = r2.Add(onBoard(p), off)
	}
	b.d.Polygon(drawing.Hidden, next...)
	b.d.Polygon(drawing.Outline, off, r2.Add(off, geom.Pt(b.g.LeastBlank, 0)), r2.Add(off, geom.Pt(b.g.LeastBlank, -b.g.Width)), r2.Add(off, geom.Pt(0, -b.g.Width)))
	b.d.Text(r2.Add(off, geom.Pt(b.g.LeastBlank/2, -0.8*b.g.Width)), drawing.Small, drawing.Middle, "next, crown up")
}

func (b *bench) again() {
	g := b.g
	b.cuts(newCut, func(c stringer.Cut) bool { return true })
	b.d.Dim(drawing.Horizontal, geom.Pt(0, -g.Width), geom.Pt(g.LeastBlank, -g.Width), -dimRow, "at least "+b.say(g.LeastBlank))
	if g.Notches > 1 {
		b.d.Dim(drawing.Horizontal, geom.Pt(0, 0), b.tip(g.Notches), dimRow, "last tip "+b.say(b.tip(g.Notches).X))
	}
}
