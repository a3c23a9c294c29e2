package setout

import (
	"math"
	"slices"
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

// Named says at the longest of some dimensions what they measure.
func Named(list []Stretch, what string) []Stretch {
	best := -1
	for i, d := range list {
		if best < 0 || d.To-d.From > list[best].To-list[best].From+1e-6 {
			best = i
		}
	}
	if best >= 0 {
		list[best].What = what
	}
	return list
}

// EqualSteps returns the distances between neighbouring places, equal ones that
// follow each other at once.
func EqualSteps(at []float64) []Stretch {
	at = slices.Sorted(slices.Values(at))
	var out []Stretch
	for i := 1; i < len(at); i++ {
		lo, hi := at[i-1], at[i]
		if hi-lo < 1 {
			continue
		}
		if k := len(out) - 1; k >= 0 && math.Abs((out[k].To-out[k].From)/float64(out[k].N)-(hi-lo)) < 0.1 && math.Abs(out[k].To-lo) < 1 {
			out[k].To, out[k].N = hi, out[k].N+1
			continue
		}
		out = append(out, Stretch{From: lo, To: hi, N: 1})
	}
	return out
}
