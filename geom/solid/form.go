package solid

import (
	"slices"

	"pegwright/geom/vec"
)

// rim is one short directed edge of the boundary: the polygon it bounds lies
// on flat, to the left of from a to b seen from outside. Its edge is the same
// number for all rims between the same two points.
type rim struct {
	flat       int
	a, b, edge int32
}

// form is the boundary of a body: for each flat side of each plane, the edges
// that are left when the directed edges of all cell faces are summed.
type form struct {
	v     []vec.V
	edges int   // how many edges are numbered
	rims  []rim // by plane
	// doubled is the middle of an edge where cells overlap, if any do.
	doubled *vec.V
}

// shape returns the boundary, made once.
func (b *Body) shape() *form {
	if f := b.made.Load(); f != nil {
		return f
	}
	patches, corners, points := 0, 0, 0
	for _, c := range b.cells {
		patches += len(c.Faces)
		points = max(points, len(c.V))
		for _, f := range c.Faces {
			corners += len(f.Loop)
		}
	}
	m := newMesh(patches, corners)
	known := make([]int32, points)
	for _, c := range b.cells {
		clear(known)
		for _, f := range c.Faces {
			m.add(f.flat, c.V, f.Loop, known)
		}
	}
	f := m.outline(func(flat int) vec.V { return b.facing(flat).N })
	b.made.Store(f)
	return f
}

// facing returns the plane of a flat as its polygons face.
func (b *Body) facing(flat int) Plane {
	if flat&1 == 1 {
		return b.planes[flat/2].Flip()
	}
	return b.planes[flat/2]
}

// outline sums the patches plane by plane. Where the rims of opposite faces on
// one plane cross, wood turns from one side of the plane to the other at a
// point that no cell has: such points join the mesh and the sum is made again.
func (m *mesh) outline(normal func(flat int) vec.V) *form {
	patches := m.patches
	slices.SortStableFunc(patches, func(p, q patch) int { return p.flat/2 - q.flat/2 })
	m.number()
	var rims []rim
	s := sum{mesh: m}
	for {
		m.split()
		had := len(m.v)
		s.at = make([]int32, len(m.short.edges))
		s.doubled, rims = nil, slices.Grow(rims[:0], len(m.short.edges))
		for lo := 0; lo < len(patches); {
			hi := lo + 1
			for hi < len(patches) && patches[hi].flat/2 == patches[lo].flat/2 {
				hi++
			}
			s.patches, s.plane = patches[lo:hi], patches[lo].flat/2
			s.n = normal(2 * s.plane)
			s.add()
			s.cross()
			rims = s.rims(rims)
			lo = hi
		}
		if len(m.v) == had {
			return &form{v: m.v, edges: len(m.short.edges), rims: rims, doubled: s.doubled}
		}
	}
}

// net is a short edge of one plane with the signed sums of the faces that lie
// along the plane's normal (with) and against it.
type net struct{ edge, with, against int32 }

// sum adds up the directed edges of the patches of one plane.
type sum struct {
	*mesh
	patches     []patch
	plane       int
	n           vec.V
	nets        []net
	at          []int32 // per short edge: its net, counted from 1; 0 for none
	doubled     *vec.V
	ahead, back []bar // room for cross
}

// add makes the nets of the plane, in the order in which its patches come to them.
func (s *sum) add() {
	for _, e := range s.nets {
		s.at[e.edge] = 0
	}
	s.nets = s.nets[:0]
	for _, p := range s.patches {
		for i, c := range p.loop {
			chain := s.chainOf(c.side)
			if c.point < p.loop[(i+1)%len(p.loop)].point {
				for _, l := range chain {
					s.count(p.flat, l.edge, l.up)
				}
				continue
			}
			for j := len(chain) - 1; j >= 0; j-- {
				s.count(p.flat, chain[j].edge, !chain[j].up)
			}
		}
	}
}

// count adds one short edge of a patch on a flat, which runs up from its lesser
// point or down to it.
func (s *sum) count(flat int, edge int32, up bool) {
	if s.at[edge] == 0 {
		s.nets = append(s.nets, net{edge: edge})
		s.at[edge] = int32(len(s.nets))
	}
	d := int32(-1)
	if up {
		d = 1
	}
	if e := &s.nets[s.at[edge]-1]; flat&1 == 0 {
		e.with += d
	} else {
		e.against += d
	}
}

// ends returns the points of a short edge, the lesser first.
func (m *mesh) ends(edge int32) (a, b int32) { return m.short.edges[edge].lo, m.short.edges[edge].hi }

// rims appends what is left to out. An edge of faces of one way that lies inside
// faces of the other way bounds the latter.
func (s *sum) rims(out []rim) []rim {
	for _, e := range s.nets {
		a, b := s.ends(e.edge)
		if max(e.with, -e.with, e.against, -e.against) > 1 && s.doubled == nil {
			p := s.v[a].Lerp(s.v[b], 0.5)
			s.doubled = &p
		}
		if e.with+e.against == 0 {
			continue
		}
		side := 0
		if e.with == 0 {
			side = 1
		}
		if (e.with == 0) != (e.against == 0) && s.inside(1-side, s.v[a].Lerp(s.v[b], 0.5)) {
			side = 1 - side
		}
		if e.with+e.against < 0 {
			a, b = b, a
		}
		out = append(out, rim{2*s.plane + side, a, b, e.edge})
		if e.with != 0 && e.against != 0 {
			out = append(out, rim{2*s.plane + 1, a, b, e.edge})
		}
	}
	return out
}

// inside reports whether a point lies in a patch of the given side.
func (s *sum) inside(side int, at vec.V) bool {
	n := s.n
	if side == 1 {
		n = n.Neg()
	}
	for _, p := range s.patches {
		if p.flat&1 != side {
			continue
		}
		var room [16]vec.V
		if within(at, s.points(room[:0], p.loop), n, near) {
			return true
		}
	}
	return false
}

// points appends the points of a loop to pts.
func (m *mesh) points(pts []vec.V, loop []corner) []vec.V {
	for _, c := range loop {
		pts = append(pts, m.v[c.point])
	}
	return pts
}

// bar is a short edge of one plane from its lesser point to its greater one.
type bar struct {
	strand
	a, b, left vec.V // left is the unit vector square to it, in the plane
}

// bar returns a short edge of the plane as a bar.
func (s *sum) bar(edge int32) bar {
	e := s.short.edges[edge]
	a, b := s.v[e.lo], s.v[e.hi]
	return bar{e, a, b, s.n.Cross(b.Sub(a)).Unit()}
}

// cross adds the points where edges of opposite faces cross.
func (s *sum) cross() {
	s.ahead, s.back = s.ahead[:0], s.back[:0]
	for _, e := range s.nets {
		if e.against != 0 {
			s.back = append(s.back, s.bar(e.edge))
		}
	}
	if len(s.back) == 0 {
		return
	}
	for _, e := range s.nets {
		if e.with != 0 {
			s.ahead = append(s.ahead, s.bar(e.edge))
		}
	}
	for _, e := range s.ahead {
		for _, f := range s.back {
			if e.lo == f.lo || e.lo == f.hi || e.hi == f.lo || e.hi == f.hi {
				continue
			}
			if p, ok := e.meet(f); ok {
				s.point(p)
			}
		}
	}
}

// meet returns the point where two bars of one plane cross away from their ends.
func (e *bar) meet(f bar) (vec.V, bool) {
	if !opposite(e.left.Dot(f.a.Sub(e.a)), e.left.Dot(f.b.Sub(e.a))) {
		return vec.V{}, false
	}
	ha, hb := f.left.Dot(e.a.Sub(f.a)), f.left.Dot(e.b.Sub(f.a))
	if !opposite(ha, hb) {
		return vec.V{}, false
	}
	return e.a.Add(e.b.Sub(e.a).Mul(ha / (ha - hb))), true
}

func opposite(x, y float64) bool {
	return (x > near && y < -near) || (x < -near && y > near)
}

// within reports whether p, a point of the plane with normal n, lies in the
// convex loop (counter-clockwise against n) or within tol mm of it.
func within(p vec.V, loop []vec.V, n vec.V, tol float64) bool {
	for i, a := range loop {
		e := loop[(i+1)%len(loop)].Sub(a)
		if n.Cross(e).Dot(p.Sub(a)) < -tol*e.Len() {
			return false
		}
	}
	return true
}
