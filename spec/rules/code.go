package rules

import (
	"embed"
	"fmt"
	"path"
	"slices"
	"strings"
	"sync"

	"stepoff/spec/measure"
	"stepoff/spec/source"
)

// Code is a building code, or a standard used like one: the limits it sets.
// It is not to be changed.
type Code struct {
	Name    string // irc-2021, or a file's name
	Title   string
	Base    string // the code this one builds on; empty for none
	Limits  []Limit
	Sources []Source // where the values were found
}

// Source is where values of a code were found.
type Source struct{ Key, Text string }

// Limit returns the code's limit of that name. ok is false where the code sets
// none.
func (c *Code) Limit(key Key) (limit Limit, ok bool) {
	for _, l := range c.Limits {
		if l.Key == key {
			return l, true
		}
	}
	return Limit{}, false
}

// None is the code that sets no limits.
const None = "none"

// names is the order codes are listed in.
var names = []string{
	"irc-2018", "irc-2021", "irc-2024", "ibc-2021", "ibc-2021-dwelling", "nbc-2020", "uk-adk",
	"ncc-2022", "din-18065", "osha-1910", "dca-6", None,
}

// Names returns the codes that are built in, in the order they are listed in.
func Names() []string { return slices.Clone(names) }

//go:embed codes/*.yaml
var files embed.FS

var (
	loading sync.Mutex
	loaded  = map[string]*Code{}
)

// Lookup returns a code that is built in.
func Lookup(name string) (code *Code, ok bool) {
	loading.Lock()
	defer loading.Unlock()
	return lookup(name)
}

func lookup(name string) (*Code, bool) {
	if c := loaded[name]; c != nil {
		return c, true
	}
	if !slices.Contains(names, name) {
		return nil, false
	}
	text, err := files.ReadFile("codes/" + name + ".yaml")
	if err != nil {
		panic(err) // built in, or the build is broken
	}
	r := reader{file: &source.File{Name: name + ".yaml", Text: text}, builtIn: true, base: lookup}
	c, err := r.read()
	if err != nil {
		panic(err)
	}
	c.Name = name
	loaded[name] = c
	return c, true
}

// Read reads a user's own code file, which may start from a code that is built
// in. name is what the file is called in messages, and what the code is called.
// The error is a source.Mistakes with everything that is wrong in the file.
func Read(name string, text []byte) (*Code, error) {
	r := reader{file: &source.File{Name: name, Text: text}, base: Lookup}
	c, err := r.read()
	if err != nil {
		return nil, err
	}
	c.Name = name
	return c, nil
}

// IsFile tells whether a job's or an option's code is a file and not the name
// of a code that is built in.
func IsFile(code string) bool {
	if slices.Contains(names, code) {
		return false
	}
	ext := strings.ToLower(path.Ext(code))
	return ext == ".yaml" || ext == ".yml" || strings.ContainsAny(code, `/\`)
}

// Unknown says that no code has that name, which one was probably meant, and
// what there is.
func Unknown(name string) string {
	said := "no code is called " + measure.Quote(name)
	if meant := source.DidYouMean(name, names); meant != "" {
		return said + meant
	}
	return fmt.Sprintf("%s: the codes are %s, or a file such as ./county.yaml", said, strings.Join(names, ", "))
}
