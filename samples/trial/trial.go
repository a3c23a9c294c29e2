// Package trial holds the frames that tests try: a gate that is as small as a
// frame can be, a hut, buildings drawn at random and the samples, solved; and
// what tests hold frames to, reckoned apart from the program. Only tests use it.
package trial

import (
	"sync"
	"testing"

	"pegwright/geom"
	"pegwright/geom/finding"
	"pegwright/geom/solve"
	"pegwright/geom/spec"
	"pegwright/samples"
)

// Gate describes the least frame with a joint: a post and a rail that one peg
// holds. Its joint is the last line, so that a test may go on with another.
const Gate = `frame: Gate
units: in
timbers:
  hanging-post: {role: post, section: 6 x 6, from: [0, 0, 0], to: [0, 0, 5'], faces: [south, west]}
  rail: {role: tie, section: 6 x 6, from: [0, 6", 4'], to: [0, 6', 4'], faces: [top, west]}
joints:
  - {kind: mortise and tenon, of: rail, end: start, into: hanging-post}
`

// Solve reads and solves a description, and returns the faults of the step that
// found any. The name stands in their places.
func Solve(name, src string) (*geom.Frame, finding.Faults) {
	d, faults := spec.Read(name, []byte(src), nil)
	if len(faults) > 0 {
		return nil, faults
	}
	return solve.Solve(d)
}

// Frame solves a description that must be usable, and fails the test where it
// is not.
func Frame(t testing.TB, name, src string) *geom.Frame {
	t.Helper()
	f, faults := Solve(name, src)
	if len(faults) > 0 {
		t.Fatalf("%s cannot be used:\n%v\n%s", name, faults, src)
	}
	return f
}

// Sample solves a sample, or one of Drawn, afresh, so that the test may change its
// frame.
func Sample(t testing.TB, name string) *geom.Frame {
	t.Helper()
	src, ok := named(name)
	if !ok {
		t.Fatalf("no sample %s", name)
	}
	return Frame(t, name+".yaml", src)
}

// solvedSamples are the samples, solved once for all tests that only read them.
var solvedSamples = sync.OnceValues(func() ([]*geom.Frame, finding.Faults) {
	var r []*geom.Frame
	for _, name := range samples.Names() {
		src, _ := samples.Source(name)
		f, faults := Solve(name+".yaml", string(src))
		if len(faults) > 0 {
			return nil, faults
		}
		r = append(r, f)
	}
	return r, nil
})

// Samples returns the samples in the order of their names. They are solved
// once, and so the test must not change them.
func Samples(t testing.TB) []*geom.Frame {
	t.Helper()
	all, faults := solvedSamples()
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	return all
}

// EachSample runs a test on each of Samples, which it must not change.
func EachSample(t *testing.T, test func(t *testing.T, f *geom.Frame)) {
	t.Helper()
	all := Samples(t)
	for i, name := range samples.Names() {
		t.Run(name, func(t *testing.T) { test(t, all[i]) })
	}
}
