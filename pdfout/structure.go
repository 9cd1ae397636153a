package pdfout

import "fmt"

// structure is the tree of tags that lets a reader for the blind find
// headings, paragraphs and tables. What is drawn, and what repeats on every
// sheet, is an artifact and not in it.
type structure struct {
	root  *element
	pages [][]*element // by page: which element each marked piece of it belongs to
}

// element is one tag: Document, H1, P, Table...
type element struct {
	tag     string
	alt     string // what a figure shows, in words
	parent  *element
	kids    []*element
	content []piece
}

// piece is a marked piece of a page.
type piece struct{ page, id int }

func newStructure() *structure { return &structure{root: &element{tag: "Document"}} }

// add makes an element below another.
func (e *element) add(tag string) *element {
	kid := &element{tag: tag, parent: e}
	e.kids = append(e.kids, kid)
	return kid
}

func (s *structure) newPage() { s.pages = append(s.pages, nil) }

// mark gives the next number on the page being written to a piece of an
// element.
func (s *structure) mark(e *element) (id int) {
	page := len(s.pages) - 1
	id = len(s.pages[page])
	s.pages[page] = append(s.pages[page], e)
	e.content = append(e.content, piece{page, id})
	return id
}

// tagged draws what f draws as a piece of an element.
func (c *canvas) tagged(e *element, f func()) {
	c.op(fmt.Sprintf("/%s <</MCID %d>> BDC", e.tag, c.tags.mark(e)))
	f()
	c.op("EMC")
}

// artifact draws what f draws as something that is not read aloud. name says
// in the file what it is: cut, mark, ruler...
func (c *canvas) artifact(name string, f func()) {
	c.op("/Artifact BMC")
	c.op("/" + name + " BMC")
	f()
	c.op("EMC")
	c.op("EMC")
}
