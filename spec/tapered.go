package spec

import "stepoff/spec/measure"

// Winders is a turn of winders as asked for, defaults filled in.
type Winders struct {
	Turn      Turn    // Left or Right
	Angle     float64 // degrees, 45 to 90
	Treads    int
	Even      bool // riser lines through equal chords, not through one pivot
	Boxes     bool // framed by stacked platforms
	Sheathing measure.Length

	Setback  *measure.Length // nil: to be chosen
	Walkline *measure.Length // nil: the code's
	Narrow   *measure.Length // nil: the code's
	Depths   Depths

	SetbackChosen bool // not stated: chosen before the stair was laid out
}

// Curve is a curved flight as asked for, defaults filled in.
type Curve struct {
	Turn         Turn    // Left or Right
	Risers       *int    // nil: to be chosen
	Angle        float64 // degrees, first riser line to last
	InsideRadius measure.Length
	Walkline     *measure.Length // nil: the code's
	Depths       Depths

	Plate      *Piece // curved plates are as wide, studs stand on them
	Sheet      Sheet
	Layers     int            // of sheet in one plate
	Lamination measure.Length // of strings bent from thin stock

	RisersChosen bool // not stated: chosen before the stair was laid out
}

// Sheet is a sheet that curved pieces are cut from; its grain runs lengthwise.
type Sheet struct{ Width, Length, Thickness measure.Length }

// Depths says where tapered treads are measured and how deep they have to be
// there. The code fills in what the job leaves open.
type Depths struct {
	// Walklines are distances from the inside edge of the clear width; where there
	// are two, a tread has to be deep enough on both.
	Walklines []measure.Length
	Arc       bool           // along the walkline, not straight across
	NarrowAt  measure.Length // of the narrow end, from the inside edge

	LeastWalkline, LeastNarrow measure.Length // 0: not limited
}

// Where tapered treads are measured, and how narrow their narrow ends may be,
// where neither job nor code says: what most of the codes here ask.
const (
	UsualWalkline = 12 * measure.Inch
	UsualNarrow   = 6 * measure.Inch
)

// readWinders reads a turn of winders.
func readWinders(g group, job *Job) *Winders {
	w := &Winders{
		Turn:      Left + Turn(g.word("turn", 0)),
		Angle:     g.angle("angle", "; more is two turns with a flight of one riser, - flight: {risers: 1}, between them"),
		Even:      g.word("lines", 0) == 1,
		Boxes:     g.word("framing", 0) == 0,
		Sheathing: g.length("sheathing"),
		Setback:   g.lengthIf("setback"),
		Walkline:  g.lengthIf("walkline"),
		Narrow:    g.lengthIf("narrow"),
	}
	if n, _ := g.wholeIf("treads"); n != nil {
		w.Treads = *n
	}
	w.Depths.Arc = g.word("measure", 0) == 1
	walklineWithin(g, w.Walkline, job)
	return w
}

// readCurve reads a curved flight.
func readCurve(g group, job *Job) *Curve {
	c := &Curve{
		Turn:       Left + Turn(g.word("turn", 0)),
		Angle:      g.angle("angle", ""),
		Walkline:   g.lengthIf("walkline"),
		Layers:     usualLayers,
		Lamination: g.length("lamination"),
	}
	c.Risers, _ = g.wholeIf("risers")
	c.InsideRadius = g.length("inside_radius")
	if n, _ := g.wholeIf("layers"); n != nil {
		c.Layers = *n
	}
	c.Depths.Arc = g.word("measure", 0) == 1
	c.Plate = g.pieceOr("plate")
	sheet, _ := g.sub("sheet")
	c.Sheet = Sheet{sheet.length("width"), sheet.length("length"), sheet.length("thickness")}
	walklineWithin(g, c.Walkline, job)
	return c
}

// usualLayers is how many layers of sheet make a plate: two of 3/4 in are as
// thick as the 2x stock of a straight one.
const usualLayers = 2

// walklineWithin holds a walkline against the clear width it has to lie in.
func walklineWithin(g group, walkline *measure.Length, job *Job) {
	if walkline != nil && job.Width != nil && *walkline >= *job.Width {
		g.get("walkline").Mistake("walkline: it lies within the clear width, which is %s; it must be less than that",
			measure.Style{Units: job.Units}.Format(*job.Width))
	}
}
