package pdftest

import (
	"fmt"
	"io"
	"math"
	"strings"

	"stepoff/layout/drawing/letter"
	"stepoff/layout/geom"
)

// Page is one page, its lower left corner at 0, 0, in millimetres.
type Page struct {
	Number        int // from 1
	Width, Height float64
	Paths         []Path
	Writing       []Writing
	marked        map[int]string // text by MCID
}

// Path is a line or area drawn on a page.
type Path struct {
	Layer    string   // the innermost mark it stands in: Cut, Mark, Ruler...
	Tags     []string // all of them, outermost first
	Pieces   []Piece
	Width    float64   // of the line, millimetres
	Dash     []float64 // millimetres
	Stroked  bool
	Filled   bool
	Grey     float64 // of a filling: 0 black, 1 white
	Clipping bool    // not drawn: bounds what follows
	Clipped  bool    // only what lies inside a clipping path is seen
}

// Piece is a straight piece of a path, or a Bézier curve.
type Piece struct {
	From, C1, C2, To geom.Point
	Curve            bool
}

// At returns the point at a fraction f of the piece's parameter.
func (p Piece) At(f float64) geom.Point {
	g := 1 - f
	if !p.Curve {
		return geom.Pt(g*p.From.X+f*p.To.X, g*p.From.Y+f*p.To.Y)
	}
	a, b, c, d := g*g*g, 3*g*g*f, 3*g*f*f, f*f*f
	return geom.Pt(a*p.From.X+b*p.C1.X+c*p.C2.X+d*p.To.X, a*p.From.Y+b*p.C1.Y+c*p.C2.Y+d*p.To.Y)
}

// Writing is a piece of a line: a run of text, or a fraction with the whole
// number before it, whose figures are runs of their own.
type Writing struct {
	Text  string // as copied and searched
	Angle float64
	Tags  []string
	Runs  []Run
}

// Run is text written in one go, from the left end of its baseline. Height is
// that of capitals and figures.
type Run struct {
	Text          string
	At            geom.Point
	Width, Height float64
}

const mmPerPt = 25.4 / 72

// state is what q saves and Q brings back.
type state struct {
	ctm   [6]float64
	width float64
	dash  []float64
	grey  float64
	size  float64
	clip  bool
}

// mark is an open piece of marked content.
type mark struct {
	tag    string
	mcid   int // -1: none
	actual *Writing
}

// painter follows a page's operators.
type painter struct {
	page   *Page
	s      state
	saved  []state
	marks  []mark
	pieces []Piece
	start  geom.Point // of the piece of path being drawn
	here   geom.Point
	clip   bool
	textAt [6]float64
	inText bool
}

// page reads a page's contents.
func (r *reader) page(d dict) (Page, error) {
	p := Page{marked: map[int]string{}}
	box, ok := d["MediaBox"].(array)
	if !ok || len(box) != 4 || box[0] != 0.0 || box[1] != 0.0 {
		return p, fmt.Errorf("it does not say its own size")
	}
	if _, turned := d["Rotate"]; turned {
		return p, fmt.Errorf("it is turned")
	}
	if _, scaled := d["UserUnit"]; scaled {
		return p, fmt.Errorf("it has a unit of its own")
	}
	p.Width, p.Height = box[2].(float64)*mmPerPt, box[3].(float64)*mmPerPt
	contents, ok := r.get(d["Contents"]).(stream)
	if !ok {
		return p, fmt.Errorf("it has no contents")
	}
	c := painter{page: &p, s: state{ctm: [6]float64{1, 0, 0, 1, 0, 0}, width: mmPerPt}}
	s := &scanner{b: contents.Data}
	var args []any
	for {
		v, err := s.next()
		if err == io.EOF {
			break
		}
		if err != nil {
			return p, err
		}
		op, ok := v.(keyword)
		if !ok {
			args = append(args, v)
			continue
		}
		if err := c.operator(string(op), args); err != nil {
			return p, fmt.Errorf("%v %s: %w", args, op, err)
		}
		args = args[:0]
	}
	if len(c.saved) > 0 || len(c.marks) > 0 {
		return p, fmt.Errorf("q and Q, or BDC and EMC, do not match")
	}
	return p, nil
}

func (c *painter) operator(op string, args []any) error {
	nums := make([]float64, 0, 6)
	for _, a := range args {
		if v, ok := a.(float64); ok {
			nums = append(nums, v)
		}
	}
	need := map[string]int{"m": 2, "l": 2, "c": 6, "re": 4, "w": 1, "cm": 6, "Td": 2, "g": 1, "d": 1, "Tf": 1}[op]
	if len(nums) < need {
		return errSyntax
	}
	switch op {
	case "q":
		c.saved = append(c.saved, c.s)
	case "Q":
		if len(c.saved) == 0 {
			return errSyntax
		}
		c.s, c.saved = c.saved[len(c.saved)-1], c.saved[:len(c.saved)-1]
	case "cm":
		c.s.ctm = multiply([6]float64(nums), c.s.ctm)
	case "w":
		c.s.width = nums[0] * mmPerPt * scaleOf(c.s.ctm)
	case "d":
		c.s.dash = nil
		list, _ := args[0].(array)
		for _, v := range list {
			c.s.dash = append(c.s.dash, v.(float64)*mmPerPt)
		}
	case "g":
		c.s.grey = nums[0]
	case "J", "j", "Tr", "G":
	case "m":
		c.here = c.point(nums[0], nums[1])
		c.start = c.here
	case "l":
		c.to(Piece{To: c.point(nums[0], nums[1])})
	case "c":
		c.to(Piece{C1: c.point(nums[0], nums[1]), C2: c.point(nums[2], nums[3]), To: c.point(nums[4], nums[5]), Curve: true})
	case "h":
		if c.here != c.start {
			c.to(Piece{To: c.start})
		}
	case "W":
		c.clip = true
	case "S", "f", "B", "n":
		c.paint(op)
	case "BMC", "BDC":
		return c.begin(args)
	case "EMC":
		return c.end()
	case "BT":
		c.textAt, c.inText = [6]float64{1, 0, 0, 1, 0, 0}, true
	case "ET":
		c.inText = false
	case "Tf":
		c.s.size = nums[0]
	case "Td":
		c.textAt = multiply([6]float64{1, 0, 0, 1, nums[0], nums[1]}, c.textAt)
	case "Tj":
		t, ok := args[0].(pdfString)
		if !ok || !c.inText {
			return errSyntax
		}
		c.write(decode16(string(t)))
	default:
		return fmt.Errorf("an operator that is not known")
	}
	return nil
}

func multiply(a, b [6]float64) [6]float64 {
	return [6]float64{
		a[0]*b[0] + a[1]*b[2], a[0]*b[1] + a[1]*b[3],
		a[2]*b[0] + a[3]*b[2], a[2]*b[1] + a[3]*b[3],
		a[4]*b[0] + a[5]*b[2] + b[4], a[4]*b[1] + a[5]*b[3] + b[5],
	}
}

func scaleOf(m [6]float64) float64 { return math.Hypot(m[0], m[1]) }

// point is a place in millimetres on the page.
func (c *painter) point(x, y float64) geom.Point {
	m := c.s.ctm
	return geom.Pt((x*m[0]+y*m[2]+m[4])*mmPerPt, (x*m[1]+y*m[3]+m[5])*mmPerPt)
}

func (c *painter) to(p Piece) {
	p.From = c.here
	c.pieces = append(c.pieces, p)
	c.here = p.To
}

func (c *painter) tags() []string {
	var tags []string
	for _, m := range c.marks {
		tags = append(tags, m.tag)
	}
	return tags
}

func (c *painter) paint(op string) {
	p := Path{Pieces: c.pieces, Width: c.s.width, Dash: c.s.dash, Grey: c.s.grey, Tags: c.tags(),
		Stroked: op == "S" || op == "B", Filled: op == "f" || op == "B", Clipping: c.clip, Clipped: c.s.clip}
	if n := len(p.Tags); n > 0 {
		p.Layer = p.Tags[n-1]
	}
	if len(p.Pieces) > 0 {
		c.page.Paths = append(c.page.Paths, p)
	}
	c.s.clip = c.s.clip || c.clip
	c.pieces, c.clip = nil, false
}

func (c *painter) begin(args []any) error {
	tag, ok := args[0].(pdfName)
	if !ok {
		return errSyntax
	}
	m := mark{tag: string(tag), mcid: -1}
	if len(args) > 1 {
		props, ok := args[1].(dict)
		if !ok {
			return errSyntax
		}
		if id, ok := props["MCID"].(float64); ok {
			m.mcid = int(id)
		}
		if actual, ok := props["ActualText"].(pdfString); ok {
			m.actual = &Writing{Text: actual.String(), Tags: c.tags()}
		}
	}
	c.marks = append(c.marks, m)
	return nil
}

func (c *painter) end() error {
	n := len(c.marks) - 1
	if n < 0 {
		return errSyntax
	}
	m := c.marks[n]
	c.marks = c.marks[:n]
	if m.actual != nil {
		c.put(*m.actual)
	}
	return nil
}

// put adds a writing to the page, and to the tag it stands in.
func (c *painter) put(w Writing) {
	c.page.Writing = append(c.page.Writing, w)
	for _, m := range c.marks {
		if m.mcid >= 0 {
			c.page.marked[m.mcid] += w.Text
		}
	}
}

func (c *painter) write(text string) {
	m := multiply(c.textAt, c.s.ctm)
	height := c.s.size * mmPerPt * scaleOf(m) / letter.Em(1)
	angle := math.Atan2(m[1], m[0])
	run := Run{text, geom.Pt(m[4]*mmPerPt, m[5]*mmPerPt), letter.Width(text, height), height}
	for i := len(c.marks) - 1; i >= 0; i-- {
		if a := c.marks[i].actual; a != nil {
			a.Angle, a.Runs = angle, append(a.Runs, run)
			return
		}
	}
	c.put(Writing{Text: text, Angle: angle, Tags: c.tags(), Runs: []Run{run}})
}

// Lines returns the page's writing line by line, in the order it was written:
// what follows on right behind is on the same line.
func (p Page) Lines() []string {
	var lines []string
	for i, w := range p.Writing {
		if i > 0 && w.follows(p.Writing[i-1]) {
			lines[len(lines)-1] += w.Text
		} else {
			lines = append(lines, w.Text)
		}
	}
	return lines
}

// follows tells whether w begins where some run of the other ends.
func (w Writing) follows(before Writing) bool {
	if w.Angle != before.Angle {
		return false
	}
	sin, cos := math.Sincos(w.Angle)
	for _, a := range before.Runs {
		end := geom.Pt(a.At.X+a.Width*cos, a.At.Y+a.Width*sin)
		for _, b := range w.Runs {
			if math.Hypot(b.At.X-end.X, b.At.Y-end.Y) < 0.9*math.Max(a.Height, b.Height) {
				return true
			}
		}
	}
	return false
}

// Has tells whether some line of the page holds the words.
func (p Page) Has(words string) bool {
	for _, l := range p.Lines() {
		if strings.Contains(l, words) {
			return true
		}
	}
	return false
}
