package trial

import (
	"os"
	"strconv"

	"pegwright/samples"
)

// Count is how many random frames are drawn: PEGWRIGHT_FRAMES, or a few.
func Count(few int) int {
	if n, err := strconv.Atoi(os.Getenv("PEGWRIGHT_FRAMES")); err == nil {
		return n
	}
	return few
}

// Drawn names the samples that are drawn and checked: every one where
// PEGWRIGHT_FRAMES is set, else four that differ most in roof, units and paper.
func Drawn() []string {
	if Count(0) > 0 {
		return samples.Names()
	}
	return []string{samples.Default(), "cart-barn", "fair-shelter", "vine-arbour"}
}
