package spec_test

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"stepoff/spec"
	"stepoff/spec/measure"
	"stepoff/spec/source"
)

// Every file of testdata/bad-asbuilt says on the line of each mistake what must
// be said of it, as the bad jobs do.
func TestBadMeasuredStairsSayWhatIsWrongWhereItIs(t *testing.T) {
	names, err := filepath.Glob("../testdata/bad-asbuilt/*.yaml")
	if err != nil || len(names) == 0 {
		t.Fatalf("no bad measured stairs: %v", err)
	}
	for _, name := range names {
		t.Run(strings.TrimSuffix(filepath.Base(name), ".yaml"), func(t *testing.T) {
			text, err := os.ReadFile(name)
			if err != nil {
				t.Fatal(err)
			}
			want := wanted(t, string(text))
			if len(want) == 0 {
				t.Fatal("the file wants no mistake")
			}
			stair, err := spec.LoadAsBuilt(filepath.Base(name), text)
			var mistakes source.Mistakes
			if stair != nil || !errors.As(err, &mistakes) {
				t.Fatalf("loaded with %v; want mistakes", err)
			}
			for _, m := range mistakes {
				i := slices.IndexFunc(want[m.At.Line], func(words string) bool { return strings.Contains(m.Message, words) })
				if i < 0 {
					t.Errorf("not wanted: %s", m.Error())
					continue
				}
				want[m.At.Line] = slices.Delete(want[m.At.Line], i, i+1)
			}
			for line, left := range want {
				for _, words := range left {
					t.Errorf("line %d: wanted and not said: %s", line, words)
				}
			}
		})
	}
}

// Every key, written, arrives where it belongs.
func TestEveryKeyOfAMeasuredStair(t *testing.T) {
	got, err := spec.LoadAsBuilt("stair.yaml", []byte(`
kind: as-built
name: Mill house cellar
number: MH-1
date: 2026-03-02
units: imperial
code: nbc-2020
risers: [6 3/4, 7 1/2, 190mm]
treads: [10, 10 1/16]
nosings: [1, 0, 1 1/8]
width: 36
headroom: 6' 8"
handrail_height: 34 1/2
stringer: {width: 11 1/4, thickness: 1 1/2, overcuts: {riser: 1/2, tread: 1/4}, unit_rise: 7 1/2, unit_run: 10}
`))
	if err != nil {
		t.Fatal(err)
	}
	in := func(sixteenths measure.Length) measure.Length { return sixteenths * measure.Inch / 16 }
	at := func(l measure.Length) *measure.Length { return &l }
	want := &spec.AsBuilt{
		Name: "Mill house cellar", Number: "MH-1", Date: "2026-03-02",
		Code:    spec.Code{Name: "nbc-2020", Given: true},
		Risers:  []measure.Length{in(108), in(120), 190 * measure.Millimetre},
		Treads:  []measure.Length{in(160), in(161)},
		Nosings: []measure.Length{in(16), 0, in(18)},
		Width:   at(in(576)), Headroom: at(in(1280)), HandrailHeight: at(in(552)),
		Stringer: &spec.AsBuiltStringer{
			Width: at(in(180)), Thickness: at(in(24)), UnitRise: at(in(120)), UnitRun: at(in(160)),
			Overcuts: &spec.Overcuts{Riser: in(8), Tread: in(4)},
		},
	}
	if diff := cmp.Diff(want, got, cmpopts.IgnoreFields(spec.AsBuilt{}, "Source"), cmpopts.IgnoreUnexported(spec.AsBuilt{})); diff != "" {
		t.Errorf("want -, got +:\n%s", diff)
	}
}

// What is left out is as the table of keys says.
func TestWhatAMeasuredStairLeavesOut(t *testing.T) {
	for _, c := range []struct {
		text  string
		units measure.Units
	}{
		{`{kind: as-built, risers: [7 1/2"]}`, measure.Imperial},
		{`{kind: as-built, risers: [190mm], treads: }`, measure.Metric},
		{`{kind: as-built, units: metric, risers: [7 1/2"]}`, measure.Metric},
	} {
		got, err := spec.LoadAsBuilt("stair.yaml", []byte(c.text))
		if err != nil {
			t.Errorf("%s: %v", c.text, err)
			continue
		}
		if got.Units != c.units {
			t.Errorf("%s is printed in %s units", c.text, got.Units)
		}
		if got.Code != (spec.Code{Name: "irc-2021"}) {
			t.Errorf("%s is held against %+v", c.text, got.Code)
		}
		if got.Treads != nil || got.Nosings != nil || got.Width != nil || got.Headroom != nil || got.HandrailHeight != nil || got.Stringer != nil {
			t.Errorf("%s has measurements that nobody took: %+v", c.text, got)
		}
	}
}

// A measured stair given to what takes jobs is told where to go.
func TestAMeasuredStairIsNoJob(t *testing.T) {
	_, err := spec.Load("stair.yaml", []byte("kind: as-built\nrisers: [7 1/2\"]\n"))
	var mistakes source.Mistakes
	if !errors.As(err, &mistakes) || len(mistakes) != 1 || !strings.Contains(mistakes[0].Message, "stepoff punch") || mistakes[0].At != (source.Pos{Line: 1, Column: 7}) {
		t.Errorf("said of a measured stair: %v", err)
	}
}

func FuzzLoadAsBuilt(f *testing.F) {
	names, err := filepath.Glob("../testdata/bad-asbuilt/*.yaml")
	if err != nil {
		f.Fatal(err)
	}
	for _, name := range names {
		text, err := os.ReadFile(name)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(text)
	}
	f.Add([]byte("kind: as-built\nrisers: [7\", 8\"]\ntreads: [10\"]\n"))
	f.Fuzz(func(t *testing.T, text []byte) {
		stair, err := spec.LoadAsBuilt("stair.yaml", text)
		if (stair == nil) == (err == nil) {
			t.Fatalf("a stair and mistakes, or neither: %v", err)
		}
		if stair != nil && (len(stair.Risers) == 0 || len(stair.Treads) != len(stair.Risers)-1) {
			t.Fatalf("%d risers and %d treads", len(stair.Risers), len(stair.Treads))
		}
	})
}

// The list of mistakes is shown as a person sees it.
func ExampleLoadAsBuilt() {
	_, err := spec.LoadAsBuilt("cellar.yaml", []byte(`kind: as-built
units: imperial
code: irc-2012
risers: [7 1/2, 7 1/2, 190]
treads: [10, 10, 10]
`))
	fmt.Println(err)
	// Output:
	// cellar.yaml:3:7: code: no code is called "irc-2012"; did you mean irc-2018?
	// code: irc-2012
	//       ^
	// cellar.yaml:4:24: risers: "190" is longer than 3' 0", as no stair has it; is the unit right?
	// risers: [7 1/2, 7 1/2, 190]
	//                        ^
	// cellar.yaml:5:9: treads: 3 risers have 2 treads between them, one fewer, but the list has 3: a riser or a tread was left out, or the upper floor counted as a tread
	// treads: [10, 10, 10]
	//         ^
}
