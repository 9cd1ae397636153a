package packet

import (
	"io"

	"stepoff/pdfout"
	"stepoff/spec"
	"stepoff/spec/measure"
)

// WriteCalibration writes the printer's test page for the paper.
func WriteCalibration(w io.Writer, on spec.Paper, units measure.Units) error {
	return pdfout.Write(w, pdfout.Document{
		Title: "Printer test", Subject: "Printer test", Paper: paper(on), Units: units,
		Pages: []pdfout.Page{pdfout.Calibration{}},
	})
}

// Factors are what the printer makes of a true length across and along the
// paper, from what the test page's two bars measure. The error says which bar,
// and why it cannot be.
func Factors(on spec.Paper, units measure.Units, x, y measure.Length) (scaleX, scaleY float64, errX, errY error) {
	across, along := pdfout.Bars(paper(on), units)
	scaleX, errX = pdfout.Factor(x, across)
	scaleY, errY = pdfout.Factor(y, along)
	return scaleX, scaleY, errX, errY
}
