package page

import (
	"math/rand/v2"
	"slices"
	"testing"
)

// fewest tries every way of dividing blocks over sheets and returns the fewest
// sheets, and the least that the fullest of so many can be filled.
func fewest(high []float64, first, next float64) (sheets int, share float64) {
	sheets, share = len(high)+1, 2
	for cuts := range 1 << (len(high) - 1) {
		n, worst, sum, room := 1, 0.0, 0.0, first
		for i, h := range high {
			sum += h
			worst = max(worst, sum/room)
			if cuts>>i&1 == 1 && i+1 < len(high) {
				n, sum, room = n+1, 0, next
			}
		}
		if worst <= 1+1e-9 && (n < sheets || n == sheets && worst < share) {
			sheets, share = n, worst
		}
	}
	return sheets, share
}

// Tables are broken over the fewest sheets, and so evenly that no other way of
// breaking them leaves the fullest sheet emptier: compared with all ways.
func TestBreaks(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 5))
	for range 300 {
		high := make([]float64, 2+r.IntN(9))
		for i := range high {
			high[i] = 5 + 10*r.Float64()
		}
		first := 25 + 30*r.Float64()
		next := first + 20*r.Float64()
		got := Breaks(high, first, next)
		sheets, share := fewest(high, first, next)
		full, at, room := 0.0, 0, first
		for _, n := range got {
			sum := 0.0
			for _, h := range high[at : at+n] {
				sum += h
			}
			full, at, room = max(full, sum/room), at+n, next
		}
		if at != len(high) || len(got) != sheets || full > share+1e-4 {
			t.Fatalf("%v in %g and %g: %v fills %.4f, want %d sheets and %.4f", high, first, next, got, full, sheets, share)
		}
	}
	if got := Breaks([]float64{10, 10, 10, 10}, 30, 40); !slices.Equal(got, []int{2, 2}) {
		t.Errorf("four rows where three fit: %v", got)
	}
}
