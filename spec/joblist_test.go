package spec_test

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"stepoff/spec"
	"stepoff/spec/measure"
	"stepoff/spec/source"
)

const baseJob = `name: the base
number: B-1
units: imperial
code: irc-2021
levels: {total_rise: 105, floor_depth: 11 3/4}
width: 36
tread: {thickness: 1 1/2, nosing: 1}
riser: {thickness: 3/4}
stringer: {stock: 2x12}
`

// TestJobList: a row's values stand in place of the base's, everything else is
// the base's; the columns in any order, and inch marks as a spreadsheet writes
// them and as a hand does.
func TestJobList(t *testing.T) {
	for name, list := range map[string]string{
		"spreadsheet": "name,total_rise,width,code,base\r\n\"Lot 7, left\",\"8' 11 3/8\"\"\",,ibc-2021,base.yaml\r\nLot 8,108,\"3' 2\"\"\",,base.yaml\r\n\r\n",
		"by hand":     "base,Code,Name,Total Rise,Width\nbase.yaml,ibc-2021,\"Lot 7, left\",8' 11 3/8\",\nbase.yaml,,Lot 8,108,3' 2\"\n",
		"semicolons":  "\ufeffname;total_rise;width;code;base\nLot 7, left;8' 11 3/8\";;ibc-2021;base.yaml\nLot 8;108;38;;base.yaml\n;;;;\n",
	} {
		jobs, err := spec.LoadJobList("jobs.csv", []byte(list))
		if err != nil || len(jobs) != 2 {
			t.Errorf("%s: %d jobs, %v", name, len(jobs), err)
			continue
		}
		base := &source.File{Name: "base.yaml", Text: []byte(baseJob)}
		want := load(t, baseJob)
		for i, c := range []struct {
			name  string
			rise  measure.Length
			width measure.Length
			code  spec.Code
		}{
			{"Lot 7, left", 107*in + 3*in/8, 36 * in, spec.Code{Name: "ibc-2021", Given: true}},
			{"Lot 8", 108 * in, 38 * in, spec.Code{Name: "irc-2021", Given: true}},
		} {
			if jobs[i].Name != c.name || jobs[i].Base != "base.yaml" {
				t.Errorf("%s: row %d is %s on %s", name, i, jobs[i].Name, jobs[i].Base)
			}
			got, err := jobs[i].Load(base)
			if err != nil {
				t.Errorf("%s: %v", name, err)
				continue
			}
			want.Name, want.Levels.TotalRise, want.Width, want.Code = c.name, c.rise, &c.width, c.code
			want.Stringer.Count, want.Stairway[0].Flight.Stringer.Count = got.Stringer.Count, got.Stringer.Count // by the width
			compare(t, want, got)
			if again := load(t, string(got.Source)); again.Number != "B-1" || !strings.Contains(string(got.Source), "levels.total_rise: ") {
				t.Errorf("%s: the source is\n%s", name, got.Source)
			}
		}
	}
}

// TestJobListMistakes: each at its row and column, or in the base; the right
// rows come back all the same.
func TestJobListMistakes(t *testing.T) {
	const head = "name,total_rise,width,code,base\n"
	for what, c := range map[string]struct {
		list string
		want []string // of the table
		jobs []string // that come back
	}{
		"empty":           {"", []string{"jobs.csv:1:1: the file is empty; its first line names the columns: name,total_rise,width,code,base"}, nil},
		"no rows":         {head, []string{"jobs.csv:1:1: no job stands below"}, nil},
		"columns":         {"name,rise,total_rise,total_rise,colour\nx,1,2,3,4\n", []string{"jobs.csv:1:1: the column base is missing", `jobs.csv:1:6: there is no column "rise"`, "jobs.csv:1:22: the column total_rise stands twice", `jobs.csv:1:33: there is no column "colour"`}, nil},
		"misspelt":        {"nam,total_rise,base\n", []string{"did you mean name?", "the column name is missing"}, nil},
		"cells":           {head + "a,105,,,base.yaml\n,105,,,base.yaml\nb,,,,base.yaml\nc,105,,,\nd,105,,,base.yaml,more\ne,105,,,base.yaml\n", []string{"jobs.csv:3:1: name is missing", "jobs.csv:4:1: total_rise is missing", "jobs.csv:5:1: base is missing", `jobs.csv:6:19: "more" stands in no column`}, []string{"a", "e"}},
		"quote":           {head + "a,105,,,base.yaml\nb,\"105,,,base.yaml\nc,105,,,base.yaml\n", []string{"jobs.csv:3:3: a cell is one line of text"}, []string{"a"}},
		"not UTF-8":       {head + "a\xff,105,,,base.yaml\n", []string{"jobs.csv:2:2: this is not UTF-8"}, nil},
		"control":         {head + "a\x01,105,,,base.yaml\n", []string{"jobs.csv:2:2: there is a control character"}, nil},
		"after an umlaut": {head + "Höhe,105,,,base.yaml,more\n", []string{`jobs.csv:2:22: "more"`}, nil},
	} {
		jobs, err := spec.LoadJobList("jobs.csv", []byte(c.list))
		said(t, what, err, c.want)
		var names []string
		for _, j := range jobs {
			names = append(names, j.Name)
		}
		if !slices.Equal(names, c.jobs) {
			t.Errorf("%s: jobs %v, want %v", what, names, c.jobs)
		}
	}
}

// said holds every mistake against the words wanted, in order of place.
func said(t *testing.T, what string, err error, want []string) {
	t.Helper()
	var mistakes source.Mistakes
	if !errors.As(err, &mistakes) || len(mistakes) != len(want) {
		t.Errorf("%s: %v; want %d mistakes", what, err, len(want))
		return
	}
	for _, words := range want {
		if !slices.ContainsFunc(mistakes, func(m source.Mistake) bool { return strings.Contains(m.Error(), words) }) {
			t.Errorf("%s: %v\nwant: %s", what, err, words)
		}
	}
}

// TestListedJobMistakes: a wrong value is said at its cell, what is wrong in the
// base in the base, and what shows only later at whichever the value comes from.
func TestListedJobMistakes(t *testing.T) {
	jobs, err := spec.LoadJobList("jobs.csv", []byte("name,total_rise,width,code,base\nLot 9,8' 14\",wide,none,base.yaml\nLot 10,105,36,none,base.yaml\n"))
	if err != nil {
		t.Fatal(err)
	}
	base := &source.File{Name: "base.yaml", Text: []byte(strings.Replace(baseJob, "2x12", "2x13", 1))}
	if job, err := jobs[0].Load(base); job != nil {
		t.Error("a job with mistakes")
	} else {
		said(t, "both", err, []string{"jobs.csv:2:7: total_rise: `8' 14\"` has 12 inches or more", `jobs.csv:2:14: width: cannot read "wide"`, `base.yaml:9:19: stock: "2x13" is no size`})
	}
	good := &source.File{Name: "base.yaml", Text: []byte(baseJob)}
	if _, err := jobs[0].Load(good); err == nil {
		t.Error("the row's mistakes are gone the second time")
	}
	job, err := jobs[1].Load(good)
	if err != nil {
		t.Fatal(err)
	}
	for path, want := range map[string]string{
		"levels.total_rise": "jobs.csv:3:8: ", "width": "jobs.csv:3:12: ", "stringer.stock": "base.yaml:9:19: ", "tread.nosing": "base.yaml:7:35: ",
	} {
		if got := job.Mistake(path, "no").Error(); !strings.HasPrefix(got, want) {
			t.Errorf("%s is placed at %q, want %s", path, got, want)
		}
	}
	if got := jobs[1].Mistake("cannot read %s", jobs[1].Base).Error(); !strings.HasPrefix(got, "jobs.csv:3:20: cannot read base.yaml\n") {
		t.Errorf("%s", got)
	}
}

// TestListedBase: what the base lacks the row may give; what the row leaves empty
// the base must.
func TestListedBase(t *testing.T) {
	jobs, err := spec.LoadJobList("jobs.csv", []byte("name,total_rise,base\na,2700mm,base.yaml\n"))
	if err != nil {
		t.Fatal(err)
	}
	base := &source.File{Name: "base.yaml", Text: []byte("levels: {floor_depth: 300mm}\ntread: {thickness: 38mm}\nriser: open\nstringer: {stock: 2x12}\n")}
	job, err := jobs[0].Load(base)
	if err != nil {
		t.Fatal(err)
	}
	if job.Units != measure.Metric || job.Code.Given || job.Width != nil || job.Levels.TotalRise != 2700*measure.Millimetre {
		t.Errorf("%+v", job)
	}
	if _, err := jobs[0].Load(&source.File{Name: "base.yaml", Text: []byte("kind: as-built\n")}); err == nil || !strings.HasPrefix(err.Error(), "base.yaml:1:7: a job file has no kind") {
		t.Errorf("%v", err)
	}
}

// FuzzJobList: whatever the bytes, no panic, and every mistake has a place.
func FuzzJobList(f *testing.F) {
	f.Add([]byte("name,total_rise,width,code,base\nLot 7,8' 11\",,,base.yaml\n"))
	f.Add([]byte("name;total_rise;base\n\"a\n;1;b\n"))
	base := &source.File{Name: "base.yaml", Text: []byte(baseJob)}
	f.Fuzz(func(t *testing.T, text []byte) {
		jobs, err := spec.LoadJobList("jobs.csv", text)
		var mistakes source.Mistakes
		if err != nil && !errors.As(err, &mistakes) {
			t.Fatalf("%q: an error without a place: %v", text, err)
		}
		if err == nil && len(jobs) == 0 {
			t.Fatalf("%q: neither jobs nor mistakes", text)
		}
		for _, j := range jobs {
			job, err := j.Load(base)
			if more := (source.Mistakes)(nil); errors.As(err, &more) {
				mistakes = append(mistakes, more...)
			} else if job == nil || job.Name != j.Name || job.Levels.TotalRise <= 0 {
				t.Fatalf("%q: %+v", text, job)
			}
		}
		for _, m := range mistakes {
			if m.At.Line < 1 || m.At.Column < 1 || m.Message == "" || m.Error() == "" {
				t.Errorf("%q: a mistake without a place or words: %+v", text, m)
			}
		}
	})
}
