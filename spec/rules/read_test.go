package rules

import (
	"errors"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"stepoff/spec/measure"
	"stepoff/spec/source"
)

// A county's own file starts from a code and changes values: bare, with their
// own section, or taken away. What it says is its own; the rest stays.
func TestReadOwnFile(t *testing.T) {
	c, err := Read("county.yaml", []byte(`
title: Some county
base: irc-2021
units: imperial
sources:
  BY: by-law 12
limits:
  riser-max: 8 1/4
  run-min: {value: 9", section: By-law 12, basis: text read, source: BY}
  riser-min: {value: 100mm, section: By-law 13}
  nosing-min: none
  pitch-max: 41.5
  landing-length-min: stair width, 48" at most
`))
	if err != nil {
		t.Fatal(err)
	}
	get := func(k Key) Limit {
		l, ok := c.Limit(k)
		if !ok {
			t.Fatalf("there is no %s", k)
		}
		return l
	}
	for _, w := range []struct {
		key           Key
		text, section string
		length        measure.Length
		basis         Basis
	}{
		{RiserMax, `8 1/4"`, "R311.7.5.1", 8*measure.Inch + measure.Inch/4, OwnFile}, // that section is what is amended
		{RunMin, `9"`, "By-law 12", 9 * measure.Inch, TextRead},
		{RiserMin, "100mm", "By-law 13", 100 * measure.Millimetre, OwnFile},
		{PitchMax, "41.5 degrees", "county.yaml", 0, OwnFile},
		{LandingLengthMin, `stair width, 48" at most`, "R311.7.6", 48 * measure.Inch, OwnFile},
		{HeadroomMin, `80"`, "R311.7.2", 80 * measure.Inch, TextRead},
	} {
		l := get(w.key)
		if l.Text != w.text || l.Section != w.section || l.Length != w.length || l.Basis != w.basis {
			t.Errorf("%s is %s, section %s, %v, %s; want %v", w.key, l.Text, l.Section, l.Length, l.Basis, w)
		}
	}
	if get(PitchMax).Degrees != 41.5 || get(LandingLengthMin).Of != StairWidth {
		t.Error("the pitch or what the landing is compared with was lost")
	}
	if _, ok := c.Limit(NosingMin); ok {
		t.Error("none did not take the nosing's least away")
	}
	if irc := code(t, "irc-2021"); len(irc.Limits) != len(c.Limits)+1-2 {
		t.Errorf("irc-2021 has %d limits, the county %d: one gone and two new", len(irc.Limits), len(c.Limits))
	}
	if c.Name != "county.yaml" || c.Title != "Some county" || c.Base != "irc-2021" {
		t.Errorf("name %q, title %q, base %q", c.Name, c.Title, c.Base)
	}
}

// Everything wrong in one go, each with its place and what would be right.
func TestReadMistakes(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"a key that is none", "base: irc-2021\nlimit: {}\n", `county.yaml:2:1: unknown key "limit"; did you mean limits?
limit: {}
^`},
		{"a base that is none", "base: irc-2012\n", `county.yaml:1:7: base: no code is called "irc-2012"; did you mean irc-2018?
base: irc-2012
      ^`},
		{"several", `base: irc-2021
limits:
  riser_max: 8"
  wobble: 1"
  run-min: {value: 9", bais: secondary}
  pitch-max: steep
  headroom-min: -80"
  handrail-risers: 3.5
  pad-slope-max: level
  walkline-from: clear widht
  live-load-min: 40
  width-min: 36
`, `county.yaml:3:3: unknown key "riser_max"; did you mean riser-max?
  riser_max: 8"
  ^
county.yaml:4:3: unknown key "wobble"; ` + "`stepoff codes irc-2021`" + ` shows what limits are called
  wobble: 1"
  ^
county.yaml:5:24: unknown key "bais"; did you mean basis?
  run-min: {value: 9", bais: secondary}
                       ^
county.yaml:6:14: pitch-max: cannot read "steep" as an angle; write it like 42 degrees
  pitch-max: steep
             ^
county.yaml:7:17: headroom-min: ` + "`-80\"`" + ` is not more than 0, as a limit must be; write none to set no limit
  headroom-min: -80"
                ^
county.yaml:8:20: handrail-risers: cannot read "3.5" as a number of them; write it like 4
  handrail-risers: 3.5
                   ^
county.yaml:9:18: pad-slope-max: cannot read "level" as a slope; write it like 1:48
  pad-slope-max: level
                 ^
county.yaml:10:18: walkline-from: "clear widht" is not one of clear width, inside handrail, each side, middle; did you mean clear width?
  walkline-from: clear widht
                 ^
county.yaml:11:18: live-load-min: cannot read "40" as a load; write it like 40 psf or 1.9 kPa
  live-load-min: 40
                 ^
county.yaml:12:14: width-min: "36" has no unit: write 36" or 36mm, or declare units: imperial or metric
  width-min: 36
             ^`},
		{"a least above its most", "base: irc-2021\nlimits:\n  riser-min: 8\"\n", `county.yaml:3:14: riser-min: 8" is more than riser-max, which is 7 3/4"
  riser-min: 8"
             ^`},
		{"a limit without a value", "limits:\n  run-max: {section: 5}\n  run-min:\n", `county.yaml:2:12: run-max: a value is missing
  run-max: {section: 5}
           ^
county.yaml:3:3: run-min: a value is missing; write none to set no limit
  run-min:
  ^`},
		{"a source that is not told", "limits:\n  run-max: {value: 9\", source: X}\n", `county.yaml:2:32: source: "X" does not stand under sources
  run-max: {value: 9", source: X}
                               ^`},
		{"nothing", "", "county.yaml:1:1: the file is empty"},
	} {
		_, err := Read("county.yaml", []byte(c.text))
		var placed source.Mistakes
		if !errors.As(err, &placed) {
			t.Errorf("%s: got %v", c.name, err)
			continue
		}
		if diff := cmp.Diff(c.want, err.Error()); diff != "" {
			t.Errorf("%s: want -, got +:\n%s", c.name, diff)
		}
	}
}

// A code file that is built in says more than a user's own has to.
func TestBuiltInIsStrict(t *testing.T) {
	r := reader{file: &source.File{Name: "x.yaml", Text: []byte("title: x\nlimits:\n  run-min: {value: 9\"}\n")}, builtIn: true, base: Lookup}
	_, err := r.read()
	if err == nil || !strings.Contains(err.Error(), "its basis is missing") || !strings.Contains(err.Error(), "section and measured") {
		t.Errorf("got %v", err)
	}
}

// Whatever the bytes: a code or placed mistakes, never a panic.
func FuzzRead(f *testing.F) {
	for _, name := range Names() {
		text, err := files.ReadFile("codes/" + name + ".yaml")
		if err != nil {
			f.Fatal(err)
		}
		f.Add(text)
	}
	f.Add([]byte("base: irc-2021\nlimits: {riser-max: 8\", pad-slope-max: \"1:48\", run-min: none}\n"))
	f.Fuzz(func(t *testing.T, text []byte) {
		c, err := Read("own.yaml", text)
		var placed source.Mistakes
		switch {
		case err == nil:
			for _, l := range c.Limits {
				if l.Text == "" || l.Length < 0 || l.Length > measure.Max {
					t.Errorf("%s came out as %q, %v", l.Key, l.Text, l.Length)
				}
			}
		case !errors.As(err, &placed) || len(placed) == 0:
			t.Errorf("not placed: %v", err)
		}
	})
}
