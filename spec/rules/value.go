package rules

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"stepoff/spec/measure"
	"stepoff/spec/source"
)

var (
	angleForm    = regexp.MustCompile(`^([1-9][0-9]?(?:\.[0-9]{1,6})?) ?(?:degrees|deg|°)?$`)
	countForm    = regexp.MustCompile(`^[1-9][0-9]{0,2}$`)
	slopeForm    = regexp.MustCompile(`^([1-9][0-9]?)(?: ?: ?| in )([1-9][0-9]{0,3})$`)
	relativeForm = regexp.MustCompile(`^(stair width|unit run)(?:, (.+) at most)?$`)
)

// value reads the text of a limit's value. Which stairs it is for, its section
// and how it is measured stay as they were; a note on the former value goes.
func (r *reader) value(n *source.Node, info Info, text string, l *Limit) {
	*l = Limit{Key: l.Key, Text: text, When: l.When, Section: l.Section, Measured: l.Measured, Basis: l.Basis, Sources: l.Sources}
	r.own(l)
	var err error
	switch info.Kind {
	case Length:
		l.Length, l.Text, err = r.length(text, info.Key == WinderVariation) // winders may have to be the same
	case Relative:
		err = r.relative(text, l)
	case Angle:
		m := angleForm.FindStringSubmatch(text)
		if m == nil {
			err = unlike(text, "an angle", "42 degrees")
			break
		}
		l.Degrees, _ = strconv.ParseFloat(m[1], 64)
		l.Text = m[1] + " degrees"
		if l.Degrees >= 90 && info.Key != WinderSetAngleMax { // a set of winders turns a corner
			err = fmt.Errorf("%s is not less than 90 degrees, as this angle must be", measure.Quote(text))
		}
	case Count:
		if !countForm.MatchString(text) {
			err = unlike(text, "a number of them", "4")
			break
		}
		l.Count, _ = strconv.Atoi(text)
	case Slope:
		m := slopeForm.FindStringSubmatch(text)
		if m == nil {
			err = unlike(text, "a slope", "1:48")
			break
		}
		l.Slope.Rise, _ = strconv.Atoi(m[1])
		l.Slope.Run, _ = strconv.Atoi(m[2])
		l.Text = l.Slope.String()
	case Load:
		l.Pascals, err = measure.ParsePressure(text)
	case Force:
		l.Newtons, err = measure.ParseForce(text)
	case Word:
		l.Word = info.Words[r.oneOf(n, string(info.Key), info.Words)]
	}
	if err != nil {
		n.Mistake("%s: %s", info.Key, err)
	}
}

// length reads a length and how it is printed: as it is written, with the unit
// that a bare number has from the file's units.
func (r *reader) length(text string, mayBe0 bool) (measure.Length, string, error) {
	l, err := measure.Parse(text, r.units)
	switch {
	case err != nil:
		return 0, "", err
	case l < 0 || l == 0 && !mayBe0:
		return 0, "", fmt.Errorf("%s is not more than 0, as a limit must be; write none to set no limit", measure.Quote(text))
	}
	if measure.UnitsOf(text) == measure.Undeclared {
		if r.units == measure.Metric {
			return l, text + " mm", nil
		}
		return l, text + `"`, nil
	}
	return l, text, nil
}

func (r *reader) relative(text string, l *Limit) (err error) {
	m := relativeForm.FindStringSubmatch(text)
	if m == nil {
		if l.Length, l.Text, err = r.length(text, false); err != nil && !strings.ContainsAny(text, "0123456789") {
			err = unlike(text, "a limit here", `36", stair width, or stair width, 48" at most`)
		}
		return err
	}
	l.Of = map[string]Of{"stair width": StairWidth, "unit run": UnitRun}[m[1]]
	if m[2] != "" {
		l.Length, _, err = r.length(m[2], false)
	}
	return err
}

func unlike(text, what, right string) error {
	return fmt.Errorf("cannot read %s as %s; write it like %s", measure.Quote(text), what, right)
}
