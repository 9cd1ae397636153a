package booklet

import (
	"fmt"

	"stepoff/layout"
	"stepoff/layout/geom"
	"stepoff/layout/views"
	"stepoff/pdfout"
)

// modelPages are the templates of cardboard models: each is the same stringer
// laid out again from smaller measurements, and drawn at the model's full size.
func modelPages(s *layout.Stairway, o Options) ([]pdfout.Page, error) {
	var pages []pdfout.Page
	for _, one := range o.Models {
		for _, f := range s.Flights() {
			if len(f.Stringers) == 0 {
				continue
			}
			part, err := model(s, f, one, o)
			if err != nil {
				return nil, err
			}
			t, err := pdfout.Plan(part, o.Paper, o.Style.Units)
			if err != nil {
				return nil, err
			}
			pages = append(pages, t)
		}
	}
	return pages, nil
}

var modelWords = map[int]string{2: "HALF SCALE", 4: "QUARTER SCALE"}

// Models are the scales a model may have, by the word of their option.
var Models = map[string]int{"half": 2, "quarter": 4}

func model(s *layout.Stairway, f *layout.Flight, one int, o Options) (pdfout.Part, error) {
	d, err := views.Model(&f.Stringers[0], one, o.Style)
	if err != nil {
		return pdfout.Part{}, err
	}
	title := fmt.Sprintf("%s model (1:%d), not for cutting lumber", modelWords[one], one)
	if len(s.Flights()) > 1 {
		title += ", " + f.Name
	}
	box := d.Bounds()
	return pdfout.Part{
		Name: fmt.Sprintf("model-%d", one), Title: title, Drawing: d,
		Station:  "the foot end of the model",
		Lay:      "for cardboard: every figure on it is the model's own",
		Stock:    geom.Line(geom.Pt(0, 0), geom.Pt(box.Max.X, 0)),
		Cautions: []string{fmt.Sprintf("NOT FOR CUTTING LUMBER: practice template, 1:%d", one)},
	}, nil
}
