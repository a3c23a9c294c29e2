package geom

import (
	"math"
	"testing"

	"pegwright/geom/vec"
)

// The eight points of the compass rose, 45° apart, turning from east to north.
func TestCompass(t *testing.T) {
	for i, want := range []string{"east", "northeast", "north", "northwest", "west", "southwest", "south", "southeast"} {
		y, x := math.Sincos(float64(i) * math.Pi / 4)
		if got := Compass(vec.V{X: x, Y: y, Z: 0.5}); got != want {
			t.Errorf("%d°: %s, want %s", 45*i, got, want)
		}
		for z, words := range map[float64]string{0: "to the ", 1: "up and to the ", -1: "down and to the "} {
			if got := Heading(vec.V{X: x, Y: y, Z: z}.Unit()); got != words+want {
				t.Errorf("%d°, %v up: %s", 45*i, z, got)
			}
		}
	}
	for z, want := range map[float64]string{1: "straight up", -1: "straight down"} {
		if got := Heading(vec.V{Z: z}); got != want || Compass(vec.V{Z: z}) != "" {
			t.Errorf("%v: %s", z, got)
		}
	}
}
