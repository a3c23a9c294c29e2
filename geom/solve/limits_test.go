package solve_test

import (
	"fmt"
	"strings"
	"testing"

	"pegwright/samples/trial"
)

// many is a frame of n posts, each step millimetres beside the last.
func many(n int, step string) string {
	var b strings.Builder
	b.WriteString("frame: Many\nunits: mm\ntimbers:\n")
	for i := range n {
		fmt.Fprintf(&b, "  t%d: {role: post, section: 150 x 150, from: [%d * %s, 0, 0], to: [%d * %s, 0, 2000]}\n", i, i, step, i, step)
	}
	return b.String()
}

// ladder is a post with n rails let into it.
func ladder(n int) string {
	var b, j strings.Builder
	b.WriteString("frame: Ladder\nunits: mm\ntimbers:\n  p: {role: post, section: 150 x 150, from: [0, 0, 0], to: [0, 0, 25000], faces: [south, west]}\n")
	for i := range n {
		fmt.Fprintf(&b, "  r%d: {role: tie, section: 40 x 40, from: [0, 150, %d], to: [0, 2000, %d], faces: [top, west]}\n", i, 300+60*i, 300+60*i)
		fmt.Fprintf(&j, "  - {kind: mortise and tenon, of: r%d, end: start, into: p}\n", i)
	}
	return b.String() + "joints:\n" + j.String()
}

// More joints in one timber than it could hold, and timbers in one heap, are
// refused before the work is begun.
func TestLimits(t *testing.T) {
	trial.RefusedSoon(t, "joints of one timber", ladder(401), "of: r400", "r400-into-p", "p has more than 400 joints")
	trial.RefusedSoon(t, "one place", many(400, "0"), "t0:", "t0", "399 other timbers lie about t0")
	trial.RefusedSoon(t, "nearly one place", many(400, "0.2"), "t0:", "t0", "in one heap")
}

// Frames that are dense, but no heap, are solved.
func TestDenseFramesAreNotRefused(t *testing.T) {
	for name, src := range map[string]string{"a palisade": many(300, "150"), "a crowd": many(60, "0")} {
		if _, faults := trial.Solve("test.yaml", src); len(faults) > 0 {
			t.Errorf("%s: %v", name, faults)
		}
	}
}
