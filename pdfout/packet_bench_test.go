package pdfout_test

import (
	"bytes"
	"os"
	"testing"

	"stepoff/layout"
	"stepoff/pdfout/packet"
	"stepoff/spec"
	"stepoff/spec/measure"
)

// BenchmarkPacket is the whole packet of the README's example, planned and
// drawn, against a bare document of as many pages and operations.
func BenchmarkPacket(b *testing.B) {
	const example = "../examples/loft.yaml"
	text, err := os.ReadFile(example)
	if err != nil {
		b.Fatal(err)
	}
	job, err := spec.Load(example, text)
	if err != nil {
		b.Fatal(err)
	}
	stairway, err := layout.Compute(job)
	if err != nil {
		b.Fatal(err)
	}
	against(b, func() []byte {
		var out bytes.Buffer
		if err := packet.Write(&out, stairway, packet.Options{Paper: job.Paper, Style: measure.Style{Units: job.Units}}); err != nil {
			b.Fatal(err)
		}
		return out.Bytes()
	})
}
