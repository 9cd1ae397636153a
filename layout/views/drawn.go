package views

import (
	"gonum.org/v1/gonum/spatial/r2"

	"stepoff/layout"
	"stepoff/layout/drawing"
	"stepoff/layout/geom"
	"stepoff/layout/lesson/exercise"
	"stepoff/layout/stringer"
	"stepoff/spec/measure"
)

// Drawn draws a stringer as somebody has marked and sawn it, its mistake with it
// and not pointed out.
func Drawn(x *exercise.Drawn, st measure.Style) *drawing.Drawing {
	d := &drawing.Drawing{Name: "drawn", Title: "The stringer as sawn, on its blank"}
	b := bench{d: d, g: &layout.Group{Sawn: x.Sawn}, st: st}
	b.whole()
	b.cuts(newCut, func(stringer.Cut) bool { return true })
	if x.Overcut > 0 {
		root := onBoard(x.Roots[x.Root-1])
		d.Line(newCut, root, r2.Add(root, r2.Scale(-x.Overcut, b.plumbWay())))
	}
	d.Text(geom.Pt(-0.1*x.Width, -x.Width/2), drawing.Small, drawing.Right, "foot")
	for k := 1; k <= x.Notches; k++ {
		d.Text(geom.Pt(b.tip(k).X, 0.06*x.Width), drawing.Small, drawing.Right, fmtInt(k))
	}
	heel, top := b.heel(), b.headEnd()
	d.Dim(drawing.Aligned, heel, b.tip(1), dimRow, b.say(x.FirstRiserCut))
	d.Dim(drawing.Aligned, b.tip(x.Notches), top, dimRow, b.say(x.LastTread))
	return d
}
