package sheet

import (
	"testing"

	"pegwright/samples"
	"pegwright/samples/trial"
)

// BenchmarkAll composes every sheet of the default sample.
func BenchmarkAll(b *testing.B) {
	f := trial.Sample(b, samples.Default())
	for b.Loop() {
		All(f, nil)
	}
}
