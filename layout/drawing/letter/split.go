package letter

// piece is plain text, or a mixed number with its parts.
type piece struct {
	text               string
	whole, over, under string
}

// split cuts a text into plain pieces and fractions of a tape: a numerator
// below a denominator of 2, 4, 8, 16, 32 or 64, with the whole number before
// it, if there is one. Dates, slopes and other strokes stay as written.
func split(text string) []piece {
	var out []piece
	plain := 0 // where the plain piece being gathered begins
	for i := 0; i < len(text); {
		if !digit(text[i]) {
			i++
			continue
		}
		from := i
		p, to := mixed(text, from)
		if to == 0 || from > 0 && (joined(text[from-1])) {
			for i < len(text) && digit(text[i]) {
				i++
			}
			continue
		}
		if plain < from {
			out = append(out, piece{text: text[plain:from]})
		}
		out = append(out, p)
		plain, i = to, to
	}
	if plain < len(text) {
		out = append(out, piece{text: text[plain:]})
	}
	return out
}

// mixed reads "7 5/8" or "5/8" at from; to is where it ends, 0 when there is
// none.
func mixed(text string, from int) (p piece, to int) {
	first := digits(text, from)
	numerator := from
	if first < len(text) && text[first] == ' ' {
		numerator = first + 1
		p.whole = text[from:first]
	}
	over := digits(text, numerator)
	if over == numerator || over == len(text) || text[over] != '/' {
		return piece{}, 0
	}
	under := digits(text, over+1)
	p.over, p.under = text[numerator:over], text[over+1:under]
	if !onTape(p.over, p.under) || under < len(text) && text[under] == '/' {
		return piece{}, 0
	}
	p.text = text[from:under]
	return p, under
}

func digits(text string, i int) int {
	for i < len(text) && digit(text[i]) {
		i++
	}
	return i
}

func digit(b byte) bool { return b >= '0' && b <= '9' }

// joined tells whether a figure right behind b belongs to something else than
// a number of its own: 3/4/26, 1.5/8, L/360.
func joined(b byte) bool {
	return b == '/' || b == '.' || b == ',' || b >= 'a' && b <= 'z' || b >= 'A' && b <= 'Z'
}

// onTape tells whether over/under is a proper fraction that a tape shows.
func onTape(over, under string) bool {
	switch under {
	case "2", "4", "8", "16", "32", "64":
	default:
		return false
	}
	// Digits only and no leading zero, so the longer is the larger.
	if over == "" || over[0] == '0' {
		return false
	}
	return len(over) < len(under) || len(over) == len(under) && over < under
}

// Words cuts a text where a line may break: at blanks, but not within a mixed
// number.
func Words(text string) []string {
	var words []string
	word := ""
	flush := func() {
		if word != "" {
			words = append(words, word)
			word = ""
		}
	}
	for _, p := range split(text) {
		if p.over != "" {
			word += p.text
			continue
		}
		from := 0
		for i := 0; i < len(p.text); i++ {
			if c := p.text[i]; c == ' ' || c == '\t' || c == '\n' || c == '\r' {
				word += p.text[from:i]
				flush()
				from = i + 1
			}
		}
		word += p.text[from:]
	}
	flush()
	return words
}
