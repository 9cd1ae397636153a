package packet

import (
	"stepoff/layout"
	"stepoff/layout/turn"
	"stepoff/spec/measure"
)

func heights(s *layout.Stairway, w *layout.Winders) turn.WinderHeights {
	return turn.WinderHeights{Level: w.Levels[0], Rise: w.UnitRise, Tread: s.Job.Tread.Thickness.MM(), Flooring: s.Job.Levels.LowerFinish.MM()}
}

func upper(s *layout.Stairway, w *layout.Winders) (below, above *layout.Flight) {
	for _, f := range s.Flights() {
		if f.Foot == layout.Turn(w) {
			above = f
		}
		if f.Head == layout.Turn(w) {
			below = f
		}
	}
	return
}

func boxes(s *layout.Stairway, w *layout.Winders) []turn.Box {
	f := turn.BoxFraming{WinderHeights: heights(s, w), Sheathing: w.Spec.Sheathing.MM(), Stock: 38.1, Spacing: 16 * 25.4}
	if _, above := upper(s, w); above != nil && len(above.Stringers) > 0 {
		f.Seat = above.Stringers[0].SeatCut
	}
	return w.Laid.Boxes(f)
}

func marks(s *layout.Stairway, w *layout.Winders) []turn.WallMark {
	return w.Laid.WallMarks(heights(s, w))
}

func wallStrings(s *layout.Stairway, w *layout.Winders) ([]turn.WallString, []turn.HousedString) {
	h := heights(s, w)
	a := turn.WallHousing{Over: 25.4, Width: 11.25 * 25.4}
	below, above := upper(s, w)
	if below != nil && below.Treads > 0 {
		a.RunBelow = below.UnitRun.MM()
	}
	if above != nil && above.Treads > 0 {
		a.RunAbove = above.UnitRun.MM()
	}
	return w.Laid.WallStrings(h), w.Laid.HousedStrings(h, a)
}

func curveSteps(s *layout.Stairway, c *layout.Curve) turn.CurveSteps {
	cs := turn.CurveSteps{Angle: c.Spec.Angle, Inside: c.Inside, Width: c.Outside - c.Inside, Tread: s.Job.Tread.Thickness.MM(), Style: measure.Style{Units: s.Job.Units}, Floor: c.StartLevel}
	for k := 0; k <= c.Risers; k++ {
		cs.Levels = append(cs.Levels, s.Level(c.Below+k))
	}
	return cs
}

func curveFraming(s *layout.Stairway, c *layout.Curve) *turn.CurveFraming {
	sp := c.Spec
	f, _ := curveSteps(s, c).Framing(turn.CurveWalls{
		Plates: turn.PlateStock{SheetLength: sp.Sheet.Length.MM(), SheetWidth: sp.Sheet.Width.MM(), Thickness: sp.Sheet.Thickness.MM(), Width: sp.Plate.Width.MM(), Layers: sp.Layers, RunOff: turn.PlateRunOff},
		Stud:   38.1, Spacing: 16 * 25.4, Bearer: turn.BearerStock{Thickness: 38.1, Depth: 88.9}, Ledger: turn.BearerStock{Thickness: 38.1, Depth: 88.9}})
	return f
}

func curveStrings(s *layout.Stairway, c *layout.Curve) []*turn.CurveString {
	all, _ := curveSteps(s, c).Strings(5 * 25.4)
	return all
}
