package source

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"unicode/utf8"

	"go.yaml.in/yaml/v4"

	"stepoff/spec/measure"
)

// MaxTableSize bounds a table that is read: 8 MiB, a hundred thousand lines and
// more.
const MaxTableSize = 8 << 20

// Row is one line of a table: its cells by the names of their columns. An empty
// cell is left out.
type Row struct {
	At    Pos
	Cells map[string]*Node
}

// CSV reads the text as a table: a first line with the names of the columns, in
// any order, and a row a line below it. Values stand between commas, or
// semicolons or tabs where the first line has those; one that holds the separator
// stands in double quotes, and a double quote in it is written twice. An inch
// mark needs no quotes around its value.
//
// Columns are those known, under their names or with spaces for _, capitals or
// not; those that are needed must be there. A row with a mistake of its own is
// left out; the others come back all the same.
func (f *File) CSV(m *Mistakes, known, needed []string) []Row {
	if !f.readable(m, MaxTableSize) {
		return nil
	}
	text := bytes.TrimPrefix(f.Text, byteOrderMark)
	t := &table{file: f, mistakes: m, text: text}
	r := csv.NewReader(bytes.NewReader(text))
	r.Comma, r.FieldsPerRecord, r.LazyQuotes = separator(text), -1, true
	var columns []string // empty: a column that is not known
	var rows []Row
	for {
		cells, err := r.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			t.unreadable(err)
			return rows
		}
		at := make([]Pos, len(cells))
		for i := range cells {
			line, column := r.FieldPos(i)
			at[i] = t.pos(line, column)
		}
		if columns == nil {
			if columns = t.columns(cells, at, known, needed); columns == nil {
				return nil
			}
			continue
		}
		if row, ok := t.row(cells, at, columns); ok && len(row.Cells) > 0 {
			rows = append(rows, row)
		}
	}
	if columns == nil {
		m.Add(f, Pos{1, 1}, "the file is empty; its first line names the columns: %s", strings.Join(known, ","))
	}
	return rows
}

// table is a text while it is read as one.
type table struct {
	file     *File
	mistakes *Mistakes
	text     []byte
	line     int // the line at which rest begins, 0: not begun
	rest     []byte
}

// separator is what parts the columns: whichever of the usual ones stands most
// often in the first line.
func separator(text []byte) rune {
	first, _, _ := cutLine(text)
	best := ','
	for _, r := range ";\t" {
		if bytes.Count(first, []byte(string(r))) > bytes.Count(first, []byte(string(best))) {
			best = r
		}
	}
	return best
}

// pos turns a line and a column in bytes into a place. Lines only grow.
func (t *table) pos(line, column int) Pos {
	if t.line == 0 {
		t.line, t.rest = 1, t.text
	}
	for t.line < line {
		i := bytes.IndexByte(t.rest, '\n')
		if i < 0 {
			break
		}
		t.line, t.rest = t.line+1, t.rest[i+1:]
	}
	return Pos{line, 1 + utf8.RuneCount(t.rest[:min(column-1, len(t.rest))])}
}

// unreadable adds what the reader of the text says is wrong with it.
func (t *table) unreadable(err error) {
	at := Pos{1, 1}
	if e := (*csv.ParseError)(nil); errors.As(err, &e) {
		at = Pos{max(1, e.Line), max(1, e.Column)}
	}
	t.mistakes.Add(t.file, at, "this line cannot be read as a row of a table")
}

// columns reads the first line; nil when a column that is needed is not there.
func (t *table) columns(cells []string, at []Pos, known, needed []string) []string {
	before := len(*t.mistakes)
	columns := make([]string, len(cells))
	for i, cell := range cells {
		name := strings.ReplaceAll(strings.ToLower(strings.TrimSpace(cell)), " ", "_")
		switch {
		case name == "":
		case !slices.Contains(known, name):
			t.mistakes.Add(t.file, at[i], "there is no column %s%s", measure.Quote(cell), orList(DidYouMean(name, known), known))
		case slices.Contains(columns, name):
			t.mistakes.Add(t.file, at[i], "the column %s stands twice", name)
		default:
			columns[i] = name
		}
	}
	for _, name := range needed {
		if !slices.Contains(columns, name) {
			t.mistakes.Add(t.file, Pos{1, 1}, "the column %s is missing; the first line names the columns: %s", name, strings.Join(known, ","))
		}
	}
	if len(*t.mistakes) > before {
		return nil
	}
	return columns
}

func orList(meant string, known []string) string {
	if meant == "" {
		return fmt.Sprintf("; the columns are %s", list(known))
	}
	return meant
}

// row reads one line below the first.
func (t *table) row(cells []string, at []Pos, columns []string) (Row, bool) {
	row := Row{At: at[0], Cells: map[string]*Node{}}
	before := len(*t.mistakes)
	for i, cell := range cells {
		cell = strings.TrimSpace(cell)
		switch {
		case strings.IndexFunc(cell, Unprintable) >= 0:
			t.mistakes.Add(t.file, at[i], "a cell is one line of text; is a quote before this never closed?")
		case cell == "":
		case i >= len(columns) || columns[i] == "":
			t.mistakes.Add(t.file, at[i], "%s stands in no column; the first line names %s", measure.Quote(cell), list(slices.DeleteFunc(slices.Clone(columns), func(c string) bool { return c == "" })))
		default:
			d := &document{file: t.file, mistakes: t.mistakes, reported: map[*yaml.Node]bool{}}
			row.Cells[columns[i]] = &Node{d, &yaml.Node{Kind: yaml.ScalarNode, Tag: "!!str", Value: cell}, at[i]}
		}
	}
	return row, len(*t.mistakes) == before
}

// For returns the value with its mistakes going to another list: whoever reads it
// later says there what is wrong with it.
func (n *Node) For(m *Mistakes) *Node {
	d := *n.in
	d.mistakes = m
	d.reported = map[*yaml.Node]bool{}
	return &Node{&d, n.yaml, n.at}
}

// File is the file the value stands in.
func (n *Node) File() *File { return n.in.file }
