package measure

import (
	"math"
	"strconv"
)

// Units is the system in which lengths are shown to the reader.
type Units int

// The two systems: feet and inches, or millimetres.
const (
	Imperial Units = iota
	Metric
)

// String returns "imperial" or "metric".
func (u Units) String() string { return [...]string{"imperial", "metric"}[u] }

// Format shows a length given in millimetres: feet and inches to the nearest
// 1/16 in, or whole millimetres with their unit.
func (u Units) Format(mm float64) string {
	if u == Metric {
		return Millimetres(mm, 1) + " mm"
	}
	return FeetInches(mm, 16)
}

// FormatJoint shows a length at a joint given in millimetres: feet and inches
// to the nearest 1/32 in, or half millimetres with their unit.
func (u Units) FormatJoint(mm float64) string {
	if u == Metric {
		return Millimetres(mm, 0.5) + " mm"
	}
	return FeetInches(mm, 32)
}

// Small shows a length that the steps of FormatJoint would blur: thousandths of
// an inch, or tenths of a millimetre, with their unit.
func (u Units) Small(mm float64) string {
	if u == Metric {
		return strconv.FormatFloat(mm+0, 'f', 1, 64) + " mm"
	}
	return strconv.FormatFloat(mm/25.4+0, 'f', 3, 64) + " in"
}

// Plain is Format without the word mm, for drawings that say once which unit
// they are in. Inch and foot marks stay.
func (u Units) Plain(mm float64) string {
	if u == Metric {
		return Millimetres(mm, 1)
	}
	return FeetInches(mm, 16)
}

// PlainJoint is FormatJoint without the word mm.
func (u Units) PlainJoint(mm float64) string {
	if u == Metric {
		return Millimetres(mm, 0.5)
	}
	return FeetInches(mm, 32)
}

// unshowable stands for a length that no drawing can hold: not a number,
// infinite, or beyond a million kilometres.
const unshowable = "?"

const largest = 1e12

// ties is a nudge, in steps, that lets a value which is exactly half a step
// round away from zero although its millimetres lost a last bit.
const ties = 1e-7

// steps rounds x to a whole number of steps, halves away from zero.
func steps(x float64) (int64, bool) {
	if !(math.Abs(x) < largest) {
		return 0, false
	}
	return int64(math.Round(x + math.Copysign(ties, x))), true
}

// FeetInches shows a length given in millimetres in feet, inches and a reduced
// fraction, to the nearest 1/denom in: 7'-6 1/2", and below a foot 6 1/2".
// denom is a power of two, usually 16 or 32.
func FeetInches(mm float64, denom int) string {
	n, ok := steps(mm / 25.4 * float64(denom))
	if !ok {
		return unshowable
	}
	sign, n := split(n)
	foot := int64(12 * denom)
	if n < foot {
		return sign + inches(n, int64(denom))
	}
	rest := inches(n%foot, int64(denom))
	if n%foot != 0 && n%foot < int64(denom) {
		rest = "0 " + rest // 7'-0 1/2", so that no one reads seven halves
	}
	return sign + strconv.FormatInt(n/foot, 10) + "'-" + rest
}

// Inches shows a length given in millimetres in inches and a reduced fraction,
// to the nearest 1/denom in: 90 1/2".
func Inches(mm float64, denom int) string {
	n, ok := steps(mm / 25.4 * float64(denom))
	if !ok {
		return unshowable
	}
	sign, n := split(n)
	return sign + inches(n, int64(denom))
}

// Millimetres shows a length given in millimetres to the nearest step, which
// is 1 or 0.5, without a unit: 2299, or 2299.5.
func Millimetres(mm, step float64) string {
	n, ok := steps(mm / step)
	if !ok {
		return unshowable
	}
	decimals := 0
	if step != math.Trunc(step) && n%2 != 0 {
		decimals = 1
	}
	return strconv.FormatFloat(float64(n)*step+0, 'f', decimals, 64)
}

func split(n int64) (sign string, size int64) {
	if n < 0 {
		return "-", -n
	}
	return "", n
}

// inches writes n/denom inches, n not negative.
func inches(n, denom int64) string {
	whole, part := n/denom, n%denom
	for part != 0 && part%2 == 0 {
		part, denom = part/2, denom/2
	}
	fraction := strconv.FormatInt(part, 10) + "/" + strconv.FormatInt(denom, 10)
	switch {
	case part == 0:
		return strconv.FormatInt(whole, 10) + `"`
	case whole == 0:
		return fraction + `"`
	}
	return strconv.FormatInt(whole, 10) + " " + fraction + `"`
}
