package setout

import (
	"math"
	"sort"
)

// Stretch asks for a dimension along a view.
type Stretch struct {
	// From and To are the coordinates of its ends, frame mm.
	From, To float64
	// N is how many equal spaces it measures at once; one where it is less than 2.
	N int
	// What says what is measured, "" for grid lines and over all.
	What string
}

// GridDims returns the dimensions between neighbouring grid lines, between the
// outermost of more than two, and from lo to hi where these lie elsewhere, frame
// mm.
func GridDims(lines []Line, lo, hi float64) []Stretch {
	var out []Stretch
	at := []float64{}
	for _, l := range lines {
		at = append(at, l.At)
	}
	sort.Float64s(at)
	for i := 1; i < len(at); i++ {
		out = append(out, Stretch{From: at[i-1], To: at[i]})
	}
	if n := len(at); n > 2 {
		out = append(out, Stretch{From: at[0], To: at[n-1]})
	}
	if n := len(at); n == 0 || math.Abs(at[0]-lo) > 1 || math.Abs(at[n-1]-hi) > 1 {
		out = append(out, Stretch{From: lo, To: hi})
	}
	return out
}
