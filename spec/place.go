package spec

import (
	"strings"

	"stepoff/spec/source"
)

// Mistake is something wrong with a job that shows only when it is laid out: a
// throat that is gone, a blade too shallow. path names the key it comes from,
// "stringer.kicker" or "stairway[0].flight.run"; where that is left out the
// mistake stands at the nearest key above it, at worst at the head of the file.
func (j *Job) Mistake(path, format string, args ...any) source.Mistake {
	file, at := j.place(path)
	if file == nil {
		file = &source.File{Name: "job"}
	}
	var one source.Mistakes
	one.Add(file, at, format, args...)
	return one[0]
}

func (j *Job) place(path string) (*source.File, source.Pos) {
	for {
		if n := j.over[path]; n != nil {
			return n.File(), n.Pos()
		}
		if at, ok := j.places[path]; ok && path != "" {
			return j.file, at
		}
		i := strings.LastIndexAny(path, ".[")
		if i < 0 {
			return j.file, source.Pos{Line: 1, Column: 1}
		}
		path = path[:i]
	}
}

// Says tells whether the file itself gives the key, and not the default.
func (j *Job) Says(path string) bool {
	_, ok := j.places[path]
	return ok
}
