package scheme

import (
	"pegwright/geom"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// void is wood that a joint takes from its receiver, in frame axes.
type void struct {
	solid.Convex
	lo, hi vec.V
	bore   *solid.Bore // of which it is the room, if any
	shell  bool        // a housing, which only bores keep clear of
}

// newVoid is a volume with its box.
func newVoid(c solid.Convex) void {
	lo, hi := c.Bounds()
	return void{Convex: c, lo: lo, hi: hi}
}

// meets reports whether less than gap lies between two volumes.
func (a *void) meets(b *void, gap float64) bool {
	if !a.near(b, gap) {
		return false
	}
	for _, f := range a.Faces {
		if lo, _ := b.Extent(f.Plane.N); lo >= f.Plane.D+gap {
			return false
		}
	}
	return solid.Common(a.Grow(gap), b.Convex).Thickness() > 1e-3
}

// near reports whether no more than gap lies between the boxes of two volumes.
func (a *void) near(b *void, gap float64) bool {
	return a.lo.X-b.hi.X <= gap && b.lo.X-a.hi.X <= gap &&
		a.lo.Y-b.hi.Y <= gap && b.lo.Y-a.hi.Y <= gap &&
		a.lo.Z-b.hi.Z <= gap && b.lo.Z-a.hi.Z <= gap
}

// body is the stick between its tentative ends, in frame axes, cut off at the
// ideal faces of the sticks that its ends enter.
func (s *Scheme) body(st *Stick) *void {
	if st.hull != nil && st.hullAt == [2]float64{st.Lo, st.Hi} {
		return st.hull
	}
	t := st.laid()
	c := t.Blank.Moved(t.Place)
	for _, p := range s.Pacts {
		if p.E != st || p.End == geom.Mid {
			continue
		}
		away := t.Place.X
		if p.End == geom.Finish {
			away = away.Neg()
		}
		r := p.R.Timber
		face := r.IdealPlane(r.FaceToward(away)).Moved(r.Place)
		if cut := c.Clip(face.Flip(), ""); face.N.Dot(away) > 0.1 && !cut.Empty() {
			c = cut
		}
	}
	v := newVoid(c)
	st.hull, st.hullAt = &v, [2]float64{st.Lo, st.Hi}
	return &v
}
