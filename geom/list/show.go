package list

import (
	"math"
	"strconv"
	"strings"

	"pegwright/geom/measure"
)

// show returns the cell as a reader sees it under its heading, units apart.
// Feet and inch marks stay: 7'-6 1/2" without them is another number.
func (t *Table) show(k kind, v any) string {
	switch x := v.(type) {
	case string:
		return x
	case int:
		return strconv.Itoa(x)
	case [2]float64:
		return t.across(x[0]) + " x " + t.across(x[1])
	case float64:
		switch k {
		case long:
			return t.Units.Plain(x)
		case fine:
			return t.Units.PlainJoint(x)
		case precise:
			return decimals(x, 3)
		case nearest:
			return decimals(x, 0)
		case money:
			return decimals(x, 2)
		}
		return decimals(x, 1)
	}
	return ""
}

// across shows a size across a timber: inches are never turned into feet.
func (t *Table) across(mm float64) string {
	if t.Units == measure.Metric {
		return measure.Millimetres(mm, 0.5)
	}
	return strings.TrimSuffix(measure.Inches(mm, 16), `"`)
}

// decimals writes x with n decimals, "?" for what is not a number, and never
// a negative zero.
func decimals(x float64, n int) string {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return "?"
	}
	s := strconv.FormatFloat(x, 'f', n, 64)
	if strings.Trim(s, "-0.") == "" {
		return strings.TrimPrefix(s, "-")
	}
	return s
}

// grouped writes a whole number with a comma at each thousand.
func grouped(n int) string {
	s := strconv.Itoa(n)
	for i := len(s) - 3; i > 0 && s[i-1] != '-'; i -= 3 {
		s = s[:i] + "," + s[i:]
	}
	return s
}

// whole rounds x to a whole number and groups it.
func whole(x float64) string {
	if math.IsNaN(x) || math.Abs(x) > 1e15 {
		return "?"
	}
	return grouped(int(math.Round(x)))
}
