package check_test

import (
	"fmt"
	"strings"
	"testing"

	"pegwright/geom/finding"
	"pegwright/samples/trial"
)

// Of very many timbers in one place the first two hundred pairs are named, and
// it is said that there are more.
func TestACrowdIsNotListedWhole(t *testing.T) {
	var b strings.Builder
	b.WriteString("frame: Crowd\nunits: mm\ntimbers:\n")
	for i := range 40 { // 780 pairs
		fmt.Fprintf(&b, "  t%d: {role: post, section: 150 x 150, from: [%d, 0, 0], to: [%d, 0, 2000]}\n", i, i, i)
	}
	f := trial.Frame(t, "crowd", b.String())
	named, more := 0, false
	for _, x := range proofs(f) {
		if x.Rule == "overlap" && x.Severity == finding.Stop {
			named++
			more = more || strings.Contains(x.Text, "200 and more pairs")
		}
	}
	if !more || named > 201 {
		t.Errorf("%d findings, more said: %v", named, more)
	}
}
