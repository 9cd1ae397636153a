package report

import (
	"fmt"
	"slices"
	"strings"

	"stepoff/layout"
	"stepoff/layout/turn"
	"stepoff/spec"
	"stepoff/spec/measure"
)

func (t *text) winders(w *layout.Winders) {
	bare, asked := t.st.BareMM, w.Spec
	how := "a quarter turn"
	if asked.Angle != 90 {
		how = fmt.Sprintf("a turn of %s", angle(asked.Angle))
	}
	lines := "riser lines through one pivot"
	if asked.Even {
		lines = "riser lines through even chords"
	}
	t.heading(w.Name, "%s%s, %d winders, %s up", how, toHand(asked.Turn), asked.Treads, counted(w.Risers, "riser"))
	said := "as stated"
	if asked.SetbackChosen {
		said = "the least that is deep enough"
	}
	t.row("set-back", "%s, before and after the inside corner: %s; %s", bare(asked.Setback.MM()), said, lines)
	t.depths(asked.Depths)
	t.line("")
	t.line("Winders, between nosings; the board with the rectangle to cut it from")
	t.treads(w.Laid, w.Levels, w.Boards)
	t.winderFraming(w)
}

func (t *text) curve(s *layout.Stairway, c *layout.Curve) {
	bare := t.st.BareMM
	t.heading(c.Name, "%s %s", counted(c.Risers, "riser"), between(c.Foot, c.Head))
	t.row("from level, to level", "%s, %s", bare(c.StartLevel), bare(c.EndLevel))
	if c.Spec.RisersChosen {
		t.row("chosen here", "risers, the best under %s", s.Job.Code.Name)
	}
	t.row("radii", "%s inside, %s outside", bare(c.Inside), bare(c.Outside))
	t.row("turns", "%s%s, a tread %s", angle(c.Spec.Angle), toHand(c.Spec.Turn), angle(c.Spec.Angle/float64(len(c.Treads))))
	t.depths(c.Spec.Depths)
	t.line("")
	t.line("Treads, between nosings; the board with the rectangle to cut it from")
	t.table(append([]string{"no."}, treadHead[2:]...), t.alikeTreads(c.Laid, c.Boards))
	t.line("")
	t.treadLevels(s, c.Levels)
	t.curveFraming(c)
}

// depths says where tapered treads are measured, and what they have to be there.
func (t *text) depths(d spec.Depths) {
	var lines []string
	for _, l := range d.Walklines {
		lines = append(lines, t.st.Bare(l))
	}
	along := ""
	if d.Arc {
		along = ", along the arc"
	}
	t.row("walkline", "%s from the inside edge%s%s", strings.Join(lines, " and "), along, t.atLeast(d.LeastWalkline))
	where := "at the inside edge"
	if d.NarrowAt > 0 {
		where = t.st.Bare(d.NarrowAt) + " from the inside edge"
	}
	t.row("narrow end", "%s, square to the nosing%s", where, t.atLeast(d.LeastNarrow))
}

func (t *text) atLeast(l measure.Length) string {
	if l == 0 {
		return ""
	}
	return "; at least " + t.st.Bare(l)
}

var treadHead = []string{"no.", "level", "walkline", "narrow", "wide", "board, along x deep"}

// treads writes one row a tread.
func (t *text) treads(l *turn.Laid, levels []float64, boards []layout.TaperedBoard) {
	var rows [][]string
	for k := range l.Treads {
		row := []string{fmt.Sprint(k + 1), t.st.BareMM(levels[k])}
		rows = append(rows, append(row, t.tread(&l.Treads[k], &boards[k])...))
	}
	t.table(treadHead, rows)
}

// alikeTreads writes one row for all treads in turn that come out alike.
func (t *text) alikeTreads(l *turn.Laid, boards []layout.TaperedBoard) (rows [][]string) {
	first := 0
	for k := range l.Treads {
		row := append([]string{numbers(first+1, k+1)}, t.tread(&l.Treads[k], &boards[k])...)
		if n := len(rows); n > 0 && slices.Equal(rows[n-1][1:], row[1:]) {
			rows[n-1] = row
			continue
		}
		first = k
		row[0] = numbers(k+1, k+1)
		rows = append(rows, row)
	}
	return rows
}

// numbers names a row of treads: 3, or 3 to 5.
func numbers(from, to int) string {
	if from == to {
		return fmt.Sprint(from)
	}
	return fmt.Sprintf("%d to %d", from, to)
}

func (t *text) tread(d *turn.Tapered, b *layout.TaperedBoard) []string {
	bare := t.st.BareMM
	return []string{bare(d.Walkline), bare(d.Narrow), bare(d.Wide), bare(b.Along) + " x " + bare(b.Deep)}
}

// angle prints degrees, with no more places than it takes to set a bevel.
func angle(degrees float64) string {
	return strings.TrimSuffix(strings.TrimRight(fmt.Sprintf("%.2f", degrees), "0"), ".") + " degrees"
}
