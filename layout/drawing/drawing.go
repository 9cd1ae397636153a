package drawing

import "stepoff/layout/geom"

// Point is a place in the drawing, in millimetres.
type Point = geom.Point

// Layer says what an item means. Writers give each layer its line.
type Layer int

// The layers, in the order they are drawn: what matters most comes last.
const (
	Lumber     Layer = iota // edges of the stock as it comes, not cut
	Outline                 // edges of other things seen: treads, floors, walls
	Hidden                  // edges behind something
	Centre                  // centre lines, walklines, nosing lines
	Thin                    // finished surfaces and other fine lines
	Dimension               // dimension lines and their figures
	Note                    // words
	Mark                    // what guides a cut without being one: stop ticks, tips
	Cut                     // where the saw goes
	LayerCount = int(Cut) + 1
)

var layerNames = [LayerCount]string{"lumber", "outline", "hidden", "centre", "thin", "dimension", "note", "mark", "cut"}

func (l Layer) String() string { return layerNames[l] }

// GuidesCut tells whether a sheet on which something of this layer falls is
// needed: cuts, and the marks that guide one.
func (l Layer) GuidesCut() bool { return l == Cut || l == Mark }

// Item is one thing in a drawing: a Path, a Text or a Dim.
type Item interface{ item() }

// Path is a line, straight or bent, on a layer. Fill is how dark it is inside,
// from 0 (not filled) to 1 (black); light greys only, the page must read on a
// poor printer.
type Path struct {
	Layer Layer
	geom.Path
	Fill float64
}

// Align says which point of a text stands at its place, along the line of
// writing.
type Align int

// Alignment along the line of writing.
const (
	Left Align = iota
	Middle
	Right
)

// Text is one line of writing. Height is that of a capital, in millimetres on
// the sheet (ISO 3098: 2.5, 3.5, 5, 7); Angle in radians; the place is on the
// baseline. Figures with fractions are written plainly, 7 5/8, and set as real
// fractions by writers that can.
type Text struct {
	Layer  Layer
	At     Point
	Height float64
	Angle  float64
	Align  Align
	Text   string
}

// Direction says what a dimension measures.
type Direction int

// Directions of a dimension.
const (
	Aligned    Direction = iota // along the line from A to B
	Horizontal                  // along x
	Vertical                    // along y
)

// Dim is a dimension between two points. Offset is how far the dimension line
// stands off, in millimetres on the sheet: to the left going from A to B for
// an aligned one, up for a horizontal one, to the right for a vertical one,
// from whichever of the two points is further that way; negative the other
// way. Text is the figure, made from the exact length: nothing downstream
// measures the drawing.
type Dim struct {
	A, B      Point
	Direction Direction
	Offset    float64
	Text      string
}

func (Path) item() {}
func (Text) item() {}
func (Dim) item()  {}

// Letter heights of ISO 3098, in millimetres.
const (
	Small  = 2.5
	Normal = 3.5
	Large  = 5.0
	Huge   = 7.0
)

// Drawing is a list of items in drawing order, with a name (lower case, for
// file names) and a title.
type Drawing struct {
	Name, Title string
	Items       []Item
}

// Add appends items.
func (d *Drawing) Add(items ...Item) { d.Items = append(d.Items, items...) }

// Line adds a straight line.
func (d *Drawing) Line(l Layer, a, b Point) { d.Polyline(l, a, b) }

// Polyline adds an open line through the points.
func (d *Drawing) Polyline(l Layer, pts ...Point) {
	d.Add(Path{Layer: l, Path: geom.Polyline(pts...)})
}

// Polygon adds a closed line through the points.
func (d *Drawing) Polygon(l Layer, pts ...Point) {
	d.Add(Path{Layer: l, Path: geom.Closed(pts...)})
}

// Text adds a line of writing.
func (d *Drawing) Text(at Point, height float64, align Align, text string) {
	d.Add(Text{Layer: Note, At: at, Height: height, Align: align, Text: text})
}

// Dim adds a dimension.
func (d *Drawing) Dim(dir Direction, a, b Point, offset float64, text string) {
	d.Add(Dim{A: a, B: b, Direction: dir, Offset: offset, Text: text})
}

// Bounds is the box round the paths: text and dimensions, whose size is the
// writer's business, are not in it.
func (d *Drawing) Bounds() geom.Box {
	b := geom.EmptyBox()
	for _, it := range d.Items {
		if p, ok := it.(Path); ok {
			b = b.Union(p.Box())
		}
	}
	return b
}
