package draw

import (
	"math"
	"strconv"
	"strings"

	"pegwright/geom/vec"
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
	var room [32]byte
	return string(AppendNumber(room[:0], x, places))
}

// AppendNumber appends to b what Number returns.
func AppendNumber(b []byte, x float64, places int) []byte {
	n := math.Round(x * math.Pow10(places))
	if !(math.Abs(n) < 1<<53) || places < 0 || places > 9 {
		return append(b, long(x, places)...)
	}
	if n < 0 {
		b, n = append(b, '-'), -n
	}
	u := uint64(n) // exact, so its figures are those of the rounded number
	for places > 0 && u%10 == 0 {
		u /= 10
		places--
	}
	var room [24]byte // the 16 figures of 1<<53, or a figure, a point and 9 of them
	at := len(room)
	if places > 0 {
		for range places {
			at--
			room[at] = '0' + byte(u%10)
			u /= 10
		}
		at--
		room[at] = '.'
	}
	for first := true; first || u > 0; first = false {
		at--
		room[at] = '0' + byte(u%10)
		u /= 10
	}
	return append(b, room[at:]...)
}

// long writes numbers of more than 15 figures, and what is no number.
func long(x float64, places int) string {
	s := strconv.FormatFloat(Round(x, places), 'f', places, 64)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	if s == "-0" {
		return "0"
	}
	return s
}

// Tenths writes a length in mm to a tenth, for telling whether two are the same.
// Lengths in halves of a tenth are common, so the borders lie beside them.
func Tenths(x float64) string {
	var room [32]byte
	return string(AppendTenths(room[:0], x))
}

// AppendTenths appends to b what Tenths returns.
func AppendTenths(b []byte, x float64) []byte {
	return AppendNumber(b, math.Round(float64(x*10)+0.037)/10, 1)
}

// Direction writes a direction to three decimals, for telling whether two are the
// same.
func Direction(d vec.V) string {
	return Number(d.X, 3) + "," + Number(d.Y, 3) + "," + Number(d.Z, 3)
}
