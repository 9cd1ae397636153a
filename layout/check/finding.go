package check

import (
	"encoding/json"
	"errors"
	"io"
	"math"
	"strconv"

	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

// Finding is what one rule says of a stair.
type Finding struct {
	ID      string // of the rule
	Section string // where the rule stands
	Limit   *Quantity
	Actual  *Quantity
	Status  Status
	Text    string // what is found and, where it fails, what would put it right
	Basis   string // how the limit came to be known; empty where there is none

	key  rules.Key // the limit that was judged by
	lead string    // the text's beginning, where findings share one
}

// Status is what a finding amounts to.
type Status int

// In the order findings are printed: a limit of the code in force is broken;
// advice; something that is needed or was not measured; all is well.
const (
	Fail Status = iota
	Warn
	Info
	Pass
)

// Statuses are all of them, in the order findings are printed.
var Statuses = []Status{Fail, Warn, Info, Pass}

func (s Status) String() string { return [...]string{"fail", "warn", "info", "pass"}[s] }

// Of returns the findings of one status, in their order.
func Of(findings []Finding, status Status) []Finding {
	var some []Finding
	for _, f := range findings {
		if f.Status == status {
			some = append(some, f)
		}
	}
	return some
}

// Fails tells whether a limit of the code in force is broken.
func Fails(findings []Finding) bool { return len(Of(findings, Fail)) > 0 }

// Quantity is a figure in a finding.
type Quantity struct {
	Value float64
	Unit  Unit
}

// Unit is what a Quantity is in.
type Unit int

// Millimetres, degrees, square millimetres, a number of things, kilopascals,
// and a slope as rise over run.
const (
	MM Unit = iota
	Degrees
	MM2
	Number
	KPa
	Ratio
)

// suffix ends the names of JSON keys.
func (u Unit) suffix() string {
	return [...]string{"_mm", "_deg", "_mm2", "", "_kpa", "_ratio"}[u]
}

func mm(v float64) *Quantity { return &Quantity{v, MM} }

func length(l measure.Length) *Quantity { return mm(l.MM()) }

func count(n int) *Quantity { return &Quantity{float64(n), Number} }

func degrees(v float64) *Quantity { return &Quantity{v, Degrees} }

// MarshalJSON writes the finding with limit_mm and actual_mm where they are
// lengths; other figures have other endings.
func (f Finding) MarshalJSON() ([]byte, error) {
	var b []byte
	var failed error
	key := func(name string, value []byte, err error) {
		b = append(b, ',')
		b = strconv.AppendQuote(b, name)
		b = append(b, ':')
		b = append(b, value...)
		failed = errors.Join(failed, err)
	}
	text := func(name, value string) {
		quoted, err := json.Marshal(value)
		key(name, quoted, err)
	}
	number := func(name string, q *Quantity) {
		if q != nil {
			value, err := q.figure()
			key(name+q.Unit.suffix(), value, err)
		}
	}
	text("id", f.ID)
	text("section", f.Section)
	number("limit", f.Limit)
	number("actual", f.Actual)
	text("status", f.Status.String())
	text("text", f.Text)
	if f.Basis != "" {
		text("basis", f.Basis)
	}
	b[0] = '{'
	return append(b, '}'), failed
}

var errNotANumber = errors.New("a figure of this stair is not a number")

// figure prints the value: six decimals at the most, nine of a degree, never an
// exponent, never -0.
func (q Quantity) figure() ([]byte, error) {
	if math.IsNaN(q.Value) || math.IsInf(q.Value, 0) {
		return nil, errNotANumber
	}
	v := measure.SnapMM(q.Value)
	if q.Unit == Degrees || q.Unit == Ratio {
		v = measure.SnapDegrees(q.Value)
	}
	return strconv.AppendFloat(nil, v, 'f', -1, 64), nil
}

// Change is one change to a stair whose strength does not hold: what it is, and
// whether the stair holds with it and nothing else changed.
type Change struct {
	Kind  string `json:"kind"` // grade, stringers, strongback, props, landing, treads
	Holds bool   `json:"holds"`
	Text  string `json:"text"`
}

// JSON writes the findings as stepoff-check/1, with the changes that were asked
// for; nil: none were.
func JSON(w io.Writer, findings []Finding, changes []Change) error {
	if findings == nil {
		findings = []Finding{}
	}
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	return e.Encode(struct {
		Format   string    `json:"format"`
		Findings []Finding `json:"findings"`
		Changes  []Change  `json:"changes,omitempty"`
	}{"stepoff-check/1", findings, changes})
}
