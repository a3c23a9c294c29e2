package building_test

import (
	"slices"
	"strings"
	"testing"

	"pegwright/geom/vec"
	"pegwright/samples/trial"
)

// The reading hut asks for joists at most 24 in apart between their middles.
// Middles are found from the solid corners of the blanks, not from the generator;
// a joist that was moved aside is told with both its places.
func TestJoistsKeepTheSpacingAskedFor(t *testing.T) {
	f := trial.Sample(t, "reading-hut")
	for _, c := range []struct {
		id   string
		side vec.V
	}{{"joist-", vec.V{X: 1}}, {"loft-joist-", vec.V{Y: 1}}} {
		var mid []float64
		for _, tm := range f.Timbers {
			if strings.HasPrefix(tm.ID, c.id) {
				lo, hi := tm.Blank.Moved(tm.Place).Extent(c.side)
				mid = append(mid, (lo+hi)/2)
			}
		}
		slices.Sort(mid)
		if len(mid) < 2 {
			t.Fatalf("%d joists %s", len(mid), c.id)
		}
		for i := 1; i < len(mid); i++ {
			if d := mid[i] - mid[i-1]; d > 24*inch+0.05 {
				t.Errorf("%s: %.3f in between middles", c.id, d/inch)
			}
		}
	}
	for _, n := range f.Notes {
		if strings.Contains(n.Text, "moved aside") && !strings.Contains(n.Text, " from ") {
			t.Errorf("moved from where to where? %s", n.Text)
		}
	}
}
