package spec

import (
	"bytes"
	"fmt"
	"strings"

	"stepoff/spec/measure"
	"stepoff/spec/source"
)

// ListedJob is one row of a job list: a job that is another but for a few values.
type ListedJob struct {
	Name string
	// Base is the job file the row names, as it is written there.
	Base string

	file *source.File
	at   source.Pos
	over map[string]*source.Node
	base *source.Node
}

// listColumns are the columns of a job list, and the keys of a job that they
// stand for.
var listColumns = []struct {
	name, key string
	needed    bool // in every row
}{
	{"name", "name", true},
	{"total_rise", "levels.total_rise", true},
	{"width", "width", false},
	{"code", "code", false},
	{"base", "", true},
}

// LoadJobList reads a list of jobs from a table (see source.File.CSV) with the
// columns name, total_rise, width, code and base, the job file that holds
// everything else. An empty width or code is the base's own; a name, a rise that
// was measured and a base belong to every row. name is what the list is called
// in messages.
//
// The error is a source.Mistakes with everything that is wrong in the table
// itself. The rows that are right come back all the same; whether their values
// are is said by Load.
func LoadJobList(name string, text []byte) ([]ListedJob, error) {
	file := &source.File{Name: name, Text: text}
	var mistakes source.Mistakes
	var known, needed []string
	for _, c := range listColumns {
		known = append(known, c.name)
		if c.needed {
			needed = append(needed, c.name)
		}
	}
	rows := file.CSV(&mistakes, known, needed)
	if len(rows) == 0 && len(mistakes) == 0 {
		mistakes.Add(file, source.Pos{Line: 1, Column: 1}, "no job stands below the names of the columns")
	}
	var jobs []ListedJob
	for _, row := range rows {
		job := ListedJob{file: file, at: row.At, over: map[string]*source.Node{}}
		whole := true
		for _, c := range listColumns {
			cell := row.Cells[c.name]
			if cell == nil && c.needed {
				mistakes.Add(file, row.At, "%s is missing in this row", c.name)
				whole = false
			}
			if cell != nil && c.key != "" {
				job.over[c.key] = cell
			}
		}
		if whole {
			job.Name, _ = row.Cells["name"].Text()
			job.base = row.Cells["base"]
			job.Base, _ = job.base.Text()
			jobs = append(jobs, job)
		}
	}
	return jobs, mistakes.Err()
}

// Mistake is something wrong with the row as a whole, or with its base: that the
// file cannot be read, say.
func (l *ListedJob) Mistake(format string, args ...any) source.Mistake {
	var one source.Mistakes
	one.Add(l.file, l.base.Pos(), format, args...)
	return one[0]
}

// Load makes the job of a row out of its base, the text of which the caller has
// read. What is wrong with the row's values has its place in the list, what is
// wrong with the base in the base. One base may be given to many rows, also at
// once.
func (l *ListedJob) Load(base *source.File) (*Job, error) {
	var mistakes source.Mistakes
	over := map[string]*source.Node{}
	for key, cell := range l.over {
		over[key] = cell.For(&mistakes)
	}
	job := loadJob(base, &mistakes, over)
	if err := mistakes.Err(); err != nil {
		return nil, err
	}
	job.Source = l.source(base.Text)
	return job, nil
}

// source is the base with a remark before it that says which values were taken
// from the list, in the order of the columns.
func (l *ListedJob) source(base []byte) []byte {
	var b strings.Builder
	fmt.Fprintf(&b, "# Row %d of %s, with these values in place of those below:\n", l.at.Line, measure.Quote(l.file.Name))
	for _, c := range listColumns {
		if cell := l.over[c.key]; cell != nil {
			text, _ := cell.Text()
			fmt.Fprintf(&b, "#   %s: %s\n", c.key, text)
		}
	}
	return append([]byte(b.String()), bytes.TrimPrefix(base, []byte("\ufeff"))...)
}
