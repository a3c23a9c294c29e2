package view

import (
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// Ids under which Clipped and Behind take wood away; they are in the tags of
// the edges so made.
const (
	breakJoint = "break"
	planeJoint = "section"
)

// Clipped returns the part of b behind every plane of keep, as a timber broken
// off there: the edges on these planes are drawn as break lines. b itself is
// not changed.
func Clipped(b *solid.Body, keep ...solid.Plane) *solid.Body {
	return cutBy(b, breakJoint, keep)
}

// Behind returns the part of b behind the plane, as sawn through there: the
// edges on the plane are drawn like any other. b itself is not changed.
func Behind(b *solid.Body, pl solid.Plane) *solid.Body {
	return cutBy(b, planeJoint, []solid.Plane{pl})
}

func cutBy(b *solid.Body, id string, keep []solid.Plane) *solid.Body {
	out := b.Clone()
	for _, pl := range keep {
		lo, hi := out.Bounds()
		margin := vec.V{X: 10, Y: 10, Z: 10}
		cut := solid.Box(lo.Sub(margin), hi.Add(margin)).Clip(pl.Flip(), id)
		if !cut.Empty() {
			out.Subtract(cut, id)
		}
	}
	return out
}

// isBreak reports whether the edge lies on a plane at which the timber is
// broken off.
func isBreak(e solid.Edge) bool {
	return e.Tags[0].Joint == breakJoint || e.Tags[1].Joint == breakJoint
}
