package spec

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"stepoff/spec/source"
)

// asBuiltWith writes the least measured stair with a value at a path.
func asBuiltWith(path, value string) string {
	keys := map[string]string{"kind": asBuiltKind, "risers": `[7 1/2", 7 1/2"]`, "treads": `[10"]`}
	top, below, nested := strings.Cut(path, ".")
	if nested {
		if middle, last, deeper := strings.Cut(below, "."); deeper {
			value = middle + ": {" + last + ": " + value + "}"
		} else {
			value = below + ": " + value
		}
		value = "{" + value + "}"
	}
	keys[top] = value
	var parts []string
	for key, value := range keys {
		parts = append(parts, key+": "+value)
	}
	slices.Sort(parts)
	return "{" + strings.Join(parts, ", ") + "}"
}

// A key that nothing reads could not be wrong.
func TestEveryKeyOfAMeasuredStairIsRead(t *testing.T) {
	for _, k := range asBuiltKeys {
		wrong := "[[]]" // no key is a list of lists
		if k.kind == heading {
			wrong = "word"
		}
		text := asBuiltWith(k.Path, wrong)
		_, err := LoadAsBuilt("stair.yaml", []byte(text))
		var mistakes source.Mistakes
		if !errors.As(err, &mistakes) {
			t.Errorf("%s: %s was read", k.Path, text)
			continue
		}
		at := strings.Index(text, wrong) + 1
		if !slices.ContainsFunc(mistakes, func(m source.Mistake) bool { return m.At.Column == at || m.At.Column == at+1 }) {
			t.Errorf("%s: no mistake stands at its value: %v", k.Path, err)
		}
	}
}

// Every key says what leaving it out means, or is required and shows how it is
// written.
func TestTheTableOfMeasuredStairsIsWhole(t *testing.T) {
	seen := map[string]bool{}
	for _, k := range asBuiltKeys {
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
		case !k.required && !said:
			t.Errorf("%s does not say what leaving it out means", k.Path)
		case parent != "" && !seen[parent]:
			t.Errorf("%s stands before %s, or without it", k.Path, parent)
		}
		seen[k.Path] = true
	}
}
