package sheet

import (
	"testing"

	"pegwright/geom/solve"
	"pegwright/geom/spec"
	"pegwright/samples"
)

// BenchmarkRaise composes the raising sheets of the default sample.
func BenchmarkRaise(b *testing.B) {
	src, _ := samples.Source(samples.Default())
	d, _ := spec.Read("x", src, nil)
	f, _ := solve.Solve(d)
	for b.Loop() {
		Raise(f)
	}
}
