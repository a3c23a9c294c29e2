package solve

import (
	"fmt"
	"strings"
)

// name gives every timber its number and every joint its mark.
func (s *solver) name() {
	for i, t := range s.Frame.Timbers {
		t.Mark = fmt.Sprint(i + 1)
	}
	for i, j := range s.Frame.Joints {
		j.Mark = strokes(i + 1)
	}
}

// strokes writes n (1 or more) in joiner's strokes as cut with a chisel:
// additive only, so that VIIII is nine and nothing reads otherwise upside
// down than as itself. Fifties and hundreds keep long frames short.
func strokes(n int) string {
	var b strings.Builder
	for _, step := range []struct {
		v int
		s string
	}{{100, "C"}, {50, "L"}, {10, "X"}, {5, "V"}, {1, "I"}} {
		for n >= step.v {
			b.WriteString(step.s)
			n -= step.v
		}
	}
	return b.String()
}
