package spec

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"stepoff/spec/source"
)

// leastValues makes a job that is right out of any keys put into it.
var leastValues = map[string]string{
	"levels.total_rise": `8' 9"`, "tread.thickness": `1 1/2"`, "riser.thickness": `3/4"`, "stringer.stock": "2x12",
}

// leastMembers are what members of a stairway cannot be without, besides the
// stair's width.
var leastMembers = map[string]map[string]string{
	"stairway[].landing": {"turn": "left"},
	"stairway[].winders": {"turn": "left", "treads": "3"},
	"stairway[].curve":   {"turn": "left", "inside_radius": `60"`, "angle": "90"},
}

// jobWith writes the least job with values at paths of the table, on one line
// each mapping. A path that is set takes away what the least job has below it.
func jobWith(values map[string]string) string {
	all := map[string]string{}
	for path, value := range leastValues {
		kept := true
		for set := range values {
			kept = kept && set != path && !strings.HasPrefix(path, set+".") && !strings.HasPrefix(set, path+".")
		}
		if kept {
			all[path] = value
		}
	}
	for path := range values {
		for member, wanted := range leastMembers {
			if strings.HasPrefix(path, member+".") {
				all["width"] = `36"`
				for key, value := range wanted {
					all[member+"."+key] = value
				}
			}
		}
	}
	for path, value := range values {
		all[path] = value
	}
	return strings.TrimSuffix(strings.TrimPrefix(writeKeys("", all), "{"), "}")
}

// writeKeys writes the keys below a path as a flow mapping; nothing when none
// of them is set.
func writeKeys(path string, values map[string]string) string {
	var parts []string
	for _, name := range below(path) {
		at := join(path, name)
		value, set := values[at]
		if !set && at == "stairway" {
			value = writeStairway(values)
		} else if !set {
			value = writeKeys(at, values)
		}
		if value != "" {
			parts = append(parts, name+": "+value)
		}
	}
	if len(parts) == 0 {
		return ""
	}
	return "{" + strings.Join(parts, ", ") + "}"
}

// writeStairway writes every member that is set, from the bottom up: first the
// flight, then each turn that is set with a flight after it, and the curve behind
// a landing.
func writeStairway(values map[string]string) string {
	member := func(name string) string {
		path := "stairway[]." + name
		if value, set := values[path]; set {
			return value
		}
		return writeKeys(path, values)
	}
	var list []string
	add := func(kind, value string) { list = append(list, "{"+kind+": "+value+"}") }
	if flight := member("flight"); flight != "" {
		add("flight", flight)
	}
	for _, turn := range []string{"landing", "winders"} {
		if value := member(turn); value != "" {
			if len(list) == 0 {
				add("flight", "{}")
			}
			add(turn, value)
			add("flight", "{}")
		}
	}
	if curve := member("curve"); curve != "" {
		if len(list) > 0 {
			add("landing", "{turn: none}")
		}
		add("curve", curve)
	}
	if len(list) == 0 {
		return ""
	}
	return "[" + strings.Join(list, ", ") + "]"
}

func loadWith(values map[string]string) (*Job, string, error) {
	text := "{" + jobWith(values) + "}"
	job, err := Load("job.yaml", []byte(text))
	return job, text, err
}

// A key that nothing reads could not be wrong.
func TestEveryKeyOfTheTableIsRead(t *testing.T) {
	for _, k := range keys {
		wrong := "[[]]" // no key is a list of lists
		if k.kind == heading || k.kind == elementList {
			wrong = "word"
		}
		_, text, err := loadWith(map[string]string{k.Path: wrong})
		var mistakes source.Mistakes
		if !errors.As(err, &mistakes) {
			t.Errorf("%s: %s was read as %s", k.Path, wrong, text)
			continue
		}
		at := strings.Index(text, wrong) + 1
		if !slices.ContainsFunc(mistakes, func(m source.Mistake) bool { return m.At.Column == at || m.At.Column == at+1 }) {
			t.Errorf("%s: no mistake stands at its value: %v", k.Path, err)
		}
	}
}

// Writing out every default of the table changes nothing.
func TestDefaultsAreWhatTheTableSays(t *testing.T) {
	members := map[string]string{"stairway[].flight": "{}"}
	for member, wanted := range leastMembers {
		for key, value := range wanted {
			members[member+"."+key] = value
		}
	}
	plain, _, err := loadWith(members)
	if err != nil {
		t.Fatal(err)
	}
	plain.Code.Given = true
	values := map[string]string{}
	for path, value := range members {
		if path != "stairway[].flight" {
			values[path] = value
		}
	}
	for _, k := range Defaults() {
		if k.Default != "" {
			values[k.Path] = k.Default
		}
	}
	spelled, text, err := loadWith(values)
	if err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	if diff := cmp.Diff(plain, spelled, cmpopts.IgnoreFields(Job{}, "Source"), cmpopts.IgnoreUnexported(Job{})); diff != "" {
		t.Errorf("left out (-) and written as the table has it (+):\n%s", diff)
	}
}

// Each allowed word is accepted, and one that is not is refused with the
// allowed ones.
func TestWordsOfTheTable(t *testing.T) {
	for _, k := range keys {
		for _, w := range append(k.words, "no-such-word") {
			if k.words == nil {
				continue
			}
			value := w
			if k.many == aList {
				value = fmt.Sprintf("[%s, %s]", w, w)
			}
			_, text, err := loadWith(map[string]string{k.Path: value})
			if known := w != "no-such-word"; known && err != nil {
				t.Errorf("%s: %s is refused: %v\n%s", k.Path, value, err, text)
			} else if !known && (err == nil || !strings.Contains(err.Error(), k.words[0])) {
				t.Errorf("%s: %s: %v; want the words that are allowed", k.Path, value, err)
			}
		}
	}
}

// Every key says what leaving it out means, or is required and shows how it is
// written, or is only a heading.
func TestTheTableIsWhole(t *testing.T) {
	seen := map[string]bool{}
	for _, k := range keys {
		parent, _ := split(k.Path)
		switch said := k.Default != "" || k.LeftOut != ""; {
		case seen[k.Path]:
			t.Errorf("%s stands twice", k.Path)
		case k.Doc == "":
			t.Errorf("%s says nothing", k.Path)
		case k.Default != "" && k.LeftOut != "":
			t.Errorf("%s has a default and says what leaving it out means", k.Path)
		case k.required && (said || k.example == ""):
			t.Errorf("%s is required: it has no default, and an example", k.Path)
		case !k.required && !said && len(below(k.Path)) == 0:
			t.Errorf("%s does not say what leaving it out means", k.Path)
		case parent != "" && parent != "stairway[]" && !seen[parent]:
			t.Errorf("%s stands before %s, or without it", k.Path, parent)
		}
		seen[k.Path] = true
	}
	for _, name := range []string{"head", "foot", "kicker", "ledger", "count", "support", "foot_levels"} {
		if own, shared := table[flightPath+"."+name], table["stringer."+name]; own.kind != shared.kind || len(own.words) != len(shared.words) || own.kind == heading {
			t.Errorf("a flight's %s is not the stringer's", name)
		}
	}
}

// Each measurement is the job's own: no default may hide that it was not taken.
func TestWhatIsMeasuredHasNoDefault(t *testing.T) {
	for _, path := range []string{"levels.total_rise", "riser", "riser.thickness", "stringer.stock"} {
		if k := table[path]; !k.required || k.Default != "" {
			t.Errorf("%s has a default", path)
		}
	}
}
