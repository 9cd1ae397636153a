package spec_test

import (
	"testing"

	"stepoff/spec"
)

// The paper taken where a command has no job is that of a job that names none.
func TestDefaultPaper(t *testing.T) {
	job, err := spec.Load("job.yaml", []byte(`{levels: {total_rise: 9'}, tread: {thickness: 1"}, riser: open, stringer: {stock: 2x12}}`))
	if err != nil {
		t.Fatal(err)
	}
	if got := spec.DefaultPaper(); got != job.Paper {
		t.Errorf("default paper %+v, a job's %+v", got, job.Paper)
	}
}
