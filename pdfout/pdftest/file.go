package pdftest

import (
	"errors"
	"fmt"
	"strings"
	"testing"
)

// File is a PDF file taken apart.
type File struct {
	Version     string // 1.7
	Pages       []Page
	Info        map[string]string // Title, Producer, CreationDate...
	ID          string
	Preferences map[string]string // of the viewer: PrintScaling None...
	Lang        string
	Bookmarks   []Bookmark
	Attachments []Attachment
	Marked      bool  // says that it is tagged
	Tags        []Tag // in reading order, the Document first
}

// Bookmark leads to a page, from 1. Whole: it shows the page whole.
type Bookmark struct {
	Title string
	Page  int
	Whole bool
}

// Attachment is a file carried in the document.
type Attachment struct {
	Name  string
	Bytes []byte
}

// Tag is an element of the tree of tags.
type Tag struct {
	Name  string // H1, P, Table...
	Depth int
	Alt   string
	Text  string // what is marked with it
}

// MustRead is Read for a test, which fails when the file cannot be read.
func MustRead(t testing.TB, b []byte) *File {
	t.Helper()
	f, err := Read(b)
	if err != nil {
		t.Fatalf("reading the PDF back: %v", err)
	}
	return f
}

// Read takes apart a file written by this program. Anything it does not know
// is an error: what a test cannot see it must not pass over.
func Read(b []byte) (*File, error) {
	r := &reader{pageOf: map[ref]int{}}
	var err error
	var trailer dict
	if r.objs, trailer, err = objects(b); err != nil {
		return nil, err
	}
	f := &File{Version: strings.TrimPrefix(strings.SplitN(string(b[:min(20, len(b))]), "\n", 2)[0], "%PDF-"), Info: map[string]string{}, Preferences: map[string]string{}}
	for k, v := range r.dict(trailer["Info"]) {
		t, _ := v.(pdfString)
		f.Info[string(k)] = t.String()
	}
	if id, ok := trailer["ID"].(array); ok && len(id) == 2 {
		t, _ := id[0].(pdfString)
		f.ID = fmt.Sprintf("%X", string(t))
	}
	catalog := r.dict(trailer["Root"])
	for k, v := range r.dict(catalog["ViewerPreferences"]) {
		f.Preferences[string(k)] = fmt.Sprint(v)
	}
	if lang, ok := catalog["Lang"].(pdfString); ok {
		f.Lang = lang.String()
	}
	f.Marked = r.dict(catalog["MarkInfo"])["Marked"] == true
	if err := r.pages(f, catalog); err != nil {
		return nil, err
	}
	if err := r.bookmarks(f, catalog); err != nil {
		return nil, err
	}
	if err := r.attachments(f, catalog); err != nil {
		return nil, err
	}
	if root := r.dict(catalog["StructTreeRoot"]); root != nil {
		if err := r.tags(f, root["K"], 0); err != nil {
			return nil, err
		}
	}
	return f, nil
}

// reader looks objects up.
type reader struct {
	objs   map[int]any
	pageOf map[ref]int // page number, from 0
	marked []map[int]string
}

func (r *reader) get(v any) any {
	if n, ok := v.(ref); ok {
		return r.objs[int(n)]
	}
	return v
}

func (r *reader) dict(v any) dict {
	d, _ := r.get(v).(dict)
	return d
}

func (r *reader) pages(f *File, catalog dict) error {
	root := r.dict(catalog["Pages"])
	kids, ok := root["Kids"].(array)
	if !ok || root["Count"] != float64(len(kids)) {
		return errors.New("the list of pages is not right")
	}
	for i, kid := range kids {
		at, ok := kid.(ref)
		page := r.dict(kid)
		if !ok || page["Type"] != pdfName("Page") {
			return fmt.Errorf("page %d is no page", i+1)
		}
		r.pageOf[at] = i
		p, err := r.page(page)
		if err != nil {
			return fmt.Errorf("page %d: %w", i+1, err)
		}
		p.Number = i + 1
		f.Pages = append(f.Pages, p)
		r.marked = append(r.marked, p.marked)
	}
	return nil
}

func (r *reader) bookmarks(f *File, catalog dict) error {
	root := r.dict(catalog["Outlines"])
	if root == nil {
		return nil
	}
	for next := root["First"]; next != nil; {
		item := r.dict(next)
		title, _ := item["Title"].(pdfString)
		dest, ok := item["Dest"].(array)
		if !ok || len(dest) < 2 {
			return fmt.Errorf("the bookmark %q leads nowhere", title.String())
		}
		at, _ := dest[0].(ref)
		page, ok := r.pageOf[at]
		if !ok {
			return fmt.Errorf("the bookmark %q leads to no page", title.String())
		}
		f.Bookmarks = append(f.Bookmarks, Bookmark{title.String(), page + 1, dest[1] == pdfName("Fit")})
		next = item["Next"]
	}
	return nil
}

func (r *reader) attachments(f *File, catalog dict) error {
	names, _ := r.dict(r.dict(catalog["Names"])["EmbeddedFiles"])["Names"].(array)
	for i := 1; i < len(names); i += 2 {
		spec := r.dict(names[i])
		name, _ := spec["UF"].(pdfString)
		data, ok := r.get(r.dict(spec["EF"])["F"]).(stream)
		if !ok {
			return fmt.Errorf("the attachment %q has no contents", name.String())
		}
		f.Attachments = append(f.Attachments, Attachment{name.String(), data.Data})
	}
	return nil
}

// tags walks the tree of tags.
func (r *reader) tags(f *File, v any, depth int) error {
	kids, ok := v.(array)
	if !ok {
		return errors.New("the tree of tags is not right")
	}
	for _, kid := range kids {
		at, ok := kid.(ref)
		if !ok {
			continue // marked content, gathered below
		}
		e := r.dict(at)
		name, _ := e["S"].(pdfName)
		alt, _ := e["Alt"].(pdfString)
		tag := Tag{Name: string(name), Depth: depth, Alt: alt.String()}
		inner, _ := e["K"].(array)
		for _, m := range inner {
			mark, ok := m.(dict)
			if !ok {
				continue
			}
			pg, _ := mark["Pg"].(ref)
			id, _ := mark["MCID"].(float64)
			page, ok := r.pageOf[pg]
			if !ok {
				return fmt.Errorf("a %s is tied to no page", name)
			}
			text, ok := r.marked[page][int(id)]
			if !ok {
				return fmt.Errorf("a %s is tied to a piece of page %d that is not there", name, page+1)
			}
			tag.Text += text
		}
		f.Tags = append(f.Tags, tag)
		if err := r.tags(f, e["K"], depth+1); err != nil {
			return err
		}
	}
	return nil
}
