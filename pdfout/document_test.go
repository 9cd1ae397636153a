package pdfout_test

import (
	"bytes"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"github.com/pdfcpu/pdfcpu/pkg/api"
	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/model"

	"stepoff/layout/drawing"
	"stepoff/layout/geom"
	"stepoff/pdfout"
	"stepoff/pdfout/pdftest"
	"stepoff/spec/measure"
)

// set is a whole set of sheets: a cover, a part on many sheets, one on a
// single sheet, the printer's test page, a stamp and an attachment.
func set(t testing.TB, p pdfout.Paper, u measure.Units) pdfout.Document {
	t.Helper()
	board := plan(t, stringer(), p, u)
	block := sawTooth(1, 7*in, 9*in, 9.25*in)
	block.Name, block.Title = "block", "Block"
	cover := pdfout.Flow{Title: "Cover", Rulers: true, Blocks: []pdfout.Block{
		pdfout.Heading{Level: 1, Text: "Board loft"},
		pdfout.Paragraph{Text: `Fourteen at 7 1/2", so 8' 9" in all.`},
		pdfout.Table{Header: []string{"what", "length"}, Rows: [][]string{{"step", `12 1/2"`}, {"depth", `6"`}}, Align: []drawing.Align{drawing.Left, drawing.Right}},
		pdfout.Heading{Level: 2, Text: "How the sheets lie"},
		pdfout.Figure{Drawing: board.Map()},
		pdfout.List{Numbered: true, Items: []string{"Cut one.", "Test it.", "Trace the rest."}},
	}}
	doc := document(p, u, cover, board, plan(t, block, p, u), pdfout.Calibration{})
	doc.Stamp = []string{"NOT TO CODE"}
	doc.Attachments = []pdfout.Attachment{{Name: "board.yaml", Description: "The job these sheets were made from", Bytes: []byte("name: Board loft\n")}}
	return doc
}

var papers = []pdfout.Paper{
	letterPaper, paper("A4", 210*measure.Millimetre, 297*measure.Millimetre), paper("Arch E", inches(36), inches(48)),
	{Name: "roll 12 in", Width: inches(12), Roll: true, Margin: inches(0.25), Overlap: inches(0.5)},
	{Name: "roll 36 in", Width: inches(36), Roll: true, Margin: inches(0.25), Overlap: inches(0.5)},
}

// validate asks pdfcpu, strictly.
func validate(b []byte) error {
	api.DisableConfigDir() // it would write its settings into the user's folder
	conf := model.NewDefaultConfiguration()
	conf.ValidationMode = model.ValidationStrict
	return api.Validate(bytes.NewReader(b), conf)
}

// TestValid: two independent programs find nothing wrong with the file.
func TestValid(t *testing.T) {
	for _, p := range papers {
		b := write(t, set(t, p, measure.Imperial))
		t.Run("pdfcpu strict/"+p.Name, func(t *testing.T) {
			if err := validate(b); err != nil {
				t.Error(err)
			}
		})
		t.Run("qpdf/"+p.Name, func(t *testing.T) {
			if out := pdftest.Ask(t, b, "qpdf", "--check"); strings.Contains(strings.ToLower(out), "warning") {
				t.Error(out)
			}
		})
		t.Run("pdfinfo/"+p.Name, func(t *testing.T) {
			if out := pdftest.Ask(t, b, "pdfinfo"); !strings.Contains(strings.Join(strings.Fields(out), " "), "Tagged: yes") {
				t.Error(out)
			}
		})
	}
}

// TestCatalog: the file asks viewers to print at actual size, on one side,
// leads to each part, is tagged, and carries the job.
func TestCatalog(t *testing.T) {
	doc := set(t, letterPaper, measure.Imperial)
	f := pdftest.MustRead(t, write(t, doc))
	want := map[string]string{"PrintScaling": "None", "Duplex": "Simplex", "DisplayDocTitle": "true", "PickTrayByPDFSize": "true"}
	if diff := cmp.Diff(want, f.Preferences); diff != "" {
		t.Errorf("viewer preferences (-want +got):\n%s", diff)
	}
	info := map[string]string{"Producer": "stepoff", "Title": "B-7 Board loft", "Subject": "Full-size templates"}
	if diff := cmp.Diff(info, f.Info); diff != "" {
		t.Errorf("information, without any date (-want +got):\n%s", diff)
	}
	if f.Version != "1.7" || len(f.ID) != 32 || !f.Marked || f.Lang != "en" {
		t.Errorf("version %q, ID %q, tagged %v, language %q", f.Version, f.ID, f.Marked, f.Lang)
	}
	first := 2 // the cover takes one page
	marks := []pdftest.Bookmark{{Title: "Cover", Page: 1, Whole: true}}
	for _, p := range doc.Pages[1:3] {
		tl := p.(*pdfout.Tiling)
		marks = append(marks, pdftest.Bookmark{Title: tl.Part.Title, Page: first, Whole: true})
		first += len(tl.Sheets)
	}
	marks = append(marks, pdftest.Bookmark{Title: "Printer test", Page: first, Whole: true})
	if diff := cmp.Diff(marks, f.Bookmarks); diff != "" {
		t.Errorf("bookmarks (-want +got):\n%s", diff)
	}
	files := []pdftest.Attachment{{Name: "board.yaml", Bytes: []byte("name: Board loft\n")}}
	if diff := cmp.Diff(files, f.Attachments); diff != "" {
		t.Errorf("attachments (-want +got):\n%s", diff)
	}
	var headings []string
	for _, tag := range f.Tags {
		if tag.Name == "H1" || tag.Name == "H2" {
			headings = append(headings, tag.Text)
		}
	}
	for _, want := range []string{"Board loft", "How the sheets lie", "A1 Saw-tooth board", "B1 Saw-tooth board", "Printer test"} {
		if !slices.Contains(headings, want) {
			t.Errorf("no heading %q among %q", want, headings)
		}
	}
}

// TestCells: a table's cells are tagged and read in order, fractions as text.
func TestCells(t *testing.T) {
	f := pdftest.MustRead(t, write(t, set(t, letterPaper, measure.Imperial)))
	var cells []string
	for _, tag := range f.Tags {
		if tag.Name == "TH" || tag.Name == "TD" {
			cells = append(cells, tag.Text)
		}
	}
	if diff := cmp.Diff([]string{"what", "length", "step", `12 1/2"`, "depth", `6"`}, cells); diff != "" {
		t.Errorf("cells (-want +got):\n%s", diff)
	}
}

// TestOnePageSize: viewers leave the scale alone when all pages have the
// paper's size.
func TestOnePageSize(t *testing.T) {
	for _, p := range papers {
		f := pdftest.MustRead(t, write(t, set(t, p, measure.Imperial)))
		for _, page := range f.Pages {
			if p.Roll {
				// A roll's pages are as long as the longest needs to be.
				if page.Width != f.Pages[0].Width || page.Height != f.Pages[0].Height {
					t.Errorf("%s: page %d is %.3f x %.3f mm, page 1 is %.3f x %.3f", p.Name, page.Number, page.Width, page.Height, f.Pages[0].Width, f.Pages[0].Height)
				}
				continue
			}
			if math.Abs(page.Width-p.Width.MM()) > trueSize || math.Abs(page.Height-p.Height.MM()) > trueSize {
				t.Errorf("%s: page %d is %.3f x %.3f mm", p.Name, page.Number, page.Width, page.Height)
			}
		}
	}
}

// TestSameBytes: the same document gives the same file; the clock is not in
// it unless asked for.
func TestSameBytes(t *testing.T) {
	first := write(t, set(t, letterPaper, measure.Imperial))
	for range 5 {
		if !bytes.Equal(first, write(t, set(t, letterPaper, measure.Imperial))) {
			t.Fatal("two runs, two files")
		}
	}
	if f := pdftest.MustRead(t, first); f.Info["CreationDate"] != "" || f.Info["ModDate"] != "" {
		t.Errorf("dated: %v", f.Info)
	}
	doc := set(t, letterPaper, measure.Imperial)
	doc.Created = time.Date(2026, 3, 2, 13, 14, 15, 0, time.FixedZone("", 3600))
	f := pdftest.MustRead(t, write(t, doc))
	for _, key := range []string{"CreationDate", "ModDate"} {
		if f.Info[key] != "D:20260302121415Z" {
			t.Errorf("%s is %q", key, f.Info[key])
		}
	}
}

// TestNastyText: words from a job cannot break the file or the sheet.
func TestNastyText(t *testing.T) {
	nasty := []string{
		"\x00\x01\x1b[31m\r\n\t\u0085\u2028", "😀 loft 🏠", "\xe2\x82", "\xff\xfe", "מדרגות עץ", "درج",
		strings.Repeat("W", 10_000), strings.Repeat("long ", 4000), `\( ) \\ << >> /Span BDC EMC (7 1/2)`, "a\u0301 \u202e reversed", "%%EOF\nendobj\nendstream",
		"1/2 1/2 1/2/2 7 5/8/4 0/4 99/64 1/", strings.Repeat("1/2 ", 500), "\ufffe\uffff",
	}
	plainSheet := func(b []byte, tl *pdfout.Tiling) []pdftest.Path {
		return pieced(tl, pdftest.MustRead(t, b), 1, "Cut")
	}
	for _, text := range nasty {
		part := sawTooth(2, 7*in, 10*in, 11.25*in)
		want := edges(part.Drawing, drawing.Cut)
		part.Title, part.Station, part.Lay, part.Hand = text, text, text, text
		part.Cautions = []string{text}
		part.Drawing.Text(geom.Pt(5*in, -8*in), drawing.Normal, drawing.Middle, text)
		part.Drawing.Dim(drawing.Horizontal, geom.Pt(0, 0), geom.Pt(50, 0), 8, text)
		tl := plan(t, part, letterPaper, measure.Imperial)
		doc := pdfout.Document{
			Title: text, Number: text, Date: text, Subject: text, Paper: letterPaper, Stamp: []string{text},
			Attachments: []pdfout.Attachment{{Name: text, Description: text, Bytes: []byte(text)}},
			Pages: []pdfout.Page{pdfout.Flow{Title: text, Blocks: []pdfout.Block{
				pdfout.Heading{Level: 1, Text: text}, pdfout.Figure{Drawing: part.Drawing, Caption: text, NoScale: true},
			}}, tl, pdfout.Flow{Blocks: []pdfout.Block{
				pdfout.Paragraph{Text: text}, pdfout.List{Items: []string{text}}, pdfout.Table{Header: []string{text}, Rows: [][]string{{text, text}, {}}},
				pdfout.Columns{Left: []pdfout.Block{pdfout.Paragraph{Text: text}}, Right: []pdfout.Block{pdfout.Heading{Level: 9, Text: text}}},
			}}},
		}
		b := write(t, doc)
		if err := pdftest.Missing(want, plainSheet(b, tl), trueSize); err != nil {
			t.Errorf("%.40q: %v", text, err)
		}
		if err := validate(b); err != nil {
			t.Errorf("%.40q: %v", text, err)
		}
	}
}

// TestBadNumbers: a number that is none never reaches a file, and nothing is
// written.
func TestBadNumbers(t *testing.T) {
	for _, bad := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), 1e300} {
		for name, spoil := range map[string]func(d *drawing.Drawing){
			"line":  func(d *drawing.Drawing) { d.Line(drawing.Thin, geom.Pt(bad, 0), geom.Pt(1, 1)) },
			"text":  func(d *drawing.Drawing) { d.Text(geom.Pt(0, bad), drawing.Normal, drawing.Left, "x") },
			"size":  func(d *drawing.Drawing) { d.Text(geom.Pt(0, 0), bad, drawing.Left, "x") },
			"dim":   func(d *drawing.Drawing) { d.Dim(drawing.Aligned, geom.Pt(0, 0), geom.Pt(1, 1), bad, "x") },
			"angle": func(d *drawing.Drawing) { d.Add(drawing.Text{Height: drawing.Normal, Angle: bad, Text: "x"}) },
			"fill": func(d *drawing.Drawing) {
				d.Add(drawing.Path{Path: geom.Rect(geom.Box{Max: geom.Pt(1, 1)}), Fill: bad})
			},
			"arc": func(d *drawing.Drawing) {
				d.Add(drawing.Path{Path: geom.Path{Edges: []geom.Edge{geom.Arc(geom.Pt(0, 0), 1, 0, bad)}}})
			},
		} {
			d := &drawing.Drawing{Name: "spoilt"}
			d.Polygon(drawing.Cut, geom.Pt(0, 0), geom.Pt(100, 0), geom.Pt(0, 100))
			spoil(d)
			if _, err := pdfout.Plan(pdfout.Part{Name: "spoilt", Drawing: d}, letterPaper, measure.Imperial); err == nil {
				t.Errorf("%v in a %s: planned", bad, name)
			}
			var b bytes.Buffer
			err := pdfout.Write(&b, document(letterPaper, measure.Imperial, pdfout.Flow{Blocks: []pdfout.Block{pdfout.Figure{Drawing: d}}}))
			if err == nil || b.Len() > 0 {
				t.Errorf("%v in a %s of a figure: %v, %d bytes written", bad, name, err, b.Len())
			}
		}
	}
}

// TestOnePaper: a part laid out for another paper is refused.
func TestOnePaper(t *testing.T) {
	tl := plan(t, stringer(), papers[1], measure.Imperial)
	var b bytes.Buffer
	err := pdfout.Write(&b, document(letterPaper, measure.Imperial, tl))
	if err == nil || !strings.Contains(err.Error(), "laid out for paper A4") || b.Len() > 0 {
		t.Errorf("%v, %d bytes", err, b.Len())
	}
}

// TestEmptyDocument: there is nothing to print.
func TestEmptyDocument(t *testing.T) {
	var b bytes.Buffer
	if err := pdfout.Write(&b, document(letterPaper, measure.Imperial)); err == nil || b.Len() > 0 {
		t.Errorf("%v, %d bytes", err, b.Len())
	}
}
