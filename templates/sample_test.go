package templates

import (
	"testing"

	"pegwright/geom"
	"pegwright/geom/solve"
	"pegwright/geom/spec"
	"pegwright/samples"
)

// sample returns a solved sample frame.
func sample(t testing.TB, name string) *geom.Frame {
	t.Helper()
	src, ok := samples.Source(name)
	if !ok {
		t.Fatalf("no sample %q", name)
	}
	return solved(t, name, src)
}

// solved returns the frame of a description.
func solved(t testing.TB, name string, src []byte) *geom.Frame {
	t.Helper()
	d, faults := spec.Read(name, src, nil)
	if len(faults) > 0 {
		t.Fatal(faults.Error())
	}
	f, faults := solve.Solve(d)
	if len(faults) > 0 {
		t.Fatal(faults.Error())
	}
	return f
}

// hard are descriptions of what the samples do not have: two pegs, a peg from
// the other side, a housing in a reference face, a hole that no one page
// reaches from its arris, metric and inch paper.
var hard = map[string]string{
	"two pegs, housed in a reference face": `
frame: Housed
units: in
timbers:
  gate-post: {role: post, section: 6 x 6, from: [0, 0, 0], to: [0, 0, 5'], faces: [south, west]}
  top-rail: {role: tie, section: 6 x 7, from: [0, -6', 4'], to: [0, 0, 4'], faces: [top, west]}
joints:
  - {kind: mortise and tenon, of: top-rail, end: end, into: gate-post, housing: 1/2", pegs: {count: 2}, bore: 1"}
`,
	"far from the arris, bored from face 4": `
frame: Stout
units: mm
timbers:
  gate-post: {role: post, section: 360 x 360, from: [0, 0, 0], to: [0, 0, 1500], faces: [south, west]}
  top-rail: {role: tie, section: 200 x 300, from: [0, 360, 1000], to: [0, 2000, 1000], faces: [top, west]}
joints:
  - {kind: mortise and tenon, of: top-rail, end: start, into: gate-post, pegs: {count: 1, from face: 4}, bore: 25}
`,
}

// frames returns all samples and the hard ones, solved.
func frames(t testing.TB) map[string]*geom.Frame {
	t.Helper()
	out := map[string]*geom.Frame{}
	for _, n := range samples.Names() {
		out[n] = sample(t, n)
	}
	for n, src := range hard {
		out[n] = solved(t, n, []byte(src))
	}
	return out
}
