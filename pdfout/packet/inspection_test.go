package packet

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"stepoff/layout/asbuilt"
	"stepoff/pdfout/pdftest"
	"stepoff/spec"
	"stepoff/spec/measure"
	"stepoff/spec/rules"
)

// inspectionOf writes the inspection sheet of a measured stair of the examples.
func inspectionOf(t *testing.T, path string) (*asbuilt.Inspection, []byte) {
	t.Helper()
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	a, err := spec.LoadAsBuilt(path, text)
	if err != nil {
		t.Fatal(err)
	}
	code, ok := rules.Lookup(a.Code.Name)
	if !ok {
		t.Fatalf("no code %s", a.Code.Name)
	}
	st := measure.Style{Units: a.Units}
	in, err := asbuilt.Inspect(a, code, st)
	if err != nil {
		t.Fatal(err)
	}
	size, err := spec.ParsePaperSize("letter", a.Units)
	if err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	if err := Inspection(&b, in, Options{Paper: spec.Paper{Size: size, Margin: measure.Inch / 4}, Style: st}); err != nil {
		t.Fatal(err)
	}
	return in, b.Bytes()
}

// An inspection sheet, read back: the verdict, what is wrong with each step,
// what puts it right, every rule that fails, the cautions and the blanks stand on
// it; the flight is marked as not for cutting; the measurements are carried along.
func TestInspectionSheetReadBack(t *testing.T) {
	names, err := filepath.Glob("../../examples/as-built/*.yaml")
	if err != nil || len(names) == 0 {
		t.Fatalf("no measured stairs among the examples: %v", err)
	}
	for _, name := range names {
		t.Run(strings.TrimSuffix(filepath.Base(name), ".yaml"), func(t *testing.T) {
			in, pdf := inspectionOf(t, name)
			file := pdftest.MustRead(t, pdf)
			words := ""
			for _, p := range file.Pages {
				words += " " + strings.Join(p.Lines(), " ")
			}
			words = strings.Join(strings.Fields(words), " ")
			want := []string{in.Stair.Name, "it FAILS", "not for cutting", "Signed", "measured again", "building official", "licensed professional"}
			for _, s := range in.Steps {
				for _, f := range s.Faults {
					want = append(want, f.Text)
				}
			}
			for _, f := range in.Findings {
				if f.Status.String() == "fail" {
					want = append(want, f.ID, f.Section)
				}
			}
			switch in.Remedy.Verdict {
			case asbuilt.Pad:
				want = append(want, "pads: ", "A pad covers its whole tread")
			case asbuilt.Rebuild:
				want = append(want, "rebuild the flight: ")
			}
			for _, w := range want {
				if !strings.Contains(words, w) {
					t.Errorf("not on the sheet: %q", w)
				}
			}
			if len(file.Attachments) != 1 || !bytes.Equal(file.Attachments[0].Bytes, in.Stair.Source) {
				t.Error("the measurements are not carried along")
			}
			if _, again := inspectionOf(t, name); !bytes.Equal(pdf, again) {
				t.Error("the same stair gives other bytes")
			}
		})
	}
}

// A stair of which little is known makes a sheet too.
func TestInspectionSheetOfOneRiser(t *testing.T) {
	a, err := spec.LoadAsBuilt("step.yaml", []byte("kind: as-built\nrisers: [7 1/2\"]\n"))
	if err != nil {
		t.Fatal(err)
	}
	code, _ := rules.Lookup("irc-2021")
	in, err := asbuilt.Inspect(a, code, measure.Style{})
	if err != nil {
		t.Fatal(err)
	}
	size, err := spec.ParsePaperSize("a4", measure.Metric)
	if err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	if err := Inspection(&b, in, Options{Paper: spec.Paper{Size: size}}); err != nil {
		t.Fatal(err)
	}
	if file := pdftest.MustRead(t, b.Bytes()); !file.Pages[0].Has("no limit is broken") {
		t.Errorf("%q", file.Pages[0].Lines())
	}
}
