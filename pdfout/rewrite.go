package pdfout

import (
	"bytes"
	"compress/zlib"
	"crypto/sha256"
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode/utf16"
)

// The library can neither ask viewers not to scale, nor tag, nor attach a file
// without moving every bookmark one page on; it dates what it writes, and
// takes a new compressor, a megabyte and more, for every page. So it writes
// plain objects, and they are put right here and written again.

// objects are the objects of a PDF file as the library wrote it, by number
// from 1: what stands between "obj" and "endobj".
type objects struct {
	bodies    [][]byte
	info      int
	catalog   int
	firstPage int // pages and their contents alternate from here
}

var errLayout = errors.New("the PDF library wrote a file of a shape this program does not know")

// parse finds the objects through the file's table of them.
func parse(file []byte) (*objects, error) {
	at := bytes.LastIndex(file, []byte("startxref\n"))
	if at < 0 {
		return nil, errLayout
	}
	var table, count int
	if _, err := fmt.Sscanf(string(file[at+len("startxref\n"):]), "%d", &table); err != nil || table < 0 || table > at {
		return nil, errLayout
	}
	if _, err := fmt.Sscanf(string(file[table:min(table+40, at)]), "xref\n0 %d", &count); err != nil {
		return nil, errLayout
	}
	lines := bytes.SplitN(file[table:at], []byte("\n"), count+3)
	if len(lines) < count+3 {
		return nil, errLayout
	}
	offsets := make([]int, count)
	for i := 1; i < count; i++ {
		n, err := strconv.Atoi(string(lines[2+i][:min(10, len(lines[2+i]))]))
		if err != nil || n >= table {
			return nil, errLayout
		}
		offsets[i] = n
	}
	ends := append(slices.Clone(offsets[1:]), table)
	slices.Sort(ends)
	o := &objects{bodies: make([][]byte, count), firstPage: 3}
	for i := 1; i < count; i++ {
		j, _ := slices.BinarySearch(ends, offsets[i]+1)
		body := file[offsets[i]:ends[j]]
		head, tail := bytes.Index(body, []byte(" obj\n")), bytes.LastIndex(body, []byte("endobj"))
		if head < 0 || tail < head {
			return nil, errLayout
		}
		o.bodies[i] = body[head+len(" obj\n") : tail]
	}
	trailer := lines[count+2]
	o.info, o.catalog = reference(trailer, "/Info "), reference(trailer, "/Root ")
	if o.info <= 0 || o.catalog <= 0 || o.info >= count || o.catalog >= count {
		return nil, errLayout
	}
	return o, nil
}

// reference reads the number of the object that a key refers to.
func reference(b []byte, key string) int {
	_, rest, found := bytes.Cut(b, []byte(key))
	if !found {
		return 0
	}
	digits, _, _ := bytes.Cut(rest, []byte(" "))
	n, err := strconv.Atoi(string(digits))
	if err != nil {
		return 0
	}
	return n
}

// add appends an object and returns its number.
func (o *objects) add(body []byte) int {
	o.bodies = append(o.bodies, body)
	return len(o.bodies) - 1
}

// insert puts entries into an object's dictionary, behind its last.
func (o *objects) insert(n int, entries string) {
	b := o.bodies[n]
	at := bytes.LastIndex(b, []byte(">>"))
	o.bodies[n] = slices.Concat(b[:at], []byte(entries), []byte("\n"), b[at:])
}

// page is the number of a page's object, from 0.
func (o *objects) page(n int) int { return o.firstPage + 2*n }

// compress compresses the pages' contents, with one compressor for all.
func (o *objects) compress(pages int) error {
	var buf bytes.Buffer
	z, err := zlib.NewWriterLevel(&buf, zlib.BestSpeed)
	if err != nil {
		return err
	}
	for i := range pages {
		n := o.page(i) + 1
		_, data, found := bytes.Cut(o.bodies[n], []byte("stream\n"))
		end := bytes.LastIndex(data, []byte("\nendstream"))
		if !found || end < 0 {
			return errLayout
		}
		buf.Reset()
		z.Reset(&buf)
		if _, err := z.Write(data[:end]); err != nil {
			return err
		}
		if err := z.Close(); err != nil {
			return err
		}
		o.bodies[n] = stream("/Filter /FlateDecode", buf.Bytes())
	}
	return nil
}

// stream is the body of a stream object.
func stream(entries string, data []byte) []byte {
	b := fmt.Appendf(make([]byte, 0, len(data)+80), "<<%s /Length %d>>\nstream\n", entries, len(data))
	return append(append(b, data...), "\nendstream\n"...)
}

var (
	dates       = regexp.MustCompile(`/(CreationDate|ModDate) \(D:[0-9]{14}\)\n`)
	destination = regexp.MustCompile(`/XYZ 0 -?[0-9.]+ null\]\n/Count 0>>\n$`)
	noFiles     = regexp.MustCompile(`/EmbeddedFiles << /Names \[\s*\] >>\n`)
)

// undate drops the dates the library wrote.
func (o *objects) undate() { o.bodies[o.info] = dates.ReplaceAll(o.bodies[o.info], nil) }

// zone says that the dates the library wrote are in universal time.
func (o *objects) zone() {
	o.bodies[o.info] = dates.ReplaceAllFunc(o.bodies[o.info], func(d []byte) []byte {
		return bytes.Replace(d, []byte(")"), []byte("Z)"), 1)
	})
}

// fitBookmarks makes bookmarks show their whole page: the library reckons
// heights from whichever page came last.
func (o *objects) fitBookmarks() {
	for i, b := range o.bodies {
		if bytes.HasPrefix(b, []byte("<</Title ")) {
			o.bodies[i] = destination.ReplaceAll(b, []byte("/Fit]\n>>\n"))
		}
	}
}

// preferences asks viewers to print at actual size, one side, the title shown.
func (o *objects) preferences() {
	o.insert(o.catalog, "/ViewerPreferences <</PrintScaling /None /Duplex /Simplex /PickTrayByPDFSize true /DisplayDocTitle true>>")
}

// attach carries files in the document.
func (o *objects) attach(files []Attachment) {
	var names bytes.Buffer
	for i, f := range files {
		data := o.add(stream(fmt.Sprintf("/Type /EmbeddedFile /Params <</Size %d>>", len(f.Bytes)), f.Bytes))
		name := pdfText(safe(f.Name))
		entry := fmt.Sprintf("<</Type /Filespec /F %s /UF %s /EF <</F %d 0 R>>", name, name, data)
		if f.Description != "" {
			entry += " /Desc " + pdfText(safe(f.Description))
		}
		fmt.Fprintf(&names, "(%06d) %d 0 R ", i, o.add([]byte(entry+">>\n")))
	}
	c := o.bodies[o.catalog]
	if len(files) == 0 {
		o.bodies[o.catalog] = bytes.Replace(noFiles.ReplaceAll(c, nil), []byte("/Names <<\n>>\n"), nil, 1)
		return
	}
	o.bodies[o.catalog] = noFiles.ReplaceAll(c, fmt.Appendf(nil, "/EmbeddedFiles <</Names [%s]>>\n", bytes.TrimSpace(names.Bytes())))
}

// pdfText is a text as a PDF string, UTF-16.
func pdfText(s string) string {
	var b strings.Builder
	b.WriteString("<FEFF")
	for _, u := range utf16.Encode([]rune(s)) {
		fmt.Fprintf(&b, "%04X", u)
	}
	b.WriteByte('>')
	return b.String()
}

// tag writes the tree of tags and ties the pages' marked pieces to it.
func (o *objects) tag(s *structure) {
	numbers := map[*element]int{}
	var number func(e *element)
	number = func(e *element) { // in the order of the tree, so that the file is the same every time
		numbers[e] = o.add(nil)
		for _, k := range e.kids {
			number(k)
		}
	}
	root := o.add(nil)
	number(s.root)
	var write func(e *element)
	write = func(e *element) {
		parent := root
		if e.parent != nil {
			parent = numbers[e.parent]
		}
		var b bytes.Buffer
		fmt.Fprintf(&b, "<</Type /StructElem /S /%s /P %d 0 R", e.tag, parent)
		if e.alt != "" {
			b.WriteString(" /Alt " + pdfText(e.alt))
		}
		b.WriteString(" /K [")
		for _, p := range e.content {
			fmt.Fprintf(&b, "<</Type /MCR /Pg %d 0 R /MCID %d>> ", o.page(p.page), p.id)
		}
		for _, k := range e.kids {
			fmt.Fprintf(&b, "%d 0 R ", numbers[k])
			write(k)
		}
		b.WriteString("]>>\n")
		o.bodies[numbers[e]] = b.Bytes()
	}
	write(s.root)
	var parents bytes.Buffer
	for i, marked := range s.pages {
		if len(marked) == 0 {
			continue
		}
		o.insert(o.page(i), fmt.Sprintf("/StructParents %d", i))
		fmt.Fprintf(&parents, "%d [", i)
		for _, e := range marked {
			fmt.Fprintf(&parents, "%d 0 R ", numbers[e])
		}
		parents.WriteString("] ")
	}
	o.bodies[root] = fmt.Appendf(nil, "<</Type /StructTreeRoot /K [%d 0 R] /ParentTree <</Nums [%s]>> /ParentTreeNextKey %d>>\n",
		numbers[s.root], parents.Bytes(), len(s.pages))
	o.insert(o.catalog, fmt.Sprintf("/StructTreeRoot %d 0 R\n/MarkInfo <</Marked true>>", root))
}

// file writes the objects as a PDF file. Its identity is drawn from its own
// bytes: the same document has the same.
func (o *objects) file() []byte {
	size := 1024
	for _, b := range o.bodies {
		size += len(b) + 48
	}
	out := make([]byte, 0, size)
	out = append(out, "%PDF-1.7\n%\xE2\xE3\xCF\xD3\n"...)
	offsets := make([]int, len(o.bodies))
	for i := 1; i < len(o.bodies); i++ {
		offsets[i] = len(out)
		out = fmt.Appendf(out, "%d 0 obj\n", i)
		out = append(append(out, o.bodies[i]...), "endobj\n"...)
	}
	id := sha256.Sum256(out)
	table := len(out)
	out = fmt.Appendf(out, "xref\n0 %d\n0000000000 65535 f \n", len(o.bodies))
	for _, at := range offsets[1:] {
		out = fmt.Appendf(out, "%010d 00000 n \n", at)
	}
	return fmt.Appendf(out, "trailer\n<</Size %d /Root %d 0 R /Info %d 0 R /ID [<%X> <%X>]>>\nstartxref\n%d\n%%%%EOF\n",
		len(o.bodies), o.catalog, o.info, id[:16], id[:16], table)
}
