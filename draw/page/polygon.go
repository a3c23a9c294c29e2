package page

import (
	"pegwright/draw"
	"pegwright/geom/vec"
)

// Within returns the part of a convex polygon inside the box.
func Within(poly []vec.P, b draw.Box) []vec.P {
	for _, side := range []struct {
		n vec.P
		d float64
	}{{vec.At(1, 0), b.Max.X}, {vec.At(-1, 0), -b.Min.X}, {vec.At(0, 1), b.Max.Y}, {vec.At(0, -1), -b.Min.Y}} {
		var out []vec.P
		for i, p := range poly {
			q := poly[(i+1)%len(poly)]
			h, g := side.n.Dot(p)-side.d, side.n.Dot(q)-side.d
			if h <= 0 {
				out = append(out, p)
			}
			if h < 0 && g > 0 || h > 0 && g < 0 {
				out = append(out, p.Lerp(q, h/(h-g)))
			}
		}
		poly = out
	}
	return poly
}
