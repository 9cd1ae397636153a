package letter

import "math"

// Run is a piece of a line that is written in one go. X and Y are the place of
// its baseline's left end, from that of the line.
type Run struct {
	Text   string
	X, Y   float64
	Height float64 // of capitals
}

// Bar is the line between the figures of a fraction.
type Bar struct{ X0, X1, Y float64 }

// Span is a piece of a line that reads as Text. Without a fraction it is one
// run; a mixed number is its whole part, the figures above and below the bar,
// and the bar.
type Span struct {
	Text string
	Runs []Run
	Bar  *Bar
}

// Line is one line of writing as it is set.
type Line struct {
	Spans    []Span
	Width    float64
	Up, Down float64 // how far it reaches above and below its baseline
}

// BarWidth is the width of a fraction's bar: narrow, ISO 128.
const BarWidth = 0.35

// Set sets a line with its capitals height millimetres high. Fractions of a
// tape, such as 7 5/8, are stacked.
func Set(text string, height float64) Line {
	line := Line{Up: height, Down: descent(height)}
	for _, p := range split(text) {
		span := Span{Text: p.text}
		if p.over == "" {
			span.Runs = []Run{{p.text, line.Width, 0, height}}
			line.Width += Width(p.text, height)
			line.Spans = append(line.Spans, span)
			continue
		}
		if p.whole != "" {
			span.Runs = append(span.Runs, Run{p.whole, line.Width, 0, height})
			line.Width += Width(p.whole, height)
		}
		small := figureHeight(height)
		gap := math.Max(0.5, 0.12*height) // bar to figure, clear of the bar's own width
		wo, wu := Width(p.over, small), Width(p.under, small)
		wide := math.Max(wo, wu)
		x0 := line.Width + 0.15*height
		mid := height / 2
		span.Runs = append(span.Runs,
			Run{p.over, x0 + (wide-wo)/2, mid + gap, small},
			Run{p.under, x0 + (wide-wu)/2, mid - gap - small, small})
		span.Bar = &Bar{x0, x0 + wide, mid}
		line.Width = x0 + wide + 0.15*height
		line.Up = math.Max(line.Up, mid+gap+small)
		line.Down = math.Max(line.Down, gap+small-mid)
		line.Spans = append(line.Spans, span)
	}
	return line
}
