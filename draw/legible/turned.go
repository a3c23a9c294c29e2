package legible

import (
	"math"

	"pegwright/draw"
	"pegwright/draw/font"
	"pegwright/geom/vec"
)

// slip is how far the clear room of one text may reach into that of another, mm:
// less than the width of the narrowest line.
const slip = 0.05

// corners returns the corners on paper of the box of a text, turned as it is. The
// checker turns it by itself, so that a fault in font.Turned does not pass.
func corners(t *draw.Text) []vec.P {
	b := font.Box(t)
	u := vec.P{X: math.Cos(t.Rot), Y: math.Sin(t.Rot)}
	out := []vec.P{b.Min, {X: b.Max.X, Y: b.Min.Y}, b.Max, {X: b.Min.X, Y: b.Max.Y}}
	for i, p := range out {
		d := p.Sub(t.At)
		out[i] = t.At.Add(u.Mul(d.X)).Add(u.Left().Mul(d.Y))
	}
	return out
}

// upright carries a point on paper into the axes of a text, in which its box is
// font.Box.
func upright(t *draw.Text, p vec.P) vec.P {
	u := vec.P{X: math.Cos(t.Rot), Y: math.Sin(t.Rot)}
	d := p.Sub(t.At)
	return t.At.Add(vec.P{X: d.Dot(u), Y: d.Dot(u.Left())})
}

// overlap returns how far two texts must be moved to part their boxes, each
// turned as its text is; it is negative for boxes that are apart. Two convex
// figures are apart if they are so along one of the normals of their sides
// (separating axes; for boxes that is the axes of the two texts).
func overlap(a, b *draw.Text) float64 {
	least := math.Inf(1)
	p, q := corners(a), corners(b)
	for _, rot := range []float64{a.Rot, b.Rot} {
		u := vec.P{X: math.Cos(rot), Y: math.Sin(rot)}
		for _, axis := range []vec.P{u, u.Left()} {
			p0, p1 := extent(p, axis)
			q0, q1 := extent(q, axis)
			least = min(least, p1-q0, q1-p0)
		}
	}
	return least
}

// extent returns how far points reach along an axis.
func extent(pts []vec.P, axis vec.P) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, p := range pts {
		lo, hi = min(lo, p.Dot(axis)), max(hi, p.Dot(axis))
	}
	return lo, hi
}
