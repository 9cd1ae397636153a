package pdfout

import (
	"math"
	"strings"

	"stepoff/layout/drawing/letter"
)

// Spacing of lines of writing: from baseline to baseline in heights of a
// capital, and what is kept free between a line's lowest and the next one's
// highest ink where fractions make them tall, millimetres.
const (
	leading   = 1.8
	clearance = 0.7
)

// wrap breaks a text into lines no wider than width, at most so many (0: as
// many as it takes), the last ending in ... when something was left out. A
// word too long for a line is cut.
func wrap(text string, height, width float64, most int) []letter.Line {
	blank := letter.Set("x x", height).Width - letter.Set("xx", height).Width
	var lines []letter.Line
	var words []string
	used := 0.0
	flush := func() {
		if len(words) > 0 {
			lines = append(lines, letter.Set(strings.Join(words, " "), height))
			words, used = nil, 0
		}
	}
	for _, w := range letter.Words(safe(text)) {
		if most > 0 && len(lines) > most {
			break
		}
		wide := letter.Set(w, height).Width
		if len(words) > 0 && used+blank+wide > width {
			flush()
		}
		for wide > width && len(w) > 1 && (most == 0 || len(lines) <= most) {
			n := fitting(w, height, width)
			words = []string{w[:n]}
			flush()
			w = w[n:]
			wide = letter.Set(w, height).Width
		}
		if len(words) > 0 {
			used += blank
		}
		words, used = append(words, w), used+wide
	}
	flush()
	if most > 0 && len(lines) > most {
		last := fit(reads(lines[most-1])+" ...", height, width)
		lines = append(lines[:most-1], letter.Set(last, height))
	}
	return lines
}

// fitting is how many bytes of a long word fit a width, one letter at least.
func fitting(word string, height, width float64) int {
	used := 0.0
	for i, r := range word {
		used += letter.Set(string(r), height).Width
		if used > width && i > 0 {
			return i
		}
	}
	return len(word)
}

// reads is a set line's text.
func reads(l letter.Line) string {
	var b strings.Builder
	for _, s := range l.Spans {
		b.WriteString(s.Text)
	}
	return b.String()
}

// gapAbove is what is kept free above a line that follows another.
func gapAbove(before, l letter.Line, height float64) float64 {
	return math.Max(clearance, leading*height-before.Down-l.Up)
}

// stackHeight is how high lines stand one below the other.
func stackHeight(lines []letter.Line, height float64) float64 {
	sum := 0.0
	for i, l := range lines {
		if i > 0 {
			sum += gapAbove(lines[i-1], l, height)
		}
		sum += l.Up + l.Down
	}
	return sum
}
