package pdfout

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"stepoff/layout/drawing/letter"
)

// longest is how many letters of one text are looked at; nothing on a sheet
// has room for more, and nobody's job file shall make a page take minutes.
const longest = 20_000

// safe makes a text from outside fit to be set: blanks for anything that
// blanks or breaks a line, ? for what the font cannot show or the PDF library
// would fail on (broken UTF-8, runes beyond the basic plane), nothing for
// what is not seen.
func safe(text string) string {
	if plain(text) {
		return text
	}
	var b strings.Builder
	for i, r := range text {
		switch {
		case i > longest:
			return b.String()
		case r == utf8.RuneError, r > 0xFFFF:
			b.WriteByte('?')
		case unicode.IsSpace(r):
			b.WriteByte(' ')
		case r == 0xFE0E || r == 0xFE0F || r == 0x200D: // how the rune before looks, joins
		case unicode.IsControl(r), unicode.In(r, unicode.Cf), !letter.Has(r):
			b.WriteByte('?')
		default:
			b.WriteRune(r)
		}
	}
	return b.String()
}

// plain tells whether a text is short and made of printable ASCII only.
func plain(text string) bool {
	if len(text) > longest {
		return false
	}
	for i := 0; i < len(text); i++ {
		if text[i] < ' ' || text[i] > '~' {
			return false
		}
	}
	return true
}

// fit shortens a text to a width, with ... at its end to say so.
func fit(text string, height, width float64) string {
	text = safe(text)
	if letter.Set(text, height).Width <= width {
		return text
	}
	runes := []rune(text)
	if most := int(width/height*4) + 1; len(runes) > most { // no letter is narrower than a quarter of its height
		runes = runes[:most]
	}
	for n := len(runes); n > 0; n-- {
		short := strings.TrimRight(string(runes[:n]), " ") + "..."
		if letter.Set(short, height).Width <= width {
			return short
		}
	}
	return "..."
}
