package packet

import (
	"io"
	"time"

	"stepoff/layout"
	"stepoff/pdfout"
	"stepoff/spec"
	"stepoff/spec/measure"
)

// Options say what a set holds and how it is printed.
type Options struct {
	Parts []string      // names of parts; none: every part, with the whole cut sequence
	Paper spec.Paper    // usually the job's
	Style measure.Style // how lengths are printed
	Stamp []string      // printed on every sheet: what a failing job fails

	// Created dates the file; the zero time leaves it undated.
	Created time.Time
}

// Write writes the set as one PDF file. The error is UnknownPart for a part the
// stairway does not have.
func Write(w io.Writer, s *layout.Stairway, o Options) error {
	parts, err := choose(s, o.Style, o.Parts)
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
	var tilings []*pdfout.Tiling
	for _, p := range parts {
		t, err := pdfout.Plan(p, doc.Paper, doc.Units)
		if err != nil {
			return err
		}
		tilings = append(tilings, t)
	}
	c := cover{s: s, st: o.Style, tilings: tilings, paper: doc.Paper}
	if len(o.Parts) > 0 {
		doc.Pages = append(doc.Pages, c.short())
	} else {
		doc.Pages = append(doc.Pages, c.first(), c.work())
	}
	for _, t := range tilings {
		doc.Pages = append(doc.Pages, t)
	}
	return pdfout.Write(w, doc)
}

func paper(p spec.Paper) pdfout.Paper {
	return pdfout.Paper{
		Name: p.Size.Name, Width: p.Size.Width, Height: p.Size.Height, Roll: p.Size.Roll,
		Margin: p.Margin, Overlap: p.Overlap, ScaleX: p.ScaleX, ScaleY: p.ScaleY,
	}
}
