package sheet

import (
	"os"
	"strconv"
	"testing"

	"pegwright/geom"
	"pegwright/geom/solve"
	"pegwright/geom/spec"
	"pegwright/samples"
)

// frames is how many random frames are drawn: PEGWRIGHT_FRAMES, or a few.
func frames(few int) int {
	if n, err := strconv.Atoi(os.Getenv("PEGWRIGHT_FRAMES")); err == nil {
		return n
	}
	return few
}

// drawnSamples names the samples that are drawn and checked: every one where
// PEGWRIGHT_FRAMES is set, else four that differ most in roof, units and paper.
func drawnSamples() []string {
	if frames(0) > 0 {
		return samples.Names()
	}
	return []string{samples.Default(), "cart-barn", "fair-shelter", "vine-arbour"}
}

// solved returns the frame of a sample, solved afresh: tests may change it.
func solved(t *testing.T, name string) *geom.Frame {
	t.Helper()
	src, ok := samples.Source(name)
	if !ok {
		t.Fatalf("no sample %s", name)
	}
	d, faults := spec.Read(name, src, nil)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	f, faults := solve.Solve(d)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	return f
}
