package packet

import (
	"fmt"
	"math"
	"testing"

	"stepoff/layout"
	"stepoff/layout/drawing"
	"stepoff/pdfout/pdftest"
	"stepoff/spec"
	"stepoff/spec/measure"
)

// A pitch board fits one letter or A4 sheet as it stands when its legs do, turned
// when only that way does, and is pieced together by crosses when no turn fits.
// Whichever way, its lines stand at true size. The turns that fit were found by
// trying every degree on paper sizes less their margins.
func TestPitchBoardOnOneSheet(t *testing.T) {
	for _, c := range []struct {
		rise, run, paper string
		sheets           int
		turned           bool
	}{
		{`7 1/2"`, `10"`, "letter", 1, false},
		{`5 1/2"`, `10 3/4"`, "letter", 1, true},
		{`6"`, `11 1/4"`, "a4", 1, true},
		{`7 1/2"`, `13"`, "letter", 2, false},
	} {
		job, err := spec.Load("job.yaml", []byte(fmt.Sprintf(`
levels: {total_rise: %s}
stairway: [{flight: {risers: 1, run: %s, head: flush}}]
tread: {thickness: 1"}
riser: open
stringer: {stock: {width: 14", thickness: 1 1/2"}}
`, c.rise, c.run)))
		if err != nil {
			t.Fatal(err)
		}
		s, err := layout.Compute(job)
		if err != nil {
			t.Fatal(err)
		}
		on := spec.DefaultPaper()
		on.Size, err = spec.ParsePaperSize(c.paper, measure.Imperial)
		if err != nil {
			t.Fatal(err)
		}
		job.Paper = on
		p := print(t, s, partPitchBoard, c.paper, on.Margin)[0]
		if got := len(p.tiling.Sheets); got != c.sheets {
			t.Errorf("%s by %s on %s: %d sheets, want %d", c.rise, c.run, c.paper, got, c.sheets)
		}
		d := p.tiling.Part.Drawing
		first := d.Items[0].(drawing.Path).Edges[0] // the tread, level as it stands
		if turned := math.Abs(first.To.Y-first.From.Y) > trueSize; turned != c.turned {
			t.Errorf("%s by %s on %s: turned %v, want %v", c.rise, c.run, c.paper, turned, c.turned)
		}
		if got, want := first.Length(), s.Flights()[0].UnitRun.MM(); math.Abs(got-want) > 1e-9 {
			t.Errorf("the tread is %g mm long, want %g", got, want)
		}
		for _, it := range d.Items {
			if path, ok := it.(drawing.Path); ok && path.Layer == drawing.Cut {
				if err := pdftest.Missing(path.Edges, p.all("Cut"), trueSize); err != nil {
					t.Errorf("%s by %s on %s: %v", c.rise, c.run, c.paper, err)
				}
			}
		}
	}
}
