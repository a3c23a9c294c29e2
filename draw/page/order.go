package page

import (
	"cmp"
	"math"
	"slices"
)

// LeftToRight returns a copy of a list in the order of places across the paper,
// those of one place in the order given.
func LeftToRight[T any](list []T, x func(T) float64) []T {
	out := slices.Clone(list)
	slices.SortStableFunc(out, func(a, b T) int { return cmp.Compare(math.Round(x(a)*1e6), math.Round(x(b)*1e6)) })
	return out
}
