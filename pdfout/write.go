package pdfout

import (
	"errors"
	"fmt"
	"io"
	"math"
	"time"

	"github.com/go-pdf/fpdf"

	"stepoff/layout/drawing/letter"
)

// producer names the program in the file.
const producer = "stepoff"

// Write makes the PDF file of a document. It writes nothing when it returns an
// error about the document itself. The same document gives the same bytes.
func Write(w io.Writer, doc Document) error {
	file, err := doc.file()
	if err != nil {
		return err
	}
	_, err = w.Write(file)
	return err
}

func (doc Document) file() ([]byte, error) {
	doc.Paper = doc.Paper.filled()
	if err := doc.Paper.Check(); err != nil {
		return nil, err
	}
	c, err := newCanvas(doc)
	if err != nil {
		return nil, err
	}
	leaves, err := doc.leaves(c.tags.root)
	if err != nil {
		return nil, err
	}
	for _, l := range leaves {
		c.tallest = math.Max(c.tallest, l.height)
	}
	for i, l := range leaves {
		l.draw(c, i+1, len(leaves))
		if l.bookmark != "" {
			c.pdf.Bookmark(safe(l.bookmark), 0, 0)
		}
	}
	c.flush()
	if c.err != nil {
		return nil, c.err
	}
	var plain whole
	if err := c.pdf.Output(&plain); err != nil {
		return nil, fmt.Errorf("the PDF library failed: %w", err)
	}
	o, err := parse(plain)
	if err != nil {
		return nil, err
	}
	if err := o.compress(len(leaves)); err != nil {
		return nil, err
	}
	if doc.Created.IsZero() {
		o.undate()
	} else {
		o.zone()
	}
	o.fitBookmarks()
	o.preferences()
	o.attach(doc.Attachments)
	o.tag(c.tags)
	return o.file(), nil
}

// leaves sets all pages.
func (doc *Document) leaves(root *element) ([]leaf, error) {
	var out []leaf
	for _, p := range doc.Pages {
		switch p := p.(type) {
		case Flow:
			set, err := p.leaves(doc, root)
			if err != nil {
				return nil, err
			}
			out = append(out, set...)
		case *Tiling:
			if p.Paper != doc.Paper {
				return nil, fmt.Errorf("part %s was laid out for paper %s, the document is for %s: a file has one paper", p.Part.Name, p.Paper.Name, doc.Paper.Name)
			}
			s := newSheets(p, doc)
			section := root.add("Sect")
			for i := range p.Sheets {
				l := leaf{height: p.height, draw: func(c *canvas, _, _ int) { s.page(c, i, section) }}
				if i == 0 {
					l.bookmark = p.Part.Title
				}
				out = append(out, l)
			}
		case Calibration:
			out = append(out, doc.calibration(root))
		default:
			return nil, errors.New("the document holds a page that cannot be printed")
		}
	}
	if len(out) == 0 {
		return nil, errors.New("there is no page to print")
	}
	return out, nil
}

// whole keeps what the library writes, which is all in one piece: no room is
// kept for more.
type whole []byte

func (w *whole) Write(b []byte) (int, error) {
	*w = append(*w, b...)
	return len(b), nil
}

// newCanvas begins the file.
func newCanvas(doc Document) (*canvas, error) {
	// Points, and a default page no sheet has: so every page states its size.
	pdf := fpdf.NewCustom(&fpdf.InitType{UnitStr: "pt", Size: fpdf.SizeType{Wd: 1, Ht: 1}})
	pdf.SetCompression(false)
	pdf.SetCatalogSort(true)
	pdf.SetAutoPageBreak(false, 0)
	created := doc.Created.UTC()
	if doc.Created.IsZero() {
		created = time.Unix(0, 0).UTC() // the library would take the clock's; dropped later
	}
	pdf.SetCreationDate(created)
	pdf.SetModificationDate(created)
	pdf.SetProducer(producer, true)
	pdf.SetTitle(safe(join(" ", doc.Number, doc.Title)), true)
	pdf.SetSubject(safe(doc.Subject), true)
	pdf.SetLang("en")
	pdf.AddUTF8FontFromBytes(fontName, "", letter.Font())
	pdf.SetFont(fontName, "", 10)
	if err := pdf.Error(); err != nil {
		return nil, fmt.Errorf("the PDF library failed: %w", err)
	}
	return &canvas{pdf: pdf, tags: newStructure()}, nil
}
