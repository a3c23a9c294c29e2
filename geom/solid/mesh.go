package solid

import (
	"cmp"
	"math"
	"slices"
	"sort"

	"pegwright/geom/vec"
)

// near is the distance (mm) under which two computed points are one: a point
// is the meeting of three planes, and each may have moved it by Snap.
const near = 3 * Snap

// patch is one convex polygon on one side of a plane: flat is 2*plane, +1 when
// it faces against the plane's normal; its loop runs counter-clockwise seen
// from where it faces.
type patch struct {
	flat int
	loop []corner
}

// corner is a point of a patch and the side from there to the next.
type corner struct{ point, side int32 }

// mesh holds patches over shared points and the chains into which the points
// split their sides.
type mesh struct {
	v       []vec.V
	newest  []int32 // per bucket: the newest point in it, counted from 1; 0 for none
	older   []int32 // per point: the one in its bucket before it
	patches []patch
	corners []corner // room for the loops of the patches
	sides   web      // of the patches
	short   web      // the pieces of the sides between neighbouring points
	chains  []link
	starts  []int32 // per side: where its chain begins in chains; its end is the next
}

// link is one short edge of a chain, which runs from the lesser end of a side
// to the greater one: up tells that the edge runs up with it.
type link struct {
	edge int32
	up   bool
}

// newMesh returns a mesh with room for so many patches that have so many
// corners together. More may come.
func newMesh(patches, corners int) *mesh {
	buckets := 64
	for buckets < corners {
		buckets *= 2
	}
	return &mesh{newest: make([]int32, buckets),
		v: make([]vec.V, 0, corners/4), older: make([]int32, 0, corners/4),
		patches: make([]patch, 0, patches), corners: make([]corner, 0, corners)}
}

// gridStep is the width (mm) of the cubes that points are looked up in. Their
// walls keep off the round numbers that real timbers are full of.
const gridStep, gridShift = 0.01, 0.00382

// point returns the index of the point at p, a new one unless one is near.
func (m *mesh) point(p vec.V) int {
	var lo, own, hi [3]int64
	for i, x := range [3]float64{p.X, p.Y, p.Z} {
		lo[i] = int64(math.Floor((x + gridShift - near) / gridStep))
		own[i] = int64(math.Floor((x + gridShift) / gridStep))
		hi[i] = int64(math.Floor((x + gridShift + near) / gridStep))
	}
	for x := lo[0]; x <= hi[0]; x++ {
		for y := lo[1]; y <= hi[1]; y++ {
			for z := lo[2]; z <= hi[2]; z++ {
				for i := m.newest[m.bucket(x, y, z)]; i > 0; i = m.older[i-1] {
					if m.v[i-1].Dist(p) <= near {
						return int(i - 1)
					}
				}
			}
		}
	}
	k := m.bucket(own[0], own[1], own[2])
	m.older = append(m.older, m.newest[k])
	m.v = append(m.v, p)
	m.newest[k] = int32(len(m.v))
	return len(m.v) - 1
}

// bucket mixes the three numbers of a cube into that of a bucket. Cubes may
// share one: whoever looks there compares the points.
func (m *mesh) bucket(x, y, z int64) int {
	h := uint64(x)*0x9e3779b97f4a7c15 ^ uint64(y)*0xc2b2ae3d27d4eb4f ^ uint64(z)*0x165667b19e3779f9
	return int(h>>32) & (len(m.newest) - 1)
}

// add puts a convex polygon into the mesh; one that shrinks to a line when its
// near points become one is left out. known is per point of pts the index, from
// 1, under which it came to the mesh before, 0 where it did not yet.
func (m *mesh) add(flat int, pts []vec.V, loop []int, known []int32) {
	from := len(m.corners)
	for _, i := range loop {
		if known[i] == 0 {
			known[i] = int32(m.point(pts[i]) + 1)
		}
		if v := known[i] - 1; len(m.corners) == from || m.corners[len(m.corners)-1].point != v {
			m.corners = append(m.corners, corner{point: v})
		}
	}
	out := m.corners[from:]
	for len(out) > 1 && out[0].point == out[len(out)-1].point {
		out = out[:len(out)-1]
	}
	if len(out) >= 3 {
		m.patches = append(m.patches, patch{flat, slices.Clip(out)})
	}
}

// number gives the sides of all patches their numbers. All points but those
// where patches cross have come to the mesh.
func (m *mesh) number() {
	m.sides.reset(len(m.v), len(m.corners)/2)
	for _, p := range m.patches {
		for i := range p.loop {
			c := &p.loop[i]
			c.side = int32(m.sides.number(int(c.point), int(p.loop[(i+1)%len(p.loop)].point)))
		}
	}
}

// split finds, for every side of every patch, all points that lie on it, and
// chains it from the lesser end to the greater.
func (m *mesh) split() {
	l := m.lineUp()
	likely := len(m.sides.edges) * 3 / 2
	m.short.reset(len(m.v), likely)
	m.chains, m.starts = slices.Grow(m.chains[:0], likely), slices.Grow(m.starts[:0], len(m.sides.edges)+1)
	for _, side := range m.sides.edges {
		m.starts = append(m.starts, int32(len(m.chains)))
		at := side.lo
		for _, h := range l.on(side) {
			m.chain(at, h.v)
			at = h.v
		}
		m.chain(at, side.hi)
	}
	m.starts = append(m.starts, int32(len(m.chains)))
}

// chain goes on with the chain of a side, from one point to the next.
func (m *mesh) chain(a, b int32) {
	m.chains = append(m.chains, link{int32(m.short.number(int(a), int(b))), a < b})
}

// chainOf returns the chain of a side.
func (m *mesh) chainOf(side int32) []link { return m.chains[m.starts[side]:m.starts[side+1]] }

// lineup is the points of a mesh along the axis in which they spread most, to
// find those on a side.
type lineup struct {
	v     []vec.V
	axis  func(vec.V) float64
	order []place
	hits  []hit // room
}

// place is a point and where it lies along the axis.
type place struct {
	at float64
	v  int32
}

// hit is a point on a side, t mm from the lesser end.
type hit struct {
	t float64
	v int32
}

func (m *mesh) lineUp() *lineup {
	l := &lineup{v: m.v, axis: m.longAxis(), order: make([]place, len(m.v))}
	for i, p := range m.v {
		l.order[i] = place{l.axis(p), int32(i)}
	}
	slices.SortFunc(l.order, func(a, b place) int { return cmp.Or(sign(a.at-b.at), int(a.v-b.v)) })
	return l
}

// on returns the points on a side between its ends, from the lesser end to the
// greater. They are good until the next call.
func (l *lineup) on(side strand) []hit {
	a, b := l.v[side.lo], l.v[side.hi]
	d := b.Sub(a)
	n := d.Len()
	d = d.Mul(1 / n)
	lo, hi := min(l.axis(a), l.axis(b))-near, max(l.axis(a), l.axis(b))+near
	first := sort.Search(len(l.order), func(i int) bool { return l.order[i].at >= lo })
	l.hits = l.hits[:0]
	for _, o := range l.order[first:] {
		if o.at > hi {
			break
		}
		r := l.v[o.v].Sub(a)
		t := r.Dot(d)
		if t > 0 && t < n && o.v != side.lo && o.v != side.hi && r.Sub(d.Mul(t)).Len() <= near {
			l.hits = append(l.hits, hit{t, o.v})
		}
	}
	slices.SortFunc(l.hits, func(x, y hit) int { return sign(x.t - y.t) })
	return l.hits
}

// longAxis returns the coordinate in which the points spread most.
func (m *mesh) longAxis() func(vec.V) float64 {
	lo, hi := Convex{V: m.v}.Bounds()
	d := hi.Sub(lo)
	switch {
	case d.X >= d.Y && d.X >= d.Z:
		return func(p vec.V) float64 { return p.X }
	case d.Y >= d.Z:
		return func(p vec.V) float64 { return p.Y }
	}
	return func(p vec.V) float64 { return p.Z }
}

func lesserFirst(a, b int) [2]int { return [2]int{min(a, b), max(a, b)} }

func sign(x float64) int {
	switch {
	case x < 0:
		return -1
	case x > 0:
		return 1
	}
	return 0
}
