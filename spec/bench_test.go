package spec_test

import (
	"os"
	"testing"
	"time"

	"go.yaml.in/yaml/v4"

	"stepoff/spec"
)

// BenchmarkLoad says how much longer a job takes than the YAML reader alone on
// the same text, both timed in one run: timed apart, a busy machine would decide.
func BenchmarkLoad(b *testing.B) {
	text, err := os.ReadFile("testdata/jobs/every-key.yaml")
	if err != nil {
		b.Fatal(err)
	}
	var whole, bare time.Duration
	for b.Loop() {
		start := time.Now()
		if _, err := spec.Load("job.yaml", text); err != nil {
			b.Fatal(err)
		}
		loaded := time.Now()
		var node yaml.Node
		if err := yaml.Load(text, &node); err != nil {
			b.Fatal(err)
		}
		whole += loaded.Sub(start)
		bare += time.Since(loaded)
	}
	b.ReportMetric(whole.Seconds()/bare.Seconds(), "x-yaml")
}
