package packet

import (
	"io"
	"time"

	"stepoff/layout"
	"stepoff/pdfout"
	"stepoff/spec"
	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

// Options say what a set holds and how it is printed.
type Options struct {
	Parts []string      // names of parts; none: every part, with the whole cut sequence
	Paper spec.Paper    // usually the job's
	Style measure.Style // how lengths are printed
	Code  *rules.Code   // whose handrail and guard heights are drawn; nil: none
	Stamp []string      // printed on every sheet: what a failing job fails

	// Created dates the file; the zero time leaves it undated.
	Created time.Time
}

// Write writes the set as one PDF file. The error is UnknownPart for a part the
// stairway does not have.
func Write(w io.Writer, s *layout.Stairway, o Options) error {
	parts, err := pick(s, o.Code, o.Style, o.Parts)
	if err != nil {
		return err
	}
	doc := pdfout.Document{
		Title: s.Job.Name, Number: s.Job.Number, Date: s.Job.Date,
		Subject: "Full-size templates", Created: o.Created,
		Paper: paper(o.Paper), Units: o.Style.Units, Stamp: o.Stamp,
	}
	if len(s.Job.Source) > 0 {
		doc.Attachments = []pdfout.Attachment{{Name: "job.yaml", Description: "the job these sheets were made from", Bytes: s.Job.Source}}
	}
	c := cover{s: s, code: o.Code, st: o.Style, paper: doc.Paper}
	var pages []pdfout.Page
	for _, p := range parts {
		if p.page != nil {
			pages = append(pages, p.page())
			continue
		}
		t, err := p.plan(doc.Paper, doc.Units)
		if err != nil {
			return err
		}
		c.tilings = append(c.tilings, t)
		pages = append(pages, t)
	}
	if len(o.Parts) > 0 {
		doc.Pages = append(doc.Pages, c.short())
	} else {
		doc.Pages = append(doc.Pages, c.first(), c.pictures(), c.work())
	}
	doc.Pages = append(doc.Pages, pages...)
	return pdfout.Write(w, doc)
}

func paper(p spec.Paper) pdfout.Paper {
	return pdfout.Paper{
		Name: p.Size.Name, Width: p.Size.Width, Height: p.Size.Height, Roll: p.Size.Roll,
		Margin: p.Margin, Overlap: p.Overlap, ScaleX: p.ScaleX, ScaleY: p.ScaleY,
	}
}
