// Package pdfout puts drawings on paper: full-size parts tiled over sheets
// that can be laid on wood and cut to, pages of text, tables and scaled
// figures, and a page to find out what a printer does to a true length.
//
// It knows nothing of what is drawn. A Part is drawn at full size by
// translation only (and a quarter turn): Plan finds the sheets. A Figure is
// drawn at a round scale and marked "not for cutting". Write makes the file:
// the same bytes for the same Document.
package pdfout
