package rules

import (
	"encoding/json"
	"fmt"
	"io"
	"strings"

	"stepoff/spec/measure"
)

// lineWidth is what a plain terminal shows.
const lineWidth = 80

// ListText writes the names and titles of the codes that are built in.
func ListText(w io.Writer) error {
	var b strings.Builder
	for _, name := range names {
		c, _ := Lookup(name)
		fmt.Fprintf(&b, "%-18s %s\n", name, c.Title)
	}
	b.WriteString("\nA file of your own may start from one of them and change limits:\n" +
		"  base: irc-2021\n  limits:\n    riser-max: 8 1/4\"\n")
	_, err := io.WriteString(w, b.String())
	return err
}

// Text writes every limit of a code, its section and basis, and where the
// values come from.
func (c *Code) Text(w io.Writer) error {
	var b strings.Builder
	wrap(&b, 0, c.Name+": "+c.Title)
	if c.Base != "" {
		fmt.Fprintf(&b, "builds on %s\n", c.Base)
	}
	if len(c.Limits) == 0 {
		b.WriteString("sets no limits\n")
	}
	weakest := TextRead
	for _, l := range c.Limits {
		info, _ := InfoOf(l.Key)
		fmt.Fprintf(&b, "\n%s\n", strings.TrimRight(fmt.Sprintf("%-30s %-20s %s", l.Key, l.Text, l.Section), " "))
		meaning := info.Meaning
		if l.When != Always {
			meaning += " (" + l.When.String() + ")"
		}
		if l.Measured != "" {
			meaning += "; measured: " + l.Measured
		}
		wrap(&b, 2, meaning)
		if l.Note != "" {
			wrap(&b, 2, "note: "+l.Note)
		}
		basis := "basis: " + l.Basis.String()
		if len(l.Sources) > 0 {
			basis += " (" + strings.Join(l.Sources, ", ") + ")"
		}
		wrap(&b, 2, basis)
		weakest = max(weakest, l.Basis)
	}
	if len(c.Sources) > 0 {
		b.WriteString("\nWhere the values were found\n")
		for _, s := range c.Sources {
			wrap(&b, 2, s.Key+": "+s.Text)
		}
	}
	if weakest == FromMemory {
		b.WriteByte('\n')
		wrap(&b, 0, "Verify the values from memory against the book before relying on them. "+
			"Local code and the building official decide.")
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// wrap writes words on lines that start after an indent, those after the first
// two columns farther in.
func wrap(b *strings.Builder, indent int, text string) {
	line := strings.Repeat(" ", indent)
	start := true
	for _, word := range strings.Fields(text) {
		if !start && len([]rune(line))+1+len([]rune(word)) > lineWidth {
			b.WriteString(line + "\n")
			line, start = strings.Repeat(" ", indent+2), true
		}
		if !start {
			line += " "
		}
		line, start = line+word, false
	}
	b.WriteString(line + "\n")
}

// The shapes of `codes --json`: stepoff-codes/1.
type (
	codesJSON struct {
		Format string     `json:"format"`
		Codes  []codeJSON `json:"codes"`
	}
	codeJSON struct {
		Name    string            `json:"name"`
		Title   string            `json:"title"`
		Base    string            `json:"base,omitempty"`
		Limits  []limitJSON       `json:"limits,omitempty"`
		Sources map[string]string `json:"sources,omitempty"`
	}
	limitJSON struct {
		ID       string   `json:"id"`
		Rule     string   `json:"rule"`
		Meaning  string   `json:"meaning"`
		Value    string   `json:"value"`
		MM       float64  `json:"value_mm,omitempty"`
		Degrees  float64  `json:"value_deg,omitempty"`
		KPa      float64  `json:"value_kpa,omitempty"`
		N        float64  `json:"value_n,omitempty"`
		When     string   `json:"when,omitempty"`
		Section  string   `json:"section"`
		Measured string   `json:"measured,omitempty"`
		Basis    string   `json:"basis"`
		Sources  []string `json:"sources,omitempty"`
		Note     string   `json:"note,omitempty"`
	}
)

// ListJSON writes the codes that are built in as stepoff-codes/1, without their
// limits.
func ListJSON(w io.Writer) error {
	out := codesJSON{Format: "stepoff-codes/1"}
	for _, name := range names {
		c, _ := Lookup(name)
		out.Codes = append(out.Codes, codeJSON{Name: c.Name, Title: c.Title, Base: c.Base})
	}
	return encode(w, out)
}

// JSON writes one code with every limit as stepoff-codes/1.
func (c *Code) JSON(w io.Writer) error {
	one := codeJSON{Name: c.Name, Title: c.Title, Base: c.Base}
	for _, l := range c.Limits {
		info, _ := InfoOf(l.Key)
		row := limitJSON{ID: string(l.Key), Rule: info.Rule, Meaning: info.Meaning, Value: l.Text,
			MM: measure.SnapMM(l.Length.MM()), Degrees: l.Degrees, KPa: measure.SnapMM(l.Pascals / 1000), N: measure.SnapMM(l.Newtons),
			Section: l.Section, Measured: l.Measured, Basis: l.Basis.String(), Sources: l.Sources, Note: l.Note}
		if l.When != Always {
			row.When = l.When.String()
		}
		one.Limits = append(one.Limits, row)
	}
	for _, s := range c.Sources {
		if one.Sources == nil {
			one.Sources = map[string]string{} // written with its keys in order
		}
		one.Sources[s.Key] = s.Text
	}
	return encode(w, codesJSON{Format: "stepoff-codes/1", Codes: []codeJSON{one}})
}

func encode(w io.Writer, v any) error {
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	return e.Encode(v)
}
