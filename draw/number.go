package draw

import (
	"math"
	"strconv"
	"strings"
)

// Round returns x rounded half away from zero to the given decimal places
// (0 to 9), with no negative zero. Every coordinate leaves the program through
// here. NaN and infinities come back as they are.
func Round(x float64, places int) float64 {
	scale := math.Pow10(places)
	r := math.Round(x*scale) / scale
	if math.IsNaN(r) || math.IsInf(r, 0) {
		return x
	}
	return r + 0 // -0 + 0 is +0
}

// Number returns x rounded by Round, written with no exponent and no trailing
// zeros: "12.5", "0", "-3".
func Number(x float64, places int) string {
	s := strconv.FormatFloat(Round(x, places), 'f', places, 64)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	if s == "-0" {
		return "0"
	}
	return s
}
