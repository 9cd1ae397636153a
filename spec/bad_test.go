package spec_test

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"stepoff/layout"
	"stepoff/layout/choose"
	"stepoff/spec"
	"stepoff/spec/rules"
	"stepoff/spec/source"
)

// Every file of testdata/bad says on the line of each mistake what must be said
// of it, # want "words" "words of another". Each is reported there, and nothing
// else is reported anywhere. A file that can be read is given what it leaves open
// and laid out: what cannot be built is said at its place too.
func TestBadJobsSayWhatIsWrongWhereItIs(t *testing.T) {
	names, err := filepath.Glob("../testdata/bad/*.yaml")
	if err != nil || len(names) == 0 {
		t.Fatalf("no bad jobs: %v", err)
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
			err = build(filepath.Base(name), text)
			var mistakes source.Mistakes
			if !errors.As(err, &mistakes) {
				t.Fatalf("built with %v; want mistakes", err)
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

// build reads a job, fills it in by its code and lays it out.
func build(name string, text []byte) error {
	job, err := spec.Load(name, text)
	if err != nil {
		if job != nil {
			return errors.New("a job came back beside its mistakes")
		}
		return err
	}
	code, ok := rules.Lookup(job.Code.Name)
	if !ok {
		return fmt.Errorf("no code %s", job.Code.Name)
	}
	if job, err = choose.Fill(job, code); err != nil {
		return err
	}
	_, err = layout.Compute(job)
	return err
}

var (
	wantForm = regexp.MustCompile(`# want (".*")\s*$`)
)

// wanted returns the words wanted on each line. Words may hold quotes: they end
// where a quote is followed by a space and another, or by the end of the line.
func wanted(t *testing.T, text string) map[int][]string {
	t.Helper()
	want := map[int][]string{}
	for i, line := range strings.Split(text, "\n") {
		if m := wantForm.FindStringSubmatch(line); m != nil {
			want[i+1] = append(want[i+1], strings.Split(m[1][1:len(m[1])-1], `" "`)...)
		} else if strings.Contains(line, "# want") {
			t.Errorf("line %d: cannot read what is wanted: %s", i+1, line)
		}
	}
	return want
}

// The list of mistakes is shown as a person sees it.
func ExampleLoad() {
	_, err := spec.Load("loft.yaml", []byte(`units: imperial
levels: {total_rise: 8' 14"}
tread: {thickness: 1 1/2, nosing: 1}
riser: none
stringer: {stock: 2x12, head: hang}
`))
	fmt.Println(err)
	// Output:
	// loft.yaml:2:22: total_rise: `8' 14"` has 12 inches or more after the feet; write 9' 2"
	// levels: {total_rise: 8' 14"}
	//                      ^
	// loft.yaml:4:8: riser: "none" is neither; write {thickness: 3/4"} for riser boards, open for none
	// riser: none
	//        ^
	// loft.yaml:5:31: head: "hang" is not one of hung, flush; did you mean hung?
	// stringer: {stock: 2x12, head: hang}
	//                               ^
}
