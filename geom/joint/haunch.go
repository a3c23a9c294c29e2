package joint

import (
	"pegwright/geom"
	"pegwright/geom/solid"
)

// Where a square tenon is held back from an edge of its timber, as at a post
// top or a plate end, the wood between is cut off at the shoulder (a relish) or
// left as a shallow tenon of its own (a haunch), which keeps the enterer from
// twisting.

// edges cuts the enterer's tenon to its width and, where a haunch is asked for,
// the haunch and its room.
func (q squareShape) edges(s Site, rc, ec *carver, below solid.Side) {
	a := q.a
	for _, e := range []struct{ sign, at, outer, held float64 }{
		{1, q.t0, q.u0, s.Set.HoldStart}, {-1, q.t1, q.u1, s.Set.HoldEnd},
	} {
		floor := below
		if h := q.haunch(s); h > 0 && e.held > tol {
			floor = half(a, a.W, 1, -s.Set.Housing-h, geom.RoleEnd)
			rc.take("mortise", half(a, a.U, e.sign, e.at, ""), half(a, a.U, -e.sign, e.outer, geom.RoleEnd),
				half(a, a.V, -1, q.r0, geom.RoleWall), half(a, a.V, 1, q.r1+s.Set.Clearance, geom.RoleWall),
				half(a, a.W, -1, -s.Set.Housing-h-s.Set.Deeper, geom.RoleFloor))
		}
		ec.take("tenon edge", floor, half(a, a.U, e.sign, e.at, geom.RoleEnd))
	}
}

// haunch is the length of the haunch, never longer than the tenon.
func (q squareShape) haunch(s Site) float64 {
	return min(s.Set.Haunch, -q.tip-s.Set.Housing)
}

// haunchDims asks for the depth and the length of a haunch.
func (q squareShape) haunchDims(s Site, j *geom.Joint, d *dimmer) {
	h := q.haunch(s)
	if h <= 0 || s.Set.HoldStart <= tol && s.Set.HoldEnd <= tol {
		return
	}
	a, top := q.a, -s.Set.Housing
	d.on(s.R, geom.Cutter)
	d.add("haunch room below bearing", a.W, a.Point(q.t0, q.r0, top), a.Point(q.t0, q.r0, top-h-s.Set.Deeper))
	d.on(s.E, geom.Cutter)
	d.add("haunch length", a.W, a.Point(q.t0, q.r0, top), a.Point(q.t0, q.r0, top-h))
}

// proud is how far a through tenon stands beyond the receiver's ideal face.
func (s Site) proud() float64 {
	if s.Set.Through {
		return s.Set.Proud
	}
	return 0
}
