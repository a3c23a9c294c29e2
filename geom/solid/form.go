package solid

import (
	"slices"

	"pegwright/geom/vec"
)

// rim is one short directed edge of the boundary: the polygon it bounds lies
// on flat, to the left of from a to b seen from outside.
type rim struct {
	flat, a, b int
}

// form is the boundary of a body: for each flat side of each plane, the edges
// that are left when the directed edges of all cell faces are summed.
type form struct {
	v    []vec.V
	rims []rim // by plane
	// doubled is the middle of an edge where cells overlap, if any do.
	doubled *vec.V
}

// shape returns the boundary, made once.
func (b *Body) shape() *form {
	if f := b.made.Load(); f != nil {
		return f
	}
	m := newMesh()
	for _, c := range b.cells {
		for _, f := range c.Faces {
			m.add(b.flat[f.Plane], c.V, f.Loop)
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
	at := map[uint64]int{}
	for {
		m.split()
		f := &form{}
		had := len(m.v)
		for lo := 0; lo < len(patches); {
			hi := lo + 1
			for hi < len(patches) && patches[hi].flat/2 == patches[lo].flat/2 {
				hi++
			}
			clear(at)
			s := sum{mesh: m, patches: patches[lo:hi], plane: patches[lo].flat / 2, at: at}
			s.n = normal(2 * s.plane)
			s.add()
			s.cross()
			f.rims = s.rims(f.rims)
			if s.doubled != nil && f.doubled == nil {
				f.doubled = s.doubled
			}
			lo = hi
		}
		if len(m.v) == had {
			f.v = m.v
			return f
		}
	}
}

// net is a short edge of one plane with the signed sums of the faces that lie
// along the plane's normal (with) and against it.
type net struct{ a, b, with, against int }

// sum adds up the directed edges of the patches of one plane.
type sum struct {
	*mesh
	patches []patch
	plane   int
	n       vec.V
	nets    []net
	at      map[uint64]int // edge -> its net
	doubled *vec.V
}

func (s *sum) add() {
	for _, p := range s.patches {
		s.steps(p.loop, func(a, b int) {
			k := edgeKey(a, b)
			i, ok := s.at[k]
			if !ok {
				i = len(s.nets)
				s.at[k] = i
				s.nets = append(s.nets, net{a: min(a, b), b: max(a, b)})
			}
			d := 1
			if a > b {
				d = -1
			}
			if p.flat&1 == 0 {
				s.nets[i].with += d
			} else {
				s.nets[i].against += d
			}
		})
	}
}

// rims appends what is left to out. An edge of faces of one way that lies inside
// faces of the other way bounds the latter.
func (s *sum) rims(out []rim) []rim {
	for _, e := range s.nets {
		if max(e.with, -e.with, e.against, -e.against) > 1 {
			p := s.v[e.a].Lerp(s.v[e.b], 0.5)
			s.doubled = &p
		}
		if e.with+e.against == 0 {
			continue
		}
		a, b := e.a, e.b
		if e.with+e.against < 0 {
			a, b = b, a
		}
		side := 0
		if e.with == 0 {
			side = 1
		}
		if (e.with == 0) != (e.against == 0) && s.inside(1-side, e) {
			side = 1 - side
		}
		out = append(out, rim{2*s.plane + side, a, b})
		if e.with != 0 && e.against != 0 {
			out = append(out, rim{2*s.plane + 1, a, b})
		}
	}
	return out
}

// inside reports whether the middle of e lies in a patch of the given side.
func (s *sum) inside(side int, e net) bool {
	mid := s.v[e.a].Lerp(s.v[e.b], 0.5)
	for _, p := range s.patches {
		if p.flat&1 != side {
			continue
		}
		n := s.n
		if side == 1 {
			n = n.Neg()
		}
		var room [16]vec.V
		if within(mid, s.points(room[:0], p.loop), n, near) {
			return true
		}
	}
	return false
}

// points appends the points of a loop to pts.
func (m *mesh) points(pts []vec.V, loop []int) []vec.V {
	for _, v := range loop {
		pts = append(pts, m.v[v])
	}
	return pts
}

// cross adds the points where edges of opposite faces cross.
func (s *sum) cross() {
	for _, e := range s.nets {
		for _, f := range s.nets {
			if e.with == 0 || f.against == 0 || e.a == f.a || e.a == f.b || e.b == f.a || e.b == f.b {
				continue
			}
			if p, ok := meet(s.v[e.a], s.v[e.b], s.v[f.a], s.v[f.b], s.n); ok {
				s.point(p)
			}
		}
	}
}

// meet returns the point where the segments a-b and c-d of one plane with
// normal n cross away from their ends.
func meet(a, b, c, d, n vec.V) (vec.V, bool) {
	ab, cd := b.Sub(a), d.Sub(c)
	u, w := n.Cross(ab).Unit(), n.Cross(cd).Unit()
	hc, hd := u.Dot(c.Sub(a)), u.Dot(d.Sub(a))
	ha, hb := w.Dot(a.Sub(c)), w.Dot(b.Sub(c))
	if !opposite(hc, hd) || !opposite(ha, hb) {
		return vec.V{}, false
	}
	return a.Add(ab.Mul(ha / (ha - hb))), true
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
