package timber

import (
	"math"
	"strings"
	"testing"

	"pegwright/samples/trial"
)

// A rafter at 9 in 12 has plumb and level cuts: level ones run at the slope's
// angle to its arris, plumb ones at the rest of a right angle (closed form: the
// arc tangent of 9/12 is 36.87°, and 90° less that is 53.13°); where two rafters
// meet at the peak one is cut at twice the slope to the other. Braces with equal
// legs have 45° alone.
func TestBevelsOfRaftersAndBraces(t *testing.T) {
	f := trial.Sample(t, "apiary-store")
	level := math.Atan2(9, 12) * 180 / math.Pi
	seen := map[string]bool{}
	for _, x := range f.Timbers {
		var want []float64
		switch {
		case x.Role == "rafter":
			want = []float64{level, 90 - level, 2 * level}
		case strings.HasPrefix(x.ID, "brace"):
			want = []float64{45}
		case x.Role == "sill" || x.Role == "tie":
			continue
		default:
			continue
		}
		for _, feat := range features(f, x) {
			for _, deg := range feat.bevel {
				ok := false
				for _, w := range want {
					ok = ok || math.Abs(deg-w) < 1e-6
				}
				if !ok {
					t.Errorf("%s: %s at %.2f°", x.ID, feat.what, deg)
				}
				seen[x.Role] = true
			}
		}
	}
	if !seen["rafter"] || !seen["brace"] {
		t.Errorf("bevels seen on %v", seen)
	}
	if got := bevelWords(f.Units, []float64{level, 90 - level}); got != "36.9° (9 in 12), 53.1°" {
		t.Errorf("written %q", got)
	}
}
