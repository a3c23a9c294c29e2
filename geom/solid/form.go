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
	if f := b.found.form.Load(); f != nil {
		return f
	}
	var f *form
	if b.origin != nil {
		f = b.origin.form()
	} else {
		f = b.outline()
	}
	b.found.form.Store(f)
	return f
}

// outline makes the boundary from the faces of the cells.
func (b *Body) outline() *form {
	patches, corners, most := 0, 0, 0
	for _, c := range b.cells {
		patches += len(c.Faces)
		most = max(most, len(c.V))
		for _, f := range c.Faces {
			corners += len(f.Loop)
		}
	}
	m := newMesh(patches, corners)
	known := make([]int32, most)
	for _, c := range b.cells {
		clear(known)
		for _, f := range c.Faces {
			m.add(f.flat, c.V, f.Loop, known)
		}
	}
	return m.outline(func(flat int) vec.V { return b.facing(flat).N })
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
	m.number()
	planes := 0
	for _, p := range m.patches {
		planes = max(planes, p.flat/2+1)
	}
	var by lists
	by.fill(planes, len(m.patches), func(i int) int32 { return int32(m.patches[i].flat / 2) })
	var rims []rim
	s := sum{mesh: m}
	for {
		m.split()
		had := len(m.v)
		s.at = make([]int32, len(m.short.edges))
		s.doubled, rims = nil, slices.Grow(rims[:0], len(m.short.edges))
		for plane := range planes {
			s.patches = s.patches[:0]
			for i := by.first[plane]; i > 0; i = by.next[i-1] {
				s.patches = append(s.patches, m.patches[i-1])
			}
			if len(s.patches) == 0 {
				continue
			}
			s.plane, s.n = plane, normal(2*plane)
			s.add()
			s.cross()
			rims = s.rims(rims)
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
	patches []patch
	plane   int
	n       vec.V
	nets    []net
	at      []int32 // per short edge: its net, counted from 1; 0 for none
	doubled *vec.V
	lefts   []vec.V // per net: the unit vector square to it in the plane
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

// cross adds the points where edges of opposite faces cross.
func (s *sum) cross() {
	with, against := false, false
	for _, e := range s.nets {
		with, against = with || e.with != 0, against || e.against != 0
	}
	if !with || !against {
		return
	}
	s.lefts = s.lefts[:0]
	for _, e := range s.nets {
		a, b := s.ends(e.edge)
		s.lefts = append(s.lefts, s.n.Cross(s.v[b].Sub(s.v[a])).Unit())
	}
	for i, e := range s.nets {
		if e.with == 0 {
			continue
		}
		for j, f := range s.nets {
			if f.against != 0 {
				s.meet(i, j)
			}
		}
	}
}

// meet adds the point where two nets cross away from their ends.
func (s *sum) meet(i, j int) {
	a, b := s.ends(s.nets[i].edge)
	c, d := s.ends(s.nets[j].edge)
	if a == c || a == d || b == c || b == d {
		return
	}
	pa, pb, pc, pd := s.v[a], s.v[b], s.v[c], s.v[d]
	if left := s.lefts[i]; !opposite(left.Dot(pc.Sub(pa)), left.Dot(pd.Sub(pa))) {
		return
	}
	left := s.lefts[j]
	ha, hb := left.Dot(pa.Sub(pc)), left.Dot(pb.Sub(pc))
	if opposite(ha, hb) {
		s.point(pa.Add(pb.Sub(pa).Mul(ha / (ha - hb))))
	}
}

func opposite(x, y float64) bool {
	return (x > near && y < -near) || (x < -near && y > near)
}

// within reports whether p, a point of the plane with normal n, lies in the
// convex loop (counter-clockwise against n) or within tol mm of it.
func within(p vec.V, loop []vec.V, n vec.V, tol float64) bool {
	for i, a := range loop {
		e := loop[(i+1)%len(loop)].Sub(a)
		if h := n.Cross(e).Dot(p.Sub(a)); h < 0 && h < -tol*e.Len() {
			return false
		}
	}
	return true
}
