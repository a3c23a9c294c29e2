// Package measure reads and writes the lengths that framers use: feet, inches
// and fractions, millimetres and metres, arithmetic on them, sections such as
// 6 x 8, and roof pitches. Lengths are millimetres inside; 1 in = 25.4 mm
// exactly (NIST SP 811).
package measure

// Unit is the unit that a bare number takes.
type Unit int

// The four units in which a description may be written.
const (
	Inch Unit = iota
	Foot
	Millimetre
	Metre
)

// MM returns the length of one unit in millimetres (NIST SP 811: 1 in = 25.4
// mm and 1 ft = 304.8 mm, both exact).
func (u Unit) MM() float64 { return [...]float64{25.4, 304.8, 1, 1000}[u] }

// String returns "in", "ft", "mm" or "m".
func (u Unit) String() string { return [...]string{"in", "ft", "mm", "m"}[u] }

// Units returns the system in which lengths are shown when a description is
// written in u.
func (u Unit) Units() Units {
	if u == Inch || u == Foot {
		return Imperial
	}
	return Metric
}

// Plural returns "inches", "feet", "millimetres" or "metres".
func (u Unit) Plural() string { return [...]string{"inches", "feet", "millimetres", "metres"}[u] }

// ParseUnit reads in, ft, mm or m, and the longer spellings of them.
func ParseUnit(s string) (Unit, bool) {
	switch s {
	case "in", "inch", "inches":
		return Inch, true
	case "ft", "foot", "feet":
		return Foot, true
	case "mm", "millimetre", "millimetres", "millimeter", "millimeters":
		return Millimetre, true
	case "m", "metre", "metres", "meter", "meters":
		return Metre, true
	}
	return 0, false
}
