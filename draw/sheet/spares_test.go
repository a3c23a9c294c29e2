package sheet

import (
	"fmt"
	"strings"
	"testing"

	"pegwright/geom"
	"pegwright/geom/list"
	"pegwright/samples"
	"pegwright/samples/trial"
)

// The pegs of the cover with their spares are those of the list of pegs, size by
// size, and those that the joints take, counted here.
func TestCoverAndListAgreeOnPegs(t *testing.T) {
	for _, name := range samples.Names() {
		f := trial.Sample(t, name)
		listed := map[string]string{}
		counts := map[string][2]int{}
		l := list.Pegs(f, nil)
		at := map[string]int{}
		for i, c := range l.Columns {
			at[c.Name] = i
		}
		for _, r := range l.Rows {
			var need, spare int
			fmt.Sscan(r[at["needed"]], &need)
			fmt.Sscan(r[at["spares"]], &spare)
			size := "pegs Ø " + r[at["bore"]] + " x " + r[at["length"]]
			n := counts[size]
			counts[size] = [2]int{n[0] + need, n[1] + spare}
		}
		total := 0
		for size, n := range counts {
			listed[size], total = fmt.Sprintf("%d + %d spare", n[0], n[1]), total+n[0]
		}
		if n := pegsOf(f); n != total {
			t.Errorf("%s: %d pegs are listed, the joints take %d", name, total, n)
		}
		seen := 0
		for _, x := range ofFrame(f, nil) {
			if !strings.HasPrefix(x.Name, "pegs ") {
				continue
			}
			seen++
			if x.Value != listed[x.Name] {
				t.Errorf("%s: cover %s %q, list %q", name, x.Name, x.Value, listed[x.Name])
			}
		}
		if seen != len(listed) {
			t.Errorf("%s: %d sizes on the cover, %d in the list", name, seen, len(listed))
		}
	}
}

func pegsOf(f *geom.Frame) int {
	n := 0
	for _, j := range f.Joints {
		n += len(j.Pegs)
	}
	return n
}
