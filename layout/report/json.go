package report

import (
	"io"

	"stepoff/layout"
	"stepoff/layout/check"
	"stepoff/layout/geom"
	"stepoff/spec"
	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

// The shapes of `layout --json`. The order of the fields is the order of the
// keys in the file; names and format are fixed, others' scripts rest on them.
type (
	layoutJSON struct {
		Format    string          `json:"format"`
		Job       jobJSON         `json:"job"`
		Code      string          `json:"code"`
		TotalRise mm              `json:"total_rise_mm"`
		Risers    int             `json:"risers"`
		UnitRise  *mm             `json:"unit_rise_mm,omitempty"` // left out where landings built already part the stairway
		Elements  []any           `json:"elements"`
		Headroom  *headroomJSON   `json:"headroom,omitempty"`
		Findings  []check.Finding `json:"findings"`
	}
	jobJSON struct {
		Name   string `json:"name"`
		Number string `json:"number"`
		Date   string `json:"date"`
	}
	flightJSON struct {
		Kind       string        `json:"kind"`
		Name       string        `json:"name"`
		Risers     int           `json:"risers"`
		Treads     int           `json:"treads"`
		UnitRun    *mm           `json:"unit_run_mm,omitempty"` // left out, as total run and pitch, where there is no tread
		TotalRun   *mm           `json:"total_run_mm,omitempty"`
		Pitch      *deg          `json:"pitch_deg,omitempty"`
		StartLevel mm            `json:"start_level_mm"`
		EndLevel   mm            `json:"end_level_mm"`
		Plan       planJSON      `json:"plan"`
		Levels     []mm          `json:"tread_levels_mm"`
		Stringers  []any         `json:"stringers"`          // stringerJSON or solidJSON
		Strength   []carrierJSON `json:"strength,omitempty"` // left out where nothing is known of the wood
		TreadWood  *treadsJSON   `json:"tread_strength,omitempty"`
		CutList    []boardJSON   `json:"cut_list"`
		UnitRise   mm            `json:"unit_rise_mm"`
		Outline    [][2]mm       `json:"outline_mm,omitempty"` // in plan, first riser line to the head
	}
	planJSON struct {
		X       mm  `json:"x_mm"`
		Y       mm  `json:"y_mm"`
		Heading deg `json:"heading_deg"`
	}
	stringerJSON struct {
		Name          string     `json:"name"`
		Build         string     `json:"build"`
		Count         int        `json:"count"`
		Positions     []int      `json:"positions"`
		Stock         string     `json:"stock,omitempty"`
		Width         mm         `json:"width_mm"`
		Thickness     mm         `json:"thickness_mm"`
		Step          mm         `json:"step_mm"`
		NotchDepth    mm         `json:"notch_depth_mm"`
		Throat        mm         `json:"throat_mm"`
		BottomDrop    mm         `json:"bottom_drop_mm"`
		FirstRiserCut mm         `json:"first_riser_cut_mm"`
		LastTreadCut  mm         `json:"last_tread_cut_mm"`
		SeatCut       mm         `json:"seat_cut_mm"`
		HeadCut       mm         `json:"head_cut_mm"`
		HeadContact   *mm        `json:"head_contact_mm,omitempty"`
		LeastBlank    mm         `json:"least_blank_mm"`
		StockLength   *mm        `json:"stock_length_mm,omitempty"`
		Marks         []mm       `json:"marks_mm"`
		Outline       [][2]mm    `json:"outline_mm"`
		Roots         [][2]mm    `json:"roots_mm"`
		Square        squareJSON `json:"square"`
		Saw           sawJSON    `json:"saw"`
	}
	squareJSON struct {
		Tongue    mm `json:"tongue_mm"`
		Blade     mm `json:"blade_mm"`
		Drift     mm `json:"drift_mm"`
		DriftRise mm `json:"drift_rise_mm"`
	}
	sawJSON struct {
		UncutFarFace mm  `json:"uncut_far_face_mm"`
		StopFace     mm  `json:"stop_face_mm"`
		LimitRiser   *mm `json:"overcut_limit_riser_mm,omitempty"`
		LimitTread   *mm `json:"overcut_limit_tread_mm,omitempty"`
	}
	boardJSON struct {
		Part      string `json:"part"`
		Count     int    `json:"count"`
		First     int    `json:"first_step"`
		Last      int    `json:"last_step"`
		Thickness mm     `json:"thickness_mm"`
		Depth     mm     `json:"depth_mm"`
		Length    *mm    `json:"length_mm,omitempty"`
		Bevels    []deg  `json:"bevels_deg,omitempty"` // of both ends; left out where both are square
	}
	headroomJSON struct {
		Least   *mm `json:"least_mm,omitempty"`
		AtX     *mm `json:"at_x_mm,omitempty"`
		Opening *mm `json:"opening_needed_mm,omitempty"`
		// Open is what of the upper floor has to be open over each member of a
		// stairway of several flights, in plan.
		Open []openJSON `json:"open_floor,omitempty"`
	}
	openJSON struct {
		Over    string  `json:"over"`
		Outline [][2]mm `json:"outline_mm"`
	}
	landingJSON struct {
		Kind         string       `json:"kind"`
		Name         string       `json:"name"`
		Level        mm           `json:"level_mm"`
		FramingLevel mm           `json:"framing_level_mm"`
		Outline      [][2]mm      `json:"outline_mm"`
		Angle        deg          `json:"turn_deg"` // to the left; to the right it is negative
		Length       mm           `json:"clear_length_mm"`
		Width        mm           `json:"clear_width_mm"`
		Framing      *framingJSON `json:"framing,omitempty"`
	}
	framingJSON struct {
		Top     mm          `json:"joist_top_mm"`
		Bottom  mm          `json:"joist_bottom_mm"`
		Outline [][2]mm     `json:"outline_mm"`
		CutList []pieceJSON `json:"cut_list"`
	}
	pieceJSON struct {
		Part      string `json:"part"`
		Count     int    `json:"count"`
		Stock     string `json:"stock,omitempty"`
		Thickness *mm    `json:"thickness_mm,omitempty"`
		Width     *mm    `json:"width_mm,omitempty"`
		Length    mm     `json:"length_mm"`
		Bevels    []deg  `json:"bevels_deg,omitempty"` // of both ends; left out where both are square
	}
)

// JSON writes the stairway as stepoff-layout/1, with what the code finds of it.
func JSON(w io.Writer, s *layout.Stairway, code *rules.Code, findings []check.Finding) error {
	out := layoutJSON{
		Format:    "stepoff-layout/1",
		Job:       jobJSON{s.Job.Name, s.Job.Number, s.Job.Date},
		Code:      s.Job.Code.Name,
		TotalRise: mm(s.TotalRise.MM()),
		Risers:    s.Risers,
		Elements:  []any{},
		Headroom:  headroom(s, code),
		Findings:  append([]check.Finding{}, findings...),
	}
	if rise, one := s.UnitRise(); one {
		out.UnitRise = maybe(&rise)
	}
	for _, e := range s.Elements {
		switch e := e.(type) {
		case *layout.Flight:
			out.Elements = append(out.Elements, flight(s, e, code))
		case *layout.Landing:
			out.Elements = append(out.Elements, landing(e))
		case *layout.Winders:
			out.Elements = append(out.Elements, winders(e))
		case *layout.Curve:
			out.Elements = append(out.Elements, curve(e))
		}
	}
	return encode(w, out)
}

// headroom is left out where nothing was measured to work it out from.
func headroom(s *layout.Stairway, code *rules.Code) *headroomJSON {
	asked := headroomOf(code)
	h := s.Headroom(asked)
	if h == nil || h.Least == nil && h.OpeningNeeded == nil {
		h = nil
	}
	out := &headroomJSON{}
	if h != nil {
		*out = headroomJSON{Least: maybe(h.Least), AtX: maybe(h.AtX), Opening: maybe(h.OpeningNeeded)}
	}
	if asked != nil && len(s.Elements) > 1 {
		for _, o := range s.OpeningInPlan(asked.MM()) {
			out.Open = append(out.Open, openJSON{o.Over.Label(), points(o.Outline.Points(arcWithin))})
		}
	}
	if h == nil && out.Open == nil {
		return nil
	}
	return out
}

// headroomOf is the code's headroom; nil where it has none.
func headroomOf(code *rules.Code) *measure.Length {
	if l, ok := code.Limit(rules.HeadroomMin); ok {
		return &l.Length
	}
	return nil
}

func landing(l *layout.Landing) landingJSON {
	out := landingJSON{
		Kind: l.Kind(), Name: l.Name, Level: mm(l.Level), FramingLevel: mm(l.FramingLevel),
		Outline: points(l.Outline), Angle: deg(l.Spec.Angle), Length: mm(l.Spec.Length.MM()), Width: mm(l.Spec.Width.MM()),
	}
	if l.Spec.Turn == spec.Right {
		out.Angle = -out.Angle
	}
	if w := l.Frame; w != nil {
		out.Framing = &framingJSON{Top: mm(w.Top), Bottom: mm(w.Bottom), Outline: points(w.Outline)}
		out.Framing.CutList = pieces(w.Pieces)
	}
	return out
}

func pieces(all []layout.FramePiece) (rows []pieceJSON) {
	for _, p := range all {
		row := pieceJSON{Part: p.Part, Count: p.Count, Stock: p.Stock, Length: mm(p.Length)}
		if p.Width > 0 {
			row.Width = maybe(&p.Width)
		}
		if p.Thickness > 0 {
			row.Thickness = maybe(&p.Thickness)
		}
		row.Bevels = endBevels(p.Bevels)
		rows = append(rows, row)
	}
	return rows
}

func flight(s *layout.Stairway, f *layout.Flight, code *rules.Code) flightJSON {
	w := s.Strength(f, code)
	out := flightJSON{
		Kind: f.Kind(), Name: f.Name, Risers: f.Risers, Treads: f.Treads,
		UnitRise:   mm(f.UnitRise),
		StartLevel: mm(f.StartLevel), EndLevel: mm(f.EndLevel),
		Plan:      planJSON{mm(f.X), mm(f.Y), deg(f.Heading)},
		Levels:    mms(f.TreadLevels),
		Stringers: []any{},
	}
	if f.Treads > 0 {
		run, pitch := f.UnitRun.MM(), degrees(f.Pitch)
		out.UnitRun, out.TotalRun, out.Pitch = maybe(&run), maybe(&f.TotalRun), &pitch
	}
	if f.Outline != nil {
		out.Outline = points(f.Outline)
	}
	for i := range f.Stringers {
		out.Stringers = append(out.Stringers, group(f, &f.Stringers[i], w, code))
	}
	if w != nil {
		out.Strength, out.TreadWood = carriers(w), treads(w)
	}
	for i := range f.Strings {
		out.Stringers = append(out.Stringers, stringOf(f, &f.Strings[i]))
	}
	out.CutList = boards(f.Boards)
	return out
}

func boards(all []layout.Board) []boardJSON {
	rows := []boardJSON{}
	for _, b := range all {
		row := boardJSON{Part: b.Kind.String(), Count: b.Count, First: b.Steps[0], Last: b.Steps[1],
			Thickness: mm(b.Thickness.MM()), Depth: mm(b.Depth)}
		if b.Length != nil {
			l := b.Length.MM()
			row.Length = maybe(&l)
		}
		row.Bevels = endBevels(b.Bevels)
		rows = append(rows, row)
	}
	return rows
}

// endBevels is nil where both ends are square.
func endBevels(b [2]float64) []deg {
	if b == [2]float64{} {
		return nil
	}
	return []deg{deg(b[0]), deg(b[1])}
}

func group(f *layout.Flight, g *layout.Group, w *layout.Strength, code *rules.Code) stringerJSON {
	out := stringerJSON{
		Name: g.Name, Build: f.Spec.Stringer.Build.String(), Count: len(g.Positions), Positions: places(g.Positions),
		Stock: f.Spec.Stringer.Stock.Name, Width: mm(g.Width), Thickness: mm(g.Thickness),
		Step: mm(g.Step), NotchDepth: mm(g.NotchDepth), Throat: mm(g.Throat), BottomDrop: mm(g.BottomDrop),
		FirstRiserCut: mm(g.FirstRiserCut), LastTreadCut: mm(g.LastTread), SeatCut: mm(g.SeatCut), HeadCut: mm(g.HeadCut),
		HeadContact: maybe(g.HeadContact), LeastBlank: mm(g.LeastBlank),
		Marks: []mm{}, Outline: points(g.Outline), Roots: points(g.Roots),
		Square: squareJSON{mm(g.Square.Tongue), mm(g.Square.Blade), mm(g.Square.Drift), mm(g.Square.DriftRise)},
		Saw:    sawJSON{UncutFarFace: mm(g.Kerf.FarUncut), StopFace: mm(g.Saw.StopShort)},
	}
	if g.StockLength > 0 {
		l := g.StockLength.MM()
		out.StockLength = maybe(&l)
	}
	if least, _, ok := w.LeastThroat(g, code); ok {
		riser, tread := g.OvercutLimit(least)
		out.Saw.LimitRiser, out.Saw.LimitTread = maybe(&riser), maybe(&tread)
	}
	for _, tip := range g.Tips {
		out.Marks = append(out.Marks, mm(tip.X))
	}
	return out
}

func points(ps []geom.Point) [][2]mm {
	out := make([][2]mm, len(ps))
	for i, p := range ps {
		out[i] = [2]mm{mm(p.X), mm(p.Y)}
	}
	return out
}

// places counts positions from 1, the leftmost going up.
func places(from0 []int) []int {
	out := make([]int, len(from0))
	for i, p := range from0 {
		out[i] = p + 1
	}
	return out
}
