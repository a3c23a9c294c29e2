// Package view turns bodies and a direction into drawn lines: views with
// hidden lines removed exactly, broken-off timbers, sections and hatching.
//
// Bodies are in millimetres in axes common to all parts of a view; what comes
// out is in millimetres on paper, y up.
package view

import (
	"math"

	"pegwright/geom/vec"
)

// Camera is a parallel view square to the picture: three unit vectors at right
// angles, with Right × Up = Toward.
type Camera struct {
	Right  vec.V // to the right on paper
	Up     vec.V // up on paper
	Toward vec.V // out of the paper, toward the viewer
}

// Look returns the camera of a viewer who looks along dir with up as nearly
// upright as it can be. Where dir is upright itself (parallel to up), +y is up
// on paper, or +x where that is parallel too.
func Look(dir, up vec.V) Camera {
	d := dir.Unit()
	for _, u := range []vec.V{up.Unit(), {Y: 1}, {X: 1}} {
		if r := d.Cross(u); r.Len() > 1e-9 {
			r = r.Unit()
			return Camera{Right: r, Up: r.Cross(d), Toward: d.Neg()}
		}
	}
	return Camera{Right: vec.V{X: 1}, Up: vec.V{Y: 1}, Toward: vec.V{Z: 1}}
}

// Front looks along +y: x to the right, z up.
func Front() Camera { return Look(vec.V{Y: 1}, vec.V{Z: 1}) }

// Back looks along −y: x to the left, z up.
func Back() Camera { return Look(vec.V{Y: -1}, vec.V{Z: 1}) }

// Left looks along +x, from the side of small x: y to the left, z up.
func Left() Camera { return Look(vec.V{X: 1}, vec.V{Z: 1}) }

// Right looks along −x, from the side of great x: y to the right, z up.
func Right() Camera { return Look(vec.V{X: -1}, vec.V{Z: 1}) }

// Top looks down: x to the right, y up.
func Top() Camera { return Look(vec.V{Z: -1}, vec.V{Y: 1}) }

// Isometric is the isometric axonometry of ISO 5456-3 as a true projection,
// from the side of small x and small y and from above: z upright, x rising to
// the right and y to the left at 30° to the horizontal, all three scales equal
// (√(2/3) of full size).
func Isometric() Camera { return IsometricFrom(-1, -1) }

// IsometricFrom is Isometric seen from the side of great (+1) or small (−1) x
// and y.
func IsometricFrom(x, y int) Camera {
	s := func(n int) float64 {
		if n < 0 {
			return -1
		}
		return 1
	}
	return Look(vec.V{X: 0 - s(x), Y: 0 - s(y), Z: -1}, vec.V{Z: 1})
}

// Axonometric is the view from a place in the direction azimuth (degrees
// counter-clockwise from +x, seen from above) at the given elevation over the
// horizontal (degrees; negative from below), with z upright.
func Axonometric(azimuth, elevation float64) Camera {
	az, el := azimuth*math.Pi/180, elevation*math.Pi/180
	t := vec.V{X: math.Cos(el) * math.Cos(az), Y: math.Cos(el) * math.Sin(az), Z: math.Sin(el)}
	return Look(t.Neg(), vec.V{Z: 1})
}

// Project returns the place of p in the picture, millimetres at full size.
func (c Camera) Project(p vec.V) vec.P { return vec.P{X: c.Right.Dot(p), Y: c.Up.Dot(p)} }

// Depth returns how far p lies before the plane through the origin square to
// the view, millimetres; greater is nearer to the viewer.
func (c Camera) Depth(p vec.V) float64 { return c.Toward.Dot(p) }

// Flat returns the point of space in the picture plane through the origin at p.
func (c Camera) Flat(p vec.P) vec.V { return c.Right.Mul(p.X).Add(c.Up.Mul(p.Y)) }
