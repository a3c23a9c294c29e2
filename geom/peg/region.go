package peg

import (
	"math"

	"pegwright/geom/vec"
)

// half is the half-plane n·p <= d, n a unit vector.
type half struct {
	n vec.P
	d float64
}

// over returns how far p lies outside the half-plane, below zero inside.
func (h half) over(p vec.P) float64 { return h.n.Dot(p) - h.d }

// thin is the area, in mm2, under which a region counts as empty.
const thin = 1e-6

// boxRound returns the square of half side r round c, counter-clockwise.
func boxRound(c vec.P, r float64) []vec.P {
	return []vec.P{
		{X: c.X - r, Y: c.Y - r}, {X: c.X + r, Y: c.Y - r},
		{X: c.X + r, Y: c.Y + r}, {X: c.X - r, Y: c.Y + r},
	}
}

// sides returns the half-planes of a counter-clockwise convex polygon.
func sides(poly []vec.P) []half {
	out := make([]half, len(poly))
	for i, p := range poly {
		n := poly[(i+1)%len(poly)].Sub(p).Unit().Left().Mul(-1)
		out[i] = half{n, n.Dot(p)}
	}
	return out
}

// region returns the part of the convex polygon box inside all half-planes,
// counter-clockwise, or nil when nothing with an area is left.
func region(box []vec.P, halves []half) []vec.P {
	poly := box
	for _, h := range halves {
		poly = cut(poly, h)
	}
	if area(poly) < thin {
		return nil
	}
	return poly
}

// cut keeps the part of a convex polygon inside h.
func cut(poly []vec.P, h half) []vec.P {
	var out []vec.P
	for i, p := range poly {
		q := poly[(i+1)%len(poly)]
		f, g := h.over(p), h.over(q)
		if f <= 0 {
			out = append(out, p)
		}
		if (f < 0 && g > 0) || (f > 0 && g < 0) {
			out = append(out, p.Lerp(q, f/(f-g)))
		}
	}
	return out
}

// area returns the area of a counter-clockwise polygon, 0 for fewer than three
// corners.
func area(poly []vec.P) float64 {
	if len(poly) < 3 {
		return 0
	}
	sum := 0.0
	for i := 1; i+1 < len(poly); i++ {
		sum += poly[i].Sub(poly[0]).Cross(poly[i+1].Sub(poly[0]))
	}
	return sum / 2
}

// inscribed returns centre and radius of the largest circle inside all
// half-planes, which must bound a region that is not empty. The best circle
// touches three of them, so every three are tried; where it can slide, the mean
// of the touching-three positions is taken, which is as large.
func inscribed(halves []half) (vec.P, float64) {
	var found []vec.P
	best := math.Inf(-1)
	for i := range halves {
		for j := i + 1; j < len(halves); j++ {
			for k := j + 1; k < len(halves); k++ {
				c, r, ok := touching(halves[i], halves[j], halves[k])
				if !ok || r < best-1e-7 || !fits(halves, c, r) {
					continue
				}
				if r > best+1e-7 {
					found = nil
				}
				best = math.Max(best, r)
				found = append(found, c)
			}
		}
	}
	if len(found) == 0 {
		return vec.P{}, 0
	}
	return mean(found), best
}

// touching returns the circle inside three half-planes that touches all their
// edges: n·c + r = d for each.
func touching(a, b, c half) (centre vec.P, r float64, ok bool) {
	u, v := b.n.Sub(a.n), c.n.Sub(a.n)
	s, t := b.d-a.d, c.d-a.d
	det := u.Cross(v)
	if math.Abs(det) < 1e-9 {
		return vec.P{}, 0, false
	}
	centre = vec.P{
		X: (float64(s*v.Y) - float64(t*u.Y)) / det,
		Y: (float64(u.X*t) - float64(v.X*s)) / det,
	}
	return centre, a.d - a.n.Dot(centre), true
}

// fits reports whether the circle lies inside all half-planes, to 1e-6 mm.
func fits(halves []half, c vec.P, r float64) bool {
	for _, h := range halves {
		if h.over(c)+r > 1e-6 {
			return false
		}
	}
	return true
}

// mean is the middle of points.
func mean(points []vec.P) vec.P {
	var sum vec.P
	for _, p := range points {
		sum = sum.Add(p)
	}
	return sum.Mul(1 / float64(len(points)))
}
