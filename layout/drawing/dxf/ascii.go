package dxf

import (
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"
)

// spelled are characters that are not ASCII, and what is written in their
// place: Release 12 says no encoding, and programs take other characters for
// whatever their own is.
var spelled = strings.NewReplacer(
	"½", " 1/2", "¼", " 1/4", "¾", " 3/4", "⅛", " 1/8", "⅜", " 3/8", "⅝", " 5/8", "⅞", " 7/8",
	"′", "'", "″", `"`, "‘", "'", "’", "'", "“", `"`, "”", `"`,
	"–", "-", "—", "-", "−", "-", "×", "x", "·", ".", "…", "...",
	"°", " deg", "⌀", "dia ", "±", "+/-", "√", "sqrt ", "≤", "<=", "≥", ">=", "→", "->",
	"ß", "ss", "æ", "ae", "Æ", "AE", "œ", "oe", "Œ", "OE", "ø", "o", "Ø", "O", "ł", "l", "Ł", "L", "đ", "d", "Đ", "D", "þ", "th", "Þ", "Th",
	// What DXF itself would take for something else: \U+ for a character by its
	// number; a ^ stands for itself before a space.
	`\`, "/", "^", "^ ",
)

// ascii spells a text in printable ASCII: letters without their accents, one
// space for any other space, ? for what cannot be spelled.
func ascii(text string) string {
	var b strings.Builder
	for _, r := range norm.NFD.String(spelled.Replace(text)) {
		switch {
		case r > ' ' && r <= '~':
			b.WriteRune(r)
		case unicode.IsSpace(r) || unicode.IsControl(r):
			b.WriteByte(' ')
		case unicode.Is(unicode.Mn, r): // an accent, parted from its letter
		default:
			b.WriteByte('?')
		}
	}
	// %%d would be a degree.
	out := strings.Join(strings.Fields(b.String()), " ")
	for strings.Contains(out, "%%") {
		out = strings.ReplaceAll(out, "%%", "% %")
	}
	return out
}
