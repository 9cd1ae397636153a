package packet

import (
	"fmt"
	"slices"

	"stepoff/layout"
	"stepoff/layout/drawing"
	"stepoff/layout/geom"
	"stepoff/layout/report"
	"stepoff/layout/views"
	"stepoff/pdfout"
	"stepoff/spec/measure"
)

// stringTemplate is one full-size drawing of a string, and the flights whose
// string of that hand is cut to it.
type stringTemplate struct {
	s       *layout.String
	flights []*layout.Flight
	numbers []int
}

// stringTemplates gathers the strings that alike finds alike.
func stringTemplates(flights []*layout.Flight, alike func(a, b *layout.String) bool) []stringTemplate {
	var all []stringTemplate
	for n, f := range flights {
		for i := range f.Strings {
			s := &f.Strings[i]
			at := slices.IndexFunc(all, func(t stringTemplate) bool { return alike(t.s, s) })
			if at < 0 {
				all = append(all, stringTemplate{s: s})
				at = len(all) - 1
			}
			all[at].flights = append(all[at].flights, f)
			all[at].numbers = append(all[at].numbers, n+1)
		}
	}
	return all
}

// sameString tells whether two strings are cut alike: of one hand, every corner and
// every mark the same. Housings and cleats are one size in all a job's flights.
func sameString(a, b *layout.String) bool {
	return a.Hand == b.Hand && samePoints(a.Outline, b.Outline) && slices.EqualFunc(a.Marks, b.Marks, same) && same(a.Rise, b.Rise) && same(a.Run, b.Run)
}

// sameRouting tells whether one router template serves two strings, of either hand.
func sameRouting(a, b *layout.String) bool { return same(a.Rise, b.Rise) && same(a.Run, b.Run) }

func (t stringTemplate) names(part string, flights int) (names []string) {
	for _, f := range t.flights {
		name := part
		if flights > 1 {
			name = f.Name + "/" + part
		}
		if !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	return names
}

func (t stringTemplate) suffix(flights int) string {
	if flights < 2 {
		return ""
	}
	return ", " + flightNumbers(t.numbers)
}

// stringParts are the sheets of housed and cleated strings, and how the housings
// are routed.
func stringParts(s *layout.Stairway, st measure.Style) []part {
	var all []part
	flights := s.Flights()
	several := len(flights)
	for _, t := range stringTemplates(flights, sameString) {
		all = append(all, part{names: t.names(partStringer, several), sheet: func() pdfout.Part { return t.sheet(st, several) }})
	}
	for _, t := range stringTemplates(flights, sameRouting) {
		if t.s.Housed == nil {
			continue
		}
		names := t.names(partRouter, several)
		all = append(all, part{names: names, sheet: func() pdfout.Part {
			d := views.RouterTemplate(t.s.Housed, st)
			return pdfout.Part{
				Name: names[0], Title: "Router template" + t.suffix(several),
				Drawing: d,
				Station: "the nosing",
				Lay:     "saw the opening out of thin sheet, file it to the line; screw a fence under STOCK EDGE, its face on the line",
				Stock:   geom.Line(geom.Pt(d.Bounds().Min.X, 0), geom.Pt(d.Bounds().Max.X, 0)),
			}
		}})
	}
	if slices.ContainsFunc(flights, func(f *layout.Flight) bool { return len(f.Strings) > 0 && f.Strings[0].Housed != nil }) {
		all = append(all, part{names: []string{partSettings}, page: func() pdfout.Flow { return settings(s, st) }})
	}
	return all
}

func (t stringTemplate) sheet(st measure.Style, flights int) pdfout.Part {
	s := t.s
	what := "String"
	if s.Cleated != nil {
		what = "Stringer"
	}
	edge := "away from you"
	if s.Hand == 1 {
		edge = "toward you"
	}
	return pdfout.Part{
		Name: t.names(s.Name, flights)[0], Title: fmt.Sprintf("%s, %s%s", what, s.Hand, t.suffix(flights)),
		Drawing: views.StringTemplate(s, st),
		Station: "the foot end of the blank",
		Lay:     "inner face up, foot end to the left, the crowned top edge " + edge + "; lay STOCK EDGE on it, stations on the tape",
		Stock:   geom.Line(geom.Pt(0, 0), geom.Pt(s.LeastBlank, 0)),
		Hand:    s.Hand.String(),
	}
}

// settings is the page a router and a stepped jig are set by, flight by flight.
func settings(s *layout.Stairway, st measure.Style) pdfout.Flow {
	blocks := []pdfout.Block{pdfout.Heading{Level: 1, Text: "Settings for the housings"}}
	for _, f := range s.Flights() {
		if len(f.Strings) == 0 || f.Strings[0].Housed == nil {
			continue
		}
		h := f.Strings[0].Housed
		if len(s.Flights()) > 1 {
			blocks = append(blocks, pdfout.Heading{Level: 2, Text: f.Name})
		}
		blocks = append(blocks, pdfout.Table{Rows: report.JigSettings(h, st)})
		if len(h.Wedges) > 0 {
			t := pdfout.Table{Header: []string{"in one string", "wedge", "length", "thick end", "thin end", "width"}, Align: []drawing.Align{drawing.Right}}
			for _, w := range h.Wedges {
				t.Rows = append(t.Rows, []string{fmt.Sprint(w.Count), report.WedgeOf(w), st.InchesMM(w.Length), st.FineMM(w.Thick), st.FineMM(w.Tip), st.FineMM(w.Width)})
			}
			blocks = append(blocks, pdfout.Heading{Level: 3, Text: "Wedges, one taper for all"}, t)
		}
	}
	blocks = append(blocks, pdfout.List{Items: routerCautions})
	return pdfout.Flow{Title: "Settings", Blocks: blocks}
}

// routerCautions are common practice.
var routerCautions = []string{
	"Clamp string and template; eyes and ears protected, both hands on the router, the cutter still before it is lifted.",
	"Rout one housing in scrap of the same stock, try a tread, a riser board and a wedge in it, and only then the strings.",
	"Rout to depth in several passes. The corners the cutter leaves round are cleaned out with a chisel.",
	"Mark both strings before either is routed: left and right are mirror images, face to face their housings meet.",
}

// strings are the figures of the flights' strings, for the cover.
func (c cover) strings() pdfout.Table {
	st, flights := c.st, c.s.Flights()
	t := pdfout.Table{Header: []string{"string", "least blank", "stock", "plumb cut, foot", "level cut, foot", "level cut, head", "plumb cut, head"}}
	for _, f := range flights {
		for i := range f.Strings {
			s := &f.Strings[i]
			name, stock := s.Name, "none sold so long"
			if len(flights) > 1 {
				name = f.Name + "/" + name
			}
			if s.StockLength > 0 {
				stock = st.Format(s.StockLength)
			}
			t.Rows = append(t.Rows, []string{name, st.InchesMM(s.LeastBlank), stock, st.InchesMM(s.FootCut), st.InchesMM(s.SeatCut), st.InchesMM(s.HeadTop), st.InchesMM(s.HeadCut)})
		}
	}
	return t
}
