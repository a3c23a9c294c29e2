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
	if places < 0 || places >= len(powers) {
		return append(b, long(x, places)...)
	}
	p := powers[places]
	v := float64(math.Abs(x) * float64(p))
	if !(v < 1<<32-1) {
		return append(b, long(x, places)...)
	}
	u := uint32(v)
	if v-float64(u) >= 0.5 { // exact, so that this is math.Round
		u++
	}
	if x < 0 && u > 0 {
		b = append(b, '-')
	}
	switch whole := u / p; {
	case whole < 10:
		b = append(b, '0'+byte(whole))
	case whole < 100:
		b = append(b, '0'+byte(whole/10), '0'+byte(whole%10))
	case whole < 1000:
		b = append(b, '0'+byte(whole/100), '0'+byte(whole/10%10), '0'+byte(whole%10))
	default:
		b = strconv.AppendUint(b, uint64(whole), 10)
	}
	u %= p
	if u == 0 {
		return b
	}
	for ; u%10 == 0; u /= 10 {
		places--
	}
	b = append(append(b, '.'), "000000000"[:places]...)
	for i := len(b) - 1; u > 0; u /= 10 {
		b[i] = '0' + byte(u%10)
		i--
	}
	return b
}

// powers are the powers of ten that 32 bits hold.
var powers = [...]uint32{1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9}

// long writes numbers of many figures, and what is no number.
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
