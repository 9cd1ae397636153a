package spec

import (
	"fmt"
	"strings"

	"stepoff/spec/measure"
	"stepoff/spec/source"
)

// PaperSize is a size of paper, upright: the short side across.
type PaperSize struct {
	Name   string         // as asked for
	Width  measure.Length // across the printer, the short side of a sheet
	Height measure.Length // along it; 0 for a roll
	Roll   bool
}

// papers are the sheets known by name.
//
// Sources: letter and legal, common practice in North America; tabloid is ANSI
// B; ANSI C to E, ANSI/ASME Y14.1; Arch A to E, the architects' series in the
// same standard; A4 to A0, ISO 216. The figures are from memory.
var papers = []PaperSize{
	inches("letter", 17, 22),
	inches("legal", 17, 28),
	inches("tabloid", 22, 34),
	inches("ansi-c", 34, 44),
	inches("ansi-d", 44, 68),
	inches("ansi-e", 68, 88),
	inches("arch-a", 18, 24),
	inches("arch-b", 24, 36),
	inches("arch-c", 36, 48),
	inches("arch-d", 48, 72),
	inches("arch-e", 72, 96),
	millimetres("a4", 210, 297),
	millimetres("a3", 297, 420),
	millimetres("a2", 420, 594),
	millimetres("a1", 594, 841),
	millimetres("a0", 841, 1189),
}

// inches is a sheet in half inches.
func inches(name string, width, height measure.Length) PaperSize {
	return PaperSize{Name: name, Width: width * measure.Inch / 2, Height: height * measure.Inch / 2}
}

func millimetres(name string, width, height measure.Length) PaperSize {
	return PaperSize{Name: name, Width: width * measure.Millimetre, Height: height * measure.Millimetre}
}

// PaperNames returns the names of the sheets that are known.
func PaperNames() []string {
	names := make([]string, len(papers))
	for i, p := range papers {
		names[i] = p.Name
	}
	return names
}

// Bounds of paper. The least is a sheet that still holds a margin, an overlap
// and something between them; the most is what a PDF page may measure in every
// reader, 14 400 pt.
const (
	leastPaper = 3 * measure.Inch
	mostPaper  = 200 * measure.Inch
)

// ParsePaperSize reads the name of a sheet (letter, a4), a roll by its width
// (roll 36", roll 914mm) or two lengths (12" x 18"), the longer of which is
// taken as the height. Bare numbers are in the given units.
func ParsePaperSize(text string, units measure.Units) (PaperSize, error) {
	name := strings.Join(strings.Fields(text), " ")
	for _, p := range papers {
		if p.Name == strings.ToLower(name) {
			return p, nil
		}
	}
	if width, found := strings.CutPrefix(name, "roll "); found {
		w, err := paperSide(width, units)
		if err != nil {
			return PaperSize{}, err
		}
		return PaperSize{Name: name, Width: w, Roll: true}, nil
	}
	if first, second, found := strings.Cut(strings.ReplaceAll(name, "×", "x"), "x"); found && strings.ContainsAny(first, "0123456789") {
		w, err := paperSide(first, units)
		if err != nil {
			return PaperSize{}, err
		}
		h, err := paperSide(second, units)
		if err != nil {
			return PaperSize{}, err
		}
		return PaperSize{Name: name, Width: min(w, h), Height: max(w, h)}, nil
	}
	return PaperSize{}, fmt.Errorf("%s is no paper size that is known: %s, a roll by its width (roll 36\") or two lengths (12\" x 18\")%s",
		measure.Quote(text), strings.Join(PaperNames(), ", "), source.DidYouMean(name, PaperNames()))
}

func paperSide(text string, units measure.Units) (measure.Length, error) {
	l, err := measure.Parse(strings.TrimSpace(text), units)
	if err != nil {
		return 0, err
	}
	if l < leastPaper || l > mostPaper {
		style := measure.Style{Units: units}
		return 0, fmt.Errorf("paper is between %s and %s wide and long, not %s", style.Inches(leastPaper), style.Inches(mostPaper), measure.Quote(text))
	}
	return l, nil
}
