// Package drawing is a drawing on no device: paths with straight and circular
// edges, text and dimensions, each on a layer that says what it means. Writers
// (svg here, pages in pdfout) decide how a layer looks.
//
// Places are float64 millimetres of the thing drawn, y up. Letter heights and
// dimension offsets are millimetres on the sheet, so that they read the same at
// any scale; Resolve turns them into lines and text for a writer that knows its
// scale.
package drawing
