package report

import (
	"stepoff/layout"
	"stepoff/layout/geom"
	"stepoff/layout/stringer"
)

type (
	// solidJSON is a housed or cleated string, in the list of stringers. Points are
	// [s,q] in the blank frame, as seen on the inner face of the left string; the
	// right one is its mirror image.
	solidJSON struct {
		Name        string   `json:"name"`
		Build       string   `json:"build"`
		Hand        string   `json:"hand"`
		Count       int      `json:"count"`
		Positions   []int    `json:"positions"`
		Stock       string   `json:"stock,omitempty"`
		Width       mm       `json:"width_mm"`
		Thickness   mm       `json:"thickness_mm"`
		Step        mm       `json:"step_mm"`
		Margin      mm       `json:"margin_mm"`
		Reach       mm       `json:"reach_mm"` // of housings or cleats, square in from the top edge
		Left        mm       `json:"left_mm"`  // wood below them, square across
		FootCut     mm       `json:"foot_cut_mm"`
		SeatCut     mm       `json:"seat_cut_mm"`
		HeadTop     mm       `json:"head_level_cut_mm"`
		HeadCut     mm       `json:"head_cut_mm"`
		HeadContact *mm      `json:"head_contact_mm,omitempty"`
		LeastBlank  mm       `json:"least_blank_mm"`
		StockLength *mm      `json:"stock_length_mm,omitempty"`
		Marks       []mm     `json:"marks_mm"` // nosings, from the blank's foot end
		Outline     [][2]mm  `json:"outline_mm"`
		Housing     *housing `json:"housing,omitempty"`
		Cleats      *cleats  `json:"cleats,omitempty"`
	}
	housing struct {
		Depth    mm            `json:"depth_mm"`
		Behind   mm            `json:"left_behind_mm"`
		Taper    ratioJSON     `json:"wedge_taper"`
		Undercut ratioJSON     `json:"undercut"`
		Round    mm            `json:"round_mm"`
		Housings []housingJSON `json:"housings"`
		Wedges   []wedgeJSON   `json:"wedges"`
		Router   routerJSON    `json:"router"`
	}
	ratioJSON   = float64
	housingJSON struct {
		Step int `json:"step"`
		shapeJSON
		Open []int `json:"open_edges"` // no walls: numbered from 0, edge i begins at corner i
	}
	// shapeJSON is a closed outline with true arcs: the corners its edges begin at,
	// and those edges that are arcs.
	shapeJSON struct {
		Outline [][2]mm   `json:"outline_mm"`
		Arcs    []arcJSON `json:"arcs"`
	}
	arcJSON struct {
		Edge   int   `json:"edge"`
		Centre [2]mm `json:"centre_mm"`
		Radius mm    `json:"radius_mm"`
		Sweep  deg   `json:"sweep_deg"` // from s toward q
	}
	wedgeJSON struct {
		For    string `json:"for"`
		Count  int    `json:"count"`
		Length mm     `json:"length_mm"`
		Thick  mm     `json:"thick_mm"`
		Tip    mm     `json:"tip_mm"`
		Width  mm     `json:"width_mm"`
	}
	routerJSON struct {
		Cutter     mm        `json:"cutter_mm"`
		Bush       mm        `json:"bush_mm"`
		FaceRadius mm        `json:"cutter_radius_at_face_mm"`
		Offset     mm        `json:"template_offset_mm"`
		Template   shapeJSON `json:"template"` // at the first step
	}
	cleats struct {
		Height    mm          `json:"height_mm"`
		Thickness mm          `json:"thickness_mm"`
		Each      []cleatJSON `json:"each"`
	}
	cleatJSON struct {
		Step    int     `json:"step"`
		Length  mm      `json:"length_mm"`
		Outline [][2]mm `json:"outline_mm"`
		Screws  [][2]mm `json:"screws_mm"`
	}
)

func stringOf(f *layout.Flight, s *layout.String) solidJSON {
	out := solidJSON{
		Name: s.Name, Build: f.Spec.Stringer.Build.String(), Hand: s.Hand.String(), Count: 1, Positions: []int{int(s.Hand) + 1},
		Stock: f.Spec.Stringer.Stock.Name, Width: mm(s.Width), Thickness: mm(s.Thickness),
		Step: mm(s.Step), Margin: mm(s.Margin), Left: mm(s.Left()), Reach: mm(s.Width - s.Left()),
		FootCut: mm(s.FootCut), SeatCut: mm(s.SeatCut), HeadTop: mm(s.HeadTop), HeadCut: mm(s.HeadCut),
		HeadContact: maybe(s.HeadContact), LeastBlank: mm(s.LeastBlank), Marks: mms(s.Marks), Outline: points(s.Outline),
	}
	if s.StockLength > 0 {
		l := s.StockLength.MM()
		out.StockLength = maybe(&l)
	}
	if s.Housed != nil {
		out.Housing = housingOf(s.Housed)
	} else {
		c := &cleats{Height: mm(s.Cleated.Height), Thickness: mm(s.Cleated.Out)}
		for _, k := range s.Cleated.Cleats {
			c.Each = append(c.Each, cleatJSON{k.Step, mm(k.Length), points(k.Corners), points(k.Screws)})
		}
		out.Cleats = c
	}
	return out
}

func housingOf(h *stringer.Housed) *housing {
	out := &housing{
		Depth: mm(h.Depth), Behind: mm(h.Behind), Taper: h.WedgeTaper, Undercut: h.Undercut, Round: mm(h.Round),
		Wedges: []wedgeJSON{},
		Router: routerJSON{mm(h.Cutter), mm(h.Bush), mm(h.Router.FaceRadius), mm(h.Router.Offset), shape(h.Router.Template)},
	}
	for i := range h.Housings {
		one := &h.Housings[i]
		open := one.Open
		if open == nil {
			open = []int{}
		}
		out.Housings = append(out.Housings, housingJSON{one.Step, shape(one.Outline), open})
	}
	for _, w := range h.Wedges {
		out.Wedges = append(out.Wedges, wedgeJSON{WedgeOf(w), w.Count, mm(w.Length), mm(w.Thick), mm(w.Tip), mm(w.Width)})
	}
	return out
}

func shape(p geom.Path) shapeJSON {
	out := shapeJSON{Arcs: []arcJSON{}}
	for k, e := range p.Edges {
		out.Outline = append(out.Outline, point(e.From))
		if e.IsArc() {
			out.Arcs = append(out.Arcs, arcJSON{k, point(e.Centre), mm(e.Radius), degrees(e.Sweep)})
		}
	}
	return out
}
