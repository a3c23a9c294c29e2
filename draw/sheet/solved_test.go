package sheet

import (
	"os"
	"strconv"
	"sync"
	"testing"

	"pegwright/geom"
	"pegwright/geom/finding"
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

// solution is a sample that is solved once for all tests.
type solution struct {
	once   sync.Once
	frame  *geom.Frame
	faults finding.Faults
}

var solutions sync.Map // of *solution by sample name

// solved returns the frame of a sample, to be read only; what lies directly in
// it may be replaced.
func solved(t *testing.T, name string) *geom.Frame {
	t.Helper()
	x, _ := solutions.LoadOrStore(name, &solution{})
	s := x.(*solution)
	s.once.Do(func() {
		src, _ := samples.Source(name)
		d, faults := spec.Read(name, src, nil)
		if len(faults) == 0 {
			s.frame, faults = solve.Solve(d)
		}
		s.faults = faults
	})
	if len(s.faults) > 0 || s.frame == nil {
		t.Fatalf("%s: %v", name, s.faults)
	}
	f := *s.frame
	return &f
}
