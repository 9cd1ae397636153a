package report

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"stepoff/layout/asbuilt"
	"stepoff/layout/check"
	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

// PunchText writes an inspection: the flight step by step, what puts it right,
// and every finding.
func PunchText(w io.Writer, in *asbuilt.Inspection, st measure.Style) error {
	t := &text{st: st}
	for _, title := range PunchTitle(in) {
		for _, line := range wrapped(title, lineWidth) {
			t.line("%s", line)
		}
	}
	t.line("%s", Legend(st))
	t.line("")
	for _, row := range PunchFigures(in, st) {
		t.row(row[0], "%s", row[1])
	}
	t.line("")
	header, rows := PunchTable(in, st)
	t.table(header, rows)
	for _, note := range PunchNotes(in, st) {
		for _, line := range wrapped(note, lineWidth-2) {
			t.line("  %s", line)
		}
	}
	t.line("")
	for _, row := range PunchRemedy(in, st) {
		t.row(row[0], "%s", row[1])
	}
	t.line("")
	if _, err := io.WriteString(w, t.String()); err != nil {
		return err
	}
	return check.Text(w, PunchFindings(in), in.Code)
}

// PunchTitle is the stair's name, number and date, where they are known, and the
// code it is held against.
func PunchTitle(in *asbuilt.Inspection) (lines []string) {
	a := in.Stair
	words := slices.DeleteFunc([]string{a.Name, a.Number, a.Date}, func(s string) bool { return s == "" })
	if len(words) > 0 {
		lines = append(lines, strings.Join(words, ", "))
	}
	code := "code " + a.Code.Name
	if !a.Code.Given {
		code += " (none named in the file: taken by default)"
	}
	return append(lines, code)
}

// PunchFindings are the findings that are printed: rules of thumb help to choose
// a rise and a run, and those of a stair that stands are chosen.
func PunchFindings(in *asbuilt.Inspection) []check.Finding {
	return slices.DeleteFunc(slices.Clone(in.Findings), func(f check.Finding) bool { return strings.HasPrefix(f.ID, "comfort-") })
}

// PunchFigures are what holds for the whole flight, each with its label.
func PunchFigures(in *asbuilt.Inspection, st measure.Style) [][2]string {
	rows := [][2]string{
		{"total rise", fmt.Sprintf("%s, %d risers of %s in the mean", st.Format(in.TotalRise), len(in.Steps), st.InchesMM(in.MeanRise))},
		{"risers", spread(&in.Risers, "riser", st)},
	}
	if in.Treads != nil {
		rows = append(rows, [2]string{"runs, nosing to nosing", spread(in.Treads, "run", st)})
	}
	if in.Nosings != nil {
		rows = append(rows, [2]string{"nosings", spread(in.Nosings, "nosing", st)})
	}
	if in.Throat != nil {
		rows = append(rows, [2]string{"throat left", throat(in, st)})
	}
	return rows
}

// spread tells the least and the most, and the neighbours that differ most.
func spread(s *asbuilt.Spread, one string, st measure.Style) string {
	if s.Apart == 0 {
		return "all " + st.Inches(s.Least.Length)
	}
	text := fmt.Sprintf("%s (%s %d) to %s (%s %d), %s apart", st.Inches(s.Least.Length), one, s.Least.Number,
		st.Inches(s.Most.Length), one, s.Most.Number, st.Inches(s.Apart))
	if n := s.Neighbours; n != nil {
		text += fmt.Sprintf("; neighbours %d and %d differ most, by %s", n.Lower, n.Lower+1, st.Inches(n.Apart))
	}
	return text
}

func throat(in *asbuilt.Inspection, st measure.Style) string {
	t := in.Throat
	left := st.InchesMM(t.Left)
	if t.Measured {
		return left + " as measured"
	}
	text := fmt.Sprintf("%s: %s board, notches %s deep", left, st.InchesMM(t.Width), st.InchesMM(t.NotchDepth))
	switch {
	case !t.Searched:
		text += "; overcuts, which take from it, were not looked for"
	case t.Riser == 0 && t.Tread == 0:
		text += ", no overcuts"
	case t.Riser == 0 || t.Tread == 0:
		text += ", overcuts take " + st.InchesMM(max(t.Riser, t.Tread))
	default:
		text += fmt.Sprintf(", overcuts take %s on the riser line and %s on the tread line, of which the greater counts", st.InchesMM(t.Riser), st.InchesMM(t.Tread))
	}
	if most := max(t.Riser, t.Tread); most > 0 {
		text += fmt.Sprintf(": of the section's strength in bending %.2f is left, less what has split", t.SectionLeft())
	}
	return text
}

// PunchTable is the flight step by step from the bottom up: a column is left
// out where nothing stands in it. Lengths are bare, their unit is the legend's.
func PunchTable(in *asbuilt.Inspection, st measure.Style) (header []string, rows [][]string) {
	header = []string{"step", "riser", "off mean", "tread", "nosing", "pad", "then", "what is wrong"}
	used := make([]bool, len(header))
	for i, s := range in.Steps {
		tread, nosing, pad, then := "floor", "", "", ""
		if s.Tread != nil {
			tread = st.Bare(*s.Tread)
		}
		if s.Nosing != nil {
			nosing = st.Bare(*s.Nosing)
		}
		if s.Pad > 0 {
			pad = st.Bare(s.Pad)
		}
		if in.Remedy.Verdict == asbuilt.Pad {
			then = st.Bare(s.Padded)
		}
		var wrong []string
		for _, f := range s.Faults {
			wrong = append(wrong, f.Text)
		}
		rows = append(rows, []string{fmt.Sprint(s.Number), st.Bare(s.Riser), off(s.Off, st), tread, nosing, pad, then, strings.Join(wrong, "; ")})
		for c, cell := range rows[i] {
			used[c] = used[c] || cell != ""
		}
	}
	used[len(used)-1] = true
	kept := func(cells []string) (some []string) {
		for c, cell := range cells {
			if used[c] {
				some = append(some, cell)
			}
		}
		return some
	}
	for i := range rows {
		rows[i] = kept(rows[i])
	}
	return kept(header), rows
}

// PunchNotes explain words of the table that stand in it.
func PunchNotes(in *asbuilt.Inspection, st measure.Style) (notes []string) {
	for _, c := range []struct {
		of, words string
		on        asbuilt.Part
		key       rules.Key
	}{
		{"risers", "low or high", asbuilt.Riser, rules.RiserVariation},
		{"runs", "short or long", asbuilt.Tread, rules.RunVariation},
		{"nosings", "small or large", asbuilt.Nosing, rules.NosingVariation},
	} {
		l, ok := in.Code.Limit(c.key)
		if ok && slices.ContainsFunc(in.Steps, func(s asbuilt.Step) bool { return s.StandsOut(c.on) }) {
			notes = append(notes, fmt.Sprintf("%s: outside the band of %s, as far as %s may differ, that holds most of them", c.words, st.Inches(l.Length), c.of))
		}
	}
	return notes
}

// off is a difference from the mean with its sign.
func off(mm float64, st measure.Style) string {
	text := st.BareMM(mm)
	if mm > 0 && !strings.HasPrefix(text, "0") {
		return "+" + text
	}
	return text
}

// padNote says what a pad is; common practice.
const padNote = "A pad covers its whole tread, nosing and all, so that no run changes: glued and screwed down, its front edge shaped as the nosings are. These are the thinnest that will do: more of them, stepping down evenly to nothing, bring the risers nearer to each other. Measure every riser again when all are on."

// PunchRemedy is what puts the steps right, and what is wrong besides, each with
// its label; an empty label goes on with the one before.
func PunchRemedy(in *asbuilt.Inspection, st measure.Style) (rows [][2]string) {
	r := in.Remedy
	label := "to put right"
	say := func(text string) {
		rows = append(rows, [2]string{label, text})
		label = ""
	}
	switch r.Verdict {
	case asbuilt.Nothing:
		say("the steps: nothing to do")
	case asbuilt.Rebuild:
		for i, why := range r.Why {
			if i == 0 {
				why = "rebuild the flight: " + why
			}
			say(why)
		}
	case asbuilt.Pad:
		var pads []string
		for _, s := range in.Steps {
			if s.Pad > 0 {
				pads = append(pads, fmt.Sprintf("%s on tread %d", st.Inches(s.Pad), s.Number))
			}
		}
		say("pads: " + strings.Join(pads, ", "))
		say(fmt.Sprintf("%s of pads in all, the least there is in whole steps of %s; then the risers are %s", st.Inches(r.Total()), st.Inches(r.Step), spread(&r.Spread, "riser", st)))
		say(padNote)
	}
	label = "and besides"
	for _, also := range r.Also {
		say(also)
	}
	return rows
}

// table writes columns as wide as what stands in them; the last goes on under
// itself.
func (t *text) table(header []string, rows [][]string) {
	last := len(header) - 1
	widths := make([]int, last)
	for _, r := range append([][]string{header}, rows...) {
		for c := range widths {
			widths[c] = max(widths[c], len([]rune(r[c])))
		}
	}
	room := lineWidth - 2
	for _, w := range widths {
		room -= w + 2
	}
	for _, r := range append([][]string{header}, rows...) {
		lines := wrapped(r[last], room)
		for i, line := range lines {
			var b strings.Builder
			for c, w := range widths {
				cell := ""
				if i == 0 {
					cell = r[c]
				}
				if c == 0 {
					fmt.Fprintf(&b, "%*s  ", w, cell)
				} else {
					fmt.Fprintf(&b, "%-*s  ", w, cell)
				}
			}
			t.line("  %s%s", b.String(), line)
		}
	}
}

// wrapped breaks a text into lines of no more than so many characters, one line
// at least.
func wrapped(text string, room int) (lines []string) {
	line := ""
	for _, word := range strings.Fields(text) {
		switch {
		case line == "":
			line = word
		case len([]rune(line))+1+len([]rune(word)) <= room:
			line += " " + word
		default:
			lines, line = append(lines, line), word
		}
	}
	return append(lines, line)
}
