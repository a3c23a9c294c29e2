package scene

import (
	"math"

	"pegwright/geom"
	"pegwright/geom/vec"
)

// BevelOf returns at what angles to the arris, in degrees, a cut's planes run
// over the side faces where they are neither along the timber nor square to it:
// what a bevel gauge is set to. Each angle comes once, in the order of the cut's
// faces.
func BevelOf(t *geom.Timber, c *geom.Cut) []float64 {
	var out []float64
	for _, face := range c.Solid.Faces {
		var loop []vec.V
		for _, i := range face.Loop {
			loop = append(loop, c.Solid.V[i])
		}
		n := normalOf(loop)
		across := math.Hypot(n.Y, n.Z)
		if math.Abs(n.X) < 1e-4 || across < 1e-4 || min(math.Abs(n.Y), math.Abs(n.Z)) > 1e-4 || !inWood(t, loop) {
			continue
		}
		deg := math.Atan2(math.Abs(n.X), across) * 180 / math.Pi
		said := false
		for _, d := range out {
			said = said || math.Abs(d-deg) < 0.05
		}
		if !said {
			out = append(out, deg)
		}
	}
	return out
}

// normalOf returns the unit normal of a plane loop (Newell's sum).
func normalOf(loop []vec.V) vec.V {
	var n vec.V
	for i, a := range loop {
		n = n.Add(a.Cross(loop[(i+1)%len(loop)]))
	}
	if n.Len() < 1e-9 {
		return vec.V{}
	}
	return n.Unit()
}

// inWood reports whether some of a convex loop lies within the timber's blank:
// points on the lines from its middle to its corners are tried.
func inWood(t *geom.Timber, loop []vec.V) bool {
	y, z := t.BlankSize()
	m := vec.Middle(loop)
	for i, a := range loop {
		for _, end := range []vec.V{a, a.Lerp(loop[(i+1)%len(loop)], 0.5)} {
			for k := range 40 {
				p := m.Lerp(end, float64(k)/40)
				if p.X > 0.5 && p.X < t.Length-0.5 && p.Y > 0.5 && p.Y < y-0.5 && p.Z > 0.5 && p.Z < z-0.5 {
					return true
				}
			}
		}
	}
	return false
}
