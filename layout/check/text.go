package check

import (
	"fmt"
	"io"
	"strings"

	"stepoff/spec/rules"
)

// lineWidth is what a plain terminal shows; idWidth is the column of ids.
const (
	lineWidth = 80
	idWidth   = 20
)

// Text writes the findings in groups, those that fail first, and the caution
// that belongs to every check.
func Text(w io.Writer, findings []Finding, code *rules.Code) error {
	var b strings.Builder
	fmt.Fprintf(&b, "Checked by %s: %s\n", code.Name, code.Title)
	for _, status := range Statuses {
		some := Of(findings, status)
		if len(some) == 0 {
			continue
		}
		fmt.Fprintf(&b, "\n%s\n", strings.ToUpper(status.String()))
		for _, p := range paragraphs(some) {
			column(&b, p.id, p.text)
		}
	}
	fmt.Fprintf(&b, "\n%s\n\n", tally(findings))
	for _, line := range wrap("Local code and the building official decide. Have structure checked by a licensed professional; nothing here is an approval. "+
		"Cut one stringer and test it before cutting the rest.", lineWidth) {
		b.WriteString(line + "\n")
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// TextChanges writes what was tried to make the strength hold: what holds, the
// least change first, then what does not.
func TextChanges(w io.Writer, changes []Change) error {
	var b strings.Builder
	if len(changes) == 0 {
		b.WriteString("\nNo change is suggested: everything that has a verdict on its strength holds.\n")
	}
	for _, part := range []struct {
		title string
		holds bool
	}{{"Would hold, each by itself, the least change first", true}, {"Would not hold", false}} {
		title := "\n" + part.title + "\n"
		for _, c := range changes {
			if c.Holds == part.holds {
				b.WriteString(title)
				title = ""
				column(&b, c.Kind, c.Text)
			}
		}
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// tally counts the findings.
func tally(findings []Finding) string {
	return fmt.Sprintf("%d fail, %d warn, %d info, %d pass",
		len(Of(findings, Fail)), len(Of(findings, Warn)), len(Of(findings, Info)), len(Of(findings, Pass)))
}

type paragraph struct{ id, text string }

// paragraphs joins neighbours that begin alike: rules of thumb come by the
// dozen.
func paragraphs(findings []Finding) []paragraph {
	var all []paragraph
	for i, f := range findings {
		if f.lead != "" && i > 0 && findings[i-1].ID == f.ID && findings[i-1].lead == f.lead {
			_, rest, _ := strings.Cut(f.Text, f.lead+": ")
			all[len(all)-1].text += "; " + rest
			continue
		}
		text := f.Text
		switch {
		case f.lead != "" || f.Section == "":
		case f.Basis == "" || f.Basis == rules.TextRead.String():
			text += " [" + f.Section + "]"
		default:
			text += " [" + f.Section + ", " + f.Basis + "]"
		}
		all = append(all, paragraph{f.ID, text})
	}
	return all
}

// column writes an id and a text wrapped beside it. An id too wide for its
// column has a line of its own.
func column(b *strings.Builder, id, text string) {
	if len(id) > idWidth {
		b.WriteString(id + "\n")
		id = ""
	}
	for _, line := range wrap(text, lineWidth-idWidth-1) {
		fmt.Fprintf(b, "%-*s %s\n", idWidth, id, line)
		id = ""
	}
}

// wrap breaks a text into lines of no more than so many characters.
func wrap(text string, room int) (lines []string) {
	words := strings.Fields(text)
	for len(words) > 0 {
		line := words[0]
		words = words[1:]
		for len(words) > 0 && len([]rune(line))+1+len([]rune(words[0])) <= room {
			line, words = line+" "+words[0], words[1:]
		}
		lines = append(lines, line)
	}
	return lines
}
