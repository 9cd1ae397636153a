package pdfout

import (
	"fmt"

	"stepoff/layout/drawing"
	"stepoff/layout/geom"
	"stepoff/spec/measure"
)

// Plan spreads a part over sheets of the paper: as few as possible. u is how
// stations are printed.
func Plan(part Part, paper Paper, u measure.Units) (*Tiling, error) {
	if err := paper.Check(); err != nil {
		return nil, fmt.Errorf("part %s: %w", part.Name, err)
	}
	b := part.Drawing.Bounds()
	t := &Tiling{Part: part, Paper: paper, Units: u}
	w := paper.printable()
	ov := paper.Overlap.MM()
	for r := 0; r == 0 || b.Max.Y-float64(r)*(w.Y-ov) > b.Min.Y+ov; r++ {
		for c := 0; c == 0 || b.Min.X+float64(c)*(w.X-ov) < b.Max.X-ov; c++ {
			min := geom.Pt(b.Min.X+float64(c)*(w.X-ov), b.Max.Y-float64(r)*(w.Y-ov)-w.Y)
			t.Sheets = append(t.Sheets, Sheet{Name: sheetName(c, r), Column: c, Row: r, Window: geom.Box{Min: min, Max: geom.Pt(min.X+w.X, min.Y+w.Y)}})
		}
	}
	return t, nil
}

// sheetName is the column letter (A to Z, then AA) and the row number from 1.
func sheetName(column, row int) string {
	name := ""
	for c := column; c >= 0; c = c/26 - 1 {
		name = string(rune('A'+c%26)) + name
	}
	return fmt.Sprintf("%s%d", name, row+1)
}

// Map is the assembly map: the part's lines with the sheets drawn and named
// as they lie.
func (t *Tiling) Map() *drawing.Drawing {
	d := &drawing.Drawing{Name: t.Part.Name + "-map", Title: t.Part.Title + ": how the sheets lie"}
	for _, it := range t.Part.Drawing.Items {
		if p, ok := it.(drawing.Path); ok && (p.Layer == drawing.Cut || p.Layer == drawing.Lumber) {
			d.Add(p)
		}
	}
	for _, s := range t.Sheets {
		d.Add(drawing.Path{Layer: drawing.Thin, Path: geom.Rect(s.Window)})
		d.Text(geom.Pt((s.Window.Min.X+s.Window.Max.X)/2, (s.Window.Min.Y+s.Window.Max.Y)/2), drawing.Small, drawing.Middle, s.Name)
	}
	return d
}
