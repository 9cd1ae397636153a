package rules

import (
	_ "embed"
	"fmt"
	"regexp"
	"strconv"
	"sync"

	"stepoff/spec/measure"
	"stepoff/spec/source"
)

// The ids of the rules of thumb.
const (
	TwoRisePlusRun = "comfort-two-rise-plus-run"
	RisePlusRun    = "comfort-rise-plus-run"
	RiseTimesRun   = "comfort-rise-times-run"
	RunLessRise    = "comfort-run-less-rise"
)

// Comfort is one rule of thumb as one source gives it. The sources disagree:
// each is told by itself, as advice.
type Comfort struct {
	Rule        string  // id
	Formula     string  // 2R+T
	Text        string  // as published: 25", 17" to 19", 75 sq in
	Least, Most float64 // mm; of a product mm2
	Source      string
	Basis       Basis
	Note        string
}

// formulas are what the rules of thumb work out from a rise R and a run T.
var formulas = map[string]struct {
	sign string
	of   func(rise, run float64) float64
}{
	TwoRisePlusRun: {"2R+T", func(r, t float64) float64 { return 2*r + t }},
	RisePlusRun:    {"R+T", func(r, t float64) float64 { return r + t }},
	RiseTimesRun:   {"RxT", func(r, t float64) float64 { return r * t }},
	RunLessRise:    {"T-R", func(r, t float64) float64 { return t - r }},
}

// Figure works the formula out, from and to mm (a product: mm2).
func (c Comfort) Figure(rise, run float64) float64 { return formulas[c.Rule].of(rise, run) }

// Area tells whether the formula gives an area.
func (c Comfort) Area() bool { return c.Rule == RiseTimesRun }

//go:embed comfort.yaml
var comfortFile []byte

// ComfortRules returns the rules of thumb.
var ComfortRules = sync.OnceValue(func() []Comfort {
	rows, err := readComfort(&source.File{Name: "comfort.yaml", Text: comfortFile})
	if err != nil {
		panic(err) // built in, or the build is broken
	}
	return rows
})

var comfortKeys = []string{"rule", "value", "within", "least", "most", "source", "basis", "note"}

func readComfort(f *source.File) ([]Comfort, error) {
	var mistakes source.Mistakes
	root := f.YAML(&mistakes)
	if root == nil {
		return nil, mistakes.Err()
	}
	items, _ := root.List()
	var rows []Comfort
	for _, item := range items {
		if m, ok := item.Mapping(comfortKeys, nil); ok {
			rows = append(rows, comfortRow(item, m))
		}
	}
	return rows, mistakes.Err()
}

func comfortRow(n *source.Node, m *source.Mapping) Comfort {
	text := func(key string) string {
		if v := m.Get(key); v != nil {
			t, _ := v.Text()
			return t
		}
		return ""
	}
	number := func(key string) float64 {
		v, err := comfortValue(text(key))
		if err != nil && text(key) != "" {
			n.Mistake("%s: %s", key, err)
		}
		return v
	}
	c := Comfort{Rule: text("rule"), Text: text("value"), Source: text("source"), Note: text("note")}
	c.Formula = formulas[c.Rule].sign
	if c.Text != "" {
		value, within := number("value"), number("within")
		c.Least, c.Most = value-within, value+within
	} else {
		c.Text = text("least") + " to " + text("most")
		c.Least, c.Most = number("least"), number("most")
	}
	for b, word := range basisWords {
		if word == text("basis") {
			c.Basis = Basis(b)
		}
	}
	if c.Formula == "" || c.Source == "" || c.Basis == OwnFile || c.Least <= 0 || c.Most < c.Least {
		n.Mistake("a rule of thumb needs a rule, a value (or least and most), a source and a basis")
	}
	return c
}

var areaForm = regexp.MustCompile(`^([0-9]+(?:\.[0-9]+)?) sq in$`)

// comfortValue reads a length in mm, or square inches in mm2.
func comfortValue(text string) (float64, error) {
	if m := areaForm.FindStringSubmatch(text); m != nil {
		v, err := strconv.ParseFloat(m[1], 64)
		return v * measure.Inch.MM() * measure.Inch.MM(), err
	}
	l, err := measure.Parse(text, measure.Undeclared)
	if err != nil {
		return 0, fmt.Errorf("%w, or 75 sq in", err)
	}
	return l.MM(), nil
}
