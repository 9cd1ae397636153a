package source

import (
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"
)

// Mistake is one thing wrong in a file: where, what, and what would be right.
type Mistake struct {
	File    *File
	At      Pos
	Message string
}

// Error prints the place and the message, and under them the line with a caret
// below the place.
func (m Mistake) Error() string {
	line, caret := m.excerpt()
	head := fmt.Sprintf("%s:%s: %s", m.File.Name, m.At, m.Message)
	if line == "" {
		return head
	}
	return head + "\n" + line + "\n" + caret
}

// excerptWidth is how many characters of a line are shown: as much as fits on
// one line of most terminals.
const excerptWidth = 100

// excerpt returns the line of the mistake and a line with a caret below it.
// Tabs stay tabs in both, so that the caret stands right at any tab width.
func (m Mistake) excerpt() (line, caret string) {
	runes := []rune(m.File.line(m.At.Line))
	if strings.TrimSpace(string(runes)) == "" {
		return "", ""
	}
	column := min(max(m.At.Column-1, 0), len(runes)) // a place just past the end is one too
	before := ""
	if len(runes) > excerptWidth {
		start := max(0, min(column-excerptWidth/2, len(runes)-excerptWidth))
		if start > 0 {
			before = "..."
		}
		runes, column = runes[start:start+excerptWidth], column-start
	}
	space := strings.Repeat(" ", len(before))
	for i, r := range runes {
		if r != '\t' && (Unprintable(r) || r == utf8.RuneError) {
			runes[i] = utf8.RuneError
		}
		if i < column {
			if r == '\t' {
				space += "\t"
			} else {
				space += " "
			}
		}
	}
	return before + string(runes), space + "^"
}

// Mistakes is everything wrong with a file, or with several.
type Mistakes []Mistake

// Add adds a mistake.
func (m *Mistakes) Add(f *File, at Pos, format string, args ...any) {
	*m = append(*m, Mistake{File: f, At: at, Message: fmt.Sprintf(format, args...)})
}

// Err returns the mistakes as an error, each once, in the order of the files'
// names and of the places in them; nil when there are none.
func (m Mistakes) Err() error {
	if len(m) == 0 {
		return nil
	}
	sorted := slices.Clone(m)
	slices.SortStableFunc(sorted, func(a, b Mistake) int {
		switch {
		case a.File.Name != b.File.Name:
			return strings.Compare(a.File.Name, b.File.Name)
		case a.At.before(b.At):
			return -1
		case b.At.before(a.At):
			return 1
		}
		return 0
	})
	return slices.Compact(sorted)
}

// maxShown bounds what is printed: past a hundred mistakes the file is another
// than it was taken for.
const maxShown = 100

// Error prints the mistakes one after the other.
func (m Mistakes) Error() string {
	var lines []string
	for i, mistake := range m {
		if i == maxShown {
			lines = append(lines, fmt.Sprintf("and %d mistakes more", len(m)-maxShown))
			break
		}
		lines = append(lines, mistake.Error())
	}
	return strings.Join(lines, "\n")
}
