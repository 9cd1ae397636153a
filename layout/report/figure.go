package report

import (
	"encoding/json"
	"fmt"
	"io"
	"slices"
	"strings"
	"text/tabwriter"

	"stepoff/layout/check"
	"stepoff/layout/choose"
	"stepoff/spec/rules"
)

type (
	figureJSON struct {
		Format  string       `json:"format"`
		Code    string       `json:"code"`
		Rise    mm           `json:"total_rise_mm"`
		Choices []choiceJSON `json:"choices"`
	}
	choiceJSON struct {
		Risers   int             `json:"risers"`
		UnitRise mm              `json:"unit_rise_mm"`
		UnitRun  mm              `json:"unit_run_mm"`
		TotalRun mm              `json:"total_run_mm"`
		Pitch    deg             `json:"pitch_deg"`
		Throat   mm              `json:"throat_mm"`
		Opening  *mm             `json:"opening_needed_mm,omitempty"`
		Headroom *mm             `json:"headroom_mm,omitempty"`
		Fits     bool            `json:"fits"`
		Posts    bool            `json:"needs_posts"`
		Meets    bool            `json:"meets"`
		Allowed  []string        `json:"allowed_by,omitempty"`
		Findings []check.Finding `json:"findings"`
	}
)

// FigureJSON writes the choices as stepoff-figure/1, best first.
func FigureJSON(w io.Writer, q choose.Request, choices []choose.Choice) error {
	out := figureJSON{Format: "stepoff-figure/1", Code: q.Code.Name, Rise: mm(q.Rise.MM()), Choices: []choiceJSON{}}
	for _, c := range choices {
		out.Choices = append(out.Choices, choiceJSON{
			Risers: c.Risers, UnitRise: mm(c.UnitRise), UnitRun: mm(c.Run.MM()), TotalRun: mm(c.TotalRun),
			Pitch: degrees(c.Pitch), Throat: mm(c.Throat), Opening: maybe(c.Opening), Headroom: maybe(c.Headroom),
			Fits: c.Fits, Posts: c.NeedsPosts, Meets: c.Meets(), Allowed: c.Allowed, Findings: append([]check.Finding{}, c.Findings...),
		})
	}
	return encode(w, out)
}

func encode(w io.Writer, v any) error {
	enc := json.NewEncoder(w)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	return enc.Encode(v)
}

// Figure writes the choices as a table, best first, and under it why each one
// that fails does, and which other codes would allow it.
func Figure(w io.Writer, q choose.Request, choices []choose.Choice) error {
	t := &text{st: q.Style}
	t.line("total rise %s, under %s", t.both(q.Rise), q.Code.Name)
	t.line("%s", q.Code.Title)
	t.line("first nosing to first riser cut: %s", t.st.Bare(q.Front))
	t.line("%s", Legend(t.st))
	t.line("")
	t.choices(q, choices)
	t.line("")
	t.line("* the best; x breaks a limit of the code; > longer than the available run;")
	t.line("p a sawn stringer may not span that far: posts, or a wall beside it")
	if l, ok := q.Code.Limit(rules.HeadroomMin); ok && q.FloorDepth != nil && l.Basis == rules.FromMemory {
		t.line("the openings rest on %s of headroom, from memory: verify", l.Text)
	}
	for _, c := range choices {
		t.reasons(c)
	}
	if slices.ContainsFunc(choices, func(c choose.Choice) bool { return len(c.Allowed) > 0 }) {
		t.line("")
		t.line("Limits of the codes named may be from memory: stepoff codes NAME says which.")
	}
	_, err := io.WriteString(w, t.String())
	return err
}

// choices is the table, one row a choice.
func (t *text) choices(q choose.Request, choices []choose.Choice) {
	heads := []string{"risers", "unit rise", "exactly", "run", "total run", "pitch", "throat", "2R+T"}
	if q.FloorDepth != nil {
		heads = append(heads, "opening")
	}
	padding := 2
	if q.FloorDepth != nil {
		padding = 1 // one column more has to fit the line
	}
	table := tabwriter.NewWriter(t, 0, 0, padding, ' ', 0)
	fmt.Fprintln(table, strings.Join(heads, "\t"))
	for i, c := range choices {
		cells := []string{fmt.Sprintf("%3d %s", c.Risers, mark(i, c)), t.st.BareMM(c.UnitRise), t.st.DecimalMM(c.UnitRise)}
		if c.Treads == 0 {
			fmt.Fprintln(table, strings.Join(append(cells, "no tread, no stringer"), "\t"))
			continue
		}
		cells = append(cells, t.st.Bare(c.Run), t.st.BareMM(c.TotalRun), fmt.Sprintf("%.2f", float64(degrees(c.Pitch))),
			t.st.BareMM(c.Throat), t.st.BareMM(2*c.UnitRise+c.Run.MM()))
		if c.Opening != nil {
			cells = append(cells, t.st.BareMM(*c.Opening))
		}
		fmt.Fprintln(table, strings.Join(cells, "\t"))
	}
	table.Flush()
}

// mark tells a choice's standing in one sign.
func mark(place int, c choose.Choice) string {
	switch {
	case !c.Meets():
		return "x"
	case !c.Fits:
		return ">"
	case place == 0 && c.NeedsPosts:
		return "*p"
	case place == 0:
		return "*"
	case c.NeedsPosts:
		return "p"
	}
	return " "
}

// reasons says why a choice fails, or by how much it does not fit.
func (t *text) reasons(c choose.Choice) {
	label := fmt.Sprintf("%s of %s", counted(c.Risers, "riser"), t.st.BareMM(c.UnitRise))
	if !c.Fits {
		t.line("")
		t.row(label, "%s more than the available run", t.st.InchesMM(c.TooLong))
		label = ""
	}
	if c.Meets() {
		return
	}
	if label != "" {
		t.line("")
	}
	for _, f := range check.Of(c.Findings, check.Fail) {
		t.row(label, "%s [%s]", f.Text, f.Section)
		label = ""
	}
	if len(c.Allowed) > 0 {
		t.row("", "allowed by %s", strings.Join(c.Allowed, ", "))
	} else {
		t.row("", "no other code that is known here allows it")
	}
}
