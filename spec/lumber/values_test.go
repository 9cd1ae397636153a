package lumber_test

import (
	"math"
	"strings"
	"testing"

	"stepoff/spec/lumber"
	"stepoff/spec/measure"
)

var (
	twoByTwelve = size("2x12")
	psi         = measure.PSI
)

func size(name string) lumber.Size {
	s, ok := lumber.Lookup(name)
	if !ok {
		panic(name)
	}
	return s
}

// Reference values against what secondary sources give of NDS Supplement 2018,
// tables 4A and 4B, psi, every row of them (Southern Pine's SS and No.1 in other
// widths than 12 from memory); and Southern Pine No.2, 2x12, against what the library
// it was found in has in metric: 5.2, 1.2, 3.9 MPa, 9.7 and 3.5 GPa.
func TestReferenceValues(t *testing.T) {
	tested := map[lumber.Reference]bool{}
	for _, c := range []struct {
		species, grade, size string
		fb, fv, fcp, e, emin float64
	}{
		{"DF-L", "SS", "2x12", 1500, 180, 625, 1.9e6, 0.69e6},
		{"DF-L", "No.1", "2x12", 1000, 180, 625, 1.7e6, 0.62e6},
		{"Douglas Fir-Larch", "#2", "2x10", 900, 180, 625, 1.6e6, 0.58e6},
		{"HF", "SS", "2x12", 1400, 150, 405, 1.6e6, 0.58e6},
		{"Hem-Fir", "No.1", "2x12", 975, 150, 405, 1.5e6, 0.55e6},
		{"SPF", "Sel Str", "2x12", 1250, 135, 425, 1.5e6, 0.55e6},
		{"HF", "No. 2", "2x12", 850, 150, 405, 1.3e6, 0.47e6},
		{"S-P-F", "No.2", "2x12", 875, 135, 425, 1.4e6, 0.51e6},
		{"Spruce-Pine-Fir", "No.1/No.2", "2x12", 875, 135, 425, 1.4e6, 0.51e6},
		{"SP", "No.2", "2x12", 750, 175, 565, 1.4e6, 0.51e6},
		{"SP", "No.2", "2x4", 1100, 175, 565, 1.4e6, 0.51e6},
		{"SYP", "No.2", "2x6", 1000, 175, 565, 1.4e6, 0.51e6},
		{"SP", "No.2", "2x8", 925, 175, 565, 1.4e6, 0.51e6},
		{"SP", "No.2", "2x10", 800, 175, 565, 1.4e6, 0.51e6},
		{"SP", "No.1", "2x4", 1500, 175, 565, 1.6e6, 0.58e6},
		{"SP", "No.1", "2x6", 1350, 175, 565, 1.6e6, 0.58e6},
		{"SP", "No.1", "2x8", 1250, 175, 565, 1.6e6, 0.58e6},
		{"SP", "No.1", "2x10", 1050, 175, 565, 1.6e6, 0.58e6},
		{"SP", "No.1", "2x12", 1000, 175, 565, 1.6e6, 0.58e6},
		{"SP", "SS", "2x4", 2350, 175, 565, 1.8e6, 0.66e6},
		{"SP", "SS", "2x6", 2100, 175, 565, 1.8e6, 0.66e6},
		{"SP", "SS", "2x8", 1950, 175, 565, 1.8e6, 0.66e6},
		{"SP", "SS", "2x10", 1700, 175, 565, 1.8e6, 0.66e6},
		{"Southern Yellow Pine", "Select Structural", "2x12", 1600, 175, 565, 1.8e6, 0.66e6},
	} {
		r, err := lumber.Published(c.species, c.grade, size(c.size))
		tested[r] = true
		got := []float64{r.Fb, r.Fv, r.FcPerp, r.E, r.Emin}
		for i, want := range []float64{c.fb, c.fv, c.fcp, c.e, c.emin} {
			if err != nil || math.Abs(got[i]/psi-want) > want*1e-9 {
				t.Errorf("%s %s %s: %v psi, %v; want %g at %d", c.species, c.grade, c.size, got[i]/psi, err, want, i)
			}
		}
		if r.Source == "" || r.Basis == "" {
			t.Errorf("%s %s has source %q, basis %q", c.species, c.grade, r.Source, r.Basis)
		}
	}
	for _, r := range lumber.References() {
		if !tested[r] {
			t.Errorf("%s %s, %d wide, is not held against its source", r.Species, r.Grade, r.Nominal)
		}
	}
	r, _ := lumber.Published("SP", "No.2", twoByTwelve)
	for i, want := range []float64{5.2e6, 1.2e6, 3.9e6, 9.7e9, 3.5e9} {
		if got := []float64{r.Fb, r.Fv, r.FcPerp, r.E, r.Emin}[i]; math.Abs(got-want) > 0.5*math.Pow(10, math.Floor(math.Log10(want))-1) {
			t.Errorf("Southern Pine No.2 in metric: %g, want %g", got, want)
		}
	}
}

// Every row can be found by its own name, is traced, and no better grade of a
// species is weaker than the next.
func TestEveryReferenceIsTracedAndFound(t *testing.T) {
	var before lumber.Reference
	for _, r := range lumber.References() {
		width := "2x12"
		if r.Nominal != 0 {
			width = map[int]string{4: "2x4", 6: "2x6", 8: "2x8", 10: "2x10", 12: "2x12"}[r.Nominal]
		}
		if got, err := lumber.Published(r.Species, r.Grade, size(width)); err != nil || got != r {
			t.Errorf("%s %s %s gives %+v, %v", r.Species, r.Grade, width, got, err)
		}
		if r.Source == "" || r.Basis != "secondary" && r.Basis != "from memory" {
			t.Errorf("%s %s: source %q, basis %q", r.Species, r.Grade, r.Source, r.Basis)
		}
		if r.Species == before.Species && r.Grade == before.Grade && r.Fb >= before.Fb {
			t.Errorf("%s %s: wider boards are not weaker", r.Species, r.Grade)
		}
		before = r
	}
}

// No verdict is made up: each of these says why there are no values.
func TestNoPublishedValues(t *testing.T) {
	thin := lumber.Size{Thickness: measure.Inch, Width: twoByTwelve.Width}
	for _, c := range []struct {
		species, grade string
		size           lumber.Size
		says           string
	}{
		{"Red Oak", "No.1", twoByTwelve, "no design values of the species \"Red Oak\""},
		{"White Fir", "No.2", twoByTwelve, "DF-L (Douglas Fir-Larch)"},
		{"DF-L", "No.3", twoByTwelve, "no design values of the grade \"No.3\" are published here; those of DF-L are SS, No.1, No.2"},
		{"SPF", "Stud", twoByTwelve, "those of SPF are SS, No.1/No.2"},
		{"DF-L", "No.1/No.2", twoByTwelve, "of DF-L there are SS, No.1, No.2"},
		{"DF-L", "No.2", thin, "thinner than a nominal 2 in"},
		{"DF-L", "No.2", lumber.Size{Thickness: 4 * measure.Inch, Width: twoByTwelve.Width}, "thicker than a nominal 4 in"},
	} {
		if r, err := lumber.Published(c.species, c.grade, c.size); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s %s: %+v, %v; want %q", c.species, c.grade, r, err, c.says)
		}
	}
}

// The factors on a 2x12, and on boards of other widths and uses. Source: NDS
// Supplement 2018, adjustments of 4A and 4B; incising from memory.
func TestFactors(t *testing.T) {
	adjusted := func(species, grade, board string, c lumber.Conditions) lumber.Values {
		r, err := lumber.Published(species, grade, size(board))
		if err != nil {
			t.Fatal(err)
		}
		c.Size = size(board)
		return r.Adjust(c).Values
	}
	dry, wet, incised := lumber.Conditions{}, lumber.Conditions{Wet: true}, lumber.Conditions{Incised: true}
	for _, c := range []struct {
		what      string
		got, want float64
	}{
		{"a 2x12 has no size factor", adjusted("DF-L", "No.2", "2x12", dry).Fb, 900},
		{"a 2x10 has 1.1", adjusted("DF-L", "No.2", "2x10", dry).Fb, 990},
		{"a 2x6 has 1.3", adjusted("DF-L", "No.2", "2x6", dry).Fb, 1170},
		{"Southern Pine has its own values", adjusted("SP", "No.2", "2x6", dry).Fb, 1000},
		{"wet, Fb over 1150", adjusted("DF-L", "SS", "2x12", wet).Fb, 1500 * 0.85},
		{"wet, Fb under 1150", adjusted("DF-L", "No.2", "2x12", wet).Fb, 900},
		{"wet, Fb x CF over 1150", adjusted("DF-L", "No.2", "2x6", wet).Fb, 1170 * 0.85},
		{"wet, shear", adjusted("DF-L", "No.2", "2x12", wet).Fv, 180 * 0.97},
		{"wet, bearing", adjusted("DF-L", "No.2", "2x12", wet).FcPerp, 625 * 0.67},
		{"wet, modulus", adjusted("DF-L", "No.2", "2x12", wet).E, 1.6e6 * 0.9},
		{"incised, bending", adjusted("HF", "No.2", "2x12", incised).Fb, 850 * 0.8},
		{"incised, shear", adjusted("HF", "No.2", "2x12", incised).Fv, 150 * 0.8},
		{"incised, bearing", adjusted("HF", "No.2", "2x12", incised).FcPerp, 405},
		{"incised, modulus", adjusted("HF", "No.2", "2x12", incised).E, 1.3e6 * 0.95},
		{"flat, 2x12", adjusted("DF-L", "No.2", "2x12", lumber.Conditions{Flat: true}).Fb, 900 * 1.2},
		{"flat, 2x6", adjusted("SPF", "No.2", "2x6", lumber.Conditions{Flat: true}).Fb, 875 * 1.3 * 1.15},
	} {
		if math.Abs(c.got/psi-c.want) > 1e-6*c.want {
			t.Errorf("%s: %g psi, want %g", c.what, c.got/psi, c.want)
		}
	}
	r, _ := lumber.Published("HF", "No.2", twoByTwelve)
	for _, f := range r.Adjust(lumber.Conditions{Wet: true, Incised: true, Flat: true, Size: twoByTwelve}).Factors {
		if f.Symbol == "" || f.Name == "" || f.Why == "" || f.Source == "" || f.Basis == "" {
			t.Errorf("factor %+v is not traced", f)
		}
	}
	own := lumber.Values{Fb: 1, Fv: 2, FcPerp: 3, E: 4}
	if got := own.Own().Values; got != own {
		t.Errorf("own values %+v became %+v", own, got)
	}
}
