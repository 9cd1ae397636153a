// Package svg writes a drawing as SVG: a file that opens in a browser, a
// drawing program or a router's software at its true size.
//
// The unit is the millimetre, coordinates are written to the nanometre, and
// arcs stay arcs. Each layer is a group of its own with its name; how it looks
// stands once, in the style sheet inside the file.
package svg

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"io"
	"math"
	"strconv"

	"stepoff/layout/drawing"
	"stepoff/layout/drawing/letter"
	"stepoff/layout/geom"
	"stepoff/spec/measure"
)

// Options say how a drawing is written.
type Options struct {
	Scale  float64 // millimetres on the sheet for one of the drawing; 0 is full size, 1
	Margin float64 // free round the drawing, millimetres on the sheet
	Paper  bool    // a white ground: for pictures, not for machines
	Inline bool    // as a part of a page that holds Style once: no file's head, no names that another drawing on it has too
}

// Write writes the drawing. Nothing is written when the drawing itself is at
// fault.
func Write(w io.Writer, d *drawing.Drawing, o Options) error {
	if err := d.Check(); err != nil {
		return err
	}
	if o.Scale == 0 {
		o.Scale = 1
	}
	if !(o.Scale > 0 && o.Scale <= 100) || !(o.Margin >= 0 && o.Margin <= 1000) {
		return fmt.Errorf("drawing %s: a scale of %g with a margin of %g mm cannot be written", d.Name, o.Scale, o.Margin)
	}
	box := d.Extent(o.Scale)
	if box.Empty() {
		return fmt.Errorf("drawing %s: there is nothing in it", d.Name)
	}
	p := &picture{scale: o.Scale, margin: o.Margin, left: box.Min.X, top: box.Max.Y, inline: o.Inline}
	width, height := box.Width()*o.Scale+2*o.Margin, box.Height()*o.Scale+2*o.Margin
	if o.Inline {
		p.write(`<svg class="drawing" role="img" viewBox="0 0 `, number(width), " ", number(height), `" style="max-width: `, number(mostGrown*width), "mm\">\n")
		p.write("<title>", escape(d.Title), "</title>\n")
	} else {
		p.write(`<?xml version="1.0" encoding="UTF-8"?>`, "\n")
		p.write(`<svg xmlns="http://www.w3.org/2000/svg" xmlns:inkscape="http://www.inkscape.org/namespaces/inkscape" version="1.1"`,
			` width="`, number(width), `mm" height="`, number(height), `mm" viewBox="0 0 `, number(width), " ", number(height), "\">\n")
		p.write("<title>", escape(d.Title), "</title>\n")
		p.write("<style>\n")
		p.style("")
		p.write("</style>\n")
	}
	if o.Paper {
		p.write(`<rect class="paper" width="`, number(width), `" height="`, number(height), "\"/>\n")
	}
	p.items(d.Resolve(o.Scale))
	p.write("</svg>\n")
	_, err := w.Write(p.Bytes())
	return err
}

// mostGrown is how much larger than its size an inline drawing is shown at most,
// where the page is wider.
const mostGrown = 1.5

// picture gathers the file. Its place 0, 0 is the upper left corner, y down.
type picture struct {
	bytes.Buffer
	scale, margin float64
	left, top     float64 // of the drawing, in its own millimetres
	inline        bool
}

func (p *picture) write(parts ...string) {
	for _, s := range parts {
		p.WriteString(s)
	}
}

// number writes a length or place in millimetres to the nanometre.
func number(v float64) string {
	return strconv.FormatFloat(measure.SnapMM(v), 'f', -1, 64)
}

func escape(s string) string {
	var b bytes.Buffer
	xml.EscapeText(&b, []byte(s)) // a buffer takes everything
	return b.String()
}

// at writes a place of the drawing.
func (p *picture) at(q geom.Point) string { x, y := p.xy(q); return number(x) + " " + number(y) }

func (p *picture) xy(q geom.Point) (x, y float64) {
	return (q.X-p.left)*p.scale + p.margin, (p.top-q.Y)*p.scale + p.margin
}

// Style is how the layers look, once for all the drawings of a page that are
// written inline.
func Style() string {
	p := &picture{}
	p.style(".drawing ")
	return p.String()
}

// style writes how each layer looks, inside what the selector names.
func (p *picture) style(inside string) {
	p.write(inside, "path { fill: none; stroke: #000; stroke-linejoin: round }\n")
	p.write(inside, "text { fill: #000; font-family: \"", letter.Family, "\", \"Helvetica\", \"Arial\", sans-serif; white-space: pre }\n")
	p.write(inside, ".paper { fill: #fff }\n", inside, ".bar { stroke-width: ", number(letter.BarWidth), "; stroke-dasharray: none }\n")
	for l := drawing.Layer(0); int(l) < drawing.LayerCount; l++ {
		line := l.Line()
		p.write(inside, ".", l.String(), " { stroke-width: ", number(line.Width))
		if len(line.Dash) > 0 {
			p.write("; stroke-dasharray: ")
			for i, d := range line.Dash {
				if i > 0 {
					p.write(" ")
				}
				p.write(number(d))
			}
		}
		p.write(" }\n")
	}
}

// items writes the layers, each a group.
func (p *picture) items(items []drawing.Item) {
	open := drawing.Layer(-1)
	begin := func(l drawing.Layer) {
		if l == open {
			return
		}
		if open >= 0 {
			p.write("</g>\n")
		}
		if p.inline {
			p.write(`<g class="`, l.String(), "\">\n")
		} else {
			p.write(`<g id="`, l.String(), `" class="`, l.String(), `" inkscape:groupmode="layer" inkscape:label="`, l.String(), "\">\n")
		}
		open = l
	}
	for _, it := range items {
		switch it := it.(type) {
		case drawing.Path:
			begin(it.Layer)
			p.path(it)
		case drawing.Text:
			begin(it.Layer)
			p.text(it)
		}
	}
	if open >= 0 {
		p.write("</g>\n")
	}
}

// joined is how far apart, in millimetres, an edge's end and the next one's
// beginning may be and still be one corner.
const joined = 1e-6

func (p *picture) path(path drawing.Path) {
	if len(path.Edges) == 0 {
		return
	}
	p.write(`<path d="`)
	var last geom.Point
	for i, e := range path.Edges {
		if i == 0 || math.Abs(e.From.X-last.X) > joined || math.Abs(e.From.Y-last.Y) > joined {
			p.write("M", p.at(e.From), " ")
		}
		last = e.To
		switch {
		case e.IsArc():
			p.arc(e)
		case path.Closed && i == len(path.Edges)-1:
			// closing the path draws it
		default:
			p.write("L", p.at(e.To), " ")
		}
	}
	if path.Closed {
		p.write("Z")
	}
	p.write(`"`)
	if path.Fill > 0 {
		grey := int(math.Round(255 * (1 - path.Fill)))
		p.write(fmt.Sprintf(` style="fill: #%02x%02x%02x"`, grey, grey, grey))
	}
	p.write("/>\n")
}

// arc writes an arc in pieces of a quarter circle or less: from two ends
// nearly half a circle apart, rounded, the centre could not be told.
func (p *picture) arc(e geom.Edge) {
	n := math.Ceil(math.Abs(e.Sweep)/(math.Pi/2) - 1e-9)
	way := "0" // counter-clockwise, as y runs down
	if e.Sweep < 0 {
		way = "1"
	}
	r := number(e.Radius * p.scale)
	for i := 1.0; i <= n; i++ {
		p.write("A", r, " ", r, " 0 0 ", way, " ", p.at(e.At(i/n)), " ")
	}
}

// text writes a line, its pieces each in its own place and at its own length,
// so that it is as wide in any font.
func (p *picture) text(t drawing.Text) {
	line := letter.Set(t.Text, t.Height)
	if len(line.Spans) == 0 {
		return
	}
	x, y := p.xy(t.At)
	p.write(`<g transform="translate(`, number(x), " ", number(y), ")")
	if deg := measure.SnapDegrees(-t.Angle * 180 / math.Pi); deg != 0 {
		p.write(" rotate(", strconv.FormatFloat(deg, 'f', -1, 64), ")")
	}
	p.write("\" role=\"img\" aria-label=\"", escape(t.Text), "\">")
	start := line.Width * t.Align.Shift()
	for _, s := range line.Spans {
		for _, r := range s.Runs {
			p.write(`<text x="`, number(start+r.X), `" y="`, number(-r.Y), `" font-size="`, number(letter.Em(r.Height)),
				`" textLength="`, number(letter.Width(r.Text, r.Height)), `">`, escape(r.Text), "</text>")
		}
		if s.Bar != nil {
			p.write(`<path class="bar" d="M`, number(start+s.Bar.X0), " ", number(-s.Bar.Y), " L", number(start+s.Bar.X1), " ", number(-s.Bar.Y), `"/>`)
		}
	}
	p.write("</g>\n")
}
