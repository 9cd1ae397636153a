package source_test

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"stepoff/spec/source"
)

// open reads a text as a mapping of the known keys, and returns every mistake.
func open(t *testing.T, text string, known []string, hint func(string) string) (*source.Mapping, *source.Mistakes) {
	t.Helper()
	m := &source.Mistakes{}
	root := (&source.File{Name: "job.yaml", Text: []byte(text)}).YAML(m)
	if root == nil {
		t.Fatal(m)
	}
	mapping, _ := root.Mapping(known, hint)
	return mapping, m
}

func TestMappingChecksItsKeys(t *testing.T) {
	known := []string{"total_rise", "risers", "run", "head"}
	belongs := func(key string) string {
		if key == "kicker" {
			return "kicker belongs under stringer"
		}
		return ""
	}
	for _, c := range []struct {
		text string
		want []string
	}{
		{"risers: 14\nrun: 10\n", nil},
		{"risers: 14\nrisers: 15\nrisers: 16\n", []string{`2:1 "risers" stands twice: first on line 1`, `3:1 "risers" stands twice: first on line 1`}},
		{"riser: 14\n", []string{`1:1 unknown key "riser"; did you mean risers?`}},
		{"Run: 14\n", []string{`1:1 unknown key "Run"; did you mean run?`}},
		{"totalrise: 1\n", []string{`1:1 unknown key "totalrise"; did you mean total_rise?`}},
		{"colour: red\n", []string{`1:1 unknown key "colour"; the keys here are total_rise, risers, run and head`}},
		{"kicker: 2x4\n", []string{`1:1 unknown key "kicker"; kicker belongs under stringer`}},
		{"{risers: 14, run:10}\n", []string{`1:14 unknown key "run:10"; a space belongs after the colon: run: 10`}},
		{"{run: 10,5}\n", []string{`1:10 a decimal takes a point, not a comma: 10.5`}},
		{"{run: 10, 5: 6}\n", []string{`1:11 unknown key "5"; the keys`}},
		{"? {a: b}\n: 1\n", []string{`1:3 a key is one word, not a mapping`}},
		{strings.Repeat("k", 10_000) + ": 1\n", []string{`1:1 unknown key "kkkkkkkkkkkkkkkkkkkkkkkkkkkkkkkkkkkkkkkk..."; the keys`}},
		{"- 1\n", []string{`1:1 a mapping belongs here, with the keys total_rise, risers, run and head, not a list`}},
		{"14\n", []string{`1:1 a mapping belongs here, with the keys total_rise, risers, run and head, not "14"`}},
	} {
		_, m := open(t, c.text, known, belongs)
		compare(t, *m, c.want...)
	}
}

func TestValuesAndTheirPlaces(t *testing.T) {
	m, mistakes := open(t, strings.Join([]string{
		"é: {b: 8' 9\", c: [1, two]}", // a column counts characters
		"flat: \"quo'ted\"",
		"block:",
		"  inner: 1",
		"list:",
		"  - x",
		"nothing:",
		"tilde: ~",
	}, "\n"), []string{"é", "flat", "block", "list", "nothing", "tilde"}, nil)
	inner, _ := m.Get("é").Mapping([]string{"b", "c"}, nil)
	list, _ := inner.Get("c").List()
	for _, c := range []struct {
		node     *source.Node
		at, what string
	}{
		{m.Get("é"), "1:4", "a mapping"},
		{inner.Get("b"), "1:8", "`8' 9\"`"},
		{inner.Get("c"), "1:18", "a list"},
		{list[1], "1:22", `"two"`},
		{m.Get("flat"), "2:7", `"quo'ted"`},
		{m.Get("block"), "3:1", "a mapping"}, // what stands on the lines below its key is found at the key
		{m.Get("list"), "5:1", "a list"},
	} {
		if c.node.Pos().String() != c.at || c.node.What() != c.what {
			t.Errorf("%s at %s; want %s at %s", c.node.What(), c.node.Pos(), c.what, c.at)
		}
	}
	for _, key := range []string{"nothing", "tilde"} {
		if m.Get(key) != nil || !m.Has(key) {
			t.Errorf("%s: nothing is written after it", key)
		}
	}
	if m.Has("absent") || m.Get("absent") != nil {
		t.Error("an absent key is there")
	}
	if diff := cmp.Diff([]string{"é", "flat", "block", "list", "nothing", "tilde"}, m.Keys()); diff != "" {
		t.Errorf("keys in the order of the file (-want +got):\n%s", diff)
	}
	m.Missing("nothing", "needs a value")
	m.Missing("absent", "is missing")
	compare(t, *mistakes, "7:1 needs a value", "1:1 is missing")
}

func TestReadingAValueAsWhatItIsNot(t *testing.T) {
	m, mistakes := open(t, "a: [1]\nb: {c: 1}\nd: word\n", []string{"a", "b", "d"}, nil)
	m.Get("a").Text()
	m.Get("b").Text()
	m.Get("b").List()
	m.Get("d").List()
	m.Get("d").Open()
	compare(t, *mistakes,
		"1:4 a single value belongs here, not a list", "2:4 a single value belongs here, not a mapping",
		"2:4 a list belongs here", "3:4 a list belongs here, like [a, b], not \"word\"", "3:4 a mapping belongs here, not \"word\"")
}

func TestPlaces(t *testing.T) {
	var m source.Mistakes
	root := (&source.File{Text: []byte("levels:\n  total_rise: 8' 9\"\nstairway:\n  - flight: {risers: 14, run: 10\"}\n  - landing:\n      turn: left\nlevels: 3\n")}).YAML(&m)
	got := map[string]string{}
	for path, at := range root.Places() {
		got[path] = at.String()
	}
	want := map[string]string{
		"": "1:1", "levels": "1:1", "levels.total_rise": "2:15", "stairway": "3:1", "stairway[0]": "4:5", "stairway[0].flight": "4:13",
		"stairway[0].flight.risers": "4:22", "stairway[0].flight.run": "4:31", "stairway[1]": "5:5", "stairway[1].landing": "5:5", "stairway[1].landing.turn": "6:13",
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("places (-want +got):\n%s", diff)
	}
}

func TestDidYouMean(t *testing.T) {
	known := []string{"hung", "flush", "letter", "legal", "housed"}
	for word, want := range map[string]string{
		"hang": "hung", "HUNG": "hung", "flsh": "flush", "lettre": "letter", "legl": "legal",
		"": "", "x": "", "routed": "", "hosed": "housed", "über": "", strings.Repeat("hung", 100): "",
	} {
		if want != "" {
			want = "; did you mean " + want + "?"
		}
		if got := source.DidYouMean(word, known); got != want {
			t.Errorf("%q: %q, want %q", word, got, want)
		}
	}
}
