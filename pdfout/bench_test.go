package pdfout_test

import (
	"bytes"
	"fmt"
	"runtime"
	"slices"
	"testing"
	"time"

	"github.com/go-pdf/fpdf"

	"stepoff/layout/drawing"
	"stepoff/layout/geom"
	"stepoff/pdfout"
	"stepoff/pdfout/pdftest"
	"stepoff/spec/measure"
)

// bare writes a document with the library alone, as it comes: so many pages
// with so many path operations on each.
func bare(b testing.TB, pages, ops int) []byte {
	b.Helper()
	pdf := fpdf.NewCustom(&fpdf.InitType{UnitStr: "pt", Size: fpdf.SizeType{Wd: 612, Ht: 792}})
	pdf.SetCatalogSort(true)
	pdf.SetCreationDate(time.Unix(0, 0).UTC())
	pdf.SetModificationDate(time.Unix(0, 0).UTC())
	pdf.SetAutoPageBreak(false, 0)
	s := uint32(1)
	next := func(most float64) float64 {
		s = s*1664525 + 1013904223
		return float64(s>>8) / (1 << 24) * most
	}
	for range pages {
		pdf.AddPage()
		pdf.SetLineWidth(0.5)
		for i := range ops {
			if i%50 == 0 {
				if i > 0 {
					pdf.DrawPath("D")
				}
				pdf.MoveTo(next(612), next(792))
			}
			pdf.LineTo(next(612), next(792))
		}
		pdf.DrawPath("D")
	}
	var out bytes.Buffer
	if err := pdf.Output(&out); err != nil {
		b.Fatal(err)
	}
	return out.Bytes()
}

// operations is how many pieces of paths the pages of a file draw.
func operations(f *pdftest.File) (n int) {
	for _, page := range f.Pages {
		for _, p := range page.Paths {
			n += len(p.Pieces)
		}
	}
	return n
}

// against times making a document, planning included, and writing a bare one
// with as many pages and path operations, by turns, and reports the ratio of
// their medians.
func against(b *testing.B, make func() []byte) {
	f := pdftest.MustRead(b, make())
	pages, ops := len(f.Pages), operations(f)/len(f.Pages)
	bare(b, pages, ops) // once unmeasured, as make was
	var ours, theirs []time.Duration
	var before, after runtime.MemStats
	var allocated uint64
	for b.Loop() {
		runtime.ReadMemStats(&before)
		start := time.Now()
		make()
		ours = append(ours, time.Since(start))
		runtime.ReadMemStats(&after)
		allocated += after.TotalAlloc - before.TotalAlloc
		start = time.Now()
		bare(b, pages, ops)
		theirs = append(theirs, time.Since(start))
	}
	median := func(d []time.Duration) float64 {
		slices.Sort(d)
		return float64(d[len(d)/2])
	}
	b.ReportMetric(median(ours)/median(theirs), "ratio")
	b.ReportMetric(median(ours)/1e6, "ms/document")
	b.ReportMetric(float64(allocated)/float64(len(ours))/(1<<20), "MB/document")
	b.ReportMetric(float64(pages), "pages")
	b.ReportMetric(0, "ns/op") // ours and the bare one together: of no meaning
}

// BenchmarkSet is a cover and a board of 172 in on letter, and on a roll.
func BenchmarkSet(b *testing.B) {
	for _, p := range []pdfout.Paper{letterPaper, papers[3]} {
		b.Run(p.Name, func(b *testing.B) {
			against(b, func() []byte { return write(b, set(b, p, measure.Imperial)) })
		})
	}
}

// BenchmarkGrowth is the same on more and more pages: the time and the memory
// of a page stay what they are.
func BenchmarkGrowth(b *testing.B) {
	for _, pages := range []int{50, 500} {
		b.Run(fmt.Sprint(pages), func(b *testing.B) {
			part := many(pages)
			against(b, func() []byte {
				return write(b, document(letterPaper, measure.Imperial, plan(b, part, letterPaper, measure.Imperial)))
			})
		})
	}
}

// many is a part that takes about so many letter sheets.
func many(sheets int) pdfout.Part {
	d := &drawing.Drawing{Name: "many"}
	for i := range sheets {
		x := float64(i%25) * 254
		y := float64(i/25) * 190
		for k := range 10 {
			d.Line(drawing.Cut, geom.Pt(x+float64(k)*20, y), geom.Pt(x+250-float64(k)*15, y+180))
		}
	}
	return pdfout.Part{Name: "many", Title: "Many", Drawing: d, Station: "the left"}
}
