package view

import "pegwright/geom/vec"

// Zigzags of a break line, millimetres on paper: how far apart, how high, and
// how wide one is.
const (
	zigEvery = 60.0
	zigHigh  = 1.6
	zigWide  = 1.8
	zigLeast = 5.0 // shorter lines are drawn straight
)

// Zigzag returns the break line from a to b: straight, with a zigzag in the
// middle of each of its equal parts (ISO 128-2, continuous narrow with
// zigzags).
func Zigzag(a, b vec.P) []vec.P {
	l := a.Dist(b)
	if l < zigLeast {
		return []vec.P{a, b}
	}
	n := int(l/zigEvery) + 1
	d := b.Sub(a).Unit()
	up := d.Left()
	pts := []vec.P{a}
	for i := range n {
		m := a.Lerp(b, (float64(i)+0.5)/float64(n))
		pts = append(pts,
			m.Sub(d.Mul(zigWide/2)),
			m.Sub(d.Mul(zigWide/4)).Add(up.Mul(zigHigh)),
			m.Add(d.Mul(zigWide/4)).Sub(up.Mul(zigHigh)),
			m.Add(d.Mul(zigWide/2)))
	}
	return append(pts, b)
}
