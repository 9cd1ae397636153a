package packet

import (
	"io"
	"strings"

	"stepoff/layout/asbuilt"
	"stepoff/layout/check"
	"stepoff/layout/drawing"
	"stepoff/layout/report"
	"stepoff/layout/views"
	"stepoff/pdfout"
	"stepoff/spec/measure"
)

// Inspection writes the inspection sheet of a measured stair as one PDF file. Of
// the options the paper, the style and the date count.
func Inspection(w io.Writer, in *asbuilt.Inspection, o Options) error {
	a := in.Stair
	doc := pdfout.Document{
		Title: a.Name, Number: a.Number, Date: a.Date,
		Subject: "Inspection sheet", Created: o.Created,
		Paper: paper(o.Paper), Units: o.Style.Units,
		Pages: []pdfout.Page{inspectionSheet{in, o.Style}.flow()},
	}
	if doc.Title == "" {
		doc.Title = "Stair as measured"
	}
	if len(a.Source) > 0 {
		doc.Attachments = []pdfout.Attachment{{Name: "as-built.yaml", Description: "the measurements this sheet was made from", Bytes: a.Source}}
	}
	return pdfout.Write(w, doc)
}

// figureHeight is as much of a page as the figures above it leave, millimetres.
const figureHeight = 150

// blank is room to write a figure or a date by hand.
const blank = "____________"

type inspectionSheet struct {
	in *asbuilt.Inspection
	st measure.Style
}

// inspectionCautions stand on every inspection sheet.
var inspectionCautions = []string{
	"Local code and the building official decide. Have structure checked by a licensed professional: nothing here is an approval.",
	"Close a stair that is dangerous, or mark its bad steps, until it is put right.",
	"Keep guards on, eyes and ears protected, stock clamped, the blade no deeper than needed.",
	"Lay one pad dry and measure both its risers before fastening it and cutting the rest.",
}

func (s inspectionSheet) flow() pdfout.Flow {
	in, st := s.in, s.st
	title := in.Stair.Name
	if title == "" {
		title = "Stair as measured"
	}
	header, rows := report.PunchTable(in, st)
	if in.Remedy.Verdict == asbuilt.Pad {
		header = append(header, "measured again")
		for i := range rows {
			rows[i] = append(rows[i], blank)
		}
	}
	blocks := []pdfout.Block{
		pdfout.Heading{Level: 1, Text: title},
		pdfout.Paragraph{Text: s.verdict()},
		pdfout.Table{Rows: pairs(report.PunchFigures(in, st))},
		pdfout.Figure{Drawing: views.Inspection(in, st), MaxHeight: figureHeight, Caption: "The flight as measured. Grey with a cross: at fault. Grey on a tread: a pad"},
		pdfout.Heading{Level: 2, Text: "Step by step, from the bottom up"},
		pdfout.Table{Header: header, Rows: rows, Align: []drawing.Align{drawing.Right}},
	}
	for _, note := range append(report.PunchNotes(in, st), "Lengths in "+report.Legend(st)+".") {
		blocks = append(blocks, pdfout.Paragraph{Text: note})
	}
	blocks = append(blocks, s.remedy()...)
	blocks = append(blocks, pdfout.Heading{Level: 2, Text: "Findings under " + in.Code.Name + ": " + in.Code.Title}, s.findings())
	blocks = append(blocks, pdfout.Heading{Level: 2, Text: "Cautions"}, pdfout.List{Items: inspectionCautions})
	return pdfout.Flow{Title: "Inspection", Blocks: append(blocks, pdfout.Heading{Level: 2, Text: "Signed"}, signatures())}
}

// verdict says in one line how the stair stands.
func (s inspectionSheet) verdict() string {
	code := report.PunchTitle(s.in)
	said := "Held against " + strings.TrimPrefix(code[len(code)-1], "code ") + ": "
	if !s.in.Fails() {
		return said + "no limit is broken."
	}
	return said + "it FAILS."
}

// remedy lists what puts the steps right, and what is wrong besides.
func (s inspectionSheet) remedy() (blocks []pdfout.Block) {
	var items []string
	list := func() {
		if len(items) > 0 {
			blocks = append(blocks, pdfout.List{Items: items})
		}
		items = nil
	}
	for _, row := range report.PunchRemedy(s.in, s.st) {
		if label := row[0]; label != "" {
			list()
			blocks = append(blocks, pdfout.Heading{Level: 2, Text: strings.ToUpper(label[:1]) + label[1:]})
		}
		items = append(items, row[1])
	}
	list()
	return blocks
}

// findings lists what fails first.
func (s inspectionSheet) findings() pdfout.Table {
	t := pdfout.Table{Header: []string{"", "rule", "section", "finding"}}
	all := report.PunchFindings(s.in)
	for _, status := range check.Statuses {
		for _, f := range check.Of(all, status) {
			t.Rows = append(t.Rows, []string{strings.ToUpper(status.String()), f.ID, f.Section, f.Text})
		}
	}
	return t
}

func pairs(rows [][2]string) [][]string {
	out := make([][]string, len(rows))
	for i, r := range rows {
		out[i] = r[:]
	}
	return out
}

// signatures are blanks to fill in by hand.
func signatures() pdfout.Table {
	t := pdfout.Table{Header: []string{"", "name", "date", "signature"}}
	for _, who := range []string{"measured", "put right", "measured again"} {
		t.Rows = append(t.Rows, []string{who, blank + blank, blank, blank + blank})
	}
	return t
}
