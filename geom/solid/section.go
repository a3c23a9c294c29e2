package solid

import (
	"math"

	"pegwright/geom/vec"
)

// Section returns the figure in which the plane pl cuts the wood: outer loops
// counter-clockwise seen against pl.N (from in front of the plane), holes
// clockwise, seams cancelled, in mm in the body's axes. Where wood ends or
// changes exactly on the plane, the figure is that of the wood just behind it.
func (b *Body) Section(pl Plane) [][]vec.V {
	pl, _ = b.known(pl)
	m := newMesh(0, 0)
	var known []int32
	for _, c := range b.cells {
		if c = c.Clip(pl, ""); !c.Empty() {
			if f, ok := c.lid(pl); ok {
				known = append(known[:0], make([]int32, len(c.V))...)
				m.add(0, c.V, f.Loop, known)
			}
		}
	}
	f := m.outline(func(int) vec.V { return pl.N })
	return newTracer(f.v, len(f.rims)).trace(f.rims, pl.N)
}

// lid returns the face of c that lies on pl and faces as it does.
func (c Convex) lid(pl Plane) (Face, bool) {
	for _, f := range c.Faces {
		on := f.Plane.N.Dot(pl.N) > 0
		for _, v := range f.Loop {
			on = on && math.Abs(pl.Height(c.V[v])) <= 2*Snap
		}
		if on {
			return f, true
		}
	}
	return Face{}, false
}
