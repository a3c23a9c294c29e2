package templates

import (
	"fmt"
	"sort"

	"pegwright/geom"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// view is one face of a timber seen from outside, start end to the left. Its
// x is measured from x0 along the timber, its y from the register arris, the
// one shared with the reference face that stands square to this face.
type view struct {
	t    *geom.Timber
	face int
	x0   float64
}

// sign is +1 where the timber lies above the register arris on paper, -1 where
// it hangs below. With right = +x and the outward normal N toward the reader,
// up is N × x: +z on face 1, -y on face 2, -z on face 3, +y on face 4.
func (v view) sign() float64 {
	if v.face == 1 || v.face == 4 {
		return 1
	}
	return -1
}

// side returns the reference face that the register arris shares.
func (v view) side() int {
	if v.face == 1 || v.face == 3 {
		return 2
	}
	return 1
}

// off returns how far the timber point p lies from the register arris, mm.
func (v view) off(p vec.V) float64 {
	if v.face == 1 || v.face == 3 {
		return p.Z
	}
	return p.Y
}

// local carries a point in timber axes onto the view.
func (v view) local(p vec.V) vec.P {
	return vec.P{X: p.X - v.x0, Y: float64(v.sign() * v.off(p))}
}

// from carries a point in frame axes onto the view.
func (v view) from(p vec.V) vec.P { return v.local(v.t.Place.In(p)) }

// dir carries a direction in frame axes onto the view.
func (v view) dir(d vec.V) vec.P {
	in := v.t.Place.InDir(d)
	return vec.P{X: in.X, Y: float64(v.sign() * v.off(in))}
}

// arris names the register arris by its two faces, the lower number first.
func (v view) arris() string {
	a, b := min(v.face, v.side()), max(v.face, v.side())
	return fmt.Sprintf("arris %d/%d", a, b)
}

// line returns where a plane (frame axes) square to the face crosses the view:
// a point and a unit direction. It reports false for a plane that is not square
// to the face.
func (v view) line(pl solid.Plane) (p, d vec.P, ok bool) {
	n := v.dir(pl.N)
	l := n.Len()
	if l < 1-1e-6 {
		return p, d, false
	}
	// The point of the plane nearest to the view's own origin.
	o := v.t.Place.Out(vec.V{X: v.x0})
	return n.Mul(-pl.Height(o) / (l * l)), n.Unit().Left(), true
}

// shadow returns the outline of a convex volume (frame axes) on the view,
// counter-clockwise: the hull of its corners.
func (v view) shadow(c solid.Convex) []vec.P {
	pts := make([]vec.P, len(c.V))
	for i, p := range c.V {
		pts[i] = v.from(p)
	}
	return hull(pts)
}

// hull returns the convex hull of points, counter-clockwise (Andrew's monotone
// chain). Points within 1e-6 mm of a side are left out.
func hull(pts []vec.P) []vec.P {
	sort.Slice(pts, func(i, j int) bool {
		if pts[i].X != pts[j].X {
			return pts[i].X < pts[j].X
		}
		return pts[i].Y < pts[j].Y
	})
	half := func(from, to, step int) []vec.P {
		var h []vec.P
		for i := from; i != to; i += step {
			p := pts[i]
			if len(h) > 0 && p.Dist(h[len(h)-1]) < 1e-6 {
				continue
			}
			for len(h) > 1 && turn(h[len(h)-2], h[len(h)-1], p) < 1e-6 {
				h = h[:len(h)-1]
			}
			h = append(h, p)
		}
		return h
	}
	if len(pts) < 3 {
		return nil
	}
	low, high := half(0, len(pts), 1), half(len(pts)-1, -1, -1)
	if len(low) < 2 || len(high) < 2 {
		return nil
	}
	return append(low[:len(low)-1], high[:len(high)-1]...)
}

// turn returns how far c lies left of the line from a to b, mm.
func turn(a, b, c vec.P) float64 { return b.Sub(a).Unit().Cross(c.Sub(a)) }
