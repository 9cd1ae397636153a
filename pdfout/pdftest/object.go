package pdftest

import (
	"bytes"
	"compress/zlib"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"strconv"
	"unicode/utf16"
)

// The kinds of PDF objects. Numbers are float64, booleans bool, null nil.
type (
	pdfName   string
	pdfString string // undecoded
	ref       int    // to object n, generation 0
	array     []any
	dict      map[pdfName]any
	stream    struct {
		dict dict
		Data []byte // unpacked
	}
	keyword string // an operator, obj, endobj...
)

var errSyntax = errors.New("not the PDF syntax this program writes")

// scanner cuts PDF syntax into objects.
type scanner struct {
	b []byte
	i int
}

func (s *scanner) blanks() {
	for s.i < len(s.b) {
		switch c := s.b[s.i]; {
		case c == '%':
			for s.i < len(s.b) && s.b[s.i] != '\n' && s.b[s.i] != '\r' {
				s.i++
			}
		case c == ' ' || c == '\n' || c == '\r' || c == '\t' || c == 0 || c == '\f':
			s.i++
		default:
			return
		}
	}
}

// next reads the next object; a keyword where it is none. io.EOF at the end.
func (s *scanner) next() (any, error) {
	s.blanks()
	if s.i >= len(s.b) {
		return nil, io.EOF
	}
	switch c := s.b[s.i]; {
	case c == '/':
		s.i++
		return pdfName(s.word()), nil
	case c == '(':
		return s.text()
	case bytes.HasPrefix(s.b[s.i:], []byte("<<")):
		s.i += 2
		return s.dict()
	case c == '<':
		return s.hex()
	case c == '[':
		s.i++
		var a array
		for {
			v, err := s.next()
			if err != nil {
				return nil, err
			}
			if v == keyword("]") {
				return resolveRefs(a), nil
			}
			a = append(a, v)
		}
	case c == ']':
		s.i++
		return keyword("]"), nil
	case bytes.HasPrefix(s.b[s.i:], []byte(">>")):
		s.i += 2
		return keyword(">>"), nil
	}
	w := s.word()
	if w == "" {
		return nil, fmt.Errorf("%w: %q", errSyntax, s.b[s.i])
	}
	switch w {
	case "true", "false":
		return w == "true", nil
	case "null":
		return nil, nil
	}
	if v, err := strconv.ParseFloat(w, 64); err == nil && (w[0] < 'A' || w[0] > 'z') {
		return v, nil
	}
	return keyword(w), nil
}

func (s *scanner) word() string {
	from := s.i
	for s.i < len(s.b) && !bytes.ContainsRune([]byte(" \n\r\t\x00\f()<>[]{}/%"), rune(s.b[s.i])) {
		s.i++
	}
	return string(s.b[from:s.i])
}

// resolveRefs turns "n 0 R" into references.
func resolveRefs(a []any) array {
	var out array
	for _, v := range a {
		if n := len(out); v == keyword("R") && n >= 2 {
			if num, ok := out[n-2].(float64); ok {
				out = append(out[:n-2], ref(num))
				continue
			}
		}
		out = append(out, v)
	}
	return out
}

func (s *scanner) dict() (any, error) {
	var flat []any
	for {
		v, err := s.next()
		if err != nil {
			return nil, err
		}
		if v == keyword(">>") {
			break
		}
		flat = append(flat, v)
	}
	flat = resolveRefs(flat)
	if len(flat)%2 != 0 {
		return nil, errSyntax
	}
	d := dict{}
	for i := 0; i < len(flat); i += 2 {
		key, ok := flat[i].(pdfName)
		if !ok {
			return nil, errSyntax
		}
		if _, twice := d[key]; twice {
			return nil, fmt.Errorf("the key %s stands twice in a dictionary", key)
		}
		d[key] = flat[i+1]
	}
	return d, nil
}

func (s *scanner) text() (any, error) {
	var out []byte
	depth := 0
	for ; s.i < len(s.b); s.i++ {
		c := s.b[s.i]
		switch c {
		case '(':
			if depth++; depth == 1 {
				continue
			}
		case ')':
			if depth--; depth == 0 {
				s.i++
				return pdfString(out), nil
			}
		case '\\':
			s.i++
			if s.i >= len(s.b) {
				return nil, errSyntax
			}
			switch c = s.b[s.i]; c {
			case '0', '1', '2', '3':
				octal, err := strconv.ParseUint(string(s.b[s.i:min(s.i+3, len(s.b))]), 8, 8)
				if err != nil {
					return nil, errSyntax
				}
				c = byte(octal)
				s.i += 2
			case 'n':
				c = '\n'
			case 'r':
				c = '\r'
			case '(', ')', '\\':
			default:
				return nil, errSyntax
			}
		}
		out = append(out, c)
	}
	return nil, errSyntax
}

func (s *scanner) hex() (any, error) {
	end := bytes.IndexByte(s.b[s.i:], '>')
	if end < 0 {
		return nil, errSyntax
	}
	out, err := hex.DecodeString(string(s.b[s.i+1 : s.i+end]))
	s.i += end + 1
	return pdfString(out), err
}

// String is the text decoded: UTF-16 with its mark, else as it is.
func (t pdfString) String() string {
	if len(t) < 2 || t[:2] != "\xFE\xFF" {
		return string(t)
	}
	return decode16(string(t[2:]))
}

func decode16(s string) string {
	var u []uint16
	for i := 0; i+1 < len(s); i += 2 {
		u = append(u, uint16(s[i])<<8|uint16(s[i+1]))
	}
	return string(utf16.Decode(u))
}

// objects reads all objects of a file through its table.
func objects(b []byte) (map[int]any, dict, error) {
	at := bytes.LastIndex(b, []byte("startxref"))
	if at < 0 {
		return nil, nil, errSyntax
	}
	s := &scanner{b: b, i: at + len("startxref")}
	start, err := s.next()
	table, ok := start.(float64)
	if err != nil || !ok || int(table) >= len(b) {
		return nil, nil, errSyntax
	}
	s.i = int(table)
	var head [3]any
	for i := range head {
		if head[i], err = s.next(); err != nil {
			return nil, nil, err
		}
	}
	count, ok := head[2].(float64)
	if head[0] != keyword("xref") || head[1] != 0.0 || !ok {
		return nil, nil, errSyntax
	}
	objs := map[int]any{}
	for n := range int(count) {
		var entry [3]any
		for i := range entry {
			if entry[i], err = s.next(); err != nil {
				return nil, nil, err
			}
		}
		if entry[2] != keyword("n") {
			continue
		}
		if objs[n], err = object(b, int(entry[0].(float64)), n); err != nil {
			return nil, nil, fmt.Errorf("object %d: %w", n, err)
		}
	}
	if v, _ := s.next(); v != keyword("trailer") {
		return nil, nil, errSyntax
	}
	v, err := s.next()
	trailer, ok := v.(dict)
	if err != nil || !ok {
		return nil, nil, errSyntax
	}
	return objs, trailer, nil
}

// object reads object n at an offset.
func object(b []byte, at, n int) (any, error) {
	s := &scanner{b: b, i: at}
	for _, want := range [...]any{float64(n), 0.0, keyword("obj")} {
		if v, err := s.next(); err != nil || v != want {
			return nil, errSyntax
		}
	}
	v, err := s.next()
	if err != nil {
		return nil, err
	}
	d, isDict := v.(dict)
	if k, err := s.next(); err != nil {
		return nil, err
	} else if k == keyword("endobj") {
		return v, nil
	} else if k != keyword("stream") || !isDict {
		return nil, errSyntax
	}
	if s.i < len(b) && b[s.i] == '\r' {
		s.i++
	}
	s.i++
	length, ok := d["Length"].(float64)
	if !ok || s.i+int(length) > len(b) {
		return nil, errSyntax
	}
	data := b[s.i : s.i+int(length)]
	s.i += int(length)
	if k, _ := s.next(); k != keyword("endstream") {
		return nil, errSyntax
	}
	if d["Filter"] == pdfName("FlateDecode") {
		z, err := zlib.NewReader(bytes.NewReader(data))
		if err != nil {
			return nil, err
		}
		if data, err = io.ReadAll(z); err != nil {
			return nil, err
		}
	}
	return stream{d, data}, nil
}
