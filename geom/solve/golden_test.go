package solve_test

import (
	"path/filepath"
	"testing"

	"pegwright/geom"
	"pegwright/golden"
	"pegwright/samples/trial"
)

// TestGolden holds the solved samples against what they were when last looked
// at.
func TestGolden(t *testing.T) {
	trial.EachSample(t, func(t *testing.T, f *geom.Frame) {
		golden.Compare(t, filepath.Base(t.Name())+".frame.txt", f.Dump())
	})
}
