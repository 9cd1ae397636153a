package main

import (
	"bytes"
	"strings"
	"testing"

	"stepoff/spec/source"
)

// TestTooLong: a file given by accident is not read whole, and the job's
// loader says what is wrong with it.
func TestTooLong(t *testing.T) {
	endless := &counter{}
	var said bytes.Buffer
	status := run([]string{"stepoff", "layout", "-"}, streams{in: endless, out: &bytes.Buffer{}, err: &said})
	if status != statusMistake || !strings.HasPrefix(said.String(), "standard input:1:1: ") {
		t.Errorf("status %d, and %q", status, said.String())
	}
	if endless.read > 2*source.MaxSize {
		t.Errorf("%d bytes are read of a file that may have %d", endless.read, source.MaxSize)
	}
}

// counter is a file of x without end.
type counter struct{ read int }

func (c *counter) Read(into []byte) (int, error) {
	for i := range into {
		into[i] = 'x'
	}
	c.read += len(into)
	return len(into), nil
}
