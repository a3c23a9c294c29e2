// Package solid is the kernel: convex volumes and timbers made of convex
// cells. Framers only ever remove wood, so the only operation is to subtract a
// convex cut from a body; everything a drawing needs (volume, centroid,
// boundary polygons, true edges, sections) is computed from the cells.
//
// All lengths are millimetres. Planes are the truth: a face lies exactly on
// its plane and vertices closer than Snap are one.
package solid

import (
	"math"
	"slices"

	"pegwright/geom/vec"
)

// Snap is the distance under which two vertices, or a vertex and a plane, are
// taken to coincide (1e-6 mm, a thousandth of the rounding of a drawing).
const Snap = 1e-6

// Plane is an oriented plane: points p with N·p < D lie behind it (inside a
// volume whose face it is). N is a unit vector pointing out.
type Plane struct {
	N vec.V
	D float64
}

// PlaneAt returns the plane through p with outward normal n (scaled to unit).
func PlaneAt(p, n vec.V) Plane {
	n = n.Unit()
	return Plane{n, n.Dot(p)}
}

// Height returns the signed distance of p in front of the plane.
func (pl Plane) Height(p vec.V) float64 { return pl.N.Dot(p) - pl.D }

// Flip returns the same plane facing the other way.
func (pl Plane) Flip() Plane { return Plane{pl.N.Neg(), 0 - pl.D} }

// Offset returns the plane moved d along its normal.
func (pl Plane) Offset(d float64) Plane { return Plane{pl.N, pl.D + d} }

// Moved carries the plane from timber axes to frame axes.
func (pl Plane) Moved(to vec.Placement) Plane {
	return PlaneAt(to.Out(pl.N.Mul(pl.D)), to.OutDir(pl.N))
}

// Meet returns the point common to three planes (Cramer's rule). Planes that
// share no single point give coordinates that are not finite.
func Meet(p, q, r Plane) vec.V {
	d := p.N.Dot(q.N.Cross(r.N))
	v := q.N.Cross(r.N).Mul(p.D).Add(r.N.Cross(p.N).Mul(q.D)).Add(p.N.Cross(q.N).Mul(r.D))
	return v.Mul(1 / d)
}

// Face is one polygon of a convex volume: vertex indices counter-clockwise
// seen from outside, its plane, and the role the joint gave it (empty for a
// seam or an open side).
type Face struct {
	Loop  []int
	Plane Plane
	Role  string
	flat  int // where it lies in a body: see Body.settle; nothing elsewhere
}

// Convex is a closed convex volume. The zero Convex is empty.
type Convex struct {
	V     []vec.V
	Faces []Face
}

// Empty reports whether c has no volume.
func (c Convex) Empty() bool { return len(c.Faces) == 0 }

// Box returns the axis-aligned box between two opposite corners. Its faces are
// in the order -x, +x, -y, +y, -z, +z.
func Box(lo, hi vec.V) Convex {
	return Hexahedron([8]vec.V{
		{X: lo.X, Y: lo.Y, Z: lo.Z}, {X: hi.X, Y: lo.Y, Z: lo.Z}, {X: hi.X, Y: hi.Y, Z: lo.Z}, {X: lo.X, Y: hi.Y, Z: lo.Z},
		{X: lo.X, Y: lo.Y, Z: hi.Z}, {X: hi.X, Y: lo.Y, Z: hi.Z}, {X: hi.X, Y: hi.Y, Z: hi.Z}, {X: lo.X, Y: hi.Y, Z: hi.Z},
	})
}

// Hexahedron returns the convex volume with eight corners: v[0..3] are the
// corners at low z, in the order (x,y) = 00, 10, 11, 01, and v[4..7] those at
// high z. Each of the six faces must be flat. Faces are in the order -x, +x,
// -y, +y, -z, +z.
func Hexahedron(v [8]vec.V) Convex {
	loops := [24]int{0, 4, 7, 3, 1, 2, 6, 5, 0, 1, 5, 4, 3, 7, 6, 2, 0, 3, 2, 1, 4, 5, 6, 7}
	c := Convex{V: slices.Clone(v[:]), Faces: make([]Face, 6)}
	for i := range c.Faces {
		l := loops[4*i : 4*i+4 : 4*i+4]
		n := v[l[2]].Sub(v[l[0]]).Cross(v[l[3]].Sub(v[l[1]]))
		c.Faces[i] = Face{Loop: l, Plane: PlaneAt(v[l[0]], n)}
	}
	return c
}

// Moved returns c carried from timber axes to frame axes (or by any rigid
// placement).
func (c Convex) Moved(to vec.Placement) Convex {
	r := Convex{V: make([]vec.V, len(c.V)), Faces: make([]Face, len(c.Faces))}
	for i, p := range c.V {
		r.V[i] = to.Out(p)
	}
	for i, f := range c.Faces {
		r.Faces[i] = Face{f.Loop, f.Plane.Moved(to), f.Role, f.flat}
	}
	return r
}

// Grow returns c with every face moved d millimetres outward (c must be a
// convex volume whose vertices each lie on exactly three faces, as a blank's
// do).
func (c Convex) Grow(d float64) Convex {
	lo, hi := c.Bounds()
	far := vec.V{X: d, Y: d, Z: d}.Mul(4)
	big := Box(lo.Sub(far), hi.Add(far))
	for _, f := range c.Faces {
		big = big.Clip(f.Plane.Offset(d), "")
	}
	return big
}

// Bounds returns the corners of the axis-aligned box around c.
func (c Convex) Bounds() (lo, hi vec.V) {
	if len(c.V) == 0 {
		return
	}
	lo, hi = c.V[0], c.V[0]
	for _, p := range c.V[1:] {
		lo = vec.V{X: min(lo.X, p.X), Y: min(lo.Y, p.Y), Z: min(lo.Z, p.Z)}
		hi = vec.V{X: max(hi.X, p.X), Y: max(hi.Y, p.Y), Z: max(hi.Z, p.Z)}
	}
	return
}

// Volume returns the volume in mm³.
func (c Convex) Volume() float64 { v, _ := c.moments(); return v }

// Centroid returns the centre of volume.
func (c Convex) Centroid() vec.V {
	v, m := c.moments()
	if v == 0 {
		return vec.V{}
	}
	return m.Mul(1 / v)
}

// moments returns volume and first moments by tetrahedra from a corner
// (divergence theorem).
func (c Convex) moments() (float64, vec.V) {
	if c.Empty() {
		return 0, vec.V{}
	}
	o := c.V[c.Faces[0].Loop[0]]
	var vol float64
	var m vec.V
	for _, f := range c.Faces {
		a := c.V[f.Loop[0]].Sub(o)
		for i := 1; i+1 < len(f.Loop); i++ {
			b, d := c.V[f.Loop[i]].Sub(o), c.V[f.Loop[i+1]].Sub(o)
			t := a.Dot(b.Cross(d)) / 6
			vol += t
			m = m.Add(a.Add(b).Add(d).Mul(t / 4))
		}
	}
	return vol, m.Add(o.Mul(vol))
}

// Contains reports whether p lies in c, or within tol millimetres of it
// measured square to its faces.
func (c Convex) Contains(p vec.V, tol float64) bool {
	if c.Empty() {
		return false
	}
	for _, f := range c.Faces {
		if f.Plane.Height(p) > tol {
			return false
		}
	}
	return true
}

// Extent returns the least and greatest value of dir·p over c.
func (c Convex) Extent(dir vec.V) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, p := range c.V {
		h := dir.Dot(p)
		lo, hi = min(lo, h), max(hi, h)
	}
	return
}

// Thickness returns the least extent of c square to any of its faces, in
// millimetres: 0 for the empty volume. Fit tests compare this and never the
// volume alone.
func (c Convex) Thickness() float64 {
	if c.Empty() {
		return 0
	}
	t := math.Inf(1)
	for _, f := range c.Faces {
		lo, hi := c.Extent(f.Plane.N)
		t = min(t, hi-lo)
	}
	return t
}

// thicker reports whether the thickness of c is more than t mm.
func (c Convex) thicker(t float64) bool {
	for _, f := range c.Faces {
		if !c.spreads(f.Plane.N, t) {
			return false
		}
	}
	return !c.Empty()
}

// spreads reports whether c reaches over more than t mm along dir.
func (c Convex) spreads(dir vec.V, t float64) bool {
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, p := range c.V {
		h := dir.Dot(p)
		if lo, hi = min(lo, h), max(hi, h); hi-lo > t {
			return true
		}
	}
	return false
}

// HasRole reports whether one of the faces carries the role.
func (c Convex) HasRole(role string) bool {
	return slices.ContainsFunc(c.Faces, func(f Face) bool { return f.Role == role })
}
