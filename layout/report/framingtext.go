package report

import (
	"fmt"
	"math"
	"slices"

	"stepoff/layout"
	"stepoff/layout/turn"
)

// winderFraming writes where winders are struck on the walls, the boxes and the
// strings.
func (t *text) winderFraming(w *layout.Winders) {
	bare := t.st.BareMM
	t.line("")
	t.line("Riser lines on the walls and the newel: finished height, from the corner")
	var rows [][]string
	for k := range w.Laid.Risers {
		row := []string{fmt.Sprint(k + 1), "", "", ""}
		for _, m := range w.WallMarks {
			if m.Riser != k+1 {
				continue
			}
			at := 2
			if m.Wall == turn.LowerNewel || m.Wall == turn.UpperNewel {
				at = 3
			}
			row[1], row[at] = bare(m.Height), m.Wall.String()+" "+bare(m.FromCorner)
		}
		rows = append(rows, row)
	}
	t.table([]string{"riser", "height", "outside", "inside"}, rows)
	t.boxes(w)
	t.line("")
	t.line("Strings along them, unrolled: the run of each step on its face")
	rows = nil
	for _, s := range w.WallStrings {
		for _, step := range s.Steps {
			rows = append(rows, []string{s.Wall.String(), fmt.Sprint(step.Tread), bare(step.Run), bare(step.Whole), angle(step.Pitch)})
		}
	}
	t.table([]string{"face", "winder", "run", "round the corner", "pitch"}, rows)
	if len(w.HousedStrings) == 0 {
		return
	}
	t.line("The same housed: straight edges, one radius where the pitch changes")
	rows = nil
	for _, s := range w.HousedStrings {
		radius := "none"
		if s.Radius > 0 {
			radius = bare(s.Radius) + ", to " + angle(s.FlightPitch)
		}
		rows = append(rows, []string{s.Wall.String(), angle(s.Pitch), bare(s.Needs), radius})
	}
	t.table([]string{"face", "pitch", "least width", "radius, to the flight's pitch"}, rows)
}

// boxes writes the platforms, the lowest first.
func (t *text) boxes(w *layout.Winders) {
	if w.Boxes == nil {
		return
	}
	bare := t.st.BareMM
	t.line("")
	t.line("Boxes, in the order they are stacked; levels above the lower finished floor")
	var rows [][]string
	for k, b := range w.Boxes {
		under := "on the floor"
		switch {
		case k > 0:
			under = fmt.Sprintf("on box %d", k)
		case b.Leg > 0:
			under = fmt.Sprintf("on %s of %s", counted(w.Legs, "leg"), bare(b.Leg))
		}
		rows = append(rows, []string{fmt.Sprint(k + 1), bare(b.Height), bare(b.Bottom), bare(b.Top), under})
	}
	t.table([]string{"box", "height", "underside", "sheathing's top", "stands"}, rows)
}

// curveFraming writes plates, studs, bearers and strings of a curve.
func (t *text) curveFraming(c *layout.Curve) {
	bare := t.st.BareMM
	t.line("")
	t.line("Curved plates, %s of %s sheet", counted(c.Spec.Layers, "layer"), t.st.Bare(c.Spec.Sheet.Thickness))
	var rows [][]string
	for _, p := range c.Framing.Plates {
		rows = append(rows, []string{p.Name, bare(p.Inner), bare(p.Outer), fmt.Sprint(p.Segments), angle(p.Angle / float64(p.Segments)), bare(p.Face * c.Spec.Angle * math.Pi / 180 / float64(len(c.Treads)))})
	}
	t.table([]string{"plate", "inner radius", "outer", "segments", "each", "riser lines apart, clear edge"}, rows)
	t.line("")
	t.line("Studs at the riser lines, square cut, both walls alike")
	t.studs(c, func(s turn.Stud) bool { return s.Riser > 0 && s.Plate == turn.CurveInside }, func(s turn.Stud) int { return s.Riser })
	for _, plate := range []string{turn.CurveInside, turn.CurveOutside} {
		between := func(s turn.Stud) bool { return s.Riser == 0 && s.Plate == plate }
		if !slices.ContainsFunc(c.Framing.Studs, between) {
			continue
		}
		t.line("Studs between them under the treads, %s wall", plate)
		t.studs(c, between, func(s turn.Stud) int { return s.Tread })
	}
	t.curveStrings(c)
}

func (t *text) studs(c *layout.Curve, which func(turn.Stud) bool, number func(turn.Stud) int) {
	var cells []string
	for _, s := range c.Framing.Studs {
		if which(s) {
			cells = append(cells, fmt.Sprintf("%2d: %s", number(s), t.st.BareMM(s.Height)))
		}
	}
	t.grid(cells)
}

// curveStrings sets the strings of both sides beside each other.
func (t *text) curveStrings(c *layout.Curve) {
	t.line("")
	if c.NoStrings != "" {
		t.note("no strings: " + c.NoStrings)
		return
	}
	bare := t.st.BareMM
	t.line("Strings unrolled")
	header := []string{""}
	rows := [][]string{{"radius"}, {"unit run"}, {"pitch"}, {"length on the pitch"}, {"notch depth"}, {"string width"}, {"first riser cut, seat"}, {"plumb cut at the head"}, {"least blank"}, {"bent round"}}
	for _, s := range c.Strings {
		header = append(header, s.Name)
		bent := "layers too thick"
		if b := s.Bend; b != nil {
			bent = fmt.Sprintf("%s in %d layers", bare(b.FormRadius), b.Layers)
		}
		for k, cell := range []string{
			bare(s.Radius), bare(s.UnitRun), angle(s.Pitch), bare(s.Length), bare(s.NotchDepth), bare(s.BoardWidth),
			bare(s.FirstRiserCut) + ", " + bare(s.SeatCut), bare(s.HeadCut), bare(s.LeastBlank), bent,
		} {
			rows[k] = append(rows[k], cell)
		}
	}
	t.table(header, rows)
	for _, s := range c.Strings {
		if s.NoBend != "" {
			t.note(s.NoBend)
		}
	}
}

// note writes a sentence on as many lines as it takes.
func (t *text) note(said string) {
	for _, line := range wrapped(said, lineWidth-2) {
		t.line("  %s", line)
	}
}
