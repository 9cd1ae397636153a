// Package pdftest reads the PDF files this program writes back as geometry,
// for tests: where every line stands on the paper in millimetres, what was
// said of it in the file (cut, mark, ruler...), how wide it is; the words with
// their sizes; the catalog's settings, bookmarks, tags and attachments.
//
// It knows nothing of how the pages were made. Read takes a file apart;
// Page.Unplace takes back where a sheet was laid; Missing compares lines with
// what they should be. Trace asks an independent program, mutool, for the same
// lines, and Tool finds such programs or skips the test.
//
// The marks in the file (Path.Layer, Text.Tags) are the layers' names of
// package drawing with a capital (Cut, Mark, Lumber, Outline, Hidden, Centre,
// Thin, Dimension, Note) and those of what pdfout adds: Ruler, Seam, Cross,
// Station, Stock, Frame, Stamp, Map, Bar, Rule, Header, Footer.
package pdftest
