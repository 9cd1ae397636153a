package asbuilt_test

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"go.yaml.in/yaml/v4"

	"stepoff/layout/asbuilt"
	"stepoff/layout/check"
	"stepoff/spec/measure"
)

// publishedCase is one row of testdata/published/as-built.
type publishedCase struct {
	ID, Tag, Source string
	Risers, Pads    []string
	Expect          struct{ Spread, Verdict, Total string }
}

// Every row is a stair from a published source; the source stands in the row.
func TestPublished(t *testing.T) {
	files, err := filepath.Glob("../../testdata/published/as-built/*.yaml")
	if err != nil || len(files) == 0 {
		t.Fatalf("no published cases: %v", err)
	}
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		var cases []publishedCase
		if err := yaml.Unmarshal(text, &cases); err != nil {
			t.Fatalf("%s: %v", file, err)
		}
		for _, c := range cases {
			t.Run(c.ID, func(t *testing.T) {
				if c.Source == "" || c.Tag == "" || !strings.Contains("FMD", c.Tag) || c.Expect.Verdict == "" {
					t.Fatal("a row needs a source, a tag of F, M or D, and a verdict that is expected")
				}
				c.run(t)
			})
		}
	}
}

func (c publishedCase) run(t *testing.T) {
	risers := parse(t, c.Risers)
	if len(c.Pads) > 0 {
		risers = asbuilt.Padded(risers, parse(t, c.Pads))
	}
	in := inspect(t, "irc-2021", risers)
	if want := parse(t, []string{c.Expect.Spread})[0]; in.Risers.Apart != want {
		t.Errorf("the risers are %v apart, want %s", in.Risers.Apart.In(), c.Expect.Spread)
	}
	if got := variation(t, in); got.String() != c.Expect.Verdict {
		t.Errorf("the risers %s, want %s", got, c.Expect.Verdict)
	}
	if c.Expect.Verdict == "pass" {
		if in.Remedy.Verdict != asbuilt.Nothing {
			t.Errorf("to do: %s", in.Remedy.Verdict)
		}
		return
	}
	if in.Remedy.Verdict != asbuilt.Pad {
		t.Fatalf("to do: %s", in.Remedy.Verdict)
	}
	again := inspect(t, "irc-2021", in.Remedy.Padded)
	if got := variation(t, again); got != check.Pass {
		t.Errorf("with pads %v the risers %s", in.Remedy.Pads, got)
	}
	if c.Expect.Total != "" {
		if most := parse(t, []string{c.Expect.Total})[0]; in.Remedy.Total() > most {
			t.Errorf("pads come to %v in, more than the published %s", in.Remedy.Total().In(), c.Expect.Total)
		}
	}
}

// variation is what is found of the risers' uniformity.
func variation(t *testing.T, in *asbuilt.Inspection) check.Status {
	t.Helper()
	i := slices.IndexFunc(in.Findings, func(f check.Finding) bool { return f.ID == "riser-variation" })
	if i < 0 {
		t.Fatal("nothing is found of the risers' variation")
	}
	return in.Findings[i].Status
}

func parse(t *testing.T, texts []string) []measure.Length {
	t.Helper()
	var all []measure.Length
	for _, text := range texts {
		l, err := measure.Parse(text, measure.Imperial)
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, l)
	}
	return all
}
