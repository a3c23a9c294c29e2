// Package vec holds the small vector vocabulary that every stage shares:
// three-dimensional vectors for wood, two-dimensional ones for paper, and the
// rigid placement that carries a timber's own axes into the frame's.
//
// Lengths are millimetres. Every product is converted to float64 explicitly so
// that a compiler may not fuse it with the sum that follows: the same input
// then gives the same bytes on every architecture.
package vec

import "math"

// V is a point or a direction in space, in millimetres (directions are
// unitless).
type V struct{ X, Y, Z float64 }

// Add returns a + b.
func (a V) Add(b V) V { return V{a.X + b.X, a.Y + b.Y, a.Z + b.Z} }

// Sub returns a - b.
func (a V) Sub(b V) V { return V{a.X - b.X, a.Y - b.Y, a.Z - b.Z} }

// Mul returns a scaled by s.
func (a V) Mul(s float64) V { return V{float64(a.X * s), float64(a.Y * s), float64(a.Z * s)} }

// Neg returns -a, with no negative zeros.
func (a V) Neg() V { return V{0 - a.X, 0 - a.Y, 0 - a.Z} }

// Dot returns the scalar product of a and b.
func (a V) Dot(b V) float64 {
	return float64(a.X*b.X) + float64(a.Y*b.Y) + float64(a.Z*b.Z)
}

// Cross returns the vector product a × b (right-handed).
func (a V) Cross(b V) V {
	return V{
		float64(a.Y*b.Z) - float64(a.Z*b.Y),
		float64(a.Z*b.X) - float64(a.X*b.Z),
		float64(a.X*b.Y) - float64(a.Y*b.X),
	}
}

// Len returns the length of a.
func (a V) Len() float64 { return math.Sqrt(a.Dot(a)) }

// Unit returns a scaled to length 1. The zero vector is returned unchanged.
func (a V) Unit() V {
	l := a.Len()
	if l == 0 {
		return a
	}
	return V{a.X / l, a.Y / l, a.Z / l}
}

// Lerp returns the point a + t(b-a).
func (a V) Lerp(b V, t float64) V { return a.Add(b.Sub(a).Mul(t)) }

// Dist returns the distance between a and b.
func (a V) Dist(b V) float64 { return a.Sub(b).Len() }

// Before orders points along x, then y, then z; places within 1/10 mm of each other
// along an axis count as one.
func (a V) Before(b V) bool {
	const one = 0.1 // mm
	switch {
	case math.Abs(a.X-b.X) > one:
		return a.X < b.X
	case math.Abs(a.Y-b.Y) > one:
		return a.Y < b.Y
	case math.Abs(a.Z-b.Z) > one:
		return a.Z < b.Z
	}
	return false
}

// Middle returns the mean of some points, one or more.
func Middle(pts []V) V {
	var m V
	for _, p := range pts {
		m = m.Add(p)
	}
	return m.Mul(1 / float64(len(pts)))
}

// Finite reports whether no coordinate is NaN or infinite.
func (a V) Finite() bool {
	s := a.X + a.Y + a.Z
	return !math.IsNaN(s) && !math.IsInf(s, 0)
}

// P is a point or a direction on paper or in a plane, in millimetres, y up.
type P struct{ X, Y float64 }

// At returns the point at x and y.
func At(x, y float64) P { return P{X: x, Y: y} }

// Add returns a + b.
func (a P) Add(b P) P { return P{a.X + b.X, a.Y + b.Y} }

// Sub returns a - b.
func (a P) Sub(b P) P { return P{a.X - b.X, a.Y - b.Y} }

// Mul returns a scaled by s.
func (a P) Mul(s float64) P { return P{float64(a.X * s), float64(a.Y * s)} }

// Dot returns the scalar product of a and b.
func (a P) Dot(b P) float64 { return float64(a.X*b.X) + float64(a.Y*b.Y) }

// Cross returns the z component of a × b, positive when b lies to the left of a.
func (a P) Cross(b P) float64 { return float64(a.X*b.Y) - float64(a.Y*b.X) }

// Len returns the length of a.
func (a P) Len() float64 { return math.Hypot(a.X, a.Y) }

// Unit returns a scaled to length 1. The zero vector is returned unchanged.
func (a P) Unit() P {
	l := a.Len()
	if l == 0 {
		return a
	}
	return P{a.X / l, a.Y / l}
}

// Left returns a turned a quarter turn counter-clockwise.
func (a P) Left() P { return P{0 - a.Y, a.X} }

// Lerp returns the point a + t(b-a).
func (a P) Lerp(b P, t float64) P { return a.Add(b.Sub(a).Mul(t)) }

// Dist returns the distance between a and b.
func (a P) Dist(b P) float64 { return a.Sub(b).Len() }

// Placement carries a timber's own axes into frame axes. X, Y and Z are the
// timber's unit axes written in frame axes (right-handed, X × Y = Z) and O is
// the frame position of the timber's origin.
type Placement struct{ X, Y, Z, O V }

// Identity is the placement that changes nothing.
var Identity = Placement{X: V{1, 0, 0}, Y: V{0, 1, 0}, Z: V{0, 0, 1}}

// Out carries the timber point p into frame axes.
func (pl Placement) Out(p V) V { return pl.O.Add(pl.OutDir(p)) }

// OutDir carries the timber direction d into frame axes.
func (pl Placement) OutDir(d V) V {
	return pl.X.Mul(d.X).Add(pl.Y.Mul(d.Y)).Add(pl.Z.Mul(d.Z))
}

// In carries the frame point p into timber axes.
func (pl Placement) In(p V) V { return pl.InDir(p.Sub(pl.O)) }

// InDir carries the frame direction d into timber axes.
func (pl Placement) InDir(d V) V { return V{pl.X.Dot(d), pl.Y.Dot(d), pl.Z.Dot(d)} }

// Then returns the placement that applies pl first and outer second.
func (pl Placement) Then(outer Placement) Placement {
	return Placement{outer.OutDir(pl.X), outer.OutDir(pl.Y), outer.OutDir(pl.Z), outer.Out(pl.O)}
}

// Inverse returns the placement that undoes pl.
func (pl Placement) Inverse() Placement {
	return Placement{
		X: V{pl.X.X, pl.Y.X, pl.Z.X},
		Y: V{pl.X.Y, pl.Y.Y, pl.Z.Y},
		Z: V{pl.X.Z, pl.Y.Z, pl.Z.Z},
		O: pl.InDir(pl.O.Neg()),
	}
}
