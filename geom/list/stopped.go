package list

import (
	"fmt"

	"pegwright/geom"
	"pegwright/geom/finding"
)

// Stopped returns, for every joint that must not be cut, the number of the
// first finding that says so, counted from 1 in the order of finding.Sort. A
// stop that names no joint but timbers stops all joints of these timbers; one
// that names neither stops nothing here.
func Stopped(f *geom.Frame, finds []finding.Finding) map[string]int {
	sorted := append([]finding.Finding(nil), finds...)
	finding.Sort(sorted)
	out := map[string]int{}
	for i, x := range sorted {
		if x.Severity != finding.Stop {
			continue
		}
		for _, id := range about(f, x) {
			if out[id] == 0 {
				out[id] = i + 1
			}
		}
	}
	return out
}

// about returns the ids of the joints that a finding is about.
func about(f *geom.Frame, x finding.Finding) []string {
	if len(x.Joints) > 0 {
		return x.Joints
	}
	var ids []string
	for _, id := range x.Timbers {
		if t := f.Timber(id); t != nil {
			for _, j := range f.JointsOf(t) {
				ids = append(ids, j.ID)
			}
		}
	}
	return ids
}

// stopNote is what stands beside a bore or a peg of a joint under finding n.
func stopNote(n int) string { return fmt.Sprintf("DO NOT BORE – finding %d", n) }
