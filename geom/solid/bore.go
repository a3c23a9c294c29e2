package solid

import (
	"math"

	"pegwright/geom/vec"
)

// boreSides is the number of sides of the prism that stands for a bore.
const boreSides = 32

// Bore is a round hole: the axis from one end to the other and the diameter,
// in mm.
type Bore struct {
	From, To vec.V
	Diameter float64
}

// Prism returns the bore as a prism of 32 sides with the bore's own cross
// section area: circumradius r·√(2π/(32 sin(2π/32))), because a regular n-gon
// of circumradius R has the area n/2·R²·sin(2π/n). It is empty when the bore
// has no length or diameter.
func (h Bore) Prism() Convex {
	axis := h.To.Sub(h.From)
	if axis.Len() <= Snap || h.Diameter <= Snap {
		return Convex{}
	}
	n := axis.Unit()
	x := across(n)
	y := n.Cross(x)
	step := 2 * math.Pi / boreSides
	r := h.Diameter / 2 * math.Sqrt(step/math.Sin(step))
	c := Convex{V: make([]vec.V, 0, 2*boreSides), Faces: make([]Face, 0, boreSides+2)}
	loops := make([]int, 6*boreSides)
	start, end, sides := loops[:boreSides:boreSides], loops[boreSides:2*boreSides:2*boreSides], loops[2*boreSides:]
	for i := range boreSides {
		a := float64(i) * step
		rim := x.Mul(r * math.Cos(a)).Add(y.Mul(r * math.Sin(a)))
		c.V = append(c.V, h.From.Add(rim), h.To.Add(rim))
		end[i], start[boreSides-1-i] = 2*i+1, 2*i
	}
	for i := range boreSides {
		j := (i + 1) % boreSides
		mid := (float64(i) + 0.5) * step
		out := x.Mul(math.Cos(mid)).Add(y.Mul(math.Sin(mid)))
		loop := append(sides[4*i:4*i:4*i+4], 2*i, 2*j, 2*j+1, 2*i+1)
		c.Faces = append(c.Faces, Face{Loop: loop, Plane: PlaneAt(c.V[2*i], out)})
	}
	c.Faces = append(c.Faces, Face{Loop: start, Plane: PlaneAt(h.From, n.Neg())}, Face{Loop: end, Plane: PlaneAt(h.To, n)})
	return c
}

// BoreVolume returns the volume (mm³) that a bore of diameter dia from one
// point to another takes from cells that earlier bores have not taken already.
// Bores count as prisms of their own cross section area (see Bore.Prism).
func BoreVolume(cells []Convex, from, to vec.V, dia float64, earlier []Bore) float64 {
	prism := Bore{from, to, dia}.Prism()
	if prism.Empty() {
		return 0
	}
	var before []Convex
	for _, e := range earlier {
		if far(e, from, to, dia) {
			continue
		}
		if p := e.Prism(); !p.Empty() && !apart(prism, p) && !apart(p, prism) {
			before = append(before, p)
		}
	}
	var vol float64
	var rest, next []Convex
	for _, c := range cells {
		if apart(prism, c) {
			continue
		}
		rest = append(rest[:0], Common(prism, c))
		for _, p := range before {
			next = next[:0]
			for _, r := range rest {
				next, _ = less(next, r, p)
			}
			rest, next = next, rest
		}
		for _, r := range rest {
			vol += r.Volume()
		}
	}
	return vol
}

// far reports whether the boxes round two bores lie apart.
func far(e Bore, from, to vec.V, dia float64) bool {
	r := (e.Diameter + dia) / 2 * 1.01 // a prism's corners stand out of its circle
	off := func(a, b, c, d float64) bool { return min(a, b)-r > max(c, d) || min(c, d)-r > max(a, b) }
	return off(from.X, to.X, e.From.X, e.To.X) || off(from.Y, to.Y, e.From.Y, e.To.Y) || off(from.Z, to.Z, e.From.Z, e.To.Z)
}
