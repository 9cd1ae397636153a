package report

import (
	"fmt"

	"stepoff/layout"
	"stepoff/layout/geom"
	"stepoff/layout/turn"
	"stepoff/spec"
	"stepoff/spec/measure"
)

// The shapes of winders and curves in `layout --json`.
type (
	windersJSON struct {
		Kind     string           `json:"kind"`
		Name     string           `json:"name"`
		Setback  mm               `json:"setback_mm"`
		Pivot    *[2]mm           `json:"pivot_mm,omitempty"` // left out where the riser lines do not meet in one point
		Treads   []taperedJSON    `json:"treads"`
		Boxes    []boxJSON        `json:"boxes,omitempty"` // left out where no framing is asked for
		Marks    []markJSON       `json:"wall_marks"`
		Nosings  []markJSON       `json:"nosing_marks"`
		Strings  []wallStringJSON `json:"wall_strings"`
		Housed   []housedJSON     `json:"housed_strings"`
		Framing  []pieceJSON      `json:"framing_cut_list,omitempty"`
		Lines    string           `json:"lines"`
		Turn     deg              `json:"turn_deg"`  // to the left; to the right it is negative
		Corner   [2]mm            `json:"corner_mm"` // inside
		UnitRise mm               `json:"unit_rise_mm"`
		Outline  [][2]mm          `json:"outline_mm"`
		Measured measuredJSON     `json:"measured"`
		CutList  []boardJSON      `json:"cut_list"`
	}
	curveJSON struct {
		Kind       string        `json:"kind"`
		Name       string        `json:"name"`
		Inside     mm            `json:"inside_radius_mm"`
		Outside    mm            `json:"outside_radius_mm"`
		Treads     []taperedJSON `json:"treads"`
		Studs      []studJSON    `json:"studs"`
		Plates     []plateJSON   `json:"plates"`
		Strings    []stringJSON  `json:"strings,omitempty"` // left out where none can be cut
		Bearers    []bearerJSON  `json:"bearers"`
		Sheets     int           `json:"plate_sheets"`
		Framing    []pieceJSON   `json:"framing_cut_list"`
		Risers     int           `json:"risers"`
		UnitRise   mm            `json:"unit_rise_mm"`
		StartLevel mm            `json:"start_level_mm"`
		EndLevel   mm            `json:"end_level_mm"`
		Levels     []mm          `json:"tread_levels_mm"`
		Turn       deg           `json:"turn_deg"` // to the left; to the right it is negative
		Plan       planJSON      `json:"plan"`
		Centre     [2]mm         `json:"centre_mm"`
		Outline    [][2]mm       `json:"outline_mm"`
		Measured   measuredJSON  `json:"measured"`
		CutList    []boardJSON   `json:"cut_list"`
	}
	// measuredJSON says where the treads are measured, and how deep they have to be
	// there.
	measuredJSON struct {
		Walklines     []mm   `json:"walklines_mm"` // from the inside edge of the clear width
		Along         string `json:"along"`        // chord or arc
		Narrow        mm     `json:"narrow_at_mm"` // from the same edge
		LeastWalkline *mm    `json:"least_walkline_mm,omitempty"`
		LeastNarrow   *mm    `json:"least_narrow_mm,omitempty"`
	}
	taperedJSON struct {
		Name     string    `json:"name"`
		Level    mm        `json:"level_mm"`
		Outline  [][2]mm   `json:"outline_mm"`
		Nosing   [2][2]mm  `json:"nosing_mm"` // inner end, outer end
		Walkline mm        `json:"walkline_mm"`
		Narrow   mm        `json:"narrow_mm"`
		Wide     mm        `json:"wide_mm"`
		Angle    deg       `json:"angle_deg"`
		Board    cutToJSON `json:"board"`
	}
	// cutToJSON is a tread's board: its outline in plan, and the rectangle that is
	// cut from.
	cutToJSON struct {
		Outline [][2]mm `json:"outline_mm"`
		Length  mm      `json:"length_mm"` // along its nosing
		Depth   mm      `json:"depth_mm"`
	}
)

// arcWithin is how far the points that stand for an arc may leave it, in
// millimetres: less than a pencil line is wide. The arc itself is given by its
// centre and radius.
const arcWithin = 0.1

func winders(w *layout.Winders) windersJSON {
	out := windersJSON{
		Boxes: boxes(w.Boxes), Marks: marks(w.WallMarks), Nosings: marks(w.NosingMarks),
		Strings: wallStrings(w.WallStrings), Housed: housed(w.HousedStrings), Framing: pieces(w.Pieces),
		Kind: w.Kind(), Name: w.Name, Setback: mm(w.Spec.Setback.MM()), Lines: "radial",
		Treads: tapered(w.Laid, w.Levels, w.Boards), Turn: turned(w.Spec.Angle, w.Spec.Turn), Corner: point(w.Centre),
		UnitRise: mm(w.UnitRise), Outline: path(w.Outline()), Measured: measured(w.Spec.Depths), CutList: boards(w.CutList),
	}
	if w.Pivot != nil {
		p := point(*w.Pivot)
		out.Pivot = &p
	}
	if w.Spec.Even {
		out.Lines = "even"
	}
	return out
}

func curve(c *layout.Curve) curveJSON {
	return curveJSON{
		Studs: studs(c.Framing.Studs), Plates: plates(c.Framing.Plates), Strings: curveStrings(c.Strings),
		Bearers: bearers(c.Framing.Bearers), Sheets: c.Sheets, Framing: pieces(c.Pieces),
		Kind: c.Kind(), Name: c.Name, Inside: mm(c.Inside), Outside: mm(c.Outside),
		Treads: tapered(c.Laid, c.Levels, c.Boards), Risers: c.Risers, UnitRise: mm(c.UnitRise),
		StartLevel: mm(c.StartLevel), EndLevel: mm(c.EndLevel), Levels: mms(c.Levels),
		Turn: turned(c.Spec.Angle, c.Spec.Turn), Plan: planJSON{mm(c.Entry.At.X), mm(c.Entry.At.Y), deg(c.Entry.Heading)},
		Centre: point(c.Centre), Outline: path(c.Outline()), Measured: measured(c.Spec.Depths), CutList: boards(c.CutList),
	}
}

func turned(angle float64, hand spec.Turn) deg {
	if hand == spec.Right {
		angle = -angle
	}
	return deg(angle)
}

func measured(d spec.Depths) measuredJSON {
	out := measuredJSON{Along: "chord", Narrow: mm(d.NarrowAt.MM()), LeastWalkline: limit(d.LeastWalkline), LeastNarrow: limit(d.LeastNarrow)}
	if d.Arc {
		out.Along = "arc"
	}
	for _, l := range d.Walklines {
		out.Walklines = append(out.Walklines, mm(l.MM()))
	}
	return out
}

// limit is left out where there is none.
func limit(l measure.Length) *mm {
	if l == 0 {
		return nil
	}
	v := mm(l.MM())
	return &v
}

func tapered(l *turn.Laid, levels []float64, boards []layout.TaperedBoard) []taperedJSON {
	all := []taperedJSON{}
	for k, t := range l.Treads {
		b := boards[k]
		all = append(all, taperedJSON{
			Name: fmt.Sprintf("tread-%d", k+1), Level: mm(levels[k]), Outline: path(t.Outline),
			Nosing:   [2][2]mm{point(l.Nosings[k].In), point(l.Nosings[k].Out)},
			Walkline: mm(t.Walkline), Narrow: mm(t.Narrow), Wide: mm(t.Wide), Angle: deg(t.Angle),
			Board: cutToJSON{path(b.Outline), mm(b.Along), mm(b.Deep)},
		})
	}
	return all
}

func point(p geom.Point) [2]mm { return [2]mm{mm(p.X), mm(p.Y)} }

func path(p geom.Path) [][2]mm { return points(p.Points(arcWithin)) }
