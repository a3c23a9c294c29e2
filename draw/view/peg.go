package view

import (
	"math"

	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// PegPart returns a peg as a part: an octagon of dia across flats from its
// head to where the lead begins, then tapering over the last lead millimetres
// to leadDia across flats at to. A lead of 0 leaves the peg blunt. The peg is
// two convex cells; the joint between them is drawn, as the corner it is.
func PegPart(owner string, from, to vec.V, dia, leadDia, lead float64) Part {
	axis := to.Sub(from).Unit()
	lead = min(max(lead, 0), from.Dist(to))
	neck := to.Sub(axis.Mul(lead))
	p := Part{Owner: owner}
	rings := [][]vec.V{octagon(from, axis, dia)}
	if neck.Dist(from) > solid.Snap {
		rings = append(rings, octagon(neck, axis, dia))
	}
	if lead > solid.Snap {
		rings = append(rings, octagon(to, axis, leadDia))
	}
	for i := 0; i+1 < len(rings); i++ {
		c := frustum(rings[i], rings[i+1])
		p.Cells = append(p.Cells, c)
		for _, e := range cellEdges(c) {
			if i > 0 && onRing(e, rings[i]) {
				continue // the ring between the cells is there already
			}
			p.Edges = append(p.Edges, e)
		}
	}
	return p
}

// octagon returns the corners of a regular octagon of the given width across
// flats, counter-clockwise seen from the tip of axis, with a flat on top where
// the axis is level.
func octagon(c, axis vec.V, flats float64) []vec.V {
	up := vec.V{Z: 1}
	if math.Abs(axis.Z) > 0.9 {
		up = vec.V{X: 1}
	}
	u := axis.Cross(up).Unit()
	v := axis.Cross(u)
	r := flats / 2 / math.Cos(math.Pi/8)
	ring := make([]vec.V, 8)
	for i := range ring {
		s, k := math.Sincos((float64(i) + 0.5) * math.Pi / 4)
		ring[i] = c.Add(u.Mul(r * k)).Add(v.Mul(r * s))
	}
	return ring
}

// frustum returns the convex volume between two rings of as many corners, each
// counter-clockwise seen from the far end.
func frustum(near, far []vec.V) solid.Convex {
	n := len(near)
	c := solid.Convex{V: append(append([]vec.V(nil), near...), far...)}
	var a, b []int
	for i := range near {
		a, b = append(a, n-1-i), append(b, n+i)
	}
	loops := [][]int{a, b}
	for i := range near {
		j := (i + 1) % n
		loops = append(loops, []int{i, j, n + j, n + i})
	}
	for _, l := range loops {
		m := c.V[l[2]].Sub(c.V[l[0]]).Cross(c.V[l[3]].Sub(c.V[l[1]]))
		if len(l) > 4 {
			m = c.V[l[1]].Sub(c.V[l[0]]).Cross(c.V[l[2]].Sub(c.V[l[1]]))
		}
		c.Faces = append(c.Faces, solid.Face{Loop: l, Plane: solid.PlaneAt(c.V[l[0]], m)})
	}
	return c
}

// onRing reports whether both ends of e are corners of the ring.
func onRing(e solid.Edge, ring []vec.V) bool {
	n := 0
	for _, p := range ring {
		if p == e.A || p == e.B {
			n++
		}
	}
	return n == 2
}
