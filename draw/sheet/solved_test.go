package sheet

import (
	"os"
	"strconv"

	"pegwright/samples"
)

// frames is how many random frames are drawn: PEGWRIGHT_FRAMES, or a few.
func frames(few int) int {
	if n, err := strconv.Atoi(os.Getenv("PEGWRIGHT_FRAMES")); err == nil {
		return n
	}
	return few
}

// drawnSamples names the samples that are drawn and checked: every one where
// PEGWRIGHT_FRAMES is set, else four that differ most in roof, units and paper.
func drawnSamples() []string {
	if frames(0) > 0 {
		return samples.Names()
	}
	return []string{samples.Default(), "cart-barn", "fair-shelter", "vine-arbour"}
}
