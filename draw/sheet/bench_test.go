package sheet

import (
	"testing"

	"pegwright/geom/solve"
	"pegwright/geom/spec"
	"pegwright/samples"
)

// BenchmarkAll composes every sheet of the default sample.
func BenchmarkAll(b *testing.B) {
	src, _ := samples.Source(samples.Default())
	d, _ := spec.Read("x", src, nil)
	f, _ := solve.Solve(d)
	for b.Loop() {
		All(f, nil)
	}
}
