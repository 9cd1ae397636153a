package pdfout

import (
	"time"

	"stepoff/spec/measure"
)

// Document is one PDF file.
type Document struct {
	Title   string // what the set is for
	Number  string // identification number; may be empty
	Date    string // as printed; may be empty
	Subject string // what kind of set it is: full-size templates

	// Created dates the file. The zero time: no date is written, so that the
	// same document gives the same bytes.
	Created time.Time

	Paper Paper
	Units measure.Units
	Pages []Page

	// Stamp is printed on every page in a heavy frame: what is wrong with a
	// job that was printed all the same.
	Stamp []string

	Attachments []Attachment
}

// Attachment is a file carried inside the PDF.
type Attachment struct {
	Name        string
	Description string
	Bytes       []byte
}
