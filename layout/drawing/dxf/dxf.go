// Package dxf writes a drawing as DXF for a router's or a drawing program:
// Release 12 (AC1009), the plain text that all of them read. Lines and arcs are
// true, at full size, y up; a closed outline is one closed polyline, with its
// arcs as bulges.
//
// The unit is declared by $INSUNITS. Release 12 does not know that variable, so
// that a program may ask or assume: but programs of today read it from such a
// file too, and older ones pass over it.
package dxf

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"math"
	"strconv"

	"stepoff/layout/drawing"
	"stepoff/layout/geom"
	"stepoff/spec/measure"
)

// Layer is a layer of the file. An operator gives each its tool and depth.
type Layer string

// The layers. None is no layer: what would go there is left out.
const (
	None    Layer = ""
	Outline Layer = "OUTLINE" // cut right through
	Housing Layer = "HOUSING" // routed to a depth
	Stop    Layer = "STOP"    // where a blade or a cutter stops
	Mark    Layer = "MARK"    // what guides the hand: tips, lines to strike
	Text    Layer = "TEXT"    // words and dimensions
)

// layers are all of them, each with its colour as DXF counts colours: 7 black or
// white, 1 red, 6 magenta, 3 green, 5 blue.
var layers = []struct {
	name   Layer
	colour int
}{{Outline, 7}, {Housing, 1}, {Stop, 6}, {Mark, 3}, {Text, 5}}

// Layers says on which layer of the file each layer of a drawing goes.
type Layers [drawing.LayerCount]Layer

// Usual is where the layers of a part's drawing go. What is not the part itself
// is left out: the board it comes from, what stands round it.
var Usual = Layers{
	drawing.Cut: Outline, drawing.Mark: Mark, drawing.Note: Text, drawing.Dimension: Text,
}

// Part is a drawing in a file, and where its layers go: the housings of a string
// are a part of their own, with the cuts on Housing.
type Part struct {
	Drawing *drawing.Drawing
	Layers  Layers
}

// Write writes drawings in one frame of axes, in millimetres, or in inches where
// units are imperial. Nothing is written when a drawing is at fault, or when
// there is nothing to write.
func Write(w io.Writer, units measure.Units, parts ...Part) error {
	f := &file{inches: units == measure.Imperial}
	box := geom.EmptyBox()
	var entities []func()
	for _, part := range parts {
		if err := part.Drawing.Check(); err != nil {
			return err
		}
		for _, it := range part.Drawing.Resolve(1) {
			switch it := it.(type) {
			case drawing.Path:
				if l := part.Layers[it.Layer]; l != None && len(it.Edges) > 0 {
					box = box.Union(it.Box())
					entities = append(entities, func() { f.path(l, it.Path) })
				}
			case drawing.Text:
				text := ascii(it.Text)
				if l := part.Layers[it.Layer]; l != None && text != "" {
					box = box.Include(it.At)
					entities = append(entities, func() { f.text(l, it, text) })
				}
			}
		}
	}
	if box.Empty() {
		if len(parts) == 1 {
			return fmt.Errorf("drawing %s: there is nothing in it for a DXF file", parts[0].Drawing.Name)
		}
		return errors.New("there is nothing to write to a DXF file")
	}
	f.head(box)
	f.tables()
	f.section("BLOCKS", func() {})
	f.section("ENTITIES", func() {
		for _, write := range entities {
			write()
		}
	})
	f.word(0, "EOF")
	_, err := w.Write(f.Bytes())
	return err
}

// file gathers the file: pairs of lines, a group code and its value.
type file struct {
	bytes.Buffer
	inches bool
}

func (f *file) word(code int, value string) { fmt.Fprintf(f, "%3d\n%s\n", code, value) }
func (f *file) whole(code, value int)       { fmt.Fprintf(f, "%3d\n%6d\n", code, value) }

// length writes a length or a coordinate: of millimetres six decimals; of
// inches nine, so that a nanometre is told from the next there too.
func (f *file) length(code int, mm float64) {
	v, decimals := measure.SnapMM(mm), 6
	if f.inches {
		v, decimals = v/25.4, 9
	}
	f.word(code, strconv.FormatFloat(v, 'f', decimals, 64))
}

func (f *file) degrees(code int, angle float64) {
	f.word(code, strconv.FormatFloat(measure.SnapDegrees(angle*180/math.Pi), 'f', 9, 64))
}

// point writes a place; code is that of its x.
func (f *file) point(code int, p geom.Point) {
	f.length(code, p.X)
	f.length(code+10, p.Y)
	f.length(code+20, 0)
}

func (f *file) section(name string, write func()) {
	f.word(0, "SECTION")
	f.word(2, name)
	write()
	f.word(0, "ENDSEC")
}

// head declares the release, the unit, and how far the drawing reaches.
func (f *file) head(box geom.Box) {
	unit, metric := 4, 1 // millimetres
	if f.inches {
		unit, metric = 1, 0
	}
	f.section("HEADER", func() {
		f.word(9, "$ACADVER")
		f.word(1, "AC1009")
		f.word(9, "$INSUNITS")
		f.whole(70, unit)
		f.word(9, "$MEASUREMENT")
		f.whole(70, metric)
		f.word(9, "$LUNITS") // decimals
		f.whole(70, 2)
		f.word(9, "$EXTMIN")
		f.point(10, box.Min)
		f.word(9, "$EXTMAX")
		f.point(10, box.Max)
	})
}

func (f *file) table(name string, entries int, write func()) {
	f.word(0, "TABLE")
	f.word(2, name)
	f.whole(70, entries)
	write()
	f.word(0, "ENDTAB")
}

// tables are the line types, the layers and the style of writing, which some
// programs want before they read an entity.
func (f *file) tables() {
	f.section("TABLES", func() {
		f.table("LTYPE", 1, func() {
			f.word(0, "LTYPE")
			f.word(2, "CONTINUOUS")
			f.whole(70, 0)
			f.word(3, "Solid line")
			f.whole(72, 'A') // the alignment all line types have
			f.whole(73, 0)   // no dashes
			f.length(40, 0)
		})
		f.table("LAYER", len(layers), func() {
			for _, l := range layers {
				f.word(0, "LAYER")
				f.word(2, string(l.name))
				f.whole(70, 0)
				f.whole(62, l.colour)
				f.word(6, "CONTINUOUS")
			}
		})
		f.table("STYLE", 1, func() {
			f.word(0, "STYLE")
			f.word(2, "STANDARD")
			f.whole(70, 0)
			f.length(40, 0) // no fixed height
			f.word(41, "1.0")
			f.length(50, 0)
			f.whole(71, 0)
			f.length(42, drawing.Normal)
			f.word(3, "txt")
			f.word(4, "")
		})
	})
}
