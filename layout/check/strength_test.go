package check_test

import (
	"strings"
	"testing"

	"stepoff/layout/check"
)

// What DCA 6 and the Canadian code say of stringers, as findings that fail, each
// on the limit and beyond it.
//
// Sources: DCA 6 figures 28 and 29 (secondary): cut 2x12, 6 ft 0 in at most, 5 in
// left, three stringers, 18 in apart. Canadian text (woodworkingarchive.biz, house
// construction): 9 1/4 in (235 mm) deep, 3 1/2 (90) left, 1 in (25) thick along a
// wall and 1 1/2 (38) otherwise, 35 in (900) apart, 48 (1200) where risers hold
// the treads' fronts. Live loads (STRUCTURE magazine, stair stringers): 40 psf in
// dwellings, 100 psf elsewhere.
func TestPrescribedStringers(t *testing.T) {
	for _, c := range []struct {
		code, rule string
		kept       map[string]string
		broken     map[string]string
	}{
		{"dca-6", "stringer-span", // 7 runs of 10 are 70 in, 8 are 80
			map[string]string{"stairway": `[{flight: {risers: 8, run: 10"}}]`, "levels": `{total_rise: 60"}`},
			map[string]string{"stairway": `[{flight: {risers: 9, run: 10"}}]`, "levels": `{total_rise: 67 1/2"}`}},
		{"dca-6", "stringer-throat", nil, map[string]string{"stairway": `[{flight: {risers: 14, run: 11"}}]`, "levels": `{total_rise: 108 1/2"}`}},
		{"dca-6", "stringer-count", nil, map[string]string{"stringer": "{stock: 2x12, count: 2}"}},
		{"dca-6", "stringer-spacing", map[string]string{"width": `36"`}, map[string]string{"width": `36 1/16"`, "stringer": "{stock: 2x12, count: 3}"}},
		{"nbc-2020", "stringer-throat", map[string]string{"stringer": "{stock: {width: 250mm, thickness: 38mm}}"}, map[string]string{"stringer": "{stock: {width: 242mm, thickness: 38mm}}"}},
		{"nbc-2020", "stringer-depth", map[string]string{"stringer": "{stock: {width: 250mm, thickness: 38mm}}"}, map[string]string{"stringer": "{stock: {width: 234mm, thickness: 38mm}}"}},
		{"nbc-2020", "stringer-thickness", map[string]string{"stringer": "{stock: {width: 286mm, thickness: 25mm}, support: wall}"}, map[string]string{"stringer": "{stock: {width: 286mm, thickness: 25mm}}"}},
		{"nbc-2020", "stringer-spacing", map[string]string{"width": "900mm", "riser": "open", "stringer": "{stock: 2x12, count: 2}"}, map[string]string{"width": "901mm", "riser": "open", "stringer": "{stock: 2x12, count: 2}"}},
		{"nbc-2020", "stringer-spacing", map[string]string{"width": "1238mm", "stringer": "{stock: {width: 286mm, thickness: 38mm}, count: 2}"}, map[string]string{"width": "1239mm", "stringer": "{stock: {width: 286mm, thickness: 38mm}, count: 2}"}},
		{"irc-2021", "live-load", map[string]string{"loads": "{live: 40 psf}"}, map[string]string{"loads": "{live: 39 psf}"}},
		{"ibc-2021", "live-load", map[string]string{"loads": "{live: 100 psf}"}, map[string]string{"loads": "{live: 99 psf}"}},
	} {
		for _, one := range []struct {
			edits map[string]string
			want  check.Status
		}{{c.kept, check.Pass}, {c.broken, check.Fail}} {
			found := by(checked(t, c.code, one.edits), c.rule)
			if len(found) == 0 || found[0].Status != one.want {
				t.Errorf("%s %s: %v: %+v, want %s", c.code, c.rule, one.edits, found, one.want)
			}
		}
	}
}

// Strength is advice: whatever it finds, nothing fails by it. Every finding of it
// has a section, and says how its values came to be known.
func TestStrengthNeverFails(t *testing.T) {
	found := 0
	for _, stringer := range []string{
		"{stock: 2x12, species: DF-L, grade: No.2, kicker: 2x4, ledger: 2x4}",
		"{stock: 2x12, species: SP, grade: No.1, strongback: 2x6, props: [65]}",
		"{stock: 2x12, species: Oak, grade: No.1}",
		"{stock: 2x12, values: {bending: 300 psi, shear: 20 psi, bearing: 20 psi, modulus: 2e5 psi}}",
	} {
		for _, code := range []string{"irc-2021", "osha-1910", "none"} {
			for _, f := range checked(t, code, map[string]string{"width": `36"`, "stringer": stringer, "tread": `{nosing: 1", boards: 2x12, species: HF, grade: No.2}`}) {
				if !strings.HasPrefix(f.ID, "strength-") {
					continue
				}
				found++
				if f.Status == check.Fail || f.Section == "" {
					t.Errorf("%s: %s %s [%s]", code, f.ID, f.Status, f.Section)
				}
				if f.ID != "strength-overcut" && f.Basis == "" && !strings.Contains(f.Text, "no verdict") {
					t.Errorf("%s: %s does not say how its values came to be known", code, f.ID)
				}
			}
		}
	}
	if found < 50 {
		t.Errorf("only %d findings", found)
	}
}

// The ledger's notch at a head: what it leaves, what the end then bears in shear,
// and what stands on the ledger. By hand: plumb cut 6 9/16, 3 1/16 left, 2/3 x 180
// x 1.5 x 3.0625 x (3.0625/6.5625)^2 = 120 lb.
func TestLedgerIsTold(t *testing.T) {
	found := by(checked(t, "irc-2021", map[string]string{"width": `36"`, "stringer": "{stock: 2x12, species: DF-L, grade: No.2, count: 3, ledger: 2x4}"}), "strength-head")
	if len(found) != 2 || !strings.Contains(found[1].Text, `leaves 3 1/16" of wood`) || !strings.Contains(found[1].Text, "the end bears 120 lb in shear") ||
		!strings.Contains(found[1].Text, "less than it must") || found[1].Status != check.Warn {
		t.Errorf("%+v", found)
	}
}

// An overcut of 1/2 in leaves 4.85 and 4.95 in of the 3-4-5 stair's 5 1/4.
func TestOvercutIsTold(t *testing.T) {
	found := by(checked(t, "dca-6", map[string]string{"width": `36"`, "stringer": "{stock: 2x12, support: wall, species: SP, grade: No.2}"}), "strength-overcut")
	if len(found) != 1 || !strings.Contains(found[0].Text, `a throat of 4.850" along a riser line and 4.950" along a tread line`) ||
		!strings.Contains(found[0].Text, `up to 5/16" along a riser line and 3/8" along a tread line keep the throat at 5", by code dca-6`) {
		t.Errorf("%+v", found)
	}
}

// What differs at the foot alone is told of each foot by its place, and of the
// roots once.
func TestFeetAreTold(t *testing.T) {
	found := checked(t, "irc-2021", map[string]string{"width": `36"`,
		"stringer": "{stock: 2x12, species: DF-L, grade: No.2, kicker: 2x4, foot_levels: [1/4, 0, -1/4]}"})
	kickers := by(found, "kicker-notch")
	if len(kickers) != 3 {
		t.Fatalf("%+v", kickers)
	}
	for i, where := range []string{"(left)", "(middle)", "(right)"} {
		if !strings.Contains(kickers[i].Text, "notch "+where+" leaves") {
			t.Errorf("%s: %s", where, kickers[i].Text)
		}
	}
	if n := len(by(found, "strength-overcut")); n != 1 { // none of the three has anything to spare
		t.Errorf("overcuts are told %d times", n)
	}
}

// A head that is lifted is warned of.
func TestLiftIsTold(t *testing.T) {
	found := by(checked(t, "irc-2021", map[string]string{"width": `36"`, "stringer": "{stock: 2x12, species: DF-L, grade: No.2, count: 3, props: [122]}"}), "strength-head")
	if len(found) != 2 || found[1].Status != check.Warn || !strings.Contains(found[1].Text, "it lifts off its head with 1674 lb") {
		t.Errorf("%+v", found)
	}
}

// Feet at different levels change nothing of the throat: it is told once.
func TestOvercutIsToldOnce(t *testing.T) {
	found := by(checked(t, "dca-6", map[string]string{"width": `36"`, "stringer": `{stock: 2x12, foot_levels: [0, 1/2", 1"], support: wall, species: SP, grade: No.2}`}), "strength-overcut")
	if len(found) != 1 {
		t.Errorf("told %d times", len(found))
	}
}

// Own values are taken as they are, and that is said in place of factors.
func TestOwnValuesHaveNoFactors(t *testing.T) {
	found := by(checked(t, "irc-2021", map[string]string{"width": `36"`, "stringer": "{stock: 2x12, values: {bending: 900 psi, shear: 180 psi, bearing: 625 psi, modulus: 1.6e6 psi}}"}), "strength-basis")
	if len(found) != 1 || !strings.Contains(found[0].Text, "with no factor: the values stated in the job are taken as they are") {
		t.Errorf("%+v", found)
	}
}
