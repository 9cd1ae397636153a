package pdfout

import (
	"io"
	"time"

	"github.com/go-pdf/fpdf"
)

// Write makes the PDF file of a document. It writes nothing when it returns an
// error about the document itself.
func Write(w io.Writer, doc Document) error {
	if err := doc.Paper.Check(); err != nil {
		return err
	}
	pdf := fpdf.NewCustom(&fpdf.InitType{UnitStr: "pt", Size: fpdf.SizeType{Wd: 1, Ht: 1}})
	pdf.SetCatalogSort(true)
	pdf.SetCreationDate(time.Unix(0, 0).UTC())
	pdf.SetModificationDate(time.Unix(0, 0).UTC())
	for range doc.Pages {
		pdf.AddPageFormat("P", fpdf.SizeType{Wd: doc.Paper.Width.In() * 72, Ht: doc.Paper.Height.In() * 72})
	}
	return pdf.Output(w)
}
