package pdfout

import (
	"stepoff/layout/drawing"
	"stepoff/layout/geom"
	"stepoff/spec/measure"
)

// Part is something drawn at full size, to be laid on the wood and cut to.
type Part struct {
	Name  string // short, lower case: stringer, flight-2/stringer
	Title string // as printed: Stringer, flight 2

	// Drawing is in true millimetres. Its x axis is the station axis: the
	// sheets say at their edges how far along x they stand. Sheets are
	// printed where its Cut and Mark lines fall.
	Drawing *drawing.Drawing

	Station string // what x = 0 is: "the foot end of the blank"
	Lay     string // how to lay it: "lay STOCK EDGE on the top edge of the blank"

	// Stock is the lumber edge that lies on the edge of the stock; every
	// sheet on which it falls marks it STOCK EDGE. The zero Edge: none.
	Stock geom.Edge

	Cautions []string // short, printed on every sheet
	Hand     string   // "left" or "right" for one of a mirrored pair, else empty
}

// Sheet is one page of a part.
type Sheet struct {
	Name        string   // column letter and row number: A1, B1, ...
	Column, Row int      // from 0; columns along x, rows from the top down
	Window      geom.Box // what of the drawing it shows, in true millimetres
}

// Tiling is a part spread over sheets.
type Tiling struct {
	Part   Part
	Paper  Paper
	Units  measure.Units
	Turned bool    // the drawing's x axis runs along the paper, not across it
	Sheets []Sheet // row by row, each row by station; sheets that show no cut or mark are not there

	seamsX, seamsY []float64 // where neighbouring columns, rows meet
	height         float64   // of the page, millimetres as drawn
	at             map[cell]int
}
