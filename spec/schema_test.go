package spec

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"github.com/santhosh-tekuri/jsonschema/v6"
	"go.yaml.in/yaml/v4"
)

// compiled is the schema as an independent library understands it.
func compiled(t *testing.T) *jsonschema.Schema {
	t.Helper()
	document, err := jsonschema.UnmarshalJSON(bytes.NewReader(Schema()))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	c.DefaultDraft(jsonschema.Draft2020)
	c.AssertFormat()
	if err := c.AddResource("job.json", document); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile("job.json")
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// bySchema validates a job file as an editor does.
func bySchema(t *testing.T, s *jsonschema.Schema, text string) error {
	t.Helper()
	var value any
	if err := yaml.Load([]byte(text), &value); err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	if job, ok := value.(map[string]any); ok {
		if day, ok := job["date"].(time.Time); ok { // in JSON a date is a text
			job["date"] = day.Format(time.DateOnly)
		}
	}
	return s.Validate(value)
}

func TestTheSchemaAcceptsWhatTheLoaderAccepts(t *testing.T) {
	s := compiled(t)
	files, err := filepath.Glob("testdata/jobs/*.yaml")
	if err != nil || len(files) == 0 {
		t.Fatalf("no jobs: %v", err)
	}
	for _, name := range files {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		if err := bySchema(t, s, string(text)); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
	for path, values := range map[string][]string{
		"name":                 {"Quarry Lane", "12"},
		"levels.total_rise":    {`8' 9"`, "2667mm"},
		"levels.lower_finish":  {"0"},
		"sides":                {"[wall, open]"},
		"tread.boards":         {"2x12", "2 2x6", "5/4x6", `{width: 11", thickness: 1"}`},
		"riser":                {"open", `{thickness: 3/4"}`, `{thickness: 3/4", joint: on}`},
		"stringer.stock":       {"2x12", `{width: 11", thickness: 1 1/2"}`},
		"stringer.count":       {"3", "auto"},
		"stringer.support":     {"wall", "[wall, span, wall]"},
		"stringer.foot_levels": {`[0, -3/8", 3/8"]`},
		"stringer.values":      {"{bending: 1200 psi, shear: 180 psi, bearing: 4.3 MPa, modulus: 1.6e6 psi}"},
		"stairway":             {"[flight: {}]", `[flight: {risers: 14, run: 10", kicker: none, support: [wall, span, wall]}]`},
		"loads":                {"{live: 40 psf, dead: 10 psf}", "{live: 1.9 kPa}"},
		"incised":              {"true", "false"},
		"stock":                {"{lengths: [8', 10'], prices: [7.50, 12]}", `{kerf: 1/8", end_trim: 0}`},
		"paper.size":           {"letter", `roll 36"`, `12" x 18"`},
		"paper.scale_x":        {"1", "0.9962"},
	} {
		for _, value := range values {
			_, text, err := loadWith(map[string]string{path: value})
			if err != nil {
				t.Errorf("%s: the loader refuses %s: %v", path, value, err)
			}
			if err := bySchema(t, s, text); err != nil {
				t.Errorf("%s: the schema refuses %s: %v", path, value, err)
			}
		}
	}
}

func TestTheSchemaRefusesWhatTheLoaderRefuses(t *testing.T) {
	s := compiled(t)
	for path, values := range map[string][]string{
		"name":                {"[a]"},
		"date":                {`"2026-02-30"`, `"March"`},
		"levels":              {"{}", `8' 9"`},
		"levels.total_rise":   {"0", "true", "[1]"},
		"levels.lower_finish": {"-1"},
		"levels.measured":     {"both"},
		"sides":               {"wall", "[]", "[wall, none]"},
		"tread.boards":        {"oak", `{width: 11"}`},
		"riser":               {"none", "{}", "{joint: on}", `{thickness: 3/4", joint: above}`},
		"stringer":            {"{}", "{stock: 2x13}"},
		"stringer.count":      {"1", "100", "all", "2.5"},
		"stringer.support":    {"floor", "[]"},
		"stairway":            {"[]", "[{}]", "[flight: {risers: 0}]", "[flight: {rise: 7}]", "[landing: {}]"},
		"loads":               {"{live: 40}", "{live: 40 lb}", "40 psf", "{dead: 0}"},
		"stringer.values":     {"{bending: 1200}", "{bending: 1200 psi}", "1200 psi", "{}"},
		"saw.bevel":           {"46", "-1", "steep"},
		"incised":             {`"yes"`},
		"paper.size":          {"a5"},
		"paper.scale_x":       {"1.1", "true"},
	} {
		for _, value := range values {
			_, text, err := loadWith(map[string]string{path: value})
			if err == nil {
				t.Errorf("%s: the loader accepts %s", path, value)
			}
			if bySchema(t, s, text) == nil {
				t.Errorf("%s: the schema accepts %s", path, value)
			}
		}
	}
}

// The keys of the schema are those of the table, no more and no fewer, each
// with its default.
func TestTheSchemaHasTheKeysOfTheTable(t *testing.T) {
	var root map[string]any
	if err := json.Unmarshal(Schema(), &root); err != nil {
		t.Fatal(err)
	}
	got, want := map[string]string{}, map[string]string{}
	schemaKeys(root, "", got)
	for _, k := range keys {
		want[k.Path] = k.Default
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("keys of the table (-) and of the schema (+):\n%s", diff)
	}
}

// schemaKeys collects the paths of all properties with their defaults.
func schemaKeys(s map[string]any, path string, into map[string]string) {
	properties, _ := s["properties"].(map[string]any)
	for name, p := range properties {
		property := p.(map[string]any)
		into[join(path, name)], _ = property["default"].(string)
		schemaKeys(property, join(path, name), into)
	}
	if properties != nil && s["additionalProperties"] != false {
		into[path+" takes any key"] = ""
	}
	forms, _ := s["anyOf"].([]any)
	for _, form := range forms {
		schemaKeys(form.(map[string]any), path, into)
	}
	if items, isList := s["items"].(map[string]any); isList {
		schemaKeys(items, path+"[]", into)
	}
}
