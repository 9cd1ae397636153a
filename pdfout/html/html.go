// Package html writes the flowing pages of a document as one page for a screen:
// one file, its drawings inside it, with nothing that is fetched from anywhere. It
// can be printed too.
package html

import (
	"bytes"
	"errors"
	"fmt"
	"html"
	"io"
	"strings"

	"stepoff/layout/drawing"
	"stepoff/layout/drawing/svg"
	"stepoff/layout/geom"
	"stepoff/pdfout"
)

// room is what a drawing fills, millimetres of a screen held in the hand; on a
// wider one it is shown larger, its writing with it.
var room = geom.Pt(115, 130)

// Write writes the document. Sheets at full size have no place on a screen: a
// document that holds some is an error.
func Write(w io.Writer, doc pdfout.Document) error {
	p := &page{}
	p.head(doc)
	for _, each := range doc.Pages {
		flow, ok := each.(pdfout.Flow)
		if !ok {
			return errors.New("a screen has no true size: sheets to cut to are written to a PDF file")
		}
		p.raw("<section>\n")
		p.blocks(flow.Blocks)
		p.raw("</section>\n")
	}
	p.raw("</main>\n</body>\n</html>\n")
	if p.err != nil {
		return p.err
	}
	_, err := w.Write(p.Bytes())
	return err
}

type page struct {
	bytes.Buffer
	err error
}

func (p *page) raw(s string) { p.WriteString(s) }

// element writes an element round a text.
func (p *page) element(tag, class, text string) {
	p.raw("<" + tag)
	if class != "" {
		p.raw(` class="` + class + `"`)
	}
	p.raw(">" + html.EscapeString(text) + "</" + tag + ">\n")
}

func (p *page) head(doc pdfout.Document) {
	p.raw("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n")
	p.raw(`<meta name="viewport" content="width=device-width, initial-scale=1">` + "\n")
	p.raw(`<link rel="icon" href="data:,">` + "\n") // or a browser asks for one
	p.element("title", "", doc.Title)
	p.raw("<style>\n" + style + svg.Style() + "</style>\n</head>\n<body>\n")
	var words []string
	for _, s := range []string{doc.Subject, doc.Title, doc.Number, doc.Date} {
		if s != "" {
			words = append(words, s)
		}
	}
	p.element("header", "", strings.Join(words, " · "))
	p.raw("<main>\n")
	for _, s := range doc.Stamp {
		p.element("p", "stamp", s)
	}
}

func (p *page) blocks(blocks []pdfout.Block) {
	for _, b := range blocks {
		p.block(b)
	}
}

func (p *page) block(b pdfout.Block) {
	switch b := b.(type) {
	case pdfout.Heading:
		p.element(fmt.Sprintf("h%d", min(max(b.Level, 1), 3)), "", b.Text)
	case pdfout.Paragraph:
		class := ""
		if b.Small {
			class = "small"
		}
		p.element("p", class, b.Text)
	case pdfout.List:
		tag := "ul"
		if b.Numbered {
			tag = "ol"
		}
		p.raw("<" + tag + ">\n")
		for _, item := range b.Items {
			p.element("li", "", item)
		}
		p.raw("</" + tag + ">\n")
	case pdfout.Table:
		p.table(b)
	case pdfout.Figure:
		p.figure(b)
	case pdfout.Columns:
		p.raw("<div class=\"columns\">\n<div>\n")
		p.blocks(b.Left)
		p.raw("</div>\n<div>\n")
		p.blocks(b.Right)
		p.raw("</div>\n</div>\n")
	case pdfout.Band:
		p.raw("<article>\n")
		p.blocks(b.Blocks)
		p.raw("</article>\n")
	case pdfout.Space:
		p.raw("<div class=\"space\"></div>\n")
	case pdfout.PageBreak:
		p.raw("<div class=\"break\"></div>\n")
	default:
		p.err = errors.New("a page holds a block that cannot be written")
	}
}

func (p *page) table(t pdfout.Table) {
	row := func(tag string, cells []string) {
		p.raw("<tr>")
		for i, c := range cells {
			class := ""
			if i < len(t.Align) && t.Align[i] == drawing.Right {
				class = ` class="right"`
			}
			p.raw("<" + tag + class + ">" + html.EscapeString(c) + "</" + tag + ">")
		}
		p.raw("</tr>\n")
	}
	p.raw("<div class=\"table\"><table>\n")
	if len(t.Header) > 0 {
		row("th", t.Header)
	}
	for _, r := range t.Rows {
		row("td", r)
	}
	p.raw("</table></div>\n")
}

// figure writes a drawing and what it shows. On a screen nothing has a scale.
func (p *page) figure(f pdfout.Figure) {
	if p.err != nil {
		return
	}
	if p.err = f.Drawing.Check(); p.err != nil {
		return
	}
	p.raw("<figure>\n")
	p.err = svg.Write(p, f.Drawing, svg.Options{Scale: pdfout.FitScale(f.Drawing, room), Margin: 1, Inline: true})
	caption := f.Caption
	if caption == "" {
		caption = f.Drawing.Title
	}
	p.element("figcaption", "", caption+" · to no scale, not for cutting")
	p.raw("</figure>\n")
}
