// Package letter sets lines of writing: how wide they are and where each
// piece of them stands, fractions stacked over a bar. Every writer of drawings
// and pages sets its text through Set, so that a line has the same size
// everywhere.
//
// Lengths are millimetres on the sheet. The letters are those of Go Regular
// (BSD licence), which writers embed or name.
package letter

import (
	"math"
	"sync"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// Family is the font's name.
const Family = "Go"

// Font is the font file, TrueType. It is not to be changed.
func Font() []byte { return goregular.TTF }

// Least is the smallest height of capitals and figures that is printed: ISO
// 3098's smallest, and what a poor printer still shows.
const Least = 2.5

// face is the font with the sizes read out of it.
type face struct {
	font     *sfnt.Font
	perEm    float64
	capitals float64 // height of a capital, of the em
	descent  float64 // below the baseline, of the em
	advance  [firstUncached]float64
	has      [firstUncached]bool
}

// firstUncached ends the range of runes (Latin, with its signs) whose widths
// are read once; others are looked up each time.
const firstUncached = 0x250

var load = sync.OnceValue(func() *face {
	f, err := sfnt.Parse(goregular.TTF)
	if err != nil {
		panic("letter: the font built into this program cannot be read: " + err.Error())
	}
	perEm := f.UnitsPerEm()
	var buf sfnt.Buffer
	m, err := f.Metrics(&buf, fixed.Int26_6(perEm), font.HintingNone)
	if err != nil {
		panic("letter: the font built into this program cannot be read: " + err.Error())
	}
	// At a size of perEm/64 pixels to the em a font unit is 1/64 of a pixel,
	// which is what sfnt counts in.
	fc := &face{font: f, perEm: float64(perEm), capitals: float64(m.CapHeight) / float64(perEm), descent: float64(m.Descent) / float64(perEm)}
	for r := rune(0); r < firstUncached; r++ {
		fc.advance[r], fc.has[r] = fc.lookUp(&buf, r)
	}
	return fc
})

// lookUp returns a rune's width, of the em, and whether the font has it. The
// width of one it has not is that of the font's box for missing letters.
func (fc *face) lookUp(buf *sfnt.Buffer, r rune) (width float64, has bool) {
	g, err := fc.font.GlyphIndex(buf, r)
	if err != nil {
		return 0, false
	}
	a, err := fc.font.GlyphAdvance(buf, g, fixed.Int26_6(fc.perEm), font.HintingNone)
	if err != nil {
		return 0, false
	}
	return float64(a) / fc.perEm, g != 0
}

func (fc *face) rune(r rune) (width float64, has bool) {
	if r >= 0 && r < firstUncached {
		return fc.advance[r], fc.has[r]
	}
	var buf sfnt.Buffer
	return fc.lookUp(&buf, r)
}

// Has tells whether the font can show a rune.
func Has(r rune) bool {
	_, has := load().rune(r)
	return has
}

// Em is the font size, in millimetres, at which capitals are height high.
func Em(height float64) float64 { return height / load().capitals }

// Width is the length of a text set in one run, its fractions not stacked.
func Width(text string, height float64) float64 {
	fc := load()
	sum := 0.0
	for _, r := range text {
		w, _ := fc.rune(r)
		sum += w
	}
	return sum * height / fc.capitals
}

// descent is how far letters reach below the baseline.
func descent(height float64) float64 { return load().descent * height / load().capitals }

// figureHeight is the height of a stacked fraction's figures: 0.7 of the
// text's, the next smaller height of ISO 3098, but never too small to read.
func figureHeight(height float64) float64 { return math.Max(Least, 0.7*height) }
