package raise

import (
	"testing"

	"pegwright/samples"
	"pegwright/samples/trial"
)

// BenchmarkRaise composes the raising sheets of the default sample.
func BenchmarkRaise(b *testing.B) {
	f := trial.Sample(b, samples.Default())
	for b.Loop() {
		Sheets(f)
	}
}
