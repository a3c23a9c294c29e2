package plan

import (
	"fmt"
	"strings"
	"testing"

	"pegwright/samples/trial"
)

// A post with more heights than a lane holds comes to an end, and every rail is
// named on a few sheets.
func TestAViewOfVeryManyHeightsEnds(t *testing.T) {
	var b strings.Builder
	const n = 60
	b.WriteString("frame: Ladder\nunits: mm\ntimbers:\n  p: {role: post, section: 150 x 150, from: [0, 0, 0], to: [0, 0, 25000], faces: [south, west]}\n")
	for i := range n {
		fmt.Fprintf(&b, "  rung-%d: {role: tie, section: 60 x 60, from: [0, 150, %d], to: [0, 2000, %d], faces: [top, west]}\n", i, 300+100*i, 300+100*i)
	}
	f := trial.Frame(t, "ladder", b.String())
	sheets := Of(f).Sheets()
	var all strings.Builder
	for _, s := range sheets {
		all.WriteString(s.Dump())
	}
	if len(sheets) > 40 {
		t.Errorf("%d sheets", len(sheets))
	}
	for i := range n {
		if !strings.Contains(all.String(), fmt.Sprintf("rung-%d", i)) {
			t.Errorf("rung-%d is on no sheet", i)
		}
	}
}
