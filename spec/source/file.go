package source

import (
	"bytes"
	"fmt"
	"unicode"
	"unicode/utf8"
)

// File is a text with a name.
type File struct {
	Name string // as the user gave it
	Text []byte
}

// MaxSize bounds a file that is read: 256 KiB. A job has about 60 lines, 3 KiB;
// what is a hundred times that is another file, given by accident.
const MaxSize = 256 << 10

// Pos is a place in a file. Both count from 1; a column counts characters.
// The zero Pos is no place.
type Pos struct {
	Line, Column int
}

func (p Pos) String() string { return fmt.Sprintf("%d:%d", p.Line, p.Column) }

// before tells whether p comes first in reading order.
func (p Pos) before(q Pos) bool {
	return p.Line < q.Line || p.Line == q.Line && p.Column < q.Column
}

// byteOrderMark opens the files of some editors. It has no column.
var byteOrderMark = []byte("\ufeff")

// Pos returns the place of a byte of the text.
func (f *File) Pos(offset int) Pos {
	text := bytes.TrimPrefix(f.Text[:offset], byteOrderMark)
	at := Pos{Line: 1, Column: 1}
	for {
		line, rest, broken := cutLine(text)
		if !broken {
			at.Column = 1 + utf8.RuneCount(line)
			return at
		}
		at.Line++
		text = rest
	}
}

// line returns a line of the text without its end; empty past the end.
func (f *File) line(number int) string {
	text := bytes.TrimPrefix(f.Text, byteOrderMark)
	for {
		line, rest, broken := cutLine(text)
		if number == 1 {
			return string(line)
		}
		if !broken {
			return ""
		}
		number--
		text = rest
	}
}

// cutLine splits off the first line. A line ends as YAML says: LF, CR LF or CR.
func cutLine(text []byte) (line, rest []byte, broken bool) {
	i := bytes.IndexAny(text, "\r\n")
	if i < 0 {
		return text, nil, false
	}
	end := i + 1
	if text[i] == '\r' && end < len(text) && text[end] == '\n' {
		end++
	}
	return text[:i], text[end:], true
}

// Readable tells whether the text is what can be read and printed: UTF-8, not
// too long, no control characters. What is not is added to the mistakes.
func (f *File) Readable(m *Mistakes) bool { return f.readable(m, MaxSize) }

func (f *File) readable(m *Mistakes, most int) bool {
	if len(f.Text) > most {
		m.Add(f, Pos{1, 1}, "the file has %d bytes; up to %d are read", len(f.Text), most)
		return false
	}
	readable := true
	for i := 0; i < len(f.Text); {
		r, size := utf8.DecodeRune(f.Text[i:])
		switch {
		case r == utf8.RuneError && size == 1:
			m.Add(f, f.Pos(i), "this is not UTF-8 text; save the file as UTF-8")
			return false // what follows would be noise
		case Unprintable(r) && r != '\t' && r != '\n' && r != '\r':
			m.Add(f, f.Pos(i), "there is a control character here (U+%04X); take it out", r)
			readable = false
			if len(*m) >= maxShown {
				return false
			}
		}
		i += size
	}
	return readable
}

// Unprintable tells whether a character has no place in a line of text: control
// characters and the separators of lines and paragraphs.
func Unprintable(r rune) bool {
	return unicode.IsControl(r) || r == '\u2028' || r == '\u2029'
}
