package trial

import (
	"math/rand/v2"
	"os"
	"slices"
	"strconv"
	"strings"

	"pegwright/samples"
)

// Count is how many random frames are drawn: PEGWRIGHT_FRAMES, or a few.
func Count(few int) int {
	if n, err := strconv.Atoi(os.Getenv("PEGWRIGHT_FRAMES")); err == nil {
		return n
	}
	return few
}

// Drawn names the frames that are drawn and checked, for Sample: where
// PEGWRIGHT_FRAMES is set every sample and for each three frames that it asks for
// one drawn by lot, no more than mostLots, else the four samples that differ most in
// roof, units and paper.
func Drawn() []string {
	if Count(0) == 0 {
		return []string{samples.Default(), "cart-barn", "fair-shelter", "vine-arbour"}
	}
	out := slices.Clone(samples.Names())
	most := len(out) + min(Count(0)/3, mostLots)
	for i := 0; len(out) < most; i++ {
		name := lots + strconv.Itoa(i)
		if f, faults := Solve(name, lot(i)); f != nil && len(faults) == 0 {
			out = append(out, name)
		}
	}
	return out
}

// mostLots is how many frames drawn by lot Drawn names at most: each is solved anew
// wherever it is asked for.
const mostLots = 40

// lots begins the names of the frames drawn by lot.
const lots = "lot-"

// lot describes the building that is drawn by lot with a number.
func lot(i int) string { return Building(rand.New(rand.NewPCG(uint64(i), 20261128))) }

// named returns the description of a sample, or of a building drawn by lot.
func named(name string) (src string, ok bool) {
	if n, is := strings.CutPrefix(name, lots); is {
		i, err := strconv.Atoi(n)
		return lot(i), err == nil
	}
	text, ok := samples.Source(name)
	return string(text), ok
}
