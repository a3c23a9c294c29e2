package setout

import (
	"math"
	"testing"

	"pegwright/geom/measure"
)

// Slopes by the tangent: tan 30° = 1/√3; tan 15° = 2 - √3; 3-4-5.
func TestSlope(t *testing.T) {
	for _, c := range []struct {
		u    measure.Units
		deg  float64
		want string
	}{
		{measure.Imperial, 45, "12 in 12"},
		{measure.Imperial, math.Atan2(3, 4) * 180 / math.Pi, "9 in 12"},
		{measure.Imperial, 30, "6.93 in 12"},
		{measure.Imperial, 75, "3.22 in 12 off square"},
		{measure.Metric, 30, "57.7 per 100"},
		{measure.Metric, 45, "100 per 100"},
		{measure.Metric, 75, "26.8 per 100 off square"},
	} {
		if got := Slope(c.u, c.deg); got != c.want {
			t.Errorf("%v°: %q, want %q", c.deg, got, c.want)
		}
	}
}
