package main

import (
	"io"
	"io/fs"
	"os"

	"stepoff/spec"
	"stepoff/spec/source"
)

// standardInput is what a job file read from - is called in messages.
const standardInput = "standard input"

// load reads a job and checks it. The error is a failure to read, or every
// mistake in the job with its place.
func load(std streams, name string) (*spec.Job, error) {
	text, name, err := read(std, name)
	if err != nil {
		return nil, cannotRead(name, err)
	}
	return spec.Load(name, text)
}

// read returns a whole file, or standard input for -, and what to call it in
// messages. No more is read than spec takes and one byte: what is longer is a
// mistake that spec reports.
func read(std streams, name string) (text []byte, called string, err error) {
	if name == "-" {
		text, err = io.ReadAll(bounded(std.in))
		return text, standardInput, err
	}
	file, err := os.Open(name)
	if err != nil {
		return nil, name, err
	}
	defer file.Close()
	text, err = io.ReadAll(bounded(file))
	return text, name, err
}

func bounded(r io.Reader) io.Reader { return io.LimitReader(r, source.MaxSize+1) }

// apart refuses to write over the job that is being read, by whatever name.
func (l *line) apart(std streams, job, output string) {
	if job == "" || output == "" || output == "-" {
		return
	}
	target, err := os.Stat(output)
	if err != nil || !target.Mode().IsRegular() {
		return
	}
	var read fs.FileInfo
	if stream, ok := std.in.(interface{ Stat() (fs.FileInfo, error) }); job == "-" && ok {
		read, err = stream.Stat()
	} else {
		read, err = os.Stat(job)
	}
	if err == nil && os.SameFile(read, target) {
		l.mistake(output+" is the job file: nothing is written over it", "give -o another name")
	}
}
