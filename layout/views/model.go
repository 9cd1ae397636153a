package views

import (
	"fmt"

	"stepoff/layout"
	"stepoff/layout/drawing"
	"stepoff/layout/geom"
	"stepoff/layout/stringer"
	"stepoff/spec/measure"
)

// Model draws the template of a cardboard model, one to so many: the stringer is
// laid out again from measurements so much smaller, so that every figure on it is
// the model's own. It says all along that it is not for lumber.
func Model(g *layout.Group, one int, st measure.Style) (*drawing.Drawing, error) {
	small, refusals := modelRequest(g.Request, float64(one)).Sawn()
	if len(refusals) > 0 {
		return nil, fmt.Errorf("a model of 1:%d cannot be drawn: %s", one, refusals[0].Message)
	}
	model := *g
	model.Sawn = small
	d := Template(&model, st)
	d.Name, d.Title = fmt.Sprintf("model-%d", one), fmt.Sprintf("Model 1:%d, not for cutting lumber", one)
	if len(small.Roots) > 0 {
		for k, root := range small.Roots {
			if k%2 == 1 {
				continue
			}
			at := onBoard(root)
			d.Text(geom.Pt(at.X, at.Y-small.Throat*modelWordsAt), drawing.Small, drawing.Middle, fmt.Sprintf("1:%d NOT FOR LUMBER", one))
		}
	}
	return d, nil
}

// modelWordsAt is how deep in the throat the warning stands, as a share of it.
const modelWordsAt = 0.45

func modelRequest(r stringer.Request, one float64) stringer.Request {
	for _, v := range []*float64{&r.Rise, &r.Run, &r.Tread, &r.LastTread, &r.Below, &r.Width, &r.Thickness, &r.Saw.Blade, &r.Saw.Depth, &r.Saw.StopShort} {
		*v /= one
	}
	block := func(b *stringer.Block) *stringer.Block {
		if b == nil {
			return nil
		}
		return &stringer.Block{Height: b.Height / one, Depth: b.Depth / one}
	}
	r.Kicker, r.Ledger = block(r.Kicker), block(r.Ledger)
	return r
}
